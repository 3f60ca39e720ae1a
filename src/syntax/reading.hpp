#pragma once
// From matched pieces to the small things of the tree: numbers, arithmetic, names, sides.

#include <optional>
#include <string_view>
#include <vector>

#include "syntax/layout.hpp"
#include "syntax/match.hpp"
#include "syntax/report.hpp"
#include "syntax/tree.hpp"

namespace rayfleck::syntax {

/// What every builder of the tree needs: the text, its number, the report.
class Reading {
  public:
    Reading(std::string_view in_text, int in_file, Report& to_report)
        : text(in_text), file(in_file), report(to_report) {}

    Span span(std::size_t begin, std::size_t end) const { return {file, begin, end}; }
    Span span(const Piece& piece) const { return {file, piece.begin, piece.end}; }
    std::string_view words(const Piece& piece) const {
        return text.substr(piece.begin, piece.end - piece.begin);
    }

    /// A piece of form sum, product, position, comparison, either and whatever they hold.
    /// Comparisons are an error here unless `conditions` is set.
    Expression expression(const Piece& piece, bool conditions = false) const;
    /// The sums (or positions) that are direct parts of a piece, in order.
    std::vector<Expression> sizes(const Piece& piece) const;
    std::vector<Expression> positions(const Piece& piece) const;
    /// A piece of form name, words, quoted, copy, which.
    Name name(const Piece& piece) const;
    Quoted quoted(const Piece& piece) const;
    /// The first direct part that is a name, words or a quoted text.
    Name name_in(const Piece& piece) const;
    Quoted quoted_in(const Piece& piece) const;
    PartName part_name(const Piece& piece) const;
    SideName side(const Piece& piece) const;
    std::vector<SideName> sides(const Piece& piece) const;
    Direction direction(const Piece& piece) const;
    FromTo from_to(const Piece& piece) const;
    /// The direct part of that form, as a direction, if there is one.
    std::optional<Direction> direction_in(const Piece& piece) const;

    std::string_view text;
    int file;
    Report& report;

  private:
    Expression number(const Piece& piece) const;
    Expression chain(const Piece& piece, bool conditions) const;
    Expression raw(const Piece& piece, bool conditions) const;
};

/// The side a word names; up is top, down is bottom. gives nothing for other words.
std::optional<Side> side_named(std::string_view word);
std::string_view word_of(Side side);
std::string_view word_of(Direction direction);

} // namespace rayfleck::syntax
