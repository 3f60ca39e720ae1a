// Findings in what a shipped recipe makes point to the maker's own statement `make`.

#include <algorithm>

#include <catch2/catch.hpp>

#include "findings/show.hpp"
#include "studied.hpp"

using namespace rayfleck;
using namespace rayfleck::checks_tests;

namespace {

/// A box whose bottom lies 2 mm above its lower edge, so that the groove has a lip of 2 mm: line 7 makes it.
const std::string low_bottom = R"(piece "Box"
units mm
climate 6% to 10% moisture
rod across left 0, right 700
rod deep front 0, back 300
rod up floor 0, top 900
make box from dovetailed box
  width 300
  depth 200
  height 120
  bottom-up 2
  left at left
  front at front
  bottom at floor
)";

} // namespace

TEST_CASE("a fault in a shipped recipe points to the line that makes it and shows the recipe beside it") {
    const auto study = checks_tests::study("box.fleck", low_bottom, std::nullopt);
    const findings::Findings& all = study->sizes.front()->findings;
    INFO(findings::show(all, study->texts, {}));
    const std::vector<findings::Finding> found = counting(all);
    REQUIRE_FALSE(found.empty());
    for (const findings::Finding& finding : found) {
        CHECK(finding.span.file == study->project.main);
        CHECK(study->texts[finding.span.file].place(finding.span.begin).line == 7);
        REQUIRE_FALSE(finding.labels.empty());
        CHECK(study->texts[finding.labels.front().span.file].name().starts_with("shipped/"));
    }
}

TEST_CASE("what the shipped recipes make as they are left out is sound") {
    for (const std::string made : {"box from dovetailed box\n  width 300\n  depth 200\n  height 120",
                                   "base from leg-and-apron base\n  width 600\n  depth 400\n  height 700",
                                   "door from frame-and-panel door\n  width 400\n  height 600"}) {
        const std::string text =
            "piece \"Made\"\nunits mm\nclimate 6% to 10% moisture\nrod across left 0, right 600\n"
            "rod deep front 0, back 400\nrod up floor 0, top 700\nmake " +
            made + "\n  left at left\n  front at front\n  bottom at floor\n";
        const auto study = checks_tests::study("made.fleck", text, std::nullopt);
        INFO(made << "\n" << findings::show(study->sizes.front()->findings, study->texts, {}));
        CHECK(counting(study->sizes.front()->findings).empty());
    }
}
