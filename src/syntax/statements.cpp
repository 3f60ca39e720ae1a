// Reading statements, one logical line with its block after the other.
//
// The first word chooses the statement. A misspelt one is reported and taken for the word that was probably
// meant, so that its block is still read; an unknown one is left out with its block. A block under a
// statement that takes none is reported once and its lines are read as statements of their own.

#include "syntax/statements.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "grammar/forms.hpp"
#include "syntax/build_statement.hpp"
#include "syntax/phrases.hpp"

namespace rayfleck::syntax {
namespace {

struct StatementWord {
    std::string_view word;
    BuildStatement build;
    bool takes_block;
    bool in_recipe;
};

constexpr StatementWord statement_words[] = {
    {"piece", build_piece, false, false},       {"units", build_units, false, false},
    {"climate", build_climate, false, false},   {"made", build_made, false, false},
    {"shop", build_shop, false, false},         {"bring", build_bring, false, false},
    {"value", build_value, false, true},        {"sizes", build_sizes_table, true, false},
    {"require", build_require, false, true},    {"rod", build_rod, true, true},
    {"part", build_part, true, true},           {"join", build_join, true, true},
    {"hardware", build_hardware, false, true},  {"note", build_piece_note, false, true},
    {"accept", build_accept, false, true},      {"recipe", build_recipe, true, false},
    {"takes", build_takes, false, true},        {"make", build_make, true, true},
    {"kerf", build_kerf, false, false},         {"allow", build_allow, false, false},
    {"limit", build_limit, false, false},       {"title", build_title, false, false},
    {"sheet", build_sheet, false, false},       {"projection", build_projection, false, false},
    {"board", build_board, false, false},       {"price", build_price, false, false},
    {"currency", build_currency, false, false}, {"keep", build_keep, false, false},
    {"match", build_match, false, true},        {"wood", build_own_wood, false, false},
};

const StatementWord* statement_word(std::string_view word) {
    for (const StatementWord& one : statement_words)
        if (one.word == word) return &one;
    return nullptr;
}

const std::vector<std::string>& all_words() {
    static const std::vector<std::string> words = [] {
        std::vector<std::string> out;
        for (const StatementWord& one : statement_words) out.emplace_back(one.word);
        return out;
    }();
    return words;
}

Statement broken(const Reading& reading, const Line& line, std::string_view word) {
    Statement out;
    out.header = reading.span(line.begin, line.end);
    out.span = out.header;
    out.says = BrokenStatement{std::string(word)};
    return out;
}

void read_statement(const Reading& reading, const Line& line, bool in_recipe, std::vector<Statement>& out) {
    const std::string_view word = token_at(reading.text, line.begin, line.end);
    const StatementWord* rule = statement_word(word);
    std::string meant(word);
    // A recipe tells no wood of the shop: there the word can only be a phrase that lost its part.
    if (rule && in_recipe && !rule->in_recipe && begins_phrase(word)) rule = nullptr;
    if (!rule && line.readable) {
        if (begins_phrase(word)) {
            reading.report.error("phrase-out-of-place", line.begin, line.begin + word.size(),
                                 "'" + std::string(word) +
                                     "' is a phrase of a part and stands here by itself",
                                 "set it below its part, deeper than the line that begins with 'part'");
        } else {
            meant = reading.report.unknown_word(
                line.begin, line.end, all_words(), "begins no statement",
                "a statement begins with a word such as piece, units, rod, part, join, value, note");
            rule = statement_word(meant);
        }
    }
    if (!rule) {
        out.push_back(broken(reading, line, word));
        return;
    }
    if (in_recipe && !rule->in_recipe) {
        reading.report.error("out-of-place", line.begin, line.begin + word.size(),
                             "'" + meant + "' cannot stand in a recipe",
                             "write it at the margin of the file");
    } else if (!in_recipe && meant == "takes") {
        reading.report.error("out-of-place", line.begin, line.begin + word.size(),
                             "'takes' stands only in a recipe",
                             "set it below the line that begins with 'recipe', or use 'value'");
    }

    Statement statement = broken(reading, line, meant);
    if (!line.block.empty()) statement.span.end = std::max(statement.span.end, line.block.back().end);
    Strays strays{in_recipe};
    if (!line.block.empty() && !rule->takes_block) {
        reading.report.error("indentation", line.block.front().begin, line.block.front().begin + 1,
                             "this line stands deeper than '" + meant + "', which takes no block",
                             "set it back to the margin");
        statement.span.end = line.end;
        read_statements(reading, line.block, in_recipe, strays.statements);
    }
    const std::size_t word_end = line.begin + word.size();
    const std::size_t first_end = line.readable ? line.stretches.front().end : line.end;
    const Header header{
        line, rule->word, word_end, {word_end, std::max(word_end, first_end)}, {word_end, line.end}, strays};
    statement.says = rule->build(reading, header);
    out.push_back(std::move(statement));
    for (Statement& stray : strays.statements) out.push_back(std::move(stray));
}

} // namespace

bool begins_statement(std::string_view word) { return statement_word(word) != nullptr; }

std::string_view form_of_statement(std::string_view word) {
    for (const grammar::WrittenForm& form : grammar::statement_forms)
        if (form.word == word) return form.form;
    return {};
}

std::optional<Piece> matched(const Reading& reading, const Header& header, Entry entry, Stretch stretch) {
    if (!header.line.readable) return std::nullopt;
    Matched found = match(entry, reading.text, stretch.begin, stretch.end, stretch.begin);
    if (found.missed) {
        reading.report.missed(*found.missed, stretch.end, form_of_statement(header.word));
        return std::nullopt;
    }
    return std::move(found.whole);
}

void read_statements(const Reading& reading, const std::vector<Line>& lines, bool in_recipe,
                     std::vector<Statement>& out) {
    for (const Line& line : lines) {
        if (reading.report.full()) return;
        read_statement(reading, line, in_recipe, out);
    }
}

} // namespace rayfleck::syntax
