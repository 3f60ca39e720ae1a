// The program `rayfleck_cutting_benchmark`: plans for public cutting problems beside their best known values.
//
// Given a folder with a table best_known.csv and the instances it names (formats: `.csp`, one stock length;
// `_items.csv`, `_bins.csv`, `_defects.csv`), it prints for each instance the best known value, ours, our
// bound, and the processor seconds of the first plan and of the whole search; then the sums of each family. A
// bound above a known optimum or a plan better than a proven one is told as a fault and makes the exit
// status 1. Left out: problems of another kind (no guillotine, profit instead of cost, stacks).

#include <algorithm>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "cutting/cutting.hpp"

namespace rayfleck::cutting {
namespace {

using Fields = std::vector<std::string>;

/// One line of a table; commas within quotes do not part.
Fields fields_of(const std::string& line) {
    Fields fields(1);
    bool quoted = false;
    for (const char c : line) {
        if (c == '"')
            quoted = !quoted;
        else if (c == ',' && !quoted)
            fields.emplace_back();
        else if (c != '\r')
            fields.back() += c;
    }
    return fields;
}

/// A table by the names of its columns.
std::vector<std::map<std::string, std::string>> table_of(const std::filesystem::path& file) {
    std::vector<std::map<std::string, std::string>> rows;
    std::ifstream in(file);
    std::string line;
    if (!std::getline(in, line)) return rows;
    const Fields head = fields_of(line);
    while (std::getline(in, line)) {
        const Fields fields = fields_of(line);
        if (fields.size() < head.size()) continue;
        std::map<std::string, std::string> row;
        for (std::size_t i = 0; i < head.size(); ++i) row[head[i]] = fields[i];
        rows.push_back(std::move(row));
    }
    return rows;
}

std::int64_t number(const std::map<std::string, std::string>& row, const char* name, std::int64_t otherwise) {
    const auto found = row.find(name);
    return found == row.end() || found->second.empty() ? otherwise
                                                       : std::strtoll(found->second.c_str(), nullptr, 10);
}

Order rods_of(const std::filesystem::path& file) {
    Order order;
    order.stages.count = 1;
    std::ifstream in(file);
    std::int64_t types = 0;
    Stock stock;
    in >> types >> stock.length;
    stock.width = stock.cost = 1;
    order.stocks.push_back(stock);
    for (Part part; in >> part.length >> part.count;) {
        part.width = 1;
        order.parts.push_back(part);
    }
    return order;
}

Order order_of(const std::filesystem::path& instance, const std::string& problem) {
    Order order;
    const bool rods = problem.rfind("1D", 0) == 0;
    const bool own = instance.string().find("own/shop") != std::string::npos;
    order.kerf_crosscut = order.kerf_rip = own ? 3 : 0;
    if (rods)
        order.stages.count = 1;
    else
        order.stages.count = problem[0] - '0';
    order.stages.first =
        !rods && problem.size() > 2 && (problem[1] == 'N' || problem[1] == 'H') && problem[2] == 'H'
            ? Stages::First::rip
            : Stages::First::crosscut;
    const auto part_of_name = [&](const char* end) { return instance.string() + end; };
    for (const auto& row : table_of(part_of_name("_items.csv"))) {
        Part part;
        part.length = number(row, rods ? "X" : "WIDTH", 0);
        part.width = rods ? 1 : number(row, "HEIGHT", 0);
        part.count = number(row, "COPIES", 1);
        order.parts.push_back(part);
    }
    for (const auto& row : table_of(part_of_name("_bins.csv"))) {
        Stock stock;
        stock.length = number(row, rods ? "X" : "WIDTH", 0);
        stock.width = rods ? 1 : number(row, "HEIGHT", 0);
        stock.cost = number(row, "COST",
                            problem.find("cost=area") != std::string::npos ? stock.length * stock.width : 1);
        if (row.count("COPIES") != 0) stock.available = number(row, "COPIES", 1);
        order.stocks.push_back(stock);
    }
    for (const auto& row : table_of(part_of_name("_defects.csv")))
        order.stocks[static_cast<std::size_t>(number(row, "BIN", 0))].defects.push_back(
            {number(row, "X", 0), number(row, "Y", 0), number(row, "WIDTH", 0), number(row, "HEIGHT", 0), 1});
    return order;
}

double seconds_of(std::clock_t begin) { return static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC; }

struct Family {
    int instances = 0, best = 0, proven = 0, one_above = 0, more_above = 0;
    std::int64_t known = 0, ours = 0, bound = 0;
    double seconds = 0, longest = 0, longest_first = 0;
};

int run(const std::filesystem::path& folder, Effort effort, const std::string& only) {
    if (!std::filesystem::exists(folder / "best_known.csv")) {
        fmt::print("skipped: no best_known.csv in {}\n", folder.string());
        return 0;
    }
    std::map<std::string, Family> families;
    int faults = 0;
    fmt::print("{:50} {:>10} {:>10} {:>10} {:>8} {:>8} {:>8}\n", "instance", "known", "ours", "bound",
               "first ms", "seconds", "work");
    for (const auto& row : table_of(folder / "best_known.csv")) {
        const std::string instance = row.at("instance"), problem = row.at("problem");
        const std::string objective = row.at("objective");
        if (!only.empty() && instance.find(only) == std::string::npos) continue;
        if (objective != "bins" && objective != "cost") continue;
        if (problem.find("NOT guillotine") != std::string::npos) continue;
        const Order order = instance.size() > 4 && instance.substr(instance.size() - 4) == ".csp"
                                ? rods_of(folder / instance)
                                : order_of(folder / instance, problem);
        if (order.parts.empty() || order.stocks.empty()) {
            fmt::print("{:50} skipped: not there\n", instance);
            continue;
        }
        std::clock_t begin = std::clock();
        const Plan first = cut(order, first_plan);
        const double first_seconds = seconds_of(begin);
        begin = std::clock();
        const Plan plan = cut(order, effort);
        const double seconds = seconds_of(begin);
        const std::int64_t known = number(row, "best_known_value", 0);
        const bool optimum = row.at("proven") == "yes";
        std::string remark = plan.cost > known   ? fmt::format("+{}", plan.cost - known)
                             : plan.cost < known ? "better"
                                                 : "";
        if (plan.proven_optimal) remark += " proven";
        if (!plan.missing.empty()) remark += " INCOMPLETE", ++faults;
        if (plan.bound > known && (optimum || plan.cost > plan.bound))
            remark += " BOUND ABOVE KNOWN", ++faults;
        fmt::print("{:50} {:>10} {:>10} {:>10} {:>8.1f} {:>8.2f} {:>8} {} [{}]\n", instance, known, plan.cost,
                   plan.bound, first_seconds * 1000, seconds, plan.work, remark, first.cost);
        std::fflush(stdout);
        Family& family = families[instance.substr(0, instance.rfind('/'))];
        ++family.instances;
        family.best += plan.cost <= known;
        family.proven += plan.proven_optimal;
        family.one_above += plan.cost == known + 1;
        family.more_above += plan.cost > known + 1;
        family.known += known, family.ours += plan.cost, family.bound += plan.bound;
        family.seconds += seconds, family.longest = std::max(family.longest, seconds);
        family.longest_first = std::max(family.longest_first, first_seconds);
    }
    fmt::print("\n{:24} {:>4} {:>5} {:>6} {:>4} {:>5} {:>12} {:>12} {:>12} {:>8} {:>8} {:>8} {:>8}\n",
               "family", "n", "best", "proven", "+1", "more", "known", "ours", "bound", "above %", "seconds",
               "longest", "first ms");
    for (const auto& [name, f] : families)
        fmt::print(
            "{:24} {:>4} {:>5} {:>6} {:>4} {:>5} {:>12} {:>12} {:>12} {:>8.3f} {:>8.2f} {:>8.2f} {:>8.1f}\n",
            name, f.instances, f.best, f.proven, f.one_above, f.more_above, f.known, f.ours, f.bound,
            100.0 * static_cast<double>(f.ours - f.known) /
                static_cast<double>(std::max<std::int64_t>(f.known, 1)),
            f.seconds, f.longest, f.longest_first * 1000);
    if (faults > 0) fmt::print("{} faults\n", faults);
    return faults > 0 ? 1 : 0;
}

} // namespace
} // namespace rayfleck::cutting

int main(int argc, char** argv) {
    if (argc < 2) {
        fmt::print("usage: rayfleck_cutting_benchmark FOLDER [WORK [PART-OF-A-NAME]]\n");
        return 2;
    }
    rayfleck::cutting::Effort effort;
    if (argc > 2) effort.work = std::strtoll(argv[2], nullptr, 10);
    return rayfleck::cutting::run(argv[1], effort, argc > 3 ? argv[3] : "");
}
