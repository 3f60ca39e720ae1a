// Can every part be placed from the printed sheets? The tree test for the whole piece.
//
// Read from the sheets: dimension records along X, Y and Z, centre lines in the views, the note that names
// parts left to their joints. Known besides: every part's own size (its drawing tells it), and which places
// are in line. Then each part must be tied to the overall size along each direction. Written anew, with plain
// equations: each place is an unknown, each of these facts a linear equation, and a place is told when the
// equations settle it (Gaussian elimination), so that a fault in the drawing room's own reasoning cannot hide
// itself.

#include <algorithm>
#include <cmath>
#include <map>
#include <regex>
#include <set>

#include <catch2/catch.hpp>

#include "drawing/draw.hpp"
#include "pieces.hpp"
#include "studied.hpp"

using namespace rayfleck;

namespace {

/// Linear equations in places along one axis.
class Equations {
  public:
    std::size_t unknown(double place) {
        for (std::size_t i = 0; i < places_.size(); ++i)
            if (std::abs(places_[i] - place) < 0.06) return i;
        places_.push_back(place);
        return places_.size() - 1;
    }
    /// a * x + b * y is known.
    void add(double a, double x, double b, double y) {
        std::map<std::size_t, double> row;
        row[unknown(x)] += a;
        row[unknown(y)] += b;
        rows_.push_back(row);
    }
    void know(double x) { rows_.push_back({{unknown(x), 1.0}}); }

    /// All places that the equations settle.
    std::set<std::size_t> settled() const {
        std::vector<std::vector<double>> m;
        for (const auto& row : rows_) {
            m.emplace_back(places_.size(), 0.0);
            for (const auto& [i, value] : row) m.back()[i] = value;
        }
        std::size_t rank = 0;
        for (std::size_t column = 0; column < places_.size() && rank < m.size(); ++column) {
            std::size_t pivot = rank;
            for (std::size_t r = rank; r < m.size(); ++r)
                if (std::abs(m[r][column]) > std::abs(m[pivot][column])) pivot = r;
            if (std::abs(m[pivot][column]) < 1e-9) continue;
            std::swap(m[pivot], m[rank]);
            const double scale = m[rank][column];
            for (double& value : m[rank]) value /= scale;
            for (std::size_t r = 0; r < m.size(); ++r)
                if (const double factor = m[r][column]; r != rank && std::abs(factor) > 1e-12)
                    for (std::size_t c = 0; c < places_.size(); ++c) m[r][c] -= factor * m[rank][c];
            ++rank;
        }
        std::set<std::size_t> out;
        for (const auto& row : m) {
            std::size_t count = 0, which = 0;
            for (std::size_t c = 0; c < row.size(); ++c)
                if (std::abs(row[c]) > 1e-9) ++count, which = c;
            if (count == 1) out.insert(which);
        }
        return out;
    }

  private:
    std::vector<double> places_;
    std::vector<std::map<std::size_t, double>> rows_;
};

/// Rows that the sheets leave to their joints.
std::set<int> left_to_joints(const drawing::Set& set) {
    std::string all;
    for (const drawing::Sheet& sheet : set.sheets)
        if (!sheet.views.empty())
            for (const drawing::Item& item : sheet.items)
                if (const auto* text = std::get_if<drawing::Text>(&item)) all += text->words + " ";
    std::set<int> rows;
    static const std::regex note(R"(Parts? ([0-9, and]+) ends? out of sight in joints)");
    std::smatch m;
    if (!std::regex_search(all, m, note)) return rows;
    const std::string list = m[1];
    static const std::regex number(R"(\d+)");
    for (auto it = std::sregex_iterator(list.begin(), list.end(), number); it != std::sregex_iterator(); ++it)
        rows.insert(std::stoi(it->str()));
    return rows;
}

/// Axes along which a view is cut in half by a centre line from border to border.
std::set<int> symmetric_axes(const drawing::Set& set) {
    std::set<int> axes;
    for (const drawing::Sheet& sheet : set.sheets)
        for (const drawing::ViewRecord& view : sheet.views)
            for (const int axis : {view.right, view.up}) {
                const bool upright = axis == view.right;
                const double middle =
                    upright ? (view.low.x + view.high.x) / 2 : (view.low.y + view.high.y) / 2;
                bool low_end = false, high_end = false;
                for (const drawing::Item& item : sheet.items) {
                    const auto* s = std::get_if<drawing::Stroke>(&item);
                    if (!s || s->role != drawing::Role::centre || s->points.size() != 2) continue;
                    for (const drawing::Point2& p : s->points) {
                        if (std::abs((upright ? p.x : p.y) - middle) > 0.05) continue;
                        const double along = upright ? p.y : p.x, low = upright ? view.low.y : view.low.x,
                                     high = upright ? view.high.y : view.high.x;
                        low_end = low_end || (along < low - 2.9 && along > low - 7.1);
                        high_end = high_end || (along > high + 2.9 && along < high + 7.1);
                    }
                }
                if (low_end && high_end) axes.insert(axis);
            }
    return axes;
}

struct Box {
    measure::Box box;
    int row = -1;
    bool upright = true;
};

/// Parts that the sheets do not place, as `name along X`.
std::vector<std::string> not_placed(const drawing::Set& set, const joinery::Model& model,
                                    const cutlist::CutList& list) {
    std::vector<Box> boxes(model.made.size());
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        boxes[i].box = piece::box_of(*model.made[i].part);
        boxes[i].upright = model.made[i].part->upright;
    }
    for (const cutlist::Row& row : list.rows)
        for (const int part : row.parts) boxes[static_cast<std::size_t>(part)].row = row.reference;
    const std::set<int> by_joints = left_to_joints(set), symmetric = symmetric_axes(set);
    std::vector<std::string> missing;
    for (int axis = 0; axis < 3; ++axis) {
        Equations equations;
        const drawing::DimensionRecord* overall = nullptr;
        static const std::regex repeat(R"((\d+)× .*)");
        for (const drawing::Sheet& sheet : set.sheets) {
            if (sheet.views.empty()) continue;
            for (const drawing::DimensionRecord& r : sheet.dimensions) {
                if (!r.part.empty() || r.axis != "XYZ"[axis]) continue;
                if (!overall || r.to - r.from > overall->to - overall->from) overall = &r;
                std::smatch m;
                if (std::regex_match(r.shown, m, repeat)) {
                    const int n = std::stoi(m[1]);
                    for (int k = 1; k <= n; ++k)
                        equations.add(-1, r.from, 1, r.from + (r.to - r.from) * k / n);
                } else {
                    equations.add(-1, r.from, 1, r.to);
                }
            }
        }
        if (!overall) return {"no overall size"};
        equations.know(overall->from);
        const double middle = (overall->from + overall->to) / 2;
        for (std::size_t i = 0; i < boxes.size(); ++i) {
            const double low = boxes[i].box.low[axis], high = boxes[i].box.high[axis];
            equations.add(-1, low, 1, high);
            // Half of a known size is known too.
            equations.add(-1, low, 1, (low + high) / 2);
            if (!symmetric.count(axis)) continue;
            for (const Box& other : boxes) {
                bool mirrored = other.row == boxes[i].row &&
                                std::abs(other.box.low[axis] + high - 2 * middle) < 0.06 &&
                                std::abs(other.box.high[axis] + low - 2 * middle) < 0.06;
                for (int a = 0; a < 3; ++a)
                    mirrored =
                        mirrored && (a == axis || std::abs(other.box.low[a] - boxes[i].box.low[a]) < 0.06);
                if (mirrored) equations.add(1, low, 1, other.box.high[axis]);
            }
        }
        const std::set<std::size_t> told = equations.settled();
        for (std::size_t i = 0; i < boxes.size(); ++i) {
            if (by_joints.count(boxes[i].row) || !boxes[i].upright) continue;
            if (!told.count(equations.unknown(boxes[i].box.low[axis])) ||
                !told.count(equations.unknown(boxes[i].box.high[axis])))
                missing.push_back(model.made[i].part->name + " along " + "XYZ"[axis]);
        }
    }
    return missing;
}

std::string lines_of(const std::vector<std::string>& all) {
    std::string text;
    for (const std::string& one : all) text += one + "\n";
    return text;
}

} // namespace

TEST_CASE("every part of every sample can be placed from the sheets of the whole piece") {
    for (const std::string& file : testing::sample_files()) DYNAMIC_SECTION(file) {
            const auto sample = testing::studied_sample(file);
            REQUIRE(sample);
            for (const char* sheet : {"", "A4"}) {
                drawing::Wishes wishes;
                wishes.sheet = sheet;
                const auto missing =
                    not_placed(drawing::draw({sample->model, sample->findings, sample->cut_list}, wishes),
                               sample->model, sample->cut_list);
                INFO("sheet " << sheet << "\n" << lines_of(missing));
                CHECK(missing.empty());
            }
        }
}

TEST_CASE("a part is missed when its dimension goes") {
    const testing::BuiltPiece rack = testing::slatted_rack();
    drawing::Set set = drawing::draw({rack.model, rack.findings, rack.cut_list}, {});
    CHECK(not_placed(set, rack.model, rack.cut_list).empty());
    // Without its row dimension the slats of the rack stand anywhere.
    for (drawing::Sheet& sheet : set.sheets)
        std::erase_if(sheet.dimensions, [](const drawing::DimensionRecord& r) {
            return r.part.empty() && r.shown.find("×") != std::string::npos;
        });
    CHECK_FALSE(not_placed(set, rack.model, rack.cut_list).empty());
}
