#pragma once
// A text carried from bytes to findings, as the command `check` does it, without a command line.
//
// The texts that a piece names (its shop file, what it brings in) are read from the folder of its file. Every
// size of its table is studied. Errors of the text stop the way, as they do for the maker.

#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "findings/finding.hpp"
#include "joinery/model.hpp"
#include "piece/elaborate.hpp"
#include "source/text.hpp"

namespace rayfleck::checks_tests {

/// One size of one piece. Stays where it is: the model points into the piece.
struct Studied {
    std::string size; ///< of the table of sizes, else empty
    piece::Piece piece;
    joinery::Model model;
    findings::Findings findings;
};

struct Study {
    source::Texts texts;
    piece::Project project;
    std::vector<std::unique_ptr<Studied>> sizes;
};

/// folder  where the files lie that the text names; nothing when it may name none
std::unique_ptr<Study> study(const std::string& name, std::string bytes,
                             const std::optional<std::string>& folder);

/// Bytes of a file. fails  fails the running test when it cannot be read
std::string bytes_of(const std::string& path);
/// Paths of all *.fleck files of a folder, sorted.
std::vector<std::string> pieces_in(const std::string& folder);
/// The lines of a text, without line ends.
std::vector<std::string> lines_of(const std::string& bytes);

/// What counts against a piece: caution and above, and not accepted.
std::vector<findings::Finding> counting(const findings::Findings& all);

} // namespace rayfleck::checks_tests
