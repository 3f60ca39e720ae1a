// Profiles of moulded edges, drawn as the waste that the cutter takes.
//
//   (0,0) is the edge; x runs along the first face, y along the second.
//
//      chamfer      round-over      cove         ovolo          ogee           bead
//      o---.        o---.           o---.        o---.          o---.          a round with a
//      |  /         |  (            |   |        |  _|          |  _|          quirk on either face
//      | /          | (             |  /         | (            | (
//      '            '               '--          |_|            |__)
//
// Proportions within ovolo, ogee and bead (fillets and quirks of one eighth and one sixth) are ours: common
// practice, no published source. Unequal sizes give quarter ellipses, laid down as short sides of one smooth
// run.

#include "joinery/edges.hpp"

#include <cmath>
#include <numbers>

namespace rayfleck::joinery {
namespace {

constexpr double fillet_share = 1.0 / 8.0;
constexpr double quirk_share = 1.0 / 6.0;

/// An outline under way; a new smooth run begins with every curve.
struct Pen {
    solid::Outline outline;
    solid::Point2 at;
    int run = 0;

    explicit Pen(solid::Point2 start) : at(start) { outline.start = start; }
    void line(solid::Point2 to) {
        if (std::hypot(to.x - at.x, to.y - at.y) < 1e-9) return;
        outline.edges.push_back({to, {}, true});
        outline.smooth.push_back(0);
        at = to;
    }
    /// A quarter of an ellipse with the given centre, from where the pen is.
    void quarter(solid::Point2 to, solid::Point2 centre, bool anticlockwise) {
        const solid::Point2 a{at.x - centre.x, at.y - centre.y}, b{to.x - centre.x, to.y - centre.y};
        if (std::abs(std::hypot(a.x, a.y) - std::hypot(b.x, b.y)) < 1e-7) {
            outline.edges.push_back({to, centre, anticlockwise});
            outline.smooth.push_back(0);
            at = to;
            return;
        }
        ++run;
        constexpr int steps = 8;
        for (int i = 1; i <= steps; ++i) {
            const double t = std::numbers::pi / 2 * i / steps, c = std::cos(t), s = std::sin(t);
            outline.edges.push_back(
                {i == steps ? to : solid::Point2{centre.x + c * a.x + s * b.x, centre.y + c * a.y + s * b.y},
                 {},
                 true});
            outline.smooth.push_back(run);
        }
        at = to;
    }
    solid::Outline closed() {
        line(outline.start);
        return outline;
    }
};

} // namespace

solid::Outline edge_profile(const piece::EdgeCut& cut) {
    const double w = cut.on_first, h = cut.on_second > 0 ? cut.on_second : cut.on_first;
    const double f = fillet_share * std::min(w, h);
    Pen pen({0, 0});
    if (cut.profile == "round-over") {
        pen.line({w, 0});
        pen.quarter({0, h}, {w, h}, false);
    } else if (cut.profile == "cove") {
        pen.line({w, 0});
        pen.quarter({0, h}, {0, 0}, true);
    } else if (cut.profile == "ovolo") {
        pen.line({w, 0});
        pen.line({w, f});
        pen.quarter({f, h}, {w, h}, false);
        pen.line({0, h});
    } else if (cut.profile == "ogee") {
        const double mx = (w + f) / 2, my = (h + f) / 2;
        pen.line({w, 0});
        pen.line({w, f});
        pen.quarter({mx, my}, {w, my}, false);
        pen.quarter({f, h}, {f, my}, true);
        pen.line({0, h});
    } else if (cut.profile == "bead") {
        // The round lies a hair below both faces, or the waste would come apart where it touches them.
        const double all = std::min(w, h), e = 0.02 * all, r = all * (1 - quirk_share) / 2, c = r + e;
        pen.line({all, 0});
        pen.line({all, c});
        pen.line({c + r, c});
        pen.quarter({c, e}, {c, c}, false);
        pen.quarter({e, c}, {c, c}, false);
        pen.quarter({c, c + r}, {c, c}, false);
        pen.line({c, all});
        pen.line({0, all});
    } else {
        // Chamfer and bevel.
        pen.line({w, 0});
        pen.line({0, h});
    }
    return pen.closed();
}

std::vector<solid::Shape> edge_tools(const Bench& bench, int part_id, const piece::EdgeCut& cut) {
    const piece::Part& part = bench.part(part_id);
    if (cut.first.axis == cut.second.axis || !(cut.on_first > 0)) return {};
    const int along = 3 - cut.first.axis - cut.second.axis;
    if (part.outline && along != 2) return moulded_outline(part, cut);
    Frame frame;
    frame.origin[cut.first.axis] = coordinate(part, cut.first, 0);
    frame.origin[cut.second.axis] = coordinate(part, cut.second, 0);
    // Along the first face means away from the second.
    frame.x = -outward(cut.second);
    frame.y = -outward(cut.first);
    frame.z = cross(frame.x, frame.y);
    const double length = size_of(part, along);
    const bool backwards = frame.z[along] < 0;
    return {solid::prism(frame, edge_profile(cut), backwards ? -length : 0, backwards ? 0 : length)};
}

} // namespace rayfleck::joinery
