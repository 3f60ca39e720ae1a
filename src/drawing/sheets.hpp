#pragma once
// What the sheets of a set share while they are drawn, and the four kinds of sheet.

#include <optional>
#include <string>
#include <vector>

#include "drawing/draw.hpp"
#include "drawing/paper.hpp"
#include "drawing/scale.hpp"
#include "drawing/view.hpp"

namespace rayfleck::drawing {

/// The model and how it is to be drawn.
struct Job {
    const joinery::Model& model;
    const findings::Findings& findings;
    const cutlist::CutList& cut_list;
    const assembly::Order& order;
    const Wishes& wishes;
    Paper paper;
    bool first_angle = true;
    measure::Manner manner;
    std::vector<solid::Placed> placed;
    /// Index into cut_list.rows of each part; -1 for a part of no row.
    std::vector<int> row_of_part;
    /// Null when no lumber was planned.
    const lumber::Plan* lumber = nullptr;
    /// The pieces planned together, where there are several; null for a piece of its own.
    const std::vector<lumber::Source>* lot = nullptr;
    /// Which of them, as its cut list is headed: `P2 Stool`; empty for a piece of its own.
    std::string of_lot = {};

    bool several() const { return lot != nullptr && lot->size() > 1; }
    const piece::Piece& piece_of(const lumber::Placement& p) const {
        return lot != nullptr ? *(*lot)[p.source].model->piece : *model.piece;
    }
    const joinery::Made& made(int part) const { return model.made[static_cast<std::size_t>(part)]; }
    bool in_inches() const { return manner.unit == measure::Unit::in || manner.unit == measure::Unit::ft; }
    /// Height of dimension figures on the sheets with the whole piece, and in part drawings. Built fractions
    /// are lettered smaller than whole numbers, so inch figures are set larger.
    double figure_height() const { return in_inches() ? 3.5 : paper.figure; }
    double part_figure_height() const { return in_inches() ? 3.5 : 2.5; }
    /// A length as it stands on a drawing.
    std::string figure(double mm) const { return measure::text(measure::Length::from_geometry(mm), manner); }
    std::string figure(measure::Length length) const { return measure::text(length, manner); }
};

/// While sheets are laid out nobody knows their numbers: a link to the part drawing of a row is written as
/// this number plus the row, and set right when all sheets are there.
constexpr int link_to_row = 1000000;

/// A sheet before its frame and title block, which need the number of sheets.
struct Leaf {
    Block block;
    std::string title;         ///< `Assembly`, `Parts 1 to 3`
    std::string document_type; ///< `assembly drawing`
    std::string scale;         ///< main scale; empty where nothing is to scale
    /// Where it is not the set's own; of a full-size template viewers are asked not to scale it.
    std::optional<Paper> paper;
    bool full_size = false;
};

/// The whole piece without its hidden edges: drawn small again where other sheets point at places.
struct WholeSeen {
    Seen front, plan, isometric;
};

/// Pictorial view with balloons, parts list, principal views with dimensions: together where the views lose
/// nothing by it, else the picture with the list first and the views on a sheet of their own.
/// `seen` receives the views that they show.
std::vector<Leaf> assembly_sheets(const Job& job, WholeSeen& seen);

/// Sections where joinery hides, with the views that tell where they are cut and the legend of the hatches.
/// Nothing for a piece whose joints leave nothing to show. `letters_used` receives how many letters sections
/// have taken.
std::vector<Leaf> section_sheets(const Job& job, const WholeSeen& seen, int& letters_used);

/// Every distinct joint enlarged, with a picture that tells where each is. Letters go on from `letters_used`.
std::vector<Leaf> joint_detail_sheets(const Job& job, const WholeSeen& seen, int letters_used);

/// Every part moved off along the way in which it goes to its place; none for a single part.
std::vector<Leaf> exploded_sheets(const Job& job);

/// One cell for each row of the cut list. Writes on which of its own leaves each row stands into
/// `leaf_of_row`.
std::vector<Leaf> part_sheets(const Job& job, std::vector<int>& leaf_of_row);

/// Shaped outlines at full size, tile by tile; none for a piece of plain rectangles.
std::vector<Leaf> template_sheets(const Job& job);

std::vector<Leaf> cut_list_sheets(const Job& job);

/// What to buy, and every board in use with its cuts; nothing where no lumber was planned.
std::vector<Leaf> lumber_sheets(const Job& job);
/// The work of all boards, machine by machine; nothing where no lumber was planned.
std::vector<Leaf> saw_step_sheets(const Job& job);
/// Labels to stick on the blanks.
std::vector<Leaf> label_sheets(const Job& job);

/// The steps in which the piece goes together, each with its picture; none for a single part.
std::vector<Leaf> assembly_steps_sheets(const Job& job);

/// Every part that moves through the year, on one sheet; none where nothing moves.
std::vector<Leaf> season_sheets(const Job& job);

std::vector<Leaf> warnings_sheets(const Job& job);

/// A part of a table, a sheet's heading and what else stands in the lists at the end of a set.
Leaf headed_leaf(const Job& job, const std::string& title, const std::string& type);
/// The sheets with their frames, numbers and title blocks. Links to rows of the cut list are left as they
/// are.
Set bound(const Job& job, const std::vector<Leaf>& leaves, const std::string& title);
/// How the piece is named in title blocks: `Side table, tall`.
std::string title_of(const piece::Piece& piece);

} // namespace rayfleck::drawing
