// Buttons: small wooden blocks screwed to the underside of a top, their tongues in slots of the rail.
//
//   join top to long apron with buttons, every 150
//
// The top can swell and shrink, because the tongues slide in their slots. A is the top, B the rail. Slots are
// cut into the rail's inside face, 2 mm lower than the button's tongue so that the screw draws the top down.
// Sizes are our own: common practice, no published source. Slots along the rail are as much longer than the
// button as the top moves along it; across the rail the tongue stands 2 mm and the movement off the bottom of
// its slot.

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "joinery/fastening.hpp"
#include "joinery/kinds.hpp"

namespace rayfleck::joinery {
namespace {

constexpr double button_width = 30;    // mm, no published source
constexpr double usual_distance = 200; // mm, no published source

void lay_out(Bench& bench, const Pair& pair) {
    const piece::Part &a = bench.part(pair.a), &b = bench.part(pair.b);
    const auto row = row_of(bench, pair, Prefer::any_side);
    if (!row) return;
    const Options options(*pair.wanted);
    const Meeting& meeting = row->meeting;
    const int joint =
        bench.start(pair, "buttons", meeting.into, row->at(a, (row->low + row->high) / 2, row->middle));
    const Length down =
        bench.size(joint, "slot below the top", options.length("set"),
                   bench.either(Length::mm(10), Length::in({3, 8})), from_custom("10 mm or 3/8 in"));
    const Length high =
        bench.size(joint, "slot height", options.length("thick"),
                   bench.either(Length::mm(8), Length::in({5, 16})), from_custom("8 mm or 5/16 in"));
    const Vector across = row->aside;
    const double moves = bench.movement(pair.a, across, size_of(a, side_towards(a, across).axis));
    const double rail = row->width;
    const Length deep = bench.size(joint, "slot depth", options.length("deep"),
                                   Length::mm(measure::Rational::nearest(std::floor(rail / 2), 1)),
                                   from_custom("half of the rail"));
    const Length play = bench.size(joint, "play of the tongue", options.length("gap"),
                                   Length::mm(measure::Rational::nearest(std::ceil(moves / 2 + 1), 1)),
                                   "half the movement of the top over the year, and 1 mm");
    std::optional<int> count;
    if (const auto n = options.number("buttons")) count = static_cast<int>(*n);
    const double every = options.length("every").value_or(Length::from_geometry(usual_distance)).value();
    const std::vector<double> at = places(*row, count, every, std::min(60.0, row->length() / 4));
    bench.note_size(joint, "number of buttons", static_cast<double>(at.size()), "",
                    count ? "stated" : "as many as the distance needs");

    // The rail's inside face: towards the middle of what the top covers.
    const Point middle_of_a = a.frame.out({size_of(a, 0) / 2, size_of(a, 1) / 2, size_of(a, 2) / 2});
    const Point here = row->at(a, (row->low + row->high) / 2, row->middle);
    const Vector inside = dot(middle_of_a - here, across) >= 0 ? across : -across;
    const double slot = button_width + std::ceil(2 + 2 * bench.movement(pair.a, row->line, row->length()));
    HoldRule rule;
    for (const double place : at) {
        rule.held_at.push_back(row->at(a, place, row->middle));
        const Point p = row->at(a, place, row->middle) + inside * (rail / 2);
        // In the piece's frame: from the rail's inside face `deep` into it, from `down` below the top, `high`
        // tall.
        const Frame frame{p, row->line, meeting.into, cross(row->line, meeting.into)};
        const double towards = dot(frame.z, inside) > 0 ? -1 : 1; // into the rail
        const double from = towards > 0 ? 0 : -deep.value(), to = towards > 0 ? deep.value() : 0;
        const Frame seen = seen_from(b, frame);
        Box box{{-slot / 2, down.value(), from}, {slot / 2, down.value() + high.value(), to}};
        const Vector corner_low = seen.out(box.low), corner_high = seen.out(box.high);
        Box own;
        for (int i = 0; i < 3; ++i) {
            own.low[i] = std::min(corner_low[i], corner_high[i]);
            own.high[i] = std::max(corner_low[i], corner_high[i]);
        }
        if (meeting.aligned)
            bench.cut(pair.b, joint, "button slot", piece::BoxCut{own});
        else
            bench.cut(pair.b, joint, "button slot",
                      piece::PrismCut{seen, rectangle(box.low.x, box.low.y, box.high.x, box.high.y),
                                      box.low.z, box.high.z});
    }
    bench.hardware(pair, fmt::format("wooden button {} wide with screw", hardware_size(bench, button_width)),
                   static_cast<int>(at.size()));
    rule.joint = joint;
    rule.hold = Hold::fastened;
    rule.may_slide = {row->line, across};
    rule.room = play.value();
    bench.hold(std::move(rule));
}

} // namespace

void buttons(Bench& bench, const std::vector<Pair>& pairs) {
    for (const Pair& pair : pairs) lay_out(bench, pair);
}

} // namespace rayfleck::joinery
