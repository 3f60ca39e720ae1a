// The model as JSON: what a reader relies on, and that docs/json.md describes every key.

#include <catch2/catch.hpp>

#include <fstream>
#include <iterator>
#include <limits>
#include <set>

#include <nlohmann/json.hpp>

#include "writers/json.hpp"

using namespace rayfleck;
using measure::Length;
using nlohmann::json;

namespace {

/// One board with a cut of every kind, a joint and a contact with itself, a finding: not sound, but complete.
struct Everything {
    source::Texts texts;
    piece::Piece piece;
    joinery::Model model;
    findings::Findings found;
    cutlist::CutList list;

    Everything() {
        texts.add(source::Text("board.fleck", "piece \"Board\"\n  part board\n"));
        piece.title = "Board";
        piece.rods = {{syntax::Direction::up, {{"floor", Length::mm(0), {}}}}};
        piece.parts.resize(1);
        piece::Part& part = piece.parts[0];
        part.name = part.base = "board";
        part.species = wood::find("black cherry");
        part.thickness = Length::mm(20);
        part.width = Length::mm(100);
        part.length = Length::mm(measure::Rational(1201, 3));
        part.bark = piece::LocalSide{2, true};
        part.outline = solid::Outline{{0, 0}, {{{10, 0}, {}, true}, {{0, 0}, solid::Point2{5, 0}, true}}, {}};
        part.glue_up = piece::GlueUp{Length::mm(60), 2, true, false};
        part.notes = {{"oil it", {}}};
        part.span = {0, 16, 26};
        joinery::Made made;
        made.part = &part;
        made.thickness = part.thickness;
        made.width = part.width;
        made.length = part.length;
        const auto cut = [&](const char* word, auto shape) {
            piece::Cut one;
            one.word = word;
            one.shape = shape;
            made.cuts.push_back(one);
        };
        cut("taper",
            piece::PlaneCut{{{0, 0.6, 0.8}, -0.0}, measure::Angle::degrees(10), measure::Angle::degrees(5)});
        cut("chamfer", piece::EdgeCut{{1, true}, {2, true}, "chamfer", 3, 3});
        cut("bore", piece::BoreCut{{2, true}, {50, 50, 20}, 8, {}, solid::Vector{0, 0, -1}});
        cut("groove", piece::BoxCut{{{0, 0, 0.1 + 0.2}, {400, 6, 8}}});
        cut("socket", piece::PrismCut{{}, *part.outline, 0, 20});
        cut("turning", piece::TurnedCut{{{0, 10, false}, {400, 12, true}}});
        model.piece = &piece;
        model.made = {made};
        joinery::Joint joint;
        joint.kind = "dowels";
        joint.sizes = {{"dowel diameter", 8, "mm", "stated"}};
        model.joints = {joint};
        joinery::Contact contact;
        contact.room = std::numeric_limits<double>::infinity();
        contact.may_slide = {{0, 1, 0}};
        contact.held_at = {{1, 2, 3}};
        model.contacts = {contact};
        cutlist::Row row;
        row.reference = 1;
        row.parts = row.mirrored = {0};
        list.rows = {row};
        list.totals.resize(1);
        list.hardware = {{"screw", 2, {0}, "stated"}};
        findings::Finding finding;
        finding.name = "short-grain";
        finding.severity = findings::Severity::caution;
        finding.span = {0, 21, 26};
        finding.labels = {{{0, 0, 5}, "grain is set here"}};
        finding.parts = {"board"};
        finding.at = measure::Point{1, 2, 3};
        finding.accepted_because = "it carries nothing";
        found.add(finding);
    }
    std::string written() const {
        const lumber::Plan plan = lumber::plan(model, list);
        return writers::write_json(model, found, list, texts, nullptr, &plan);
    }
};

void keys_of(const json& value, std::set<std::string>& keys) {
    if (value.is_object())
        for (const auto& [key, inner] : value.items()) keys.insert(key);
    if (value.is_structured())
        for (const json& inner : value) keys_of(inner, keys);
}

} // namespace

TEST_CASE("the JSON of a piece says its schema, names and millimetres") {
    const json written = json::parse(Everything().written());
    CHECK(written.at("schema") == 1);
    CHECK(written.at("title") == "Board");
    const json& part = written.at("parts").at(0);
    CHECK(part.at("wood").at("name") == "black cherry");
    CHECK(part.at("body").at("length_mm") == 400.3333);
    CHECK(part.at("cuts").size() == 6);
    CHECK(written.at("contacts").at(0).at("room_mm").is_null());
    CHECK(written.at("joints").at(0).at("a") == "board");
    CHECK(written.at("counts").at("accepted") == 1);
    CHECK(written.at("counts").at("cautions") == 0);
    const json& place = written.at("findings").at(0).at("place");
    CHECK(place ==
          json{{"file", "board.fleck"}, {"line", 2}, {"column", 8}, {"end_line", 2}, {"end_column", 13}});
}

TEST_CASE("numbers are rounded, and nothing is ever minus zero") {
    const std::string written = Everything().written();
    CHECK(written.find("0.30000") == std::string::npos); // 0.1 + 0.2
    CHECK(written.find("0.3\n") != std::string::npos);
    CHECK(written.find("-0.0") == std::string::npos);
    CHECK(written.back() == '\n');
}

TEST_CASE("bytes that are no UTF-8 are replaced, not thrown at") {
    Everything all;
    all.piece.title = "Board \xff";
    CHECK(json::parse(all.written()).at("title") == "Board \xEF\xBF\xBD");
}

TEST_CASE("docs/json.md names every key that is written") {
    std::ifstream file(std::string(RAYFLECK_ROOT) + "/docs/json.md");
    const std::string page{std::istreambuf_iterator<char>(file), {}};
    const Everything all;
    std::set<std::string> keys;
    keys_of(json::parse(all.written()), keys);
    const writers::Checked checked{"board.fleck", "Board", {}, {}, &all.found, &all.texts};
    keys_of(json::parse(writers::write_findings_json({checked})), keys);
    CHECK(keys.size() > 60);
    for (const std::string& key : keys) {
        INFO(key);
        CHECK(page.find("`" + key + "`") != std::string::npos);
    }
}
