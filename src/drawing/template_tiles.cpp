// Everything is drawn once, on the net of all tiles, and cut afterwards: what two pages share is the same on
// both.

#include "drawing/template_tiles.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "drawing/lettering.hpp"
#include "drawing/lines.hpp"
#include "drawing/view.hpp"

namespace rayfleck::drawing {
namespace {

/// The outline keeps this far off the border of the outermost windows.
constexpr double border = 2;
constexpr double cross_arm = 4;
/// How far centre lines run past the outline.
constexpr double past_outline = 4;

int cells_for(double size, double cell) {
    return std::max(1, static_cast<int>(std::ceil((size + 2 * border - 2 * half_overlap) / cell - 1e-9)));
}

/// The stretches of a polyline inside a rectangle.
std::vector<std::vector<Point2>> inside(const std::vector<Point2>& line, const Rect& rect) {
    std::vector<std::vector<Point2>> runs;
    bool open = false;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        const Point2 a = line[i], b = line[i + 1];
        const double dx = b.x - a.x, dy = b.y - a.y;
        double from = 0, to = 1;
        const auto keep = [&](double step, double room) {
            if (std::abs(step) < 1e-12) return room >= 0;
            if (step > 0)
                to = std::min(to, room / step);
            else
                from = std::max(from, room / step);
            return from <= to;
        };
        if (!keep(-dx, a.x - rect.left) || !keep(dx, rect.right - a.x) || !keep(-dy, a.y - rect.bottom) ||
            !keep(dy, rect.top - a.y)) {
            open = false;
            continue;
        }
        if (!open || from > 0) runs.push_back({{a.x + from * dx, a.y + from * dy}});
        runs.back().push_back({a.x + to * dx, a.y + to * dy});
        open = to >= 1;
    }
    std::erase_if(runs, [](const std::vector<Point2>& run) { return length_of(run) < 0.05; });
    return runs;
}

std::string letter(int n) {
    std::string word(1, static_cast<char>('A' + n % 26));
    return n < 26 ? word : std::string(1, static_cast<char>('A' + n / 26 - 1)) + word;
}

/// A letter on the border between two cells, in both of their windows, where no line is.
void matching_letter(Block& block, Point2 from, Point2 to, const std::string& words) {
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    const double width = text_width(words, heading_height, Typeface::sans_bold);
    const double room = cross_arm + 4;
    for (int i = 0;; ++i) {
        // From the middle outwards.
        const double aside = (i + 1) / 2 * 5.0 * (i % 2 == 0 ? 1 : -1);
        if (std::abs(aside) > length / 2 - room) return;
        const double t = 0.5 + aside / length;
        const Point2 p{from.x + t * (to.x - from.x) - width / 2,
                       from.y + t * (to.y - from.y) - heading_height / 2};
        Text text{p, words, heading_height, Typeface::sans_bold, Ink::black, 0};
        if (!block.occupied().free_for_text(text_box(text), 0.6)) continue;
        block.text(std::move(text));
        return;
    }
}

void break_line(Block& block, const TileNet& net, double x) {
    const Rect& area = net.field->area;
    const double low = area.bottom - 2, high = area.top + 2, middle = (low + high) / 2;
    std::vector<Point2> points;
    for (const Point2 p : {Point2{x, low}, Point2{x, middle - 1.5}, Point2{x - 1.1, middle - 0.75},
                           Point2{x + 1.1, middle + 0.75}, Point2{x, middle + 1.5}, Point2{x, high}})
        points.push_back(net.on_net(p));
    block.stroke(std::move(points), Pen::thin, Role::mark);
}

void cross(Block& block, Point2 at, double arm, Pen pen, Role role) {
    block.line({at.x - arm, at.y}, {at.x + arm, at.y}, pen, role);
    block.line({at.x, at.y - arm}, {at.x, at.y + arm}, pen, role);
}

std::vector<Segment2> sides_of(const std::vector<std::vector<Point2>>& rings) {
    std::vector<Segment2> sides;
    for (const auto& ring : rings)
        for (std::size_t i = 0; i < ring.size(); ++i) sides.push_back({ring[i], ring[(i + 1) % ring.size()]});
    return sides;
}

} // namespace

Rect TileNet::on_net(const Rect& r) const {
    const Point2 p = on_net(Point2{r.left, r.bottom}), q = on_net(Point2{r.right, r.top});
    return {std::min(p.x, q.x), std::min(p.y, q.y), std::max(p.x, q.x), std::max(p.y, q.y)};
}

Rect TileNet::window(int row, int column) const {
    const double left = (column - 1) * cell_width, bottom = (rows - row) * cell_height;
    return grown({left, bottom, left + cell_width, bottom + cell_height}, half_overlap);
}

TileNet net_of(const Shaped& shaped, const TemplateField& field) {
    TileNet net;
    net.shaped = &shaped, net.field = &field;
    const double along = field.area.width(), across = field.area.height();
    const int level = cells_for(along, cell_width) * cells_for(across, cell_height),
              plumb = cells_for(across, cell_width) * cells_for(along, cell_height);
    net.upright = plumb < level;
    net.columns = cells_for(net.upright ? across : along, cell_width);
    net.rows = cells_for(net.upright ? along : across, cell_height);
    const Rect turned = net.on_net(field.area);
    net.shift = {net.columns * cell_width / 2 - turned.middle().x,
                 net.rows * cell_height / 2 - turned.middle().y};
    return net;
}

Block whole_template(const TileNet& net, const joinery::Made& made) {
    const Shaped& shaped = *net.shaped;
    const Rect& area = net.field->area;
    Block block;
    const auto draw = [&](const std::vector<Point2>& line, Pen pen, Role role) {
        for (std::vector<Point2> run : inside(line, area)) {
            for (Point2& p : run) p = net.on_net(p);
            block.stroke(std::move(run), pen, role);
        }
    };
    const Seen seen = look_at({{&made.solid, &made.blank_shape, &made.tools, {}}}, shaped.view, true);
    const std::vector<Segment2> outline = sides_of(shaped.rings);
    const std::vector<Segment2> visible = thinned(seen.visible, 0.7, outline);
    std::vector<Segment2> all = outline;
    all.insert(all.end(), visible.begin(), visible.end());
    for (const auto& line : chained(thinned(seen.hidden, 0.7, all))) draw(line, Pen::hidden, Role::edge);
    for (const auto& line : chained(visible)) draw(line, Pen::visible, Role::edge);
    for (std::vector<Point2> ring : shaped.rings) {
        ring.push_back(ring.front());
        draw(ring, Pen::visible, Role::edge);
    }
    for (const Shaped::Hole& hole : shaped.holes) {
        const double arm = hole.diameter / 2 + 3;
        draw({{hole.centre.x - arm, hole.centre.y}, {hole.centre.x + arm, hole.centre.y}}, Pen::thin,
             Role::centre);
        draw({{hole.centre.x, hole.centre.y - arm}, {hole.centre.x, hole.centre.y + arm}}, Pen::thin,
             Role::centre);
    }
    const auto centre_line = [&](Point2 a, Point2 b) {
        block.line(net.on_net(a), net.on_net(b), Pen::centre, Role::centre);
    };
    if (shaped.half_width)
        centre_line({area.left - past_outline, area.bottom}, {area.right + past_outline, area.bottom});
    if (shaped.half_length && area.right > shaped.box.middle().x - 1e-6)
        centre_line({area.right, area.bottom - past_outline}, {area.right, area.top + past_outline});
    if (net.field->broken_low) break_line(block, net, area.left);
    if (net.field->broken_high) break_line(block, net, area.right);
    for (int i = 0; i <= net.columns; ++i)
        for (int j = 0; j <= net.rows; ++j)
            cross(block, {i * cell_width, j * cell_height}, cross_arm, Pen::thin, Role::mark);
    int letters = 0;
    for (int j = net.rows - 1; j >= 0; --j)
        for (int i = 0; i < net.columns; ++i) {
            const double left = i * cell_width, bottom = j * cell_height;
            if (i + 1 < net.columns)
                matching_letter(block, {left + cell_width, bottom}, {left + cell_width, bottom + cell_height},
                                letter(letters++));
            if (j > 0) matching_letter(block, {left, bottom}, {left + cell_width, bottom}, letter(letters++));
        }
    return block;
}

Block cut_to_window(const Block& whole, const Rect& window) {
    Block page;
    for (const Item& item : whole.items()) {
        if (const auto* stroke = std::get_if<Stroke>(&item))
            for (std::vector<Point2>& run : inside(stroke->points, window))
                page.stroke(std::move(run), stroke->pen, stroke->role, stroke->ink);
        if (const auto* text = std::get_if<Text>(&item)) {
            const Rect box = around(text_box(*text));
            if (box.left >= window.left && box.right <= window.right && box.bottom >= window.bottom &&
                box.top <= window.top)
                page.text(*text);
        }
    }
    return page;
}

} // namespace rayfleck::drawing
