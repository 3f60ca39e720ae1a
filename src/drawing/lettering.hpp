#pragma once
// Words set to fit: wrapped into lines, or cut where a field of the title block is too small.

#include <string>
#include <vector>

#include "drawing/block.hpp"

namespace rayfleck::drawing {

/// Heights of capitals in mm. 2.5 mm is the least that stays readable on paper.
constexpr double note_height = 2.5;
constexpr double heading_height = 3.5;
/// Base line to base line of wrapped notes, for capitals and small letters mixed.
constexpr double note_step = 4.2;

/// Lines no wider than `width`; breaks at spaces, inside a word only when the word alone is too wide.
std::vector<std::string> wrapped(const std::string& words, double width, double cap_height, Typeface face);

/// The words, or their beginning with an ellipsis.
std::string cut_to(const std::string& words, double width, double cap_height, Typeface face);

/// Largest of the heights at which the words fit; if none does, the last one with the words cut.
Text fitted(const std::string& words, double width, const std::vector<double>& heights, Typeface face);

/// Sets wrapped lines below `top`, left-aligned; gives the lower end of what was set (top when there are no
/// words).
double set_lines(Block& block, const std::vector<std::string>& lines, double left, double top,
                 double cap_height = note_height, Typeface face = Typeface::sans, Ink ink = Ink::black);

} // namespace rayfleck::drawing
