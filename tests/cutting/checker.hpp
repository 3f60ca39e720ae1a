#pragma once
// Follows a plan as at the saw, cut by cut, and says what is wrong with it. Written from the header
// cutting.hpp alone; shares no line with the room that makes the plans.

#include <string>
#include <vector>

#include "cutting/cutting.hpp"

namespace rayfleck::cutting {

/// What is wrong, in words; empty when every cut can be made and every part is as it was ordered.
std::vector<std::string> faults_of(const Order& order, const Plan& plan);

/// The same in one text, for a test's message.
std::string faults_in_words(const Order& order, const Plan& plan);

/// An order made from a number: parts, boards, kerf, stages, now and then defects, sequences, turning, boards
/// that run out. The same number gives the same order.
Order made_up_order(unsigned number);

} // namespace rayfleck::cutting
