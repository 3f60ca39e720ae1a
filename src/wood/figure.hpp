#pragma once
// A figure of the trade or of science, with its unit and where it comes from.
//
// A number without its source cannot be argued with at the bench, so value, unit and source travel together,
// and with them how the source was confirmed. Numbers that must stay exact (a third of the stock) are a
// Proportion. Texts are literals of this program, so a Figure may be a constant and costs no memory of its
// own.

#include <string>
#include <string_view>

#include "measure/length.hpp"

namespace rayfleck::wood {

/// How far a figure can be trusted.
enum class Confirmation {
    read,           ///< seen in the named work itself
    read_secondary, ///< seen in a public page or file that transcribes or cites the named work
    from_memory,    ///< written from memory, no page seen: never to be taken for verified
    stated,         ///< told by the maker in the shop file; the program has not seen where it comes from
    none,           ///< common practice, no published source
};

/// The confirmation in words: "read", "read (secondary)", "from memory", "not verified", "no published
/// source".
std::string_view text(Confirmation confirmation);

/// One number that someone may want to look up.
struct Figure {
    double value = 0;
    std::string_view unit;   ///< as printed after the value: "%", "MPa", "mm"; empty for a plain ratio
    std::string_view source; ///< work, edition, table; or what the number rests on when there is none
    Confirmation confirmation = Confirmation::none;
};

/// A share of some size, kept exact: a tenon is 1/3 of the thickness of the stock.
struct Proportion {
    int top = 1;
    int bottom = 1;
    std::string_view of; ///< the size it is a share of: "thickness of the piece that is cut"
    std::string_view source;
    Confirmation confirmation = Confirmation::none;

    measure::Rational exact() const { return {top, bottom}; }
    /// The share of the given size.
    measure::Length share_of(measure::Length whole) const { return whole * exact(); }
    /// The same as a Figure, for a finding that quotes its limit.
    constexpr Figure figure() const {
        return {static_cast<double>(top) / static_cast<double>(bottom), "", source, confirmation};
    }
};

/// Value and unit: `4.8 %`, `12600 MPa`, `0.00353 per 1 % MC`; at most six significant digits.
std::string text(const Figure& figure);
/// Value, unit, source and confirmation: `4.8 % (Wood Handbook 2010, Table 4-3; read)`.
std::string text_with_source(const Figure& figure);
/// Length of a figure whose unit is "mm" or "in".
/// fails  throws std::logic_error for any other unit: a fault of the program, not of the maker's text
measure::Length length(const Figure& figure);

} // namespace rayfleck::wood
