#pragma once
// The table of cuts under the views of a part: one row for each feature, with its letter, its sizes and its
// place.

#include <string>
#include <vector>

#include "drawing/part_features.hpp"

namespace rayfleck::drawing {

/// What the strings in the views of a part tell already: places joined by dimensions, along its three
/// directions.
class ToldByStrings {
  public:
    /// strings  records of the part's views, in its own frame
    ToldByStrings(const GaugeFrame& gauge, const std::vector<DimensionRecord>& strings);
    /// The distance between the two places follows from the strings.
    bool told(int axis, double a, double b) const;

  private:
    std::size_t place(std::size_t axis, double at);
    std::array<std::vector<double>, 3> at_;
    std::array<std::vector<std::size_t>, 3> root_;
};

/// Settles what is printed of each figure that stands in a column: words for what spans the blank or stands
/// at its ends, parentheses for what the strings tell.
void settle_figures(const Job& job, const GaugeFrame& gauge, const ToldByStrings& told,
                    std::vector<Feature>& features);

/// The table, its upper left corner at (0, 0), with its records; nothing for a part without cuts.
/// features  settled; the blank is left out
Block table_of_cuts(const Job& job, const std::vector<Feature>& features, int part, double width);

/// Joints of the part, by kind, with the letters of their cuts.
std::vector<std::string> joint_lines(const Job& job, const std::vector<Feature>& features, int part);

} // namespace rayfleck::drawing
