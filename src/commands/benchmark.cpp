// The program `rayfleck_benchmark`: how long every phase takes, for each text given.
//
// Each phase is run a number of times on the same input; the least of the runs is told, because whatever else
// the machine does can only add. Ratios to the first text carry over between machines, milliseconds do not.
// Reading the files is part of `load`, writing them is left out. The only user of a clock in the program.

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <exception>
#include <functional>
#include <limits>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "checks/checks.hpp"
#include "commands/load.hpp"
#include "commands/terminal.hpp"
#include "cutlist/cutlist.hpp"
#include "drawing/draw.hpp"
#include "writers/json.hpp"
#include "writers/pdf.hpp"

namespace rayfleck::commands {
namespace {

constexpr int usual_runs = 5;

/// Milliseconds of the quickest of several runs.
double quickest(int runs, const std::function<void()>& phase) {
    double least = std::numeric_limits<double>::infinity();
    for (int i = 0; i < runs; ++i) {
        const auto begin = std::chrono::steady_clock::now();
        phase();
        const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - begin;
        least = std::min(least, took.count());
    }
    return least;
}

struct Phase {
    std::string name;
    double milliseconds = 0;
};

/// Every phase of one text; empty when it does not compile.
std::vector<Phase> phases_of(const std::string& file, int runs) {
    std::vector<Phase> phases;
    const auto time = [&](const char* name, const std::function<void()>& phase) {
        phases.push_back({name, quickest(runs, phase)});
    };
    Loaded loaded;
    time("load", [&] { loaded = load(file); });
    if (loaded.unreadable) return {};
    findings::Findings found;
    const auto fresh = [&] { found = loaded.findings; };
    piece::Piece piece;
    time("elaborate", [&] { fresh(), piece = piece::elaborate(loaded.project, std::nullopt, found); });
    if (found.any(findings::Severity::error)) return {};
    joinery::Model model;
    time("build", [&] { fresh(), model = joinery::build(piece, found); });
    const findings::Findings built = found;
    time("look", [&] { found = built, checks::look(model, found); });
    cutlist::CutList cut_list;
    time("list", [&] { cut_list = cutlist::list(model); });
    drawing::Set set;
    time("draw", [&] { set = drawing::draw({model, found, cut_list}, {}); });
    time("write pdf", [&] { writers::write_pdf(set); });
    time("write json", [&] { writers::write_json(model, found, cut_list, loaded.texts); });
    double total = 0;
    for (const Phase& phase : phases) total += phase.milliseconds;
    phases.push_back({"all", total});
    return phases;
}

} // namespace
} // namespace rayfleck::commands

int main(int count, char** words) {
    using namespace rayfleck::commands;
    guard_standard_streams();
    Terminal terminal(Colour::never);
    int runs = usual_runs;
    std::vector<std::string> files;
    for (int i = 1; i < count; ++i) {
        const std::string word = words[i];
        if (word == "--runs" && i + 1 < count)
            runs = std::max(1, std::atoi(words[++i]));
        else
            files.push_back(word);
    }
    if (files.empty()) {
        terminal.say("usage: rayfleck_benchmark [--runs N] FILE...\n");
        return 3;
    }
    std::vector<Phase> first;
    int status = 0;
    for (const std::string& file : files) {
        std::vector<Phase> phases;
        try {
            phases = phases_of(file, runs);
        } catch (const std::exception& defect) {
            terminal.say(fmt::format("{}: {}\n", file, defect.what()));
        }
        if (phases.empty()) {
            terminal.say(fmt::format("{} does not compile\n", file));
            status = 2;
            continue;
        }
        if (first.empty()) first = phases;
        terminal.print(fmt::format("{} (quickest of {})\n", file, runs));
        for (std::size_t i = 0; i < phases.size(); ++i)
            terminal.print(fmt::format("  {:<11}{:>10.3f} ms{:>9.2f} ×\n", phases[i].name,
                                       phases[i].milliseconds,
                                       phases[i].milliseconds / first[i].milliseconds));
    }
    return status;
}
