// A letter is tried inside its cut first, then beside it in a fixed order of directions and distances. A
// place costs its distance and what its leader crosses; the first that crosses nothing is taken at once, else
// the cheapest. This is the greedy baseline of label placement, which is enough for the few labels of a view.
// Where nothing is free the letter goes farther out, so that no feature stays without one.

#include "drawing/part_letters.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <tuple>

namespace rayfleck::drawing {
namespace {

constexpr double letter_height = 2.8; ///< of capitals; small letters are lower
constexpr double clear = 0.5;
constexpr std::size_t most_copies = 4;

struct Candidate {
    Point2 middle;
    Point2 tip;
    bool leader = false, dot = true;
    double cost = std::numeric_limits<double>::infinity();
};

class Letter {
  public:
    Letter(Block& block, const std::string& words, const Rect& room)
        : block_(block), words_(words), room_(room),
          width_(text_width(words, letter_height, Typeface::sans_bold)) {}

    /// The best place for the letter of what lies in `area`.
    /// round  it is a hole: the leader ends on its rim, and no dot fills it
    Candidate find(const Rect& area, bool round) const {
        Candidate best;
        if (area.width() > width_ + 2.4 && area.height() > letter_height + 1.8)
            for (const double share : {0.5, 0.3, 0.7, 0.15, 0.85}) {
                const Point2 at{area.left + area.width() * share, area.middle().y};
                if (fits(at)) return {at, at, false, false, 0};
            }
        const std::array<Point2, 3> tips{area.middle(),
                                         Point2{area.left + area.width() * 0.25, area.middle().y},
                                         Point2{area.left + area.width() * 0.75, area.middle().y}};
        const std::size_t many = area.width() > 20 ? tips.size() : 1;
        for (const double distance : {4.6, 6.5, 9.0, 12.0, 16.0, 21.0, 28.0})
            for (std::size_t t = 0; t < many; ++t)
                for (const double degrees : {60.0, 120.0, 300.0, 240.0, 35.0, 145.0, 325.0, 215.0, 78.0,
                                             102.0, 282.0, 258.0, 15.0, 165.0, 345.0, 195.0}) {
                    const double a = degrees * std::numbers::pi / 180;
                    Candidate c;
                    c.tip = tips[t];
                    c.middle = {c.tip.x + distance * std::cos(a), c.tip.y + distance * std::sin(a)};
                    c.leader = true;
                    c.dot = !round && area.width() > 1.2 && area.height() > 1.2;
                    const double rim = round ? std::min(area.width(), area.height()) / 2 : 0;
                    c.tip = {c.tip.x + rim * std::cos(a), c.tip.y + rim * std::sin(a)};
                    c.middle = {c.middle.x + rim * std::cos(a), c.middle.y + rim * std::sin(a)};
                    if (!fits(c.middle)) continue;
                    const Point2 start = leader_start(c);
                    if (!block_.occupied().free_for_line(start, c.tip, 0.3)) continue;
                    const double hard = block_.occupied().crossings(
                        start, c.tip, {Role::dimension, Role::extension, Role::leader, Role::mark});
                    const double soft = block_.occupied().crossings(start, c.tip, {Role::edge});
                    c.cost = distance + 12 * hard + 1.5 * soft;
                    if (c.cost < best.cost) best = c;
                    if (hard == 0 && soft <= 2 && distance < 10) return c;
                }
        return best;
    }

    void set(const Candidate& c) {
        if (c.leader) {
            block_.line(leader_start(c), c.tip, Pen::thin, Role::leader);
            if (c.dot) block_.dot(c.tip, 0.8);
        }
        block_.text(text(c.middle));
    }

  private:
    Text text(Point2 middle) const {
        return {{middle.x - width_ / 2, middle.y - letter_height / 2},
                words_,
                letter_height,
                Typeface::sans_bold,
                Ink::black,
                0};
    }
    bool fits(Point2 middle) const {
        const Rect rect = around(text_box(text(middle)));
        if (rect.left < room_.left || rect.right > room_.right || rect.bottom < room_.bottom ||
            rect.top > room_.top)
            return false;
        return block_.occupied().free_for_text(corners(rect), clear);
    }
    /// Where the line from the middle of the letter to the tip leaves the letter's surroundings.
    Point2 leader_start(const Candidate& c) const {
        const Rect rect = grown(around(text_box(text(c.middle))), 0.5);
        const double dx = c.tip.x - c.middle.x, dy = c.tip.y - c.middle.y;
        double share = 1;
        if (dx > 0) share = std::min(share, (rect.right - c.middle.x) / dx);
        if (dx < 0) share = std::min(share, (rect.left - c.middle.x) / dx);
        if (dy > 0) share = std::min(share, (rect.top - c.middle.y) / dy);
        if (dy < 0) share = std::min(share, (rect.bottom - c.middle.y) / dy);
        return {c.middle.x + dx * share, c.middle.y + dy * share};
    }

    Block& block_;
    std::string words_;
    Rect room_;
    double width_;
};

const ViewOnPaper& view_for(const std::vector<ViewOnPaper>& views, const Feature& feature) {
    const piece::LocalSide face{2, true};
    const piece::LocalSide wanted = feature.seen_from.value_or(face);
    for (const ViewOnPaper& view : views)
        if (view.side == wanted &&
            (wanted.axis != 0 || std::min(view.place.width(), view.place.height()) > 12))
            return view;
    for (const ViewOnPaper& view : views)
        if (view.side == face) return view;
    return views.front();
}

} // namespace

Rect ViewOnPaper::on_paper(const measure::Box& own) const {
    const auto across = [&](measure::Vector direction, double from) {
        double low = 0, high = 0, least = 0;
        for (int k = 0; k < 3; ++k) {
            low += std::min(direction[k] * own.low[k], direction[k] * own.high[k]);
            high += std::max(direction[k] * own.low[k], direction[k] * own.high[k]);
            least += std::min(direction[k] * box.low[k], direction[k] * box.high[k]);
        }
        return std::pair{from + (low - least) * scale, from + (high - least) * scale};
    };
    const auto [bottom, top] = across(view.up, place.bottom);
    double left = 0, right = 0;
    if (side.axis == 0) {
        std::tie(left, right) = across(view.right, place.left);
    } else {
        left = place.left + map.on_paper(std::clamp(own.low.x, box.low.x, box.high.x));
        right = place.left + map.on_paper(std::clamp(own.high.x, box.low.x, box.high.x));
    }
    return {std::clamp(left, place.left, place.right), std::clamp(bottom, place.bottom, place.top),
            std::clamp(right, place.left, place.right), std::clamp(top, place.bottom, place.top)};
}

Point2 ViewOnPaper::on_paper(measure::Point own) const {
    double least = 0;
    for (int k = 0; k < 3; ++k) least += std::min(view.up[k] * box.low[k], view.up[k] * box.high[k]);
    return {place.left + map.on_paper(own.x), place.bottom + (dot(view.up, own) - least) * scale};
}

bool ViewOnPaper::is_broken_within(double from, double to, const GaugeFrame& gauge) const {
    const double low = from + gauge.blank.low.x, high = to + gauge.blank.low.x;
    const std::vector<LengthMap::Kept>& kept = map.kept();
    for (std::size_t i = 0; i + 1 < kept.size(); ++i)
        if (low < kept[i + 1].from && high > kept[i].to) return true;
    return false;
}

void set_centres(Block& block, const std::vector<ViewOnPaper>& views, const GaugeFrame& gauge,
                 const std::vector<Feature>& features) {
    for (const Feature& feature : features) {
        if (feature.record.form != CutForm::bore || !feature.seen_from) continue;
        const auto view = std::find_if(views.begin(), views.end(),
                                       [&](const ViewOnPaper& v) { return v.side == *feature.seen_from; });
        if (view == views.end()) continue;
        for (const measure::Box& place : feature.places) {
            const Rect hole = view->on_paper(gauge.out(place));
            // Through the hole and a little past it; of a hole too small to be drawn a cross is left.
            const double reach = std::max(hole.width() / 2 + 1, 1.2);
            const Point2 at = hole.middle();
            for (const auto& [a, b] : {std::pair{Point2{at.x - reach, at.y}, Point2{at.x + reach, at.y}},
                                       {Point2{at.x, at.y - reach}, Point2{at.x, at.y + reach}}})
                if (block.occupied().free_for_line(a, b, 0.3)) block.line(a, b, Pen::thin, Role::centre);
        }
    }
}

void set_letters(Block& block, const std::vector<ViewOnPaper>& views, const GaugeFrame& gauge,
                 const std::vector<Feature>& features, const Rect& room) {
    if (views.empty()) return;
    for (const Feature& feature : features) {
        if (feature.record.letter.empty() || feature.places.empty()) continue;
        const ViewOnPaper& view = view_for(views, feature);
        Letter letter(block, feature.record.letter, room);
        const std::size_t copies = feature.places.size() > most_copies ? 1 : feature.places.size();
        for (std::size_t i = 0; i < copies; ++i) {
            const Candidate c = letter.find(view.on_paper(gauge.out(feature.places[i])),
                                            feature.record.form == CutForm::bore && feature.record.axis != 0);
            // The first copy gets its letter at any price, the others where it is cheap.
            if (std::isfinite(c.cost) && (i == 0 || c.cost < 12)) letter.set(c);
        }
    }
}

} // namespace rayfleck::drawing
