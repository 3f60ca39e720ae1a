#pragma once
// The piece: every name looked up, every size known, every copy standing in its place.
//
// Frame: x across (left to right), y deep (front to back), z up, in millimetres; the rods' own figures. Sizes
// and lines are exact; a Frame holds floating numbers because angled parts need them. Joints are still
// requests: joinery turns them into cuts.

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "findings/finding.hpp"
#include "measure/length.hpp"
#include "measure/quantity.hpp"
#include "measure/space.hpp"
#include "piece/cut.hpp"
#include "syntax/tree.hpp"
#include "wood/moisture.hpp"
#include "wood/movement.hpp"
#include "wood/own_wood.hpp"
#include "wood/species.hpp"

namespace rayfleck::piece {

using measure::Length;
using source::Span;

struct Line {
    std::string name;
    Length at;
    Span span;
};
struct Rod {
    syntax::Direction direction = syntax::Direction::across;
    std::vector<Line> lines; ///< ascending
};

struct Note {
    std::string text;
    Span span;
};

struct GlueUp {
    std::optional<Length> at_most_wide; ///< widest stave
    std::optional<int> count;
    bool alternating = false; ///< bark faces turned about from stave to stave
    bool same_side = false;   ///< bark faces all on one side, as told
    bool laminated = false;   ///< layers of thickness instead of staves of width
};

/// A load that the text says a part carries.
struct Carries {
    double newtons = 0; ///< in all, or on each mm of length
    bool per_mm = false;
    bool in_the_middle = false; ///< else spread evenly
    std::string words;          ///< as told: `25 kg`, `20 lb per ft`, `books`
    Span span;
};

/// One copy of a part, as placed. Its body is what the placement says; joinery may make its blank longer.
struct Part {
    int id = 0;       ///< index into Piece::parts
    std::string name; ///< `leg at front-left`; unique and stable
    std::string base; ///< `leg`, as in the text (with the made thing's name before it: `upper door stile`)
    std::string copy; ///< `front-left`, or empty
    Span span;        ///< the header of its statement
    Span grain_span;  ///< where its direction or grain is set
    /// The statement `make` in the maker's own text, when the part's text is that of a shipped recipe.
    std::optional<Span> made_by;

    const wood::Species* species = nullptr; ///< never null in a piece that elaborated without errors
    wood::Sawn sawn = wood::Sawn::flat;
    bool sawn_stated = false;
    measure::Angle rings; ///< ring tangent to the wide face: flat 0, rift 45, quarter 90
    /// The angle of the rings, or the pith, was told: then its sign has a meaning.
    bool rings_stated = false;
    /// Where the pith lay on the board's end, seen from the middle of the section: along the width and the
    /// thickness, mm, own frame.
    struct Pith {
        double y = 0, z = 0;
    };
    std::optional<Pith> pith;
    std::string stock; ///< `8/4`, `2x4`, or empty
    bool size_from_stock = false;

    Length thickness, width, length; ///< of the body, > 0
    measure::Frame frame;  ///< own frame → piece; origin in the body's low corner; z towards the face side
    bool mirrored = false; ///< a mirror image of the first copy (other-handed)
    bool upright = true;   ///< all axes along the piece's axes (not splayed, canted, raked or turned)
    bool face_edge_high = true; ///< the face edge is at y = width (else y = 0)
    /// Which own side the bark looks to, if told: a face (axis 2) or an edge (axis 1).
    std::optional<LocalSide> bark;
    measure::Angle grain; ///< fibre against the length, on the face, anticlockwise seen from the face side

    /// Outline of the body in x-y, when it is not a rectangle.
    std::optional<solid::Outline> outline;
    std::vector<Cut> shaping; ///< in the order of the text
    std::optional<GlueUp> glue_up;
    std::optional<Carries> carries;
    bool sapwood_allowed = false; ///< sapwood may be in it
    bool loose = false;           ///< stands or moves free
    std::vector<Note> notes;
};

/// An option with its numbers evaluated: lengths are in mm whatever the text used, plain numbers stay plain.
struct OptionGiven {
    std::string words; ///< `haunched`, `thick`, `every`, `tails` ...
    std::vector<double> values;
    std::vector<Length> lengths; ///< exact, one per value; a plain number read in the file's unit
    std::optional<syntax::Side> side;
    std::string quoted;
    Span span;
};

/// A statement `join`, with the copies it may concern. Which of them meet, geometry tells.
struct JointWanted {
    std::vector<int> a, b; ///< part ids: a goes in, b receives
    std::string kind;      ///< canonical: `mortise and tenon`, `half-blind dovetail` ...
    std::vector<OptionGiven> options;
    std::vector<Note> notes;
    Span span;
};
struct Hardware {
    std::string name;
    int count = 1;
    std::vector<int> on, to;
    Span span;
};

struct Acceptance {
    std::string check;
    std::vector<int> parts; ///< empty: wherever it occurs
    std::string reason;
    Span span;
};

/// Parts whose grain belongs together.
struct Match {
    syntax::Matching how = syntax::Matching::in_sequence;
    std::vector<int> parts; ///< ids, in the order in which they are named and their copies stand
    Span span;
};

/// What a shop file says of the shop; defaults are our own choice where the file is silent.
struct Shop {
    std::string owner, approved_by, creator;
    std::string currency; ///< as it is printed behind a price; empty where none is told
    std::string sheet = "A3";
    bool first_angle = true;
    std::vector<std::pair<std::string, Length>> kerfs;
    Length allow_width = Length::mm(5), allow_length = Length::mm(25), allow_thickness = Length::mm(3),
           end_trim = Length::mm(25);
    /// Off the first edge of a rough board, so that it runs true along the fence.
    Length straightening = Length::mm(3);
    struct Limit {
        std::string machine, what;
        Length amount;
    };
    std::vector<Limit> limits;
    /// Least width and length of an offcut that is worth keeping.
    Length keep_width = Length::mm(50), keep_length = Length::mm(300);
    /// A board lies with its length from left to right and its width from front to back, better face up;
    /// along is counted from its left end, across from its front edge.
    struct Board {
        /// A knot, split, shake, wane or other defect; may reach over the board's edge.
        struct Flaw {
            std::string kind;
            bool round = false;
            Length along, across; ///< low corner, or of a round one the low corner of the square about it
            Length length, width; ///< of a round one both its diameter
        };
        std::string id, wood, stock, sawn;
        Length thickness, width, length;
        int count = 1;
        std::optional<double> rings;      ///< degrees to the face
        std::optional<syntax::Side> bark; ///< top or bottom (face), front or back (edge)
        Length sapwood_front, sapwood_back, checks_left, checks_right; ///< 0: none
        std::vector<Flaw> flaws;
        Span span;
    };
    std::vector<Board> boards;
    struct Price {
        std::string wood, stock, sawn;   ///< sawn empty: as it comes, pick what is wanted
        std::optional<Length> thickness; ///< as sold, when stock tells one
        double amount = 0;
        std::string per; ///< board foot, m3, m2 or piece
        std::vector<Length> lengths;
        std::optional<std::pair<Length, Length>> widths; ///< narrowest and widest board
        std::optional<std::pair<Length, Length>> sheet;  ///< width and length
        Span span;
    };
    std::vector<Price> prices;
    std::vector<std::pair<std::string, std::string>> title_fields;
    /// The maker's own woods; parts point at them, so they are shared by every copy of the piece.
    std::vector<std::shared_ptr<const wood::OwnWood>> woods;
    /// The wood of that name: one of the shop's own, else one of the tables; nullptr when there is none.
    const wood::Species* find_wood(std::string_view name) const { return wood::find(name, woods); }
};

struct Piece {
    std::string title;
    std::string size_name; ///< of the table of sizes; empty where there is none
    measure::Manner manner;
    wood::Climate climate;
    bool climate_stated = false;
    measure::Moisture made_at = measure::Moisture::percent(8);
    std::vector<Rod> rods; ///< across, deep, up; always three, maybe without lines
    std::vector<Part> parts;
    std::vector<JointWanted> joints;
    std::vector<Hardware> hardware;
    std::vector<Note> notes;
    std::vector<Acceptance> acceptances;
    std::vector<Match> matches;
    Shop shop;
    Span span; ///< of its title
};

/// Box round a part's body in the piece's frame.
measure::Box box_of(const Part& part);

} // namespace rayfleck::piece
