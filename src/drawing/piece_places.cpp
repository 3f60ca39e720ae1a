// Unknown places are kept in groups whose members know each other's distance, or, over a centre line, each
// other's sum; within a group every place is the group's unknown or its opposite, plus a known number. A tie
// between two members with unlike signs therefore settles the group. (Union-find with a sign.)

#include "drawing/piece_places.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

namespace rayfleck::drawing {
namespace {

using measure::Length;

/// Places nearer than this are one, mm of wood.
constexpr double same_place = 0.05;

class Ties {
  public:
    explicit Ties(std::vector<double> places) {
        std::sort(places.begin(), places.end());
        for (const double p : places)
            if (places_.empty() || p - places_.back() > same_place) places_.push_back(p);
        for (std::size_t i = 0; i < places_.size(); ++i) nodes_.push_back({i, 1, false});
    }

    std::size_t node(double place) const {
        const auto next = std::lower_bound(places_.begin(), places_.end(), place - same_place);
        return static_cast<std::size_t>(next - places_.begin());
    }
    bool has(double place) const {
        const std::size_t n = node(place);
        return n < places_.size() && std::abs(places_[n] - place) <= same_place;
    }
    void settle(double place) { nodes_[root(node(place)).first].settled = true; }
    bool settled(double place) const { return nodes_[root(node(place)).first].settled; }
    /// Their distance is told. false when it followed already.
    bool tie(double a, double b) { return join(a, b, 1); }
    /// They lie as far on either side of the middle.
    void mirror(double a, double b) { join(a, b, -1); }
    bool tells(double a, double b) const {
        const auto [x, s] = root(node(a));
        const auto [y, t] = root(node(b));
        return x == y ? !nodes_[x].settled && s != t : !(nodes_[x].settled && nodes_[y].settled);
    }

  private:
    struct Node {
        std::size_t up;
        int sign; ///< against `up`
        bool settled;
    };
    std::pair<std::size_t, int> root(std::size_t i) const {
        int sign = 1;
        while (nodes_[i].up != i) sign *= nodes_[i].sign, i = nodes_[i].up;
        return {i, sign};
    }
    bool join(double a, double b, int sign) {
        const auto [x, s] = root(node(a));
        const auto [y, t] = root(node(b));
        if (x == y) {
            if (nodes_[x].settled || s * t == sign) return false;
            return nodes_[x].settled = true;
        }
        if (nodes_[x].settled && nodes_[y].settled) return false;
        nodes_[y].up = x;
        nodes_[y].sign = s * t * sign;
        nodes_[x].settled = nodes_[x].settled || nodes_[y].settled;
        return true;
    }
    std::vector<double> places_;
    std::vector<Node> nodes_;
};

double overlap(const measure::Box& a, const measure::Box& b, int axis) {
    return std::min(a.high[axis], b.high[axis]) - std::max(a.low[axis], b.low[axis]);
}

/// Which part is the mirror image of which, -1 where there is none. `symmetric` when nearly all wood pairs.
std::vector<int> partners(const Job& job, const std::vector<measure::Box>& boxes, int axis, double middle,
                          bool& symmetric) {
    std::vector<int> partner(boxes.size(), -1);
    double paired = 0, all = 0;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        const double volume = job.model.made[i].solid.volume;
        all += volume;
        for (std::size_t j = 0; j < boxes.size() && partner[i] < 0; ++j) {
            if (job.row_of_part[i] != job.row_of_part[j]) continue;
            bool mirrored = std::abs(boxes[i].low[axis] + boxes[j].high[axis] - 2 * middle) < same_place &&
                            std::abs(boxes[i].high[axis] + boxes[j].low[axis] - 2 * middle) < same_place;
            for (int other = 0; other < 3 && mirrored; ++other)
                mirrored =
                    other == axis || (std::abs(boxes[i].low[other] - boxes[j].low[other]) < same_place &&
                                      std::abs(boxes[i].high[other] - boxes[j].high[other]) < same_place);
            if (mirrored) partner[i] = static_cast<int>(j);
        }
        if (partner[i] >= 0) paired += volume;
    }
    constexpr double nearly_all = 0.85;
    symmetric = paired > nearly_all * all;
    return partner;
}

/// Joints that leave their mark on both parts tell where these lie to each other.
std::vector<bool> held_by_joints(const joinery::Model& model) {
    std::vector<std::vector<bool>> cut(2, std::vector<bool>(model.joints.size(), false));
    for (std::size_t i = 0; i < model.made.size(); ++i)
        for (const piece::Cut& c : model.made[i].cuts)
            if (c.joint >= 0) {
                const auto j = static_cast<std::size_t>(c.joint);
                cut[model.joints[j].a == static_cast<int>(i) ? 0 : 1][j] = true;
            }
    std::vector<bool> held(model.made.size(), false);
    for (std::size_t j = 0; j < model.joints.size(); ++j)
        if (cut[1][j])
            held[static_cast<std::size_t>(model.joints[j].a)] =
                held[static_cast<std::size_t>(model.joints[j].b)] = true;
    return held;
}

class Along {
  public:
    Along(const Job& job, const Principal& seen, double scale, int axis, const std::vector<bool>& held)
        : job_(job), seen_(seen), boxes_(seen.whole.boxes), scale_(scale), axis_(axis), held_(held),
          low_(seen.box.low[axis]), high_(seen.box.high[axis]), ties_(all_places()) {}

    AxisPlaces measured() {
        AxisPlaces out;
        out.low = low_, out.high = high_;
        ties_.tie(low_, high_);
        ties_.settle(low_);
        for (const piece::Line& line : lines_of_rod())
            if (const double at = line.at.value(); ties_.has(at) && !is_face(at)) out.middles.push_back(at);
        for (const measure::Box& box : boxes_) {
            ties_.tie(box.low[axis_], box.high[axis_]);
            if (const double middle = middle_of(box); on_line(middle)) ties_.tie(box.low[axis_], middle);
        }
        if (axis_ != 2) {
            const auto partner = partners(job_, boxes_, axis_, (low_ + high_) / 2, out.symmetric);
            if (out.symmetric)
                for (std::size_t i = 0; i < boxes_.size(); ++i)
                    if (partner[i] >= 0)
                        ties_.mirror(boxes_[i].low[axis_],
                                     boxes_[static_cast<std::size_t>(partner[i])].high[axis_]);
        }
        rod();
        rows();
        find_edges();
        out.by_joints = by_joints();
        missing();
        links_.push_back(link(PlaceLink::Kind::overall, low_, high_));
        out.links = std::move(links_);
        return out;
    }

  private:
    std::vector<double> all_places() const {
        std::vector<double> places{low_, high_};
        for (const measure::Box& box : boxes_) {
            places.push_back(box.low[axis_]), places.push_back(box.high[axis_]);
            if (const double middle = middle_of(box); on_line(middle)) places.push_back(middle);
        }
        return places;
    }
    double middle_of(const measure::Box& box) const { return (box.low[axis_] + box.high[axis_]) / 2; }
    const std::vector<piece::Line>& lines_of_rod() const {
        static const std::vector<piece::Line> none;
        const auto& rods = job_.model.piece->rods;
        return static_cast<std::size_t>(axis_) < rods.size() ? rods[static_cast<std::size_t>(axis_)].lines
                                                             : none;
    }
    /// Does a line of the maker's run there?
    bool on_line(double place) const {
        const auto& lines = lines_of_rod();
        return std::any_of(lines.begin(), lines.end(), [&](const piece::Line& line) {
            return std::abs(line.at.value() - place) <= same_place;
        });
    }
    bool is_face(double place) const {
        return std::abs(place - low_) <= same_place || std::abs(place - high_) <= same_place ||
               std::any_of(boxes_.begin(), boxes_.end(), [&](const measure::Box& box) {
                   return std::abs(box.low[axis_] - place) <= same_place ||
                          std::abs(box.high[axis_] - place) <= same_place;
               });
    }
    PlaceLink link(PlaceLink::Kind kind, double a, double b) const {
        PlaceLink l;
        l.kind = kind;
        l.from = std::min(a, b), l.to = std::max(a, b);
        l.length = Length::from_geometry(l.to - l.from);
        return l;
    }

    /// The maker's lines, as far as some part reaches them.
    void rod() {
        std::vector<Length> lines;
        for (const piece::Line& line : lines_of_rod())
            if (ties_.has(line.at.value()) && line.at.value() > low_ - same_place &&
                line.at.value() < high_ + same_place)
                lines.push_back(line.at);
        std::sort(lines.begin(), lines.end());
        lines.erase(std::unique(lines.begin(), lines.end()), lines.end());
        for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
            const double a = lines[i].value(), b = lines[i + 1].value();
            if ((b - a) * scale_ < 0.5) continue;
            ties_.tie(a, b);
            if (std::abs(a - low_) < same_place && std::abs(b - high_) < same_place) continue;
            PlaceLink l = link(PlaceLink::Kind::rod, a, b);
            l.length = lines[i + 1] - lines[i];
            links_.push_back(l);
        }
    }

    /// Copies at equal spacing.
    void rows() {
        for (const cutlist::Row& row : job_.cut_list.rows) {
            std::map<long, std::vector<std::pair<double, int>>> by_size;
            for (const int part : row.parts) {
                const measure::Box& box = boxes_[static_cast<std::size_t>(part)];
                by_size[std::lround((box.high[axis_] - box.low[axis_]) * 10)].push_back(
                    {box.low[axis_], part});
            }
            for (auto& [size, lows] : by_size) {
                std::sort(lows.begin(), lows.end());
                std::vector<std::pair<double, int>> apart;
                for (const auto& l : lows)
                    if (apart.empty() || l.first - apart.back().first > same_place) apart.push_back(l);
                if (apart.size() < 3) continue;
                const auto spaces = static_cast<int>(apart.size()) - 1;
                const double pitch = (apart.back().first - apart.front().first) / spaces;
                bool equal = true, all_settled = true;
                for (std::size_t i = 0; i < apart.size(); ++i) {
                    equal = equal && std::abs(apart.front().first + pitch * static_cast<double>(i) -
                                              apart[i].first) < same_place;
                    all_settled = all_settled && ties_.settled(apart[i].first);
                }
                if (!equal || all_settled) continue;
                for (std::size_t i = 1; i < apart.size(); ++i) ties_.tie(apart[i - 1].first, apart[i].first);
                links_.push_back(link(PlaceLink::Kind::row, apart.front().first, apart.back().first));
                links_.back().times = spaces;
                links_.back().from_part = apart.front().second;
                links_.back().to_part = apart.back().second;
            }
        }
    }

    struct Face {
        int part = -1; ///< -1: the whole piece
        double at = 0;
        std::array<int, 3> shown{}; ///< in each view
    };

    void find_edges() {
        const auto views = seen_.views();
        const auto add = [&](int part, double at, const measure::Box& box) {
            Face face{part, at, {}};
            for (std::size_t v = 0; v < views.size(); ++v) face.shown[v] = views[v]->edge_at(axis_, at, box);
            faces_.push_back(face);
        };
        for (std::size_t i = 0; i < boxes_.size(); ++i)
            for (const double at : {boxes_[i].low[axis_], boxes_[i].high[axis_]})
                add(static_cast<int>(i), at, boxes_[i]);
        for (const double at : {low_, high_}) {
            faces_.push_back({-1, at, {}});
            for (std::size_t v = 0; v < views.size(); ++v)
                if (views[v]->right == axis_ || views[v]->up == axis_) faces_.back().shown[v] = 2;
        }
    }

    std::vector<int> by_joints() {
        std::vector<int> rows;
        for (std::size_t f = 0; f + 1 < faces_.size(); f += 2) {
            const int part = faces_[f].part;
            if (part < 0 || ties_.settled(faces_[f].at) || !held_[static_cast<std::size_t>(part)]) continue;
            const auto hidden = [&](const Face& face) {
                return std::none_of(face.shown.begin(), face.shown.end(), [](int s) { return s > 0; });
            };
            if (!hidden(faces_[f]) || !hidden(faces_[f + 1])) continue;
            left_to_joints_.push_back(part);
            if (const int row = job_.row_of_part[static_cast<std::size_t>(part)]; row >= 0)
                rows.push_back(row);
        }
        std::sort(rows.begin(), rows.end());
        rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
        return rows;
    }

    double cost(const Face& a, const Face& b) const {
        const double span = std::abs(a.at - b.at);
        double factor = 1.5;
        if (a.part >= 0 && b.part >= 0) {
            int beside = 0;
            for (int other = 0; other < 3; ++other)
                if (other != axis_ && overlap(boxes_[static_cast<std::size_t>(a.part)],
                                              boxes_[static_cast<std::size_t>(b.part)], other) > -1)
                    ++beside;
            factor = beside == 2 ? 1 : beside == 1 ? 2 : 5;
        }
        // A part that stands askew has corners where others have faces.
        constexpr double askew = 3;
        for (const Face* face : {&a, &b})
            if (face->part >= 0 && !job_.made(face->part).part->upright) factor *= askew;
        int best = 0;
        for (std::size_t v = 0; v < a.shown.size(); ++v)
            best = std::max(best, std::min(a.shown[v], b.shown[v]));
        constexpr double unseen = 5000, cramped = 300, dashed = 1.5;
        return span * factor * (best == 1 ? dashed : 1) + (best == 0 ? unseen : 0) +
               (span * scale_ < 1.2 ? cramped : 0);
    }

    /// What is still unknown, the cheapest dimension first.
    void missing() {
        const auto wanted = [&](const Face& face) {
            return face.part < 0 || std::find(left_to_joints_.begin(), left_to_joints_.end(), face.part) ==
                                        left_to_joints_.end();
        };
        std::vector<const Face*> faces;
        for (const Face& face : faces_)
            if (wanted(face)) faces.push_back(&face);
        struct Choice {
            long cost; ///< in whole thousandths, so that equal ones keep their order
            std::size_t a, b;
        };
        std::vector<Choice> choices;
        for (std::size_t a = 0; a < faces.size(); ++a)
            for (std::size_t b = a + 1; b < faces.size(); ++b)
                if (ties_.tells(faces[a]->at, faces[b]->at) &&
                    std::abs(faces[a]->at - faces[b]->at) > same_place)
                    choices.push_back({std::lround(1000 * cost(*faces[a], *faces[b])), a, b});
        std::stable_sort(choices.begin(), choices.end(),
                         [](const Choice& p, const Choice& q) { return p.cost < q.cost; });
        for (const Choice& c : choices) {
            const Face *a = faces[c.a], *b = faces[c.b];
            if (!ties_.tie(a->at, b->at)) continue;
            if (a->at > b->at) std::swap(a, b);
            links_.push_back(link(PlaceLink::Kind::place, a->at, b->at));
            links_.back().from_part = a->part;
            links_.back().to_part = b->part;
        }
    }

    const Job& job_;
    const Principal& seen_;
    const std::vector<measure::Box>& boxes_;
    double scale_;
    int axis_;
    const std::vector<bool>& held_;
    double low_, high_;
    Ties ties_;
    std::vector<PlaceLink> links_;
    std::vector<Face> faces_;
    std::vector<int> left_to_joints_;
};

} // namespace

std::vector<AxisPlaces> places_to_measure(const Job& job, const Principal& seen, double scale) {
    const std::vector<bool> held = held_by_joints(job.model);
    std::vector<AxisPlaces> axes;
    for (int axis = 0; axis < 3; ++axis) axes.push_back(Along(job, seen, scale, axis, held).measured());
    return axes;
}

} // namespace rayfleck::drawing
