// Strokes that follow one another with the same pen and ink go into one path, which keeps the pages small.
// Dashed ones are cut at their corners first and get the start of their pattern from the drawing room.

#include "writers/pdf.hpp"

#include <algorithm>
#include <cmath>
#include <cstring>

#include <fmt/format.h>

#include "drawing/lines.hpp"
#include "writers/pdf_file.hpp"

namespace rayfleck::writers {
namespace {

using drawing::Point2;

/// Two FNV-1a hashes of 64 bits from different starting values. It names the file, it guards nothing.
/// Source of the constants: Internet draft "The FNV Non-Cryptographic Hash Algorithm" (Fowler, Noll, Vo).
class Digest {
  public:
    void add(const void* data, std::size_t size) {
        const auto* bytes = static_cast<const unsigned char*>(data);
        for (std::size_t i = 0; i < size; ++i) {
            first_ = (first_ ^ bytes[i]) * prime;
            second_ = (second_ ^ (bytes[i] + 0x5AU)) * prime;
        }
    }
    void add(std::uint64_t value) {
        unsigned char bytes[8];
        for (int i = 0; i < 8; ++i) bytes[i] = static_cast<unsigned char>(value >> (8 * i));
        add(bytes, sizeof bytes);
    }
    void add(double value) {
        std::uint64_t bits = 0;
        std::memcpy(&bits, &value, sizeof bits);
        add(bits);
    }
    void add(const std::string& text) {
        add(std::uint64_t{text.size()});
        add(text.data(), text.size());
    }
    void add(const std::vector<Point2>& points) {
        add(std::uint64_t{points.size()});
        for (const Point2& p : points) add(p.x), add(p.y);
    }
    std::array<std::uint8_t, 16> bytes() const {
        std::array<std::uint8_t, 16> out{};
        for (unsigned i = 0; i < 8; ++i) {
            out[i] = static_cast<std::uint8_t>(first_ >> (8 * i));
            out[i + 8] = static_cast<std::uint8_t>(second_ >> (8 * i));
        }
        return out;
    }

  private:
    static constexpr std::uint64_t prime = 0x100000001B3;
    std::uint64_t first_ = 0xCBF29CE484222325, second_ = 0x9AE16A3B2F90404F;
};

std::array<std::uint8_t, 16> digest_of(const drawing::Set& set) {
    Digest digest;
    digest.add(set.title);
    digest.add(set.creator);
    for (const drawing::Sheet& sheet : set.sheets) {
        digest.add(sheet.width), digest.add(sheet.height);
        digest.add(sheet.title);
        digest.add(std::uint64_t{sheet.full_size});
        for (const drawing::Item& item : sheet.items) {
            digest.add(std::uint64_t{item.index()});
            if (const auto* stroke = std::get_if<drawing::Stroke>(&item)) {
                digest.add(static_cast<std::uint64_t>(stroke->pen));
                digest.add(static_cast<std::uint64_t>(stroke->ink));
                digest.add(stroke->points);
            } else if (const auto* fill = std::get_if<drawing::Fill>(&item)) {
                digest.add(static_cast<std::uint64_t>(fill->ink));
                for (const auto& ring : fill->rings) digest.add(ring);
            } else if (const auto* text = std::get_if<drawing::Text>(&item)) {
                digest.add(std::vector<Point2>{text->at});
                digest.add(text->words);
                digest.add(text->height), digest.add(text->turn);
                digest.add(static_cast<std::uint64_t>(text->face));
                digest.add(static_cast<std::uint64_t>(text->ink));
            } else if (const auto* link = std::get_if<drawing::Link>(&item)) {
                digest.add(std::vector<Point2>{link->low, link->high});
                digest.add(static_cast<std::uint64_t>(link->to_sheet));
            }
        }
    }
    return digest.bytes();
}

/// Draws the items of a sheet in their order, holding strokes back while the next one looks the same.
class SheetDrawer {
  public:
    /// texts  those of the sheet, measured, in their order
    SheetDrawer(PdfFile& file, const std::vector<drawing::MeasuredText>& texts)
        : file_(file), texts_(texts) {}

    void draw(const drawing::Sheet& sheet) {
        for (const drawing::Item& item : sheet.items) std::visit([this](const auto& it) { put(it); }, item);
        strike();
    }

  private:
    void put(const drawing::Stroke& stroke) {
        for (const auto& piece : drawing::dash_pieces(stroke)) {
            // A place that is no number must reach the file's own check, not the sums for the dashes.
            const bool sound = std::all_of(piece.begin(), piece.end(),
                                           [](Point2 p) { return std::isfinite(p.x) && std::isfinite(p.y); });
            const double start = sound ? drawing::dash_start(stroke.pen, drawing::length_of(piece)) : 0;
            const PdfFile::StrokeStyle style{drawing::width_of(stroke.pen), drawing::dashes_of(stroke.pen),
                                             start, colour_of(stroke.ink)};
            if (!(style == style_)) strike();
            style_ = style;
            waiting_.push_back(piece);
        }
    }
    void put(const drawing::Fill& fill) {
        strike();
        file_.fill(fill.rings, colour_of(fill.ink));
    }
    void put(const drawing::Text& text) {
        strike();
        file_.text(texts_[next_text_++], text.at, text.turn, colour_of(text.ink));
    }
    void put(const drawing::Link& link) { file_.link(link.low, link.high, link.to_sheet); }

    void strike() {
        if (!waiting_.empty()) file_.stroke(waiting_, style_);
        waiting_.clear();
    }

    PdfFile& file_;
    const std::vector<drawing::MeasuredText>& texts_;
    std::size_t next_text_ = 0;
    PdfFile::StrokeStyle style_;
    std::vector<PdfFile::Line> waiting_;
};

} // namespace

std::string write_pdf(const drawing::Set& set, const PdfManner& manner) {
    if (set.sheets.empty()) throw PdfFailure("a PDF needs at least one sheet");
    PdfFile file(manner.compressed);
    file.describe(set.title, set.creator, manner.date);
    // All pages first: a link may lead forward.
    for (const drawing::Sheet& sheet : set.sheets) {
        const int number = file.pages() + 1;
        file.add_page(sheet.width, sheet.height,
                      sheet.title.empty() ? fmt::format("Sheet {}", number) : sheet.title);
        if (sheet.full_size) file.print_at_full_size();
    }
    file.label_pages();
    // A font must know its characters before it is opened.
    std::vector<std::vector<drawing::MeasuredText>> texts;
    for (const drawing::Sheet& sheet : set.sheets) {
        texts.emplace_back();
        for (const drawing::Item& item : sheet.items)
            if (const auto* text = std::get_if<drawing::Text>(&item)) {
                texts.back().push_back(drawing::measure_text(text->words, text->height, text->face));
                file.expect(texts.back().back());
            }
    }
    for (std::size_t i = 0; i < set.sheets.size(); ++i) {
        file.turn_to(static_cast<int>(i));
        SheetDrawer(file, texts[i]).draw(set.sheets[i]);
    }
    return file.save(digest_of(set));
}

} // namespace rayfleck::writers
