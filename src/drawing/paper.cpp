// Sizes: ISO 216 for A4 to A2; 8-1/2 × 11 in and 11 × 17 in for Letter and Tabloid. Fields: ISO 7200 names
// the owner, identification number, date, sheet number, title, approval, creator and document type as
// mandatory; revision and number of sheets as optional. Scale, projection symbol, units, material and
// moisture are ours.
//
// The block, 180 mm wide (widths in mm):
//
//   | owner 66                | material 66             | moisture 48      |
//   | created by 36 | approved by 36 | document type 46 | units 14 | symbol 22 | scale 26 |
//   | title 82                          | number 40 | rev. 10 | date 26 | sheet 22 |

#include "drawing/paper.hpp"

#include <algorithm>
#include <cctype>

#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"

namespace rayfleck::drawing {
namespace {

constexpr double block_width = 180;
constexpr double row_height = 9.5;
constexpr double block_height = 3 * row_height;

struct Field {
    std::string label, value;
    double width = 0;
};

void set_row(Block& block, Point2 corner, const std::vector<Field>& fields,
             const std::vector<double>& heights) {
    double x = corner.x;
    for (const Field& field : fields) {
        if (x > corner.x) block.line({x, corner.y}, {x, corner.y + row_height}, Pen::thin, Role::table);
        if (!field.label.empty()) {
            const std::string label = cut_to(field.label, field.width - 2.4, note_height, Typeface::sans);
            block.text(
                {{x + 1.2, corner.y + row_height - 3.1}, label, note_height, Typeface::sans, Ink::grey, 0});
            Text value = fitted(field.value.empty() ? "–" : field.value, field.width - 2.4, heights,
                                Typeface::lettering);
            value.at = {x + 1.2, corner.y + 1.3};
            block.text(value);
        }
        x += field.width;
    }
}

} // namespace

Rect Paper::title_block() const {
    const Rect f = frame();
    return {f.right - block_width, f.bottom, f.right, f.bottom + block_height};
}

Paper paper(const std::string& name) {
    std::string plain;
    for (const char c : name) plain += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    if (plain == "a4") return {"A4", 210, 297, 2.5};
    if (plain == "a2") return {"A2", 594, 420, 3.5};
    if (plain == "letter") return {"Letter", 215.9, 279.4, 2.5};
    if (plain == "tabloid" || plain == "ledger") return {"Tabloid", 431.8, 279.4, 3.5};
    return {"A3", 420, 297, 3.5};
}

namespace {

/// The scale of a field too narrow for all its words, as for `1/2" = 1'-0" (1:24)`: the plain ratio.
std::string scale_for(const std::string& scale, double width, double height) {
    const std::size_t open = scale.find('('), close = scale.find(')');
    if (text_width(scale, height, Typeface::lettering) <= width || open == std::string::npos ||
        close == std::string::npos || close < open)
        return scale;
    return scale.substr(open + 1, close - open - 1);
}

/// Gives fields too narrow for their words, at the smallest lettering, what the others of their row can
/// spare.
void widen_longest(std::vector<Field>& row, double height) {
    const auto need = [&](const Field& field) {
        return std::max(text_width(field.value, height, Typeface::lettering),
                        text_width(field.label, note_height, Typeface::sans)) +
               2.8;
    };
    for (Field& narrow : row)
        for (Field& wide : row) {
            const double wanted = need(narrow) - narrow.width, spare = wide.width - need(wide);
            if (wanted <= 0 || spare <= 0) continue;
            const double give = std::min(wanted, spare);
            narrow.width += give, wide.width -= give;
        }
}

} // namespace

Block sheet_frame(const Paper& paper, const TitleFields& fields) {
    Block block;
    const Rect frame = paper.frame();
    block.frame(frame, Pen::visible, Role::frame);

    const Rect title = paper.title_block();
    // Only the two sides that are not frame already.
    if (title.left > frame.left + 0.5)
        block.stroke({{title.left, title.bottom}, {title.left, title.top}, {title.right, title.top}},
                     Pen::visible, Role::frame);
    else
        block.line({title.left, title.top}, {title.right, title.top}, Pen::visible, Role::frame);
    for (int row = 1; row < 3; ++row)
        block.line({title.left, title.bottom + row * row_height},
                   {title.right, title.bottom + row * row_height}, Pen::thin, Role::table);

    const std::vector<double> usual{3.5, 3.0, 2.5};
    std::vector<Field> first{{"owner", fields.owner, 66},
                             {"material", fields.material, 66},
                             {"sizes at moisture", fields.moisture, 48}};
    widen_longest(first, usual.back());
    set_row(block, {title.left, title.bottom + 2 * row_height}, first, usual);
    set_row(block, {title.left, title.bottom + row_height},
            {{"created by", fields.creator, 36},
             {"approved by", fields.approved_by, 36},
             {"document type", fields.document_type, 46},
             {"units", fields.units, 14},
             {"", "", 22},
             {"scale", scale_for(fields.scale, 26 - 2.4, usual.back()), 26}},
            usual);
    projection_symbol(block, {title.left + 132 + 11, title.bottom + 1.5 * row_height}, 3.2,
                      fields.first_angle);
    set_row(block, {title.left, title.bottom},
            {{"title", fields.title, 82},
             {"number", fields.identification, 40},
             {"rev.", fields.revision, 10},
             {"date", fields.date, 26},
             {"sheet", std::to_string(fields.sheet) + " of " + std::to_string(fields.sheets), 22}},
            {3.5, 3.0, 2.5});
    return block;
}

} // namespace rayfleck::drawing
