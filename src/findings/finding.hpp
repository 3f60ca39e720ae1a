#pragma once
// What the program has to say about a piece: at which place, how bad, what was seen, what would be right.
//
// Two sorts share one type. Errors of the text (it does not compile; exit status 2) carry Severity::error.
// Lessons of the checks carry fault, caution or note. Wording: what is there, the number, the limit, then the
// remedy; lower case, no full stop, trade words, the maker's own units.

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "measure/space.hpp"
#include "source/text.hpp"

namespace rayfleck::findings {

enum class Severity {
    note,    ///< worth knowing
    caution, ///< likely trouble, or outside a trade rule
    fault,   ///< it will break, split or not go together
    error,   ///< the text does not compile
};

std::string name(Severity severity);

/// A second place that the message speaks of, with what there is to see there.
struct Label {
    source::Span span;
    std::string text;
};

/// An edge that moves, for the picture beside a finding: how far along a direction of the piece, in two
/// states.
struct Movement {
    measure::Point at;   ///< in the piece's frame
    measure::Vector way; ///< of length 1
    double first = 0, second = 0; ///< mm along the way; negative against it
    std::string first_said, second_said; ///< with the figure in the maker's units: `driest: 1.1 mm`
};

struct Finding {
    /// The check's or the error's stable name, like `short-grain`. Never reused once retired.
    std::string name;
    Severity severity = Severity::note;
    source::Span span;
    /// What is there, with its number.
    std::string message;
    /// What would be allowed and who says so: `limit 12 mm, common practice, no published source`. May be
    /// empty.
    std::string limit;
    /// What to change, with the new number worked out. May be empty.
    std::string mend;
    std::vector<Label> labels;
    /// Instance names of the parts it is about, most to blame first. Empty for errors of the text.
    std::vector<std::string> parts;
    /// Where on the piece, in the piece's frame.
    std::optional<measure::Point> at;
    /// What moves there through the year; at most a few.
    std::vector<Movement> movements;
    /// Where it breaks or splits: lines on the part, in the piece's frame.
    std::vector<std::pair<measure::Point, measure::Point>> weak_lines;
    /// Set when the maker accepted it in the text; it stays listed and no longer counts.
    std::optional<std::string> accepted_because;
};

/// The findings of one run, in the order of the text once sorted.
class Findings {
  public:
    Finding& add(Finding finding);
    /// An error of the text. Chain `.mend = …` on what it gives.
    Finding& error(std::string name, source::Span span, std::string message);
    bool any(Severity at_or_above) const;
    bool empty() const { return list_.empty(); }
    std::size_t size() const { return list_.size(); }
    /// By file, place, then severity (worst first), then name; equal ones are dropped.
    void sort();
    void append(Findings other);

    auto begin() const { return list_.begin(); }
    auto end() const { return list_.end(); }
    auto begin() { return list_.begin(); }
    auto end() { return list_.end(); }

  private:
    std::vector<Finding> list_;
};

/// The word of `known` that `word` was probably meant to be: nearest by edits (a swap of neighbours counts
/// one), no farther than a third of its letters; none when two are equally near.
std::optional<std::string> near_word(const std::string& word, const std::vector<std::string>& known);

} // namespace rayfleck::findings
