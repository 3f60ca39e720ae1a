// Copies of a part come out alike, so each form is carved once.

#include "drawing/whole_parts.hpp"

#include <algorithm>

namespace rayfleck::drawing {
namespace {

bool changes_outline(const piece::Cut& cut) {
    return cut.joint < 0 && !std::holds_alternative<piece::EdgeCut>(cut.shape) &&
           !std::holds_alternative<piece::BoreCut>(cut.shape);
}

bool same(const solid::Shape& a, const solid::Shape& b) {
    return a.corners().size() == b.corners().size() &&
           std::equal(a.corners().begin(), a.corners().end(), b.corners().begin(),
                      [](const auto& p, const auto& q) { return p.at == q.at; });
}

/// What shapes the body, and what takes off that joints leave standing beyond it.
std::vector<solid::Shape> shaping_tools(const joinery::Made& made) {
    std::vector<solid::Shape> tools;
    for (std::size_t t = 0; t < made.tools.size(); ++t) {
        const int cut = made.tool_cut[t];
        if (cut < 0 || changes_outline(made.cuts[static_cast<std::size_t>(cut)]))
            tools.push_back(made.tools[t]);
    }
    const piece::Part& part = *made.part;
    const double body[] = {part.length.value(), part.width.value(), part.thickness.value()};
    for (int axis = 0; axis < 3; ++axis) {
        measure::Vector outwards;
        outwards[axis] = 1;
        if (made.blank.high[axis] > body[axis] + 1e-6)
            tools.push_back(solid::half_space({outwards, body[axis]}, made.blank));
        if (made.blank.low[axis] < -1e-6) tools.push_back(solid::half_space({-outwards, 0}, made.blank));
    }
    return tools;
}

/// Round a part as it stands. Parts that lie along the piece's axes are as big as their sizes say, whatever
/// shaping has left of a corner.
measure::Box box_in_piece(const piece::Part& part, const solid::Placed& placed) {
    if (part.upright) return piece::box_of(part);
    measure::Box box;
    bool any = false;
    for (const solid::Edge& edge : placed.solid->edges)
        for (const measure::Point& p : {edge.a, edge.b}) {
            const measure::Point at = placed.frame.out(p);
            for (int axis = 0; axis < 3; ++axis) {
                box.low[axis] = any ? std::min(box.low[axis], at[axis]) : at[axis];
                box.high[axis] = any ? std::max(box.high[axis], at[axis]) : at[axis];
            }
            any = true;
        }
    return any ? box : piece::box_of(part);
}

} // namespace

WholeParts whole_parts(const Job& job) {
    WholeParts whole;
    struct Carved {
        solid::Shape blank;
        std::vector<solid::Shape> tools;
        const solid::Solid* solid;
    };
    std::vector<Carved> carved;
    for (std::size_t i = 0; i < job.model.made.size(); ++i) {
        const joinery::Made& made = job.model.made[i];
        const piece::Part& part = *made.part;
        std::vector<solid::Shape> tools = shaping_tools(made);
        solid::Placed placed = job.placed[i];
        placed.tools = nullptr;
        constexpr std::size_t many_corners = 1000;
        std::size_t tool_corners = 0;
        for (const solid::Shape& tool : tools) tool_corners += tool.corners().size();
        if (tool_corners <= many_corners) {
            // The blank of a part with an outline may carry its moulding; the body is the plain outline.
            solid::Shape body_shape =
                part.outline ? solid::prism({}, *part.outline, 0, part.thickness.value()) : made.blank_shape;
            const auto known = std::find_if(carved.begin(), carved.end(), [&](const Carved& c) {
                return same(c.blank, body_shape) && c.tools.size() == tools.size() &&
                       std::equal(tools.begin(), tools.end(), c.tools.begin(), same);
            });
            if (known == carved.end()) {
                whole.solids.push_back(solid::carve(body_shape, tools));
                carved.push_back({std::move(body_shape), std::move(tools), &whole.solids.back()});
                placed.solid = carved.back().solid;
            } else {
                placed.solid = known->solid;
            }
        }
        whole.boxes.push_back(box_in_piece(part, placed));
        whole.placed.push_back(placed);
    }
    return whole;
}

} // namespace rayfleck::drawing
