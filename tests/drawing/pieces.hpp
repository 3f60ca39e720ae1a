#pragma once
// Pieces built by hand for the drawing tests: parts, cuts and joints written down directly, without the
// language, so that these tests stand on their own. Sizes are invented.

#include <memory>
#include <string>
#include <vector>

#include "cutlist/cutlist.hpp"
#include "joinery/model.hpp"

namespace rayfleck::testing {

/// A model with the piece it speaks of.
struct BuiltPiece {
    std::unique_ptr<piece::Piece> piece = std::make_unique<piece::Piece>();
    joinery::Model model;
    cutlist::CutList cut_list;
    findings::Findings findings;
};

/// A side table: four tapered legs, four haunched aprons, a glued-up top. Millimetres, first angle.
BuiltPiece side_table(const std::string& sheet = "A3");
/// A wall shelf: two sides with dados, two shelves, a back in grooves; inches, third angle.
BuiltPiece wall_shelf(const std::string& sheet = "Tabloid");
/// One board with nothing done to it.
BuiltPiece one_board(const std::string& sheet = "A4");
/// A rack of many slats between two long rails with many bores: 40 parts.
BuiltPiece slatted_rack(int slats = 38, const std::string& sheet = "A3");
/// A board with an arched edge, a turned post and a mitred frame: shapes that are not boxes.
BuiltPiece odd_shapes(const std::string& sheet = "A3");
/// A rail of 2.4 m, 60 wide at its low end and 90 at its high one, arched below: chord 2400, the arc's centre
/// 18000 under the middle of it.
BuiltPiece long_arched_rail();

/// What strains a layout: many distinct parts, long names without a space, sizes from a splinter to a beam, a
/// rod line far outside, a great many findings.
BuiltPiece hard_piece(int parts, const std::string& sheet = "A4");
/// A piece of which nothing is left.
BuiltPiece no_parts();

} // namespace rayfleck::testing
