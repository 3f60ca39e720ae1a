// Full-size templates put together again from their sheets, as a maker would with scissors: by the tile's
// number and its registration crosses, knowing nothing of the layout's own sums.

#include <algorithm>
#include <cmath>
#include <map>
#include <regex>

#include <catch2/catch.hpp>

#include "audit.hpp"
#include "drawing/draw.hpp"
#include "drawing/template_shape.hpp"
#include "pieces.hpp"
#include "studied.hpp"

using namespace rayfleck;
using namespace rayfleck::testing;
using drawing::Point2;

namespace {

struct Segment {
    Point2 a, b;
};

struct Tile {
    int row = 0, column = 0, rows = 0, columns = 0;
    std::string part;
    std::vector<Segment> edges;  ///< wide continuous
    std::vector<Point2> crosses; ///< ascending by x, then y
    std::vector<drawing::Text> letters;
    double low_x = 0, low_y = 0, high_x = 0, high_y = 0; ///< of the window
};

double off(const Segment& s, Point2 p) {
    const double dx = s.b.x - s.a.x, dy = s.b.y - s.a.y, square = dx * dx + dy * dy;
    const double t =
        square < 1e-18 ? 0 : std::clamp(((p.x - s.a.x) * dx + (p.y - s.a.y) * dy) / square, 0.0, 1.0);
    return std::hypot(p.x - s.a.x - t * dx, p.y - s.a.y - t * dy);
}

double off(const std::vector<Segment>& all, Point2 p) {
    double least = 1e9;
    for (const Segment& s : all) least = std::min(least, off(s, p));
    return least;
}

/// Places along a segment, no more than a millimetre apart.
std::vector<Point2> places(const Segment& s) {
    const double length = std::hypot(s.b.x - s.a.x, s.b.y - s.a.y);
    const int steps = std::max(1, static_cast<int>(length));
    std::vector<Point2> out;
    for (int i = 0; i <= steps; ++i)
        out.push_back({s.a.x + (s.b.x - s.a.x) * i / steps, s.a.y + (s.b.y - s.a.y) * i / steps});
    return out;
}

/// What a sheet says of itself; nothing when it is no template.
std::optional<Tile> tile_on(const drawing::Sheet& sheet) {
    Tile tile;
    static const std::regex number("tile (\\d+)\\.(\\d+) of (\\d+)\\.(\\d+) .*");
    static const std::regex letter("[A-Z]");
    std::vector<Segment> short_marks;
    const drawing::Stroke* window = nullptr;
    for (const drawing::Item& item : sheet.items) {
        if (const auto* text = std::get_if<drawing::Text>(&item)) {
            std::smatch found;
            if (std::regex_match(text->words, found, number)) {
                tile.row = std::stoi(found[1]), tile.column = std::stoi(found[2]);
                tile.rows = std::stoi(found[3]), tile.columns = std::stoi(found[4]);
            }
            if (std::regex_match(text->words, letter)) tile.letters.push_back(*text);
            if (text->face == drawing::Typeface::sans_bold && tile.part.empty() && text->words.size() > 2)
                tile.part = text->words;
        }
        const auto* stroke = std::get_if<drawing::Stroke>(&item);
        if (!stroke) continue;
        if (stroke->role == drawing::Role::mark && stroke->points.size() == 5 &&
            std::abs(stroke->points[1].x - stroke->points[0].x) > 150)
            window = stroke;
        if (stroke->role == drawing::Role::mark && stroke->points.size() == 2)
            short_marks.push_back({stroke->points[0], stroke->points[1]});
        if (stroke->role == drawing::Role::edge && stroke->pen == drawing::Pen::visible)
            for (std::size_t i = 1; i < stroke->points.size(); ++i)
                tile.edges.push_back({stroke->points[i - 1], stroke->points[i]});
    }
    if (tile.row == 0 || !window) return std::nullopt;
    tile.low_x = window->points[0].x, tile.low_y = window->points[0].y;
    tile.high_x = window->points[2].x, tile.high_y = window->points[2].y;
    // A cross: a level and an upright stroke of 8 mm with one middle.
    for (const Segment& s : short_marks)
        for (const Segment& t : short_marks) {
            const bool level = std::abs(s.a.y - s.b.y) < 1e-6 && std::abs(std::abs(s.a.x - s.b.x) - 8) < 1e-6;
            const bool plumb = std::abs(t.a.x - t.b.x) < 1e-6 && std::abs(std::abs(t.a.y - t.b.y) - 8) < 1e-6;
            const Point2 p{(s.a.x + s.b.x) / 2, (s.a.y + s.b.y) / 2},
                q{(t.a.x + t.b.x) / 2, (t.a.y + t.b.y) / 2};
            if (level && plumb && std::hypot(p.x - q.x, p.y - q.y) < 1e-6) tile.crosses.push_back(p);
        }
    std::sort(tile.crosses.begin(), tile.crosses.end(),
              [](Point2 a, Point2 b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
    return tile;
}

struct Joined {
    std::string part;
    std::vector<Segment> edges;
    int tiles = 0, tiles_wanted = 0;
};

/// Tiles of one template follow one another; the lower left crosses of the first row and the last column tell
/// where each belongs.
std::vector<Joined> joined(const drawing::Set& set) {
    std::vector<Joined> all;
    for (const drawing::Sheet& sheet : set.sheets) {
        const auto tile = tile_on(sheet);
        if (!tile) continue;
        REQUIRE(tile->crosses.size() == 4);
        CHECK(sheet.full_size);
        const double wide = tile->crosses[2].x - tile->crosses[0].x,
                     high = tile->crosses[1].y - tile->crosses[0].y;
        if (tile->row == 1 && tile->column == 1) {
            all.push_back({});
            all.back().part = tile->part;
            all.back().tiles_wanted = tile->rows * tile->columns;
        }
        REQUIRE_FALSE(all.empty());
        ++all.back().tiles;
        const Point2 by{(tile->column - 1) * wide - tile->crosses[0].x,
                        (tile->rows - tile->row) * high - tile->crosses[0].y};
        for (const Segment& s : tile->edges)
            all.back().edges.push_back({{s.a.x + by.x, s.a.y + by.y}, {s.b.x + by.x, s.b.y + by.y}});
    }
    return all;
}

drawing::Set drawn(const BuiltPiece& built, const std::string& sheet = "") {
    drawing::Wishes wishes;
    wishes.sheet = sheet;
    return drawing::draw({built.model, built.findings, built.cut_list}, wishes);
}

} // namespace

TEST_CASE(
    "a template put together from its tiles is the outline of the text to a twentieth of a millimetre") {
    // The arch is on its side of the middle: a chord of 300 under an arc of radius 217.5 about (250, -157.5).
    const BuiltPiece built = odd_shapes();
    for (const char* sheet : {"A3", "Letter"}) {
        const auto templates = joined(drawn(built, sheet));
        const auto crest = std::find_if(templates.begin(), templates.end(), [](const Joined& t) {
            return t.part.find("crest rail") != std::string::npos;
        });
        REQUIRE(crest != templates.end());
        CHECK(crest->tiles == crest->tiles_wanted);
        double left = 1e9, top = -1e9;
        for (const Segment& s : crest->edges)
            for (const Point2 p : {s.a, s.b}) left = std::min(left, p.x), top = std::max(top, p.y);
        // Half of it is drawn: its low end up to the middle. The part's left upper corner tells where it
        // lies.
        const auto off_true_outline = [](Point2 p) {
            const double arc = p.x > 99.9 ? std::abs(std::hypot(p.x - 250, p.y + 157.5) - 217.5) : 1e9;
            const double low = p.x < 100.1 ? std::abs(p.y) : 1e9;
            return std::min({arc, low, std::abs(p.y - 100), std::abs(p.x)});
        };
        double worst = 0;
        for (const Segment& s : crest->edges)
            for (const Point2 p : places(s))
                worst = std::max(worst, off_true_outline({p.x - left, p.y - top + 100}));
        CHECK(worst < 0.05);
        // And all of the arch is there.
        double gap = 0;
        for (int i = 0; i <= 100; ++i) {
            const double x = 100 + 1.5 * i, y = -157.5 + std::sqrt(217.5 * 217.5 - (x - 250) * (x - 250));
            gap = std::max(gap, off(crest->edges, {x + left, y + top - 100}));
        }
        CHECK(gap < 0.05);
    }
}

TEST_CASE("neighbouring tiles show the same in their overlap") {
    for (const std::string file : {"garden-bench.fleck", "fern-stand.fleck", "plate-rack.fleck"}) {
        const auto sample = studied_sample(file);
        REQUIRE(sample);
        const drawing::Set set = drawing::draw({sample->model, sample->findings, sample->cut_list}, {});
        std::vector<Tile> tiles;
        for (const drawing::Sheet& sheet : set.sheets)
            if (const auto tile = tile_on(sheet)) tiles.push_back(*tile);
        int compared = 0;
        for (std::size_t i = 0; i < tiles.size(); ++i)
            for (std::size_t j = i + 1; j < tiles.size(); ++j) {
                const Tile &a = tiles[i], &b = tiles[j];
                if (b.row == 1 && b.column == 1) break; // the next template begins
                const bool beside = a.row == b.row && b.column == a.column + 1,
                           below = a.column == b.column && b.row == a.row + 1;
                if (!beside && !below) continue;
                ++compared;
                // The right-hand crosses of the left tile are the left-hand crosses of the right one.
                const Point2 mine = a.crosses[beside ? 2 : 0], its = b.crosses[beside ? 0 : 1];
                const Point2 by{mine.x - its.x, mine.y - its.y};
                INFO(file << ", " << a.part << " tiles " << a.row << '.' << a.column << " and " << b.row
                          << '.' << b.column);
                // 10 mm of overlap.
                CHECK(std::abs((beside ? a.high_x - (b.low_x + by.x) : b.high_y + by.y - a.low_y) - 10) <
                      1e-6);
                const auto in_both = [&](Point2 p) {
                    return beside ? p.x > b.low_x + by.x + 0.01 && p.x < a.high_x - 0.01
                                  : p.y < b.high_y + by.y - 0.01 && p.y > a.low_y + 0.01;
                };
                std::vector<Segment> moved;
                for (const Segment& s : b.edges)
                    moved.push_back({{s.a.x + by.x, s.a.y + by.y}, {s.b.x + by.x, s.b.y + by.y}});
                double worst = 0;
                for (const Segment& s : a.edges)
                    for (const Point2 p : places(s))
                        if (in_both(p)) worst = std::max(worst, off(moved, p));
                for (const Segment& s : moved)
                    for (const Point2 p : places(s))
                        if (in_both(p)) worst = std::max(worst, off(a.edges, p));
                CHECK(worst < 0.01);
                // The letter between them stands on both, at one place.
                const bool shared = std::any_of(a.letters.begin(), a.letters.end(), [&](const auto& x) {
                    return std::any_of(b.letters.begin(), b.letters.end(), [&](const auto& y) {
                        return x.words == y.words && std::abs(x.at.x - y.at.x - by.x) < 0.002 &&
                               std::abs(x.at.y - y.at.y - by.y) < 0.002;
                    });
                });
                CHECK(shared);
            }
        CHECK(compared > 0);
    }
}

TEST_CASE("every template page bears 100 mm and 4 in along both axes, exactly") {
    const drawing::Set set = drawn(odd_shapes());
    int pages = 0;
    for (const drawing::Sheet& sheet : set.sheets) {
        if (!tile_on(sheet)) continue;
        ++pages;
        int level[2] = {0, 0}, plumb[2] = {0, 0};
        for (const drawing::Item& item : sheet.items)
            if (const auto* s = std::get_if<drawing::Stroke>(&item);
                s && s->points.size() == 2 && s->role == drawing::Role::mark)
                for (int k = 0; k < 2; ++k) {
                    const double length = k == 0 ? 100 : 101.6;
                    const Point2 a = s->points[0], b = s->points[1];
                    level[k] += a.y == b.y && std::abs(std::abs(a.x - b.x) - length) < 0.0015;
                    plumb[k] += a.x == b.x && std::abs(std::abs(a.y - b.y) - length) < 0.0015;
                }
        CHECK(level[0] == 1);
        CHECK(level[1] == 1);
        CHECK(plumb[0] == 1);
        CHECK(plumb[1] == 1);
        int spoken = 0;
        for (const drawing::Item& item : sheet.items)
            if (const auto* text = std::get_if<drawing::Text>(&item))
                spoken += text->words == "100 mm" || text->words == "4 in" ||
                          text->words.find("print at 100 %") != std::string::npos;
        CHECK(spoken == 5);
    }
    CHECK(pages > 0);
}

TEST_CASE("plain parts have no template, and a template's page is A4 or Letter") {
    for (const drawing::Sheet& sheet : drawn(side_table()).sheets) CHECK_FALSE(sheet.full_size);
    for (const auto& [set_sheet, width] : {std::pair{"A2", 210.0}, {"Tabloid", 215.9}})
        for (const drawing::Sheet& sheet : drawn(odd_shapes(), set_sheet).sheets)
            if (sheet.full_size) CHECK(sheet.width == width);
}

TEST_CASE("an outline that would take too many sheets gives offsets that lie on it") {
    // The rule of the template sheets: more than six tiles. 2.4 m of arched rail, higher at one end, is ten.
    const BuiltPiece rail = long_arched_rail();
    const double radius = std::hypot(1200, 18000);
    const drawing::Set set = drawn(rail, "A4");
    const drawing::Sheet* page = nullptr;
    for (const drawing::Sheet& sheet : set.sheets) {
        CHECK_FALSE(sheet.full_size);
        if (sheet.title == "Offsets of outlines") page = &sheet;
    }
    REQUIRE(page);
    // Rows of the table: station, low line, high line, each on one base line.
    std::map<long, std::map<double, double>> rows;
    for (const drawing::Item& item : page->items)
        if (const auto* text = std::get_if<drawing::Text>(&item)) {
            char* end = nullptr;
            const double value = std::strtod(text->words.c_str(), &end);
            if (end && *end == 0 && !text->words.empty())
                rows[std::lround(text->at.y * 100)][text->at.x] = value;
        }
    int stations = 0;
    for (const auto& [y, cells] : rows) {
        // Stretches of the table may stand side by side.
        if (cells.size() % 3 != 0) continue;
        for (auto cell = cells.begin(); cell != cells.end(); ++cell, ++stations) {
            const double x = cell->second, low = (++cell)->second, high = (++cell)->second;
            CHECK(std::abs(low - (-18000 + std::sqrt(radius * radius - (x - 1200) * (x - 1200)))) < 0.11);
            CHECK(std::abs(high - (60 + 30 * x / 2400)) < 0.11);
        }
    }
    CHECK(stations >= 49);
}
