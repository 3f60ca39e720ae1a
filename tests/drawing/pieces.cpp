// How the hand-built pieces are put together: parts get frames from two directions, cuts become tools.

#include "pieces.hpp"

#include <cmath>
#include <numbers>

namespace rayfleck::testing {
namespace {

using measure::Box;
using measure::Frame;
using measure::Length;
using measure::Plane;
using measure::Point;
using measure::Vector;
using piece::Cut;

class Builder {
  public:
    Builder(const std::string& title, const std::string& sheet) {
        built_.piece->title = title;
        built_.piece->shop.owner = "Workshop at the Mill";
        built_.piece->shop.creator = "M. Turner";
        built_.piece->shop.approved_by = "A. Joiner";
        built_.piece->shop.sheet = sheet;
        built_.piece->climate = wood::climate_from_humidity(0.35, 0.60, 20);
        built_.piece->rods = {
            {syntax::Direction::across, {}}, {syntax::Direction::deep, {}}, {syntax::Direction::up, {}}};
    }

    piece::Piece& piece() { return *built_.piece; }

    void rod(int direction, const std::vector<std::pair<std::string, double>>& lines) {
        for (const auto& [name, at] : lines)
            built_.piece->rods[static_cast<std::size_t>(direction)].lines.push_back(
                {name, Length::from_geometry(at), {}});
    }

    /// A part whose body fills `body` in the piece, its length along `along`, its face side towards `face`.
    int part(const std::string& base, const std::string& copy, Box body, Vector along, Vector face,
             const std::string& wood, wood::Sawn sawn) {
        piece::Part p;
        p.id = static_cast<int>(built_.piece->parts.size());
        p.base = base;
        p.copy = copy;
        p.name = copy.empty() ? base : base + " at " + copy;
        p.species = wood::find(wood);
        p.sawn = sawn;
        p.sawn_stated = true;
        p.rings = wood::ring_angle(sawn);
        p.frame.x = along;
        p.frame.z = face;
        p.frame.y = measure::cross(face, along);
        const auto size = [&](Vector d) { return std::abs(measure::dot(d, body.high - body.low)); };
        const auto low_corner = [&](int axis) {
            const double d = p.frame.x[axis] + p.frame.y[axis] + p.frame.z[axis];
            return d > 0 ? body.low[axis] : body.high[axis];
        };
        p.frame.origin = {low_corner(0), low_corner(1), low_corner(2)};
        p.length = Length::from_geometry(size(p.frame.x));
        p.width = Length::from_geometry(size(p.frame.y));
        p.thickness = Length::from_geometry(size(p.frame.z));
        built_.piece->parts.push_back(p);
        cuts_.emplace_back();
        longer_.push_back({0, 0});
        return p.id;
    }

    piece::Part& operator[](int id) { return built_.piece->parts[static_cast<std::size_t>(id)]; }
    /// What joints leave standing beyond the body at x = 0 and x = length.
    void longer(int id, double low, double high) { longer_[static_cast<std::size_t>(id)] = {low, high}; }
    void cut(int id, const std::string& word, decltype(Cut::shape) shape, int joint = -1,
             const std::string& remark = "") {
        cuts_[static_cast<std::size_t>(id)].push_back({word, std::move(shape), {}, joint, remark});
    }
    /// A tenon at one end: shoulders all round, as four boxes of waste.
    void tenon(int id, bool at_high_end, double long_, Point low, Point high, int joint) {
        const piece::Part& p = (*this)[id];
        const double l = p.length.value(), w = p.width.value(), t = p.thickness.value();
        const double from = at_high_end ? l : -long_, to = at_high_end ? l + long_ : 0;
        cut(id, "tenon cheek", piece::BoxCut{{{from, 0, high.z}, {to, w, t}}}, joint);
        cut(id, "tenon cheek", piece::BoxCut{{{from, 0, 0}, {to, w, low.z}}}, joint);
        if (low.y > 0)
            cut(id, "tenon shoulder", piece::BoxCut{{{from, 0, low.z}, {to, low.y, high.z}}}, joint);
        if (high.y < w)
            cut(id, "tenon shoulder", piece::BoxCut{{{from, high.y, low.z}, {to, w, high.z}}}, joint);
        double& more = at_high_end ? longer_[static_cast<std::size_t>(id)].second
                                   : longer_[static_cast<std::size_t>(id)].first;
        more = long_;
    }
    int joint(int a, int b, const std::string& kind, std::vector<joinery::Size> sizes) {
        joinery::Joint j;
        j.a = a;
        j.b = b;
        j.kind = kind;
        j.sizes = std::move(sizes);
        joints_.push_back(j);
        return static_cast<int>(joints_.size()) - 1;
    }

    BuiltPiece done() {
        joinery::Model& model = built_.model;
        model.piece = built_.piece.get();
        model.joints = joints_;
        for (std::size_t i = 0; i < built_.piece->parts.size(); ++i) {
            const piece::Part& p = built_.piece->parts[i];
            joinery::Made made;
            made.part = &p;
            made.blank = {{-longer_[i].first, 0, 0},
                          {p.length.value() + longer_[i].second, p.width.value(), p.thickness.value()}};
            made.thickness = p.thickness;
            made.width = p.width;
            made.length = p.length + Length::from_geometry(longer_[i].first + longer_[i].second);
            made.cuts = cuts_[i];
            made.blank_shape = p.outline ? solid::prism(Frame{}, *p.outline, 0, p.thickness.value())
                                         : solid::box(Frame{}, made.blank.low, made.blank.high);
            for (std::size_t c = 0; c < made.cuts.size(); ++c) {
                if (std::holds_alternative<piece::EdgeCut>(made.cuts[c].shape)) continue;
                made.tools.push_back(tool(made.cuts[c], made.blank));
                made.tool_cut.push_back(static_cast<int>(c));
            }
            made.solid = solid::carve(made.blank_shape, made.tools);
            model.made.push_back(std::move(made));
        }
        built_.cut_list = cutlist::list(model);
        return std::move(built_);
    }

    static findings::Finding finding(const std::string& name, findings::Severity severity,
                                     const std::string& message, const std::string& limit,
                                     const std::string& mend, std::vector<std::string> parts,
                                     std::optional<Point> at) {
        findings::Finding f;
        f.name = name;
        f.severity = severity;
        f.message = message;
        f.limit = limit;
        f.mend = mend;
        f.parts = std::move(parts);
        f.at = at;
        return f;
    }
    findings::Findings& findings() { return built_.findings; }
    std::vector<joinery::HardwareItem>& hardware() { return built_.model.hardware; }

  private:
    static solid::Shape tool(const Cut& c, const Box& blank) {
        if (const auto* box = std::get_if<piece::BoxCut>(&c.shape))
            return solid::box(Frame{}, box->box.low, box->box.high);
        if (const auto* plane = std::get_if<piece::PlaneCut>(&c.shape))
            return solid::half_space(plane->plane, blank);
        if (const auto* prism = std::get_if<piece::PrismCut>(&c.shape))
            return solid::prism(prism->frame, prism->outline, prism->from, prism->to);
        const auto& bore = std::get<piece::BoreCut>(c.shape);
        Vector into;
        into[bore.face.axis] = bore.face.high ? -1 : 1;
        Frame frame;
        frame.origin = bore.centre;
        frame.z = into;
        frame.x = std::abs(into.x) > 0.5 ? Vector{0, 1, 0} : Vector{1, 0, 0};
        frame.y = measure::cross(frame.z, frame.x);
        return solid::cylinder(frame, bore.diameter / 2, -1, bore.deep.value_or(1000));
    }

    BuiltPiece built_;
    std::vector<std::vector<Cut>> cuts_;
    std::vector<std::pair<double, double>> longer_;
    std::vector<joinery::Joint> joints_;
};

constexpr Vector right{1, 0, 0}, left{-1, 0, 0}, back{0, 1, 0}, front{0, -1, 0}, up{0, 0, 1}, down{0, 0, -1};

} // namespace

BuiltPiece side_table(const std::string& sheet) {
    Builder b("Side table", sheet);
    b.rod(0, {{"left", 0}, {"right", 480}});
    b.rod(1, {{"front", 0}, {"back", 360}});
    b.rod(2, {{"floor", 0}, {"apron-low", 500}, {"apron-top", 600}});
    std::vector<int> legs;
    const std::pair<const char*, Point> corners[] = {{"front-left", {0, 0, 0}},
                                                     {"front-right", {442, 0, 0}},
                                                     {"back-left", {0, 322, 0}},
                                                     {"back-right", {442, 322, 0}}};
    for (const auto& [copy, at] : corners) {
        const bool is_left = at.x == 0, is_front = at.y == 0;
        const int leg = b.part("leg", copy, {at, {at.x + 38, at.y + 38, 600}}, up, is_front ? front : back,
                               "black cherry", wood::Sawn::rift);
        legs.push_back(leg);
        // Own y runs left on front legs, right on back legs; the inside face of y is the one towards the
        // middle.
        const bool y_inside_high = is_front != is_left;
        const double w = 38, foot = 22, from = 500;
        const double run = std::hypot(from, w - foot), c = from / run, s = (w - foot) / run;
        // Tapers from 38 at 500 to 22 at the floor on the two inside faces.
        if (y_inside_high)
            b.cut(leg, "taper", piece::PlaneCut{{{-s, c, 0}, c * w - s * from}, {}, {}});
        else
            b.cut(leg, "taper", piece::PlaneCut{{{-s, -c, 0}, -s * from}, {}, {}});
        b.cut(leg, "taper", piece::PlaneCut{{{-s, 0, -c}, -s * from}, {}, {}});
        b[leg].face_edge_high = !y_inside_high;
    }
    const std::vector<joinery::Size> sizes{
        {"tenon thickness", 8, "mm",
         "a third of the stock, rounded to a chisel; common practice, no published source"},
        {"tenon length", 25, "mm", "stated"},
        {"haunch", 20, "mm", "a fifth of the width; common practice, no published source"}};
    const auto mortise = [&](int leg, bool in_y_face, int joint) {
        // 8 wide, 25 deep, from 505 to 580; 12 from the outside face.
        const bool y_inside_high = b[leg].face_edge_high == false;
        if (in_y_face)
            b.cut(leg, "mortise",
                  piece::BoxCut{
                      {{505, y_inside_high ? 13.0 : -1.0, 16}, {580, y_inside_high ? 39.0 : 25.0, 24}}},
                  joint);
        else
            b.cut(leg, "mortise", piece::BoxCut{{{505, 14, -1}, {580, 22, 25}}}, joint);
    };
    int k = 0;
    for (const bool is_front : {true, false}) {
        const double y = is_front ? 4 : 336;
        const int apron =
            b.part("long apron", is_front ? "front" : "back", {{38, y, 500}, {442, y + 20, 600}},
                   is_front ? right : left, is_front ? front : back, "black cherry", wood::Sawn::quarter);
        b[apron].face_edge_high = true;
        b[apron].bark = piece::LocalSide{1, true};
        for (const bool high : {false, true}) {
            const int leg = legs[static_cast<std::size_t>((is_front ? 0 : 2) + ((high == is_front) ? 1 : 0))];
            const int joint = b.joint(apron, leg, "mortise and tenon, haunched", sizes);
            b.tenon(apron, high, 25, {0, 5, 6}, {0, 80, 14}, joint);
            mortise(leg, true, joint);
        }
        ++k;
    }
    for (const bool is_left : {true, false}) {
        const double x = is_left ? 4 : 456;
        const int apron =
            b.part("short apron", is_left ? "left" : "right", {{x, 38, 500}, {x + 20, 322, 600}},
                   is_left ? front : back, is_left ? left : right, "black cherry", wood::Sawn::quarter);
        b[apron].bark = piece::LocalSide{1, true};
        for (const bool high : {false, true}) {
            const int leg = legs[static_cast<std::size_t>((is_left ? 0 : 1) + ((high == is_left) ? 0 : 2))];
            const int joint = b.joint(apron, leg, "mortise and tenon, haunched", sizes);
            b.tenon(apron, high, 25, {0, 5, 6}, {0, 80, 14}, joint);
            mortise(leg, false, joint);
        }
    }
    const int top =
        b.part("top", "", {{-30, -30, 600}, {510, 390, 620}}, right, up, "black cherry", wood::Sawn::flat);
    b[top].bark = piece::LocalSide{2, true};
    piece::GlueUp staves;
    staves.count = 4;
    b[top].glue_up = staves;
    b[top].notes.push_back(
        {"Plane the top flat before the edges are cut to length; let it rest for two days in the shop first.",
         {}});
    b.cut(top, "chamfer", piece::EdgeCut{{2, true}, {1, true}, "chamfer", 3, 3});
    b.hardware().push_back({"wooden button", 8, {top}, "button joint of the top"});
    b.hardware().push_back({"screw 4 × 35", 8, {top}, "button joint of the top"});
    using findings::Severity;
    b.findings().add(
        Builder::finding("fixed-top", Severity::fault,
                         "the top, 420 mm wide, is glued to both short aprons and moves 4.6 mm between 7.0 % "
                         "and 11.0 % moisture",
                         "limit 0.5 mm for a glued contact, common practice, no published source",
                         "fix it with buttons in grooves that leave 3 mm on each side",
                         {"top", "short apron at left"}, Point{4, 180, 600}));
    b.findings().add(Builder::finding(
        "short-grain-land", Severity::caution,
        "20 mm of wood stand between the mortise and the end of the leg",
        "limit 25 mm for a mortise 8 mm wide, common practice, no published source",
        "leave a horn of 15 mm until the joint is glued", {"leg at front-left"}, Point{19, 19, 590}));
    auto& accepted = b.findings().add(
        Builder::finding("stave-width", Severity::note, "staves of 105 mm are wider than 100 mm",
                         "limit 100 mm", "glue it up of 5 staves", {"top"}, std::nullopt));
    accepted.accepted_because = "the boards are quarter sawn near the edges and have rested for a year";
    return b.done();
}

BuiltPiece wall_shelf(const std::string& sheet) {
    Builder b("Wall shelf with two shelves", sheet);
    const double in = 25.4;
    b.piece().manner.unit = measure::Unit::in;
    b.piece().shop.first_angle = false;
    b.rod(0, {{"left", 0}, {"right", 23.625 * in}});
    b.rod(1, {{"front", 0}, {"back", 7.25 * in}});
    b.rod(2, {{"bottom", 0}, {"low shelf", 4 * in}, {"high shelf", 14.3125 * in}, {"top", 20 * in}});
    std::vector<int> sides;
    for (const bool is_left : {true, false}) {
        const double x = is_left ? 0 : 22.875 * in;
        const int side =
            b.part("side", is_left ? "left" : "right", {{x, 0, 0}, {x + 0.75 * in, 7.25 * in, 20 * in}}, up,
                   is_left ? right : left, "white oak", wood::Sawn::quarter);
        b[side].stock = "4/4";
        b[side].face_edge_high = !is_left;
        b[side].bark = piece::LocalSide{1, is_left};
        sides.push_back(side);
    }
    for (const auto& [name, z] : {std::pair{"low", 4.0}, {"high", 14.3125}}) {
        const int shelf =
            b.part("shelf", name, {{0.5 * in, 0, z * in}, {23.125 * in, 6.75 * in, (z + 0.75) * in}}, right,
                   up, "white oak", wood::Sawn::flat);
        b[shelf].bark = piece::LocalSide{2, true};
        b[shelf].face_edge_high = false;
        for (const int side : sides) {
            const int joint = b.joint(
                shelf, side, "dado",
                {{"depth", 0.25 * in, "mm", "a third of the side; common practice, no published source"}});
            b.cut(side, "dado",
                  piece::BoxCut{{{z * in, -1, 0.5 * in}, {(z + 0.75) * in, 7.25 * in + 1, 0.75 * in + 1}}},
                  joint, "for shelf");
        }
    }
    for (const int side : sides) {
        const bool is_left = side == sides[0];
        // Rabbet for the back along the rear edge.
        const double w = 7.25 * in;
        b.cut(side, "rabbet",
              piece::BoxCut{{{-1, is_left ? w - 0.25 * in : -1, 0.375 * in},
                             {20 * in + 1, is_left ? w + 1 : 0.25 * in, 0.75 * in + 1}}},
              -1, "for back");
    }
    b.part("back", "", {{0.375 * in, 7 * in, 0}, {23.25 * in, 7.25 * in, 20 * in}}, up, front,
           "white oak plywood", wood::Sawn::flat);
    return b.done();
}

BuiltPiece one_board(const std::string& sheet) {
    Builder b("Test board", sheet);
    b.part("board", "", {{0, 0, 0}, {600, 140, 20}}, right, up, "hard maple", wood::Sawn::flat);
    return b.done();
}

BuiltPiece slatted_rack(int slats, const std::string& sheet) {
    Builder b("Slatted rack", sheet);
    std::vector<int> rails;
    const double pitch = 50, length = pitch * slats + 30;
    b.rod(0, {{"left", 0}, {"right", length}});
    for (const bool is_front : {true, false}) {
        const double y = is_front ? 0 : 460;
        const int rail = b.part("rail", is_front ? "front" : "back", {{0, y, 0}, {length, y + 40, 60}}, right,
                                is_front ? front : back, "white ash", wood::Sawn::flat);
        rails.push_back(rail);
    }
    for (int i = 0; i < slats; ++i) {
        const double x = 20 + pitch * i;
        b.part("slat", "slat " + std::to_string(i + 1), {{x, 0, 60}, {x + 40, 500, 75}}, back, up,
               "white ash", wood::Sawn::flat);
        for (const int rail : rails)
            b.cut(rail, "bore",
                  piece::BoreCut{{1, rail == rails[0]},
                                 {rail == rails[0] ? x + 20 : x + 20, rail == rails[0] ? 60.0 : 60.0, 20},
                                 8,
                                 30.0,
                                 {}});
        const int slat = static_cast<int>(b.piece().parts.size()) - 1;
        b.cut(slat, "bore", piece::BoreCut{{2, true}, {20, 20, 15}, 5, {}, {}});
        b.cut(slat, "bore", piece::BoreCut{{2, true}, {480, 20, 15}, 5, {}, {}});
    }
    return b.done();
}

BuiltPiece odd_shapes(const std::string& sheet) {
    Builder b("Odd shapes", sheet);
    b.rod(0, {{"left", 0}, {"middle", 250}, {"right", 500}});
    const int crest = b.part("crest rail", "", {{0, 0, 300}, {500, 22, 400}}, right, front, "black walnut",
                             wood::Sawn::flat);
    solid::Outline arch;
    // A chord of 300 under an arc of 60 rise: radius (150² + 60²) / 120 = 217.5.
    arch.start = {0, 0};
    arch.edges = {{{100, 0}, {}, true}, {{400, 0}, solid::Point2{250, 60 - 217.5}, false},
                  {{500, 0}, {}, true}, {{500, 100}, {}, true},
                  {{0, 100}, {}, true}, {{0, 0}, {}, true}};
    b[crest].outline = arch;
    const int frame_side = b.part("frame piece", "", {{0, 100, 0}, {400, 120, 60}}, right, front,
                                  "black walnut", wood::Sawn::quarter);
    const double h = std::sqrt(0.5);
    b.cut(frame_side, "miter", piece::PlaneCut{{{-h, h, 0}, 0}, measure::Angle::degrees(45), {}});
    b.cut(frame_side, "miter", piece::PlaneCut{{{h, h, 0}, h * 400}, measure::Angle::degrees(45), {}});
    b.cut(frame_side, "groove", piece::BoxCut{{{-1, -1, 7}, {401, 8, 13}}});
    const int long_rail = b.part("long rail", "", {{0, 200, 0}, {2400, 220, 45}}, right, front,
                                 "black walnut", wood::Sawn::flat);
    for (int i = 0; i < 3; ++i)
        b.cut(long_rail, "mortise", piece::BoxCut{{{200.0 + 900 * i, -1, 6}, {260.0 + 900 * i, 20, 14}}});
    b.tenon(long_rail, false, 30, {0, 6, 6}, {0, 39, 14}, -1);
    b.tenon(long_rail, true, 30, {0, 6, 6}, {0, 39, 14}, -1);
    const int brace =
        b.part("brace", "", {{0, 300, 0}, {300, 340, 30}}, right, up, "black walnut", wood::Sawn::rift);
    const double c = std::cos(std::numbers::pi / 6), s = std::sin(std::numbers::pi / 6);
    b.cut(brace, "compound miter",
          piece::PlaneCut{{{c, s, 0}, c * 290}, measure::Angle::degrees(30), measure::Angle::degrees(0)});
    b.cut(brace, "bore", piece::BoreCut{{2, true}, {60, 20, 30}, 10, {}, {}});
    b.cut(brace, "bore", piece::BoreCut{{2, true}, {120, 20, 30}, 10, {}, {}});
    b.cut(brace, "bore", piece::BoreCut{{1, false}, {180, 0, 15}, 6, 20.0, {}});
    return b.done();
}

BuiltPiece long_arched_rail() {
    Builder b("Arched rail", "A4");
    const int rail =
        b.part("rail", "", {{0, 0, 0}, {2400, 24, 90}}, right, front, "white ash", wood::Sawn::quarter);
    solid::Outline arch;
    arch.start = {0, 0};
    arch.edges = {{{0, 60}, {}, true},
                  {{2400, 90}, {}, true},
                  {{2400, 0}, {}, true},
                  {{0, 0}, solid::Point2{1200, -18000}, true}};
    b[rail].outline = arch;
    return b.done();
}

BuiltPiece hard_piece(int parts, const std::string& sheet) {
    Builder b(
        "A title far longer than the field that is meant to hold it, with more words than any drawing needs",
        sheet);
    b.piece().shop.owner = "Unbreakablenameofaworkshopthatneverendsandhasnospaceinitanywhereatall";
    b.rod(0, {{"left", 0}, {"far away", 20000}, {"near", 0.1}, {"nearer", 0.2}});
    const char* woods[] = {"black cherry", "hard maple",    "white oak",
                           "black walnut", "yellow-poplar", "teak"};
    for (int i = 0; i < parts; ++i) {
        // Each part differs in length; every seventh is a splinter, every eleventh a beam.
        const double length = i % 7 == 3 ? 3 + 0.01 * i : i % 11 == 5 ? 6000 + i : 200 + i;
        const double thick = i % 7 == 3 ? 0.4 : i % 11 == 5 ? 90 : 15 + i % 3;
        const double x = 250.0 * (i % 10), z = 120.0 * (i / 10);
        const std::string name =
            i % 5 == 0 ? "partwithanamewithoutanyspaceinwhichnolinecanbebroken" + std::to_string(i)
                       : "part number " + std::to_string(i) + " of a very long and wordy list of parts ½ é";
        const int part = b.part(name, "", {{x, 0, z}, {x + thick * 3, length, z + thick}}, back, up,
                                woods[i % 6], wood::Sawn::flat);
        b[part].notes.push_back(
            {std::string(static_cast<std::size_t>(20 + 13 * (i % 9)), 'n') + " ends", {}});
        if (i % 4 == 1)
            b.cut(part, "groove",
                  piece::BoxCut{{{-1, thick, thick / 2}, {length + 1, thick * 2, thick + 1}}});
        if (i % 6 == 2)
            for (int k = 1; k < 12; ++k)
                b.cut(part, "bore",
                      piece::BoreCut{{2, true},
                                     {k * length / 13, thick * (1 + 0.1 * k), thick},
                                     2.0 + 0.1 * k,
                                     thick / 2,
                                     {}});
        b.findings().add(Builder::finding(
            i % 3 == 0 ? "some-check" : "other-check", static_cast<findings::Severity>(i % 3),
            "something is amiss with this part, for the " + std::to_string(i) + "th time", "limit 3 mm",
            "mend it", {name}, Point{x, length / 2, z}));
    }
    return b.done();
}

BuiltPiece no_parts() { return Builder("Nothing", "A3").done(); }

} // namespace rayfleck::testing
