// The words of the errors of a text.
//
// An error says what was expected, behind what, and what stands there instead; when that is nearly a word
// that could stand there, it asks for that word. The marker stands under what is wrong, or right behind the
// last right token when something is missing at the end.

#include "syntax/report.hpp"

#include <algorithm>
#include <initializer_list>
#include <sstream>
#include <utility>

#include "syntax/parse.hpp"

namespace rayfleck::syntax {
namespace {

/// So many findings are kept while reading; far more than are shown, so that the shown ones are the first of
/// the text.
constexpr std::size_t most_kept = 2000;

bool in_word(char c) {
    const auto u = static_cast<unsigned char>(c);
    return (u >= '0' && u <= '9') || (u >= 'a' && u <= 'z') || (u >= 'A' && u <= 'Z') || u >= 0x80 ||
           c == '-' || c == '\'' || c == '/' || c == '.' || c == '_';
}

std::vector<std::string> split(const std::string& words) {
    std::vector<std::string> out;
    std::istringstream in(words);
    for (std::string word; in >> word;) out.push_back(word);
    return out;
}

std::string quote(std::string_view token) { return "'" + std::string(token) + "'"; }

bool is_one_of(std::string_view word, std::initializer_list<std::string_view> words) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

bool is_measure_word(std::string_view word) { return is_one_of(word, {"deep", "long", "thick", "wide"}); }

/// The words that no name may hold without quotes; the grammar's `reserved`.
bool is_reserved(std::string_view word) {
    return is_one_of(word, {"across",  "after", "all",  "and",   "at",   "because", "before",
                            "between", "by",    "each", "every", "from", "in",      "like",
                            "of",      "on",    "or",   "to",    "up",   "with",    "x"});
}

/// What to do about a name that holds or is a word that it cannot be; empty when there is no such name.
/// `said`: the line up to `found`.
std::string name_remedy(const Missed& missed, std::string_view said, std::string_view before,
                        std::string_view found, std::string_view form) {
    const std::string_view what = missed.what;
    const auto in_quotes = [](std::string_view word) {
        return "a name that holds " + quote(word) + " stands in double quotes";
    };
    // `join a with b`, `over` and nothing behind it: what is expected was left out, and the phrase goes on.
    const bool said_later = form.find(" " + std::string(found) + " ") != form.npos;
    if (is_measure_word(found) || is_reserved(found)) {
        if (is_one_of(what, {"a name of one word", "the name of a line"}) || what.starts_with("a line:"))
            return quote(found) + " is no name: choose another word";
        if (!said_later && (what == "a name" || what.starts_with("the name of"))) return in_quotes(found);
    }
    const bool ends_here = what.starts_with("a comma or");
    const bool may_go_on = ends_here || is_one_of(what, {"'to'", "'with'", "'by'", "'because'", "'from'"});
    if (before.empty() || !may_go_on) return {};
    if (is_measure_word(before)) {
        for (const std::string_view of : {"thickness of", "width of", "length of"})
            if (said.find(of) != said.npos) return "behind " + quote(of) + " " + in_quotes(before);
        return {};
    }
    const bool takes_copies = form.find("COPIES") != form.npos;
    if (ends_here && takes_copies &&
        (found == "at" || found == "each" ||
         (found == "and" && is_one_of(before, {"left", "front", "top"})) ||
         (found == "of" && before == "row")))
        return "set a comma before the copies";
    const bool after_name = !(before.front() >= '0' && before.front() <= '9') && !is_reserved(before) &&
                            (form.find("PART") != form.npos || form.find("NAME") != form.npos ||
                             form.find("RECIPE") != form.npos);
    if (!after_name) return {};
    if (is_measure_word(found))
        return "a name cannot end with " + quote(found) +
               ": set a word behind it, or write it in double quotes";
    if (is_reserved(found) && (ends_here || !said_later)) return in_quotes(found);
    return {};
}

/// Some wrong tokens have a remedy of their own.
std::string remedy(const Missed& missed, std::string_view before, std::string_view found) {
    if (found == "," && !before.empty() && before.back() >= '0' && before.back() <= '9')
        return "a fraction is written with a point, not with a comma: 1.5";
    if (missed.what.starts_with("a unit")) {
        if (found.starts_with('-'))
            return "set a blank on both sides of the minus; a mixed number is written 2-1/2";
        if (found.starts_with('x')) return "set blanks around the x: 20 x 60";
        if (found.starts_with('.')) return "write one decimal point, and no comma";
    }
    if (missed.what.starts_with("a blank on both sides")) return "set a blank on both sides of the minus";
    if (found.size() > 1 && found[0] == 'x' && found[1] >= '0' && found[1] <= '9')
        return "set blanks around the x: 20 x 60";
    if (found.starts_with("\xE2\x80\x9C") || found.starts_with("\xE2\x80\x9D"))
        return "use straight double quotes: \"...\"";
    if (found.starts_with("\xE2\x80\x93") || found.starts_with("\xE2\x88\x92"))
        return "use the plain hyphen as minus: -";
    return {};
}

} // namespace

std::string_view token_at(std::string_view text, std::size_t at, std::size_t end) {
    if (at >= end) return {};
    std::size_t last = at;
    if (text[at] == '"') {
        ++last;
        while (last < end && text[last] != '"') ++last;
        if (last < end) ++last;
        // Enough to recognise a long text by.
        constexpr std::size_t longest = 40;
        if (last - at > longest) last = at + 1;
        return text.substr(at, last - at);
    }
    while (last < end && in_word(text[last])) ++last;
    if (last == at) ++last;
    constexpr std::size_t longest_word = 60;
    if (last - at > longest_word) {
        last = at + longest_word;
        while (last > at + 1 && (static_cast<unsigned char>(text[last]) & 0xC0) == 0x80) --last;
    }
    return text.substr(at, last - at);
}

std::string_view token_before(std::string_view text, std::size_t end) {
    if (end == 0 || end > text.size()) return {};
    std::size_t begin = end;
    const char last = text[end - 1];
    if (last == ' ' || last == '\t' || last == '\n' || last == '\r' || last == ',') return {};
    // A unit sign belongs to its number.
    if ((last == '"' || last == '%') && end > 1 && in_word(text[end - 2])) --begin;
    while (begin > 0 && in_word(text[begin - 1]) && end - begin < 60) --begin;
    while (begin < end && (static_cast<unsigned char>(text[begin]) & 0xC0) == 0x80) ++begin;
    if (begin == end) --begin;
    return text.substr(begin, end - begin);
}

bool Report::full() const { return count_ >= most_kept; }

void Report::error(const char* name, std::size_t begin, std::size_t end, std::string message,
                   std::string mend) {
    if (kept_.contains(begin)) return;
    ++count_;
    if (kept_.size() >= most_kept) return;
    findings::Finding finding;
    finding.name = name;
    finding.severity = findings::Severity::error;
    finding.span = {file_, begin, end};
    finding.message = std::move(message);
    finding.mend = std::move(mend);
    kept_.emplace(begin, std::move(finding));
}

void Report::missed(const Missed& missed, std::size_t stretch_end, std::string_view form) {
    if (full()) {
        ++count_;
        return;
    }
    if (missed.too_deep) {
        error("nested-too-deep", missed.at, missed.at + 1,
              "more than " + std::to_string(limits.parentheses) + " parentheses within each other",
              "give parts of the arithmetic names of their own with 'value'");
        return;
    }
    std::string_view before = token_before(text_, missed.token_end);
    std::string_view found = token_at(text_, missed.at, stretch_end);
    // Behind a minus the minus itself need not be named.
    if (missed.what.starts_with("a blank on both sides") || missed.what.ends_with("behind the minus"))
        before = {};
    if (found == " " || found == "\t") found = {};
    // `a side: left, right` is expected as `a side after 'face', not '3': left, right`.
    const std::size_t colon = missed.what.find(": ");
    std::string what = missed.what.substr(0, colon);
    if (found == "," && what.starts_with("a comma or")) what = "the end of the line";
    const std::string choice = colon == std::string::npos ? std::string() : missed.what.substr(colon);
    const std::string written = form.empty() ? std::string() : "write: " + std::string(form);
    if (found.empty()) {
        error("cannot-read", missed.token_end, missed.token_end,
              "expected " + what + (before.empty() ? "" : " after " + quote(before)) + choice, written);
        return;
    }
    const std::size_t end = missed.at + found.size();
    if (const auto near = findings::near_word(std::string(found), split(missed.words))) {
        const std::string both =
            before.empty() ? std::string(found) : std::string(before) + " " + std::string(found);
        error("near-word", missed.at, end, quote(both) + ": did you mean " + quote(*near) + "?", written);
        return;
    }
    const std::size_t line = text_.find_last_of("\r\n", missed.at) + 1; // npos + 1 is 0
    std::string mend = remedy(missed, before, found);
    if (mend.empty()) {
        const std::string name =
            name_remedy(missed, text_.substr(line, missed.at - line), before, found, form);
        mend = written + (written.empty() || name.empty() ? "" : "; ") + name;
    }
    error("cannot-read", missed.at, end,
          "expected " + what + (before.empty() ? "" : " after " + quote(before)) + ", not " + quote(found) +
              choice,
          mend);
}

std::string Report::unknown_word(std::size_t begin, std::size_t end, const std::vector<std::string>& known,
                                 const std::string& message, const std::string& mend) {
    if (full()) {
        ++count_;
        return {};
    }
    const std::string word(token_at(text_, begin, end));
    const auto near = findings::near_word(word, known);
    if (near) {
        error("near-word", begin, begin + word.size(), quote(word) + ": did you mean " + quote(*near) + "?");
    } else {
        error("unknown-word", begin, begin + word.size(), quote(word) + " " + message, mend);
    }
    return near.value_or("");
}

void Report::hand_on(findings::Findings& findings) const {
    std::size_t shown = 0;
    for (const auto& [place, finding] : kept_) {
        if (shown == static_cast<std::size_t>(limits.errors)) {
            findings::Finding note;
            note.name = "more-errors";
            note.severity = findings::Severity::note;
            note.span = finding.span;
            note.message = full() ? "and so many more errors in this file that the rest was not read"
                                  : "and " + std::to_string(count_ - shown) + " more errors in this file";
            findings.add(std::move(note));
            break;
        }
        findings.add(finding);
        ++shown;
    }
}

} // namespace rayfleck::syntax
