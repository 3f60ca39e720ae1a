#pragma once
// The phrases of a part: which word begins which, and how their pieces become the tree.

#include <string>
#include <vector>

#include "syntax/layout.hpp"
#include "syntax/reading.hpp"
#include "syntax/tree.hpp"

namespace rayfleck::syntax {

/// Whether a phrase of a part begins with this word.
bool begins_phrase(std::string_view word);

/// Whether a stretch is meant as a phrase of a part: its first word begins one, also misspelt, or it is a
/// size and which size it is.
bool looks_like_phrase(const Reading& reading, Stretch stretch);

/// One stretch of a line, usually one phrase. `block`: the deeper lines below it, if it may take them.
/// What cannot be read is reported and becomes a Broken phrase.
void read_phrases(const Reading& reading, Stretch stretch, const std::vector<Line>* block,
                  std::vector<Phrase>& out);

/// Statements that stand below a part by a slip of the margin: reported, and read all the same.
struct Strays {
    bool in_recipe = false;
    std::vector<Statement> statements = {};
};

/// The block of a part, or of lines below a line that takes none.
void read_phrase_lines(const Reading& reading, const std::vector<Line>& lines, std::vector<Phrase>& out,
                       Strays& strays);

/// Copies in the header of a part or of `make`; false when the stretch begins no copies.
bool begins_copies(const Reading& reading, Stretch stretch);
std::optional<Copies> read_copies(const Reading& reading, Stretch stretch);

/// How the phrase that begins with this word is written, for remedies; empty when there is none.
std::string_view form_of_phrase(std::string_view word);

} // namespace rayfleck::syntax
