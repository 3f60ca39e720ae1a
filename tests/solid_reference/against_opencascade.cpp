// Random parts against a general-purpose geometry library, OpenCASCADE, which works on exact surfaces and
// shares no idea with our plane-by-plane evaluator. Optional: built only where that library is installed.
//
// Compared: volumes of parts cut by joints as the maker's text asks for them, volumes of carved parts (flat
// tools to 1e-6; round bores, which we lay down as area-true facets, to the height of a facet), volumes of
// clashes, and the visible length of views. The library is known to be silently wrong on rare inputs with
// true cylinders, so round tools are also given to it as the prisms that we make of them.

#include <BRep_Builder.hxx>
#include <BRepAlgoAPI_Common.hxx>
#include <BRepAlgoAPI_Cut.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepBuilderAPI_Transform.hxx>
#include <BRepGProp.hxx>
#include <BRepLib.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <BRepPrimAPI_MakeRevol.hxx>
#include <gp_Ax1.hxx>
#include <gp_Ax2.hxx>
#include <gp_Pln.hxx>
#include <gp_Trsf.hxx>
#include <GProp_GProps.hxx>
#include <HLRAlgo_Projector.hxx>
#include <HLRBRep_Algo.hxx>
#include <HLRBRep_HLRToShape.hxx>
#include <ShapeUpgrade_UnifySameDomain.hxx>
#include <TopTools_ListOfShape.hxx>

#include <catch2/catch.hpp>
#include <cmath>
#include <cstdint>
#include <deque>

#include "joinery/model.hpp"
#include "piece/elaborate.hpp"
#include "solid/outline.hpp"
#include "solid/solid.hpp"
#include "syntax/parse.hpp"

using namespace rayfleck::solid;
using rayfleck::measure::unit;

namespace {

/// Linear congruential numbers (multiplier and increment from Knuth, MMIX): the same on every machine.
class Dice {
  public:
    explicit Dice(std::uint64_t seed) : state_(seed) {}
    int below(int n) { return static_cast<int>(next() % static_cast<std::uint64_t>(n)); }
    double between(double low, double high) {
        return low + (high - low) * static_cast<double>(next()) / 2147483648.0;
    }

  private:
    std::uint64_t next() {
        state_ = state_ * 6364136223846793005u + 1442695040888963407u;
        return state_ >> 33;
    }
    std::uint64_t state_;
};

Frame any_frame(Dice& dice, Point origin) {
    Frame frame;
    frame.origin = origin;
    frame.x = unit({dice.between(-1, 1), dice.between(-1, 1), dice.between(0.1, 1)});
    frame.y = unit(cross(frame.x, unit({dice.between(0.1, 1), dice.between(-1, 1), 0})));
    frame.z = cross(frame.x, frame.y);
    return frame;
}

gp_Pnt point(Point p) { return {p.x, p.y, p.z}; }
gp_Dir direction(Vector v) { return {v.x, v.y, v.z}; }

double volume_of(const TopoDS_Shape& shape) {
    GProp_GProps properties;
    BRepGProp::VolumeProperties(shape, properties);
    return properties.Mass();
}

TopoDS_Shape reference_prism(const Frame& frame, const std::vector<Point2>& corners, double from, double to) {
    BRepBuilderAPI_MakePolygon polygon;
    for (const Point2 p : corners) polygon.Add(point(frame.out({p.x, p.y, from})));
    polygon.Close();
    const gp_Pln plane(gp_Ax3(point(frame.out({0, 0, from})), direction(frame.z), direction(frame.x)));
    const Vector run = frame.z * (to - from);
    return BRepPrimAPI_MakePrism(BRepBuilderAPI_MakeFace(plane, polygon.Wire()).Face(),
                                 gp_Vec(run.x, run.y, run.z))
        .Shape();
}

Outline outline_of(const std::vector<Point2>& corners) {
    Outline outline;
    outline.start = corners[0];
    for (std::size_t i = 1; i <= corners.size(); ++i)
        outline.edges.push_back({corners[i % corners.size()], std::nullopt, true});
    return outline;
}

/// The same thing in both worlds.
struct Twin {
    Shape ours;
    TopoDS_Shape theirs;
};

Twin flat_twin(Dice& dice, const Frame& frame, double size) {
    std::vector<Point2> corners{{-size, -size / 2}, {size, -size / 2}, {size, size / 2}, {-size, size / 2}};
    if (dice.below(3) == 0) corners = {{-size, -size}, {size, -size}, {-size / 2, size}};
    if (dice.below(3) == 0)
        corners = {{-size, -size}, {size, -size}, {size, 0}, {0, 0}, {0, size}, {-size, size}};
    const double from = -size / 3, to = size / 2;
    return {prism(frame, outline_of(corners), from, to), reference_prism(frame, corners, from, to)};
}

TopoDS_Shape cut(const TopoDS_Shape& blank, const std::vector<TopoDS_Shape>& tools) {
    if (tools.empty()) return blank;
    TopTools_ListOfShape arguments, cutters;
    arguments.Append(blank);
    for (const TopoDS_Shape& tool : tools) cutters.Append(tool);
    BRepAlgoAPI_Cut operation;
    operation.SetArguments(arguments);
    operation.SetTools(cutters);
    operation.Build();
    return operation.Shape();
}

const std::vector<Point2> board{{0, 0}, {100, 0}, {100, 60}, {0, 60}};

Point within_board(Dice& dice) { return {dice.between(0, 100), dice.between(0, 60), dice.between(0, 40)}; }

} // namespace

TEST_CASE("parts with flat cuts at any angle have the reference's volume") {
    Dice dice(101);
    const Shape blank = box({}, {0, 0, 0}, {100, 60, 40});
    const TopoDS_Shape reference_blank = reference_prism({}, board, 0, 40);
    for (int trial = 0; trial < 60; ++trial) {
        std::vector<Shape> tools;
        std::vector<TopoDS_Shape> reference_tools;
        for (int t = 1 + dice.below(4); t > 0; --t) {
            const Twin twin = flat_twin(dice, any_frame(dice, within_board(dice)), 20);
            tools.push_back(twin.ours);
            reference_tools.push_back(twin.theirs);
        }
        const Solid solid = carve(blank, tools);
        CAPTURE(trial);
        CHECK(solid.open_edges == 0);
        CHECK(solid.volume == Approx(volume_of(cut(reference_blank, reference_tools))).epsilon(1e-6));
    }
}

TEST_CASE("parts with bores at any angle have the reference's volume") {
    Dice dice(102);
    const Shape blank = box({}, {0, 0, 0}, {100, 60, 40});
    const TopoDS_Shape reference_blank = reference_prism({}, board, 0, 40);
    for (int trial = 0; trial < 40; ++trial) {
        std::vector<Shape> tools;
        std::vector<TopoDS_Shape> true_bores, faceted_bores;
        for (int t = 1 + dice.below(3); t > 0; --t) {
            const Frame frame = any_frame(dice, within_board(dice));
            const double radius = dice.between(1, 12);
            tools.push_back(cylinder(frame, radius, -30, 50));
            true_bores.push_back(
                BRepPrimAPI_MakeCylinder(
                    gp_Ax2(point(frame.out({0, 0, -30})), direction(frame.z), direction(frame.x)), radius, 80)
                    .Shape());
            std::vector<Point2> corners;
            const int n = sides_per_turn(radius);
            for (int i = 0; i < n; ++i) {
                const double angle = 2 * M_PI * i / n, r = radius * area_true_radius(n);
                corners.push_back({r * std::cos(angle), r * std::sin(angle)});
            }
            faceted_bores.push_back(reference_prism(frame, corners, -30, 50));
        }
        const Solid solid = carve(blank, tools);
        CAPTURE(trial);
        CHECK(solid.open_edges == 0);
        CHECK(solid.volume == Approx(volume_of(cut(reference_blank, faceted_bores))).epsilon(1e-6));
        CHECK(solid.volume == Approx(volume_of(cut(reference_blank, true_bores))).epsilon(1e-4));
    }
}

TEST_CASE("turned solids have the volume of the reference's revolved profile") {
    const std::vector<Station> profile{{0, 12}, {40, 20}, {55, 9}, {55, 16}, {90, 16}, {120, 7}};
    std::vector<Point2> corners{{0, 0}};
    for (const Station& station : profile) corners.push_back({station.x, station.radius});
    corners.push_back({120, 0});
    BRepBuilderAPI_MakePolygon polygon;
    for (const Point2 p : corners) polygon.Add({p.x, p.y, 0});
    polygon.Close();
    const TopoDS_Shape revolved =
        BRepPrimAPI_MakeRevol(BRepBuilderAPI_MakeFace(polygon.Wire()).Face(), gp_Ax1({0, 0, 0}, {1, 0, 0}))
            .Shape();
    CHECK(carve(turned({}, profile), {}).volume == Approx(std::abs(volume_of(revolved))).epsilon(1e-6));
}

TEST_CASE("clashes of parts at any angle have the reference's volume") {
    Dice dice(103);
    int clashing = 0;
    for (int trial = 0; trial < 60; ++trial) {
        const Twin a = flat_twin(dice, any_frame(dice, {0, 0, 0}), 30);
        const Twin b =
            flat_twin(dice, any_frame(dice, {dice.between(-30, 30), dice.between(-30, 30), 0}), 30);
        const Twin tool = flat_twin(dice, any_frame(dice, {0, 0, 0}), 15);
        const std::vector<Shape> tools{tool.ours}, none;
        const Solid solid_a = carve(a.ours, tools), solid_b = carve(b.ours, none);
        const auto found = clashes({{&solid_a, &a.ours, &tools, {}}, {&solid_b, &b.ours, &none, {}}});
        const double common = volume_of(BRepAlgoAPI_Common(cut(a.theirs, {tool.theirs}), b.theirs).Shape());
        CAPTURE(trial);
        clashing += !found.empty();
        CHECK((found.empty() ? 0 : found[0].volume) == Approx(common).epsilon(1e-6).margin(0.01));
    }
    CHECK(clashing > 20);
}

TEST_CASE("views of parts at any angle show as much as the reference's") {
    Dice dice(104);
    for (int trial = 0; trial < 8; ++trial) {
        std::deque<Solid> solids;
        std::vector<Placed> parts;
        TopoDS_Compound together;
        BRep_Builder builder;
        builder.MakeCompound(together);
        for (int part = 0; part < 6; ++part) {
            // Each within 27 of its centre, centres 56 apart: parts that run into each other are drawn
            // otherwise.
            const Frame frame = any_frame(dice, {56.0 * (part % 2), 56.0 * (part / 2), 56.0 * dice.below(2)});
            const Frame tool_frame = any_frame(dice, {5, 5, 5});
            const std::vector<Point2> square{{-15, -15}, {15, -15}, {15, 15}, {-15, 15}};
            const std::vector<Point2> groove{{-5, -5}, {5, -5}, {5, 5}, {-5, 5}};
            solids.push_back(carve(prism({}, outline_of(square), -15, 15),
                                   {prism(tool_frame, outline_of(groove), -60, 60)}));
            parts.push_back({&solids.back(), nullptr, nullptr, frame});
            ShapeUpgrade_UnifySameDomain unify(
                cut(reference_prism({}, square, -15, 15), {reference_prism(tool_frame, groove, -60, 60)}));
            unify.Build();
            gp_Trsf place;
            place.SetTransformation(gp_Ax3(point(frame.origin), direction(frame.z), direction(frame.x)),
                                    gp_Ax3());
            builder.Add(together, BRepBuilderAPI_Transform(unify.Shape(), place).Shape());
        }
        for (const View& view : {front_view(), isometric_view()}) {
            Handle(HLRBRep_Algo) hidden = new HLRBRep_Algo();
            hidden->Add(together);
            hidden->Projector(
                HLRAlgo_Projector(gp_Ax2({0, 0, 0}, direction(view.towards), direction(view.right))));
            hidden->Update();
            hidden->Hide();
            HLRBRep_HLRToShape result(hidden);
            double reference = 0;
            for (TopoDS_Shape lines : {result.VCompound(), result.OutLineVCompound()}) {
                if (lines.IsNull()) continue;
                BRepLib::BuildCurves3d(lines);
                GProp_GProps properties;
                BRepGProp::LinearProperties(lines, properties);
                reference += properties.Mass();
            }
            double visible = 0;
            for (const Line2& line : hidden_lines(parts, view))
                if (line.visible) visible += std::hypot(line.at.b.x - line.at.a.x, line.at.b.y - line.at.a.y);
            CAPTURE(trial);
            CHECK(visible == Approx(reference).epsilon(5e-3));
        }
    }
}

namespace {

using rayfleck::piece::BoxCut;
using rayfleck::piece::PrismCut;

/// The waste of one cut as the reference's solid; nothing for a cut that is neither a box nor a flat-sided
/// prism.
std::optional<TopoDS_Shape> reference_waste(const rayfleck::piece::Cut& cut) {
    if (const auto* box = std::get_if<BoxCut>(&cut.shape)) {
        const Point low = box->box.low, high = box->box.high;
        return reference_prism({}, {{low.x, low.y}, {high.x, low.y}, {high.x, high.y}, {low.x, high.y}},
                               low.z, high.z);
    }
    const auto* prism = std::get_if<PrismCut>(&cut.shape);
    if (prism == nullptr) return std::nullopt;
    std::vector<Point2> corners{prism->outline.start};
    for (const Edge2& edge : prism->outline.edges) {
        if (edge.centre) return std::nullopt;
        corners.push_back(edge.to);
    }
    corners.pop_back(); // the last edge ends at the start
    return reference_prism(prism->frame, corners, prism->from, prism->to);
}

constexpr const char* jointed = R"(piece "Joints"
units mm
rod across left 0, right 400
rod deep front 0, back 150
rod up floor 0, top 300
part side, left and right
  wood cherry
  16 thick, stands, face side outside
  from floor to top, from front to back, left at left
part cover
  wood cherry
  18 thick, runs across, face side top
  between side, top at top, from front to back
part sole
  wood cherry
  18 thick, runs across, face side top
  between side, bottom at floor, from front to back
part shelf
  wood cherry
  14 thick, runs across, face side top
  between side, bottom at 100, from front to back
part rail
  wood cherry
  size 20 x 60
  runs across, face side front
  between side, bottom at 180, front at front + 40
part post
  wood cherry
  size 20 x 40
  stands, face side front, from top of sole to bottom of shelf
  left at left + 180, front at front + 40
join side to cover with dovetail
join side to sole with finger joint
join shelf to side with sliding dovetail
join rail to side with mortise and tenon
join post to sole with mortise and tenon
join post to shelf with bridle
)";

} // namespace

TEST_CASE("parts cut by the joints of a text have the reference's volume") {
    using namespace rayfleck;
    source::Texts texts;
    findings::Findings found;
    const int file = texts.add({"joints.fleck", jointed});
    piece::Project project;
    project.trees.push_back(syntax::parse(texts, file, found));
    const piece::Piece piece = piece::elaborate(project, std::nullopt, found);
    const joinery::Model model = joinery::build(piece, found);
    for (const findings::Finding& finding : found) UNSCOPED_INFO(finding.message);
    REQUIRE_FALSE(found.any(findings::Severity::error));
    for (const joinery::Made& made : model.made) {
        const Point low = made.blank.low, high = made.blank.high;
        std::vector<TopoDS_Shape> wastes;
        for (const piece::Cut& cut : made.cuts) {
            const auto waste = reference_waste(cut);
            INFO(made.part->name << ": " << cut.word);
            REQUIRE(waste);
            wastes.push_back(*waste);
        }
        const TopoDS_Shape blank = reference_prism(
            {}, {{low.x, low.y}, {high.x, low.y}, {high.x, high.y}, {low.x, high.y}}, low.z, high.z);
        INFO(made.part->name << ", " << wastes.size() << " cuts");
        CHECK(!wastes.empty());
        CHECK(made.solid.volume == Approx(volume_of(cut(blank, wastes))).epsilon(1e-6));
    }
}
