#pragma once
// How wood moves: strain in every direction of a part, between two moisture contents.
//
// Wood swells differently along the fibres, across the growth rings (radial) and along them (tangential). A
// part's strain is therefore a symmetric tensor, diagonal in the frame of fibre, radius and tangent. It is
// turned into the part's frame by the ring angle (how the board was sawn) and by the angle of the grain on
// the face, and from there into the piece by the part's frame. Every question of cross grain is the
// difference of two such tensors.
//
// Radial and tangential strain: Wood Handbook Eq 13-2 with the coefficient of Table 13-5 where the table has
// the wood, else Eq 13-3 from total shrinkage. The handbook gives Eq 13-2 for 6 to 14 % MC and warns of
// errors of about 5 %. Ring angles between flat and quarter: plane transformation of strain, derived, not
// read in a publication. Left out: rings curved within one part (one angle stands for all), reaction and
// juvenile wood.

#include <optional>
#include <string_view>

#include "measure/length.hpp"
#include "measure/quantity.hpp"
#include "measure/space.hpp"
#include "wood/moisture.hpp"
#include "wood/species.hpp"

namespace rayfleck::wood {

using measure::Angle;
using measure::Frame;
using measure::Length;
using measure::Strain;
using measure::Vector;

/// How a board was sawn from the log.
enum class Sawn { flat, rift, quarter };

/// "flat sawn", "rift sawn", "quarter sawn".
std::string_view text(Sawn sawn);
/// Angle between the wide face and the tangent of the growth rings: flat 0, rift 45, quarter 90 degrees.
Angle ring_angle(Sawn sawn);
/// The name for a ring angle: below 30 degrees flat, to 60 rift, above quarter; the sign does not matter.
/// source  common practice, no published source read
Sawn sawn_at(Angle ring);

/// Strains along the three natural directions of wood, between two moisture contents; positive when swelling.
/// For sheet goods: with the face grain, in thickness (as radial), across the face grain (as tangential).
struct NaturalStrains {
    Strain along;
    Strain radial;
    Strain tangential;
};

/// from, to  moisture above fibre saturation counts as fibre saturation, below 0 as 0
/// fails     never
/// source    across: see the head of this file. Along: 0.2 % green to oven-dry over the range to fibre
/// saturation,
///           the upper end of the handbook's 0.1 to 0.2 % (longitudinal_shrinkage below)
NaturalStrains natural_strains(Moisture from, Moisture to, const Species& species);

/// What the natural strains of a species rest on, as a source to quote in a finding.
std::string_view movement_source(const Species& species);

/// Coefficient per 1 % MC at 10 % MC: Table 13-5 where it exists, else Eq 13-3 taken at 10 %, S/(3000 - 20
/// S). Nothing for a wood of unknown shrinkage; no wood of the list lacks it.
std::optional<Figure> radial_coefficient(const Species& species);
std::optional<Figure> tangential_coefficient(const Species& species);

/// Strain from total shrinkage by Wood Handbook Eq 13-3.
/// shrinkage  percent, green to oven-dry; > 0 and below 50
/// from, to   clamped to 0 .. 30 % MC
Strain strain_from_shrinkage(double shrinkage, Moisture from, Moisture to);
/// Shrinkage from green to the given moisture, percent, by Wood Handbook Eq 4-9; 0 at and above saturation.
double shrinkage_at(double shrinkage, Moisture at, Moisture saturation = Moisture::percent(30));

/// Shrinkage along the grain, green to oven-dry, of normal wood.
inline constexpr Figure longitudinal_shrinkage_least{0.1, "%", "Wood Handbook 2010, p. 4-5",
                                                     Confirmation::read_secondary};
inline constexpr Figure longitudinal_shrinkage{0.2, "%", "Wood Handbook 2010, p. 4-5",
                                               Confirmation::read_secondary};
/// Error that the handbook itself expects of Eq 13-2.
inline constexpr Figure movement_error{5, "%", "Wood Handbook 2010, ch. 13", Confirmation::read};

/// Strain in every direction, in some frame: the six components of a symmetric tensor, as ratios.
/// The shears are tensor components: half the change of a right angle in radians.
struct StrainTensor {
    double xx = 0, yy = 0, zz = 0;
    double xy = 0, yz = 0, xz = 0;

    /// Strain of a line along the direction, which must be of length 1.
    Strain along(Vector direction) const;
    /// Tensor shear between two directions of length 1 at right angles.
    Strain shear(Vector one, Vector other) const;
    /// The same strain seen from the frame around: this tensor is in the axes of `frame`, the result in the
    /// axes that `frame` is stated in. For a part: its frame carries the tensor into the piece.
    StrainTensor turned(const Frame& frame) const;

    friend StrainTensor operator-(const StrainTensor& a, const StrainTensor& b) {
        return {a.xx - b.xx, a.yy - b.yy, a.zz - b.zz, a.xy - b.xy, a.yz - b.yz, a.xz - b.xz};
    }
    friend StrainTensor operator+(const StrainTensor& a, const StrainTensor& b) {
        return {a.xx + b.xx, a.yy + b.yy, a.zz + b.zz, a.xy + b.xy, a.yz + b.yz, a.xz + b.xz};
    }
    friend StrainTensor operator*(const StrainTensor& a, double s) {
        return {a.xx * s, a.yy * s, a.zz * s, a.xy * s, a.yz * s, a.xz * s};
    }
};

/// The greatest and least strain of the directions within a plane.
struct StrainsInPlane {
    Strain greatest, least;
    Vector towards_greatest, towards_least; ///< of length 1, in the plane, at right angles
};

/// normal  of the plane, of length 1: for a glued contact, the normal of the contact
StrainsInPlane strains_in_plane(const StrainTensor& tensor, Vector normal);

/// How the wood lies in a part.
struct GrainInPart {
    /// Between the wide face (y) and the ring tangent, -90 to 90 degrees. Positive turns the tangent from +y
    /// towards +z. The sign matters for the shear of the section alone (a square that becomes a diamond).
    Angle ring;
    /// Fibre against the part's length on the face, turned from +x towards +y; 0 when the length runs with
    /// the grain.
    Angle on_face;
};

/// Strain of a part between two moistures, in the part's frame (x length, y width, z thickness).
/// Sheet goods take no notice of the ring angle.
StrainTensor strain(Moisture from, Moisture to, const GrainInPart& grain, const Species& species);

/// How much wider or narrower a board gets between two seasons.
///
/// width    across the grain on the board's face, > 0
/// from,to  moisture, percent of oven-dry mass
/// ring     decides between radial and tangential strain
/// gives    signed length, to the nearest 1/160000 mm; positive when the board swells
/// fails    never; moisture above fibre saturation counts as fibre saturation
/// source   see the head of this file
Length movement(Length width, Moisture from, Moisture to, Angle ring, const Species& species);
Length movement(Length width, Moisture from, Moisture to, Sawn sawn, const Species& species);
/// The same through the thickness of a board and along its length.
Length movement_in_thickness(Length thickness, Moisture from, Moisture to, Angle ring,
                             const Species& species);
Length movement_in_length(Length length, Moisture from, Moisture to, const Species& species);

/// How hollow a flat-sawn board gets: depth of the hollow in the middle of its width.
///
/// width      of the board, > 0
/// from_pith  distance from the pith to the board's face, > 0; the smaller, the worse
/// gives      positive when the bark side goes hollow (drying), negative when the heart side does; 0 for
/// sheets source     (s_T - s_R) w^2 / (4 a): small-angle geometry, derived for this program; that the bark
/// side goes
///            hollow on drying: Wood Handbook, ch. 13, from memory
Length cup_depth(Length width, Length from_pith, Moisture from, Moisture to, const Species& species);

/// How far a square section leans into a diamond: change of its right angle in radians, 0 for rings that lie
/// along a side, greatest for rings on the diagonal. source  shear of the rotated strain, derived for this
/// program
double diamonding(Moisture from, Moisture to, Angle ring, const Species& species);

/// Change of the angle of a miter: the angle between the part's length and the cut, which a part that shrinks
/// across and not along makes more acute. at  the angle as cut, between 0 and 90 degrees. ring  as for
/// movement source  arctan of the cut's two legs after movement, derived for this program
Angle change_of_miter(Angle at, Moisture from, Moisture to, Angle ring, const Species& species);

} // namespace rayfleck::wood
