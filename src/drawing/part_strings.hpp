#pragma once
// Strings of dimensions for the views of a part.

#include <functional>
#include <string>
#include <vector>

#include "drawing/dimension.hpp"
#include "drawing/sheets.hpp"

namespace rayfleck::drawing {

/// Half of the finest step that the maker's figures tell: what is nearer would print as 0.
double finest_step(const Job& job);

/// Carries a place of the part to the paper.
using OnPaper = std::function<double(double)>;

/// A string from `low` over the places to `high`: equal links in a row become one, n×, and the longest single
/// link stays open, since the overall closes it. Empty when so many links are too short for their figures
/// that nobody would find his way: then the table of cuts tells the places. wood   where the wood ends under
/// the extension lines, on paper
MeasureString chain(const Job& job, const std::vector<double>& places, double low, double high, double wood,
                    const std::string& part, char axis, const OnPaper& paper);
MeasureString overall(const Job& job, double low, double high, double wood, const std::string& part,
                      char axis, const OnPaper& paper);

} // namespace rayfleck::drawing
