// See: a finding that the maker accepts stays on the page with its reason and no longer counts; an acceptance
// that matches nothing is told itself.

#include <catch2/catch.hpp>

#include "studied.hpp"

using namespace rayfleck;
using namespace rayfleck::checks_tests;

namespace {

/// A top of one board 600 wide: stock-too-small has something to say.
std::unique_ptr<Study> with(const std::string& acceptance) {
    return study(
        "t.fleck",
        "piece \"t\"\nunits mm\nclimate 6% to 10% moisture\nrod across left 0, right 800\nrod deep front 0, "
        "back 600\nrod up low 0, top 20\npart board\n  wood cherry, quarter sawn\n  runs across, face side "
        "top\n  from left to right, from front to back, from low to top\n" +
            acceptance,
        std::nullopt);
}

const findings::Finding* named(const Study& made, const std::string& name) {
    for (const findings::Finding& finding : made.sizes.front()->findings)
        if (finding.name == name) return &finding;
    return nullptr;
}

} // namespace

TEST_CASE("an accepted finding stays listed with its reason and does not count") {
    const auto plain = with("");
    REQUIRE(counting(plain->sizes.front()->findings).size() == 1);
    for (const std::string on : {"", " on board"}) {
        const auto made = with("accept stock-too-small" + on + " because \"it is there\"\n");
        CHECK(counting(made->sizes.front()->findings).empty());
        const findings::Finding* finding = named(*made, "stock-too-small");
        REQUIRE(finding != nullptr);
        CHECK(finding->accepted_because == "it is there");
        CHECK(finding->severity == findings::Severity::caution);
        CHECK(named(*made, "needless-acceptance") == nullptr);
    }
}

TEST_CASE("an acceptance that matches nothing is told") {
    const auto other = with("accept cupping because \"it is flat\"\n");
    const findings::Finding* needless = named(*other, "needless-acceptance");
    REQUIRE(needless != nullptr);
    CHECK(needless->message.find("nothing to accept: cupping") == 0);
    CHECK(counting(other->sizes.front()->findings).size() == 1);
    const auto misspelt = with("accept stock-to-small because \"it is there\"\n");
    needless = named(*misspelt, "needless-acceptance");
    REQUIRE(needless != nullptr);
    CHECK(needless->mend == "did you mean stock-too-small?");
}

TEST_CASE("an acceptance without a reason does not compile") {
    CHECK(with("accept stock-too-small\n")->sizes.front()->findings.any(findings::Severity::error));
    CHECK(with("accept stock-too-small because \"\"\n")
              ->sizes.front()
              ->findings.any(findings::Severity::error));
}
