// Sections and joint details: the rules that a program can judge, cut areas against hand calculation.

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "drawing/draw.hpp"
#include "pieces.hpp"
#include "section_rules.hpp"
#include "studied.hpp"

using namespace rayfleck;
using namespace rayfleck::testing;
using drawing::Set;

namespace {

Set drawn(const BuiltPiece& built) {
    return drawing::draw({built.model, built.findings, built.cut_list}, {});
}

std::string told(const std::vector<std::string>& faults) {
    return fmt::format("{}", fmt::join(faults, "\n"));
}

/// The rule reports a set with this change, and the set without it is sound.
template <class Change> bool reported(const std::string& rule, Change change) {
    Set set = drawn(side_table());
    if (!faults_of_sections(set).empty()) return false;
    bool changed = false;
    for (drawing::Sheet& sheet : set.sheets)
        if (!sheet.sections.empty() && !changed) changed = change(sheet);
    if (!changed) return false;
    const auto faults = faults_of_sections(set);
    return std::any_of(faults.begin(), faults.end(),
                       [&](const std::string& fault) { return fault.find(rule) != std::string::npos; });
}

} // namespace

TEST_CASE("sections and details of every sample keep the rules on their own sheet and on A4") {
    for (const std::string& file : sample_files()) DYNAMIC_SECTION(file) {
            const auto sample = studied_sample(file);
            REQUIRE(sample);
            for (const char* sheet : {"", "A4"}) {
                drawing::Wishes wishes;
                wishes.sheet = sheet;
                const Set set = drawing::draw({sample->model, sample->findings, sample->cut_list}, wishes);
                const auto faults = faults_of_sections(set);
                INFO("sheet " << sheet << "\n" << told(faults));
                CHECK(faults.empty());
                const auto cut = [](const drawing::Sheet& s) { return !s.sections.empty(); };
                CHECK(std::any_of(set.sheets.begin(), set.sheets.end(), cut));
            }
        }
}

TEST_CASE("faults planted in sections are reported") {
    using drawing::Sheet;
    CHECK(reported("D17", [](Sheet& sheet) {
        for (auto& area : sheet.sections)
            if (!area.filled && area.grain == drawing::CutGrain::end_grain) return area.turn = 20, true;
        return false;
    }));
    CHECK(reported("D18", [](Sheet& sheet) {
        for (auto& area : sheet.sections) area.turn = 45, area.pitch = 1;
        return true;
    }));
    CHECK(reported("D20", [](Sheet& sheet) {
        for (auto& area : sheet.sections) area.filled = !area.filled;
        return true;
    }));
    CHECK(reported("D22", [](Sheet& sheet) {
        const auto& ring = sheet.sections.front().rings.front();
        drawing::Point2 middle;
        for (const auto p : ring)
            middle.x += p.x / static_cast<double>(ring.size()),
                middle.y += p.y / static_cast<double>(ring.size());
        sheet.items.push_back(drawing::Stroke{{{middle.x - 0.1, middle.y}, {middle.x + 0.1, middle.y}},
                                              drawing::Pen::hidden,
                                              drawing::Ink::black,
                                              drawing::Role::edge});
        return true;
    }));
    CHECK(reported("D22", [](Sheet& sheet) {
        sheet.items.push_back(drawing::Stroke{
            {{25, 15}, {26, 16}}, drawing::Pen::thin, drawing::Ink::black, drawing::Role::hatch});
        return true;
    }));
    CHECK(reported("D16", [](Sheet& sheet) {
        return std::erase_if(sheet.items, [](const drawing::Item& item) {
                   const auto* text = std::get_if<drawing::Text>(&item);
                   return text && text->words == "A";
               }) > 0;
    }));
    CHECK(reported("D19", [](Sheet& sheet) {
        return std::erase_if(sheet.items, [](const drawing::Item& item) {
                   const auto* text = std::get_if<drawing::Text>(&item);
                   return text && text->words == "hatches of the sections";
               }) > 0;
    }));
}

TEST_CASE("a leg cut across shows the wood that its mortises leave") {
    // By hand: a leg is 38 square above its taper and never larger.
    const auto sample = studied_sample("side-table.fleck");
    REQUIRE(sample);
    const Set set = drawing::draw({sample->model, sample->findings, sample->cut_list}, {});
    const auto area_of = [](const std::vector<std::vector<drawing::Point2>>& rings) {
        double twice = 0;
        for (const auto& ring : rings)
            for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
                twice += ring[j].x * ring[i].y - ring[j].y * ring[i].x;
        return std::abs(twice) / 2;
    };
    int found = 0;
    for (const drawing::Sheet& sheet : set.sheets)
        for (const auto& area : sheet.sections)
            if (area.part.starts_with("leg") && area.section.find("–") != std::string::npos &&
                area.grain == drawing::CutGrain::end_grain) {
                ++found;
                constexpr double factor = 0.2; // 1:5
                CHECK(area_of(area.rings) <= 38.0 * 38 * factor * factor * 1.001);
                CHECK(area_of(area.rings) > 0.3 * 38.0 * 38 * factor * factor);
            }
    CHECK(found > 0);
}
