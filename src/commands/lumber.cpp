// See lumber.hpp. The pieces are studied one after the other and planned as one lot, with the shop of the
// first that has boards or prices.

#include "commands/lumber.hpp"

#include <cmath>
#include <filesystem>

#include <fmt/format.h>

#include "commands/output.hpp"
#include "commands/study.hpp"
#include "commands/tally.hpp"
#include "cutlist/cutlist.hpp"
#include "drawing/lot.hpp"
#include "findings/show.hpp"
#include "lumber/lumber.hpp"
#include "writers/csv.hpp"
#include "writers/lumber_json.hpp"
#include "writers/pdf.hpp"
#include "writers/svg.hpp"

namespace rayfleck::commands {
namespace {

struct Piece {
    Loaded loaded;
    std::unique_ptr<Studied> studied;
    cutlist::CutList cut_list;
};

class Telling {
  public:
    Telling(const lumber::Plan& plan, const std::vector<Piece>& pieces)
        : plan_(plan), pieces_(pieces), manner_(pieces.front().studied->piece.manner) {}

    std::string text() {
        if (pieces_.size() > 1)
            for (std::size_t i = 0; i < pieces_.size(); ++i)
                line(fmt::format("P{}  {}", i + 1, pieces_[i].studied->piece.title));
        buy();
        boards();
        steps();
        missing();
        sums();
        return std::move(out_);
    }

  private:
    std::string shown(measure::Length length) const { return measure::text(length, manner_); }
    std::string shown_with_unit(measure::Length length) const {
        return measure::text_with_unit(length, manner_);
    }
    void line(const std::string& words) { out_ += words + "\n"; }

    void buy() {
        line("To buy");
        if (plan_.purchases.empty()) line("  nothing");
        for (const lumber::Purchase& purchase : plan_.purchases) line("  " + purchase.words);
    }

    void boards() {
        for (const lumber::Board& board : plan_.boards) {
            line("");
            std::string head = fmt::format("{}: {}", board.name, board.wood);
            if (!board.stock.empty()) head += " " + board.stock;
            if (!board.sawn.empty()) head += fmt::format(", {} sawn", board.sawn);
            line(fmt::format("{}, {} x {} x {}{}", head, shown(board.thickness), shown(board.width),
                             shown_with_unit(board.length), board.on_hand ? ", on hand" : ""));
            for (const std::string& remark : board.remarks) line("  " + remark);
            for (const lumber::Placement& at : board.placements)
                line(fmt::format("  {:<36} {} x {} at {}, {}{}", lumber::label_of(at, pieces_.size() > 1),
                                 shown(at.across), shown(at.along), shown(at.x), shown(at.y),
                                 at.turned ? ", turned across" : ""));
            for (const lumber::Offcut& offcut : board.offcuts)
                if (offcut.worth_keeping)
                    line(fmt::format("  keep {} x {} at {}, {}", shown(offcut.width), shown(offcut.length),
                                     shown(offcut.x), shown(offcut.y)));
        }
    }

    /// Machine by machine.
    void steps() {
        if (plan_.steps.empty()) return;
        line("");
        line("Work at the machines; settings are from stop or fence to the near side of the blade, the left "
             "end "
             "to the stop, the lower edge to the fence; what is named lies there, the waste is beyond");
        std::string machine;
        for (const lumber::Step& step : plan_.steps) {
            if (step.machine != machine) line("  " + step.machine);
            machine = step.machine;
            line(fmt::format("  {:>3}  {}", step.number, step.words));
            for (const std::string& care : step.cautions) line("       care: " + care);
        }
    }

    void missing() {
        if (plan_.missing.empty()) return;
        line("");
        line("Missing");
        for (const lumber::Missing& gone : plan_.missing)
            line(fmt::format("  {} {}, {} off: {}; {}", gone.reference, gone.name, gone.count, gone.reason,
                             gone.remedy));
    }

    void sums() {
        line("");
        for (const std::string& remark : plan_.remarks) line("note: " + remark);
        line(fmt::format("cost {:.2f}{}{}; proved: no such plan costs less than {:.2f}", plan_.cost,
                         plan_.currency.empty() ? "" : " " + plan_.currency,
                         plan_.all_priced ? "" : " without what has no price", plan_.bound));
        line(fmt::format("yield {:.0f} % finished, {:.0f} % rough, of {:.4f} m3 of boards; {:.4f} m3 of "
                         "offcuts worth keeping",
                         100 * plan_.finished_yield(), 100 * plan_.rough_yield(), plan_.used_m3,
                         plan_.kept_m3));
        if (plan_.proven_optimal)
            line("the plan is proved best: least cost, then least area of boards on hand");
        else if (std::isfinite(plan_.gap))
            line(fmt::format("at most {:.1f} % above the best plan; --effort looks longer", 100 * plan_.gap));
        else
            line("how near it is to the best plan is not proved; --effort looks longer");
    }

    const lumber::Plan& plan_;
    const std::vector<Piece>& pieces_;
    const measure::Manner& manner_;
    std::string out_;
};

/// Reads and studies one text. gives  nothing usable and says why when it does not compile
Status take(const std::string& file, const LumberWish& wish, Piece& piece, Terminal& terminal) {
    piece.loaded = load(file);
    if (piece.loaded.unreadable) {
        terminal.say(fmt::format("rayfleck: cannot read {}: {}\n", file, *piece.loaded.unreadable));
        return Status::failure;
    }
    piece.studied = study(piece.loaded, wish.size ? wish.size : sizes_of(piece.loaded).front());
    if (piece.studied->compiles) {
        piece.cut_list = cutlist::list(piece.studied->model);
        return Status::sound;
    }
    terminal.say(findings::show(piece.studied->findings, piece.loaded.texts, {terminal.colour(), true}));
    terminal.say(fmt::format("{} does not compile, nothing planned\n", file));
    return Status::does_not_compile;
}

/// Sheets, lists and pictures, all or none. gives  what went wrong, if anything
std::optional<std::string> write(const LumberWish& wish, const std::vector<lumber::Source>& sources,
                                 const lumber::Plan& plan) {
    namespace fs = std::filesystem;
    const bool alone = wish.files.size() == 1 && wish.files.front() != "-";
    const std::string base = alone ? fs::path(wish.files.front()).stem().string() + "-lumber" : "lumber";
    const auto named = [&](const std::string& end) { return fs::path(wish.folder) / (base + end); };
    std::vector<Output> outputs;
    outputs.push_back({named(".pdf"), writers::write_pdf(drawing::draw_lot(sources, plan, {}))});
    outputs.push_back({named(".json"), writers::write_lumber_json(plan, sources)});
    outputs.push_back({named(".csv"), writers::write_csv(sources)});
    outputs.push_back({named("-hardware.csv"), writers::write_hardware_csv(sources)});
    outputs.push_back({named("-blanks.csv"), writers::write_blanks_csv(plan, sources)});
    outputs.push_back({named("-purchases.csv"), writers::write_purchases_csv(plan)});
    outputs.push_back({named("-steps.csv"), writers::write_steps_csv(plan)});
    outputs.push_back({named("-rack.fleck"), lumber::inventory_after(plan, *lumber::shop_of(sources))});
    const std::vector<drawing::Sheet> boards = drawing::board_pictures(sources, plan, {});
    for (std::size_t i = 0; i < boards.size(); ++i)
        outputs.push_back({named(fmt::format("-board-{}.svg", i + 1)), writers::write_svg(boards[i])});
    if (const auto trouble = make_folder(wish.folder)) return trouble;
    return replace(outputs);
}

} // namespace

Status lumber_plan(const LumberWish& wish, Terminal& terminal) {
    std::vector<Piece> pieces(wish.files.size());
    Status status = Status::sound;
    for (std::size_t i = 0; i < pieces.size(); ++i)
        status = worse(status, take(wish.files[i], wish, pieces[i], terminal));
    if (status != Status::sound) return status;
    std::vector<lumber::Source> sources;
    for (const Piece& piece : pieces) sources.push_back({&piece.studied->model, &piece.cut_list});
    const lumber::Plan plan = lumber::plan(sources, cutting::Effort{wish.effort});
    if (wish.inventory)
        terminal.print(lumber::inventory_after(plan, *lumber::shop_of(sources)));
    else
        terminal.print(Telling(plan, pieces).text());
    if (!wish.folder.empty())
        if (const auto trouble = write(wish, sources, plan)) {
            terminal.say("rayfleck: " + *trouble + "\n");
            return Status::failure;
        }
    return plan.missing.empty() ? Status::sound : Status::findings;
}

} // namespace rayfleck::commands
