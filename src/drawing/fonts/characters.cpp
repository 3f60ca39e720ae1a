// UTF-8 as RFC 3629 defines it: at most four bytes, shortest form only, no surrogates.

#include "drawing/fonts/characters.hpp"

namespace rayfleck::drawing {
namespace {

/// The next character of UTF-8 text; overlong, cut and surrogate forms give U+FFFD and step over one byte.
char32_t next_character(const std::string& text, std::size_t& at) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const unsigned first = byte(at++);
    if (first < 0x80) return first;
    const std::size_t more = first >= 0xF0 ? 3 : first >= 0xE0 ? 2 : 1;
    if (first < 0xC2 || first > 0xF4 || at + more > text.size()) return 0xFFFD;
    char32_t c = first & (0x3FU >> more);
    for (std::size_t i = 0; i < more; ++i) {
        if ((byte(at + i) & 0xC0) != 0x80) return 0xFFFD;
        c = c << 6 | (byte(at + i) & 0x3FU);
    }
    constexpr char32_t least[] = {0x80, 0x800, 0x10000};
    if (c < least[more - 1] || c > 0x10FFFF || (c >= 0xD800 && c <= 0xDFFF)) return 0xFFFD;
    at += more;
    return c;
}

} // namespace

std::u32string characters_of(const std::string& utf8) {
    std::u32string out;
    for (std::size_t at = 0; at < utf8.size();) out += next_character(utf8, at);
    return out;
}

std::string utf8_of(const std::u32string& text) {
    std::string out;
    for (const char32_t c : text) {
        const auto put = [&](char32_t bits) { out += static_cast<char>(static_cast<unsigned char>(bits)); };
        if (c < 0x80) {
            put(c);
        } else if (c < 0x800) {
            put(0xC0 | c >> 6), put(0x80 | (c & 0x3F));
        } else if (c < 0x10000) {
            put(0xE0 | c >> 12), put(0x80 | (c >> 6 & 0x3F)), put(0x80 | (c & 0x3F));
        } else {
            put(0xF0 | c >> 18), put(0x80 | (c >> 12 & 0x3F)), put(0x80 | (c >> 6 & 0x3F)),
                put(0x80 | (c & 0x3F));
        }
    }
    return out;
}

} // namespace rayfleck::drawing
