// See wood_question.hpp. Movements come from the wood room; the sentence is put together here.

#include "commands/wood_question.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>
#include <vector>

#include <fmt/format.h>

#include "wood/movement.hpp"

namespace rayfleck::commands {
namespace {

using wood::Species;

constexpr double usual_celsius = 20;
constexpr double widest_mm = 10000;

/// A number with what stands behind it, attached or as the next word.
struct Told {
    double value = 0;
    std::string unit;
};

struct Question {
    std::optional<Told> width;
    double width_mm = 0;
    std::optional<double> rings; ///< degrees; nothing: not told
    const Species* species = nullptr;
    std::string misread_wood; ///< a word that may be several woods
    std::vector<double> percents;
    bool moisture = false;
    std::optional<double> celsius;
};

std::string lower(const std::string& words) {
    std::string out = words;
    for (char& c : out)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c + 32);
    return out;
}

/// Words, without punctuation at their ends; a hyphen parts words too, but not within a number.
std::vector<std::string> words_of(const std::string& text) {
    std::vector<std::string> words;
    std::string word;
    const auto end_word = [&] {
        while (!word.empty() &&
               (word.back() == '?' || word.back() == ',' || word.back() == '.' || word.back() == ':'))
            word.pop_back();
        if (!word.empty()) words.push_back(word);
        word.clear();
    };
    for (const char c : lower(text)) {
        if (c == ' ' || c == '\t' || c == '\n' || c == '-')
            end_word();
        else
            word += c;
    }
    end_word();
    return words;
}

std::optional<Told> number_at(const std::vector<std::string>& words, std::size_t at) {
    const std::string& word = words[at];
    Told told;
    const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), told.value);
    if (error != std::errc()) return std::nullopt;
    told.unit = std::string(end, word.data() + word.size());
    if (told.unit.empty() && at + 1 < words.size()) told.unit = words[at + 1];
    return told;
}

std::optional<double> millimetres(const Told& told) {
    struct Unit {
        std::string_view word;
        double mm;
    };
    constexpr Unit units[] = {{"mm", 1},       {"cm", 10},     {"m", 1000},      {"in", 25.4},
                              {"inch", 25.4},  {"\"", 25.4},   {"inches", 25.4}, {"ft", 304.8},
                              {"feet", 304.8}, {"foot", 304.8}};
    for (const Unit& unit : units)
        if (told.unit == unit.word) return told.value * unit.mm;
    return std::nullopt;
}

void read_wood(const std::vector<std::string>& words, const wood::OwnWoods& own, Question& question) {
    for (std::size_t length = std::min<std::size_t>(words.size(), 4); length > 0; --length)
        for (std::size_t first = 0; first + length <= words.size(); ++first) {
            const std::string name = fmt::format(
                "{}", fmt::join(words.begin() + static_cast<std::ptrdiff_t>(first),
                                words.begin() + static_cast<std::ptrdiff_t>(first + length), " "));
            if (const Species* species = wood::find(name, own)) {
                question.species = species;
                return;
            }
            if (length == 1 && question.misread_wood.empty() && wood::meanings(name).size() > 1 &&
                name.size() > 2)
                question.misread_wood = name;
        }
}

Question read(const std::string& text, const wood::OwnWoods& own) {
    const std::vector<std::string> words = words_of(text);
    Question question;
    read_wood(words, own, question);
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string& word = words[i];
        if (word == "flat" || word == "flatsawn") question.rings = 0;
        if (word == "rift" || word == "riftsawn") question.rings = 45;
        if (word == "quarter" || word == "quartersawn") question.rings = 90;
        if (word == "moisture") question.moisture = true;
        const std::optional<Told> told = number_at(words, i);
        if (!told) continue;
        if (const auto mm = millimetres(*told)) {
            question.width = told;
            question.width_mm = *mm;
        } else if (told->unit == "%" || told->unit == "percent") {
            question.percents.push_back(told->value);
        } else if (told->unit == "c" || told->unit == "\u00b0c") {
            question.celsius = told->value;
        } else if (told->unit == "f" || told->unit == "\u00b0f") {
            question.celsius = (told->value - 32) * 5 / 9;
        } else if (told->unit.starts_with("degree") || told->unit == "deg" || told->unit == "\u00b0") {
            question.rings = told->value;
        } else if (told->unit == "to" || told->unit == "and") {
            question.percents.push_back(told->value); // `from 35 to 65 %`
        }
    }
    return question;
}

/// What is missing or out of its range; empty when nothing is.
std::string objection(const Question& question) {
    if (question.species == nullptr)
        return question.misread_wood.empty()
                   ? "which wood? `rayfleck wood` lists them"
                   : fmt::format("{} may mean {}", question.misread_wood,
                                 fmt::join(wood::meanings(question.misread_wood), " or "));
    if (!question.width) return "how wide is the board? write 300 mm or 12 in";
    if (!(question.width_mm > 0 && question.width_mm <= widest_mm)) return "no board is as wide as that";
    if (question.percents.size() != 2) return "from which percentage to which? write from 35 % to 65 %";
    for (const double percent : question.percents)
        if (!(percent >= 0 && percent <= 100))
            return fmt::format("{:.6g} % lies outside 0 to 100 %", percent);
    if (question.celsius && !(*question.celsius >= -30 && *question.celsius <= 60))
        return "furniture lives between -30 and 60 C";
    return "";
}

std::string movement_words(double mm, const Question& question) {
    const std::string amount = question.width->unit == "in" || question.width->unit.starts_with("inch") ||
                                       question.width->unit == "\"" || question.width->unit == "ft" ||
                                       question.width->unit == "feet" || question.width->unit == "foot"
                                   ? fmt::format("{:.3f} in", std::abs(mm) / 25.4)
                                   : fmt::format("{:.1f} mm", std::abs(mm));
    return amount;
}

} // namespace

bool asks_a_question(const std::string& words) {
    return std::any_of(words.begin(), words.end(), [](char c) { return c >= '0' && c <= '9'; });
}

Status answer(const std::string& words, const wood::OwnWoods& own, Terminal& terminal) {
    const Question question = read(words, own);
    if (const std::string missing = objection(question); !missing.empty()) {
        terminal.say(fmt::format("rayfleck: {}\n", missing));
        return Status::failure;
    }
    const double celsius = question.celsius.value_or(usual_celsius);
    const auto moisture = [&](double percent) {
        return question.moisture ? measure::Moisture::percent(percent) : wood::emc(percent / 100, celsius);
    };
    const measure::Moisture from = moisture(question.percents[0]), to = moisture(question.percents[1]);
    const measure::Length width = measure::Length::from_geometry(question.width_mm);
    const Species& species = *question.species;
    const auto moves = [&](double rings) {
        return wood::movement(width, from, to, measure::Angle::degrees(rings), species).value();
    };
    const double rings = question.rings.value_or(0), moved = moves(rings);
    std::string sawn(wood::text(wood::sawn_at(measure::Angle::degrees(rings))));
    if (rings != 0 && rings != 45 && rings != 90) sawn = fmt::format("{:.3g} degrees to the rings", rings);
    std::string out = fmt::format(
        "A board of {}{}, {:.6g} {} wide, gets {} {}\nfrom {:.3g} % to {:.3g} % {}.\n", species.trade_name,
        species.is_sheet() ? "" : ", " + sawn, question.width->value, question.width->unit,
        movement_words(moved, question), moved >= 0 ? "wider" : "narrower", question.percents[0],
        question.percents[1], question.moisture ? "moisture" : fmt::format("humidity at {:.3g} C", celsius));
    if (!question.moisture)
        out +=
            fmt::format("Left long enough in that air, its wood goes from {:.1f} % to {:.1f} % moisture.\n",
                        from.in_percent(), to.in_percent());
    if (!species.is_sheet()) {
        std::vector<std::string> others;
        for (const auto& [degrees, name] : {std::pair{0.0, "flat"}, {45.0, "rift"}, {90.0, "quarter"}})
            if (std::abs(degrees - rings) > 1)
                others.push_back(fmt::format("{} sawn {}", name, movement_words(moves(degrees), question)));
        out += fmt::format("The same board {}.\n", fmt::join(others, ", "));
        if (!question.rings)
            out += "Nothing was told of how it is sawn, so flat sawn was taken, which moves most.\n";
    }
    out += fmt::format("By {}; the handbook expects errors of about {:.0f} %, and boards differ.\n",
                       wood::movement_source(species), wood::movement_error.value);
    terminal.print(out);
    return Status::sound;
}

} // namespace rayfleck::commands
