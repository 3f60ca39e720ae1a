#pragma once
// Pieces for the tests of this room: from a text, or from a file of samples/.

#include <memory>
#include <string>
#include <vector>

#include "assembly/assembly.hpp"
#include "findings/finding.hpp"
#include "joinery/model.hpp"
#include "piece/elaborate.hpp"
#include "reading.hpp"
#include "source/text.hpp"

namespace rayfleck::assembly_tests {

/// Stays where it is: the model points into the piece.
struct Studied {
    source::Texts texts;
    piece::Project project;
    piece::Piece piece;
    joinery::Model model;
    findings::Findings findings;
    assembly::Order order;

    /// Index of a part by its name; fails the running test when there is none.
    int part(const std::string& name) const;
    /// Place of the first move of the part by itself or with others that ends on `onto` or below it; -1 if
    /// none.
    int move_that_brings(const std::vector<std::string>& parts) const;
    std::string printed() const { return assembly::print(order, model); }
};

/// A piece of a text of its own. fails  fails the running test when it does not compile
std::unique_ptr<Studied> studied(const std::string& text);
/// One size of a sample, the first where it has a table of sizes; one entry for each size when `all_sizes`.
std::vector<std::unique_ptr<Studied>> studied_sample(const std::string& file);

} // namespace rayfleck::assembly_tests
