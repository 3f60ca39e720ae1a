#pragma once
// Text to syntax tree.

#include <string>

#include "findings/finding.hpp"
#include "source/text.hpp"
#include "syntax/tree.hpp"

namespace rayfleck::syntax {

/// Limits of the language; beyond each stands a clear error, never a crash.
struct Limits {
    std::size_t bytes = 4u << 20;  ///< of one file
    int block_depth = 8;           ///< nested blocks
    int parentheses = 64;          ///< nested in one expression
    int digits = 15;               ///< of one number
    int errors = 50;               ///< shown per file; the rest is counted
    std::size_t line_bytes = 4096; ///< of one logical line
    std::size_t phrases = 200000;  ///< of one file: what stands between commas and line ends
};
constexpr Limits limits{};

/// Reads text number `file`. Never fails: what cannot be read becomes Broken nodes, each with one finding
/// (Severity::error).
Tree parse(const source::Texts& texts, int file, findings::Findings& findings);

/// The tree as indented text, one node a line, stable: the expected output of the tests of this room.
std::string print(const Tree& tree);

} // namespace rayfleck::syntax
