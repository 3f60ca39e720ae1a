// See compile.hpp. All files of one size of a piece are made in memory and take their places together.

#include "commands/compile.hpp"

#include <exception>
#include <filesystem>
#include <set>

#include <fmt/format.h>

#include "commands/output.hpp"
#include "commands/study.hpp"
#include "commands/tally.hpp"
#include "cutlist/cutlist.hpp"
#include "drawing/lot.hpp"
#include "findings/show.hpp"
#include "lumber/lumber.hpp"
#include "writers/csv.hpp"
#include "writers/json.hpp"
#include "writers/pdf.hpp"
#include "writers/svg.hpp"

namespace rayfleck::commands {
namespace {

namespace fs = std::filesystem;

/// A title or the name of a size as part of a file name: no slash, no control character, no dot in front.
std::string as_file_name(std::string name) {
    for (char& c : name)
        if (static_cast<unsigned char>(c) < 0x20 || c == '/' || c == '\x7f') c = '-';
    while (!name.empty() && (name.front() == '.' || name.front() == '-')) name.erase(0, 1);
    return name.empty() ? "piece" : name;
}

/// `side-table` of `designs/side-table.fleck`; of standard input, the title.
std::string base_name(const std::string& file, const Studied& studied) {
    std::string base = file == "-" ? as_file_name(studied.piece.title) : fs::path(file).stem().string();
    if (studied.size) base += "-" + as_file_name(*studied.size);
    return base;
}

std::vector<Output> outputs_of(const Studied& studied, const source::Texts& texts, const CompileWish& wish,
                               const fs::path& base) {
    const cutlist::CutList cut_list = cutlist::list(studied.model);
    drawing::Wishes wishes = wish.drawing;
    wishes.texts = &texts;
    const lumber::Plan plan = lumber::plan(studied.model, cut_list);
    const drawing::Set set =
        drawing::draw({studied.model, studied.findings, cut_list, &studied.order, &plan}, wishes);
    const auto named = [&](const std::string& end) { return fs::path(base.string() + end); };
    std::vector<Output> outputs;
    outputs.push_back({named(".pdf"), writers::write_pdf(set)});
    outputs.push_back({named(".csv"), writers::write_csv(cut_list, studied.piece.manner)});
    outputs.push_back({named(".json"), writers::write_json(studied.model, studied.findings, cut_list, texts,
                                                           &studied.order, &plan)});
    if (wish.pictures)
        for (std::size_t i = 0; i < set.sheets.size(); ++i)
            outputs.push_back({named(fmt::format("-{}.svg", i + 1)), writers::write_svg(set.sheets[i])});
    const std::vector<lumber::Source> alone{{&studied.model, &cut_list}};
    if (wish.pictures) {
        const std::vector<drawing::Sheet> boards = drawing::board_pictures(alone, plan, wishes);
        for (std::size_t i = 0; i < boards.size(); ++i)
            outputs.push_back({named(fmt::format("-board-{}.svg", i + 1)), writers::write_svg(boards[i])});
    }
    if (wish.lists) {
        outputs.push_back({named("-hardware.csv"), writers::write_hardware_csv(alone)});
        outputs.push_back({named("-blanks.csv"), writers::write_blanks_csv(plan, alone)});
        outputs.push_back({named("-purchases.csv"), writers::write_purchases_csv(plan)});
        outputs.push_back({named("-steps.csv"), writers::write_steps_csv(plan)});
    }
    return outputs;
}

class Compiling {
  public:
    Compiling(const CompileWish& wish, Terminal& terminal) : wish_(wish), terminal_(terminal) {}

    Status one(const std::string& file) {
        const Loaded loaded = load(file);
        if (loaded.unreadable) return fail(fmt::format("cannot read {}: {}", file, *loaded.unreadable));
        std::vector<std::optional<std::string>> sizes = sizes_of(loaded);
        // Left to the elaborator when there is no such size: it knows the near words.
        if (wish_.size) sizes = {wish_.size};

        std::vector<std::unique_ptr<Studied>> studied;
        std::vector<const Studied*> seen;
        for (const auto& size : sizes) {
            studied.push_back(study(loaded, size));
            seen.push_back(studied.back().get());
        }
        const findings::Findings found = merged(seen);
        terminal_.say(findings::show(found, loaded.texts, {terminal_.colour(), wish_.brief}));
        Status status = status_of(found, wish_.fail_on);
        if (status == Status::does_not_compile) {
            Tally tally;
            tally.texts = 1;
            tally.add(found);
            terminal_.say(fmt::format("{} does not compile, nothing written ({})\n", file, tally.words()));
            return status;
        }
        for (const auto& size : studied) status = worse(status, write(file, *size, loaded.texts));
        return status;
    }

  private:
    Status fail(const std::string& words) {
        terminal_.say("rayfleck: " + words + "\n");
        return Status::failure;
    }

    Status write(const std::string& file, const Studied& studied, const source::Texts& texts) {
        const fs::path base = fs::path(wish_.folder) / base_name(file, studied);
        if (!written_.insert(base.lexically_normal().string()).second)
            return fail(
                fmt::format("{} would be written twice in one run: compile {} into another folder with -o",
                            base.string() + ".pdf", file));
        const std::vector<Output> outputs = outputs_of(studied, texts, wish_, base);
        if (const auto trouble = make_folder(wish_.folder)) return fail(*trouble);
        if (const auto trouble = replace(outputs)) return fail(*trouble);
        if (!wish_.quiet)
            for (const Output& output : outputs)
                terminal_.say("wrote " + output.path.lexically_normal().string() + "\n");
        return Status::sound;
    }

    const CompileWish& wish_;
    Terminal& terminal_;
    std::set<std::string> written_;
};

} // namespace

Status compile(const CompileWish& wish, Terminal& terminal) {
    Status status = Status::sound;
    Compiling compiling(wish, terminal);
    for (const std::string& file : wish.files) {
        try {
            status = worse(status, compiling.one(file));
        } catch (const std::exception& defect) {
            terminal.say(fmt::format("rayfleck: {}: a defect of this program: {}\n", file, defect.what()));
            status = Status::failure;
        }
    }
    return status;
}

} // namespace rayfleck::commands
