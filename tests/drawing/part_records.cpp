// A part's drawing says all that is needed to make it, and says it once.
//
// Every distinct part of every sample is made again from the records of its cell alone and compared with the
// model's solid; the figures are held against what is printed; the strings and the rows of the table against
// each other.

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "drawing/draw.hpp"
#include "rebuilt.hpp"
#include "studied.hpp"

using namespace rayfleck;
using namespace rayfleck::testing;

namespace {

struct DrawnSample {
    std::unique_ptr<Studied> studied;
    drawing::Set set;
    /// What belongs to a row of the cut list, by its name and the sheet on which it stands.
    std::map<std::string, std::vector<drawing::CutRecord>> cuts;
    std::map<std::string, std::vector<drawing::DimensionRecord>> strings;
    std::map<std::string, const drawing::Sheet*> sheet_of;
};

DrawnSample drawn_sample(const std::string& file) {
    DrawnSample sample;
    sample.studied = studied_sample(file);
    if (!sample.studied) return sample;
    const Studied& s = *sample.studied;
    sample.set = drawing::draw({s.model, s.findings, s.cut_list}, {});
    for (const drawing::Sheet& sheet : sample.set.sheets) {
        for (const drawing::CutRecord& record : sheet.cuts) {
            sample.cuts[record.part].push_back(record);
            sample.sheet_of[record.part] = &sheet;
        }
    }
    for (const drawing::Sheet& sheet : sample.set.sheets)
        for (const drawing::DimensionRecord& record : sheet.dimensions)
            if (sample.sheet_of.contains(record.part) &&
                (record.axis == 'L' || record.axis == 'W' || record.axis == 'T'))
                sample.strings[record.part].push_back(record);
    return sample;
}

std::string all_words(const drawing::Sheet& sheet) {
    std::string all;
    for (const drawing::Item& item : sheet.items)
        if (const auto* text = std::get_if<drawing::Text>(&item)) all += text->words + " ";
    return all;
}

/// Words that stand for a size or place of the blank itself.
bool is_word(const std::string& shown) {
    static const std::set<std::string> words{"whole",   "both ends", "both edges", "both sides", "near end",
                                             "far end", "face edge", "back edge",  "face side",  "back"};
    return words.contains(shown);
}

/// Places along one direction, joined by what is said of them.
class Joined {
  public:
    /// false when both were joined before
    bool join(double a, double b) {
        const std::size_t p = root(place(a)), q = root(place(b));
        if (p == q) return false;
        up_[p] = q;
        return true;
    }
    bool are(double a, double b) { return root(place(a)) == root(place(b)); }

  private:
    std::size_t place(double at) {
        for (std::size_t i = 0; i < at_.size(); ++i)
            if (std::abs(at_[i] - at) < 0.011) return i;
        at_.push_back(at);
        up_.push_back(up_.size());
        return up_.size() - 1;
    }
    std::size_t root(std::size_t i) const {
        while (up_[i] != i) i = up_[i];
        return i;
    }
    std::vector<double> at_;
    std::vector<std::size_t> up_;
};

const char* sizes[3] = {"along", "across", "through"};
const char* places[3] = {"from near end", "from face edge", "from face side"};

} // namespace

TEST_CASE("every part of every sample can be made again from its drawing alone") {
    for (const std::string& file : sample_files()) DYNAMIC_SECTION(file) {
            const DrawnSample sample = drawn_sample(file);
            REQUIRE(sample.studied);
            for (const cutlist::Row& row : sample.studied->cut_list.rows) {
                INFO(row.reference << " " << row.name);
                const auto cuts = sample.cuts.find(row.name);
                REQUIRE(cuts != sample.cuts.end());
                const joinery::Made& made =
                    sample.studied->model.made[static_cast<std::size_t>(row.parts.front())];
                const Rebuilt again = rebuilt(cuts->second);
                for (const std::string& fault : again.faults) FAIL_CHECK(fault);
                CHECK(again.solid.open_edges == 0);
                CHECK(std::abs(again.volume - made.solid.volume) < 1e-6 * made.solid.volume);
                // As many bodies, and the same box round it, in whatever frame.
                CHECK(again.solid.bodies == made.solid.bodies);
                for (int axis = 0; axis < 3; ++axis)
                    CHECK(again.solid.box.high[axis] - again.solid.box.low[axis] ==
                          Approx(made.solid.box.high[axis] - made.solid.box.low[axis]).margin(1e-3));
            }
        }
}

TEST_CASE("a part made from a drawing with a wrong or a missing row is another part") {
    // The test above must be able to fail.
    const DrawnSample sample = drawn_sample("wall-cabinet.fleck");
    REQUIRE(sample.studied);
    int spoilt = 0;
    for (const auto& [part, cuts] : sample.cuts) {
        const double sound = rebuilt(cuts).volume;
        for (std::size_t c = 0; c < cuts.size(); ++c) {
            if (cuts[c].form == drawing::CutForm::blank || cuts[c].form == drawing::CutForm::tongue) continue;
            INFO(part << " without " << cuts[c].letter << " " << cuts[c].word);
            std::vector<drawing::CutRecord> without = cuts;
            without.erase(without.begin() + static_cast<std::ptrdiff_t>(c));
            CHECK(std::abs(rebuilt(without).volume - sound) > 1e-6 * sound);
            for (std::size_t f = 0; f < cuts[c].figures.size(); ++f) {
                if (cuts[c].form != drawing::CutForm::hollow || cuts[c].figures[f].what != "through")
                    continue;
                std::vector<drawing::CutRecord> wrong = cuts;
                wrong[c].figures[f].value *= 0.9;
                CHECK(std::abs(rebuilt(wrong).volume - sound) > 1e-6 * sound);
                ++spoilt;
            }
        }
    }
    CHECK(spoilt > 0);
}

TEST_CASE("every cut of a part stands in its table") {
    for (const std::string& file : sample_files()) DYNAMIC_SECTION(file) {
            const DrawnSample sample = drawn_sample(file);
            REQUIRE(sample.studied);
            for (const cutlist::Row& row : sample.studied->cut_list.rows) {
                INFO(row.reference << " " << row.name);
                const joinery::Made& made =
                    sample.studied->model.made[static_cast<std::size_t>(row.parts.front())];
                // Bores, hollows, mouldings: as many as the model has, those asked for twice at one place
                // once.
                std::map<std::string, int> in_model, in_table;
                std::set<std::string> seen;
                for (std::size_t c = 0; c < made.cuts.size(); ++c) {
                    const piece::Cut& cut = made.cuts[c];
                    if (const auto* bore = std::get_if<piece::BoreCut>(&cut.shape)) {
                        if (seen.insert(fmt::format("{} {:.2f} {:.2f} {:.2f} {:.3f}", bore->face.axis,
                                                    bore->centre.x, bore->centre.y, bore->centre.z,
                                                    bore->diameter))
                                .second)
                            ++in_model["all bores"];
                    }
                    if (std::holds_alternative<piece::EdgeCut>(cut.shape)) ++in_model["all arrises"];
                    if (cut.word == "mortise" || cut.word == "groove" || cut.word == "dado" ||
                        cut.word == "finger socket" || cut.word == "dovetail socket")
                        ++in_model[cut.word];
                }
                for (const drawing::CutRecord& record : sample.cuts.at(row.name)) {
                    if (record.form == drawing::CutForm::bore) in_table["all bores"] += record.count;
                    if (record.form == drawing::CutForm::edge) in_table["all arrises"] += record.count;
                    if (in_model.contains(record.word)) in_table[record.word] += record.count;
                }
                for (const auto& [word, count] : in_model) {
                    INFO(word);
                    CHECK(in_table[word] == count);
                }
            }
        }
}

TEST_CASE("each figure of a part is the rounding of its number and stands on the sheet") {
    for (const std::string& file : sample_files()) DYNAMIC_SECTION(file) {
            const DrawnSample sample = drawn_sample(file);
            REQUIRE(sample.studied);
            const measure::Manner& manner = sample.studied->piece.manner;
            const auto rounded = [&](double mm) {
                return measure::text(measure::Length::from_geometry(mm), manner);
            };
            for (const auto& [part, cuts] : sample.cuts) {
                const std::string words = all_words(*sample.sheet_of.at(part));
                for (const drawing::CutRecord& record : cuts)
                    for (const drawing::CutFigure& figure : record.figures) {
                        INFO(part << ", " << record.letter << " " << record.word << ", " << figure.what
                                  << ": " << figure.shown);
                        CHECK(words.find(figure.shown) != std::string::npos);
                        if (is_word(figure.shown)) continue;
                        std::string bare = figure.shown;
                        const bool in_parentheses = bare.front() == '(' && bare.back() == ')';
                        CHECK(in_parentheses == figure.auxiliary);
                        if (in_parentheses) bare = bare.substr(1, bare.size() - 2);
                        if (bare.size() > 2 && bare.substr(bare.size() - 2) == "°")
                            CHECK(bare == fmt::format("{:.1f}°", std::abs(figure.value)));
                        else if (figure.what == "slope")
                            CHECK(bare.starts_with("1:"));
                        else if (figure.what == "radius")
                            CHECK(bare == "R" + rounded(figure.value));
                        else if (figure.times > 1)
                            CHECK(bare == rounded(figure.value) + fmt::format(" + {}× {}", figure.times - 1,
                                                                              rounded(figure.pitch)));
                        else
                            CHECK(bare == rounded(figure.value));
                    }
            }
        }
}

TEST_CASE("what the strings of a part tell stands in its table in parentheses, all else without") {
    for (const std::string& file : sample_files()) DYNAMIC_SECTION(file) {
            const DrawnSample sample = drawn_sample(file);
            REQUIRE(sample.studied);
            for (const cutlist::Row& row : sample.studied->cut_list.rows) {
                INFO(row.reference << " " << row.name);
                const joinery::Made& made =
                    sample.studied->model.made[static_cast<std::size_t>(row.parts.front())];
                const bool edge_high = made.part->face_edge_high;
                // Own frame to the gauge's, one axis at a time.
                const auto gauged = [&](int axis, double at) {
                    if (axis == 0) return at - made.blank.low.x;
                    if (axis == 1) return edge_high ? made.blank.high.y - at : at - made.blank.low.y;
                    return made.blank.high.z - at;
                };
                std::array<Joined, 3> strings;
                for (const drawing::DimensionRecord& r : sample.strings.at(row.name)) {
                    if (r.auxiliary) continue;
                    const int axis = r.axis == 'L' ? 0 : r.axis == 'W' ? 1 : 2;
                    for (int i = 0; i < r.times; ++i) {
                        const double step = (r.to - r.from) / r.times;
                        INFO(r.axis << " " << r.shown);
                        CHECK(strings[static_cast<std::size_t>(axis)].join(
                            gauged(axis, r.from + i * step), gauged(axis, r.from + (i + 1) * step)));
                    }
                }
                for (const drawing::CutRecord& record : sample.cuts.at(row.name))
                    for (int axis = 0; axis < 3; ++axis) {
                        std::vector<double> at;
                        for (const drawing::CutFigure& f : record.figures)
                            if (f.what == places[axis])
                                for (int i = 0; i < f.times; ++i) at.push_back(f.value + i * f.pitch);
                        if (at.empty()) at = {0};
                        auto& told = strings[static_cast<std::size_t>(axis)];
                        for (const drawing::CutFigure& f : record.figures) {
                            if (is_word(f.shown)) continue;
                            INFO(record.letter << " " << record.word << ", " << f.what << " " << f.shown);
                            if (f.what == places[axis] && (f.times > 1 || f.value > 0.011)) {
                                bool all = true;
                                for (int i = 0; i < f.times; ++i)
                                    all = all && told.are(0, f.value + i * f.pitch);
                                CHECK(all == f.auxiliary);
                            }
                            if (f.what == sizes[axis]) {
                                bool all = true;
                                for (const double from : at) all = all && told.are(from, from + f.value);
                                CHECK(all == f.auxiliary);
                            }
                        }
                    }
            }
        }
}

TEST_CASE("each row of a table of cuts has its letter in the views of its part") {
    for (const std::string& file : sample_files()) DYNAMIC_SECTION(file) {
            const DrawnSample sample = drawn_sample(file);
            REQUIRE(sample.studied);
            for (const drawing::Sheet& sheet : sample.set.sheets) {
                std::map<std::string, int> rows, letters;
                for (const drawing::CutRecord& record : sheet.cuts)
                    if (!record.letter.empty()) ++rows[record.letter];
                for (const drawing::Item& item : sheet.items)
                    if (const auto* text = std::get_if<drawing::Text>(&item)) ++letters[text->words];
                for (const auto& [letter, count] : rows) {
                    INFO(sheet.title << ": " << letter);
                    // Once in the table, at least once in a view.
                    CHECK(letters[letter] >= 2 * count);
                }
            }
        }
}

TEST_CASE(
    "slanting hollows and bores in a sawn end are told as they are set out, not by the box round them") {
    // Hand calculation on the steps, whose sides lean 12°: the middle of the low tread lies 200 - 27 / 2
    // above the floor and, level, 10 + 105 / 2 behind the leaning front edge, so along that edge at 186.5 /
    // cos 12° + 62.5 sin 12°.
    const DrawnSample sample = drawn_sample("library-steps.fleck");
    const double lean = 12 * std::acos(-1.0) / 180;
    const auto of = [&](const std::string& part, const std::string& word) {
        std::vector<const drawing::CutRecord*> found;
        for (const drawing::CutRecord& r : sample.cuts.at(part))
            if (r.word.find(word) != std::string::npos) found.push_back(&r);
        return found;
    };
    const auto value = [](const drawing::CutRecord& r, const std::string& what) {
        for (const drawing::CutFigure& f : r.figures)
            if (f.what == what) return f.value;
        return -1.0;
    };
    const auto dados = of("side", "dado");
    REQUIRE(dados.size() == 1);
    CHECK(value(*dados[0], "true width") == Approx(27));
    CHECK(value(*dados[0], "turned") == Approx(12));
    CHECK(value(*dados[0], "from near end") == Approx(186.5 / std::cos(lean) + 62.5 * std::sin(lean)));
    CHECK(value(*dados[0], "along") == -1);
    for (const drawing::CutRecord& r : sample.cuts.at("side")) {
        if (r.form != drawing::CutForm::bore) continue;
        CHECK(value(r, "deep") == Approx(16));
        CHECK(value(r, "from face edge") == -1);
        CHECK(value(r, "on the sawn end across") > 30);
    }
}
