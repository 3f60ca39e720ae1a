// Contacts: faces of two finished solids in one plane, with opposite normals.
//
// A pair of parts may have several joints (a shelf in a dado and screwed); each place goes to the joint whose
// middle is nearest. Where a joint holds only a stretch (a breadboard end, glued in the middle), the place is
// cut at the stretch's borders: each ring is clipped by two half planes, which keeps even-odd areas right
// though rings may run back and forth along the border. Contacts smaller than 1 mm² are dropped: they are
// corners.

#include "joinery/contacts.hpp"

#include <algorithm>
#include <cmath>

namespace rayfleck::joinery {
namespace {

constexpr double least_area = 1.0; // mm²

using Ring = std::vector<Point>;

Vector area_vector(const Ring& ring) {
    Vector sum;
    for (std::size_t i = 1; i + 1 < ring.size(); ++i)
        sum = sum + cross(ring[i] - ring[0], ring[i + 1] - ring[0]);
    return sum * 0.5;
}

double area_of(const std::vector<Ring>& rings, Vector normal) {
    double area = 0;
    for (const Ring& ring : rings) area += dot(area_vector(ring), normal);
    return std::abs(area);
}

Ring clipped(const Ring& ring, Vector normal, double offset) {
    Ring kept;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point p = ring[i], q = ring[(i + 1) % ring.size()];
        const double sp = dot(normal, p) - offset, sq = dot(normal, q) - offset;
        if (sp <= 0) kept.push_back(p);
        if ((sp < 0 && sq > 0) || (sp > 0 && sq < 0)) kept.push_back(p + (q - p) * (sp / (sp - sq)));
    }
    if (kept.size() < 3) kept.clear();
    return kept;
}

std::vector<Ring> clipped(const std::vector<Ring>& rings, Vector normal, double offset) {
    std::vector<Ring> kept;
    for (const Ring& ring : rings)
        if (Ring part = clipped(ring, normal, offset); !part.empty()) kept.push_back(std::move(part));
    return kept;
}

Point middle_of(const std::vector<Ring>& rings) {
    Point sum;
    double n = 0;
    for (const Ring& ring : rings)
        for (const Point p : ring) {
            sum = sum + p;
            n += 1;
        }
    return n > 0 ? sum * (1 / n) : sum;
}

Box box_in_piece(const Made& made) {
    Box box;
    for (int c = 0; c < 8; ++c) {
        const Box& own = made.solid.box;
        const Point p = made.part->frame.out(
            {c & 1 ? own.high.x : own.low.x, c & 2 ? own.high.y : own.low.y, c & 4 ? own.high.z : own.low.z});
        for (int i = 0; i < 3; ++i) {
            box.low[i] = c == 0 ? p[i] : std::min(box.low[i], p[i]);
            box.high[i] = c == 0 ? p[i] : std::max(box.high[i], p[i]);
        }
    }
    return box;
}

bool boxes_touch(const Box& a, const Box& b) {
    for (int i = 0; i < 3; ++i)
        if (std::min(a.high[i], b.high[i]) - std::max(a.low[i], b.low[i]) < -touching_within) return false;
    return true;
}

void add(Model& model, const Contact& like, std::vector<Ring> rings, const HoldRule* rule, Hold hold) {
    Contact contact = like;
    contact.area = area_of(rings, like.plane.normal);
    if (contact.area < least_area) return;
    contact.loops = std::move(rings);
    contact.hold = hold;
    if (rule != nullptr) {
        contact.joint = rule->joint;
        if (hold != Hold::glued) {
            contact.may_slide = rule->may_slide;
            contact.room = rule->room;
        }
        if (hold == Hold::fastened) contact.held_at = rule->held_at;
    }
    model.contacts.push_back(std::move(contact));
}

void add_split(Model& model, const Contact& like, std::vector<Ring> rings, const HoldRule* rule) {
    if (rule == nullptr) {
        add(model, like, std::move(rings), nullptr, Hold::free);
        return;
    }
    std::vector<HoldRule::Stretch> stretches = rule->stretches;
    std::sort(stretches.begin(), stretches.end(),
              [](const auto& a, const auto& b) { return a.from < b.from; });
    for (const HoldRule::Stretch& stretch : stretches) {
        add(model, like, clipped(rings, stretch.along, stretch.from), rule, rule->hold);
        const auto above = clipped(rings, -stretch.along, -stretch.from);
        add(model, like, clipped(above, stretch.along, stretch.to), rule, stretch.hold);
        rings = clipped(above, -stretch.along, -stretch.to);
    }
    add(model, like, std::move(rings), rule, rule->hold);
}

} // namespace

void find_contacts(Model& model, const std::vector<HoldRule>& rules) {
    const std::vector<solid::Placed> placed = model.placed();
    std::vector<Box> boxes;
    for (const Made& made : model.made) boxes.push_back(box_in_piece(made));
    for (std::size_t a = 0; a < placed.size(); ++a)
        for (std::size_t b = a + 1; b < placed.size(); ++b) {
            if (!boxes_touch(boxes[a], boxes[b])) continue;
            std::vector<const HoldRule*> here;
            for (const HoldRule& rule : rules) {
                const Joint& joint = model.joints[static_cast<std::size_t>(rule.joint)];
                const auto one = static_cast<std::size_t>(joint.a), other = static_cast<std::size_t>(joint.b);
                if ((one == a && other == b) || (one == b && other == a)) here.push_back(&rule);
            }
            // The part that goes in is `a` of the contact, whichever stands first in the text.
            const bool turned =
                !here.empty() &&
                static_cast<std::size_t>(model.joints[static_cast<std::size_t>(here.front()->joint)].a) == b;
            const std::size_t first = turned ? b : a, second = turned ? a : b;
            for (const solid::Touch& touch : solid::touching(placed[first], placed[second])) {
                const HoldRule* rule = nullptr;
                double nearest = 0;
                const Point middle = middle_of(touch.loops);
                for (const HoldRule* candidate : here) {
                    const double distance =
                        norm(model.joints[static_cast<std::size_t>(candidate->joint)].at - middle);
                    if (rule != nullptr && distance >= nearest) continue;
                    rule = candidate;
                    nearest = distance;
                }
                Contact like;
                like.a = static_cast<int>(first);
                like.b = static_cast<int>(second);
                like.plane = touch.plane;
                add_split(model, like, touch.loops, rule);
            }
        }
}

} // namespace rayfleck::joinery
