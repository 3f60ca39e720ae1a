#pragma once
// What is painted on the pages of a PDF, as `mutool trace` tells it, in millimetres with y upwards.

#include <cmath>
#include <string>
#include <vector>

namespace rayfleck::testing::painted {

struct Place {
    double x = 0, y = 0;
};
struct Line {
    Place a, b;
    bool level() const { return std::abs(a.y - b.y) < 0.003; }
    bool plumb() const { return std::abs(a.x - b.x) < 0.003; }
    double length() const { return std::hypot(b.x - a.x, b.y - a.y); }
};
struct Path {
    double width = 0, phase = 0; ///< mm; width 0 for a fill
    std::vector<double> dashes;  ///< mm
    std::vector<std::vector<Place>> lines;
};
struct Words {
    std::string says;
    double size = 0; ///< type size, mm
    bool lettering = false, turned = false;
    std::vector<Place> box; ///< base line to cap height
    Place middle() const { return {(box[0].x + box[2].x) / 2, (box[0].y + box[2].y) / 2}; }
};
struct Page {
    double width = 0, height = 0;
    std::vector<Path> strokes, fills;
    std::vector<Words> words;
};

/// Height of capitals as a share of the type size: DejaVu Sans 1493/2048, Routed Gothic 23/32 (read off the
/// letter H of the fonts as their makers ship them).
double cap_share(bool lettering);

/// The pages of a trace, in their order.
std::vector<Page> pages_of(const std::string& trace);

} // namespace rayfleck::testing::painted
