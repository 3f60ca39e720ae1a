#pragma once
// A question about the movement of a board, asked in words: `how much does a 300 mm flat-sawn cherry board
// move from 35 % to 65 %`.
//
// Only what matters is picked out of the words: a width, a wood, how it was sawn, two percentages, a
// temperature. Percentages are humidity of the air, unless the word moisture stands there. Everything else is
// passed over, so any way of asking will do.

#include <string>

#include "commands/status.hpp"
#include "commands/terminal.hpp"
#include "wood/own_wood.hpp"

namespace rayfleck::commands {

/// Whether the words hold a figure, as a question does and a name does not.
bool asks_a_question(const std::string& words);

/// Answers in plain words; says what is missing or not understood.
/// own  woods of a shop file, known besides those of the tables
Status answer(const std::string& words, const wood::OwnWoods& own, Terminal& terminal);

} // namespace rayfleck::commands
