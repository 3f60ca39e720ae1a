// The model as text: one line per blank, cut, joint, contact and piece of hardware, in the model's order.
//
// Numbers are millimetres to three decimals without trailing zeros, so that the print does not change with
// the last bits of a slanting part. Planes of contacts are told by their normal, which is where a reader
// looks first.

#include <cmath>

#include <fmt/format.h>

#include "joinery/model.hpp"

namespace rayfleck::joinery {
namespace {

std::string number(double value) {
    std::string text = fmt::format("{:.3f}", value);
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
    return text == "-0" ? "0" : text;
}

std::string triple(measure::Vector v) {
    return fmt::format("({} {} {})", number(v.x), number(v.y), number(v.z));
}
std::string range(double low, double high) { return number(low) + ".." + number(high); }

std::string side_name(piece::LocalSide side) {
    constexpr const char* names[3][2] = {
        {"low end", "high end"}, {"low edge", "high edge"}, {"back face", "face side"}};
    return names[side.axis][side.high];
}

std::string outline_text(const solid::Outline& outline) {
    std::string text = fmt::format("({} {})", number(outline.start.x), number(outline.start.y));
    for (std::size_t i = 0; i + 1 < outline.edges.size(); ++i)
        text += fmt::format(" {}({} {})", outline.edges[i].centre ? "arc " : "",
                            number(outline.edges[i].to.x), number(outline.edges[i].to.y));
    return text;
}

struct ShapeText {
    std::string operator()(const piece::PlaneCut& cut) const {
        std::string text = fmt::format("beyond {} at {}", triple(cut.plane.normal), number(cut.plane.offset));
        if (cut.miter) text += fmt::format(", miter {}", number(cut.miter->in_degrees()));
        if (cut.bevel) text += fmt::format(", bevel {}", number(cut.bevel->in_degrees()));
        return text;
    }
    std::string operator()(const piece::EdgeCut& cut) const {
        return fmt::format("{} {} x {} on {} and {}", cut.profile, number(cut.on_first),
                           number(cut.on_second), side_name(cut.first), side_name(cut.second));
    }
    std::string operator()(const piece::BoreCut& cut) const {
        std::string text =
            fmt::format("bore {} in {} at {}", number(cut.diameter), side_name(cut.face), triple(cut.centre));
        text += cut.deep ? fmt::format(" {} deep", number(*cut.deep)) : " through";
        if (cut.direction) text += " along " + triple(*cut.direction);
        return text;
    }
    std::string operator()(const piece::BoxCut& cut) const {
        return fmt::format("box {} {} {}", range(cut.box.low.x, cut.box.high.x),
                           range(cut.box.low.y, cut.box.high.y), range(cut.box.low.z, cut.box.high.z));
    }
    std::string operator()(const piece::PrismCut& cut) const {
        return fmt::format("prism from {} x {} y {}: {} drawn {}", triple(cut.frame.origin),
                           triple(cut.frame.x), triple(cut.frame.y), outline_text(cut.outline),
                           range(cut.from, cut.to));
    }
    std::string operator()(const piece::TurnedCut& cut) const {
        std::string text = "turned";
        for (const solid::Station& station : cut.profile)
            text += fmt::format(" {}@{}", number(2 * station.radius), number(station.x));
        return text;
    }
};

constexpr const char* hold_name(Hold hold) {
    return hold == Hold::glued ? "glued" : hold == Hold::fastened ? "fastened" : "free";
}

} // namespace

std::string print(const Model& model) {
    std::string text;
    const auto name = [&](int index) { return model.made[static_cast<std::size_t>(index)].part->name; };
    for (const Made& made : model.made) {
        text += fmt::format("part {}: blank {} x {} x {}, volume {}\n", made.part->name,
                            number(made.thickness.value()), number(made.width.value()),
                            number(made.length.value()), number(made.solid.volume));
        for (const piece::Cut& cut : made.cuts) {
            text += fmt::format("  {}: {}", cut.word, std::visit(ShapeText{}, cut.shape));
            if (cut.joint >= 0) text += fmt::format(" [joint {}]", cut.joint + 1);
            if (!cut.remark.empty()) text += fmt::format(" ({})", cut.remark);
            text += '\n';
        }
    }
    for (std::size_t j = 0; j < model.joints.size(); ++j) {
        const Joint& joint = model.joints[j];
        text += fmt::format("joint {}: {} to {}, {}", j + 1, name(joint.a), name(joint.b), joint.kind);
        if (norm(joint.assembly) > 0.5) text += fmt::format(", together along {}", triple(joint.assembly));
        text += '\n';
        for (const Size& size : joint.sizes)
            text += fmt::format("  {} {}{}{}: {}\n", size.what, number(size.value),
                                size.unit.empty() ? "" : " ", size.unit, size.from);
    }
    for (const Contact& contact : model.contacts) {
        text += fmt::format("contact {} on {} {}: {} mm2 {}", name(contact.a), name(contact.b),
                            triple(contact.plane.normal), number(contact.area), hold_name(contact.hold));
        if (contact.joint >= 0) text += fmt::format(" [joint {}]", contact.joint + 1);
        for (const measure::Vector direction : contact.may_slide) text += " slides " + triple(direction);
        if (contact.room > 0 && std::isfinite(contact.room))
            text += fmt::format(" room {}", number(contact.room));
        if (!contact.held_at.empty()) text += fmt::format(" held at {}", contact.held_at.size());
        text += '\n';
    }
    for (const HardwareItem& item : model.hardware)
        text += fmt::format("hardware {} x {}: {}\n", item.count, item.name, item.from);
    return text;
}

} // namespace rayfleck::joinery
