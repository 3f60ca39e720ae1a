// Faults planted in sound work: the samples, changed in one place each, must be found wanting in that place,
// of that fault, and of nothing else.
//
// A mutant is a sample's own text with one line changed or added: a grain turned, a hole bored too near an
// edge, a tenon made a butt of glue, a joint taken out. Where it goes, the sound piece itself tells: its
// parts and the wood that its solids have there. Everything is deterministic; no number is drawn. What a
// planted fault rightly brings with it, besides its own finding, is listed and argued at each kind of mutant
// (`consequent`).

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <regex>
#include <set>

#include <fmt/format.h>

#include <catch2/catch.hpp>

#include "case_files.hpp"
#include "checks/checks.hpp"
#include "findings/show.hpp"
#include "studied.hpp"

using namespace rayfleck;
using namespace rayfleck::checks_tests;

namespace {

const std::string samples = std::string(RAYFLECK_ROOT) + "/samples";

struct Mutant {
    std::string sample, kind, check; ///< what is planted, and the check that must find it
    std::string text;
    int first_line = 0, last_line = 0; ///< where the finding must point, from 1
};

/// Checks that may speak besides the one that is meant, and why they are right to.
struct Kind {
    std::string name;
    std::set<std::string> consequent;
};

struct Sound {
    std::string name, bytes;
    std::vector<std::string> lines;
    std::unique_ptr<Study> study;

    const Studied& first() const { return *study->sizes.front(); }
    int line_of(const source::Span& span) const { return study->texts[span.file].place(span.begin).line; }
    /// Whether the span lies in the sample's own text and not in a file that it brings in.
    bool own(const source::Span& span) const { return span.file == study->project.main; }
};

std::string with_line(const Sound& sound, int after, const std::string& line) {
    std::string text;
    for (int i = 0; i < static_cast<int>(sound.lines.size()); ++i) {
        text += sound.lines[static_cast<std::size_t>(i)] + "\n";
        if (i + 1 == after) text += line + "\n";
    }
    return text;
}

std::string with_changed(const Sound& sound, int number, const std::string& line) {
    std::string text;
    for (int i = 0; i < static_cast<int>(sound.lines.size()); ++i)
        text += (i + 1 == number ? line : sound.lines[static_cast<std::size_t>(i)]) + "\n";
    return text;
}

/// Parts of the sample's own text, the first copy of each, that stand along the piece's axes.
std::vector<const joinery::Made*> plain_parts(const Sound& sound) {
    std::vector<const joinery::Made*> parts;
    std::set<std::string> seen;
    for (const joinery::Made& made : sound.first().model.made) {
        const piece::Part& part = *made.part;
        if (!sound.own(part.span) || !seen.insert(part.base).second) continue;
        const std::string& header = sound.lines[static_cast<std::size_t>(sound.line_of(part.span) - 1)];
        if (!part.upright || part.species->is_sheet() || header.find("part ") != 0) continue;
        parts.push_back(&made);
    }
    return parts;
}

/// The side of the piece towards which a direction looks.
std::string side_name(measure::Vector way) {
    if (std::abs(way.x) > 0.9) return way.x > 0 ? "right" : "left";
    if (std::abs(way.y) > 0.9) return way.y > 0 ? "back" : "front";
    return way.z > 0 ? "top" : "bottom";
}

/// Whether the part is whole wood in this box of its own frame, as far as a grid of lines through it can
/// tell, and no wood lies beyond the given faces of it.
bool whole_in(const joinery::Made& made, measure::Point low, measure::Point high) {
    const measure::Box& box = made.solid.box;
    for (int axis = 0; axis < 3; ++axis)
        if (low[axis] < box.low[axis] - 1e-6 || high[axis] > box.high[axis] + 1e-6) return false;
    for (int i = 0; i <= 6; ++i)
        for (int j = 0; j <= 6; ++j) {
            const double u = 0.003 + 0.994 * i / 6, v = 0.003 + 0.994 * j / 6;
            const measure::Point p{low.x + u * (high.x - low.x), low.y + v * (high.y - low.y), 0};
            double wood = 0;
            for (const auto& [enter, leave] : solid::inside_along(made.solid, p, {0, 0, 1}))
                wood += std::max(0.0, std::min(leave, high.z) - std::max(enter, low.z));
            if (wood < high.z - low.z - 1e-3) return false;
        }
    return true;
}

/// A place along the length at which a hollow of this reach finds whole wood over all of thickness and width.
std::optional<double> free_place(const joinery::Made& made, double reach) {
    const double length = made.part->length.value();
    for (double share : {0.5, 0.37, 0.63, 0.28, 0.72, 0.44, 0.56, 0.2, 0.8}) {
        const double x = std::round(share * length);
        if (x - reach < 30 || x + reach > length - 30) continue;
        if (whole_in(made, {x - reach, 0, 0},
                     {x + reach, made.part->width.value(), made.part->thickness.value()}))
            return x;
    }
    return std::nullopt;
}

std::string planted_bore(const joinery::Made& made, double diameter, double x, double y) {
    const measure::Frame& f = made.part->frame;
    return fmt::format("  bore {:.4g}mm through in {} face at {:.6g}mm from {} and {:.6g}mm from {}",
                       diameter, side_name(f.z), x, side_name(-f.x), y, side_name(-f.y));
}

using Mutants = std::vector<Mutant>;

void add(Mutants& mutants, const Sound& sound, const std::string& kind, const std::string& check, int after,
         const std::string& line) {
    mutants.push_back({sound.name, kind, check, with_line(sound, after, line), after + 1, after + 1});
}

/// Phrases added below the header of a part.
void plant_in_parts(const Sound& sound, Mutants& mutants) {
    for (const joinery::Made* made : plain_parts(sound)) {
        const piece::Part& part = *made->part;
        const int header = sound.line_of(part.span);
        const double wide = part.width.value(), thick = part.thickness.value(), length = part.length.value();
        const measure::Frame& f = part.frame;
        if (length > 2 * wide && !part.outline && part.grain.in_degrees() == 0)
            add(mutants, sound, "turn the grain", "length-across-grain", header, "  grain at 60 degrees");
        if (part.outline || part.grain.in_degrees() != 0 || wide < 24 || thick < 8) continue;
        // A tongue or a tenon beyond the edge or the end is wood, too: there is no edge there to be near.
        const bool edge = made->solid.box.low.y > -0.1, end = made->solid.box.low.x > -0.1;
        if (!edge) continue;
        const double bore = std::min(10.0, std::floor(wide / 4));
        if (const auto x = free_place(*made, bore)) {
            add(mutants, sound, "bore at the edge", "bore-near-edge", header,
                planted_bore(*made, bore, *x, bore / 2 + 0.2 * bore));
            add(mutants, sound, "groove at the edge", "thin-wall", header,
                fmt::format("  groove 4mm wide {:.4g}mm deep in {} face 1mm from {} stopped {:.6g}mm from {} "
                            "and {:.6g}mm "
                            "from {}",
                            thick / 4, side_name(f.z), side_name(-f.y), *x - bore, side_name(-f.x),
                            length - *x - bore, side_name(f.x)));
            add(mutants, sound, "groove nearly through", "thin-wall", header,
                fmt::format("  groove 4mm wide {:.4g}mm deep in {} face {:.6g}mm from {} stopped {:.6g}mm "
                            "from {} and "
                            "{:.6g}mm from {}",
                            thick - 1, side_name(f.z), wide / 2 - 2, side_name(-f.y), *x - bore,
                            side_name(-f.x), length - *x - bore, side_name(f.x)));
        }
        const double from_end = bore / 2 + 0.3 * bore;
        if (end && whole_in(*made, {0, 0, 0}, {3 * bore, wide, thick}))
            add(mutants, sound, "bore at the end", "short-grain-land", header,
                planted_bore(*made, bore, from_end, wide / 2));
    }
}

std::string without_option(const std::string& line, const std::string& pattern) {
    return std::regex_replace(line, std::regex(",? *(?:" + pattern + ")"), "");
}

void change(Mutants& mutants, const Sound& sound, const std::string& kind, const std::string& check,
            int number, const std::string& line) {
    mutants.push_back({sound.name, kind, check, with_changed(sound, number, line), number, number});
}

/// Statements `join`, each changed in its own line.
void plant_in_joints(const Sound& sound, Mutants& mutants) {
    const joinery::Model& model = sound.first().model;
    std::set<int> seen;
    for (const joinery::Joint& joint : model.joints) {
        if (!sound.own(joint.span) || !seen.insert(joint.wanted).second) continue;
        const int number = sound.line_of(joint.span);
        const std::string line = sound.lines[static_cast<std::size_t>(number - 1)];
        const auto next_is_block = [&] {
            return number < static_cast<int>(sound.lines.size()) &&
                   sound.lines[static_cast<std::size_t>(number)].starts_with(" ");
        };
        if (line.back() == ',' || next_is_block()) continue;
        const std::string head = line.substr(0, line.find(" with "));
        if (joint.kind.starts_with("dovetail") || joint.kind.starts_with("half-blind")) {
            const std::string bare = without_option(line, "slope [0-9:]+");
            change(mutants, sound, "steepen the dovetails", "dovetail-slope", number, bare + ", slope 1:3");
            const std::string few = without_option(without_option(line, "pins [0-9.]+"), "[0-9.]+ wide");
            change(mutants, sound, "needles for pins", "fine-pins", number, few + ", pins 1mm");
        }
        if (joint.kind.starts_with("sliding dovetail"))
            change(mutants, sound, "steepen the dovetails", "dovetail-slope", number,
                   without_option(line, "slope [0-9:]+") + ", slope 1:3");
        const bool tenon = joint.kind.starts_with("mortise and tenon");
        const joinery::Made& goes_in = model.made[static_cast<std::size_t>(joint.a)];
        if (tenon && goes_in.part->upright && !goes_in.part->species->is_sheet()) {
            change(mutants, sound, "butt instead of a tenon", "end-grain-glue", number, head + " with glue");
            const bool round =
                std::any_of(joint.sizes.begin(), joint.sizes.end(),
                            [](const joinery::Size& size) { return size.what == "tenon diameter"; });
            if (!round && goes_in.part->thickness.value() > 12)
                change(mutants, sound, "tenon like a veneer", "slight-tenon", number,
                       without_option(line, "[0-9./-]+ thick") + ", 1mm thick");
        }
    }
}

/// What several words of the text mean to the seasons and to the hardware.
void plant_by_words(const Sound& sound, Mutants& mutants) {
    struct Edit {
        std::string kind, check, pattern, by;
    };
    static const std::vector<Edit> edits{
        {"hang it on one hinge", "held-by-hardware", "(hardware \".*hinge.*\"), [23] off", "$1, 1 off"},
        {"screw the top down", "fixed-without-allowance", "^(join top to long apron with) buttons.*",
         "$1 screws, every 150"},
        {"glue the breadboard", "cross-grain-glue", "glued in the middle, pegged", "glued"},
        {"glue a floating bottom", "cross-grain-glue", "^(join floor to long side with groove, 5 deep)",
         "$1"},
    };
    // What is loose may hang on one hinge: it is meant to be lifted off.
    std::set<int> loose_lines;
    for (const piece::Hardware& item : sound.first().piece.hardware)
        for (const int on : item.on)
            if (sound.first().piece.parts[static_cast<std::size_t>(on)].loose)
                loose_lines.insert(sound.line_of(item.span));
    for (int i = 1; i <= static_cast<int>(sound.lines.size()); ++i)
        for (const Edit& edit : edits) {
            if (loose_lines.contains(i)) continue;
            const std::string& line = sound.lines[static_cast<std::size_t>(i - 1)];
            const std::string changed = std::regex_replace(line, std::regex(edit.pattern), edit.by);
            if (changed != line) change(mutants, sound, edit.kind, edit.check, i, changed);
        }
}

/// A part of its own beside the piece, loose, with a fault in itself.
void plant_beside(const Sound& sound, Mutants& mutants) {
    struct Beside {
        std::string kind, check, part;
    };
    static const std::vector<Beside> parts{
        {"bend a leg against its grain", "slope-of-grain",
         "part planted leg\n  wood white oak, quarter sawn\n  size 30mm x 240mm x 900mm, runs deep, face "
         "side top\n"
         "  left at right + 700mm, front at front, bottom at 0mm, loose\n  outline\n    start 0mm, 0mm\n    "
         "line to 450mm, 0mm\n"
         "    line to 900mm, 180mm\n    line to 900mm, 240mm\n    line to 442mm, 60mm\n    line to 0mm, "
         "60mm\n    close"},
        {"an ear of short grain", "short-grain",
         "part planted ear\n  wood white oak, quarter sawn\n  size 12mm x 200mm x 300mm, runs across, face "
         "side top\n"
         "  left at right + 700mm, front at front, bottom at 0mm, loose\n  outline\n    start 0mm, 0mm\n    "
         "line to 300mm, 0mm\n"
         "    line to 300mm, 60mm\n    line to 170mm, 60mm\n    line to 165mm, 200mm\n    line to 135mm, "
         "200mm\n"
         "    line to 130mm, 60mm\n    line to 0mm, 60mm\n    close"},
        {"a lid of one curve", "cupping",
         "part planted lid\n  wood white oak, flat sawn\n  size 20mm x 1100mm x 1200mm, runs across, face "
         "side "
         "top\n"
         "  left at right + 700mm, front at front, bottom at 0mm, loose\n  glued up of staves at most 110mm "
         "wide"},
        {"a board that nobody sells", "stock-too-small",
         "part planted board\n  wood white oak, quarter sawn\n  size 20mm x 340mm x 500mm, runs across, face "
         "side top\n"
         "  left at right + 700mm, front at front, bottom at 0mm, loose"},
        {"two by four at its name", "nominal-for-actual",
         "part planted stud\n  wood eastern white pine, flat sawn\n  size 2in x 4in x 24in, runs across, "
         "face side top\n"
         "  left at right + 700mm, front at front, bottom at 0mm, loose"},
        {"a part in the air", "unconnected-part",
         "part planted block\n  wood white oak, quarter sawn\n  size 20mm x 40mm x 100mm, runs across, face "
         "side top\n"
         "  left at right + 700mm, front at front, bottom at 0mm"},
        {"a board too thin to plane", "machine-limit",
         "part planted slip\n  wood white oak, quarter sawn\n  size 3mm x 40mm x 100mm, runs across, face "
         "side top\n"
         "  left at right + 700mm, front at front, bottom at 0mm, loose"},
        {"a rail that breaks", "sagging",
         "part planted post, left and right\n  wood white oak, rift sawn\n  size 40mm x 40mm x 400mm, "
         "stands\n"
         "  left at left, front at front - 2000mm, bottom at 0mm, loose\npart planted rail\n  wood white "
         "oak, quarter sawn\n"
         "  size 20mm x 40mm, runs across, face side front, carries 3000 kg in the middle\n"
         "  between planted post, bottom at 200mm, centred deep on planted post\n"
         "join planted rail to planted post with mortise and tenon"},
        {"a wood that rots", "perishable-wood",
         "part planted step\n  wood European beech, quarter sawn\n  size 20mm x 60mm x 300mm, runs across, "
         "face side top\n"
         "  left at right + 700mm, front at front, bottom at 0mm, loose"},
        {"accept what is not there", "needless-acceptance",
         "accept overlapping-parts because \"it was so once\""},
    };
    const int count = static_cast<int>(sound.lines.size());
    for (const Beside& one : parts) {
        if (one.check == "perishable-wood" && sound.first().piece.climate.dampest.in_percent() < 14) continue;
        std::string text = sound.bytes;
        if (text.empty() || text.back() != '\n') text += "\n";
        const int added = static_cast<int>(std::count(one.part.begin(), one.part.end(), '\n')) + 1;
        mutants.push_back(
            {sound.name, one.kind, one.check, text + one.part + "\n", count + 1, count + added + 1});
    }
}

/// A case in which a check speaks, made as a recipe beside a sound table: what it finds alone it must find
/// there too. Left out: cases with units or a shop of their own, and checks that look at the piece as a whole
/// (tipping) or at its climate (perishable-wood).
void plant_cases(const Sound& host, Mutants& mutants) {
    static const std::regex of_the_piece("^(piece|units|climate|made at|shop) .*"),
        told_units("^units (?!mm).*|^shop .*");
    const std::string head = "climate 6% to 10% moisture\n" + host.bytes + "\nrecipe planted thing\n";
    const int first = static_cast<int>(std::count(head.begin(), head.end(), '\n')) + 1;
    for (const checks::Check& check : checks::all()) {
        if (check.name == "tipping" || check.name == "perishable-wood") continue;
        for (const Case& one : cases_in(case_file_of(std::string(check.name)))) {
            if (one.expected.empty() || one.expected.front().severity == "note") continue;
            std::string body;
            bool fits = true;
            for (const std::string& line : lines_of(one.text)) {
                fits = fits && !std::regex_match(line, told_units);
                if (!line.starts_with("#") && !std::regex_match(line, of_the_piece))
                    body += "  " + line + "\n";
            }
            if (!fits) continue;
            const int lines = static_cast<int>(std::count(body.begin(), body.end(), '\n'));
            mutants.push_back(
                {host.name, "a case beside a table", one.expected.front().name,
                 head + body +
                     "make planted from planted thing\n  left at right + 900mm\n  front at front\n"
                     "  bottom at floor\n",
                 first, first + lines});
        }
    }
}

/// What a planted fault rightly brings with it.
const std::map<std::string, std::set<std::string>>& consequent() {
    static const std::map<std::string, std::set<std::string>> all{
        // A part that moves along its length instead of across it is held and captured by joints that were
        // laid out
        // for the other way; its slots, gaps and tenons are wrong too, and so is its strength as a shelf.
        {"turn the grain",
         {"cross-grain-glue", "captured-panel", "fixed-without-allowance", "slide-without-room",
          "tight-opening", "opening-miter", "sagging", "short-grain", "joint-across-grain", "end-grain-glue",
          "screws-in-end-grain"}},
        // What hangs at the butt in place of its tenon may now stand free or carry its load on a longer span.
        {"butt instead of a tenon", {"sagging", "held-at-one-end", "thin-wall"}},
        // A wedge-thin tenon may also be shorter than it should be for its own width.
        {"tenon like a veneer", {}},
        // A hole at the end takes the wood beside a tenon, too.
        {"bore at the end", {"bore-near-edge", "short-grain"}},
        {"bore at the edge", {"short-grain"}},
        // A shelf that a groove all but cuts through cannot carry its load.
        {"groove nearly through", {"sagging"}},
        {"steepen the dovetails", {"fine-pins"}},
        // With pins so thin the half pins, half as thick, are too thin as well: told at the same joint.
        {"needles for pins", {}},
        // The glue that holds the panel also keeps its pegs from sliding.
        {"glue the breadboard", {"slide-without-room", "fixed-without-allowance"}},
        {"screw the top down", {}},
        // It stands beside the table, joined to nothing; a case may have several findings, marked there; and
        // the
        // table's shop has a planer that does not go down to a facing.
        {"a case beside a table",
         {"unconnected-part", "cross-grain-glue", "fixed-without-allowance", "bore-near-edge", "thin-wall",
          "machine-limit"}},
        {"a rail that breaks", {"tipping"}},
        {"a lid of one curve", {}},
    };
    return all;
}

/// Whether every size of the mutant has the finding in its place; what else counts is told.
struct Verdict {
    bool compiles = true, found = false;
    std::vector<std::string> others;
};

Verdict judge(const Mutant& mutant) {
    const auto study = checks_tests::study(mutant.sample, mutant.text, samples);
    Verdict verdict;
    const auto argued = consequent().find(mutant.kind);
    for (const auto& size : study->sizes) {
        bool here = false;
        for (const findings::Finding& finding : size->findings) {
            if (finding.severity == findings::Severity::error) verdict.compiles = false;
            if (finding.accepted_because) continue;
            const int line = study->texts[finding.span.file].place(finding.span.begin).line;
            const bool in_place = finding.span.file == study->project.main && line >= mutant.first_line &&
                                  line <= mutant.last_line;
            if (finding.name == mutant.check && in_place) {
                here = true;
                continue;
            }
            if (finding.severity < findings::Severity::caution) continue;
            if (argued != consequent().end() && argued->second.contains(finding.name)) continue;
            verdict.others.push_back(fmt::format("line {}: {} [{}]", line, finding.message, finding.name));
        }
        verdict.found = here;
        if (!here) break;
    }
    return verdict;
}

std::vector<Sound> sound_pieces() {
    std::vector<Sound> all;
    for (const std::string& path : pieces_in(samples)) {
        const std::string name = path.substr(path.rfind('/') + 1);
        if (name == "shop.fleck") continue;
        Sound sound;
        sound.name = name;
        sound.bytes = bytes_of(path);
        sound.lines = lines_of(sound.bytes);
        sound.study = study(name, sound.bytes, samples);
        all.push_back(std::move(sound));
    }
    return all;
}

std::vector<Mutant> all_mutants() {
    std::vector<Mutant> mutants;
    for (const Sound& sound : sound_pieces()) {
        plant_in_parts(sound, mutants);
        plant_in_joints(sound, mutants);
        plant_by_words(sound, mutants);
        plant_beside(sound, mutants);
        if (sound.name == "side-table.fleck") plant_cases(sound, mutants);
    }
    return mutants;
}

} // namespace

TEST_CASE("a fault planted in a sound piece is found in its place and nothing else is") {
    const std::vector<Mutant> mutants = all_mutants();
    std::map<std::string, int> kinds;
    int planted = 0;
    for (const Mutant& mutant : mutants) {
        const Verdict verdict = judge(mutant);
        INFO(mutant.sample << ", line " << mutant.first_line << ": " << mutant.kind << " -> "
                           << mutant.check);
        INFO(lines_of(mutant.text)[static_cast<std::size_t>(mutant.first_line - 1)]);
        // What joinery refuses outright is no mutant of the checks.
        if (!verdict.compiles) continue;
        ++planted;
        ++kinds[mutant.check];
        CHECK(verdict.found);
        for (const std::string& other : verdict.others) {
            INFO("also: " << other);
            CHECK(other.empty());
        }
    }
    for (const auto& [check, count] : kinds) UNSCOPED_INFO(check << ": " << count);
    CHECK(planted >= 300);
}
