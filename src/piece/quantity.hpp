#pragma once
// A quantity: what an expression of the language comes to.
//
// Lengths, angles and percentages never mix. A bare number is kept bare, with the unit that its file would
// give it, until it is seen whether a length, an angle or a count is wanted: in `2 * leg-size` both sides are
// bare and the product is still read in the file's unit. Everything is an exact fraction. A quantity is
// unknown when the fault has been reported already; whatever is worked out from it is unknown too, and quiet.

#include <optional>
#include <string>

#include "measure/length.hpp"
#include "measure/quantity.hpp"
#include "syntax/tree.hpp"

namespace rayfleck::piece {

using measure::Length;
using measure::Rational;

struct Quantity {
    enum class Kind { unknown, number, length, angle, percent, text, truth };
    Kind kind = Kind::unknown;
    Rational amount;                        ///< plain, mm, degrees or percent
    measure::Unit unit = measure::Unit::mm; ///< of a bare number, should a length be wanted
    bool written = false;                   ///< a number that stands in the text itself, not behind a name
    std::string text;
    bool truth = false;

    static Quantity number(Rational amount, measure::Unit unit, bool written);
    static Quantity length(Length length);
    static Quantity of_text(std::string text);
    bool known() const { return kind != Kind::unknown; }
};

/// So many of a unit, exact.
Length length_in(Rational amount, measure::Unit unit);
/// A length, or a bare number read in its file's unit; nothing for anything else.
std::optional<Length> as_length(const Quantity& quantity);
/// "a length", "an angle", "a number" ...
std::string what_it_is(const Quantity& quantity);
/// As printed in a message: `400 mm`, `12 degrees`, `7`.
std::string shown(const Quantity& quantity, const measure::Manner& manner);

/// One of the four operations, or a comparison.
/// gives  unknown and a reason where the two do not go together, or where the result cannot be held
struct Worked {
    Quantity result;
    std::string fault; ///< empty when it worked, or when an operand was unknown
    std::string mend;
};
Worked combine(syntax::Expression::Kind operation, const Quantity& a, const Quantity& b);
/// The larger or the smaller of two.
Worked choose(bool larger, const Quantity& a, const Quantity& b);
/// Half way between two.
Worked halfway(const Quantity& a, const Quantity& b);

} // namespace rayfleck::piece
