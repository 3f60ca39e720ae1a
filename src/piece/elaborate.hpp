#pragma once
// Syntax trees to a piece.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "piece/piece.hpp"

namespace rayfleck::piece {

/// All texts of one piece, read: the main file, what it brings in, its shop file, the shipped recipes.
struct Project {
    std::vector<syntax::Tree> trees; ///< by file number of the Texts; [main] is the piece
    int main = 0;
    std::map<std::string, int> brought; ///< path as written in `bring in` or `shop` → file number
    std::vector<int> recipes;           ///< files of shipped recipes, looked up last
};

struct Limits {
    int parts = 2000;      ///< copies in all
    int per_joint = 200;   ///< tails, dowels, screws ... counted by an option
    int closest = 5;       ///< mm between fastenings in a row
    int copies = 500;      ///< of one row
    int value_depth = 100; ///< values that refer to values
    int made_depth = 8;    ///< recipes within recipes
    int lines = 500;       ///< of one rod
};
constexpr Limits limits{};

/// Names of the sizes in the table, in its order; empty where there is none.
std::vector<std::string> size_names(const Project& project);

/// Looks up everything and places every part. Whatever is wrong becomes a finding (Severity::error) and is
/// left out of the piece; what only follows from it stays quiet. A piece is fit for the next room when
/// findings has no error.
///
/// size   a name of the table of sizes; nothing takes its first row
Piece elaborate(const Project& project, const std::optional<std::string>& size, findings::Findings& findings);

/// The woods that a shop file tells with figures of its own; what is wrong with them becomes a finding.
/// file  number of the shop file's tree in the project
std::vector<std::shared_ptr<const wood::OwnWood>> own_woods(const Project& project, int file,
                                                            findings::Findings& findings);

/// One line per rod, part, joint ..., stable: the expected output of the tests of this room.
std::string print(const Piece& piece);

} // namespace rayfleck::piece
