// The cases of every check: src/checks/<check>.fleck, small pieces in which the check must speak or keep
// silent.
//
//     # --- batten-across-a-wide-door
//     # See: the batten is glued over 300 mm of boards that move, and says so
//     piece "Door"
//     ...
//     join batten to board with glue
//     #< fault cross-grain-glue: are glued over 300 mm
//     part board
//       size 20 thick, runs across
//       #              ^^^^ caution short-grain
//
// A mark stands under the line that the finding points to; its first caret stands under the finding's column,
// and `#<` means the first column. A piece has exactly the findings that are marked, counting cautions and
// above that are not accepted; notes are looked for only where one is marked. A case without marks must be
// silent. A shop file that cases name lies beside them. RAYFLECK_CASE in the environment runs the cases of
// that name alone.

#include <algorithm>
#include <cstdlib>
#include <regex>

#include <catch2/catch.hpp>

#include "case_files.hpp"
#include "checks/checks.hpp"
#include "findings/show.hpp"
#include "studied.hpp"

using namespace rayfleck;
using namespace rayfleck::checks_tests;

namespace {

bool fits(const Expected& expected, const findings::Finding& finding, const source::Texts& texts) {
    const source::Place place = texts[finding.span.file].place(finding.span.begin);
    return findings::name(finding.severity) == expected.severity && finding.name == expected.name &&
           place.line == expected.line && place.column == expected.column &&
           (finding.message + "; " + finding.mend).find(expected.message) != std::string::npos;
}

void try_case(const std::string& check, Case one) {
    INFO(case_file_of(check) << ", line " << one.first_line << ": " << one.name);
    CHECK_FALSE(one.see.empty());
    const auto study = checks_tests::study(one.name, one.text, std::string(RAYFLECK_ROOT) + "/src/checks");
    REQUIRE(study->sizes.size() == 1);
    const findings::Findings& all = study->sizes.front()->findings;
    INFO(findings::show(all, study->texts, {}));
    for (const findings::Finding& finding : all) {
        const auto met = std::find_if(one.expected.begin(), one.expected.end(), [&](const Expected& e) {
            return !e.met && fits(e, finding, study->texts);
        });
        if (met != one.expected.end()) {
            met->met = true;
            continue;
        }
        INFO("not expected: " << findings::name(finding.severity) << ' ' << finding.name);
        CHECK((finding.severity < findings::Severity::caution || finding.accepted_because));
    }
    for (const Expected& e : one.expected) {
        INFO("expected and not found: line " << e.line << ", column " << e.column << ": " << e.severity << ' '
                                             << e.name << ": " << e.message);
        CHECK(e.met);
    }
}

} // namespace

TEST_CASE("every check speaks, points and keeps silent as its cases say") {
    const char* only = std::getenv("RAYFLECK_CASE");
    for (const checks::Check& check : checks::all()) {
        const std::string name(check.name);
        DYNAMIC_SECTION(name) {
            for (const Case& one : cases_in(case_file_of(name)))
                if (only == nullptr || one.name == only) try_case(name, one);
        }
    }
}

TEST_CASE("every check has two cases in which it speaks and two in which all is silent") {
    for (const checks::Check& check : checks::all()) {
        int speaking = 0, silent = 0;
        for (const Case& one : cases_in(case_file_of(std::string(check.name)))) {
            silent += one.expected.empty();
            speaking += std::any_of(one.expected.begin(), one.expected.end(),
                                    [&](const Expected& e) { return e.name == check.name; });
        }
        INFO(check.name);
        CHECK(speaking >= 2);
        CHECK(silent >= 2);
    }
}

TEST_CASE("cases of one check have names of their own") {
    for (const checks::Check& check : checks::all()) {
        std::vector<std::string> names;
        for (const Case& one : cases_in(case_file_of(std::string(check.name)))) names.push_back(one.name);
        std::sort(names.begin(), names.end());
        INFO(check.name);
        CHECK(std::adjacent_find(names.begin(), names.end()) == names.end());
    }
}
