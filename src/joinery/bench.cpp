// What the bench keeps for each part, and how geometry is carried from one part to the other.
//
// A box of A stays a box in B when their axes run along each other; else it is drawn out as a prism along A's
// z.

#include "joinery/bench.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "wood/movement.hpp"

namespace rayfleck::joinery {
namespace {

/// The box in the target's frame, if the source's axes run along the target's.
std::optional<Box> as_box(const Frame& frame, const Box& box) {
    for (const Vector axis : {frame.x, frame.y, frame.z})
        if (std::max({std::abs(axis.x), std::abs(axis.y), std::abs(axis.z)}) < 1.0 - 1e-9)
            return std::nullopt;
    const Point p = frame.out(box.low), q = frame.out(box.high);
    Box turned;
    for (int i = 0; i < 3; ++i) {
        turned.low[i] = std::min(p[i], q[i]);
        turned.high[i] = std::max(p[i], q[i]);
    }
    return turned;
}

} // namespace

// ---- options
// -----------------------------------------------------------------------------------------------------

const piece::OptionGiven* Options::find(std::string_view word) const {
    for (const piece::OptionGiven& option : wanted_->options) {
        const std::string_view words = option.words;
        if (words == word ||
            (words.size() > word.size() && words.starts_with(word) && words[word.size()] == ' '))
            return &option;
    }
    return nullptr;
}

std::optional<Length> Options::length(std::string_view word) const {
    const piece::OptionGiven* option = find(word);
    if (option == nullptr || option->lengths.empty()) return std::nullopt;
    return option->lengths.front();
}

std::optional<double> Options::number(std::string_view word) const {
    const piece::OptionGiven* option = find(word);
    if (option == nullptr || option->values.empty()) return std::nullopt;
    return option->values.front();
}

std::optional<std::string> Options::quoted() const {
    for (const piece::OptionGiven& option : wanted_->options)
        if (!option.quoted.empty()) return option.quoted;
    return std::nullopt;
}

// ---- bench
// -------------------------------------------------------------------------------------------------------

Bench::Bench(const piece::Piece& piece, Model& model, findings::Findings& findings)
    : piece_(&piece), model_(&model), findings_(&findings), work_(piece.parts.size()) {
    bool first = true;
    Point low, high;
    for (const piece::Part& part : piece.parts) {
        const Box box = {part.frame.out({}),
                         part.frame.out({size_of(part, 0), size_of(part, 1), size_of(part, 2)})};
        for (int i = 0; i < 3; ++i) {
            const double l = std::min(box.low[i], box.high[i]), h = std::max(box.low[i], box.high[i]);
            low[i] = first ? l : std::min(low[i], l);
            high[i] = first ? h : std::max(high[i], h);
        }
        first = false;
    }
    centre_ = (low + high) * 0.5;
}

Vector Bench::towards(syntax::Side side, int part_id) const {
    switch (side) {
    case syntax::Side::left:
        return {-1, 0, 0};
    case syntax::Side::right:
        return {1, 0, 0};
    case syntax::Side::front:
        return {0, -1, 0};
    case syntax::Side::back:
        return {0, 1, 0};
    case syntax::Side::top:
        return {0, 0, 1};
    case syntax::Side::bottom:
        return {0, 0, -1};
    case syntax::Side::inside:
    case syntax::Side::outside:
        break;
    }
    const piece::Part& p = part(part_id);
    const Point middle = p.frame.out({size_of(p, 0) / 2, size_of(p, 1) / 2, size_of(p, 2) / 2});
    Vector in = centre_ - middle;
    in.z = 0;
    if (norm(in) < 1e-6) in = {0, 1, 0};
    in = unit(in);
    return side == syntax::Side::inside ? in : -in;
}

bool Bench::in_inches() const {
    return piece_->manner.unit == measure::Unit::in || piece_->manner.unit == measure::Unit::ft;
}

int Bench::start(const Pair& pair, const std::string& kind, Vector assembly, Point at) {
    Joint joint;
    joint.a = pair.a;
    joint.b = pair.b;
    joint.kind = kind;
    joint.wanted = pair.wanted_index;
    joint.assembly = assembly;
    joint.at = at;
    joint.span = pair.wanted->span;
    model_->joints.push_back(std::move(joint));
    return static_cast<int>(model_->joints.size()) - 1;
}

Length Bench::size(int index, const std::string& what, std::optional<Length> stated, Length rule,
                   const std::string& from) const {
    const Length length = stated.value_or(rule);
    note_size(index, what, length.value(), "mm", stated ? "stated" : from);
    return length;
}

void Bench::note_size(int index, const std::string& what, double value, const std::string& unit,
                      const std::string& from) const {
    joint(index).sizes.push_back({what, value, unit, from});
}

void Bench::cut(int part_id, int joint_index, const std::string& word,
                std::variant<piece::PlaneCut, piece::EdgeCut, piece::BoreCut, piece::BoxCut, piece::PrismCut,
                             piece::TurnedCut>
                    shape,
                const std::string& remark) {
    piece::Cut made;
    made.word = word;
    made.shape = std::move(shape);
    made.joint = joint_index;
    made.remark = remark;
    if (joint_index >= 0) made.span = joint(joint_index).span;
    cuts(part_id).push_back(std::move(made));
}

void Bench::cut_box(int from, int joint_index, const std::string& word, int in, Box box,
                    const std::string& remark) {
    for (int i = 0; i < 3; ++i)
        if (box.high[i] - box.low[i] < 1e-6) return;
    const Frame frame = from == in ? Frame{} : seen_from(part(from), part(in).frame);
    if (const auto turned = as_box(frame, box)) {
        cut(from, joint_index, word, piece::BoxCut{*turned}, remark);
        return;
    }
    cut(from, joint_index, word,
        piece::PrismCut{frame, rectangle(box.low.x, box.low.y, box.high.x, box.high.y), box.low.z,
                        box.high.z},
        remark);
}

void Bench::cut_prism(int from, int joint_index, const std::string& word, int in, const Frame& frame,
                      const solid::Outline& outline, double low, double high, const std::string& remark) {
    Frame seen = frame;
    if (from != in) {
        const Frame other = seen_from(part(from), part(in).frame);
        seen = {other.out(frame.origin), other.turn_out(frame.x), other.turn_out(frame.y),
                other.turn_out(frame.z)};
    }
    cut(from, joint_index, word, piece::PrismCut{seen, outline, low, high}, remark);
}

void Bench::bore(int part_id, int joint_index, const std::string& word, Point from, Vector direction,
                 double diameter, std::optional<double> deep, const std::string& remark) {
    const piece::Part& p = part(part_id);
    piece::BoreCut bore;
    bore.face = side_towards(p, -direction);
    bore.diameter = diameter;
    const Vector own = p.frame.turn_in(direction);
    Point at = p.frame.in(from);
    // The centre belongs on the face; a point given before or behind it is moved along the bit.
    const double level = coordinate(p, bore.face, 0);
    const double slope = own[bore.face.axis];
    const double t = (level - at[bore.face.axis]) / slope;
    at = at + own * t;
    at[bore.face.axis] = level;
    bore.centre = at;
    if (deep) bore.deep = *deep - t;
    if (std::abs(slope) < 1.0 - 1e-9) bore.direction = own;
    cut(part_id, joint_index, word, bore, remark);
}

void Bench::grow(int part_id, LocalSide side, Length by) {
    Length& grown = work_[static_cast<std::size_t>(part_id)].grown[side.axis][side.high];
    if (grown < by) grown = by;
}

Length Bench::grown(int part_id, LocalSide side) const {
    return work_[static_cast<std::size_t>(part_id)].grown[side.axis][side.high];
}

void Bench::stand(int part_id, Standing standing) {
    work_[static_cast<std::size_t>(part_id)].standing.push_back(std::move(standing));
}

void Bench::hardware(const Pair& pair, const std::string& name, int count) {
    if (count <= 0) return;
    const std::string& from = pair.wanted->kind;
    for (HardwareItem& item : model_->hardware)
        if (item.name == name && item.from == from) {
            item.count += count;
            for (const int id : {pair.a, pair.b})
                if (std::find(item.parts.begin(), item.parts.end(), id) == item.parts.end())
                    item.parts.push_back(id);
            return;
        }
    model_->hardware.push_back({name, count, {pair.a, pair.b}, from});
}

findings::Finding& Bench::refuse(const Pair& pair, const std::string& name, const std::string& message,
                                 const std::string& mend) {
    findings::Finding& finding = findings_->error(name, pair.wanted->span, message);
    finding.mend = mend;
    finding.parts = {part(pair.a).name, part(pair.b).name};
    return finding;
}

double Bench::movement(int part_id, Vector direction, double distance) const {
    const piece::Part& p = part(part_id);
    if (p.species == nullptr) return 0;
    const Vector own = p.frame.turn_in(direction);
    const auto strain_to = [&](measure::Moisture to) {
        return std::abs(
            wood::strain(piece_->made_at, to, {p.rings, p.grain}, *p.species).along(own).in_ratio());
    };
    return distance * std::max(strain_to(piece_->climate.driest), strain_to(piece_->climate.dampest));
}

// ---- words and outlines
// ------------------------------------------------------------------------------------------

std::string from_rule(const wood::Proportion& rule) {
    const std::string share =
        rule.bottom == 1 ? fmt::format("{} times", rule.top) : fmt::format("{}/{} of", rule.top, rule.bottom);
    return fmt::format("{} the {}; {}", share, rule.of, rule.source);
}

std::string from_rule(const wood::Figure& rule) { return wood::text_with_source(rule); }

std::string from_custom(const std::string& words) { return words + "; common practice, no published source"; }

solid::Outline rectangle(double low_x, double low_y, double high_x, double high_y) {
    return polygon({{low_x, low_y}, {high_x, low_y}, {high_x, high_y}, {low_x, high_y}});
}

solid::Outline polygon(const std::vector<solid::Point2>& points) {
    double twice = 0;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const solid::Point2 p = points[i], q = points[(i + 1) % points.size()];
        twice += p.x * q.y - p.y * q.x;
    }
    std::vector<solid::Point2> turned = points;
    if (twice < 0) std::reverse(turned.begin(), turned.end());
    solid::Outline outline;
    outline.start = turned.front();
    for (std::size_t i = 1; i <= turned.size(); ++i)
        outline.edges.push_back({turned[i % turned.size()], {}, true});
    return outline;
}

std::string hardware_size(const Bench& bench, double mm) {
    measure::Manner manner = bench.piece().manner;
    if (bench.in_inches())
        manner.unit = measure::Unit::in;
    else
        manner = {measure::Unit::mm, 1, 32};
    return measure::text(Length::from_geometry(mm), manner);
}

} // namespace rayfleck::joinery
