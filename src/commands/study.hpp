#pragma once
// A text carried through the rooms: elaborated, built, looked at. What `compile` and `check` have in common.

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "assembly/assembly.hpp"
#include "commands/load.hpp"
#include "joinery/model.hpp"

namespace rayfleck::commands {

/// One piece, of one size where its text has a table of sizes. Stays where it is: the model points into the
/// piece.
struct Studied {
    std::optional<std::string> size; ///< of the table of sizes
    piece::Piece piece;
    joinery::Model model;
    assembly::Order order; ///< in which it goes together
    findings::Findings findings; ///< of the text and of the checks, in the order of the text
    /// The text has no error, so the model stands and every check has looked at it.
    bool compiles = false;
};

/// How far to go when a text has an error: each room gives all the errors it can see, and the next one is
/// entered only without any.
std::unique_ptr<Studied> study(const Loaded& loaded, const std::optional<std::string>& size);

/// The names of the sizes to study: those asked for, else all in the table; one without a name where there is
/// none.
std::vector<std::optional<std::string>> sizes_of(const Loaded& loaded);

/// Findings of several sizes of one piece as one list. What is found in every size is told once; what is
/// found in some says in which.
findings::Findings merged(const std::vector<const Studied*>& sizes);

} // namespace rayfleck::commands
