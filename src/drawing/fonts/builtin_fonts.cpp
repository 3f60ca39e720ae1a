// The font files are taken into the object file by the assembler, byte for byte; a C array of the same bytes
// would cost the compiler seconds. fonts.cmake says which files these are and rebuilds this object when one
// changes.

#include "drawing/fonts/builtin_fonts.hpp"

#define TAKE_IN(name, file)                                                                                  \
    asm(".section .rodata\n.balign 16\n"                                                                     \
        ".global rayfleck_" name "\nrayfleck_" name ":\n.incbin \"" file "\"\n"                              \
        ".global rayfleck_" name "_end\nrayfleck_" name "_end:\n.byte 0\n.previous\n")

TAKE_IN("font_sans", FONT_SANS);
TAKE_IN("font_sans_bold", FONT_SANS_BOLD);
TAKE_IN("font_lettering", FONT_LETTERING);

extern "C" {
extern const std::uint8_t rayfleck_font_sans[], rayfleck_font_sans_end[];
extern const std::uint8_t rayfleck_font_sans_bold[], rayfleck_font_sans_bold_end[];
extern const std::uint8_t rayfleck_font_lettering[], rayfleck_font_lettering_end[];
}

namespace rayfleck::drawing {

std::span<const std::uint8_t> font_file(Typeface face) {
    switch (face) {
    case Typeface::sans:
        return {rayfleck_font_sans, rayfleck_font_sans_end};
    case Typeface::sans_bold:
        return {rayfleck_font_sans_bold, rayfleck_font_sans_bold_end};
    case Typeface::lettering:
        break;
    }
    return {rayfleck_font_lettering, rayfleck_font_lettering_end};
}

const TrueType& font(Typeface face) {
    static const TrueType sans(font_file(Typeface::sans));
    static const TrueType sans_bold(font_file(Typeface::sans_bold));
    static const TrueType lettering(font_file(Typeface::lettering));
    switch (face) {
    case Typeface::sans:
        return sans;
    case Typeface::sans_bold:
        return sans_bold;
    case Typeface::lettering:
        break;
    }
    return lettering;
}

} // namespace rayfleck::drawing
