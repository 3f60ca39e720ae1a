#pragma once
// From the model to the sheets of one piece.

#include <string>

#include "assembly/assembly.hpp"
#include "checks/checks.hpp"
#include "cutlist/cutlist.hpp"
#include "drawing/sheet.hpp"
#include "joinery/model.hpp"
#include "lumber/lumber.hpp"
#include "source/text.hpp"

namespace rayfleck::drawing {

/// What the command line may say about the sheets; everything else comes from the shop file.
struct Wishes {
    std::string sheet;          ///< A4, A3, A2, Letter, Tabloid; empty: the shop's
    std::string revision;       ///< empty: a dash
    std::string date;           ///< as to be printed; never read from the clock
    std::string identification; ///< drawing number; empty: derived from the title
    /// The texts of the run, so that the warnings page can quote the line of a finding; null: no lines are
    /// quoted.
    const source::Texts* texts = nullptr;
};

/// What is drawn: a piece, and what the earlier rooms found out about it.
struct Subject {
    const joinery::Model& model;
    const findings::Findings& findings;
    const cutlist::CutList& cut_list;
    /// In which order it goes together; null: found anew.
    const assembly::Order* order = nullptr;
    const lumber::Plan* lumber = nullptr; ///< which blank comes from which board; null: not planned
};

/// Principal views with a pictorial view, part drawings, full-size templates, cut list, warnings page.
Set draw(const Subject& subject, const Wishes& wishes);

} // namespace rayfleck::drawing
