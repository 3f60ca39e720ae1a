// Sheets of joint details in the order of their letters, and on the first of them the piece in isometric with
// a ring at each joint drawn and its letter beside it.

#include <algorithm>
#include <cmath>

#include "drawing/balloons.hpp"
#include "drawing/filling_leaves.hpp"
#include "drawing/joint_detail_view.hpp"
#include "drawing/lettering.hpp"
#include "drawing/sheets.hpp"
#include "drawing/view.hpp"

namespace rayfleck::drawing {
namespace {

using measure::dot;

constexpr double air = 8; ///< between blocks

/// The piece with a ring at the place of each detail.
Block where_joints_are(const Job& job, const Seen& seen, const std::vector<JointDetail>& details,
                       double most) {
    Block block;
    const solid::View view = solid::isometric_view();
    const std::vector<Scale>& list = scales(job.manner.unit);
    const double true_length = std::sqrt(1.5);
    double factor = list.back().factor * true_length;
    for (const Scale& s : list)
        if (s.factor <= 0.5 &&
            std::max(seen.box.width(), seen.box.height()) * s.factor * true_length <= most) {
            factor = s.factor * true_length;
            break;
        }
    draw_seen(block, seen, factor, {0, 0}, Role::picture);
    std::vector<BalloonWanted> wanted;
    std::vector<std::pair<Point2, double>> rings;
    for (const JointDetail& detail : details) {
        const measure::Point middle = detail.frame.out((detail.focus.low + detail.focus.high) * 0.5);
        const Point2 at{(dot(middle, view.right) - seen.box.left) * factor,
                        (dot(middle, view.up) - seen.box.bottom) * factor};
        constexpr double least_ring = 2, widest_ring = 5;
        const double radius = std::clamp(measure::norm(detail.focus.high - detail.focus.low) / 2 * factor,
                                         least_ring, widest_ring);
        wanted.push_back({detail.letter, {at}, -1});
        rings.push_back({at, radius});
    }
    draw_balloons(block, block.box(), wanted, 7);
    for (const auto& [at, radius] : rings) block.circle(at, radius, Pen::thin, Role::mark);
    const std::string caption = "where the joints are";
    block.text({{block.box().left, block.box().bottom - 4 - note_height},
                caption,
                note_height,
                Typeface::lettering,
                Ink::black,
                0});
    return block;
}

/// The detail set in several widths, those that take least paper first.
std::vector<Block> shapes_of(const Job& job, const JointDetail& detail, const DetailViews& views,
                             double most) {
    std::vector<Block> shapes;
    const auto size_of = [](const Block& block) { return block.box().width() * block.box().height(); };
    for (const double wanted : {75.0, 95.0, 120.0, 150.0, 185.0, 230.0, 280.0}) {
        const double width = std::min(wanted, most);
        Block shape = joint_detail_block(job, detail, views, width);
        if (shape.box().width() > width + 0.5 && width < most) continue;
        const auto same = [&](const Block& other) {
            return std::abs(other.box().width() - shape.box().width()) < 1 &&
                   std::abs(other.box().height() - shape.box().height()) < 1;
        };
        if (std::none_of(shapes.begin(), shapes.end(), same)) shapes.push_back(std::move(shape));
    }
    if (shapes.empty()) shapes.push_back(joint_detail_block(job, detail, views, most));
    std::stable_sort(shapes.begin(), shapes.end(),
                     [&](const Block& a, const Block& b) { return size_of(a) < size_of(b); });
    return shapes;
}

} // namespace

std::vector<Leaf> joint_detail_sheets(const Job& job, const WholeSeen& seen, int letters_used) {
    const std::vector<JointDetail> details = joint_details(job, letters_used);
    if (details.empty()) return {};
    const Hatching hatching(job);
    const std::vector<measure::Box> boxes = boxes_of_parts(job.placed);
    FillingLeaves open(job, "joint details", "as stated", air);
    open.stand({where_joints_are(job, seen.isometric, details, job.paper.upright() ? 90 : 110)});
    for (const JointDetail& detail : details)
        open.stand(shapes_of(job, detail, joint_detail_views(job, hatching, detail, boxes),
                             job.paper.usable().width()),
                   detail.letter);
    std::vector<Leaf> leaves;
    for (FillingLeaves::Filled& o : open.filled()) {
        o.leaf.title = o.first.empty()     ? "Joints"
                       : o.first == o.last ? "Joint " + o.first
                                           : "Joints " + o.first + " to " + o.last;
        leaves.push_back(std::move(o.leaf));
    }
    return leaves;
}

} // namespace rayfleck::drawing
