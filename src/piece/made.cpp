// Recipes: what `make` opens, and where the made thing stands.
//
// Every `make` gets a scope of its own: the recipe's parameters with the values given or their own defaults,
// its private values and rods. Its coordinates are its own too; a made thing is carried out by a shift along
// each rod, from its first line to where the maker puts its left, front or bottom, or from its last line to
// where its right, back or top goes. Untold, it begins where the rod outside begins.

#include <algorithm>

#include "piece/elaboration.hpp"

namespace rayfleck::piece {
namespace {

using syntax::Statement;

const Statement* find_recipe(Elaboration& e, const std::string& name) {
    if (const auto found = e.recipes.find(name); found != e.recipes.end()) return found->second;
    if (const auto found = e.shipped.find(name); found != e.shipped.end()) return found->second;
    return nullptr;
}

/// Parameters become values of the inner scope: given ones read outside, defaults read inside.
void bind(Elaboration& e, MadeEntry& made, const syntax::RecipeIs& recipe) {
    std::vector<std::string> known;
    std::vector<const syntax::ValueIs*> used;
    for (const Statement& statement : recipe.body) {
        const auto* takes = std::get_if<syntax::Takes>(&statement.says);
        if (!takes) continue;
        for (const syntax::ValueIs& parameter : takes->values) {
            known.push_back(parameter.name.text);
            const syntax::ValueIs* given = nullptr;
            for (const syntax::ValueIs& one : made.says->given) {
                if (one.name.text != parameter.name.text) continue;
                if (given)
                    e.error("name-twice", one.name.span, "`" + one.name.text + "` is given twice");
                else
                    given = &one;
                used.push_back(&one);
            }
            const bool has_default = parameter.value.kind != Expression::Kind::broken;
            if (!given && !has_default) {
                findings::Finding& f =
                    e.error("not-given", made.header,
                            "`" + made.name + "` is made without `" + parameter.name.text + "`");
                f.mend = "give it below, as in `" + parameter.name.text + " 400`";
                f.labels.push_back({parameter.name.span, "the recipe takes it here"});
            }
            add_value(e, *made.inside, parameter.name.text, given ? given->name.span : parameter.name.span,
                      given         ? &given->value
                      : has_default ? &parameter.value
                                    : nullptr,
                      given ? made.scope : made.inside);
        }
    }
    for (const syntax::ValueIs& one : made.says->given)
        if (std::find(used.begin(), used.end(), &one) == used.end())
            e.error("unknown-parameter", one.name.span,
                    "the recipe `" + recipe.name.text + "` takes no `" + one.name.text + "`")
                .mend = did_you_mean(one.name.text, known);
}

/// The place told for one direction, and whether it is the high side's.
const syntax::SideAt* placed(const MadeEntry& made, Direction d) {
    for (const syntax::SideAt& at : made.says->placed)
        if (direction_of(at.side.side) == d) return &at;
    return nullptr;
}

std::optional<Length> work_out_offset(Elaboration& e, const MadeCopy& copy, Direction d) {
    MadeEntry& made = *copy.made;
    Context c;
    c.scope = made.scope;
    c.each = copy.each;
    c.along = d;
    const std::optional<Interval> own = reach_of(e, *made.inside, d);
    const bool rodless = made.inside->rods[static_cast<std::size_t>(index_of(d))].empty();
    if (!own && !rodless) return std::nullopt;
    const Interval reach = own ? *own : Interval{};
    std::optional<Length> offset;
    if (const syntax::SideAt* at = placed(made, d)) {
        const auto position = length_of(e, at->position, c);
        if (!position) return std::nullopt;
        offset = *position - (is_high(at->side.side) ? reach.high : reach.low);
    } else if (made.scope->rods[static_cast<std::size_t>(index_of(d))].empty()) {
        offset = Length();
    } else {
        const auto outside = reach_of(e, *made.scope, d);
        if (!outside) return std::nullopt;
        offset = outside->low - reach.low;
    }
    for (const Instance::Row& row : copy.rows) {
        if (row.clause->direction != d) continue;
        const Length size = reach.high - reach.low;
        if (row.clause->reach) {
            const auto from = length_of(e, row.clause->reach->from, c),
                       to = length_of(e, row.clause->reach->to, c);
            if (!from || !to) return std::nullopt;
            const Length low = std::min(*from, *to), room = std::max(*from, *to) - low;
            const Length gap = (room - size * Rational(row.of)) / Rational(row.of + 1);
            if (gap < Length()) {
                e.error("row-too-long", row.clause->span,
                        std::to_string(row.of) + " of `" + made.name + "`, each " + e.shown(size) +
                            ", do not fit into " + e.shown(room));
                return std::nullopt;
            }
            offset = low - reach.low + gap + (gap + size) * Rational(row.place);
        } else if (row.clause->spaced) {
            const auto step = length_of(e, *row.clause->spaced, c);
            if (!step) return std::nullopt;
            *offset += *step * Rational(row.place);
        } else {
            e.error("open-row", row.clause->span,
                    "nothing tells how far apart the row of `" + made.name + "` stands")
                .mend = "add `spaced 400`, or `from ... to ...` for even gaps";
            return std::nullopt;
        }
    }
    return offset;
}

} // namespace

void open_recipe(Elaboration& e, MadeEntry& made) {
    const Statement* statement = find_recipe(e, made.says->recipe.text);
    if (!statement) {
        if (e.recipes_may_be_lost) return;
        std::vector<std::string> known;
        for (const auto& [name, recipe] : e.recipes) known.push_back(name);
        for (const auto& [name, recipe] : e.shipped) known.push_back(name);
        e.error("unknown-recipe", made.says->recipe.span,
                "there is no recipe `" + made.says->recipe.text + "`")
            .mend = did_you_mean(made.says->recipe.text, known);
        return;
    }
    const auto& recipe = std::get<syntax::RecipeIs>(statement->says);
    if (made.scope->depth + 1 > limits.made_depth || static_cast<int>(e.scopes.size()) > limits.parts) {
        e.error("too-deep", made.header,
                "recipes are made within recipes more than " + std::to_string(limits.made_depth) +
                    " deep, or too many in all")
            .mend = "does `" + recipe.name.text + "` make itself?";
        return;
    }
    auto inside = std::make_unique<Scope>();
    inside->parent = made.scope;
    inside->made = &made;
    inside->depth = made.scope->depth + 1;
    made.inside = inside.get();
    e.scopes.push_back(std::move(inside));
    bind(e, made, recipe);
    gather(e, *made.inside, recipe.body);
    spread_lines(e, *made.inside);
    for (std::size_t i = 0; i < made.inside->mades.size(); ++i) open_recipe(e, *made.inside->mades[i]);
}

std::optional<Length> offset_of(Elaboration& e, MadeCopy& copy, Direction d) {
    const auto i = static_cast<std::size_t>(index_of(d));
    if (copy.offset_progress[i] == Progress::done) return copy.offsets[i];
    const Working working(e, copy.offset_progress[i], copy.made->name + " " + text(d), copy.made->header);
    if (!working.begun()) return copy.offsets[i];
    try {
        copy.offsets[i] = work_out_offset(e, copy, d);
    } catch (const measure::TooLarge&) {
        e.error("too-large", copy.made->header,
                "the place of `" + copy.made->name + "` is too finely divided to be kept exact");
    }
    return copy.offsets[i];
}

} // namespace rayfleck::piece
