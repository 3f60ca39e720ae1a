// See wood.hpp. Every figure is printed with its source as the wood room keeps it; movement is computed by
// the same functions that the checks use.

#include "commands/wood.hpp"
#include "commands/load.hpp"
#include "commands/wood_question.hpp"

#include <charconv>
#include <cmath>

#include <fmt/format.h>

#include "findings/show.hpp"
#include "wood/density.hpp"
#include "wood/movement.hpp"

namespace rayfleck::commands {
namespace {

using wood::Species;

constexpr double widest_mm = 10000;
// Wet wood of the lightest kinds holds more, but above fibre saturation, near 30, nothing moves.
constexpr double most_moisture = 100;

/// Millimetres of `12in`, `300`, `30cm`; nothing when it is no width of a board.
std::optional<double> width_of(const std::string& words) {
    double number = 0;
    const auto [end, error] = std::from_chars(words.data(), words.data() + words.size(), number);
    if (error != std::errc()) return std::nullopt;
    const std::string unit(end, words.data() + words.size());
    const double mm = unit.empty() || unit == "mm"   ? number
                      : unit == "cm"                 ? number * 10
                      : unit == "in" || unit == "\"" ? number * 25.4
                                                     : NAN;
    if (!(mm > 0 && mm <= widest_mm)) return std::nullopt;
    return mm;
}

std::string short_figure(const std::optional<wood::Figure>& figure, const char* format) {
    return figure ? fmt::format(fmt::runtime(format), figure->value) : "";
}

std::string table(const wood::OwnWoods& own) {
    std::string out =
        fmt::format("{:<28}{:>10}{:>10}{:>14}\n", "wood", "gravity", "radial %", "tangential %");
    const auto row = [&](const Species& species) {
        out += fmt::format("{:<28}{:>10}{:>10}{:>14}\n", species.trade_name,
                           short_figure(species.gravity_12, "{:.2f}"),
                           short_figure(species.shrinkage_radial, "{:.1f}"),
                           short_figure(species.shrinkage_tangential, "{:.1f}"));
    };
    for (const auto& wood : own) row(wood->species());
    if (!own.empty()) out += "(from the shop file, the maker's own figures; below, those of the tables)\n";
    for (const Species& species : wood::all()) row(species);
    return out + "\nGravity at 12 % moisture; shrinkage from green to oven-dry. `rayfleck wood NAME` gives "
                 "all figures\n"
                 "of one with their sources, and how far a board of it moves.\n";
}

std::string figures(const Species& species) {
    std::string out =
        fmt::format("{}{}\n{}\n\n", species.trade_name,
                    species.scientific_name.empty() ? "" : fmt::format(" ({})", species.scientific_name),
                    wood::text(species.kind));
    const auto line = [&](const char* what, const std::optional<wood::Figure>& figure) {
        if (figure) out += fmt::format("  {:<32}{}\n", what, wood::text_with_source(*figure));
    };
    line("specific gravity, green", species.gravity_green);
    line("specific gravity at 12 %", species.gravity_12);
    line("shrinkage, radial", species.shrinkage_radial);
    line("shrinkage, tangential", species.shrinkage_tangential);
    line("shrinkage, volumetric", species.shrinkage_volumetric);
    line("movement, radial", species.coefficient_radial);
    line("movement, tangential", species.coefficient_tangential);
    line("modulus of rupture", species.modulus_of_rupture);
    line("modulus of elasticity", species.modulus_of_elasticity);
    line("compression along the grain", species.compression_along);
    line("compression across the grain", species.compression_across);
    line("shear along the grain", species.shear_along);
    line("tension across the grain", species.tension_across);
    line("side hardness", species.side_hardness);
    line("movement along the face grain", species.sheet_along);
    line("movement across the face grain", species.sheet_across);
    line("movement in thickness", species.sheet_thickness);
    if (!species.note.empty()) out += fmt::format("\n  {}\n", species.note);
    return out;
}

std::string movement(const Species& species, double width, measure::Moisture from, measure::Moisture to) {
    const measure::Length board = measure::Length::from_geometry(width);
    std::string out = fmt::format("\nA board {:.6g} mm wide from {:.1f} to {:.1f} % moisture\n", width,
                                  from.in_percent(), to.in_percent());
    const auto line = [&](std::string_view how, measure::Length moves) {
        out += fmt::format("  {:<32}{:+.2f} mm\n", how, moves.value());
    };
    if (species.is_sheet())
        line("across the face grain", wood::movement(board, from, to, wood::Sawn::flat, species));
    else
        for (const wood::Sawn sawn : {wood::Sawn::flat, wood::Sawn::rift, wood::Sawn::quarter})
            line(wood::text(sawn), wood::movement(board, from, to, sawn, species));
    if (const auto mass = wood::density(species, to))
        out += fmt::format("  {:<32}{:.0f} kg/m³\n", "weighs, at the end", *mass);
    return out + fmt::format("  by {}\n", wood::movement_source(species));
}

Status unknown(const std::string& name, const wood::OwnWoods& own, Terminal& terminal) {
    std::string rest = "; `rayfleck wood` lists them all";
    const std::vector<std::string> meanings = wood::meanings(name);
    if (!meanings.empty())
        rest = fmt::format("; it may mean {}", fmt::join(meanings, " or "));
    else {
        std::vector<std::string> names = wood::known_names();
        for (const auto& wood : own) names.emplace_back(wood->species().trade_name);
        if (const auto near = findings::near_word(name, names))
            rest = fmt::format("; the nearest is {}", *near);
    }
    terminal.say(fmt::format("rayfleck: no wood is called {}{}\n", name, rest));
    return Status::failure;
}

/// The woods of the shop file; nothing when it cannot be read or has an error, which is then told.
std::optional<wood::OwnWoods> woods_of(const std::string& shop, Terminal& terminal) {
    if (shop.empty()) return wood::OwnWoods();
    Loaded loaded = load(shop);
    if (loaded.unreadable) {
        terminal.say(fmt::format("rayfleck: cannot read {}: {}\n", shop, *loaded.unreadable));
        return std::nullopt;
    }
    const syntax::Tree& tree = loaded.project.trees[static_cast<std::size_t>(loaded.project.main)];
    if (holds(tree) != Holds::shop) {
        terminal.say(
            fmt::format("rayfleck: {} is no shop file: it does not begin with `shop file \"...\"`\n", shop));
        return std::nullopt;
    }
    wood::OwnWoods woods = piece::own_woods(loaded.project, loaded.project.main, loaded.findings);
    if (loaded.findings.any(findings::Severity::error)) {
        terminal.say(findings::show(loaded.findings, loaded.texts, {terminal.colour(), false}));
        return std::nullopt;
    }
    return woods;
}

} // namespace

Status wood(const WoodWish& wish, Terminal& terminal) {
    const std::optional<wood::OwnWoods> own = woods_of(wish.shop, terminal);
    if (!own) return Status::failure;
    if (wish.name.empty()) {
        terminal.print(table(*own));
        return Status::sound;
    }
    const Species* species = wood::find(wish.name, *own);
    if (species == nullptr && asks_a_question(wish.name)) return answer(wish.name, *own, terminal);
    if (species == nullptr) return unknown(wish.name, *own, terminal);
    const std::optional<double> width = width_of(wish.width);
    if (!width) {
        terminal.say(fmt::format("rayfleck: {} is no width: write 300mm, 30cm or 12in\n", wish.width));
        return Status::failure;
    }
    for (const std::optional<double>& stated : {wish.from, wish.to})
        if (stated && !(*stated >= 0 && *stated <= most_moisture)) {
            terminal.say(
                fmt::format("rayfleck: {:.6g} is no moisture of wood: write percent from 0 to {:.0f}\n",
                            *stated, most_moisture));
            return Status::failure;
        }
    constexpr double dry_air = 0.35, damp_air = 0.60, celsius = 20;
    const auto moisture = [](const std::optional<double>& stated, double humidity) {
        return stated ? measure::Moisture::percent(*stated) : wood::emc(humidity, celsius);
    };
    terminal.print(figures(*species) +
                   movement(*species, *width, moisture(wish.from, dry_air), moisture(wish.to, damp_air)));
    return Status::sound;
}

} // namespace rayfleck::commands
