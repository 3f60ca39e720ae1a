#pragma once
// A PDF file being written, in millimetres. The only door to libharu: nothing else includes its header.
//
// Every call draws one whole thing (a path with its paint, a text with its font), so no path, text or state
// can stay open. libharu 2.3.0 writes garbage for numbers that are none and clamps large ones in silence;
// here they fail. Left out on purpose, since libharu does them wrong or reads the clock for them: encryption,
// PDF/A, images.

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "drawing/text_metrics.hpp"
#include "writers/colours.hpp"

namespace rayfleck::writers {

/// The file cannot be written as asked.
class PdfFailure : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

class PdfFile {
  public:
    using Line = std::vector<drawing::Point2>;

    explicit PdfFile(bool compressed);
    ~PdfFile();
    PdfFile(const PdfFile&) = delete;
    PdfFile& operator=(const PdfFile&) = delete;

    void describe(const std::string& title, const std::string& creator, std::optional<std::int64_t> date);
    /// Asks viewers to print at 100 percent. One flag for the whole file; a driver may still scale.
    void print_at_full_size();

    /// Adds a page and draws on it from now on; width and height in mm.
    void add_page(double width, double height, const std::string& title);
    /// Names every page `sheet 3 of 12`, as its title block does; when all pages are there.
    void label_pages();
    int pages() const;
    /// Draws on an earlier page again, counted from 0.
    void turn_to(int page);

    /// Tells beforehand which characters a face will set: the library reads a font's map from end to end when
    /// the font is opened, and a short one is read quickly. Characters that were not told of are refused.
    void expect(const drawing::MeasuredText& text);

    struct StrokeStyle {
        double width = 0.25;        ///< mm
        std::vector<double> dashes; ///< mm, empty for a continuous line
        double dash_start = 0;      ///< mm into the pattern
        Colour colour;
        friend bool operator==(const StrokeStyle&, const StrokeStyle&) = default;
    };
    /// Lines of fewer than two points are left out.
    void stroke(const std::vector<Line>& lines, const StrokeStyle& style);
    /// Even-odd.
    void fill(const std::vector<Line>& rings, Colour colour);
    /// turn  degrees anticlockwise about `at`
    void text(const drawing::MeasuredText& text, drawing::Point2 at, double turn, Colour colour);
    /// An area of the present page that shows another page, counted from 0, when clicked.
    void link(drawing::Point2 low, drawing::Point2 high, int to_page);

    /// identifier  of the file, the same for the same content
    std::string save(const std::array<std::uint8_t, 16>& identifier);

  private:
    struct Inside;
    std::unique_ptr<Inside> in_;
};

} // namespace rayfleck::writers
