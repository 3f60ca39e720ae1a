// Reads the tables of a TrueType font at their offsets, big-endian, each time they are asked for: a drawing
// asks a few ten thousand times, which costs less than decoding the whole font first.

#include "drawing/fonts/truetype.hpp"

#include <stdexcept>
#include <string>

namespace rayfleck::drawing {

TrueType::TrueType(std::span<const std::uint8_t> file) : file_(file) {
    const Table head = table("head");
    units_per_em_ = static_cast<int>(byte16(head.at + 18));
    long_offsets_ = signed16(head.at + 50) != 0;
    glyphs_ = static_cast<int>(byte16(table("maxp").at + 4));
    widths_ = static_cast<int>(byte16(table("hhea").at + 34));
    glyf_ = table("glyf");
    loca_ = table("loca");
    hmtx_ = table("hmtx");
    const Table cmap = table("cmap");
    for (unsigned i = 0; i < byte16(cmap.at + 2); ++i) {
        const std::size_t record = cmap.at + 4 + 8 * i;
        const std::size_t at = cmap.at + byte32(record + 4);
        if (byte16(record) == 3 && byte16(record + 2) == 1 && byte16(at) == 4) map_ = at;
    }
    if (units_per_em_ < 16 || widths_ < 1 || map_ == 0)
        throw std::runtime_error("font without a usable table");
    for (char32_t c = 0; c < common; ++c) {
        const int g = read_glyph(c);
        common_.push_back({g, read_advance(g), read_extent(g)});
    }
    cap_height_ = extent(U'H').highest;
    if (cap_height_ <= 0) throw std::runtime_error("font without a letter H");
}

int TrueType::read_glyph(char32_t character) const {
    if (character > 0xFFFF) return 0;
    const std::size_t segments2 = byte16(map_ + 6);
    const std::size_t ends = map_ + 14, starts = ends + segments2 + 2, deltas = starts + segments2,
                      offsets = deltas + segments2;
    for (std::size_t s = 0; s < segments2; s += 2) {
        if (byte16(ends + s) < character) continue;
        const unsigned start = byte16(starts + s);
        if (start > character) return 0;
        const unsigned delta = byte16(deltas + s), offset = byte16(offsets + s);
        if (offset == 0) return static_cast<int>((character + delta) & 0xFFFF);
        const unsigned found = byte16(offsets + s + offset + 2 * (character - start));
        return found == 0 ? 0 : static_cast<int>((found + delta) & 0xFFFF);
    }
    return 0;
}

int TrueType::read_advance(int glyph) const {
    // Glyphs past the list all have the width of its last entry.
    const int entry = glyph < widths_ ? glyph : widths_ - 1;
    return static_cast<int>(byte16(hmtx_.at + 4 * static_cast<std::size_t>(entry))) * 1000 / units_per_em_;
}

TrueType::Extent TrueType::read_extent(int glyph) const {
    const Table shape = outline(glyph);
    if (shape.length < 10) return {};
    const double em = units_per_em_;
    return {signed16(shape.at + 4) / em, signed16(shape.at + 8) / em};
}

std::vector<int> TrueType::components(int glyph) const {
    std::vector<int> found;
    std::vector<int> open{glyph};
    while (!open.empty() && found.size() < 100) {
        const Table shape = outline(open.back());
        open.pop_back();
        if (shape.length < 10 || signed16(shape.at) >= 0) continue;
        // Flags of a component: 1 arguments are words, 8 one scale, 0x20 more follow, 0x40 two scales, 0x80
        // matrix.
        unsigned flags = 0x20;
        for (std::size_t at = shape.at + 10; (flags & 0x20) != 0;) {
            flags = byte16(at);
            const int part = static_cast<int>(byte16(at + 2));
            found.push_back(part);
            open.push_back(part);
            at += 4 + ((flags & 1) != 0 ? 4U : 2U);
            if ((flags & 8) != 0) at += 2;
            if ((flags & 0x40) != 0) at += 4;
            if ((flags & 0x80) != 0) at += 8;
        }
    }
    return found;
}

TrueType::Table TrueType::outline(int glyph) const {
    if (glyph < 0 || glyph >= glyphs_) return {};
    const auto g = static_cast<std::size_t>(glyph);
    const std::size_t from = long_offsets_ ? byte32(loca_.at + 4 * g) : 2 * byte16(loca_.at + 2 * g);
    const std::size_t to = long_offsets_ ? byte32(loca_.at + 4 * g + 4) : 2 * byte16(loca_.at + 2 * g + 2);
    if (from > to || to > glyf_.length) throw std::runtime_error("font with a broken outline table");
    return {glyf_.at + from, to - from};
}

TrueType::Table TrueType::table(const char* tag) const {
    const std::string wanted(tag, 4);
    for (unsigned i = 0; i < byte16(4); ++i) {
        const std::size_t record = 12 + 16 * i;
        std::string name;
        for (std::size_t k = 0; k < 4; ++k) name += static_cast<char>(byte16(record + k) >> 8);
        if (name != wanted) continue;
        const Table found{byte32(record + 8), byte32(record + 12)};
        if (found.at + found.length > file_.size()) break;
        return found;
    }
    throw std::runtime_error("font without table " + wanted);
}

unsigned TrueType::byte16(std::size_t at) const {
    if (at + 2 > file_.size()) throw std::runtime_error("font cut short");
    return static_cast<unsigned>(file_[at] << 8 | file_[at + 1]);
}

int TrueType::signed16(std::size_t at) const { return static_cast<std::int16_t>(byte16(at)); }

std::size_t TrueType::byte32(std::size_t at) const {
    return static_cast<std::size_t>(byte16(at)) << 16 | byte16(at + 2);
}

} // namespace rayfleck::drawing
