// Strain of a part, from natural strains turned by ring angle and grain.
//
// natural_strains gives three numbers; strain() writes them on the diagonal of a tensor in the frame of
// fibre, tangent and radius and turns that frame into the part. Movements of a width, a thickness, a length
// are that tensor asked along one axis, so that no second formula can disagree with it.

#include "wood/movement.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rayfleck::wood {
namespace {

/// Saturation that Eq 13-3 and the total shrinkages assume.
constexpr double saturation = 30;

double bounded(Moisture moisture, double top) { return std::clamp(moisture.in_percent(), 0.0, top); }

std::optional<Figure> coefficient(const std::optional<Figure>& tabulated,
                                  const std::optional<Figure>& shrinkage) {
    if (tabulated) return tabulated;
    if (!shrinkage) return std::nullopt;
    return Figure{shrinkage->value / (3000 - 20 * shrinkage->value), "per 1 % MC",
                  "Wood Handbook 2010, Eq 13-3 at 10 % MC, from total shrinkage", shrinkage->confirmation};
}

Strain across(const std::optional<Figure>& tabulated, const std::optional<Figure>& shrinkage, Moisture from,
              Moisture to, double top) {
    if (tabulated) return Strain::ratio(tabulated->value * (bounded(to, top) - bounded(from, top)));
    if (shrinkage) return strain_from_shrinkage(shrinkage->value, from, to);
    return Strain::ratio(0);
}

Vector turned_about_z(Vector v, Angle angle) {
    const double c = std::cos(angle.in_radians()), s = std::sin(angle.in_radians());
    return {c * v.x - s * v.y, s * v.x + c * v.y, v.z};
}

Vector product(const StrainTensor& t, Vector v) {
    return {t.xx * v.x + t.xy * v.y + t.xz * v.z, t.xy * v.x + t.yy * v.y + t.yz * v.z,
            t.xz * v.x + t.yz * v.y + t.zz * v.z};
}

Length part_of(Length whole, Strain strain) {
    return Length::from_geometry(whole.value() * strain.in_ratio());
}

} // namespace

std::string_view text(Sawn sawn) {
    switch (sawn) {
    case Sawn::flat:
        return "flat sawn";
    case Sawn::rift:
        return "rift sawn";
    case Sawn::quarter:
        break;
    }
    return "quarter sawn";
}

Angle ring_angle(Sawn sawn) { return Angle::degrees(sawn == Sawn::flat ? 0 : sawn == Sawn::rift ? 45 : 90); }

Sawn sawn_at(Angle ring) {
    const double degrees = std::abs(ring.in_degrees());
    return degrees < 30 ? Sawn::flat : degrees <= 60 ? Sawn::rift : Sawn::quarter;
}

std::optional<Figure> radial_coefficient(const Species& species) {
    return coefficient(species.coefficient_radial, species.shrinkage_radial);
}

std::optional<Figure> tangential_coefficient(const Species& species) {
    return coefficient(species.coefficient_tangential, species.shrinkage_tangential);
}

std::string_view movement_source(const Species& species) {
    if (species.is_sheet()) return species.sheet_along ? species.sheet_along->source : std::string_view{};
    if (species.shrinkage_tangential && species.shrinkage_tangential->confirmation == Confirmation::stated)
        return "the maker's own shrinkage, by Wood Handbook 2010, Eq 13-3";
    if (species.coefficient_tangential) return "Wood Handbook 2010, Eq 13-2 and Table 13-5";
    return "Wood Handbook 2010, Eq 13-3, from total shrinkage";
}

Strain strain_from_shrinkage(double shrinkage, Moisture from, Moisture to) {
    const double first = bounded(from, saturation), last = bounded(to, saturation);
    return Strain::ratio((last - first) / (100 * saturation / shrinkage - saturation + first));
}

double shrinkage_at(double shrinkage, Moisture at, Moisture full) {
    return shrinkage * (1 - bounded(at, full.in_percent()) / full.in_percent());
}

NaturalStrains natural_strains(Moisture from, Moisture to, const Species& species) {
    const double top = fibre_saturation(species).value;
    const double change = bounded(to, top) - bounded(from, top);
    if (species.is_sheet()) {
        const auto moved = [&](const std::optional<Figure>& rate) {
            return Strain::ratio(rate ? rate->value * change : 0);
        };
        return {moved(species.sheet_along), moved(species.sheet_thickness), moved(species.sheet_across)};
    }
    return {Strain::ratio(longitudinal_shrinkage.value / 100 / top * change),
            across(species.coefficient_radial, species.shrinkage_radial, from, to, top),
            across(species.coefficient_tangential, species.shrinkage_tangential, from, to, top)};
}

Strain StrainTensor::along(Vector direction) const {
    return Strain::ratio(dot(direction, product(*this, direction)));
}

Strain StrainTensor::shear(Vector one, Vector other) const {
    return Strain::ratio(dot(one, product(*this, other)));
}

StrainTensor StrainTensor::turned(const Frame& frame) const {
    // An outer axis, seen from inside the frame, is what this tensor can be asked about.
    const Vector x = frame.turn_in({1, 0, 0}), y = frame.turn_in({0, 1, 0}), z = frame.turn_in({0, 0, 1});
    const Vector tx = product(*this, x), ty = product(*this, y), tz = product(*this, z);
    return {dot(x, tx), dot(y, ty), dot(z, tz), dot(x, ty), dot(y, tz), dot(x, tz)};
}

StrainsInPlane strains_in_plane(const StrainTensor& tensor, Vector normal) {
    // Two directions of the plane, started from the axis that the normal is farthest from.
    const Vector size{std::abs(normal.x), std::abs(normal.y), std::abs(normal.z)};
    const Vector start = size.x <= size.y && size.x <= size.z ? Vector{1, 0, 0}
                         : size.y <= size.z                   ? Vector{0, 1, 0}
                                                              : Vector{0, 0, 1};
    const Vector u = unit(start - normal * dot(start, normal)), v = cross(normal, u);
    const double uu = tensor.along(u).in_ratio(), vv = tensor.along(v).in_ratio();
    const double uv = tensor.shear(u, v).in_ratio();
    const double middle = (uu + vv) / 2, half = std::hypot((uu - vv) / 2, uv);
    const double angle = half == 0 ? 0 : std::atan2(uv, (uu - vv) / 2) / 2;
    const double c = std::cos(angle), s = std::sin(angle);
    return {Strain::ratio(middle + half), Strain::ratio(middle - half), u * c + v * s, v * c - u * s};
}

StrainTensor strain(Moisture from, Moisture to, const GrainInPart& grain, const Species& species) {
    const NaturalStrains natural = natural_strains(from, to, species);
    const Angle ring = species.is_sheet() ? Angle::degrees(0) : grain.ring;
    const double c = std::cos(ring.in_radians()), s = std::sin(ring.in_radians());
    // Fibre, tangent and radius, first with the fibre along the part, then turned on the face.
    const Vector fibre = turned_about_z({1, 0, 0}, grain.on_face);
    const Vector tangent = turned_about_z({0, c, s}, grain.on_face);
    const Vector radius = turned_about_z({0, -s, c}, grain.on_face);
    const StrainTensor in_wood{natural.along.in_ratio(), natural.tangential.in_ratio(),
                               natural.radial.in_ratio()};
    return in_wood.turned(Frame{{}, fibre, tangent, radius});
}

Length movement(Length width, Moisture from, Moisture to, Angle ring, const Species& species) {
    return part_of(width, strain(from, to, {ring, Angle()}, species).along({0, 1, 0}));
}

Length movement(Length width, Moisture from, Moisture to, Sawn sawn, const Species& species) {
    return movement(width, from, to, ring_angle(sawn), species);
}

Length movement_in_thickness(Length thickness, Moisture from, Moisture to, Angle ring,
                             const Species& species) {
    return part_of(thickness, strain(from, to, {ring, Angle()}, species).along({0, 0, 1}));
}

Length movement_in_length(Length length, Moisture from, Moisture to, const Species& species) {
    return part_of(length, natural_strains(from, to, species).along);
}

Length cup_depth(Length width, Length from_pith, Moisture from, Moisture to, const Species& species) {
    if (species.is_sheet()) return {};
    const NaturalStrains swelling = natural_strains(from, to, species);
    // Shrinkages: swelling with the sign turned.
    const double difference = swelling.radial.in_ratio() - swelling.tangential.in_ratio();
    const double w = width.value();
    return Length::from_geometry(difference * w * w / (4 * from_pith.value()));
}

double diamonding(Moisture from, Moisture to, Angle ring, const Species& species) {
    return std::abs(2 * strain(from, to, {ring, Angle()}, species).yz);
}

Angle change_of_miter(Angle at, Moisture from, Moisture to, Angle ring, const Species& species) {
    const StrainTensor moved = strain(from, to, {ring, Angle()}, species);
    const double along = std::cos(at.in_radians()) * (1 + moved.xx),
                 across = std::sin(at.in_radians()) * (1 + moved.yy);
    return Angle::radians(std::atan2(across, along) - at.in_radians());
}

} // namespace rayfleck::wood
