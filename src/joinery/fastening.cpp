// The patch in which two parts meet, as a row along its longer way, and even places on it.
//
// The end distance is given up where the row is too short for it; the count is stated, or as many as keep the
// distance between neighbours. Left out: staggered and double rows.

#include "joinery/fastening.hpp"

#include <algorithm>
#include <cmath>

namespace rayfleck::joinery {

Point Row::at(const piece::Part& a, double along_at, double across_at) const {
    Point own;
    own[meeting.axis()] = coordinate(a, meeting.from, meeting.gap);
    own[along] = along_at;
    own[across] = across_at;
    return a.frame.out(own);
}

std::optional<Row> row_of(Bench& bench, const Pair& pair, Prefer prefer) {
    const piece::Part& a = bench.part(pair.a);
    const auto meeting = meeting_for(bench, pair, prefer);
    if (!meeting) return std::nullopt;
    Row row;
    row.meeting = *meeting;
    const int u = (meeting->axis() + 1) % 3, v = (meeting->axis() + 2) % 3;
    const Box& window = meeting->window;
    const bool u_longer = window.high[u] - window.low[u] >= window.high[v] - window.low[v];
    row.along = u_longer ? u : v;
    row.across = u_longer ? v : u;
    row.low = window.low[row.along];
    row.high = window.high[row.along];
    row.middle = (window.low[row.across] + window.high[row.across]) / 2;
    row.width = window.high[row.across] - window.low[row.across];
    row.line = a.frame.turn_out(outward({row.along, true}));
    return row;
}

std::vector<double> places(const Row& row, std::optional<int> count, double every, double end) {
    const double inset = std::min(end, row.length() / 2);
    const double reach = row.length() - 2 * inset;
    int n =
        count.value_or(std::max(reach > 1 ? 2 : 1, static_cast<int>(std::ceil(reach / every - 1e-9)) + 1));
    n = std::clamp(n, 1, 500);
    std::vector<double> found;
    for (int i = 0; i < n; ++i)
        found.push_back(n == 1 ? (row.low + row.high) / 2 : row.low + inset + reach * i / (n - 1));
    return found;
}

} // namespace rayfleck::joinery
