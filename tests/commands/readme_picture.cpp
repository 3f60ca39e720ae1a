// The picture in the README is the first sheet of the side table, as the program draws it now.
//
// RAYFLECK_REWRITE=1 draws it anew; look at it before it is committed.

#include <catch2/catch.hpp>

#include <cstdlib>
#include <fstream>
#include <iterator>

#include "commands/load.hpp"
#include "commands/study.hpp"
#include "drawing/draw.hpp"
#include "writers/svg.hpp"

using namespace rayfleck;

TEST_CASE("the picture in the README is what the program draws") {
    const std::string root = RAYFLECK_ROOT;
    findings::Findings findings;
    const auto studied = [&] {
        const commands::Loaded loaded = commands::load(root + "/samples/side-table.fleck");
        return commands::study(loaded, std::nullopt);
    }();
    REQUIRE(studied->compiles);
    const drawing::Set set =
        drawing::draw({studied->model, studied->findings, cutlist::list(studied->model)}, {});
    const std::string drawn = writers::write_svg(set.sheets.front());
    const std::string path = root + "/docs/side-table.svg";
    if (std::getenv("RAYFLECK_REWRITE") != nullptr) std::ofstream(path, std::ios::binary) << drawn;
    std::ifstream file(path, std::ios::binary);
    const std::string kept{std::istreambuf_iterator<char>(file), {}};
    CHECK(kept == drawn);
}
