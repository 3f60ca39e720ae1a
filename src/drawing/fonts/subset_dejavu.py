#!/usr/bin/env python3
# Cuts a DejaVu font down to the characters a drawing needs, so that the program and each PDF carry 60 kB of font
# instead of 680 kB. Run by the build: subset_dejavu.py IN.ttf OUT.ttf
#
# Composite glyphs (an accented letter built of a letter and an accent) are redrawn as plain outlines: libharu 2.3.0
# silently drops the second level of nested composites when it embeds a font. Hints go, they serve low-resolution
# screens only. Time stamps and the font's own name stay as they are, so equal input gives equal bytes.
import sys

from fontTools import subset
from fontTools.pens.recordingPen import DecomposingRecordingPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import TTFont

RANGES = [
    (0x0020, 0x007E), (0x00A0, 0x00FF),  # Latin
    (0x0100, 0x017F), (0x0218, 0x021B),  # Latin Extended-A, Romanian
    (0x0300, 0x030C), (0x0323, 0x0328),  # loose accents, as some systems write names
    (0x0384, 0x03CE), (0x0400, 0x045F),  # Greek, Cyrillic
    (0x1E80, 0x1E85), (0x1EA0, 0x1EF9),  # Welsh, Vietnamese
    (0x2010, 0x2015), (0x2018, 0x201E), (0x2020, 0x2022), (0x2026, 0x2026), (0x2030, 0x2030),
    (0x2032, 0x2033), (0x2039, 0x203A), (0x2044, 0x2044), (0x2070, 0x2070), (0x2074, 0x2079),
    (0x20AC, 0x20AC), (0x2104, 0x2104), (0x2116, 0x2116), (0x2122, 0x2122),
    (0x2150, 0x215E), (0x2190, 0x2199), (0x21BA, 0x21BB),  # fractions, arrows
    (0x2205, 0x2205), (0x2212, 0x2213), (0x221A, 0x221A), (0x221E, 0x221E), (0x2220, 0x2221),
    (0x2225, 0x2225), (0x2248, 0x2248), (0x2260, 0x2261), (0x2264, 0x2265), (0x22A5, 0x22A5), (0x2300, 0x2300),
    (0x25A0, 0x25A1), (0x25B2, 0x25B3), (0x25B6, 0x25B7), (0x25BC, 0x25BD), (0x25C0, 0x25C1),
    (0x25C6, 0x25C7), (0x25CB, 0x25CB), (0x25CF, 0x25CF),
    (0x2605, 0x2606), (0x2610, 0x2612), (0x26A0, 0x26A0), (0x2713, 0x2714), (0x2717, 0x2718), (0xFFFD, 0xFFFD),
]


def flatten(font):
    glyphs = font.getGlyphSet()
    table = font["glyf"]
    plain = {}
    for name in font.getGlyphOrder():
        if table[name].isComposite():
            drawing = DecomposingRecordingPen(glyphs)
            glyphs[name].draw(drawing)
            outline = TTGlyphPen(None)
            drawing.replay(outline)
            plain[name] = outline.glyph()
    for name, glyph in plain.items():
        table[name] = glyph
        glyph.recalcBounds(table)
        width, _ = font["hmtx"][name]
        font["hmtx"][name] = (width, getattr(glyph, "xMin", 0))


def main(source, target):
    font = TTFont(source, recalcTimestamp=False)
    options = subset.Options(
        hinting=False, layout_features=[], glyph_names=False, legacy_cmap=False, symbol_cmap=False,
        notdef_outline=True, name_IDs=[0, 1, 2, 3, 4, 5, 6, 14], recalc_timestamp=False,
    )
    options.drop_tables += ["GDEF", "GPOS", "GSUB", "MATH", "FFTM", "kern", "gasp"]
    cutter = subset.Subsetter(options)
    cutter.populate(unicodes=[c for low, high in RANGES for c in range(low, high + 1)])
    cutter.subset(font)
    flatten(font)
    # Only the table of the Basic Multilingual Plane: the one that libharu and our own reader read.
    font["cmap"].tables = [t for t in font["cmap"].tables if (t.platformID, t.platEncID, t.format) == (3, 1, 4)]
    font.save(target)


main(sys.argv[1], sys.argv[2])
