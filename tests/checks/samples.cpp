// The samples compile and are sound work; the pieces in samples/faults have the faults that their heads name,
// and no other.
//
//     # Finds: fault overlapping-parts
//
// The pieces in tests/checks/judged were written, and judged as a maker judges a drawing, before the program
// was asked. Beside the fault that was seen it may find what follows from it.
//
//     # Judged: sound
//     # Judged: fault opening-miter

#include <algorithm>
#include <regex>
#include <set>

#include <catch2/catch.hpp>

#include "checks/checks.hpp"
#include "findings/show.hpp"
#include "studied.hpp"

using namespace rayfleck;
using namespace rayfleck::checks_tests;

namespace {

const std::string samples = std::string(RAYFLECK_ROOT) + "/samples";

std::string file_name(const std::string& path) { return path.substr(path.rfind('/') + 1); }

bool is_shop_file(const std::string& path) { return file_name(path) == "shop.fleck"; }

std::unique_ptr<Study> study_file(const std::string& path) {
    return study(file_name(path), bytes_of(path), path.substr(0, path.rfind('/')));
}

/// `fault overlapping-parts` for each finding that counts.
std::vector<std::string> names_of(const std::vector<findings::Finding>& some) {
    std::vector<std::string> names;
    for (const findings::Finding& finding : some)
        names.push_back(findings::name(finding.severity) + " " + finding.name);
    std::sort(names.begin(), names.end());
    return names;
}

} // namespace

TEST_CASE("every sample compiles and is sound work") {
    for (const std::string& path : pieces_in(samples)) {
        if (is_shop_file(path)) continue;
        DYNAMIC_SECTION(file_name(path)) {
            const auto study = study_file(path);
            for (const auto& size : study->sizes) {
                INFO("size " << size->size << "\n" << findings::show(size->findings, study->texts, {}));
                CHECK(counting(size->findings).empty());
                for (const joinery::Made& made : size->model.made) {
                    INFO(made.part->name);
                    CHECK(made.solid.open_edges == 0);
                    CHECK(made.solid.bodies == 1);
                }
            }
        }
    }
}

TEST_CASE("samples are real furniture of ten to sixty parts and one has forty or more") {
    std::size_t most = 0;
    for (const std::string& path : pieces_in(samples)) {
        if (is_shop_file(path)) continue;
        const auto study = study_file(path);
        INFO(path);
        for (const auto& size : study->sizes) {
            CHECK(size->model.made.size() >= 10);
            CHECK(size->model.made.size() <= 60);
            most = std::max(most, size->model.made.size());
        }
    }
    CHECK(most >= 40);
}

TEST_CASE("every sample opens with what it teaches") {
    for (const std::string& path : pieces_in(samples)) {
        const std::vector<std::string> lines = lines_of(bytes_of(path));
        INFO(path);
        REQUIRE(lines.size() > 3);
        const auto comments = std::find_if(lines.begin(), lines.end(),
                                           [](const std::string& line) { return !line.starts_with("#"); }) -
                              lines.begin();
        CHECK(comments >= 2);
    }
}

TEST_CASE("every piece in samples/faults has the faults that its head names and no other") {
    static const std::regex head("^# Finds: ((?:note|caution|fault) [a-z-]+)$");
    std::set<std::string> checks_found;
    for (const std::string& path : pieces_in(samples + "/faults")) {
        if (is_shop_file(path)) continue;
        std::vector<std::string> expected;
        std::smatch found;
        for (const std::string& line : lines_of(bytes_of(path)))
            if (std::regex_match(line, found, head)) {
                expected.push_back(found[1]);
                checks_found.insert(expected.back().substr(expected.back().find(' ') + 1));
            }
        std::sort(expected.begin(), expected.end());
        DYNAMIC_SECTION(file_name(path)) {
            CHECK_FALSE(expected.empty());
            const auto study = study_file(path);
            for (const auto& size : study->sizes) {
                INFO(findings::show(size->findings, study->texts, {}));
                CHECK(names_of(counting(size->findings)) == expected);
            }
        }
    }
    for (const checks::Check& check : checks::all()) {
        INFO(check.name);
        CHECK(checks_found.contains(std::string(check.name)));
    }
}

TEST_CASE("pieces judged beforehand are found sound or wanting as they were judged") {
    static const std::regex head("^# Judged: (?:sound|((?:caution|fault) [a-z-]+))$");
    const std::vector<std::string> pieces = pieces_in(std::string(RAYFLECK_ROOT) + "/tests/checks/judged");
    CHECK(pieces.size() >= 10);
    for (const std::string& path : pieces) DYNAMIC_SECTION(file_name(path)) {
            std::smatch judged;
            const std::vector<std::string> lines = lines_of(bytes_of(path));
            REQUIRE(std::regex_match(lines.front(), judged, head));
            const auto study = study_file(path);
            for (const auto& size : study->sizes) {
                INFO(findings::show(size->findings, study->texts, {}));
                const std::vector<std::string> found = names_of(counting(size->findings));
                if (judged[1].matched)
                    CHECK(std::count(found.begin(), found.end(), judged[1].str()) > 0);
                else
                    CHECK(found.empty());
            }
        }
}
