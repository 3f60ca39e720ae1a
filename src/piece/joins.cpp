// Joints as the text wants them: kinds by their trade names, options held against a table, parts as copies.
//
// Which copies meet, and what sizes follow, is joinery's business. An option's words are kept as written
// without the small words before a side or a number: `set 4 from top` is `set`, 4, top. Lengths are read in
// the file's unit; an option that counts or gives a slope keeps plain numbers.

#include <algorithm>

#include "piece/elaboration.hpp"

namespace rayfleck::piece {
namespace {

struct OptionRule {
    std::string_view word;
    int least = 0, most = 0; ///< how many numbers
    bool side = false;       ///< may name a side
};

constexpr OptionRule haunched{"haunched", 0, 1}, through{"through"}, stub{"stub"}, wedged{"wedged"},
    twin{"twin"}, bare_faced{"bare-faced", 0, 0, true}, loose{"loose"}, pegged{"pegged", 0, 1},
    thick{"thick", 1, 1}, wide{"wide", 1, 1}, long_{"long", 1, 1}, deep{"deep", 1, 1},
    shoulder{"shoulder", 1, 1}, set{"set", 1, 1, true}, stopped{"stopped", 1, 1, true}, every{"every", 1, 1},
    tails{"tails", 1, 1}, slope{"slope", 2, 2}, dowels{"dowels", 1, 1}, diameter{"diameter", 1, 1},
    gap{"gap", 1, 1}, glued{"glued", 0, 0, true}, glued_all{"glued"}, dry{"dry"}, spline{"spline", 0, 1},
    keys{"keys", 0, 1}, screws{"screws", 1, 1}, fingers{"fingers", 1, 1}, pins{"pins", 0, 1},
    buttons{"buttons", 1, 1};

struct KindRule {
    std::string_view name;
    std::vector<OptionRule> options;
    bool quoted = false;
};

/// Only what the joint's file in the joinery room reads: an option that would be passed over is an error
/// here.
const std::vector<KindRule>& kinds() {
    static const std::vector<KindRule> all{
        {"mortise and tenon",
         {haunched, through, stub, wedged, twin, bare_faced, loose, pegged, thick, wide, long_, shoulder, set,
          diameter, glued_all, dry}},
        {"bridle", {thick, deep, pegged, glued_all, dry, set}},
        {"half lap", {deep, glued_all, dry, pegged}},
        {"cross lap", {deep, glued_all, dry, pegged}},
        {"dado", {deep, stopped, glued, dry, bare_faced, through, thick, wide}},
        {"rabbet", {deep, wide, glued, dry}},
        {"groove", {deep, wide, thick, gap, stopped, set, glued, dry, through}},
        {"tongue and groove", {deep, thick, long_, gap, glued, dry}},
        {"breadboard end", {thick, long_, deep, wide, gap, glued, dry, pegged, every}},
        {"dowels", {dowels, diameter, every, deep, long_, set, glued, dry}},
        {"screws", {screws, every, diameter, long_, set}, true},
        {"slotted screws", {screws, every, diameter, long_, set, gap}, true},
        {"buttons", {buttons, every, deep, thick, gap, set}},
        {"glue", {glued}},
        {"miter", {spline, keys, glued_all, dry, thick, deep, wide}},
        {"dovetail", {tails, slope, pins, glued_all, dry, wide, shoulder}},
        {"half-blind dovetail", {tails, slope, pins, deep, glued_all, dry, wide, shoulder}},
        {"sliding dovetail", {deep, slope, stopped, shoulder, glued, dry, wide, thick, through}},
        {"finger joint", {fingers, wide, glued_all, dry, pegged}},
        {"notch over", {deep, gap, glued_all, dry}},
    };
    return all;
}

/// Other ways to say a kind.
constexpr std::array<std::pair<std::string_view, std::string_view>, 20> other_names{{
    {"mortise-and-tenon", "mortise and tenon"},
    {"tenon", "mortise and tenon"},
    {"mitre", "miter"},
    {"half-lap", "half lap"},
    {"cross-lap", "cross lap"},
    {"housing", "dado"},
    {"rebate", "rabbet"},
    {"dovetails", "dovetail"},
    {"half-blind dovetails", "half-blind dovetail"},
    {"through dovetail", "dovetail"},
    {"through dovetails", "dovetail"},
    {"finger joints", "finger joint"},
    {"box joint", "finger joint"},
    {"dowel", "dowels"},
    {"screw", "screws"},
    {"button", "buttons"},
    {"bridle joint", "bridle"},
    {"tongue-and-groove", "tongue and groove"},
    {"breadboard ends", "breadboard end"},
    {"miters", "miter"},
}};

const KindRule* find_kind(const std::string& word) {
    std::string_view name = word;
    for (const auto& [other, meant] : other_names)
        if (name == other) name = meant;
    for (const KindRule& kind : kinds())
        if (kind.name == name) return &kind;
    return nullptr;
}

/// The option's words without small words at their end: `set from` is `set`.
std::string main_words(std::string words) {
    for (const std::string_view small : {" from", " at", " in", " to", " of"})
        if (words.size() > small.size() &&
            words.compare(words.size() - small.size(), small.size(), small) == 0)
            words.resize(words.size() - small.size());
    return words;
}

bool is_counted(const std::string& word) {
    return word == "tails" || word == "dowels" || word == "screws" || word == "fingers" ||
           word == "buttons" || word == "slope" || word == "keys";
}

/// The values of one option, evaluated.
bool read_values(Elaboration& e, const syntax::JointOption& says, const std::string& first, const Context& c,
                 OptionGiven& out) {
    for (const Expression& x : says.values) {
        if (is_counted(first)) {
            const auto number = number_of(e, x, c, "a number");
            if (!number) return false;
            if (*number <= Rational(0)) {
                e.error("joint-option", x.span, "`" + first + "` must be more than nought");
                return false;
            }
            if (first != "slope" && *number > Rational(limits.per_joint)) {
                e.error("too-many", x.span,
                        "`" + first + "` counts " + measure::decimal(*number, 0) + ", more than " +
                            std::to_string(limits.per_joint) + " in one joint");
                return false;
            }
            if (first != "slope" && !number->is_whole()) {
                e.error("joint-option", x.span,
                        "`" + first + "` counts, and is " + measure::decimal(*number, 3));
                return false;
            }
            out.values.push_back(number->value());
            out.lengths.push_back(length_in(*number, e.unit_of(x.span)));
            continue;
        }
        const auto length = length_of(e, x, c);
        if (!length) return false;
        if (*length < Length()) {
            e.error("joint-option", x.span, "`" + first + "` cannot be " + e.shown(*length));
            return false;
        }
        if (first == "every" && *length < Length::mm(limits.closest)) {
            e.error("too-many", x.span,
                    "`every " + e.shown(*length) + "` is closer than " + e.shown(Length::mm(limits.closest)))
                .mend = "set them further apart";
            return false;
        }
        out.values.push_back(length->value());
        out.lengths.push_back(*length);
    }
    return true;
}

std::optional<OptionGiven> read_option(Elaboration& e, const syntax::JointOption& says, const KindRule& kind,
                                       const Context& c) {
    OptionGiven out;
    out.words = main_words(says.words);
    out.span = says.span;
    if (says.side) out.side = says.side->side;
    if (says.quoted) out.quoted = says.quoted->text;
    // `1 screw` is `screws`.
    for (const OptionRule& rule : kind.options)
        if (is_counted(std::string(rule.word)) && out.words + "s" == rule.word) out.words = rule.word;
    const std::string first = out.words.substr(0, out.words.find(' '));
    const std::string kind_name(kind.name);
    if (out.words.empty()) {
        if (says.quoted && kind.quoted && says.values.empty()) return out;
        e.error("joint-option", says.span, "`" + kind_name + "` does not understand this option").mend =
            says.values.empty() ? "leave it out" : "say what the number is, as in `6 thick`";
        return std::nullopt;
    }
    const auto rule = std::find_if(kind.options.begin(), kind.options.end(),
                                   [&](const OptionRule& r) { return r.word == first; });
    if (rule == kind.options.end()) {
        std::vector<std::string> known;
        for (const OptionRule& r : kind.options) known.emplace_back(r.word);
        e.error("joint-option", says.span, "`" + kind_name + "` has no option `" + out.words + "`").mend =
            did_you_mean(first, known);
        return std::nullopt;
    }
    const int given = static_cast<int>(says.values.size());
    if (given < rule->least || given > rule->most) {
        const std::string example = first == "slope"   ? "`slope 1:8`"
                                    : rule->least == 1 ? "one number"
                                                       : "no number";
        e.error("joint-option", says.span,
                "`" + first + "` of `" + kind_name + "` takes " +
                    (rule->least == 0 && rule->most == 1 ? "at most one number" : example) + ", not " +
                    std::to_string(given));
        return std::nullopt;
    }
    if (out.side && !rule->side) {
        e.error("joint-option", says.span, "`" + first + "` of `" + kind_name + "` takes no side").mend =
            "leave `" + text(*out.side) + "` out";
        return std::nullopt;
    }
    if (first == "glued" && !rule->side && out.words != "glued") {
        e.error("joint-option", says.span, "`" + kind_name + "` is glued all over or dry").mend =
            "write `glued` or `dry`";
        return std::nullopt;
    }
    if (!read_values(e, says, first, c, out)) return std::nullopt;
    return out;
}

std::vector<int> ids_of(Elaboration& e, Scope& scope, const std::string& prefix, const syntax::PartName& name,
                        const std::map<std::string, int>& ids) {
    std::vector<int> out;
    for (const PartRef& ref : parts_named(e, scope, name))
        if (const auto found = ids.find(prefix + ref.name); found != ids.end()) out.push_back(found->second);
    return out;
}

void read_join(Elaboration& e, Scope& scope, const std::string& prefix, const syntax::JoinIs& says, Span span,
               const std::map<std::string, int>& ids, Piece& piece) {
    Context c;
    c.scope = &scope;
    const bool named = !parts_named(e, scope, says.a).empty() && !parts_named(e, scope, says.b).empty();
    const KindRule* kind = find_kind(says.kind.text);
    if (!kind) {
        std::vector<std::string> known;
        for (const KindRule& k : kinds()) known.emplace_back(k.name);
        for (const auto& [other, meant] : other_names) known.emplace_back(other);
        findings::Finding& f =
            e.error("unknown-joint", says.kind.span, "there is no joint `" + says.kind.text + "`");
        const auto near = findings::near_word(says.kind.text, known);
        known.resize(kinds().size());
        f.mend = near ? "did you mean `" + *near + "`?" : did_you_mean("", known);
        return;
    }
    JointWanted out;
    out.kind = std::string(kind->name);
    out.span = span;
    bool sound = named;
    for (const syntax::JointOption& option : says.options) {
        const auto given = read_option(e, option, *kind, c);
        sound = sound && given;
        if (given) out.options.push_back(*given);
    }
    for (const syntax::NoteIs& note : says.notes) out.notes.push_back({note.text.text, note.text.span});
    sound = says_once(e, out.options, out.kind) && sound;
    if (!sound) return;
    out.a = ids_of(e, scope, prefix, says.a, ids);
    out.b = ids_of(e, scope, prefix, says.b, ids);
    if (out.a.empty() || out.b.empty()) return;
    piece.joints.push_back(std::move(out));
}

void read_hardware(Elaboration& e, Scope& scope, const std::string& prefix, const syntax::HardwareIs& says,
                   Span span, const std::map<std::string, int>& ids, Piece& piece) {
    Hardware out;
    out.name = says.name.text;
    out.span = span;
    Context c;
    c.scope = &scope;
    if (says.count) {
        const auto count = count_of(e, *says.count, c, "the number of fittings", 10000);
        if (!count) return;
        out.count = *count;
    }
    if (says.on) out.on = ids_of(e, scope, prefix, *says.on, ids);
    if (says.to) out.to = ids_of(e, scope, prefix, *says.to, ids);
    piece.hardware.push_back(std::move(out));
}

void read_match(Elaboration& e, Scope& scope, const std::string& prefix, const syntax::MatchIs& says,
                Span span, const std::map<std::string, int>& ids, Piece& piece) {
    Match out;
    out.how = says.how;
    out.span = span;
    for (const syntax::PartName& name : says.parts)
        for (const int id : ids_of(e, scope, prefix, name, ids)) {
            const Part& part = piece.parts[static_cast<std::size_t>(id)];
            for (const Match& other : piece.matches)
                if (std::find(other.parts.begin(), other.parts.end(), id) != other.parts.end()) {
                    e.error("said-twice", name.span, "the grain of `" + part.name + "` is matched twice")
                        .labels.push_back({other.span, "the first time"});
                    return;
                }
            if (std::find(out.parts.begin(), out.parts.end(), id) != out.parts.end()) {
                e.error("said-twice", name.span, "`" + part.name + "` is named twice").mend =
                    "leave one of them out";
                return;
            }
            out.parts.push_back(id);
        }
    if (out.parts.empty()) return; // and reported
    const auto part = [&](int id) -> const Part& { return piece.parts[static_cast<std::size_t>(id)]; };
    const Part& first = part(out.parts.front());
    for (const int id : out.parts)
        if (part(id).species != first.species) {
            e.error("cannot-match", span,
                    "`" + first.name + "` and `" + part(id).name + "` are of different woods")
                .mend = "match parts of one wood";
            return;
        }
    if (says.how == syntax::Matching::book_matched && out.parts.size() % 2 != 0) {
        e.error("cannot-match", span,
                "book-matched parts come in pairs, and " + std::to_string(out.parts.size()) + " are named")
            .mend = "name two parts, or a part with two copies";
        return;
    }
    piece.matches.push_back(std::move(out));
}

void read_scope(Elaboration& e, Scope& scope, const std::string& prefix,
                const std::map<std::string, int>& ids, Piece& piece) {
    for (const syntax::Statement* statement : scope.rest) {
        if (const auto* join = std::get_if<syntax::JoinIs>(&statement->says)) {
            read_join(e, scope, prefix, *join, statement->header, ids, piece);
        } else if (const auto* hardware = std::get_if<syntax::HardwareIs>(&statement->says)) {
            read_hardware(e, scope, prefix, *hardware, statement->header, ids, piece);
        } else if (const auto* note = std::get_if<syntax::PieceNote>(&statement->says)) {
            // Once, however often the recipe is made.
            const bool again = std::any_of(piece.notes.begin(), piece.notes.end(),
                                           [&](const Note& n) { return n.span == note->text.span; });
            if (!again) piece.notes.push_back({note->text.text, note->text.span});
        } else if (const auto* accept = std::get_if<syntax::Accept>(&statement->says)) {
            Acceptance out{accept->check.text, {}, accept->reason.text, statement->header};
            if (out.reason.find_first_not_of(" \t") == std::string::npos) {
                e.error("no-reason", accept->reason.span, "a finding is accepted here without a reason")
                    .mend = "say why it may stay, as in `because \"the boards have rested for a year\"`";
                continue;
            }
            if (accept->part) {
                out.parts = ids_of(e, scope, prefix, *accept->part, ids);
                if (out.parts.empty()) continue;
            }
            piece.acceptances.push_back(std::move(out));
        } else if (const auto* match = std::get_if<syntax::MatchIs>(&statement->says)) {
            read_match(e, scope, prefix, *match, statement->header, ids, piece);
        }
    }
    for (const auto& made : scope.mades) {
        expand(e, *made);
        if (!made->inside) continue;
        for (const auto& copy : made->copies)
            read_scope(e, *made->inside,
                       prefix + made->name + " " + (copy->copy.empty() ? "" : copy->copy + " "), ids, piece);
    }
}

} // namespace

void read_joins(Elaboration& e, Scope& scope, const std::map<std::string, int>& ids, Piece& piece) {
    read_scope(e, scope, "", ids, piece);
}

} // namespace rayfleck::piece
