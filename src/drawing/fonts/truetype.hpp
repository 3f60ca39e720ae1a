#pragma once
// A TrueType font, read as far as a layout needs it: which characters it has, how wide and how tall they are.
//
// Reads head, hhea, hmtx, loca, glyf and the Unicode map (cmap platform 3, encoding 1, format 4). No hinting,
// kerning or ligatures: the PDF writer uses none either. Made for the fonts compiled into the program, yet
// every read is checked, so a broken font fails at once instead of giving wrong widths. Source: OpenType
// specification 1.9, the chapters of these tables.

#include <cstdint>
#include <span>
#include <vector>

namespace rayfleck::drawing {

class TrueType {
  public:
    /// file   must outlive the font
    /// fails  std::runtime_error when a table is missing or cut short
    explicit TrueType(std::span<const std::uint8_t> file);

    /// The glyph of a character of the Basic Multilingual Plane, 0 when the font lacks it.
    int glyph(char32_t character) const {
        return character < common ? common_[character].glyph : read_glyph(character);
    }
    bool has(char32_t character) const { return glyph(character) != 0; }

    /// How far the pen moves, in whole thousandths of the type size, rounded down: the PDF writer states
    /// widths so.
    int advance(char32_t character) const {
        return character < common ? common_[character].advance : read_advance(read_glyph(character));
    }

    /// Lowest and highest point of the outline above the base line, as a share of the type size; both 0 for a
    /// blank.
    struct Extent {
        double lowest = 0, highest = 0;
    };
    Extent extent(char32_t character) const {
        return character < common ? common_[character].extent : read_extent(read_glyph(character));
    }

    /// Height of H as a share of the type size.
    double cap_height() const { return cap_height_; }

    /// The glyphs that a composite glyph is built of, at all levels; empty for a plain one.
    std::vector<int> components(int glyph) const;

  private:
    struct Table {
        std::size_t at = 0, length = 0;
    };
    Table table(const char* tag) const;
    unsigned byte16(std::size_t at) const;
    int signed16(std::size_t at) const;
    std::size_t byte32(std::size_t at) const;
    /// Place of a glyph's outline in the file, length 0 for a blank.
    Table outline(int glyph) const;

    int read_glyph(char32_t character) const;
    int read_advance(int glyph) const;
    Extent read_extent(int glyph) const;

    /// Latin letters and what stands among them are looked up once.
    static constexpr char32_t common = 0x180;
    struct Known {
        int glyph = 0, advance = 0;
        Extent extent;
    };
    std::vector<Known> common_;
    std::span<const std::uint8_t> file_;
    Table glyf_, loca_, hmtx_;
    std::size_t map_ = 0; ///< place of the format 4 subtable
    int units_per_em_ = 0, glyphs_ = 0, widths_ = 0;
    bool long_offsets_ = false;
    double cap_height_ = 0;
};

} // namespace rayfleck::drawing
