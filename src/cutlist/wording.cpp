// See wording.hpp. What stands beyond the body is named after the joint that needs it: the one whose middle
// lies nearest to that end. Bark is told by the part's own face and edge, which are marked on it, because
// copies of one part look to different sides of the piece.

#include "cutlist/wording.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "cutlist/rough.hpp"

namespace rayfleck::cutlist {
namespace {

using measure::Length;

/// What a joint leaves standing on the part that goes in; one and several.
std::pair<std::string, std::string> word_of(const std::string& kind) {
    const auto begins = [&](std::string_view word) { return kind.rfind(word, 0) == 0; };
    if (begins("mortise and tenon") || begins("bridle")) return {"tenon", "tenons"};
    if (begins("tongue") || begins("breadboard") || begins("dado") || begins("groove") || begins("rabbet"))
        return {"tongue", "tongues"};
    if (begins("sliding dovetail")) return {"dovetail key", "dovetail keys"};
    if (begins("dovetail") || begins("half-blind")) return {"row of tails", "rows of tails"};
    if (begins("finger")) return {"row of fingers", "rows of fingers"};
    if (begins("half lap") || begins("cross lap")) return {"lap", "laps"};
    return {"part of a joint", "parts of a joint"};
}

struct Beyond {
    double length = 0;
    std::string one, several;
};

/// How far the blank reaches past the body at one end of an axis, and for which joint.
Beyond beyond(const joinery::Model& model, int index, int axis, bool high) {
    const joinery::Made& made = model.made[static_cast<std::size_t>(index)];
    const piece::Part& part = *made.part;
    const double body = (axis == 0 ? part.length : axis == 1 ? part.width : part.thickness).value();
    Beyond out;
    out.length = high ? made.blank.high[axis] - body : -made.blank.low[axis];
    double nearest = HUGE_VAL;
    std::tie(out.one, out.several) = word_of("");
    for (const joinery::Joint& joint : model.joints) {
        if (joint.a != index && joint.b != index) continue;
        const double at = part.frame.in(joint.at)[axis];
        const double away = std::abs(at - (high ? body : 0)) + (joint.a == index ? 0 : body);
        if (away >= nearest) continue;
        nearest = away;
        std::tie(out.one, out.several) = word_of(joint.kind);
    }
    return out;
}

} // namespace

std::string joinery_words(const joinery::Model& model, int part) {
    // Half a step of the coarsest grid in use; a blank that ends there has nothing standing beyond.
    constexpr double nothing = 0.005;
    static constexpr const char* direction[] = {"length", "width", "thickness"};
    const measure::Manner& manner = model.piece->manner;
    const auto shown = [&](double mm) { return measure::text(Length::from_geometry(mm), manner); };
    std::string words;
    for (int axis = 0; axis < 3; ++axis) {
        const Beyond low = beyond(model, part, axis, false), high = beyond(model, part, axis, true);
        const bool at_low = low.length > nothing, at_high = high.length > nothing;
        if (!at_low && !at_high) continue;
        std::string here;
        if (at_low && at_high && low.one == high.one && shown(low.length) == shown(high.length))
            here = fmt::format("2 {} of {}", low.several, shown(low.length));
        else {
            if (at_low) here = fmt::format("{} of {}", low.one, shown(low.length));
            if (at_high)
                here += fmt::format("{}{} of {}", at_low ? " and " : "", high.one, shown(high.length));
        }
        words += fmt::format("{}{} in the {}", words.empty() ? "" : ", ", here, direction[axis]);
    }
    return words;
}

std::string remark_words(const joinery::Model& model, const std::vector<int>& parts, std::size_t mirrored) {
    const joinery::Made& made = model.made[static_cast<std::size_t>(parts.front())];
    const piece::Part& part = *made.part;
    std::vector<std::string> remarks;
    if (part.glue_up) {
        const int glued = pieces_glued(made);
        if (part.glue_up->laminated)
            remarks.push_back(fmt::format("laminated of {} layers", glued));
        else if (glued > 1)
            remarks.push_back(fmt::format("glued up of {} staves{}", glued,
                                          part.glue_up->alternating ? ", bark faces alternating"
                                          : part.glue_up->same_side ? ", bark faces on one side"
                                                                    : ""));
    }
    // Only a flat-sawn board has a bark side: of the others the rings stand on the face or run across the
    // corners.
    if (part.bark && part.bark->axis != 0 && part.sawn == wood::Sawn::flat) {
        if (part.bark->axis == 2)
            remarks.push_back(part.bark->high ? "bark on the face side"
                                              : "bark on the side opposite the face side");
        else
            remarks.push_back(part.bark->high == part.face_edge_high
                                  ? "bark on the face edge"
                                  : "bark on the edge opposite the face edge");
    }
    for (const piece::Match& match : model.piece->matches) {
        if (std::find(match.parts.begin(), match.parts.end(), part.id) == match.parts.end()) continue;
        remarks.push_back(match.how == syntax::Matching::in_sequence
                              ? "grain in sequence, end to end of one board"
                          : match.how == syntax::Matching::book_matched ? "book-matched in pairs"
                                                                        : "all from one board");
    }
    if (part.sapwood_allowed) remarks.push_back("sapwood allowed");
    if (part.grain.in_degrees() != 0)
        remarks.push_back(fmt::format("grain at {:.4g}° to the length", std::abs(part.grain.in_degrees())));
    if (part.size_from_stock && !part.stock.empty()) remarks.push_back("dressed as bought");
    if (mirrored > 0)
        remarks.push_back(fmt::format("{} as drawn, {} mirrored", parts.size() - mirrored, mirrored));
    return fmt::format("{}", fmt::join(remarks, ", "));
}

} // namespace rayfleck::cutlist
