// Copies: how many there are of a part or a made thing, and what each is called.
//
// Pairs and corners are mirror images of one instance; the slats of a row and the parts at each of several
// lines are instances of their own, since each may be cut otherwise where its neighbours lean. Names follow
// the clauses in the order of the text: `slat at left 2`.

#include "piece/elaboration.hpp"

namespace rayfleck::piece {
namespace {

using syntax::Copies;

/// One copy by one clause.
struct Choice {
    std::string word;
    std::array<bool, 3> flipped{};
    const LineEntry* each = nullptr;
    std::optional<Instance::Row> row;
};

constexpr std::array<bool, 3> flip(bool across, bool deep, bool up) { return {across, deep, up}; }

std::vector<Choice> choices_of(Elaboration& e, Scope& scope, const Copies& clause) {
    switch (clause.kind) {
    case Copies::Kind::each_corner:
        return {{"front-left", flip(false, false, false), nullptr, {}},
                {"front-right", flip(true, false, false), nullptr, {}},
                {"back-left", flip(false, true, false), nullptr, {}},
                {"back-right", flip(true, true, false), nullptr, {}}};
    case Copies::Kind::left_right:
        return {{"left", flip(false, false, false), nullptr, {}},
                {"right", flip(true, false, false), nullptr, {}}};
    case Copies::Kind::front_back:
        return {{"front", flip(false, false, false), nullptr, {}},
                {"back", flip(false, true, false), nullptr, {}}};
    case Copies::Kind::top_bottom:
        return {{"bottom", flip(false, false, false), nullptr, {}},
                {"top", flip(false, false, true), nullptr, {}}};
    case Copies::Kind::row: {
        Context c;
        c.scope = &scope;
        if (!clause.count) return {};
        const std::optional<int> count =
            count_of(e, *clause.count, c, "the number in the row", limits.copies);
        std::vector<Choice> out;
        for (int i = 0; count && i < *count; ++i)
            out.push_back({std::to_string(i + 1), {}, nullptr, Instance::Row{&clause, i, *count}});
        return out;
    }
    case Copies::Kind::each_of: {
        std::vector<Choice> out;
        for (const syntax::Name& name : clause.lines) {
            if (const LineEntry* line = find_line(scope, name.text)) {
                out.push_back({name.text, {}, line, {}});
                continue;
            }
            if (e.lines_may_be_lost) continue;
            std::vector<std::string> known;
            for (const auto& [word, line] : scope.line_names) known.push_back(word);
            findings::Finding& f = e.error("unknown-line", name.span, "there is no line `" + name.text + "`");
            if (const auto near = findings::near_word(name.text, known))
                f.mend = "did you mean `" + *near + "`?";
        }
        return out;
    }
    }
    return {};
}

/// Every combination, the first clause changing slowest. Nothing when a clause is faulty or there are too
/// many.
std::vector<Choice> combine(Elaboration& e, Scope& scope, const std::vector<Copies>& clauses,
                            const std::string& name) {
    std::vector<Choice> all{{}};
    bool each_told = false;
    for (const Copies& clause : clauses) {
        if (clause.kind == Copies::Kind::each_of) {
            if (each_told) {
                e.error("each-twice", clause.span, "`" + name + "` stands at each of two sets of lines")
                    .mend = "use `row of` for one of them";
                return {};
            }
            each_told = true;
        }
        const std::vector<Choice> more = choices_of(e, scope, clause);
        if (all.size() * more.size() > static_cast<std::size_t>(limits.parts)) {
            e.error("too-many", clause.span,
                    "`" + name + "` has more than " + std::to_string(limits.parts) + " copies");
            return {};
        }
        std::vector<Choice> next;
        for (const Choice& a : all)
            for (const Choice& b : more) {
                Choice both = a;
                both.word += (a.word.empty() || b.word.empty() ? "" : " ") + b.word;
                for (std::size_t d = 0; d < 3; ++d) both.flipped[d] = a.flipped[d] != b.flipped[d];
                if (b.each) both.each = b.each;
                next.push_back(std::move(both));
            }
        all = std::move(next);
    }
    return all;
}

/// The rows of a combination, in the order of the clauses; `number` counts through the combinations.
std::vector<Instance::Row> rows_of(const std::vector<Copies>& clauses,
                                   const std::vector<std::vector<Choice>>& choices, std::size_t number) {
    std::vector<Instance::Row> rows;
    for (std::size_t i = clauses.size(); i-- > 0;) {
        const Choice& choice = choices[i][number % choices[i].size()];
        number /= choices[i].size();
        if (choice.row) rows.insert(rows.begin(), *choice.row);
    }
    return rows;
}

std::vector<std::vector<Choice>> all_choices(Elaboration& e, Scope& scope,
                                             const std::vector<Copies>& clauses) {
    std::vector<std::vector<Choice>> out;
    for (const Copies& clause : clauses) out.push_back(choices_of(e, scope, clause));
    return out;
}

bool same(const Instance& instance, const std::vector<Instance::Row>& rows, const LineEntry* each) {
    if (instance.each != each || instance.rows.size() != rows.size()) return false;
    for (std::size_t i = 0; i < rows.size(); ++i)
        if (instance.rows[i].place != rows[i].place) return false;
    return true;
}

} // namespace

void expand(Elaboration& e, PartEntry& part) {
    if (part.expansion == Progress::done) return;
    const Working working(e, part.expansion, part.name, part.header);
    if (!working.begun()) return;
    const std::vector<Choice> all = combine(e, *part.scope, part.says->copies, part.name);
    const auto choices = all_choices(e, *part.scope, part.says->copies);
    for (std::size_t i = 0; i < all.size(); ++i) {
        const std::vector<Instance::Row> rows = rows_of(part.says->copies, choices, i);
        Instance* found = nullptr;
        for (const auto& instance : part.instances)
            if (same(*instance, rows, all[i].each)) found = instance.get();
        if (!found) {
            auto instance = std::make_unique<Instance>();
            instance->part = &part;
            instance->number = static_cast<int>(part.instances.size());
            instance->copy = all[i].word;
            instance->each = all[i].each;
            instance->rows = rows;
            found = instance.get();
            part.instances.push_back(std::move(instance));
        }
        part.standings.push_back({found, all[i].flipped, all[i].word});
    }
}

void expand(Elaboration& e, MadeEntry& made) {
    if (made.expansion == Progress::done) return;
    const Working working(e, made.expansion, made.name, made.header);
    if (!working.begun()) return;
    const std::vector<Choice> all = combine(e, *made.scope, made.says->copies, made.name);
    const auto choices = all_choices(e, *made.scope, made.says->copies);
    for (std::size_t i = 0; i < all.size(); ++i) {
        auto copy = std::make_unique<MadeCopy>();
        copy->made = &made;
        copy->flipped = all[i].flipped;
        copy->each = all[i].each;
        copy->rows = rows_of(made.says->copies, choices, i);
        copy->copy = all[i].word;
        made.copies.push_back(std::move(copy));
    }
}

} // namespace rayfleck::piece
