// The tables of docs/wood.md are written from the wood room itself, between marks in the page.

#include <fmt/format.h>

#include <catch2/catch.hpp>

#include "pages.hpp"
#include "wood/elastic.hpp"
#include "wood/joinery_rules.hpp"
#include "wood/lumber.hpp"
#include "wood/moisture.hpp"
#include "wood/movement.hpp"
#include "wood/species.hpp"
#include "wood/strength.hpp"

namespace rayfleck::docs {
namespace {

using wood::Figure;
using wood::Species;

char code(wood::Confirmation confirmation) {
    switch (confirmation) {
    case wood::Confirmation::read:
        return 'r';
    case wood::Confirmation::read_secondary:
        return 's';
    case wood::Confirmation::from_memory:
        return 'm';
    case wood::Confirmation::stated:
    case wood::Confirmation::none:
        break;
    }
    return 'n';
}

/// `3.7 r`, or a dash.
std::string cell(const std::optional<Figure>& figure, double times = 1) {
    return figure ? fmt::format("{:.6g} {}", figure->value * times, code(figure->confirmation)) : "–";
}

std::string lengths(double mm) {
    std::string text = fmt::format("{:.2f}", mm);
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
    return text;
}

std::string names() {
    std::string out = "| wood | botanical name | also found as |\n|---|---|---|\n";
    const std::vector<std::string> known = wood::known_names();
    for (const Species& species : wood::all()) {
        std::string others;
        for (const std::string& name : known) {
            const Species* found = wood::find(name);
            if (found == nullptr || found->id != species.id || name == species.trade_name) continue;
            others += (others.empty() ? "" : ", ") + name;
        }
        out += fmt::format("| {} | {} | {} |\n", species.trade_name, species.scientific_name, others);
    }
    return out;
}

std::string moving() {
    std::string out =
        "| wood | shrinks radially, % | tangentially, % | in volume, % | coefficient radial, % per 1 % | "
        "tangential, % per 1 % | 100 mm quarter sawn, 6 to 10 % | flat sawn |\n"
        "|---|---|---|---|---|---|---|---|\n";
    const auto low = wood::Moisture::percent(6), high = wood::Moisture::percent(10);
    const auto width = wood::Length::mm(100);
    for (const Species& s : wood::all()) {
        if (s.is_sheet()) continue;
        out +=
            fmt::format("| {} | {} | {} | {} | {} | {} | {} mm | {} mm |\n", s.trade_name,
                        cell(s.shrinkage_radial), cell(s.shrinkage_tangential), cell(s.shrinkage_volumetric),
                        cell(s.coefficient_radial, 100), cell(s.coefficient_tangential, 100),
                        lengths(wood::movement(width, low, high, wood::Sawn::quarter, s).value()),
                        lengths(wood::movement(width, low, high, wood::Sawn::flat, s).value()));
    }
    return out;
}

std::string strong() {
    std::string out =
        "| wood | gravity green | at 12 % | bending, MPa | stiffness, MPa | compression along, MPa | across, "
        "MPa "
        "| shear, MPa | tension across, MPa | hardness, N |\n|---|---|---|---|---|---|---|---|---|---|\n";
    for (const Species& s : wood::all()) {
        if (s.is_sheet()) continue;
        out += fmt::format("| {} | {} | {} | {} | {} | {} | {} | {} | {} | {} |\n", s.trade_name,
                           cell(s.gravity_green), cell(s.gravity_12), cell(s.modulus_of_rupture, 0.001),
                           cell(s.modulus_of_elasticity), cell(s.compression_along, 0.001),
                           cell(s.compression_across, 0.001), cell(s.shear_along, 0.001),
                           cell(s.tension_across, 0.001), cell(s.side_hardness));
    }
    out += "\n";
    for (const Species& s : wood::all())
        if (!s.note.empty()) out += fmt::format("- {}: {}\n", s.trade_name, s.note);
    return out;
}

std::string sheets() {
    std::string out =
        "| sheet | along, % per 1 % | across, % per 1 % | thickness, % per 1 % | gravity | stiffness, MPa | "
        "bending, MPa |\n|---|---|---|---|---|---|---|\n";
    for (const Species& s : wood::all()) {
        if (!s.is_sheet()) continue;
        out += fmt::format("| {} | {} | {} | {} | {} | {} | {} |\n", s.trade_name, cell(s.sheet_along, 100),
                           cell(s.sheet_across, 100), cell(s.sheet_thickness, 100), cell(s.gravity_12),
                           cell(s.modulus_of_elasticity), cell(s.modulus_of_rupture, 0.001));
    }
    return out;
}

std::string moisture() {
    std::string out = "| humidity |";
    for (const int t : {0, 10, 20, 30}) out += fmt::format(" {} C |", t);
    out += "\n|---|---|---|---|---|\n";
    for (int h = 20; h <= 90; h += 10) {
        out += fmt::format("| {} % |", h);
        for (const int t : {0, 10, 20, 30})
            out += fmt::format(" {:.1f} % |", wood::emc(h / 100.0, t).in_percent());
        out += "\n";
    }
    return out;
}

std::string regions() {
    std::string out = "| region | also | driest | dampest | average |\n|---|---|---|---|---|\n";
    for (const wood::Region& region : wood::regions()) {
        std::string also;
        for (const std::string_view name : region.also)
            also += (also.empty() ? "" : ", ") + std::string(name);
        out += fmt::format("| {} | {} | {} | {} | {} |\n", region.name, also, cell(region.least),
                           cell(region.greatest), cell(region.average));
    }
    return out;
}

std::string hardwood() {
    std::string out = "| name | rough | surfaced on two sides |\n|---|---|---|\n";
    const measure::Manner inches{measure::Unit::in, 1, 32};
    for (const wood::Lumber& row : wood::hardwood_thicknesses())
        out += fmt::format("| {} | {} | {} {} |\n", row.name,
                           measure::text_with_unit(row.rough_thickness, inches),
                           measure::text_with_unit(row.dressed_thickness, inches), code(row.confirmation));
    return out;
}

std::string softwood() {
    std::string out = "| name | what it is | dressed dry | dressed green |\n|---|---|---|---|\n";
    const measure::Manner inches{measure::Unit::in, 1, 32};
    for (const char* name : {"1x2", "1x3", "1x4", "1x6", "1x8", "1x10", "1x12", "5/4x6", "2x2", "2x3", "2x4",
                             "2x6", "2x8", "2x10", "2x12", "4x4", "4x6", "6x6"}) {
        const auto dry = wood::lumber_named(name), green = wood::lumber_named(name, wood::Seasoning::green);
        REQUIRE(dry.has_value());
        REQUIRE(green.has_value());
        const auto size = [&](const wood::Lumber& lumber) {
            return measure::text_with_unit(lumber.dressed_thickness, inches) + " × " +
                   measure::text_with_unit(*lumber.dressed_width, inches);
        };
        out += fmt::format("| {} | {} | {} | {} |\n", name, wood::text(dry->kind), size(*dry), size(*green));
    }
    return out;
}

std::string slopes() {
    std::string out = "| slope of grain | bending | impact | compression along |\n|---|---|---|---|\n";
    for (const wood::SlopeRow& row : wood::slope_of_grain_clear_wood())
        out += fmt::format("| 1 in {} | {} % | {} % | {} % |\n", row.one_in, *row.bending, *row.impact,
                           *row.compression);
    for (const double degrees : {20.0, 30.0, 45.0, 60.0, 90.0}) {
        const auto angle = measure::Angle::degrees(degrees);
        out += fmt::format("| {} degrees, by the curve | {:.0f} % | {:.0f} % | {:.0f} % |\n", degrees,
                           100 * wood::share_of_strength(wood::Load::bending, angle),
                           100 * wood::share_of_strength(wood::Load::impact, angle),
                           100 * wood::share_of_strength(wood::Load::compression, angle));
    }
    return out;
}

std::string replaced(std::string page, const std::string& name, const std::string& table) {
    const std::string open = "<!-- written by the tests: " + name + " -->\n", close = "<!-- end -->";
    const std::size_t at = page.find(open);
    INFO("docs/wood.md has no place for " << name);
    REQUIRE(at != std::string::npos);
    const std::size_t from = at + open.size(), to = page.find(close, from);
    REQUIRE(to != std::string::npos);
    return page.replace(from, to - from, table);
}

} // namespace

TEST_CASE("the tables of the page about wood hold what the wood room knows", "[docs]") {
    std::string page = read("docs/wood.md");
    page = replaced(std::move(page), "names", names());
    page = replaced(std::move(page), "movement", moving());
    page = replaced(std::move(page), "strength", strong());
    page = replaced(std::move(page), "sheets", sheets());
    page = replaced(std::move(page), "moisture", moisture());
    page = replaced(std::move(page), "regions", regions());
    page = replaced(std::move(page), "hardwood", hardwood());
    page = replaced(std::move(page), "softwood", softwood());
    page = replaced(std::move(page), "slopes", slopes());
    compare_or_rewrite("docs/wood.md", page);
}

} // namespace rayfleck::docs
