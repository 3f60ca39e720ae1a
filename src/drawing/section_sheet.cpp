// The sheet of sections: a small front view or plan with the cutting planes, the sections A–A, B–B … and the
// legend of the hatches.
//
// A cutting plane is a chain line with wide ends; the arrows at its ends point the way in which the section
// is seen, its letter stands beside each. All sections have one scale, the largest of the list at which two
// of them share a sheet that lies, and each has one that stands; where that would leave most areas too thin
// to be hatched, one sheet more is taken.

#include <algorithm>
#include <cmath>
#include <optional>

#include "drawing/filling_leaves.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"
#include "drawing/section_letters.hpp"
#include "drawing/section_view.hpp"
#include "drawing/sheets.hpp"

namespace rayfleck::drawing {
namespace {

constexpr double air = 8; ///< between blocks
constexpr double letter_height = 5.0;

/// One end of a cutting plane.
/// at    on the outline of the view
/// out   unit vector out of the view along the plane
/// sight unit vector in which the section is seen
void plane_end(Block& block, Point2 at, Point2 out, Point2 sight, const std::string& letter) {
    constexpr double off = 2, wide = 6, arrow = 6, head = 3.5;
    const auto place = [&](double along, double aside) {
        return Point2{at.x + out.x * along + sight.x * aside, at.y + out.y * along + sight.y * aside};
    };
    block.line(place(off, 0), place(off + wide, 0), Pen::cutting_plane, Role::mark);
    const Point2 from = place(off + wide, 0.25), to = place(off + wide, arrow);
    block.line(from, place(off + wide, arrow - head), Pen::thin, Role::mark);
    block.fill({arrowhead(to, sight, head)}, Ink::black);
    // The letter stands beyond the plane's end, clear of others that end near by.
    const double width = text_width(letter, letter_height, Typeface::lettering);
    for (const double aside : {0.0, -5.0, 5.0, -10.0, 10.0}) {
        const Point2 middle = place(off + wide + 2.5 + std::max(width, letter_height) / 2, aside);
        const Text text{{middle.x - width / 2, middle.y - letter_height / 2},
                        letter,
                        letter_height,
                        Typeface::lettering,
                        Ink::black,
                        0};
        if (aside != 10.0 && !block.occupied().free_for_text(text_box(text), 0.5)) continue;
        block.text(text);
        break;
    }
}

/// A small view with the planes that show as lines in it.
Block key_view(const Job& job, const Seen& seen, const solid::View& view,
               const std::vector<Section>& sections, const std::vector<int>& axes, double most) {
    Block block;
    const std::vector<Scale>& list = scales(job.manner.unit);
    const Scale* scale = &list.back();
    for (const Scale& s : list)
        if (s.factor <= 0.5 && seen.box.width() * s.factor <= most && seen.box.height() * s.factor <= most) {
            scale = &s;
            break;
        }
    draw_seen(block, seen, scale->factor, {0, 0});
    const double width = seen.box.width() * scale->factor, height = seen.box.height() * scale->factor;
    for (const Section& section : sections) {
        if (std::find(axes.begin(), axes.end(), section.plane.axis) == axes.end()) continue;
        measure::Vector axis;
        axis[section.plane.axis] = 1;
        const double along_right = dot(axis, view.right), along_up = dot(axis, view.up);
        const bool plumb = std::abs(along_right) > 0.5;
        const Point2 sight{-dot(section.view.towards, view.right), -dot(section.view.towards, view.up)};
        const double at = plumb ? (section.plane.at * along_right - seen.box.left) * scale->factor
                                : (section.plane.at * along_up - seen.box.bottom) * scale->factor;
        const Point2 low = plumb ? Point2{at, 0} : Point2{0, at},
                     high = plumb ? Point2{at, height} : Point2{width, at};
        const Point2 out = plumb ? Point2{0, 1} : Point2{1, 0};
        block.line({low.x - out.x * 2, low.y - out.y * 2}, {high.x + out.x * 2, high.y + out.y * 2},
                   Pen::centre, Role::centre);
        plane_end(block, low, {-out.x, -out.y}, sight, section.letter);
        plane_end(block, high, out, sight, section.letter);
    }
    const std::string caption = std::string(view.towards.z > 0.5 ? "plan" : "front") +
                                ": where the sections are cut, " + scale->ratio;
    block.text({{block.box().left, block.box().bottom - 4 - note_height},
                caption,
                note_height,
                Typeface::lettering,
                Ink::black,
                0});
    return block;
}

FillingLeaves laid_out(const Job& job, const Hatching& hatching, const std::vector<Section>& sections,
                       const std::vector<Block>& keys, const Scale& scale) {
    FillingLeaves leaves(job, "sections", scale.words, air);
    ToldOpenings told;
    for (const Block& key : keys) leaves.stand({key});
    for (const Section& section : sections)
        leaves.stand({section_view(job, hatching, section, scale, told)}, section.letter);
    leaves.stand({legend_of_hatches(job)});
    return leaves;
}

/// Of all cut areas, mm of wood.
std::vector<double> thicknesses(const std::vector<Section>& sections) {
    std::vector<double> found;
    for (const Section& section : sections)
        for (const solid::CutArea& area : section.cut.areas)
            for (const Rings& stretch : connected(area.rings)) found.push_back(strip_thickness(stretch));
    return found;
}

double share_filled(const std::vector<double>& thicknesses, double factor) {
    const auto filled = std::count_if(thicknesses.begin(), thicknesses.end(),
                                      [&](double t) { return t * factor < filled_below; });
    return static_cast<double>(filled) / static_cast<double>(std::max<std::size_t>(1, thicknesses.size()));
}

} // namespace

std::vector<Leaf> section_sheets(const Job& job, const WholeSeen& seen, int& letters_used) {
    if (job.placed.size() < 2) return {};
    std::vector<Section> sections;
    for (const SectionPlane& plane : choose_section_planes(job)) {
        Section section = cut_section(job, plane, letter_of(letters_used));
        if (section.cut.areas.empty()) continue;
        ++letters_used;
        sections.push_back(std::move(section));
    }
    if (sections.empty()) return {};
    const Hatching hatching(job);
    const double most = job.paper.upright() ? 50 : 75;
    std::vector<Block> keys;
    const auto any_of_axes = [&](const std::vector<int>& axes) {
        return std::any_of(sections.begin(), sections.end(), [&](const Section& s) {
            return std::find(axes.begin(), axes.end(), s.plane.axis) != axes.end();
        });
    };
    if (any_of_axes({0, 2}))
        keys.push_back(key_view(job, seen.front, solid::front_view(), sections, {0, 2}, most));
    if (any_of_axes({1})) keys.push_back(key_view(job, seen.plan, solid::top_view(), sections, {1}, most));

    const std::size_t enough = job.paper.upright() ? sections.size() : (sections.size() + 1) / 2;
    const std::vector<double> thin = thicknesses(sections);
    const std::vector<Scale>& list = scales(job.manner.unit);
    std::optional<FillingLeaves> open;
    int tries = 0;
    for (const Scale& scale : list) {
        if (scale.factor > 1 + 1e-9) continue;
        std::vector<Rect> sizes;
        for (const Block& key : keys) sizes.push_back(key.box());
        for (const Section& section : sections) sizes.push_back(room_round_section(section, scale.factor));
        const std::size_t needed = FillingLeaves::needed(job, sizes, air);
        const bool last = &scale == &list.back();
        // One sheet more is well spent where the next smaller scale would fill most areas black.
        const bool smaller_fills = !last && share_filled(thin, (&scale + 1)->factor) > 0.4;
        if (!last && (needed == 0 || needed > enough + (smaller_fills ? 1 : 0))) continue;
        open.emplace(laid_out(job, hatching, sections, keys, scale));
        if (open->count() <= enough + 1 || ++tries == 2) break;
    }
    std::vector<Leaf> leaves;
    if (!open) return leaves;
    for (FillingLeaves::Filled& o : open->filled()) {
        o.leaf.title = o.first.empty() ? "Sections, hatches"
                       : o.first == o.last
                           ? "Section " + o.first + "–" + o.first
                           : "Sections " + o.first + "–" + o.first + " to " + o.last + "–" + o.last;
        leaves.push_back(std::move(o.leaf));
    }
    return leaves;
}

} // namespace rayfleck::drawing
