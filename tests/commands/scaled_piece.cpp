// The made-up pieces that the benchmark grows: they must compile and be as large as asked for, or growth is
// measured on something else.

#include <algorithm>

#include <catch2/catch.hpp>

#include "commands/scaled_piece.hpp"
#include "joinery/model.hpp"
#include "piece/elaborate.hpp"
#include "piece/recipes.hpp"
#include "syntax/parse.hpp"

using namespace rayfleck;

TEST_CASE("a made-up bank of drawers compiles and has the parts asked for, all of them joined") {
    for (const int parts : {40, 41, 75, 120, 250, 400}) {
        source::Texts texts;
        piece::Project project;
        findings::Findings found;
        const auto read = [&](const std::string& name, const std::string& bytes) {
            const int number = texts.add(source::Text(name, bytes));
            project.trees.push_back(syntax::parse(texts, number, found));
            return number;
        };
        read("bank.fleck", commands::bank_of_drawers(parts));
        for (const auto& [name, bytes] : piece::shipped_recipes())
            project.recipes.push_back(read("shipped/" + name, bytes));
        const piece::Piece piece = piece::elaborate(project, std::nullopt, found);
        INFO(parts);
        REQUIRE_FALSE(found.any(findings::Severity::error));
        const joinery::Model model = joinery::build(piece, found);
        CHECK_FALSE(found.any(findings::Severity::error));
        CHECK(static_cast<int>(model.made.size()) == parts);
        for (std::size_t i = 0; i < model.made.size(); ++i) {
            const bool joined = std::any_of(model.joints.begin(), model.joints.end(), [&](const auto& joint) {
                return joint.a == static_cast<int>(i) || joint.b == static_cast<int>(i);
            });
            INFO(model.made[i].part->name);
            CHECK(joined);
            CHECK(model.made[i].solid.watertight());
        }
    }
    CHECK(commands::bank_of_drawers(120) == commands::bank_of_drawers(120));
}
