// Rules D1 to D40 are those of the drawing
// conventions that the sheets follow (ISO 5457, 128, 129, 5455, and house values).

#include "written_pdf.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <optional>
#include <regex>

#include <fmt/format.h>

#include "painted.hpp"

namespace rayfleck::testing {
namespace {

using namespace painted;

/// Two convex areas share more than a border of `slack` mm.
bool overlap(const std::vector<Place>& p, const std::vector<Place>& q, double slack) {
    for (const auto* polygon : {&p, &q})
        for (std::size_t i = 0; i < polygon->size(); ++i) {
            const Place a = (*polygon)[i], b = (*polygon)[(i + 1) % polygon->size()];
            const double length = std::hypot(b.x - a.x, b.y - a.y);
            if (length < 1e-9) continue;
            const double nx = (b.y - a.y) / length, ny = (a.x - b.x) / length;
            double low[2] = {1e9, 1e9}, high[2] = {-1e9, -1e9};
            for (int k = 0; k < 2; ++k)
                for (const Place& c : k == 0 ? p : q) {
                    low[k] = std::min(low[k], c.x * nx + c.y * ny);
                    high[k] = std::max(high[k], c.x * nx + c.y * ny);
                }
            if (high[0] <= low[1] + slack || high[1] <= low[0] + slack) return false;
        }
    return true;
}

struct Around {
    double left = 1e9, bottom = 1e9, right = -1e9, top = -1e9;
    void take(Place p) {
        left = std::min(left, p.x), right = std::max(right, p.x);
        bottom = std::min(bottom, p.y), top = std::max(top, p.y);
    }
    bool apart(const Around& o) const {
        return left > o.right || right < o.left || bottom > o.top || top < o.bottom;
    }
};
Around round(const std::vector<Place>& points) {
    Around all;
    for (const Place& p : points) all.take(p);
    return all;
}

/// A figure of a drawing: `448.5`, `3× 32`, `(120)`.
std::optional<double> figure_of(const std::string& says) {
    static const std::regex plain("\\(?(?:([0-9]+)× )?([0-9]+(?:\\.[0-9]+)?)\\)?");
    std::smatch found;
    if (!std::regex_match(says, found, plain)) return std::nullopt;
    const double times = found[1].matched ? std::atof(found[1].str().c_str()) : 1;
    return times * std::atof(found[2].str().c_str());
}

/// Units of a sheet, as its title block names them, and half the step to which their figures are rounded when
/// the maker says nothing finer or coarser than 1/16 in.
struct Unit {
    const char* name = "mm";
    double mm = 1, half_step = 0.05;
};
constexpr Unit units[] = {{"in", 25.4, 0.8}, {"cm", 10, 0.5}, {"m", 1000, 50}};

class PageAudit {
  public:
    PageAudit(const Page& page, PdfAudit& out) : page_(page), out_(out) {
        for (const Path& path : page.strokes)
            for (const auto& line : path.lines)
                for (std::size_t i = 1; i < line.size(); ++i) lines_.push_back({line[i - 1], line[i]});
        for (const Words& w : page.words)
            if (w.says.find("print at 100 %") != std::string::npos) is_template_ = true;
        for (const Words& w : page.words)
            for (const Unit& u : units)
                if (w.says == u.name && w.box[0].y < 40) unit_ = u;
        figures_ = figures();
    }

    void look() {
        size();
        frame();
        lines();
        lettering();
        texts_apart();
        texts_clear_of_lines();
        scales();
        if (is_template_) bars();
        out_.strokes += static_cast<int>(page_.strokes.size());
        out_.texts += static_cast<int>(page_.words.size());
        out_.templates += is_template_;
    }

  private:
    template <typename... Args> void fault(fmt::format_string<Args...> words, Args&&... args) {
        out_.faults.push_back(fmt::format("page {}: ", out_.pages) +
                              fmt::format(words, std::forward<Args>(args)...));
    }

    void size() {
        const std::pair<double, double> sizes[] = {
            {210, 297}, {420, 297}, {594, 420}, {215.9, 279.4}, {431.8, 279.4}};
        if (std::none_of(std::begin(sizes), std::end(sizes), [&](const auto& s) {
                return std::abs(s.first - page_.width) < 0.1 && std::abs(s.second - page_.height) < 0.1;
            }))
            fault("D1: {:.1f} × {:.1f} mm is no listed sheet", page_.width, page_.height);
    }

    void frame() {
        const double right = page_.width - 10, top = page_.height - 10;
        bool framed = false;
        const auto outside = [&](Place p) {
            return p.x < 20 - 0.02 || p.y < 10 - 0.02 || p.x > right + 0.02 || p.y > top + 0.02;
        };
        for (const Path& path : page_.strokes)
            for (const auto& line : path.lines) {
                const Around box = round(line);
                framed = framed || (line.size() == 5 && path.width > 0.4 && std::abs(box.left - 20) < 0.02 &&
                                    std::abs(box.bottom - 10) < 0.02 && std::abs(box.right - right) < 0.02 &&
                                    std::abs(box.top - top) < 0.02);
                for (const Place& p : line)
                    if (outside(p)) fault("D2: a line runs outside the frame at {:.1f}, {:.1f}", p.x, p.y);
            }
        for (const Path& path : page_.fills)
            for (const auto& ring : path.lines)
                for (const Place& p : ring)
                    if (outside(p)) fault("D2: a fill reaches outside the frame at {:.1f}, {:.1f}", p.x, p.y);
        for (const Words& w : page_.words)
            if (std::any_of(w.box.begin(), w.box.end(), outside))
                fault("D2: `{}` stands outside the frame", w.says);
        if (!framed) fault("D2: no frame");
    }

    static bool near_share(double value, double wanted) { return std::abs(value - wanted) <= 0.1 * wanted; }

    void lines() {
        for (const Path& path : page_.strokes) {
            const bool wide = std::abs(path.width - 0.5) < 0.003,
                       narrow = std::abs(path.width - 0.25) < 0.003;
            if (path.lines.empty()) continue;
            const Place at = path.lines[0][0];
            if (!wide && !narrow)
                fault("D6: a line {:.3f} mm wide at {:.1f}, {:.1f}", path.width, at.x, at.y);
            if (path.dashes.empty()) continue;
            const double d = path.width;
            std::vector<std::vector<double>> known{{24, 3, 0.5, 3}};
            // Wide lines are continuous, cutting planes apart.
            if (narrow) known.insert(known.end(), {{12, 3}, {24, 3, 0.5, 3, 0.5, 3}});
            const bool ok = std::any_of(known.begin(), known.end(), [&](const std::vector<double>& k) {
                bool same = k.size() == path.dashes.size();
                for (std::size_t i = 0; same && i < k.size(); ++i)
                    same = near_share(path.dashes[i], k[i] * d);
                return same;
            });
            if (!ok)
                fault("{}: a {} line dashed {:.2f} by {:.2f} mm at {:.1f}, {:.1f}", wide ? "D7" : "D8",
                      wide ? "wide" : "narrow", path.dashes[0],
                      path.dashes.size() > 1 ? path.dashes[1] : path.dashes[0], at.x, at.y);
        }
    }

    /// The figures of a built fraction are small; a bar lies over or under them.
    bool has_bar(const Words& w) const {
        const Around box = round(w.box);
        for (const Path& path : page_.fills)
            for (const auto& ring : path.lines) {
                const Around bar = round(ring);
                const double wide = bar.right - bar.left, high = bar.top - bar.bottom;
                if (std::min(wide, high) > 0.5) continue;
                const bool level = wide >= high;
                const double gap = level ? std::max(bar.bottom - box.top, box.bottom - bar.top)
                                         : std::max(bar.left - box.right, box.left - bar.right);
                const bool beside = level ? box.left >= bar.left - 0.3 && box.right <= bar.right + 0.3
                                          : box.bottom >= bar.bottom - 0.3 && box.top <= bar.top + 0.3;
                if (beside && gap > -0.1 && gap < 1) return true;
            }
        return false;
    }

    void lettering() {
        for (const Words& w : page_.words) {
            const double high = w.size * cap_share(w.lettering);
            if (high >= 2.5 - 0.02) continue;
            const bool figures = w.says.find_first_not_of("0123456789") == std::string::npos;
            if (figures && high >= 0.62 * 2.5 - 0.02 && has_bar(w)) continue;
            fault("D33: `{}` is {:.2f} mm high", w.says, high);
        }
    }

    void texts_apart() {
        std::vector<Around> rounds;
        for (const Words& w : page_.words) rounds.push_back(round(w.box));
        for (std::size_t i = 0; i < page_.words.size(); ++i)
            for (std::size_t j = i + 1; j < page_.words.size(); ++j)
                if (!rounds[i].apart(rounds[j]) && overlap(page_.words[i].box, page_.words[j].box, 0.05))
                    fault("D34: `{}` and `{}` overlap at {:.1f}, {:.1f}", page_.words[i].says,
                          page_.words[j].says, rounds[i].left, rounds[i].bottom);
    }

    void texts_clear_of_lines() {
        for (const Words& w : page_.words) {
            const Around box = round(w.box);
            for (const Line& line : lines_) {
                if (box.apart(round({line.a, line.b})) || !overlap(w.box, {line.a, line.b}, 0.02)) continue;
                fault("D35: a line crosses `{}` at {:.1f}, {:.1f}", w.says, box.left, box.bottom);
                break;
            }
        }
    }

    /// Points of arrowheads, and middles of the dots that stand for arrows where links are short.
    std::vector<Place> ends_of_links() const {
        std::vector<Place> points;
        for (const Path& path : page_.fills)
            for (const auto& ring : path.lines) {
                std::vector<Place> corners = ring;
                if (std::hypot(corners.front().x - corners.back().x, corners.front().y - corners.back().y) <
                    1e-6)
                    corners.pop_back();
                const Around box = round(corners);
                if (corners.size() == 3)
                    points.insert(points.end(), corners.begin(), corners.end());
                else if (corners.size() > 8 && box.right - box.left < 2.5)
                    points.push_back({(box.left + box.right) / 2, (box.bottom + box.top) / 2});
            }
        return points;
    }

    /// A zig-zag between two places of a dimension: something is left out there.
    bool is_broken(const Line& dimension) const {
        for (const Path& path : page_.strokes)
            for (const auto& line : path.lines) {
                if (line.size() != 6 || !path.dashes.empty() || path.width > 0.3) continue;
                const Around box = round(line);
                const bool plumb = box.top - box.bottom > box.right - box.left;
                if (plumb != dimension.level()) continue;
                const double at = plumb ? (box.left + box.right) / 2 : (box.bottom + box.top) / 2;
                const double from =
                    plumb ? std::min(dimension.a.x, dimension.b.x) : std::min(dimension.a.y, dimension.b.y);
                const double to =
                    plumb ? std::max(dimension.a.x, dimension.b.x) : std::max(dimension.a.y, dimension.b.y);
                if (at > from && at < to) return true;
            }
        return false;
    }

    /// Every dimension with arrows at both its ends agrees with a scale that is stated on the sheet.
    void scales() {
        static const std::regex ratio("([0-9]+):([0-9]+)");
        std::vector<double> stated;
        for (const Words& w : page_.words)
            for (std::sregex_iterator it(w.says.begin(), w.says.end(), ratio), end; it != end; ++it)
                stated.push_back(std::atof((*it)[1].str().c_str()) / std::atof((*it)[2].str().c_str()));
        const std::vector<Place> ends = ends_of_links();
        for (const Path& path : page_.strokes) {
            if (path.width > 0.3 || !path.dashes.empty()) continue;
            for (const auto& stroke : path.lines)
                if (stroke.size() == 2) links_of({stroke[0], stroke[1]}, ends, stated);
        }
    }

    /// A dimension line, cut where arrows and dots stand on it: each link with a figure over its middle.
    void links_of(const Line& line, const std::vector<Place>& ends, const std::vector<double>& stated) {
        if ((!line.level() && !line.plumb()) || line.length() < 3) return;
        const auto along = [&](Place p) { return line.level() ? p.x : p.y; };
        const auto across = [&](Place p) { return line.level() ? p.y : p.x; };
        const double low = std::min(along(line.a), along(line.b)),
                     high = std::max(along(line.a), along(line.b));
        std::vector<double> on;
        for (const Place& p : ends)
            if (std::abs(across(p) - across(line.a)) < 0.01 && along(p) > low - 0.01 &&
                along(p) < high + 0.01)
                on.push_back(along(p));
        std::sort(on.begin(), on.end());
        for (std::size_t i = 1; i < on.size(); ++i) {
            const double from = on[i - 1], to = on[i], length = to - from;
            if (length < 1) continue;
            for (const Figure& w : figures_) {
                if (w.turned != line.plumb()) continue;
                const double off = line.level() ? w.foot.y - across(line.a) : across(line.a) - w.foot.x;
                if (off < -0.5 || off > 2 || std::abs(along(w.middle) - (from + to) / 2) > 0.5) continue;
                ++out_.dimensions;
                const bool agrees = std::any_of(stated.begin(), stated.end(), [&](double scale) {
                    // Half a step of the figure comes on top.
                    return std::abs(length - w.mm * scale) < 0.1 + unit_.half_step * scale;
                });
                const Line link = line.level() ? Line{{from, line.a.y}, {to, line.a.y}}
                                               : Line{{line.a.x, from}, {line.a.x, to}};
                if (!agrees && !is_broken(link))
                    fault("D39: `{}` measures {:.2f} mm on paper at {:.1f}, {:.1f}", w.says, length, link.a.x,
                          link.a.y);
            }
        }
    }

    /// A figure as it stands on a drawing, its built fraction put together again.
    struct Figure {
        std::string says;
        double mm = 0;
        Place foot, middle; ///< left end of its base line, middle of the whole
        bool turned = false;
    };

    std::vector<Figure> figures() const {
        const double unit = unit_.mm;
        const auto is_small = [&](const Words& w) {
            return w.says.find_first_not_of("0123456789") == std::string::npos && has_bar(w);
        };
        const auto along = [](const Words& w, Place p) { return w.turned ? p.y : p.x; };
        const auto height = [](const Words& w) { return w.turned ? -w.box[0].x : w.box[0].y; };
        std::vector<const Words*> small;
        for (const Words& w : page_.words)
            if (is_small(w)) small.push_back(&w);
        // A figure over a bar and the one under the same bar.
        struct Fraction {
            const Words *top = nullptr, *bottom = nullptr;
            bool used = false;
        };
        std::vector<Fraction> fractions;
        for (const Words* top : small)
            for (const Words* bottom : small)
                if (top->turned == bottom->turned &&
                    std::abs(along(*top, top->middle()) - along(*bottom, bottom->middle())) < 0.05 &&
                    height(*top) - height(*bottom) > 1 && height(*top) - height(*bottom) < 4)
                    fractions.push_back({top, bottom});
        const auto value_of = [](const Fraction& f) {
            return std::atof(f.top->says.c_str()) / std::atof(f.bottom->says.c_str());
        };
        std::vector<Figure> all;
        for (const Words& w : page_.words) {
            const auto whole = figure_of(w.says);
            if (!whole || is_small(w)) continue;
            Figure figure{w.says, *whole * unit, w.box[0], w.middle(), w.turned};
            for (Fraction& f : fractions) {
                const double left = std::min(along(w, f.top->box[0]), along(w, f.bottom->box[0]));
                const double gap = left - along(w, w.box[1]);
                if (f.top->turned != w.turned || gap < -0.2 || gap > 1.5) continue;
                if (std::abs(height(w) - height(*f.bottom)) > 2) continue;
                f.used = true;
                figure.mm += value_of(f) * unit;
                figure.says += "-" + f.top->says + "/" + f.bottom->says;
                const double right = std::max(along(w, f.top->box[1]), along(w, f.bottom->box[1]));
                const double middle = (along(w, w.box[0]) + right) / 2;
                (w.turned ? figure.middle.y : figure.middle.x) = middle;
            }
            all.push_back(figure);
        }
        for (const Fraction& f : fractions)
            if (!f.used)
                all.push_back({f.top->says + "/" + f.bottom->says,
                               value_of(f) * unit,
                               f.bottom->box[0],
                               {(f.top->middle().x + f.bottom->middle().x) / 2,
                                (f.top->middle().y + f.bottom->middle().y) / 2},
                               f.top->turned});
        // A multiple of a fraction, and feet, are told in words that are not put together here.
        std::erase_if(all, [](const Figure& f) {
            return f.says.find("×") != std::string::npos && f.says.find('/') != std::string::npos;
        });
        return all;
    }

    void bars() {
        int found[4] = {0, 0, 0, 0};
        for (const Path& path : page_.strokes)
            for (const auto& stroke : path.lines) {
                if (stroke.size() != 2) continue;
                const Line line{stroke[0], stroke[1]};
                found[0] += line.level() && std::abs(line.length() - 100) < 0.01;
                found[1] += line.level() && std::abs(line.length() - 101.6) < 0.01;
                found[2] += line.plumb() && std::abs(line.length() - 100) < 0.01;
                found[3] += line.plumb() && std::abs(line.length() - 101.6) < 0.01;
            }
        for (int i = 0; i < 4; ++i)
            if (found[i] < 1)
                fault("D40: no bar of {} along the {}", i % 2 == 0 ? "100 mm" : "4 in",
                      i < 2 ? "width" : "height");
    }

    const Page& page_;
    PdfAudit& out_;
    std::vector<Line> lines_;
    std::vector<Figure> figures_;
    Unit unit_;
    bool is_template_ = false;
};

} // namespace

PdfAudit audit_pdf(const std::string& bytes, const std::string& trace) {
    PdfAudit out;
    for (const Page& page : pages_of(trace)) {
        ++out.pages;
        PageAudit(page, out).look();
    }
    if (out.pages == 0) out.faults.push_back("no page");
    const bool asks = bytes.find("/PrintScaling /None") != std::string::npos;
    if (out.templates > 0 && !asks) out.faults.push_back("D40: the file does not ask for PrintScaling None");
    return out;
}

} // namespace rayfleck::testing
