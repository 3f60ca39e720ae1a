#pragma once
// The checks: what each is called, what it teaches, and the one list of them all in reading order.

#include <span>
#include <string>
#include <vector>

#include "assembly/assembly.hpp"
#include "findings/finding.hpp"
#include "joinery/model.hpp"

namespace rayfleck::checks {

/// A figure that a check relies on, with where it comes from.
struct SourcedFigure {
    std::string_view what;
    std::string_view value;
    std::string_view source;
};

/// One check: what `explain` prints, and the look itself.
struct Check {
    std::string_view name;     ///< reads well after `accept`; a retired name is never used again
    std::string_view title;    ///< one line
    std::string_view what;     ///< what it sees, and what it does not see
    std::string_view why;      ///< what happens at the bench and after five winters
    std::string_view severity; ///< rule in words
    std::string_view mend;
    std::string_view wrong; ///< example text that gives the finding
    std::string_view right; ///< the same, mended
    std::span<const SourcedFigure> figures;
    /// One of the two: a look at the model, or at the order in which it goes together.
    void (*look)(const joinery::Model& model, findings::Findings& findings) = nullptr;
    void (*look_at_order)(const assembly::Order& order, const joinery::Model& model,
                          findings::Findings& findings) = nullptr;
};

/// All checks in reading order.
std::span<const Check> all();

/// Runs every check, applies the acceptances of the text (an acceptance that matches nothing becomes a
/// finding `needless-acceptance`), sorts.
void look(const joinery::Model& model, const assembly::Order& order, findings::Findings& findings);
/// The same, for a model whose order is asked for nothing else.
void look(const joinery::Model& model, findings::Findings& findings);

} // namespace rayfleck::checks
