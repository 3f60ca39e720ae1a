// Sources: ISO 5455 list as quoted in public teaching notes; inch scales as printed on architects' scale
// rules, from public pages on scale rules (each is so many inches to 1'-0").

#include "drawing/scale.hpp"

namespace rayfleck::drawing {
namespace {

std::vector<Scale> metric() {
    std::vector<Scale> list;
    for (const int n : {10, 5, 2})
        list.push_back({static_cast<double>(n), std::to_string(n) + ":1", std::to_string(n) + ":1"});
    for (const int n : {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000})
        list.push_back({1.0 / n, "1:" + std::to_string(n), "1:" + std::to_string(n)});
    return list;
}

std::vector<Scale> inch() {
    std::vector<Scale> list{{2, "2:1", "2:1"}, {1, "full size (1:1)", "1:1"}};
    const std::pair<const char*, int> per_foot[] = {{"6", 2},     {"3", 4},    {"1-1/2", 8}, {"1", 12},
                                                    {"3/4", 16},  {"1/2", 24}, {"3/8", 32},  {"1/4", 48},
                                                    {"3/16", 64}, {"1/8", 96}, {"3/32", 128}};
    for (const auto& [inches, n] : per_foot) {
        const std::string ratio = "1:" + std::to_string(n);
        list.push_back({1.0 / n, std::string(inches) + "\" = 1'-0\" (" + ratio + ")", ratio});
    }
    for (const int n : {200, 500, 1000})
        list.push_back({1.0 / n, "1:" + std::to_string(n), "1:" + std::to_string(n)});
    return list;
}

} // namespace

const std::vector<Scale>& scales(measure::Unit unit) {
    static const std::vector<Scale> millimetres = metric(), inches = inch();
    return unit == measure::Unit::in || unit == measure::Unit::ft ? inches : millimetres;
}

} // namespace rayfleck::drawing
