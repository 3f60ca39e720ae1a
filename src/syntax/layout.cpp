// Cutting a text into logical lines.
//
// Each line of the text is scanned once for its comment, its commas, its parentheses and its bytes. Inside
// quotes nothing counts; a `"` that stands right behind a number is an inch mark and opens no quote. When
// parentheses do not close, commas inside them part stretches after all, but only before a word, so that one
// forgotten `)` does not swallow the phrases behind it. Blocks follow from indentation: a line belongs to the
// nearest line above that is less indented. Nested deeper than the limit, lines are reported once and left
// out.

#include "syntax/layout.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "syntax/parse.hpp"

namespace rayfleck::syntax {
namespace {

bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; }
bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80;
}

/// Length of the well-formed UTF-8 letter at `i`, 0 when there is none.
std::size_t letter_length(std::string_view bytes, std::size_t i) {
    const auto byte = [&](std::size_t k) {
        return i + k < bytes.size() ? static_cast<unsigned char>(bytes[i + k]) : 0u;
    };
    const auto goes_on = [&](std::size_t k) { return (byte(k) & 0xC0u) == 0x80u; };
    const unsigned first = byte(0);
    if (first < 0x80) return 1;
    if (first < 0xC2 || first > 0xF4) return 0;
    if (first < 0xE0) return goes_on(1) ? 2 : 0;
    if (first < 0xF0) {
        const bool overlong = first == 0xE0 && byte(1) < 0xA0;
        const bool surrogate = first == 0xED && byte(1) >= 0xA0;
        return goes_on(1) && goes_on(2) && !overlong && !surrogate ? 3 : 0;
    }
    const bool overlong = first == 0xF0 && byte(1) < 0x90;
    const bool beyond = first == 0xF4 && byte(1) >= 0x90;
    return goes_on(1) && goes_on(2) && goes_on(3) && !overlong && !beyond ? 4 : 0;
}

/// A vulgar fraction like `½` ends right before `i`.
bool fraction_before(std::string_view bytes, std::size_t i) {
    const auto byte = [&](std::size_t back) {
        return i >= back ? static_cast<unsigned char>(bytes[i - back]) : 0u;
    };
    return (byte(2) == 0xC2 && byte(1) >= 0xBC && byte(1) <= 0xBE) ||
           (byte(3) == 0xE2 && byte(2) == 0x85 && byte(1) >= 0x93 && byte(1) <= 0x9E);
}

/// What one line of the text holds.
struct Scan {
    std::size_t begin = 0, end = 0;       ///< offsets of the content; equal when the line is empty
    std::vector<std::size_t> commas;      ///< outside of quotes and parentheses
    std::vector<std::size_t> deep_commas; ///< inside parentheses
    int depth = 0;                        ///< parentheses still open at the end
    bool ends_in_comma = false;
};

class Layout {
  public:
    Layout(const source::Text& text, const std::function<bool(std::string_view)>& begins_statement,
           Report& report)
        : text_(text), bytes_(text.bytes()), begins_statement_(begins_statement), report_(report) {}

    std::vector<Line> run();

  private:
    Scan scan(int number, int depth) const;
    bool bytes_are_text(int number, std::size_t content_end);
    void cut(Line& line, const std::vector<std::size_t>& commas);
    void add(Line line);

    const source::Text& text_;
    std::string_view bytes_;
    const std::function<bool(std::string_view)>& begins_statement_;
    Report& report_;
    std::vector<Line> top_;
    /// Indentation of the lines above to which the next line may belong, outermost first.
    std::vector<int> open_;
    bool too_deep_told_ = false;
};

/// First of the line that counts: behind a byte order mark.
std::size_t start_of(const source::Text& text, int number) {
    const std::size_t start = text.start_of(number);
    return number == 1 && text.bytes().starts_with("\xEF\xBB\xBF") ? start + 3 : start;
}

Scan Layout::scan(int number, int depth) const {
    Scan out;
    out.depth = depth;
    const std::size_t stop = text_.start_of(number) + text_.line(number).size();
    std::size_t i = start_of(text_, number);
    while (i < stop && is_blank(bytes_[i])) ++i;
    out.begin = i;
    out.end = i;
    while (i < stop) {
        const char c = bytes_[i];
        if (c == '#') break;
        if (c == '"') {
            ++i;
            while (i < stop && bytes_[i] != '"') ++i;
            if (i < stop) ++i;
        } else if (is_letter(c)) {
            while (i < stop &&
                   (is_letter(bytes_[i]) || is_digit(bytes_[i]) || bytes_[i] == '-' || bytes_[i] == '\''))
                ++i;
            if (i < stop && bytes_[i] == '"' && fraction_before(bytes_, i)) ++i; // an inch mark
        } else if (is_digit(c)) {
            while (i < stop &&
                   (is_digit(bytes_[i]) || bytes_[i] == '-' || bytes_[i] == '\'' || bytes_[i] == '/' ||
                    bytes_[i] == '.' || static_cast<unsigned char>(bytes_[i]) >= 0x80))
                ++i;
            if (i < stop && bytes_[i] == '"') ++i; // an inch mark
        } else {
            if (c == '(') ++out.depth;
            if (c == ')') out.depth = std::max(0, out.depth - 1);
            if (c == ',') (out.depth == 0 ? out.commas : out.deep_commas).push_back(i);
            ++i;
        }
        if (!is_blank(c)) {
            out.end = i;
            out.ends_in_comma = c == ',';
        }
    }
    return out;
}

/// Checks the bytes of a line; an error is given for the first that is wrong. gives whether its content is
/// sound.
bool Layout::bytes_are_text(int number, std::size_t content_end) {
    const std::size_t start = start_of(text_, number);
    const std::size_t stop = text_.start_of(number) + text_.line(number).size();
    for (std::size_t i = start; i < stop;) {
        const std::size_t length = letter_length(bytes_, i);
        const auto c = static_cast<unsigned char>(bytes_[i]);
        const bool control = (c < 0x20 && c != '\t') || c == 0x7F;
        if (length == 0 || control) {
            if (control) {
                report_.error("not-text", i, i + 1,
                              "a control character (byte " + std::to_string(c) + ") stands here",
                              "take it away, or save the file as plain text");
            } else {
                report_.error("not-utf-8", i, i + 1, "this byte (" + std::to_string(c) + ") is not UTF-8",
                              "save the file as UTF-8");
            }
            return i >= content_end;
        }
        i += length;
    }
    return true;
}

void Layout::cut(Line& line, const std::vector<std::size_t>& commas) {
    const auto skip = [&](std::size_t i, std::size_t end) {
        while (i < end) {
            if (is_blank(bytes_[i])) {
                ++i;
            } else if (bytes_[i] == '#') {
                while (i < end && bytes_[i] != '\n' && bytes_[i] != '\r') ++i;
            } else {
                break;
            }
        }
        return i;
    };
    std::size_t begin = line.begin;
    for (std::size_t k = 0; k <= commas.size(); ++k) {
        const std::size_t stop = k < commas.size() ? commas[k] : line.end;
        begin = skip(begin, stop);
        std::size_t end = stop;
        while (end > begin && is_blank(bytes_[end - 1])) --end;
        if (begin < end) {
            line.stretches.push_back({begin, end});
        } else if (k < commas.size()) {
            report_.error("empty-between-commas", stop, stop + 1, "nothing stands before this comma",
                          "take the comma away");
        }
        begin = stop + 1;
    }
    if (line.stretches.empty()) line.readable = false;
}

void Layout::add(Line line) {
    while (!open_.empty() && open_.back() >= line.indent) {
        open_.pop_back();
        too_deep_told_ = false;
    }
    if (open_.size() >= static_cast<std::size_t>(limits.block_depth)) {
        if (!too_deep_told_)
            report_.error("nested-too-deep", line.begin, line.begin + 1,
                          "more than " + std::to_string(limits.block_depth) + " blocks within each other",
                          "set the line back; no statement needs so many");
        too_deep_told_ = true;
        return;
    }
    std::vector<Line>* into = &top_;
    for (std::size_t k = 0; k < open_.size(); ++k) into = &into->back().block;
    open_.push_back(line.indent);
    into->push_back(std::move(line));
}

std::vector<Line> Layout::run() {
    const int count = text_.line_count();
    std::size_t phrases = 0;
    for (int number = 1; number <= count; ++number) {
        Scan first = scan(number, 0);
        if (first.begin == first.end) {
            bytes_are_text(number, first.end);
            continue;
        }
        Line line;
        line.begin = first.begin;
        line.end = first.end;
        const std::size_t start = start_of(text_, number);
        line.indent = source::display_width(bytes_.substr(start, first.begin - start));
        line.readable = bytes_are_text(number, first.end);
        std::vector<std::size_t> commas = first.commas;
        std::vector<std::size_t> deep = first.deep_commas;
        int depth = first.depth;
        bool goes_on = first.ends_in_comma;
        while (goes_on) {
            int next = number + 1;
            Scan more;
            for (; next <= count; ++next) {
                more = scan(next, depth);
                if (more.begin != more.end) break;
                bytes_are_text(next, more.end);
            }
            const std::size_t next_start = next <= count ? start_of(text_, next) : 0;
            const bool over =
                next > count ||
                (source::display_width(bytes_.substr(next_start, more.begin - next_start)) <= line.indent &&
                 begins_statement_(token_at(bytes_, more.begin, more.end)));
            if (over) {
                report_.error("comma-at-end", line.end - 1, line.end,
                              "the line ends in a comma, but nothing goes on", "take the comma away");
                --line.end;
                while (line.end > line.begin && is_blank(bytes_[line.end - 1])) --line.end;
                std::erase_if(commas, [&](std::size_t comma) { return comma >= line.end; });
                std::erase_if(deep, [&](std::size_t comma) { return comma >= line.end; });
                number = next - 1;
                break;
            }
            line.readable = bytes_are_text(next, more.end) && line.readable;
            commas.insert(commas.end(), more.commas.begin(), more.commas.end());
            deep.insert(deep.end(), more.deep_commas.begin(), more.deep_commas.end());
            depth = more.depth;
            line.end = more.end;
            goes_on = more.ends_in_comma;
            number = next;
        }
        if (line.end - line.begin > limits.line_bytes) {
            report_.error("line-too-long", line.begin, line.begin + 1,
                          "this line is " + std::to_string(line.end - line.begin) +
                              " bytes long, more than " + std::to_string(limits.line_bytes),
                          "write its phrases on lines of their own");
            line.readable = false;
        }
        phrases += 1 + commas.size();
        if (phrases > limits.phrases) {
            report_.error("file-too-large", line.begin, line.begin + 1,
                          "from here on nothing is read: more than " + std::to_string(limits.phrases) +
                              " phrases and lines stand in this file",
                          "bring in parts of it from files of their own");
            break;
        }
        if (line.readable) {
            if (depth > 0) {
                for (const std::size_t comma : deep) {
                    std::size_t after = comma + 1;
                    while (after < line.end && is_blank(bytes_[after])) ++after;
                    if (after < line.end && is_letter(bytes_[after])) commas.push_back(comma);
                }
                std::sort(commas.begin(), commas.end());
            }
            cut(line, commas);
        }
        add(std::move(line));
    }
    return std::move(top_);
}

} // namespace

std::vector<Line> lay_out(const source::Text& text,
                          const std::function<bool(std::string_view)>& begins_statement, Report& report) {
    return Layout(text, begins_statement, report).run();
}

} // namespace rayfleck::syntax
