// The order of the work on all boards: machine by machine, as a shop walks from one to the next, and on each
// machine setting by setting, so that no fence is set twice for the same width.
//
// A cut can be made when all cuts through the pieces that hold its own are made. Of those that can, the
// earliest stage goes first; in it the setting that serves most of them, the larger where that leaves a
// choice. Strips are planed before the second crosscut where all in them become equally thick, since a short
// piece is no work for a planer. What lies between stop or fence and blade is named; it is waste where
// nothing is. Left out: the height of the blade, and which way round a maker likes to turn a board.

#include <algorithm>

#include <fmt/format.h>

#include "lumber/bench.hpp"

namespace rayfleck::lumber {
namespace {

using Doing = Step::Doing;

/// Shorter ones are ripped and planed with care. Common practice, no published source.
const Length short_piece = Length::mm(300);
/// A strip narrower than that beside the fence is no place for a hand. Common practice, no published source.
const Length narrow_strip = Length::mm(40);
/// What is held against the stop while it is crosscut. Common practice, no published source.
const Length short_hold = Length::mm(150);

class Ordering {
  public:
    Ordering(Plan& plan, const std::vector<Source>& sources, const piece::Shop& shop)
        : plan_(plan), sources_(sources), shop_(shop), manner_(sources.front().model->piece->manner) {}

    void order() {
        for (Board& board : plan_.boards) {
            for (Cut& cut : board.cuts) look(board, cut);
            done_.emplace_back(board.cuts.size(), false);
            sequence_.emplace_back();
        }
        bool planed = false;
        while (const auto next = next_setting()) {
            if (!planed && next->phase > planing) {
                plane(false);
                planed = true;
            }
            make(*next);
        }
        if (!planed) plane(false);
        resaw();
        plane(true);
        renumber();
        words();
    }

  private:
    struct Setting {
        int phase = 0;
        Doing doing = Doing::square;
        std::string machine;
        Length fence;
        friend bool operator==(const Setting&, const Setting&) = default;
    };
    static constexpr int planing = 25, of_sheets = 1000;

    std::string shown(Length length) const { return measure::text_with_unit(length, manner_); }

    static bool inside(Length x, Length y, Length along, Length across, Length in_x, Length in_y,
                       Length length, Length width) {
        return x >= in_x && y >= in_y && x + along <= in_x + length && y + across <= in_y + width;
    }

    /// What lies before and beyond the line.
    void look(const Board& board, Cut& cut) const {
        if (cut.work != Cut::Work::sever) return;
        const bool rip = cut.direction == Cut::Direction::rip;
        std::vector<std::string> marks;
        std::string name;
        bool finished = false;
        for (const Placement& p : board.placements) {
            if (!inside(p.x, p.y, p.along, p.across, cut.piece_x, cut.piece_y,
                        rip ? cut.piece_length : cut.fence, rip ? cut.fence : cut.piece_width))
                continue;
            marks.push_back(mark_of(p, several()));
            name = label_of(p, several());
            finished = p.along == (rip ? cut.piece_length : cut.fence) &&
                       p.across == (rip ? cut.fence : cut.piece_width);
        }
        if (marks.size() == 1)
            cut.near = finished ? name : "for " + name;
        else if (!marks.empty())
            cut.near = fmt::format("for {}", fmt::join(marks, ", "));
        cut.waste_beyond = true;
        for (const Placement& p : board.placements)
            if (inside(p.x, p.y, p.along, p.across, cut.piece_x, cut.piece_y, cut.piece_length,
                       cut.piece_width) &&
                (rip ? p.y >= cut.at : p.x >= cut.at))
                cut.waste_beyond = false;
        for (const Offcut& o : board.offcuts) {
            if (!o.worth_keeping || !inside(o.x, o.y, o.length, o.width, cut.piece_x, cut.piece_y,
                                            cut.piece_length, cut.piece_width))
                continue;
            if (rip ? o.y >= cut.at : o.x >= cut.at)
                cut.waste_beyond = false;
            else
                cut.offcut = true;
        }
    }

    Setting setting_of(const Board& board, const Cut& cut) const {
        Setting setting;
        const bool rip = cut.direction == Cut::Direction::rip;
        // Whatever comes after the second crosscut is done with it where it can be.
        setting.phase = board.sheet      ? of_sheets + cut.stage * 10
                        : cut.stage <= 2 ? cut.stage * 10
                        : rip            ? 40
                                         : 30;
        switch (cut.work) {
        case Cut::Work::square:
            setting.phase = 0;
            setting.machine = crosscut_saw(shop_);
            return setting;
        case Cut::Work::straighten:
            setting.phase = 15;
            setting.doing = Doing::straighten;
            setting.machine = "jointer";
            return setting;
        case Cut::Work::shave:
            setting.doing = Doing::shave;
            setting.machine = rip ? "jointer" : crosscut_saw(shop_);
            setting.fence = cut.kerf;
            return setting;
        case Cut::Work::sever:
            break;
        }
        setting.doing = rip ? Doing::rip : Doing::crosscut;
        setting.machine = rip || board.sheet ? "table saw" : crosscut_saw(shop_);
        if (!rip && cut.piece_width > limit_of(setting.machine, "width")) setting.machine = "table saw";
        setting.fence = cut.fence;
        return setting;
    }

    /// Larger than any board where the shop tells none.
    Length limit_of(const std::string& machine, const std::string& what) const {
        for (const piece::Shop::Limit& limit : shop_.limits)
            if (limit.machine == machine && limit.what == what) return limit.amount;
        return Length::mm(1'000'000);
    }

    bool ready(std::size_t b, std::size_t c) const {
        if (done_[b][c]) return false;
        const std::vector<Cut>& cuts = plan_.boards[b].cuts;
        for (std::size_t i = 0; i < c; ++i)
            if (!done_[b][i] &&
                inside(cuts[c].piece_x, cuts[c].piece_y, cuts[c].piece_length, cuts[c].piece_width,
                       cuts[i].piece_x, cuts[i].piece_y, cuts[i].piece_length, cuts[i].piece_width))
                return false;
        return true;
    }

    std::optional<Setting> next_setting() const {
        std::vector<std::pair<Setting, int>> settings;
        int first = -1;
        for (std::size_t b = 0; b < plan_.boards.size(); ++b)
            for (std::size_t c = 0; c < plan_.boards[b].cuts.size(); ++c) {
                if (!ready(b, c)) continue;
                const Setting setting = setting_of(plan_.boards[b], plan_.boards[b].cuts[c]);
                if (first < 0 || setting.phase < first) first = setting.phase;
                const auto known = std::find_if(settings.begin(), settings.end(),
                                                [&](const auto& one) { return one.first == setting; });
                if (known == settings.end())
                    settings.push_back({setting, 1});
                else
                    ++known->second;
            }
        std::optional<Setting> best;
        int most = 0;
        for (const auto& [setting, count] : settings) {
            if (setting.phase != first) continue;
            if (!best || count > most || (count == most && setting.fence > best->fence)) {
                best = setting;
                most = count;
            }
        }
        return best;
    }

    void make(const Setting& setting) {
        Step step;
        step.doing = setting.doing;
        step.machine = setting.machine;
        if (setting.doing != Doing::square && setting.doing != Doing::straighten)
            step.setting = setting.fence;
        for (std::size_t b = 0; b < plan_.boards.size(); ++b) {
            Step::On on;
            on.board = b;
            for (bool more = true; more;) {
                more = false;
                for (std::size_t c = 0; c < plan_.boards[b].cuts.size(); ++c) {
                    const Cut& cut = plan_.boards[b].cuts[c];
                    if (!ready(b, c) || !(setting_of(plan_.boards[b], cut) == setting)) continue;
                    done_[b][c] = true;
                    sequence_[b].push_back(c);
                    on.cuts.push_back(static_cast<int>(sequence_[b].size()));
                    on.gets.push_back(yield(cut));
                    warn(step, plan_.boards[b], cut);
                    more = true;
                }
            }
            if (!on.cuts.empty()) step.on.push_back(std::move(on));
        }
        plan_.steps.push_back(std::move(step));
    }

    static std::string yield(const Cut& cut) {
        if (cut.work != Cut::Work::sever) return "";
        std::string out = !cut.near.empty() ? cut.near : cut.offcut ? "offcut to keep" : "waste";
        if (cut.waste_beyond) out += ", rest waste";
        return out;
    }

    static void caution(Step& step, const std::string& words) {
        if (std::find(step.cautions.begin(), step.cautions.end(), words) == step.cautions.end())
            step.cautions.push_back(words);
    }

    void warn(Step& step, const Board& board, const Cut& cut) const {
        if (step.doing == Doing::straighten) {
            if (cut.piece_length < short_piece)
                caution(step, fmt::format("a piece of less than {} is planed by hand", shown(short_piece)));
            if (cut.piece_width > limit_of("jointer", "width"))
                caution(step,
                        fmt::format("wider than the {} of the jointer: flatten the face by hand or on a sled",
                                    shown(limit_of("jointer", "width"))));
        }
        if (step.doing == Doing::rip) {
            if (cut.piece_length < short_piece)
                caution(step, fmt::format("a piece of less than {} is ripped on a sled or by hand",
                                          shown(short_piece)));
            if (cut.fence < narrow_strip)
                caution(step, fmt::format("less than {} beside the fence: push stick, riving knife",
                                          shown(narrow_strip)));
            if (cut.fence > limit_of("table saw", "width"))
                caution(step, fmt::format("the fence goes to {} only: mark the line and saw along a batten",
                                          shown(limit_of("table saw", "width"))));
            if (board.thickness > limit_of("table saw", "height"))
                caution(step,
                        fmt::format("thicker than the {} that the table saw cuts: rip it on the band saw",
                                    shown(limit_of("table saw", "height"))));
        }
        if (step.doing == Doing::crosscut && cut.fence < short_hold &&
            cut.piece_length - cut.fence < short_hold)
            caution(step, "both sides are short: clamp the piece");
    }

    /// The thickness that a blank is planed to; nothing for sheets and dressed lumber. Layers and staves go
    /// through the planer again when they are glued up; whole parts do not.
    std::optional<Length> planed(const Board& board, const Placement& p) const {
        if (board.sheet) return std::nullopt;
        const Leaf& leaf = p.leaves.front();
        const Length finished = sources_[p.source].cut_list->rows[leaf.row].thickness;
        const Length left = p.leaves.front().whole ? finished : leaf.thickness;
        return leaf.thickness > finished || !p.leaves.front().whole ? std::optional(left) : std::nullopt;
    }

    /// Whether a blank is planed after all sawing: it is resawn, or others in its strip become thicker.
    bool late(const Board& board, const Placement& p) const {
        if (p.leaves.size() > 1) return true;
        const Cut* strip = nullptr;
        for (const Cut& cut : board.cuts)
            if (cut.work == Cut::Work::sever && cut.stage > 2 && strip == nullptr &&
                inside(p.x, p.y, p.along, p.across, cut.piece_x, cut.piece_y, cut.piece_length,
                       cut.piece_width))
                strip = &cut;
        if (strip == nullptr) return false;
        for (const Placement& other : board.placements)
            if (inside(other.x, other.y, other.along, other.across, strip->piece_x, strip->piece_y,
                       strip->piece_length, strip->piece_width) &&
                (planed(board, other) != planed(board, p) || other.leaves.size() > 1))
                return true;
        return false;
    }

    void plane(bool after_all) {
        std::vector<Step> steps;
        for (std::size_t b = 0; b < plan_.boards.size(); ++b) {
            const Board& board = plan_.boards[b];
            for (const Placement& p : board.placements) {
                const auto thickness = planed(board, p);
                if (!thickness || late(board, p) != after_all) continue;
                const auto same = std::find_if(steps.begin(), steps.end(),
                                               [&](const Step& step) { return step.setting == thickness; });
                Step& step = same == steps.end() ? steps.emplace_back() : *same;
                step.doing = Doing::plane;
                step.machine = "planer";
                step.setting = thickness;
                if (step.on.empty() || step.on.back().board != b) step.on.push_back({b, {}, {}});
                step.on.back().gets.push_back(label_of(p, several()));
                if (p.across > limit_of("planer", "width"))
                    caution(step,
                            fmt::format("wider than the {} that the planer takes: by hand, or in two halves",
                                        shown(limit_of("planer", "width"))));
                if (!p.leaves.front().whole && shop_.allow_thickness > Length())
                    caution(step, fmt::format("staves and layers keep {} until they are glued up",
                                              shown(shop_.allow_thickness)));
                const Length least = limit_of("planer", "thickness");
                if (least < Length::mm(1000) && *thickness < least)
                    caution(step,
                            fmt::format("the planer goes down to {}: on a carrier board", shown(least)));
                if (after_all && p.along < short_piece)
                    caution(step, fmt::format("a piece of less than {} does not go through a planer: by hand",
                                              shown(short_piece)));
            }
        }
        std::stable_sort(steps.begin(), steps.end(),
                         [](const Step& a, const Step& b) { return *a.setting > *b.setting; });
        for (Step& step : steps) plan_.steps.push_back(std::move(step));
    }

    void resaw() {
        std::vector<Step> steps;
        for (std::size_t b = 0; b < plan_.boards.size(); ++b)
            for (const Placement& p : plan_.boards[b].placements) {
                if (p.leaves.size() < 2) continue;
                const Length leaf = p.leaves.front().thickness;
                const auto same = std::find_if(steps.begin(), steps.end(),
                                               [&](const Step& step) { return step.setting == leaf; });
                Step& step = same == steps.end() ? steps.emplace_back() : *same;
                step.doing = Doing::resaw;
                step.machine = "band saw";
                step.setting = leaf;
                if (step.on.empty() || step.on.back().board != b) step.on.push_back({b, {}, {}});
                step.on.back().gets.push_back(label_of(p, several()));
                if (p.along < short_piece) caution(step, "short: with a tall push block");
            }
        for (Step& step : steps) plan_.steps.push_back(std::move(step));
    }

    /// The cuts of every board in the order in which they are made.
    void renumber() {
        for (std::size_t b = 0; b < plan_.boards.size(); ++b) {
            std::vector<Cut> made;
            for (const std::size_t c : sequence_[b]) made.push_back(plan_.boards[b].cuts[c]);
            for (std::size_t c = 0; c < made.size(); ++c) made[c].number = static_cast<int>(c) + 1;
            plan_.boards[b].cuts = std::move(made);
        }
        for (std::size_t s = 0; s < plan_.steps.size(); ++s) plan_.steps[s].number = static_cast<int>(s) + 1;
    }

    std::string what(const Step& step) const {
        const std::string at = step.setting ? shown(*step.setting) : "";
        switch (step.doing) {
        case Doing::square:
            return fmt::format("square both ends, {} off each, the kerf in it", shown(plan_.end_trim));
        case Doing::crosscut:
            return fmt::format("set the stop to {} and crosscut", at);
        case Doing::straighten:
            return fmt::format("flatten one face, straighten the lower edge, {} off",
                               shown(shop_.straightening));
        case Doing::shave:
            return fmt::format("take {} off the {}", at,
                               step.machine == "jointer" ? "lower edge" : "left end");
        case Doing::rip:
            return fmt::format("set the fence to {} and rip", at);
        case Doing::resaw:
            return fmt::format("set the fence to {} and resaw", at);
        case Doing::plane:
            return fmt::format("plane to {}", at);
        }
        return "";
    }

    std::string brief(const Step& step) const {
        const std::string at = step.setting ? shown(*step.setting) : "";
        switch (step.doing) {
        case Doing::square:
            return "square the ends";
        case Doing::crosscut:
            return "stop " + at;
        case Doing::straighten:
            return "straighten";
        case Doing::shave:
            return at + " off";
        case Doing::rip:
            return "fence " + at;
        case Doing::resaw:
            return "resaw at " + at;
        case Doing::plane:
            return "plane to " + at;
        }
        return "";
    }

    void words() {
        for (Step& step : plan_.steps) {
            step.what = what(step);
            step.brief = brief(step);
            std::vector<std::string> on;
            for (const Step::On& one : step.on) on.push_back(told(one));
            step.words = fmt::format("{}: {}", step.what, fmt::join(on, "; "));
            for (const Step::On& one : step.on)
                for (std::size_t i = 0; i < one.cuts.size(); ++i) {
                    Cut& cut = plan_.boards[one.board].cuts[static_cast<std::size_t>(one.cuts[i]) - 1];
                    cut.words = step.what + (one.gets[i].empty() ? "" : ": " + one.gets[i]);
                }
        }
    }

    std::string told(const Step::On& on) const {
        std::string out = plan_.boards[on.board].name;
        // Ends and edges have no names of their own.
        if (!on.cuts.empty() && on.gets.front().empty())
            return on.cuts.size() == 1 || on.cuts.front() == 1
                       ? out
                       : fmt::format("{} ({} lengths)", out, on.cuts.size());
        for (std::size_t i = 0; i < std::max(on.cuts.size(), on.gets.size()); ++i) {
            out += i == 0 ? " " : ", ";
            if (i < on.cuts.size()) out += fmt::format("cut {}", on.cuts[i]);
            if (i < on.gets.size() && !on.gets[i].empty())
                out += on.cuts.empty() ? on.gets[i] : fmt::format(" ({})", on.gets[i]);
        }
        return out;
    }

    bool several() const { return sources_.size() > 1; }

    Plan& plan_;
    const std::vector<Source>& sources_;
    const piece::Shop& shop_;
    const measure::Manner& manner_;
    std::vector<std::vector<bool>> done_;            ///< of each board's cuts
    std::vector<std::vector<std::size_t>> sequence_; ///< in which they are made
};

} // namespace

std::string mark_of(const Placement& placement, bool several) {
    return fmt::format("{}{} {}", several ? fmt::format("P{} ", placement.source + 1) : "",
                       placement.reference, placement.instance);
}

std::string label_of(const Placement& placement, bool several) {
    return fmt::format("{}{} {} {}", several ? fmt::format("P{} ", placement.source + 1) : "",
                       placement.reference, placement.name, placement.instance);
}

void tell_steps(Plan& plan, const std::vector<Source>& sources, const piece::Shop& shop) {
    Ordering(plan, sources, shop).order();
}

} // namespace rayfleck::lumber
