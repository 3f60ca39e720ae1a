// Gathering: every name of a text goes into its scope before anything is worked out, so that order does not
// matter.
//
// The main file and all it brings in share one scope; a recipe's body gets a scope for every `make`. What the
// reading of the text complained of may have declared names: those sorts of names are then never called
// unknown.

#include <algorithm>

#include "piece/elaboration.hpp"

namespace rayfleck::piece {
namespace {

using syntax::Statement;

bool within(Span inner, Span outer) {
    return inner.file == outer.file && inner.begin >= outer.begin &&
           inner.begin <= std::max(outer.end, outer.begin);
}

void lose_all(Elaboration& e) {
    e.lines_may_be_lost = e.values_may_be_lost = e.parts_may_be_lost = e.recipes_may_be_lost = true;
}

void lose(Elaboration& e, const Statement& statement, Span error) {
    const auto& says = statement.says;
    if (std::holds_alternative<syntax::RodIs>(says)) {
        e.lines_may_be_lost = true;
    } else if (std::holds_alternative<syntax::SizesAre>(says) ||
               std::holds_alternative<syntax::ValueIs>(says) || std::holds_alternative<syntax::Takes>(says)) {
        e.values_may_be_lost = true;
    } else if (std::holds_alternative<syntax::PartIs>(says)) {
        // A broken copies clause loses copies; a broken phrase loses no name.
        if (within(error, statement.header)) e.parts_may_be_lost = true;
    } else if (std::holds_alternative<syntax::MakeIs>(says)) {
        e.parts_may_be_lost = true;
    } else if (std::holds_alternative<syntax::BringIn>(says)) {
        lose_all(e);
    } else if (const auto* recipe = std::get_if<syntax::RecipeIs>(&says)) {
        for (const Statement& inner : recipe->body)
            if (within(error, inner.span)) lose(e, inner, error);
    } else if (const auto* broken = std::get_if<syntax::BrokenStatement>(&says)) {
        const std::string& word = broken->word;
        if (word == "rod")
            e.lines_may_be_lost = true;
        else if (word == "value" || word == "sizes" || word == "takes")
            e.values_may_be_lost = true;
        else if (word == "part" || word == "make")
            e.parts_may_be_lost = true;
        else if (word == "recipe")
            e.recipes_may_be_lost = e.parts_may_be_lost = true;
        else if (word != "require" && word != "join" && word != "note" && word != "hardware" &&
                 word != "accept" && word != "climate" && word != "made" && word != "piece" &&
                 word != "units" && word != "shop")
            lose_all(e);
    }
}

bool takes_name(Elaboration& e, Scope& scope, const std::string& name, Span span, const std::string& what) {
    const auto found = scope.part_names.find(name);
    if (found == scope.part_names.end()) {
        scope.part_names[name] = span;
        return true;
    }
    findings::Finding& f = e.error("name-twice", span, "there are two " + what + "s `" + name + "`");
    f.mend = "give one of them another name";
    f.labels.push_back({found->second, "the first"});
    return false;
}

void gather_part(Elaboration& e, Scope& scope, const Statement& statement, const syntax::PartIs& says) {
    if (says.name.text.empty() || !takes_name(e, scope, says.name.text, says.name.span, "part")) return;
    auto part = std::make_unique<PartEntry>();
    part->name = says.name.text;
    part->header = statement.header;
    part->span = statement.span;
    part->says = &says;
    part->scope = &scope;
    part->said_twice = !says_once(e, says);
    scope.items.push_back({part.get(), nullptr});
    scope.parts.push_back(std::move(part));
}

void gather_made(Elaboration& e, Scope& scope, const Statement& statement, const syntax::MakeIs& says) {
    if (says.name.text.empty() || !takes_name(e, scope, says.name.text, says.name.span, "part")) return;
    auto made = std::make_unique<MadeEntry>();
    made->name = says.name.text;
    made->header = statement.header;
    made->span = statement.span;
    made->says = &says;
    made->scope = &scope;
    scope.items.push_back({nullptr, made.get()});
    scope.mades.push_back(std::move(made));
}

void gather_sizes(Elaboration& e, Scope& scope, const syntax::SizesAre& says, Span span) {
    if (!e.size_name.empty()) {
        e.error("sizes-twice", span, "there are two tables of sizes");
        return;
    }
    std::vector<std::string> names;
    const syntax::SizesAre::Row* taken = nullptr;
    for (const auto& row : says.rows) {
        if (std::find(names.begin(), names.end(), row.name.text) != names.end())
            e.error("name-twice", row.name.span, "there are two sizes `" + row.name.text + "`");
        names.push_back(row.name.text);
        if (!taken && (!e.size || *e.size == row.name.text)) taken = &row;
    }
    if (!taken) {
        if (e.size)
            e.error("unknown-size", span, "there is no size `" + *e.size + "`").mend =
                did_you_mean(*e.size, names);
        e.values_may_be_lost = true;
        return;
    }
    e.size_name = taken->name.text;
    for (std::size_t i = 0; i < says.columns.size(); ++i)
        add_value(e, scope, says.columns[i].text, says.columns[i].span,
                  i < taken->values.size() ? &taken->values[i] : nullptr, &scope);
}

void gather_recipe(Elaboration& e, const Statement& statement, const syntax::RecipeIs& says) {
    if (says.name.text.empty()) return;
    const auto [found, fresh] = e.recipes.emplace(says.name.text, &statement);
    if (fresh) return;
    e.error("name-twice", says.name.span, "there are two recipes `" + says.name.text + "`")
        .labels.push_back({std::get<syntax::RecipeIs>(found->second->says).name.span, "the first"});
}

void bring_in(Elaboration& e, Scope& scope, const syntax::BringIn& says) {
    const auto found = e.project.brought.find(says.path.text);
    // A file that cannot be read is reported by whoever reads files.
    if (found == e.project.brought.end() || found->second < 0 ||
        found->second >= static_cast<int>(e.project.trees.size())) {
        lose_all(e);
        return;
    }
    if (!e.gathered.insert(found->second).second) return;
    gather(e, scope, e.project.trees[static_cast<std::size_t>(found->second)].statements);
}

} // namespace

std::string did_you_mean(const std::string& word, const std::vector<std::string>& known) {
    if (const auto near = findings::near_word(word, known)) return "did you mean `" + *near + "`?";
    std::string list;
    for (std::size_t i = 0; i < known.size() && i < 12; ++i) list += (i ? ", " : "") + known[i];
    return list.empty() ? list : "known here: " + list + (known.size() > 12 ? " ..." : "");
}

void note_losses(Elaboration& e) {
    for (const findings::Finding& finding : e.findings)
        if (finding.severity == findings::Severity::error) e.text_errors.push_back(finding.span);
    for (const syntax::Tree& tree : e.project.trees) {
        if (!tree.broken) continue;
        bool found = false;
        for (const Span& error : e.text_errors) {
            if (error.file != tree.file) continue;
            found = true;
            bool placed = false;
            for (const Statement& statement : tree.statements)
                if (within(error, statement.span)) {
                    placed = true;
                    lose(e, statement, error);
                }
            if (!placed) lose_all(e);
        }
        if (!found) lose_all(e);
    }
}

void add_value(Elaboration& e, Scope& scope, const std::string& name, Span span, const Expression* x,
               Scope* read_in) {
    if (name.empty()) return;
    const auto found = scope.values.find(name);
    if (found != scope.values.end()) {
        e.error("name-twice", span, "there are two values `" + name + "`")
            .labels.push_back({found->second->span, "the first"});
        return;
    }
    if (const LineEntry* line = find_line(scope, name)) {
        e.error("name-twice", span, "`" + name + "` is a value and a line")
            .labels.push_back({line->span, "the line"});
        return;
    }
    auto value = std::make_unique<ValueEntry>();
    value->name = name;
    value->span = span;
    value->expression = x;
    value->scope = read_in;
    scope.values[name] = std::move(value);
}

void gather(Elaboration& e, Scope& scope, const std::vector<Statement>& statements) {
    for (const Statement& statement : statements) {
        const auto& says = statement.says;
        if (const auto* value = std::get_if<syntax::ValueIs>(&says)) {
            add_value(e, scope, value->name.text, value->name.span, &value->value, &scope);
        } else if (const auto* sizes = std::get_if<syntax::SizesAre>(&says)) {
            gather_sizes(e, scope, *sizes, statement.header);
        } else if (const auto* rod = std::get_if<syntax::RodIs>(&says)) {
            read_rod(e, scope, *rod, statement.header);
            scope.counted.push_back(rod);
        } else if (const auto* part = std::get_if<syntax::PartIs>(&says)) {
            gather_part(e, scope, statement, *part);
        } else if (const auto* made = std::get_if<syntax::MakeIs>(&says)) {
            gather_made(e, scope, statement, *made);
        } else if (const auto* recipe = std::get_if<syntax::RecipeIs>(&says)) {
            gather_recipe(e, statement, *recipe);
        } else if (const auto* brought = std::get_if<syntax::BringIn>(&says)) {
            bring_in(e, scope, *brought);
        } else if (std::holds_alternative<syntax::Require>(says) ||
                   std::holds_alternative<syntax::JoinIs>(says) ||
                   std::holds_alternative<syntax::HardwareIs>(says) ||
                   std::holds_alternative<syntax::PieceNote>(says) ||
                   std::holds_alternative<syntax::Accept>(says) ||
                   std::holds_alternative<syntax::MatchIs>(says)) {
            scope.rest.push_back(&statement);
        } else if (std::holds_alternative<syntax::PieceIs>(says) ||
                   std::holds_alternative<syntax::UnitsAre>(says) ||
                   std::holds_alternative<syntax::ClimateIs>(says) ||
                   std::holds_alternative<syntax::MadeAt>(says) ||
                   std::holds_alternative<syntax::ShopIn>(says)) {
            e.settings.push_back(&statement);
        } else if (const auto* wood = std::get_if<syntax::OwnWood>(&says); wood && wood->figures.empty()) {
            e.error("out-of-place", statement.header,
                    "the wood of a part is a phrase of it, and stands here by itself")
                .mend = "set it below its part, deeper than the line that begins with `part`";
        } else if (!std::holds_alternative<syntax::Takes>(says) &&
                   !std::holds_alternative<syntax::BrokenStatement>(says)) {
            e.error("out-of-place", statement.header, "this belongs in a shop file, not in a piece").mend =
                "write it in a file that begins with `shop file \"...\"`, and name that file: shop \"...\"";
        }
    }
}

} // namespace rayfleck::piece
