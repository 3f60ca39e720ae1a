#pragma once
// Lumber by its trade name, and how the yard counts it.
//
// "8/4" is hardwood sawn 2 in thick and sold rough; "2x4" is softwood dimension, dressed to 1 1/2 by 3 1/2
// in. The name is never the size. Dressed sizes: American Softwood Lumber Standard, DOC PS 20, dry (19 %
// moisture or less) and green; hardwood surfaced two sides: thicknesses of the National Hardwood Lumber
// Association. Board measure is NHLA's. All exact. Left out: grades, and how far a mill's rough lumber is
// over its name.

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "measure/length.hpp"
#include "wood/figure.hpp"

namespace rayfleck::wood {

using measure::Length;
using measure::Rational;

enum class LumberKind {
    hardwood,  ///< quarters of an inch, rough, of any width
    board,     ///< PS 20, nominal below 2 in
    dimension, ///< PS 20, nominal 2 in to below 5 in
    timber,    ///< PS 20, nominal 5 in and over both ways
};

/// "hardwood", "board", "dimension lumber", "timber".
std::string_view text(LumberKind kind);

/// PS 20 dresses wood that is still wet a little fuller, so that it shrinks to the dry size.
enum class Seasoning { dry, green };

/// Lumber as it is named in the yard and as it really is.
struct Lumber {
    std::string name; ///< in standard form: "8/4", "2x4", "1 1/4x6"
    LumberKind kind = LumberKind::hardwood;
    /// The thickness it is named and counted by; for hardwood this is the rough thickness as sold.
    Length rough_thickness;
    /// Surfaced on both faces.
    Length dressed_thickness;
    /// Nothing for hardwood, which comes in random widths.
    std::optional<Length> nominal_width, dressed_width;
    std::string_view source;
    Confirmation confirmation = Confirmation::none;
};

/// The lumber a maker names: "8/4", "5/4", "2x4", "1 x 6", "2 X 10", "5/4x6", "1 1/4 x 6", "1-1/4x6", inch
/// marks allowed. gives  nothing when the text is no such name or the standard has no such size
std::optional<Lumber> lumber_named(std::string_view name, Seasoning seasoning = Seasoning::dry);

/// Whether the text has the form of a lumber name, of a size that may or may not exist: "2x7" has, "40 x 40"
/// has too.
bool looks_like_lumber(std::string_view name);

/// Rough thicknesses of hardwood, thin to thick: 3/8, 2/4, 5/8, 3/4, 4/4 and so on to 16/4.
const std::vector<Lumber>& hardwood_thicknesses();
/// The thinnest hardwood that yields the finished thickness when surfaced two sides; nothing above 16/4.
std::optional<Lumber> thinnest_hardwood_for(Length finished);

/// Sawn thicknesses customary in Europe, mm, before planing. From memory.
/// source  EN 1313-1 (softwood, British custom) and EN 1313-2 (hardwood)
std::span<const int> european_softwood_thicknesses();
std::span<const int> european_hardwood_thicknesses();
inline constexpr std::string_view european_sizes_source = "EN 1313-1 and EN 1313-2";

/// Change of a sawn European size with moisture, counted from 20 % MC.
inline constexpr Figure european_size_change{0.25, "% of size per 1 % MC", "EN 1313-1, clause 5",
                                             Confirmation::read};
/// Size of a sawn European board at another moisture; size is that at 20 % MC.
Length european_size_at(Length size, double moisture);

/// Board feet, exact: thickness by width by length, each in inches, over 144. No rounding, no least
/// thickness.
Rational board_feet(Length thickness, Length width, Length length);

/// NHLA surface measure of a board: square feet of its face as a yard writes them.
///
/// width    full width, > 0
/// length   counts down to the whole foot
/// gives    width in inches times length in feet over 12, to the nearest whole; a half counts up, where NHLA
///          leaves it to the inspector
std::int64_t surface_measure(Length width, Length length);
/// NHLA board feet of a board: surface measure by nominal thickness, under 1 in counted as 1.
Rational board_feet_by_surface(std::int64_t surface, Length rough_thickness);
/// Width as written in an export tally: nearest whole inch, an exact half up or down as the tally alternates.
std::int64_t tally_width(Length width, bool raise_half);

/// NHLA standard lengths: 4 to 16 ft by the foot.
inline constexpr int standard_length_least_ft = 4;
inline constexpr int standard_length_greatest_ft = 16;
std::vector<Length> standard_lengths();

} // namespace rayfleck::wood
