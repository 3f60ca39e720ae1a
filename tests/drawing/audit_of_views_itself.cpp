// The rules on sheets with the whole piece held against sheets spoilt on purpose, one fault at a time.

#include <algorithm>
#include <cmath>
#include <functional>

#include <catch2/catch.hpp>

#include "audit.hpp"
#include "audit_subjects.hpp"
#include "drawing/draw.hpp"
#include "pieces.hpp"

using namespace rayfleck;
using namespace rayfleck::drawing;

namespace {

/// The hand-built side table after `spoil` has been at its first sheet: what the audit says of it.
bool reported(const std::function<void(Set&, Sheet&)>& spoil, const std::string& words) {
    const testing::BuiltPiece table = testing::side_table();
    Set set = draw({table.model, table.findings, table.cut_list}, {});
    REQUIRE(set.sheets.front().views.size() == 3);
    REQUIRE(testing::audit(set, table.piece->manner).empty());
    spoil(set, set.sheets.front());
    for (const std::string& fault : testing::audit(set, table.piece->manner))
        if (fault.find(words) != std::string::npos) return true;
    return false;
}

Stroke line(Point2 a, Point2 b, Pen pen, Role role) { return {{a, b}, pen, Ink::black, role}; }

Fill arrowhead_at(Point2 tip, double body, double length = 3) {
    return {{{tip, {tip.x + body * length, tip.y + length / 6}, {tip.x + body * length, tip.y - length / 6}}},
            Ink::black};
}

/// A dimension below a view, its arrowheads inside.
void add_dimension(Sheet& sheet, double from, double to, double y, double wood, double arrow = 3) {
    sheet.items.push_back(line({from, y}, {to, y}, Pen::thin, Role::dimension));
    sheet.items.push_back(arrowhead_at({from, y}, 1, arrow));
    sheet.items.push_back(arrowhead_at({to, y}, -1, arrow));
    for (const double x : {from, to})
        sheet.items.push_back(line({x, wood}, {x, y - 2}, Pen::thin, Role::extension));
}

Text* text_with(Sheet& sheet, const std::string& words, Typeface face) {
    for (Item& item : sheet.items)
        if (auto* text = std::get_if<Text>(&item); text && text->words == words && text->face == face)
            return text;
    return nullptr;
}

ViewRecord& view(Sheet& sheet, const std::string& name) {
    return *std::find_if(sheet.views.begin(), sheet.views.end(),
                         [&](const ViewRecord& v) { return v.name == name; });
}

DimensionRecord overall(const Sheet& sheet, char axis) {
    DimensionRecord most;
    for (const DimensionRecord& r : sheet.dimensions)
        if (r.part.empty() && r.axis == axis && r.to - r.from > most.to - most.from) most = r;
    return most;
}

} // namespace

TEST_CASE("faults of views are spoken of: centre lines, lines on lines, projection, scale") {
    CHECK(reported(
        [](Set&, Sheet& s) {
            s.items.push_back(line({100, 100}, {120, 100}, Pen::thin, Role::centre));
        },
        "not drawn long-dash dot"));
    CHECK(reported(
        [](Set&, Sheet& s) {
            const ViewRecord& v = view(s, "front");
            const double x = (v.low.x + v.high.x) / 2;
            s.items.push_back(line({x, v.low.y - 9}, {x, v.high.y + 4}, Pen::centre, Role::centre));
        },
        "9.00 mm past its view"));
    CHECK(reported(
        [](Set&, Sheet& s) {
            const ViewRecord& v = view(s, "front");
            s.items.push_back(line(v.low, {v.low.x, v.high.y}, Pen::visible, Role::edge));
            s.items.push_back(line({v.low.x, v.high.y - 5}, {v.low.x, v.high.y}, Pen::centre, Role::centre));
        },
        "lie on each other"));
    CHECK(reported(
        [](Set&, Sheet& s) {
            for (const double y : {150.0, 150.4})
                s.items.push_back(line({60, y}, {90, y}, Pen::visible, Role::edge));
        },
        "edges only 0.40 mm apart"));
    CHECK(reported([](Set&, Sheet& s) { view(s, "plan").origin.x += 0.2; }, "the plan is out of line"));
    CHECK(reported([](Set&, Sheet& s) { view(s, "from the left").origin.y += 0.2; },
                   "side view is out of line"));
    CHECK(reported(
        [](Set&, Sheet& s) {
            view(s, "plan").low.y += 400;
            view(s, "plan").high.y += 400;
        },
        "the plan stands on the wrong side"));
    CHECK(reported([](Set&, Sheet& s) { view(s, "from the left").right_sign = 1; },
                   "the side view stands on the wrong side"));
    CHECK(reported([](Set&, Sheet& s) { view(s, "front").scale = 0.3; }, "a scale of no list"));
    CHECK(
        reported([](Set&, Sheet& s) { view(s, "front").scale = 0.5; }, "does not stand in the title block"));
    CHECK(reported([](Set&, Sheet& s) { view(s, "front").high.x += 1; }, "the edges of the front miss"));
    CHECK(reported(
        [](Set&, Sheet& s) {
            for (DimensionRecord& r : s.dimensions)
                if (r.part.empty() && r.axis == 'X') r.to += 2;
        },
        "where its overall size makes"));
}

TEST_CASE("faults of dimensions are spoken of: order, arrowheads, figures, parentheses, repeats, chains") {
    CHECK(reported(
        [](Set&, Sheet& s) {
            const ViewRecord& v = view(s, "plan");
            add_dimension(s, v.low.x + 5, v.high.x - 5, v.low.y - 30, v.low.y);
            add_dimension(s, v.low.x + 10, v.high.x - 20, v.low.y - 38, v.low.y);
        },
        "lies outside a longer one"));
    CHECK(reported(
        [](Set&, Sheet& s) {
            const ViewRecord& v = view(s, "plan");
            add_dimension(s, v.low.x + 5, v.low.x + 11, v.low.y - 30, v.low.y);
        },
        "arrowheads within 6.0 mm"));
    CHECK(reported(
        [](Set&, Sheet& s) {
            const ViewRecord& v = view(s, "plan");
            add_dimension(s, v.low.x + 5, v.high.x - 5, v.low.y - 30, v.low.y, 4);
        },
        "arrowheads of"));
    CHECK(reported(
        [](Set&, Sheet& s) {
            Text* figure = text_with(s, overall(s, 'X').shown, Typeface::lettering);
            REQUIRE(figure);
            figure->at.y += 4;
        },
        "stands on no dimension line"));
    CHECK(reported([](Set&, Sheet& s) { s.dimensions.front().auxiliary = true; }, "parentheses disagree"));
    const auto with_record = [](const std::string& shown, double from, double to) {
        return [=](Set&, Sheet& s) { s.dimensions.push_back({"", 'Z', from, to, shown, false}); };
    };
    CHECK(reported(with_record("4× 30", 0, 120), "no repeat as n×"));
    CHECK(reported(with_record("4× 30 = 121", 0, 121), "does not add up"));
    CHECK(reported(with_record("4× 30 = 120", 0, 121), "where the wood measures 121"));
    CHECK(reported(
        [](Set&, Sheet& s) {
            const DimensionRecord whole = overall(s, 'Y');
            std::erase_if(s.dimensions,
                          [](const DimensionRecord& r) { return r.part.empty() && r.axis == 'Y'; });
            s.dimensions.push_back(whole);
            s.dimensions.push_back({"", 'Y', whole.from, whole.from + 200.04, "200", false});
            s.dimensions.push_back({"", 'Y', whole.from + 200.04, whole.to, "219.9", false});
        },
        "the links along Y make"));
}

TEST_CASE("faults of balloons and lists are spoken of") {
    const auto balloon_at = [](Sheet& s, Point2 at, const std::string& number) {
        Stroke circle;
        for (int i = 0; i <= 36; ++i) {
            const double a = 2 * 3.14159265358979 * i / 36;
            circle.points.push_back({at.x + 4 * std::cos(a), at.y + 4 * std::sin(a)});
        }
        circle.points.back() = circle.points.front();
        circle.pen = Pen::thin, circle.role = Role::mark;
        s.items.push_back(circle);
        const double width = text_width(number, 3.5, Typeface::sans_bold);
        s.items.push_back(
            Text{{at.x - width / 2, at.y - 1.75}, number, 3.5, Typeface::sans_bold, Ink::black, 0});
    };
    CHECK(reported([&](Set&, Sheet& s) { balloon_at(s, {30, 270}, "77"); }, "balloon 77 has no row"));
    CHECK(reported([&](Set&, Sheet& s) { balloon_at(s, {30, 270}, "77"); }, "balloon 77 has 0 leaders"));
    CHECK(reported([&](Set&, Sheet& s) { balloon_at(s, {30, 270}, "1"); }, "row 1 has 2 balloons"));
    CHECK(reported(
        [&](Set&, Sheet& s) {
            balloon_at(s, {30, 270}, "77");
            balloon_at(s, {36, 270}, "78");
        },
        "balloons 77 and 78 touch"));
    CHECK(reported(
        [&](Set&, Sheet& s) {
            for (const Item& item : s.items)
                if (const auto* stroke = std::get_if<Stroke>(&item);
                    stroke && stroke->role == Role::picture) {
                    const Point2 at = stroke->points.front();
                    balloon_at(s, at, "77");
                    return;
                }
        },
        "balloon 77 stands on the picture"));
    CHECK(reported(
        [&](Set&, Sheet& s) {
            s.items.push_back(line({30, 270}, {40, 280}, Pen::thin, Role::leader));
            s.items.push_back(line({30, 280}, {40, 270}, Pen::thin, Role::leader));
        },
        "leaders cross"));
    CHECK(reported(
        [](Set&, Sheet& s) {
            // The first size in the parts list: T of the top.
            for (Item& item : s.items)
                if (auto* text = std::get_if<Text>(&item);
                    text && text->face == Typeface::sans && text->words == "20") {
                    text->words = "21";
                    return;
                }
        },
        "the lists say 21"));
    CHECK(reported(
        [](Set& set, Sheet&) {
            for (Sheet& sheet : set.sheets)
                if (sheet.title == "Cut list")
                    for (Item& item : sheet.items)
                        if (auto* text = std::get_if<Text>(&item); text && text->words == "finished") {
                            text->words = "sizes";
                            return;
                        }
        },
        "lacks T, W or L finished"));
    CHECK(reported(
        [](Set& set, Sheet&) {
            for (Sheet& sheet : set.sheets)
                if (sheet.title == "Cut list")
                    for (Item& item : sheet.items)
                        if (auto* text = std::get_if<Text>(&item); text && text->words == "W")
                            text->words = "B";
        },
        "lacks T, W or L"));
}

TEST_CASE("printed lengths are read as numbers") {
    double value = 0;
    CHECK((testing::printed_number("448.5", value) && value == 448.5));
    CHECK((testing::printed_number("17-5/8", value) && value == 17.625));
    CHECK((testing::printed_number("5/8", value) && value == 0.625));
    CHECK((testing::printed_number("3'-6-1/2", value) && value == 42.5));
    CHECK_FALSE(testing::printed_number("R5", value));
}
