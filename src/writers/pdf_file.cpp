// How libharu is used, and what is worked round. Measured with 2.3.0; later versions changed the writing of
// numbers.
//
//  - Errors: its handler throws; unwinding through the C code was tested upstream of this file and is clean.
//  - Memory pool off (size 0): pooled blocks are not aligned.
//  - Fonts come from memory, which has no public call; the steps are those of its own file loader.
//  - The second level of nested composite glyphs is not embedded: we mark those glyphs ourselves.
//  - Its map from codes to Unicode breaks the operator order; we write our own.
//  - Dashes are whole numbers only; the operator is written to the page by hand, and never through its own
//  call.
//  - Opening a font asks its map 65,536 times, each time from the start; we shorten the map first.
//  - The calls that draw lines clear a buffer for every point; paths are written to the page by hand.
//  - Its packing is set to the slowest; pages are packed here.
//  - The file has no identifier; we add one to the trailer.
//  - A page tree of one level holds 32,767 pages; large sets ask for two levels.

#include "writers/pdf_file.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <chrono>
#include <cmath>
#include <map>
#include <numbers>
#include <set>

#include <fmt/format.h>
#include <hpdf.h>
#include <zlib.h>

#include "drawing/fonts/builtin_fonts.hpp"
#include "drawing/fonts/characters.hpp"

namespace rayfleck::writers {
namespace {

using drawing::Point2;
using drawing::Typeface;

constexpr double points_per_mm = 72 / 25.4;
/// The largest page side libharu allows; nothing may lie farther off than that.
constexpr double farthest = 14400;

[[noreturn]] void fail(HPDF_STATUS error, HPDF_STATUS detail, void*) {
    std::array<char, 64> text{};
    std::snprintf(text.data(), text.size(), "PDF library error 0x%04X, detail %u",
                  static_cast<unsigned>(error), static_cast<unsigned>(detail));
    throw PdfFailure(text.data());
}

/// A number of points, rounded to a thousandth: finer than any printer, and short in the file.
double checked_exactly(double points) {
    if (!std::isfinite(points) || std::abs(points) > farthest)
        throw PdfFailure("a place on a sheet lies off every page or is no number");
    return points;
}
HPDF_REAL checked(double points) {
    return static_cast<HPDF_REAL>(std::round(checked_exactly(points) * 1000) / 1000);
}
HPDF_REAL points(double mm) { return checked(mm * points_per_mm); }

/// A number for operators written by hand: at most three decimals, no trailing zeros, no locale.
std::string number(double value) {
    std::string out = fmt::format("{:.3f}", static_cast<double>(checked(value)));
    while (out.back() == '0') out.pop_back();
    if (out.back() == '.') out.pop_back();
    return out == "-0" ? "0" : out;
}

/// The same for a place, which comes in thousands: no digit is lost in between, and nothing is asked twice.
void add_number(std::string& out, double mm) {
    auto thousandths = std::llround(checked_exactly(mm * points_per_mm) * 1000);
    if (thousandths < 0) out += '-', thousandths = -thousandths;
    const auto whole = thousandths / 1000;
    auto rest = static_cast<int>(thousandths % 1000);
    std::array<char, 24> digits{};
    out.append(digits.data(), std::to_chars(digits.data(), digits.data() + digits.size(), whole).ptr);
    if (rest == 0) return;
    out += '.';
    for (int place = 100; rest != 0; place /= 10) {
        out += static_cast<char>('0' + rest / place);
        rest %= place;
    }
}

/// A polyline, closed when it ends where it began. libharu has calls for it, which clear half a kilobyte for
/// every point.
void add_path(std::string& out, const std::vector<Point2>& line) {
    const bool closed = line.size() > 3 && line.front().x == line.back().x && line.front().y == line.back().y;
    const std::size_t last = closed ? line.size() - 1 : line.size();
    for (std::size_t i = 0; i < last; ++i) {
        add_number(out, line[i].x);
        out += ' ';
        add_number(out, line[i].y);
        out += i == 0 ? " m\n" : " l\n";
    }
    if (closed) out += "h\n";
}

/// UTF-16 as a hexadecimal string with its mark, for ActualText.
std::string utf16_hex(const std::string& words) {
    std::string out = "<FEFF";
    const auto put = [&](unsigned unit) { out += fmt::format("{:04X}", unit); };
    for (const char32_t c : drawing::characters_of(words)) {
        if (c < 0x10000) {
            put(c);
        } else {
            put(0xD800U + ((c - 0x10000U) >> 10));
            put(0xDC00U + ((c - 0x10000U) & 0x3FFU));
        }
    }
    return out + ">";
}

/// Codes in the text are UTF-16 units, so each stands for itself.
std::string unicode_map() {
    std::string out = "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
                      "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n"
                      "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n"
                      "1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n";
    for (int high = 0; high < 256; ++high) {
        // A block holds at most 100 ranges, a range may not cross its last 256.
        if (high % 64 == 0) out += "64 beginbfrange\n";
        out += fmt::format("<{0:02X}00> <{0:02X}FF> <{0:02X}00>\n", high);
        if (high % 64 == 63) out += "endbfrange\n";
    }
    return out + "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n";
}

std::string sound_utf8(const std::string& words) { return drawing::utf8_of(drawing::characters_of(words)); }

struct CloseDocument {
    void operator()(HPDF_Doc document) const { HPDF_Free(document); }
};

} // namespace

struct PdfFile::Inside {
    struct Font {
        HPDF_Font font = nullptr;
        HPDF_FontDef definition = nullptr;
        std::set<char32_t> marked; ///< characters whose components are marked as used
    };
    /// What the page's graphics state is, as far as we set it.
    struct Page {
        HPDF_Page page = nullptr;
        HPDF_Destination here = nullptr;
        bool prepared = false;
        std::optional<StrokeStyle> style;
        std::optional<Colour> fill;
    };

    std::unique_ptr<std::remove_pointer_t<HPDF_Doc>, CloseDocument> document;
    std::map<Typeface, Font> fonts;
    std::map<Typeface, std::set<char32_t>> expected;
    std::vector<Page> pages;
    std::size_t present = 0;

    Page& page() {
        if (present >= pages.size()) throw PdfFailure("no such page");
        return pages[present];
    }

    /// Writes operators that libharu has no call for.
    void write_by_hand(const std::string& operators) {
        HPDF_Stream_WriteStr(static_cast<HPDF_PageAttr>(page().page->attr)->stream, operators.c_str());
    }

    Font& font(Typeface face);
    static void pack(HPDF_Page on);
    void shorten_map(HPDF_FontDef definition, Typeface face);
    void mark_components(Font& font, const std::string& words, Typeface face);
    void use_style(const StrokeStyle& style);
    void use_fill(Colour colour);
};

PdfFile::PdfFile(bool compressed) : in_(std::make_unique<Inside>()) {
    in_->document.reset(HPDF_NewEx(fail, nullptr, nullptr, 0, nullptr));
    if (!in_->document) throw PdfFailure("the PDF library does not start");
    const HPDF_Doc document = in_->document.get();
    HPDF_SetCompressionMode(document, compressed ? HPDF_COMP_ALL : HPDF_COMP_NONE);
    HPDF_SetPagesConfiguration(document, 1000);
    HPDF_UseUTFEncodings(document);
    HPDF_SetCurrentEncoder(document, "UTF-8");
}

PdfFile::~PdfFile() = default;

void PdfFile::describe(const std::string& title, const std::string& creator,
                       std::optional<std::int64_t> date) {
    const HPDF_Doc document = in_->document.get();
    if (!title.empty()) HPDF_SetInfoAttr(document, HPDF_INFO_TITLE, sound_utf8(title).c_str());
    if (!creator.empty()) HPDF_SetInfoAttr(document, HPDF_INFO_CREATOR, sound_utf8(creator).c_str());
    if (!date) return;
    const std::chrono::sys_seconds moment{std::chrono::seconds(*date)};
    const auto day = std::chrono::floor<std::chrono::days>(moment);
    const std::chrono::year_month_day calendar(day);
    const std::chrono::hh_mm_ss clock(moment - day);
    HPDF_Date made{};
    made.year = static_cast<int>(calendar.year());
    made.month = static_cast<HPDF_INT>(static_cast<unsigned>(calendar.month()));
    made.day = static_cast<HPDF_INT>(static_cast<unsigned>(calendar.day()));
    made.hour = static_cast<HPDF_INT>(clock.hours().count());
    made.minutes = static_cast<HPDF_INT>(clock.minutes().count());
    made.seconds = static_cast<HPDF_INT>(clock.seconds().count());
    made.ind = '+';
    HPDF_SetInfoDateAttr(document, HPDF_INFO_CREATION_DATE, made);
    HPDF_SetInfoDateAttr(document, HPDF_INFO_MOD_DATE, made);
}

void PdfFile::print_at_full_size() { HPDF_SetViewerPreference(in_->document.get(), HPDF_PRINT_SCALING_NONE); }

void PdfFile::add_page(double width, double height, const std::string& title) {
    const HPDF_Doc document = in_->document.get();
    const HPDF_REAL wide = points(width), high = points(height);
    if (wide < 6 || high < 6) throw PdfFailure("a sheet is too small for a page");
    Inside::Page page;
    page.page = HPDF_AddPage(document);
    HPDF_Page_SetWidth(page.page, wide);
    HPDF_Page_SetHeight(page.page, high);
    page.here = HPDF_Page_CreateDestination(page.page);
    HPDF_Destination_SetFit(page.here);
    if (in_->pages.size() == 1) HPDF_SetPageMode(document, HPDF_PAGE_MODE_USE_OUTLINE);
    const HPDF_Outline entry =
        HPDF_CreateOutline(document, nullptr, sound_utf8(title).c_str(), HPDF_GetEncoder(document, "UTF-8"));
    HPDF_Outline_SetDestination(entry, page.here);
    in_->pages.push_back(page);
    in_->present = in_->pages.size() - 1;
}

void PdfFile::label_pages() {
    // A label is words and then a number; here the number is how many there are.
    for (std::size_t i = 0; i < in_->pages.size(); ++i)
        HPDF_AddPageLabel(in_->document.get(), static_cast<HPDF_UINT>(i), HPDF_PAGE_NUM_STYLE_DECIMAL,
                          static_cast<HPDF_UINT>(in_->pages.size()),
                          ("sheet " + std::to_string(i + 1) + " of ").c_str());
}

int PdfFile::pages() const { return static_cast<int>(in_->pages.size()); }

void PdfFile::turn_to(int page) {
    in_->present = static_cast<std::size_t>(page);
    in_->page();
}

void PdfFile::expect(const drawing::MeasuredText& text) {
    std::set<char32_t>& characters = in_->expected[text.face];
    for (const drawing::TextPiece& piece : text.pieces)
        for (const drawing::TypeRun& run : piece.runs)
            for (const char32_t c : drawing::characters_of(run.words)) characters.insert(c);
}

void PdfFile::stroke(const std::vector<Line>& lines, const StrokeStyle& style) {
    // Everything is checked before the path opens, so a refused place leaves none open.
    bool any = false;
    for (const Line& line : lines) {
        for (const Point2& p : line) points(p.x), points(p.y);
        any = any || line.size() >= 2;
    }
    if (!any) return;
    in_->use_style(style);
    std::string path;
    for (const Line& line : lines)
        if (line.size() >= 2) add_path(path, line);
    in_->write_by_hand(path + "S\n");
}

void PdfFile::fill(const std::vector<Line>& rings, Colour colour) {
    bool any = false;
    for (const Line& ring : rings) {
        for (const Point2& p : ring) points(p.x), points(p.y);
        any = any || ring.size() >= 3;
    }
    if (!any) return;
    in_->use_fill(colour);
    std::string path;
    for (const Line& ring : rings)
        if (ring.size() >= 3) add_path(path, ring);
    in_->write_by_hand(path + "f*\n");
}

void PdfFile::text(const drawing::MeasuredText& text, Point2 at, double turn, Colour colour) {
    points(at.x), points(at.y);
    const double angle = turn * std::numbers::pi / 180, c = std::cos(angle), s = std::sin(angle);
    const auto placed = [&](double x, double y) {
        return Point2{at.x + c * x - s * y, at.y + s * x + c * y};
    };
    const HPDF_REAL cosine = checked(std::round(c * 1e6) / 1e3) / 1000,
                    sine = checked(std::round(s * 1e6) / 1e3) / 1000;
    Inside::Font& font = in_->font(text.face);
    const HPDF_Page page = in_->page().page;
    in_->use_fill(colour);
    for (const drawing::TextPiece& piece : text.pieces) {
        if (!piece.says.empty())
            in_->write_by_hand(fmt::format("/Span <</ActualText {}>> BDC\n", utf16_hex(piece.says)));
        for (const drawing::TypeRun& run : piece.runs) {
            const Point2 start = placed(run.x, run.y);
            const HPDF_REAL x = points(start.x), y = points(start.y);
            const HPDF_REAL size = points(drawing::type_size(run.cap_height, text.face));
            if (size <= 0) throw PdfFailure("a text without height");
            in_->mark_components(font, run.words, text.face);
            HPDF_Page_BeginText(page);
            HPDF_Page_SetFontAndSize(page, font.font, size);
            HPDF_Page_SetTextMatrix(page, cosine, sine, -sine, cosine, x, y);
            HPDF_Page_ShowText(page, run.words.c_str());
            HPDF_Page_EndText(page);
        }
        for (const drawing::FractionBar& bar : piece.bars) {
            const double low = bar.y - bar.thickness / 2, high = bar.y + bar.thickness / 2;
            std::string path;
            add_path(path, {placed(bar.from, low), placed(bar.to, low), placed(bar.to, high),
                            placed(bar.from, high)});
            in_->write_by_hand(path + "f\n");
        }
        if (!piece.says.empty()) in_->write_by_hand("EMC\n");
    }
}

void PdfFile::link(Point2 low, Point2 high, int to_page) {
    if (to_page < 0 || to_page >= pages()) throw PdfFailure("a link leads to no sheet");
    const HPDF_Rect area{points(low.x), points(low.y), points(high.x), points(high.y)};
    const HPDF_Annotation link =
        HPDF_Page_CreateLinkAnnot(in_->page().page, area, in_->pages[static_cast<std::size_t>(to_page)].here);
    HPDF_LinkAnnot_SetBorderStyle(link, 0, 0, 0);
}

/// Packs what is drawn on a page. The library would pack as hard as it can, which takes most of its time.
void PdfFile::Inside::pack(HPDF_Page on) {
    HPDF_Dict contents = static_cast<HPDF_PageAttr>(on->attr)->contents;
    if (contents->filter != HPDF_STREAM_FILTER_FLATE_DECODE) return;
    std::string plain;
    for (HPDF_UINT i = 0; i < HPDF_MemStream_GetBufCount(contents->stream); ++i) {
        HPDF_UINT length = 0;
        const HPDF_BYTE* bytes = HPDF_MemStream_GetBufPtr(contents->stream, i, &length);
        plain.append(reinterpret_cast<const char*>(bytes), length);
    }
    constexpr int quick = 1;
    uLongf size = compressBound(plain.size());
    std::string packed(size, '\0');
    if (compress2(reinterpret_cast<Bytef*>(packed.data()), &size,
                  reinterpret_cast<const Bytef*>(plain.data()), plain.size(), quick) != Z_OK)
        throw PdfFailure("a page cannot be packed");
    HPDF_MemStream_FreeData(contents->stream);
    HPDF_Stream_Write(contents->stream, reinterpret_cast<const HPDF_BYTE*>(packed.data()),
                      static_cast<HPDF_UINT>(size));
    // The library names a filter only when it packs by itself.
    contents->filter = HPDF_STREAM_FILTER_NONE;
    contents->write_fn = [](HPDF_Dict, HPDF_Stream to) {
        return HPDF_Stream_WriteStr(to, "/Filter [/FlateDecode]\012");
    };
}

std::string PdfFile::save(const std::array<std::uint8_t, 16>& identifier) {
    const HPDF_Doc document = in_->document.get();
    std::array<HPDF_BYTE, 16> bytes{};
    for (std::size_t i = 0; i < bytes.size(); ++i) bytes[i] = identifier[i];
    const HPDF_Array both = HPDF_Array_New(document->mmgr);
    for (int i = 0; i < 2; ++i)
        HPDF_Array_Add(both, HPDF_Binary_New(document->mmgr, bytes.data(), bytes.size()));
    HPDF_Dict_Add(document->trailer, "ID", both);
    for (const Inside::Page& page : in_->pages) in_->pack(page.page);
    HPDF_SaveToStream(document);
    std::string file(HPDF_GetStreamSize(document), '\0');
    for (std::size_t at = 0; at < file.size();) {
        auto step = static_cast<HPDF_UINT32>(file.size() - at);
        // At the end of its stream this gives an error code, not a call of the handler.
        HPDF_ReadFromStream(document, reinterpret_cast<HPDF_BYTE*>(file.data() + at), &step);
        if (step == 0) throw PdfFailure("the PDF library gave less than it wrote");
        at += step;
    }
    return file;
}

PdfFile::Inside::Font& PdfFile::Inside::font(Typeface face) {
    Font& slot = fonts[face];
    if (slot.font != nullptr) return slot;
    const auto file = drawing::font_file(face);
    HPDF_Stream stream = HPDF_MemStream_New(document->mmgr, static_cast<HPDF_UINT>(file.size()));
    HPDF_Stream_Write(stream, file.data(), static_cast<HPDF_UINT>(file.size()));
    HPDF_FontDef definition = HPDF_TTFontDef_Load(document->mmgr, stream, HPDF_TRUE);
    if (definition == nullptr) throw PdfFailure("a built-in font does not load");
    HPDF_List_Add(document->fontdef_list, definition);
    // Each embedded part of a font needs a prefix of six letters of its own.
    std::string tag = "RFLKAA";
    tag.back() = static_cast<char>('A' + static_cast<int>(face));
    HPDF_TTFontDef_SetTagName(definition, tag.data());
    slot.definition = definition;
    shorten_map(definition, face);
    slot.font = HPDF_GetFont(document.get(), definition->base_font, "UTF-8");

    HPDF_Dict map = static_cast<HPDF_FontAttr>(slot.font->attr)->cmap_stream;
    HPDF_MemStream_FreeData(map->stream);
    HPDF_Stream_WriteStr(map->stream, unicode_map().c_str());
    return slot;
}

/// Puts in place of the font's map from characters to glyphs one that holds the expected characters alone, as
/// a plain list from the first of them to the last; the copy of the map in the embedded file stays whole.
void PdfFile::Inside::shorten_map(HPDF_FontDef definition, Typeface face) {
    HPDF_TTF_CmapRange& map = static_cast<HPDF_TTFontDefAttr>(definition->attr)->cmap;
    std::set<char32_t> characters = expected[face];
    characters.erase(characters.lower_bound(0xFFFF), characters.end());
    // An entry for the list and the closing one for all that follows.
    constexpr HPDF_UINT16 entries = 2;
    if (map.format != 4 || map.seg_count_x2 < 2 * entries || characters.empty()) return;
    const char32_t first = *characters.begin(), last = *characters.rbegin();
    const HPDF_UINT count = static_cast<HPDF_UINT>(last - first) + 1;
    // One more than counted: the library also looks at the place behind the last.
    const HPDF_UINT bytes = (count + 1) * static_cast<HPDF_UINT>(sizeof(HPDF_UINT16));
    auto* list = static_cast<HPDF_UINT16*>(HPDF_GetMem(document->mmgr, bytes));
    std::fill_n(list, count + 1, HPDF_UINT16{0});
    const drawing::TrueType& type = drawing::font(face);
    for (const char32_t c : characters) list[c - first] = static_cast<HPDF_UINT16>(type.glyph(c));
    HPDF_FreeMem(document->mmgr, map.glyph_id_array);
    map.glyph_id_array = list;
    map.glyph_id_array_count = count;
    map.start_count[0] = static_cast<HPDF_UINT16>(first);
    map.end_count[0] = static_cast<HPDF_UINT16>(last);
    map.id_delta[0] = 0;
    // Counted in bytes from its own place in a table of as many entries, at whose end the list begins.
    map.id_range_offset[0] = 2 * entries;
    map.start_count[1] = map.end_count[1] = 0xFFFF;
    map.id_delta[1] = 1;
    map.id_range_offset[1] = 0;
    map.seg_count_x2 = 2 * entries;
}

void PdfFile::Inside::mark_components(Font& used, const std::string& words, Typeface face) {
    const drawing::TrueType& type = drawing::font(face);
    auto* attributes = static_cast<HPDF_TTFontDefAttr>(used.definition->attr);
    const std::set<char32_t>& told = expected[face];
    for (const char32_t c : drawing::characters_of(words)) {
        if (!used.marked.insert(c).second) continue;
        if (!told.contains(c)) throw PdfFailure("a character was set that its font was not told of");
        for (const int part : type.components(type.glyph(c)))
            if (part >= 0 && part < attributes->num_glyphs) attributes->glyph_tbl.flgs[part] = 1;
    }
}

void PdfFile::Inside::use_style(const StrokeStyle& style) {
    Page& now = page();
    if (!now.prepared) HPDF_Page_SetLineJoin(now.page, HPDF_ROUND_JOIN);
    now.prepared = true;
    if (now.style == style) return;
    const bool first = !now.style;
    if (first || now.style->colour != style.colour)
        HPDF_Page_SetRGBStroke(now.page, checked(style.colour.red), checked(style.colour.green),
                               checked(style.colour.blue));
    if (first || now.style->width != style.width) HPDF_Page_SetLineWidth(now.page, points(style.width));
    // Round ends close the corners of edges drawn one by one; dashes keep their length with flat ends.
    const bool continuous = style.dashes.empty();
    if (first || now.style->dashes.empty() != continuous)
        HPDF_Page_SetLineCap(now.page, continuous ? HPDF_ROUND_END : HPDF_BUTT_END);
    if ((first && !continuous) ||
        (!first && (now.style->dashes != style.dashes || now.style->dash_start != style.dash_start))) {
        std::string dashes;
        for (const double d : style.dashes) {
            if (!dashes.empty()) dashes += ' ';
            dashes += number(d * points_per_mm);
        }
        write_by_hand(fmt::format("[{}] {} d\n", dashes, number(style.dash_start * points_per_mm)));
    }
    now.style = style;
}

void PdfFile::Inside::use_fill(Colour colour) {
    Page& now = page();
    if (now.fill == colour) return;
    HPDF_Page_SetRGBFill(now.page, checked(colour.red), checked(colour.green), checked(colour.blue));
    now.fill = colour;
}

} // namespace rayfleck::writers
