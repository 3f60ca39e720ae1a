#pragma once
// A section as it is drawn: cut wood hatched, edges beyond it, numbers of the parts cut, clear sizes inside.
//
// Clear sizes are the openings between cut faces along two lines each way, those lines that meet most
// openings; a size that the rods give already is left out, one that follows from them stands in parentheses.
// Nothing hidden is drawn. Numbers stand above and at the right, sizes below and at the left.

#include <set>
#include <string>
#include <tuple>

#include "drawing/section_cut.hpp"
#include "drawing/section_planes.hpp"

namespace rayfleck::drawing {

/// Openings that some section has told, so that none is told twice: axis, from, to.
class ToldOpenings {
  public:
    bool knows(int axis, double from, double to) const;
    void tell(int axis, double from, double to);

  private:
    std::set<std::tuple<int, long, long>> told_;
};

struct Section {
    SectionPlane plane;
    std::string letter; ///< `A`
    solid::View view;
    CutThrough cut;
};

Section cut_section(const Job& job, const SectionPlane& plane, const std::string& letter);

/// Room that a section takes beside what is drawn of the wood, mm of paper: left, below, right, above.
Rect room_round_section(const Section& section, double scale);

Block section_view(const Job& job, const Hatching& hatching, const Section& section, const Scale& scale,
                   ToldOpenings& told);

} // namespace rayfleck::drawing
