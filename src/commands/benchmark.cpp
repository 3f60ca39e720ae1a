// The program `rayfleck_benchmark`: how long every phase takes, for each text given and for made-up pieces of
// growing size.
//
// Each phase is run a number of times on the same input; the least of the runs is told, because whatever else
// the machine does can only add. Ratios carry over between machines, milliseconds do not: beside each figure
// stands its ratio to the text before and, for made-up pieces, the power of the number of parts with which it
// grew (1 is in step with the parts, 2 with their square). `sheets` is drawing and writing the PDF together,
// what the bars of a drawing run are about. The most memory that the program held so far and the sizes of the
// PDF follow. Reading the files is part of `load`, writing them is left out. The only user of a clock in the
// program.

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdlib>
#include <exception>
#include <functional>
#include <limits>
#include <string>
#include <vector>

#include <fmt/format.h>
#include <sys/resource.h>

#include "assembly/assembly.hpp"
#include "checks/checks.hpp"
#include "commands/load.hpp"
#include "commands/scaled_piece.hpp"
#include "commands/terminal.hpp"
#include "cutlist/cutlist.hpp"
#include "drawing/draw.hpp"
#include "lumber/lumber.hpp"
#include "piece/recipes.hpp"
#include "syntax/parse.hpp"
#include "writers/json.hpp"
#include "writers/pdf.hpp"

namespace rayfleck::commands {
namespace {

constexpr int usual_runs = 5;
constexpr int fewest_parts = 40, most_parts = 400;

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

/// The most memory that the program has held until now, MB.
double most_memory() {
    rusage usage{};
    ::getrusage(RUSAGE_SELF, &usage);
    return static_cast<double>(usage.ru_maxrss) / 1024;
}

struct Phase {
    std::string name;
    double milliseconds = 0;
};

struct Measured {
    std::vector<Phase> phases; ///< empty when the text does not compile
    std::size_t parts = 0, rows = 0, sheets = 0, pdf_bytes = 0;
};

/// A text that is no file, with the recipes that are shipped.
Loaded read_text(const std::string& name, const std::string& text) {
    Loaded loaded;
    const auto read = [&](const std::string& called, const std::string& bytes) {
        const int number = loaded.texts.add(source::Text(called, bytes));
        loaded.project.trees.push_back(syntax::parse(loaded.texts, number, loaded.findings));
        return number;
    };
    read(name, text);
    for (const auto& [file, bytes] : piece::shipped_recipes())
        loaded.project.recipes.push_back(read("shipped/" + file, bytes));
    return loaded;
}

Measured measured(const std::function<Loaded()>& load_it, int runs) {
    Measured all;
    const auto time = [&](const char* name, const std::function<void()>& phase) {
        all.phases.push_back({name, quickest(runs, phase)});
    };
    Loaded loaded;
    time("load", [&] { loaded = load_it(); });
    if (loaded.unreadable) return {};
    findings::Findings found;
    const auto fresh = [&] { found = loaded.findings; };
    piece::Piece piece;
    time("elaborate", [&] { fresh(), piece = piece::elaborate(loaded.project, std::nullopt, found); });
    if (found.any(findings::Severity::error)) return {};
    joinery::Model model;
    time("build", [&] { fresh(), model = joinery::build(piece, found); });
    if (found.any(findings::Severity::error)) return {};
    const findings::Findings built = found;
    assembly::Order order;
    time("order", [&] { order = assembly::order(model); });
    time("look", [&] { found = built, checks::look(model, order, found); });
    // Of single checks only those that take a share worth knowing.
    constexpr double worth_telling = 0.5; // ms
    for (const checks::Check& check : checks::all()) {
        if (check.look == nullptr) continue;
        findings::Findings own;
        const double took = quickest(runs, [&] { check.look(model, own); });
        if (took >= worth_telling) all.phases.push_back({"(" + std::string(check.name) + ")", took});
    }
    cutlist::CutList cut_list;
    time("list", [&] { cut_list = cutlist::list(model); });
    lumber::Plan plan;
    time("lumber", [&] { plan = lumber::plan(model, cut_list); });
    const auto view = [&](const char* name, const solid::View& from) {
        const std::vector<solid::Placed> placed = model.placed();
        time(name, [&] { solid::hidden_lines(placed, from); });
    };
    view("(front)", solid::front_view());
    view("(pictorial)", solid::isometric_view());
    drawing::Set set;
    drawing::Wishes wishes;
    wishes.texts = &loaded.texts;
    time("draw", [&] { set = drawing::draw({model, found, cut_list, &order, &plan}, wishes); });
    std::string pdf;
    time("write pdf", [&] { pdf = writers::write_pdf(set); });
    time("write json", [&] { writers::write_json(model, found, cut_list, loaded.texts, &order, &plan); });
    double total = 0, sheets = 0;
    for (const Phase& phase : all.phases) {
        if (phase.name[0] != '(') total += phase.milliseconds;
        if (phase.name == "draw" || phase.name == "write pdf") sheets += phase.milliseconds;
    }
    all.phases.push_back({"sheets", sheets});
    all.phases.push_back({"all", total});
    all.parts = model.made.size();
    all.rows = cut_list.rows.size();
    all.sheets = set.sheets.size();
    all.pdf_bytes = pdf.size();
    return all;
}

/// power  tell how each phase grew with the number of parts
void tell(Terminal& terminal, const std::string& name, int runs, const Measured& now, const Measured& before,
          bool power) {
    terminal.print(fmt::format("{}: {} parts in {} rows, {} sheets, PDF {} bytes (quickest of {})\n", name,
                               now.parts, now.rows, now.sheets, now.pdf_bytes, runs));
    const double grown =
        static_cast<double>(now.parts) / static_cast<double>(std::max<std::size_t>(before.parts, 1));
    for (const Phase& phase : now.phases) {
        std::string line = fmt::format("  {:<24}{:>10.3f} ms", phase.name, phase.milliseconds);
        // Single checks are told only when they take long, so the other run may lack one.
        const auto same = std::find_if(before.phases.begin(), before.phases.end(),
                                       [&](const Phase& other) { return other.name == phase.name; });
        if (same != before.phases.end()) {
            const double ratio = phase.milliseconds / same->milliseconds;
            line += fmt::format("{:>9.2f} ×", ratio);
            if (power && grown > 1.01)
                line += fmt::format("   parts to the {:.2f}", std::log(ratio) / std::log(grown));
        }
        terminal.print(line + "\n");
    }
    terminal.print(fmt::format("  memory {:.1f} MB at most until here\n", most_memory()));
}

int run(const std::vector<std::string>& words) {
    Terminal terminal(Colour::never);
    int runs = usual_runs;
    std::vector<std::string> files;
    std::vector<int> sizes;
    bool understood = true;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (words[i] == "--runs" && i + 1 < words.size())
            runs = std::max(1, std::atoi(words[++i].c_str()));
        else if (words[i] == "--parts" && i + 1 < words.size())
            sizes.push_back(std::atoi(words[++i].c_str()));
        else if (words[i] == "--text" && i + 1 < words.size()) {
            terminal.print(
                bank_of_drawers(std::clamp(std::atoi(words[++i].c_str()), fewest_parts, most_parts)));
            return 0;
        } else if (words[i].starts_with("--"))
            understood = false;
        else
            files.push_back(words[i]);
    }
    for (const int size : sizes) understood = understood && size >= fewest_parts && size <= most_parts;
    if (!understood || (files.empty() && sizes.empty())) {
        terminal.say(
            fmt::format("usage: rayfleck_benchmark [--runs N] [--parts N]... [FILE...]\n"
                        "       rayfleck_benchmark --text N\n"
                        "  --parts  a made-up piece of {} to {} parts; give it several times to see growth\n"
                        "  --text   the text of such a piece\n",
                        fewest_parts, most_parts));
        return 3;
    }
    int status = 0;
    const auto one = [&](const std::string& name, const std::function<Loaded()>& load_it, Measured& before,
                         bool power) {
        Measured now;
        try {
            now = measured(load_it, runs);
        } catch (const std::exception& defect) {
            terminal.say(fmt::format("{}: {}\n", name, defect.what()));
        }
        if (now.phases.empty()) {
            terminal.say(fmt::format("{} does not compile\n", name));
            status = 2;
            return;
        }
        tell(terminal, name, runs, now, before.phases.empty() ? now : before, power);
        before = std::move(now);
    };
    Measured before;
    for (const int size : sizes)
        one(
            "bank of drawers", [&] { return read_text("bank.fleck", bank_of_drawers(size)); }, before, true);
    before = {};
    for (const std::string& file : files)
        one(
            file, [&] { return load(file); }, before, false);
    return status;
}

} // namespace
} // namespace rayfleck::commands

int main(int count, char** words) {
    rayfleck::commands::guard_standard_streams();
    return rayfleck::commands::run({words + 1, words + count});
}
