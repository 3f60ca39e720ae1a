#pragma once
// The plan of one tenon: all its sizes, before anything is cut.

#include <optional>
#include <string>
#include <vector>

#include "joinery/bench.hpp"
#include "joinery/tongue.hpp"

namespace rayfleck::joinery {

struct TenonPlan {
    Pair pair;
    Meeting meeting;
    int thickness_axis = 2, width_axis = 1; ///< of A's frame
    std::vector<Box> sections; ///< one, or two for twin tenons; A's frame, within the meeting's window
    Length thickness, width, projects;
    std::string thickness_from, width_from, length_from;
    bool length_stated = false, through = false, loose = false;
    bool turned_blank = false;      ///< A is turned all over: the tenon is a continuation of its profile
    std::optional<Length> diameter; ///< round tenon
    double end_radius = 0;          ///< of A's end about its middle, where the tenon is round
    struct Haunch {
        Box section;
        Length width, length;
        std::string width_from, length_from;
    };
    std::optional<Haunch> haunch;
    /// Waste at the tenon's end where it meets another in B: a prism in B's frame, drawn from low to high.
    struct MitredEnd {
        Frame frame;
        solid::Outline waste;
        double low = 0, high = 0;
        std::string meets; ///< the part whose tenon it meets
    };
    std::vector<MitredEnd> mitred_ends;
};

/// gives  nothing when no tenon can be made there; the bench has been told why
std::optional<TenonPlan> plan_tenon(Bench& bench, const Pair& pair);

} // namespace rayfleck::joinery
