// One unit of the picture is one millimetre. The file holds no fonts: each run names its width (textLength),
// so text keeps its place and its room also where another font stands in.

#include "writers/svg.hpp"

#include <cmath>
#include <stdexcept>

#include <fmt/format.h>

#include "drawing/fonts/characters.hpp"
#include "drawing/lines.hpp"
#include "drawing/text_metrics.hpp"
#include "writers/colours.hpp"

namespace rayfleck::writers {
namespace {

using drawing::Point2;

/// A number with at most three decimals, no trailing zeros, no locale.
std::string number(double value) {
    if (!std::isfinite(value) || std::abs(value) > 1e9)
        throw std::invalid_argument("a place on a sheet is no number");
    std::string out = fmt::format("{:.3f}", value);
    while (out.back() == '0') out.pop_back();
    if (out.back() == '.') out.pop_back();
    return out == "-0" ? "0" : out;
}

/// Text between tags or in quotes. Characters that XML 1.0 does not allow go.
std::string escaped(const std::string& words) {
    std::u32string out;
    for (const char32_t c : drawing::characters_of(words)) {
        switch (c) {
        case U'&':
            out += U"&amp;";
            break;
        case U'<':
            out += U"&lt;";
            break;
        case U'>':
            out += U"&gt;";
            break;
        case U'"':
            out += U"&quot;";
            break;
        default:
            if ((c >= 0x20 || c == U'\t' || c == U'\n') && c != 0xFFFE && c != 0xFFFF) out += c;
        }
    }
    return drawing::utf8_of(out);
}

std::string colour(drawing::Ink ink) {
    const Colour c = colour_of(ink);
    const char* digits = "0123456789abcdef";
    std::string out = "#";
    for (const double share : {c.red, c.green, c.blue}) {
        const auto level = static_cast<unsigned>(std::lround(share * 255));
        out += digits[level / 16];
        out += digits[level % 16];
    }
    return out;
}

const char* family(drawing::Typeface face) {
    switch (face) {
    case drawing::Typeface::lettering:
        return "'Routed Gothic', 'DejaVu Sans Condensed', Arial, sans-serif";
    case drawing::Typeface::sans:
    case drawing::Typeface::sans_bold:
        break;
    }
    return "'DejaVu Sans Condensed', 'DejaVu Sans', Arial, sans-serif";
}

class Picture {
  public:
    explicit Picture(const drawing::Sheet& sheet) : height_(sheet.height) {
        out_ = fmt::format("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                           "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{0}mm\" height=\"{1}mm\" "
                           "viewBox=\"0 0 {0} {1}\">\n",
                           number(sheet.width), number(sheet.height));
        if (!sheet.title.empty()) add("<title>{}</title>\n", escaped(sheet.title));
        add("<rect width=\"{}\" height=\"{}\" fill=\"#ffffff\"/>\n", number(sheet.width),
            number(sheet.height));
        for (const drawing::Item& item : sheet.items) std::visit([this](const auto& it) { put(it); }, item);
        out_ += "</svg>\n";
    }
    std::string done() { return std::move(out_); }

  private:
    template <class... Parts> void add(fmt::format_string<Parts...> form, Parts&&... parts) {
        out_ += fmt::format(form, std::forward<Parts>(parts)...);
    }

    std::string place(Point2 p) const { return fmt::format("{} {}", number(p.x), number(height_ - p.y)); }

    std::string path(const std::vector<Point2>& points) const {
        const bool closed =
            points.size() > 3 && points.front().x == points.back().x && points.front().y == points.back().y;
        std::string out;
        for (std::size_t i = 0; i + (closed ? 1 : 0) < points.size(); ++i) {
            out += i == 0 ? 'M' : 'L';
            out += place(points[i]);
        }
        if (closed) out += 'Z';
        return out;
    }

    void put(const drawing::Stroke& stroke) {
        std::string dashes;
        for (const double d : drawing::dashes_of(stroke.pen)) {
            if (!dashes.empty()) dashes += ' ';
            dashes += number(d);
        }
        for (const auto& piece : drawing::dash_pieces(stroke)) {
            if (piece.size() < 2) continue;
            add("<path d=\"{}\" fill=\"none\" stroke=\"{}\" stroke-width=\"{}\" stroke-linejoin=\"round\"",
                path(piece), colour(stroke.ink), number(drawing::width_of(stroke.pen)));
            if (dashes.empty()) {
                out_ += " stroke-linecap=\"round\"/>\n";
            } else {
                add(" stroke-dasharray=\"{}\" stroke-dashoffset=\"{}\"/>\n", dashes,
                    number(drawing::dash_start(stroke.pen, drawing::length_of(piece))));
            }
        }
    }

    void put(const drawing::Fill& fill) {
        std::string outline;
        for (const auto& ring : fill.rings)
            if (ring.size() >= 3) outline += path(ring);
        if (outline.empty()) return;
        add("<path d=\"{}\" fill=\"{}\" fill-rule=\"evenodd\"/>\n", outline, colour(fill.ink));
    }

    void put(const drawing::Text& text) {
        const drawing::MeasuredText set = drawing::measure_text(text.words, text.height, text.face);
        if (set.pieces.empty()) return;
        add("<g transform=\"translate({})", place(text.at));
        if (text.turn != 0) add(" rotate({})", number(-text.turn));
        add("\" fill=\"{}\" font-family=\"{}\"", colour(text.ink), family(set.face));
        if (set.face != drawing::Typeface::lettering) out_ += " font-stretch=\"condensed\"";
        if (set.face == drawing::Typeface::sans_bold) out_ += " font-weight=\"bold\"";
        out_ += ">";
        for (const drawing::TextPiece& piece : set.pieces) {
            if (!piece.says.empty()) add("<g aria-label=\"{}\">", escaped(piece.says));
            for (const drawing::TypeRun& run : piece.runs) {
                if (run.words == " ") continue;
                add("<text x=\"{}\" y=\"{}\" font-size=\"{}\" textLength=\"{}\" "
                    "lengthAdjust=\"spacingAndGlyphs\" "
                    "xml:space=\"preserve\">{}</text>",
                    number(run.x), number(-run.y), number(drawing::type_size(run.cap_height, set.face)),
                    number(run.width), escaped(run.words));
            }
            for (const drawing::FractionBar& bar : piece.bars)
                add("<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"/>", number(bar.from),
                    number(-bar.y - bar.thickness / 2), number(bar.to - bar.from), number(bar.thickness));
            if (!piece.says.empty()) out_ += "</g>";
        }
        out_ += "</g>\n";
    }

    /// Another sheet is another file, so there is nowhere to lead to.
    void put(const drawing::Link&) {}

    double height_;
    std::string out_;
};

} // namespace

std::string write_svg(const drawing::Sheet& sheet) { return Picture(sheet).done(); }

} // namespace rayfleck::writers
