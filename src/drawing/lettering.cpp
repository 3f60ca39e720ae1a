// Greedy line breaking: good enough for notes of two or three lines.

#include "drawing/lettering.hpp"

namespace rayfleck::drawing {
namespace {

/// Number of bytes of the first character of some UTF-8; never 0 for text that is not empty.
std::size_t first_character(const std::string& text) {
    std::size_t n = 1;
    while (n < text.size() && (static_cast<unsigned char>(text[n]) & 0xC0) == 0x80) ++n;
    return n;
}

/// The longest beginning of `text` that fits, at least one character.
std::size_t fitting_bytes(const std::string& text, double width, double cap_height, Typeface face) {
    std::size_t used = 0;
    while (used < text.size()) {
        const std::size_t next = used + first_character(text.substr(used));
        if (used > 0 && text_width(text.substr(0, next), cap_height, face) > width) break;
        used = next;
    }
    return used;
}

} // namespace

std::vector<std::string> wrapped(const std::string& words, double width, double cap_height, Typeface face) {
    std::vector<std::string> lines;
    const double space = text_width(" ", cap_height, face);
    std::string line;
    double line_width = 0;
    std::size_t at = 0;
    const auto finish = [&] {
        if (!line.empty()) lines.push_back(line);
        line.clear();
        line_width = 0;
    };
    while (at < words.size()) {
        if (words[at] == '\n') {
            finish();
            ++at;
            continue;
        }
        if (words[at] == ' ' || words[at] == '\t' || words[at] == '\r') {
            ++at;
            continue;
        }
        const std::size_t end = words.find_first_of(" \t\r\n", at);
        std::string word = words.substr(at, end == std::string::npos ? std::string::npos : end - at);
        at += word.size();
        double word_width = text_width(word, cap_height, face);
        if (!line.empty() && line_width + space + word_width > width) finish();
        while (word_width > width) {
            const std::size_t bytes = fitting_bytes(word, width, cap_height, face);
            if (bytes >= word.size()) break;
            lines.push_back(word.substr(0, bytes));
            word.erase(0, bytes);
            word_width = text_width(word, cap_height, face);
        }
        if (!line.empty()) {
            line += ' ';
            line_width += space;
        }
        line += word;
        line_width += word_width;
    }
    finish();
    return lines;
}

std::string cut_to(const std::string& words, double width, double cap_height, Typeface face) {
    if (text_width(words, cap_height, face) <= width) return words;
    const std::string ellipsis = "…";
    const double room = width - text_width(ellipsis, cap_height, face);
    std::string kept = words.substr(0, fitting_bytes(words, std::max(room, 0.0), cap_height, face));
    while (!kept.empty() && kept.back() == ' ') kept.pop_back();
    return kept + ellipsis;
}

Text fitted(const std::string& words, double width, const std::vector<double>& heights, Typeface face) {
    for (const double height : heights)
        if (text_width(words, height, face) <= width) return {{}, words, height, face, Ink::black, 0};
    return {{}, cut_to(words, width, heights.back(), face), heights.back(), face, Ink::black, 0};
}

double set_lines(Block& block, const std::vector<std::string>& lines, double left, double top,
                 double cap_height, Typeface face, Ink ink) {
    const double step = cap_height * note_step / note_height;
    for (std::size_t i = 0; i < lines.size(); ++i)
        block.text(
            {{left, top - cap_height - static_cast<double>(i) * step}, lines[i], cap_height, face, ink, 0});
    return lines.empty() ? top : top - static_cast<double>(lines.size()) * step;
}

} // namespace rayfleck::drawing
