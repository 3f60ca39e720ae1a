// The woods that a shop file tells with figures of its own.
//
// They are read before anything else of the piece, because values and parts name them. A figure must be known
// by name, in a unit that fits it, and be possible for a wood; both shrinkages must be told, for without them
// nothing can be said of its movement. A wood with an error stays known, so that the parts made of it do not
// complain as well.

#include <algorithm>
#include <cmath>
#include <set>

#include <fmt/format.h>

#include "piece/elaboration.hpp"
#include "wood/own_wood.hpp"

namespace rayfleck::piece {
namespace {

/// Shrinkages of a wood that is in the list in spite of an error: those of a middling hardwood.
constexpr double stand_in_radial = 4.5, stand_in_tangential = 8.5;

std::vector<std::string> names_of_figures() {
    std::vector<std::string> names{"hardwood", "softwood"};
    for (const wood::OwnFigure& figure : wood::own_figures()) names.emplace_back(figure.name);
    return names;
}

std::string units_of(const wood::OwnFigure& figure) {
    std::string out;
    for (const wood::OwnFigure::Unit& unit : figure.units)
        out += (out.empty() ? "" : " or ") + (unit.name.empty() ? "a bare number" : std::string(unit.name));
    return out;
}

/// Three figures are enough of a bound, and none of them a power of ten.
std::string bound_text(double bound) {
    return bound < 100 ? fmt::format("{:.3g}", bound) : fmt::format("{:.0f}", bound);
}

const wood::OwnFigure* figure_named(std::string_view name) {
    for (const wood::OwnFigure& figure : wood::own_figures())
        if (figure.name == name) return &figure;
    return nullptr;
}

void read_figure(Elaboration& e, const syntax::WoodFigure& told, const wood::OwnFigure& figure,
                 wood::Species& species) {
    const std::string name(figure.name);
    if (told.amount.empty()) {
        e.error("no-figure", told.span, "`" + name + "` has no number").mend =
            "write the number behind it, in " + units_of(figure);
        return;
    }
    const auto unit = std::find_if(figure.units.begin(), figure.units.end(),
                                   [&](const wood::OwnFigure::Unit& one) { return one.name == told.unit; });
    if (unit == figure.units.end()) {
        e.error("unknown-unit", told.span,
                "`" + name + "` is not told in " + (told.unit.empty() ? "a bare number" : told.unit))
            .mend = "write it in " + units_of(figure);
        return;
    }
    const double value = std::strtod(told.amount.c_str(), nullptr) * unit->times;
    if (!(value >= figure.least && value <= figure.most)) {
        const double least = figure.least / unit->times, most = figure.most / unit->times;
        e.error("out-of-range", told.span,
                fmt::format("no wood has a {} of {}{}{}", name, told.amount, told.unit.empty() ? "" : " ",
                            told.unit))
            .mend = fmt::format("it lies between {} and {}{}{}", bound_text(least), bound_text(most),
                                told.unit.empty() ? "" : " ", told.unit);
        return;
    }
    species.*figure.field = wood::own(value, figure.unit);
}

void read_wood(Elaboration& e, const syntax::OwnWood& says, Span header) {
    for (const auto& other : e.own_woods)
        if (wood::find(says.name.text, std::span(&other, 1)) == &other->species()) {
            e.error("name-twice", says.name.span, "the wood `" + says.name.text + "` is told twice").mend =
                "leave one of them out";
            return;
        }
    const bool softwood = std::any_of(says.figures.begin(), says.figures.end(),
                                      [](const auto& told) { return told.name.text == "softwood"; });
    auto own = std::make_shared<wood::OwnWood>(says.name.text,
                                               softwood ? wood::Kind::softwood : wood::Kind::hardwood);
    wood::Species& species = own->figures();
    std::map<std::string, Span> told_before;
    bool misread = false;
    for (const syntax::WoodFigure& told : says.figures) {
        const std::string& name = told.name.text;
        const bool kind = name == "hardwood" || name == "softwood";
        const wood::OwnFigure* figure = figure_named(name);
        if (kind && !told.amount.empty()) {
            e.error("out-of-range", told.span, "`" + name + "` takes no number").mend =
                "write `" + name + "` alone";
            continue;
        }
        if (!kind && figure == nullptr) {
            misread = true;
            e.error("unknown-figure", told.name.span, "nothing of a wood is called `" + name + "`").mend =
                did_you_mean(name, names_of_figures());
            continue;
        }
        // Gravity and density say the same thing.
        const std::string what = kind ? "its kind" : name == "density" ? "gravity" : name;
        if (const auto [first, fresh] = told_before.emplace(what, told.span); !fresh) {
            e.error("said-twice", told.span, "this is told twice of `" + says.name.text + "`")
                .labels.push_back({first->second, "the first time"});
            continue;
        }
        if (figure != nullptr) read_figure(e, told, *figure, species);
    }
    if (!misread &&
        (!told_before.contains("radial shrinkage") || !told_before.contains("tangential shrinkage")))
        e.error("no-figure", header, "how much `" + says.name.text + "` shrinks is not told").mend =
            "write `radial shrinkage 4 %, tangential shrinkage 8 %`, from green to oven-dry, with its own "
            "numbers";
    if (species.shrinkage_radial && species.shrinkage_tangential &&
        species.shrinkage_radial->value > species.shrinkage_tangential->value)
        e.error("out-of-range", told_before.at("radial shrinkage"),
                fmt::format("`{}` shrinks {:.6g} % radially and only {:.6g} % tangentially", says.name.text,
                            species.shrinkage_radial->value, species.shrinkage_tangential->value))
            .mend = "wood shrinks more along its rings than across them: the two may be swapped";
    if (!species.shrinkage_radial) species.shrinkage_radial = wood::own(stand_in_radial, "%");
    if (!species.shrinkage_tangential) species.shrinkage_tangential = wood::own(stand_in_tangential, "%");
    e.own_woods.push_back(std::move(own));
}

} // namespace

void read_own_woods(Elaboration& e, int file) {
    if (file < 0 || file >= static_cast<int>(e.project.trees.size())) return;
    for (const syntax::Statement& statement : e.project.trees[static_cast<std::size_t>(file)].statements)
        if (const auto* wood = std::get_if<syntax::OwnWood>(&statement.says))
            read_wood(e, *wood, statement.header);
}

void gather_own_woods(Elaboration& e) {
    for (const syntax::Statement& statement :
         e.project.trees[static_cast<std::size_t>(e.project.main)].statements)
        if (const auto* in = std::get_if<syntax::ShopIn>(&statement.says))
            if (const auto found = e.project.brought.find(in->path.text); found != e.project.brought.end()) {
                read_own_woods(e, found->second);
                return;
            }
}

std::vector<std::string> names_of_woods(const Elaboration& e) {
    std::vector<std::string> names;
    for (const auto& own : e.own_woods) names.emplace_back(own->species().trade_name);
    for (std::string& name : wood::known_names()) names.push_back(std::move(name));
    return names;
}

} // namespace rayfleck::piece
