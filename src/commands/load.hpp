#pragma once
// Reading: the text of a piece, the files that it brings in, its shop file. The only place that opens a text.
//
// A piece may name files in the folder of its main file and below, and nowhere else: a design that someone
// sends must not read the rest of the disk. Paths are always read from that folder, also those written in a
// file that was brought in. An absolute path, a step up (`..`) or a symbolic link that leads out is an error
// at the place where it is written; so is a file that brings in itself by any detour. Each file is read once,
// however often it is named.
// The recipes that are shipped with the program follow after the piece's own texts.

#include <optional>
#include <string>

#include "findings/finding.hpp"
#include "piece/elaborate.hpp"
#include "source/text.hpp"

namespace rayfleck::commands {

/// More files than any piece needs, few enough to read in no time.
constexpr int files_at_most = 200;

struct Loaded {
    source::Texts texts;
    piece::Project project;
    findings::Findings findings;           ///< errors of the texts and of what they bring in
    std::optional<std::string> unreadable; ///< why the main file could not be read; then the rest is empty
};

/// path  of the main file; `-` reads standard input, whose folder is the current one
Loaded load(const std::string& path);

/// What a file is for, by the statements in it.
enum class Holds {
    piece,   ///< has a title
    shop,    ///< is a shop file
    recipes, ///< recipes to bring in, and no parts of its own
    unclear, ///< neither; read as a piece, which will say what is missing
};
Holds holds(const syntax::Tree& tree);

} // namespace rayfleck::commands
