// Ratios of stiffness, by the woods of our list that the table has.
//
// Red and white oak of the table are groups; they stand here for northern red oak and white oak. Redwood is
// one row.

#include "wood/elastic.hpp"

namespace rayfleck::wood {
namespace {

constexpr auto S = Confirmation::read_secondary, M = Confirmation::from_memory;

struct Ratios {
    std::string_view id;
    double tangential, radial;
    Confirmation confirmation;
};

constexpr Ratios table[] = {
    {"ash_white", 0.080, 0.125, M},          {"basswood_american", 0.027, 0.066, M},
    {"birch_yellow", 0.050, 0.078, M},       {"cherry_black", 0.086, 0.197, M},
    {"mahogany_african", 0.050, 0.111, M},   {"mahogany_true", 0.064, 0.107, M},
    {"maple_sugar", 0.065, 0.132, S},        {"maple_red", 0.067, 0.140, M},
    {"oak_northern_red", 0.082, 0.154, S},   {"oak_white", 0.072, 0.163, S},
    {"sweetgum", 0.050, 0.115, M},           {"walnut_black", 0.056, 0.106, M},
    {"yellow_poplar", 0.043, 0.092, M},      {"baldcypress", 0.039, 0.084, M},
    {"cedar_western_red", 0.055, 0.081, M},  {"douglas_fir_coast", 0.050, 0.068, S},
    {"hemlock_western", 0.031, 0.058, M},    {"pine_loblolly", 0.078, 0.113, S},
    {"pine_longleaf", 0.055, 0.102, M},      {"pine_ponderosa", 0.083, 0.122, S},
    {"pine_sugar", 0.087, 0.131, M},         {"pine_western_white", 0.038, 0.078, M},
    {"redwood_old_growth", 0.089, 0.087, M}, {"redwood_young_growth", 0.089, 0.087, M},
    {"spruce_sitka", 0.043, 0.078, M},       {"spruce_engelmann", 0.059, 0.128, M},
};

} // namespace

std::optional<AcrossStiffness> across_stiffness(const Species& species) {
    for (const Ratios& row : table) {
        if (row.id != species.id) continue;
        const auto figure = [&](double value) {
            return Figure{value, "", "Wood Handbook, Table 5-1", row.confirmation};
        };
        return AcrossStiffness{figure(row.tangential), figure(row.radial)};
    }
    return std::nullopt;
}

} // namespace rayfleck::wood
