// The pith of a board, as the maker sees it on the board's end.
//
// The growth rings are circles about the pith, so its place tells how they lie in the middle of the board's
// section: the radius goes from the pith to there, the rings run square to it. The angle of the rings, the
// name of the sawing and the bark side follow; how far the pith is off tells how much the board cups. A side
// that is not told counts as the middle of the board in that direction. Left out: rings that are no circles,
// and how the angle changes from one edge of a wide board to the other.
//
//             . - ~ - .           r = (ry, rz) from the pith to the middle of the section
//       +---------------------+   the rings' tangent is (rz, -ry), its angle to the width
//       |          x r        |   atan2(-ry, rz)
//       +---------------------+
//                 pith

#include <cmath>

#include <fmt/format.h>

#include "piece/elaboration.hpp"

namespace rayfleck::piece {
namespace {

/// No tree is thicker, mm.
constexpr double farthest = 3000;
/// A pith nearer to the middle of the section than this leaves no angle to speak of, mm. Our own choice.
constexpr double nearest = 2;

/// In (-90, 90], as GrainInPart reads it.
double ring_degrees(double ry, double rz) {
    double degrees = std::atan2(-ry, rz) * 180 / std::acos(-1.0);
    if (degrees > 90) degrees -= 180;
    if (degrees <= -90) degrees += 180;
    // Flat and quarter without the noise of the arithmetic.
    return std::abs(degrees) < 1e-9 ? 0 : degrees;
}

} // namespace

void read_pith(Elaboration& e, Instance& instance, const syntax::PithAt& says, Span span, const Context& c,
               Part& part) {
    if (!pose_of(e, instance).known) return;
    const bool staves = part.glue_up && !part.glue_up->laminated;
    Part::Pith pith;
    std::array<bool, 3> told{};
    for (const syntax::PithPlace& place : says.places) {
        const auto distance = length_of(e, place.distance, c);
        const auto side = own_side(e, instance, place.side);
        if (!distance || !side) return;
        if (*distance < Length() || distance->value() > farthest) {
            e.error("out-of-range", place.distance.span, "the pith lies between 0 and 3 m from a side").mend =
                "inwards of a side is written `from`, as in `pith 40 from left`";
            return;
        }
        if (side->axis == 0 || (staves && side->axis == 1)) {
            e.error("pith-elsewhere", place.side.span,
                    side->axis == 0
                        ? "the pith runs along the board; an end tells nothing of its place"
                        : "every stave has a pith of its own; an edge of the panel tells nothing of it")
                .mend = "tell how far it lies from a face, as in `pith 30 beyond bottom`";
            return;
        }
        if (told[static_cast<std::size_t>(side->axis)]) {
            e.error("pith-elsewhere", place.side.span,
                    "the place of the pith is told twice in the same direction")
                .mend = "tell it from a face and from an edge";
            return;
        }
        told[static_cast<std::size_t>(side->axis)] = true;
        const double size = (side->axis == 1 ? part.width : part.thickness).value();
        const double outwards = size / 2 + (place.beyond ? distance->value() : -distance->value());
        (side->axis == 1 ? pith.y : pith.z) = side->high ? outwards : -outwards;
    }
    const double ry = -pith.y, rz = -pith.z;
    if (std::hypot(ry, rz) < nearest) {
        e.error("pith-elsewhere", span,
                "the pith lies in the middle of the board, and its rings lie all ways")
            .mend = "a board with the heart in it splits; saw it from beside the pith";
        return;
    }
    const double degrees = ring_degrees(ry, rz);
    const wood::Sawn sawn = wood::sawn_at(measure::Angle::degrees(degrees));
    if (part.rings_stated || (part.sawn_stated && part.sawn != sawn)) {
        e.error("pith-elsewhere", span,
                fmt::format("with the pith there, the rings lie at {:.0f} degrees and the board is {}",
                            std::abs(degrees), wood::text(sawn)))
            .mend = part.rings_stated ? "leave one of the two out: the pith tells the angle of the rings"
                                      : "write `" + std::string(wood::text(sawn)) + "`, or leave that out";
        return;
    }
    const bool through = std::abs(rz) >= std::abs(ry);
    if (part.bark) {
        const double away = part.bark->axis == 2 ? rz : ry;
        if (part.bark->axis != 0 && std::abs(away) > nearest && (away > 0) != part.bark->high) {
            e.error("pith-elsewhere", span,
                    "the bark side looks away from the pith, and is told to look towards it")
                .mend = "leave the bark out: it follows from the pith";
            return;
        }
    } else {
        part.bark = LocalSide{through ? 2 : 1, (through ? rz : ry) > 0};
    }
    part.rings = measure::Angle::degrees(degrees);
    part.rings_stated = true;
    part.sawn = sawn;
    part.sawn_stated = true;
    part.pith = pith;
}

} // namespace rayfleck::piece
