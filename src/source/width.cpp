// How wide a text stands on a terminal, so that a marker stands under what it marks.
//
// Code points are read one by one; each takes one column but for marks that sit on the letter before (none),
// East Asian wide characters and emoji (two) and tabs. The ranges are blocks of the Unicode Standard, from
// memory and rounded to whole blocks: right for every script's common letters, not for each single mark of
// every script. Groups of emoji that a terminal may draw as one are counted piece by piece, as most terminals
// do.

#include <algorithm>
#include <array>
#include <cstdint>

#include "source/text.hpp"

namespace rayfleck::source {
namespace {

struct Range {
    std::uint32_t first, last;
};

constexpr std::array no_columns{
    Range{0x0300, 0x036F}, Range{0x0483, 0x0489}, Range{0x0591, 0x05BD}, Range{0x064B, 0x065F},
    Range{0x093C, 0x093C}, Range{0x0941, 0x0948}, Range{0x094D, 0x094D}, Range{0x0E31, 0x0E31},
    Range{0x0E34, 0x0E3A}, Range{0x0E47, 0x0E4E}, Range{0x1AB0, 0x1AFF}, Range{0x1DC0, 0x1DFF},
    Range{0x200B, 0x200F}, Range{0x202A, 0x202E}, Range{0x2060, 0x206F}, Range{0x20D0, 0x20F0},
    Range{0xFE00, 0xFE0F}, Range{0xFE20, 0xFE2F}, Range{0xFEFF, 0xFEFF}, Range{0xE0001, 0xE01EF},
};

constexpr std::array two_columns{
    Range{0x1100, 0x115F},   Range{0x231A, 0x231B},   Range{0x23E9, 0x23EC},   Range{0x2614, 0x2615},
    Range{0x2648, 0x2653},   Range{0x26AA, 0x26AB},   Range{0x26BD, 0x26BE},   Range{0x2705, 0x2705},
    Range{0x274C, 0x274C},   Range{0x2E80, 0x303E},   Range{0x3041, 0x4DBF},   Range{0x4E00, 0xA4CF},
    Range{0xA960, 0xA97C},   Range{0xAC00, 0xD7A3},   Range{0xF900, 0xFAFF},   Range{0xFE30, 0xFE6F},
    Range{0xFF00, 0xFF60},   Range{0xFFE0, 0xFFE6},   Range{0x16FE0, 0x18D08}, Range{0x1B000, 0x1B2FB},
    Range{0x1F200, 0x1F320}, Range{0x1F32D, 0x1F335}, Range{0x1F337, 0x1F37C}, Range{0x1F37E, 0x1F393},
    Range{0x1F3A0, 0x1F3CA}, Range{0x1F3CF, 0x1F3D3}, Range{0x1F3E0, 0x1F3F0}, Range{0x1F3F8, 0x1F43E},
    Range{0x1F440, 0x1F4FC}, Range{0x1F4FF, 0x1F53D}, Range{0x1F54B, 0x1F567}, Range{0x1F5FB, 0x1F64F},
    Range{0x1F680, 0x1F6C5}, Range{0x1F6CC, 0x1F6CC}, Range{0x1F6D0, 0x1F6DF}, Range{0x1F6EB, 0x1F6FF},
    Range{0x1F90C, 0x1F9FF}, Range{0x1FA70, 0x1FAFF}, Range{0x20000, 0x3FFFD},
};

template <std::size_t n> bool among(const std::array<Range, n>& ranges, std::uint32_t c) {
    const auto it =
        std::lower_bound(ranges.begin(), ranges.end(), c,
                         [](const Range& range, std::uint32_t value) { return range.last < value; });
    return it != ranges.end() && it->first <= c;
}

/// The code point at `i`, and how many bytes it takes; 0 bytes when they are not UTF-8.
std::pair<std::uint32_t, std::size_t> code_point(std::string_view utf8, std::size_t i) {
    const auto byte = [&](std::size_t k) { return static_cast<unsigned char>(utf8[k]); };
    const unsigned char first = byte(i);
    if (first < 0x80) return {first, 1};
    const std::size_t length = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
    if (first < 0xC2 || first > 0xF4 || i + length > utf8.size()) return {0, 0};
    std::uint32_t c = first & (0xFFu >> (length + 1));
    for (std::size_t k = 1; k < length; ++k) {
        if ((byte(i + k) & 0xC0) != 0x80) return {0, 0};
        c = (c << 6) | (byte(i + k) & 0x3Fu);
    }
    const bool overlong = (length == 3 && c < 0x800) || (length == 4 && c < 0x10000);
    const bool surrogate = c >= 0xD800 && c <= 0xDFFF;
    if (overlong || surrogate || c > 0x10FFFF) return {0, 0};
    return {c, length};
}

} // namespace

int display_width(std::string_view utf8, int column) {
    int at = column;
    for (std::size_t i = 0; i < utf8.size();) {
        const auto [c, length] = code_point(utf8, i);
        if (length == 0) {
            ++at;
            ++i;
            continue;
        }
        if (c == '\t') {
            at += 8 - at % 8;
        } else if (among(two_columns, c)) {
            at += 2;
        } else if (!among(no_columns, c)) {
            ++at;
        }
        i += length;
    }
    return at - column;
}

} // namespace rayfleck::source
