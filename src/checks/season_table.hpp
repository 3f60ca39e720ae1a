#pragma once
// How the piece moves through the year: every part with its width when made, driest and dampest, and what it
// has to move in.
//
// The same figures as the checks use, told of sound pieces as well: a student sees that a top of 400 mm
// breathes by 6 mm a year, and which slot takes that up. Widths are those across the part, at right angles to
// its length and its thickness; a part whose grain stands askew moves by its tensor in that direction.

#include <optional>
#include <string>
#include <vector>

#include "joinery/model.hpp"

namespace rayfleck::checks {

/// Room in a groove, both sides together, for a panel along one of its own axes (0 length, 1 width). All in
/// mm.
struct GrooveRoom {
    double room = 0;
    double swells = 0;  ///< by the dampest season, against its frame
    double shrinks = 0; ///< by the driest
    double leave = 0;   ///< gap on each side to leave at making
    double left_in = 0; ///< how far it still stands in a groove when driest, pushed to the other side
    std::vector<int> holders;
};
/// Nothing for a part that does not float in grooves at both of its edges along that axis.
std::optional<GrooveRoom> groove_room(const joinery::Model& model, int part, int axis);

/// What slots, buttons or a breadboard's tenons take up.
struct SlideRoom {
    int joint = -1;
    int mover = -1;   ///< the part that moves
    double needs = 0; ///< either way, at the place that travels farthest
    double room = 0;  ///< either way
    double leave = 0; ///< room to give it
};
std::vector<SlideRoom> slide_rooms(const joinery::Model& model);

/// A door, drawer or lid in its opening, both sides together.
struct OpeningRoom {
    int part = -1;            ///< that grows most
    std::string name;         ///< of what stands in the opening: `door`, `upper drawer`
    int axis = 0;             ///< of the piece: 0 across, 1 deep, 2 up
    double gap = 0;           ///< as drawn
    double dry = 0, damp = 0; ///< growth against the opening
    double leave = 0;
};
std::vector<OpeningRoom> opening_rooms(const joinery::Model& model);

/// A glued miter, as it would open if nothing held it. Positive at the outer corner.
struct MiterOpening {
    int joint = -1;
    double dry = 0, damp = 0;
};
std::vector<MiterOpening> miter_openings(const joinery::Model& model);

/// Width of one board of the part, mm: of a stave as told, or as shops make them; else of the part.
double stave_width(const piece::Part& part);
/// From the pith to the nearer face of the board, mm: as told, else `usual`.
double pith_to_face(const piece::Part& part, double usual);

/// Parts made alike, through the year. Lengths in mm.
struct MovingPart {
    std::vector<int> parts;
    double width = 0;         ///< when made
    double dry = 0, damp = 0; ///< change to the driest and the dampest season
    double range() const { return damp - dry; }
    /// Hollow of a wide board that nothing holds flat: of one board or stave, at the worse season.
    double hollow = 0;
    /// How far a stout square goes out of square over its width.
    double out_of_square = 0;
    std::string where; ///< where it may move: `in its grooves`, `on slots`, `held`
    std::optional<double> room, needs, leave;
};

struct SeasonTable {
    std::vector<MovingPart> parts; ///< those that move most first
    std::vector<OpeningRoom> openings;
    std::vector<MiterOpening> miters;
};
SeasonTable season_table(const joinery::Model& model);

} // namespace rayfleck::checks
