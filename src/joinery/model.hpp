#pragma once
// The model: every part with its blank, its cuts and its finished solid; where parts touch and how they are
// held.
//
// What joinery gives and everything later reads. Solids are in the parts' own frames (see piece/cut.hpp);
// contacts are in the piece's frame.

#include <memory>
#include <string>
#include <vector>

#include "findings/finding.hpp"
#include "piece/piece.hpp"
#include "solid/solid.hpp"

namespace rayfleck::joinery {

using measure::Length;

/// A part as it is made.
struct Made {
    const piece::Part* part = nullptr;
    /// Blank in the part's own frame: the body, and what joints leave standing beyond it.
    measure::Box blank;
    Length thickness, width, length; ///< of the blank: what the cut list says
    std::vector<piece::Cut> cuts;    ///< shaping first, then joints, in the order of the text
    solid::Shape blank_shape;
    std::vector<solid::Shape> tools; ///< one or more per cut
    std::vector<int> tool_cut;       ///< cut that a tool belongs to
    solid::Solid solid;
};

enum class Hold { glued, fastened, free };

/// A place where two parts lie against each other.
struct Contact {
    int a = 0, b = 0; ///< indices into Model::made
    int joint = -1;   ///< index into Model::joints; -1: they only touch
    Hold hold = Hold::free;
    measure::Plane plane; ///< normal out of a
    std::vector<std::vector<measure::Point>> loops;
    double area = 0; ///< mm²
    /// Directions (unit, both ways) in which a may slide on b; empty when held, or when nothing limits it
    /// otherwise.
    std::vector<measure::Vector> may_slide;
    /// Room for that sliding in mm, each way, where the joint leaves a stated gap; infinity where it is open.
    double room = 0;
    /// For fastened contacts: the points at which it is held (screws, pegs); empty means all over.
    std::vector<measure::Point> held_at;
};

/// A size that a joint uses, with where it comes from, for the drawing and for JSON.
struct Size {
    std::string what; ///< `tenon thickness`
    double value = 0; ///< mm, or degrees or a count
    std::string unit; ///< mm, degrees, or empty
    std::string from; ///< `stated`, or the rule and its source
};

/// One joint between two parts.
struct Joint {
    int a = 0, b = 0; ///< indices into Model::made; a goes into b
    std::string kind; ///< as wanted, in full: `mortise and tenon, haunched`
    int wanted = 0;   ///< index into Piece::joints
    std::vector<Size> sizes;
    /// Unit direction in which a moves to come together with b; zero when there are several.
    measure::Vector assembly;
    measure::Point at; ///< middle of the joint
    source::Span span;
};

struct HardwareItem {
    std::string name;
    int count = 1;
    std::vector<int> parts;
    std::string from; ///< `stated`, or the joint that needs it
};

struct Model {
    const piece::Piece* piece = nullptr;
    std::vector<Made> made; ///< same order as piece->parts
    std::vector<Joint> joints;
    std::vector<Contact> contacts;
    std::vector<HardwareItem> hardware;
    /// Parts of the piece carved and placed, for views, sections and clashes; refers into `made`.
    std::vector<solid::Placed> placed() const;
};

/// Lowers every joint to cuts and contacts, then carves every part.
/// A joint that cannot be made as asked (parts do not meet, no room for the tenon) becomes a finding and is
/// left out. The piece must outlive the model.
Model build(const piece::Piece& piece, findings::Findings& findings);

/// Blanks, cuts and contacts, one a line, stable: the expected output of the tests of this room.
std::string print(const Model& model);

} // namespace rayfleck::joinery
