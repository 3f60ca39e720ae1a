// Mortise and tenon: sizes by the trade's rules, volumes and glue areas worked out by hand.
//
// The frame joint of these cases: a post 40 x 40 x 500 and a rail 20 x 60 that runs 400 from its face. By the
// rules (Practical Building Construction, ch. XVI: a third; Fairham: 7/8) the tenon takes the chisel of 6 and
// is 35 long; shoulders of 6 leave it 48 wide.

#include <catch2/catch.hpp>

#include "bench.hpp"

using namespace rayfleck::joinery;

namespace {

const std::string post_and_rail = R"(
part post
  wood cherry, flat sawn
  size 40 x 40, stands, left at 0, front at 0, from 0 to 500
part rail
  wood cherry, flat sawn
  20 thick, 60 wide, runs across, face side front
  from 40 to 440, bottom at 200, front at 10
)";

/// The same with the rail's top flush with the post's.
const std::string rail_at_the_top = R"(
part post
  wood cherry, flat sawn
  size 40 x 40, stands, left at 0, front at 0, from 0 to 500
part rail
  wood cherry, flat sawn
  20 thick, 60 wide, runs across, face side front
  from 40 to 440, top at 500, front at 10
)";

constexpr double rail_body = 20 * 60 * 400, post_body = 40 * 40 * 500;

} // namespace

TEST_CASE("a tenon left to the rules takes the chisel nearest to a third and fills its mortise") {
    const auto built = build_case(post_and_rail + "join rail to post with mortise and tenon\n");
    REQUIRE(built->sound());
    const double tenon = 6.0 * 48 * 35;
    CHECK(built->volume("rail") == Approx(rail_body + tenon).epsilon(1e-6));
    CHECK(built->volume("post") == Approx(post_body - tenon).epsilon(1e-6));
    CHECK(built->clashes() == 0);
    CHECK(built->made("rail").length == rayfleck::measure::Length::mm(435));
    CHECK(built->made("post").length == rayfleck::measure::Length::mm(500));
    CHECK(built->size("tenon thickness") == Approx(6.0));
    CHECK(built->from("tenon thickness") ==
          "1/3 of the thickness of the piece that is cut; Practical Building "
          "Construction, ch. XVI (textbook, date not seen), to the nearest chisel");
    CHECK(built->size("tenon length") == 35);
    CHECK(built->from("tenon length") ==
          "7/8 of the width of the mortised piece; W. Fairham, Woodwork Joints");
}

TEST_CASE("the glue area is cheeks, edges, end and shoulders") {
    const auto built = build_case(post_and_rail + "join rail to post with mortise and tenon\n");
    const double t = 6.0;
    const double cheeks = 2 * 48 * 35, edges = 2 * t * 35, end = 48 * t, shoulders = 20 * 60 - 48 * t;
    CHECK(built->area("rail", "post", Hold::glued) == Approx(cheeks + edges + end + shoulders).epsilon(1e-6));
    CHECK(built->area("rail", "post", Hold::free) == 0);
    double in_cheeks = 0;
    for (const Contact* contact : built->contacts("rail", "post"))
        if (std::abs(contact->plane.normal.y) > 0.9) in_cheeks += contact->area;
    CHECK(in_cheeks == Approx(cheeks).epsilon(1e-6));
}

TEST_CASE("the rail moves into the post") {
    const auto built = build_case(post_and_rail + "join rail to post with mortise and tenon\n");
    CHECK(built->model.joints[0].assembly == rayfleck::measure::Vector{-1, 0, 0});
    CHECK(built->model.made[static_cast<std::size_t>(built->model.joints[0].a)].part->name == "rail");
}

TEST_CASE("stated sizes win and say so") {
    const auto built =
        build_case(post_and_rail + "join rail to post with mortise and tenon, 8 thick, 30 wide, 25 long\n");
    REQUIRE(built->sound());
    CHECK(built->volume("rail") == Approx(rail_body + 8 * 30 * 25).epsilon(1e-6));
    CHECK(built->from("tenon thickness") == "stated");
    CHECK(built->from("tenon width") == "stated");
    CHECK(built->from("tenon length") == "stated");
}

TEST_CASE("a through tenon ends flush with the far face") {
    const auto built = build_case(post_and_rail + "join rail to post with mortise and tenon, through\n");
    REQUIRE(built->sound());
    CHECK(built->made("rail").length == rayfleck::measure::Length::mm(440));
    CHECK(built->all_volume() == Approx(rail_body + post_body).epsilon(1e-6));
}

TEST_CASE("a rail at the end of the post keeps its tenon away from the end") {
    const auto built = build_case(rail_at_the_top + "join rail to post with mortise and tenon\n");
    REQUIRE(built->sound());
    // 3/4 in (19.05) at the top, 6 at the bottom.
    CHECK(built->size("tenon width") == Approx(60 - 19.05 - 6));
}

TEST_CASE("a haunch stands between the tenon and the end") {
    const auto built = build_case(rail_at_the_top + "join rail to post with mortise and tenon, haunched\n");
    REQUIRE(built->sound());
    const double t = 6.0, tenon = t * (60 - 19.05 - 6) * 35, haunch = t * 19.05 * 12;
    CHECK(built->volume("rail") == Approx(rail_body + tenon + haunch).epsilon(1e-6));
    CHECK(built->all_volume() == Approx(rail_body + post_body).epsilon(1e-6));
    CHECK(built->size("haunch length") == 12);
    CHECK(built->clashes() == 0);
}

TEST_CASE("twin tenons are two with a third between them") {
    const auto built = build_case(post_and_rail + "join rail to post with mortise and tenon, twin\n");
    REQUIRE(built->sound());
    CHECK(built->volume("rail") == Approx(rail_body + 2 * 6.0 * 16 * 35).epsilon(1e-6));
    CHECK(built->all_volume() == Approx(rail_body + post_body).epsilon(1e-6));
}

TEST_CASE("twin tenons of a rail that lies flat stand side by side across its width") {
    // 50 wide: shoulder, tenon, room, tenon, shoulder of 10 each, as the chisel of 10 happens to fit.
    const std::string flat = R"(
part post
  wood cherry, flat sawn
  size 60 x 60, stands, left at 0, front at 0, from 0 to 500
part rail
  wood cherry, flat sawn
  size 20 x 50, runs across, face side top, from 60 to 460, bottom at 400, front at 5
)";
    const auto built =
        build_case(flat + "join rail to post with mortise and tenon, twin, 30 long, 3 shoulder\n");
    INFO(built->said());
    REQUIRE(built->sound());
    CHECK(built->size("tenon thickness") == 10);
    CHECK(built->volume("rail") == Approx(20.0 * 50 * 400 + 2 * 10.0 * 14 * 30).epsilon(1e-6));
    CHECK(built->clashes() == 0);
    const auto narrow = build_case(flat + "join rail to post with mortise and tenon, twin, 25 thick\n");
    CHECK(narrow->said().find("two tenons of 25") != std::string::npos);
}

TEST_CASE("a bare-faced tenon is flush with one face") {
    const auto built =
        build_case(post_and_rail + "join rail to post with mortise and tenon, bare-faced back, 10 thick\n");
    REQUIRE(built->sound());
    CHECK(built->volume("rail") == Approx(rail_body + 10.0 * 48 * 35).epsilon(1e-6));
    // Its back cheek lies in the rail's back face, y = 30.
    bool flush = false;
    for (const Contact* contact : built->contacts("rail", "post"))
        flush = flush || (contact->plane.normal.y > 0.9 && std::abs(contact->plane.offset - 30) < 1e-6);
    CHECK(flush);
}

TEST_CASE("a loose tenon leaves the rail's length alone and is listed as hardware") {
    const auto built =
        build_case(post_and_rail + "join rail to post with mortise and tenon, loose, 30 long\n");
    REQUIRE(built->sound());
    const double slip = 6.0 * 48 * 30;
    CHECK(built->made("rail").length == rayfleck::measure::Length::mm(400));
    CHECK(built->volume("rail") == Approx(rail_body - slip).epsilon(1e-6));
    CHECK(built->volume("post") == Approx(post_body - slip).epsilon(1e-6));
    REQUIRE(built->model.hardware.size() == 1);
    CHECK(built->model.hardware[0].name == "loose tenon 6 x 48 x 60");
    CHECK(built->model.hardware[0].count == 1);
}

TEST_CASE("pegs go through the cheeks and the tenon") {
    const auto built = build_case(post_and_rail + "join rail to post with mortise and tenon, pegged 8\n");
    REQUIRE(built->sound());
    // The post loses 40 of bore, of which 20/3 are in the tenon, which loses just that.
    const double bore = 3.14159265358979 * 16, t = 6.0, tenon = t * 48 * 35;
    CHECK(built->volume("rail") == Approx(rail_body + tenon - bore * t).epsilon(1e-6));
    CHECK(built->volume("post") == Approx(post_body - tenon - bore * (40 - t)).epsilon(1e-6));
    REQUIRE(built->model.hardware.size() == 1);
    CHECK(built->model.hardware[0].name == "peg 8 x 40");
}

TEST_CASE("a dry tenon may slide out") {
    const auto built = build_case(post_and_rail + "join rail to post with mortise and tenon, dry\n");
    CHECK(built->area("rail", "post", Hold::glued) == 0);
    for (const Contact* contact : built->contacts("rail", "post")) CHECK(contact->may_slide.size() == 1);
}

TEST_CASE("a rail placed into the post is a tenon as long as it reaches in") {
    std::string text = post_and_rail;
    text.replace(text.find("from 40 to 440"), 14, "from 10 to 440");
    const auto built = build_case(text + "join rail to post with mortise and tenon\n");
    REQUIRE(built->sound());
    CHECK(built->made("rail").length == rayfleck::measure::Length::mm(430));
    CHECK(built->size("tenon length") == 30);
    CHECK(built->all_volume() == Approx(rail_body + post_body).epsilon(1e-6));
}

TEST_CASE("a tenon that does not fit into its rail is refused") {
    const auto built = build_case(post_and_rail + "join rail to post with mortise and tenon, 30 thick\n");
    CHECK(built->said() == "tenon-has-no-room: the tenon, 30 x 48 mm, does not lie within rail\n");
}

namespace {

/// Two rails into one leg at right angles.
std::string corner_of_rails(const std::string& options) {
    return R"(
part leg
  wood cherry, flat sawn
  size 40 x 40, stands, left at 0, front at 0, from 0 to 500
part long rail
  wood cherry, flat sawn
  18 thick, 60 wide, runs across, face side front, from 40 to 440, bottom at 200, front at 11
part short rail
  wood cherry, flat sawn
  18 thick, 60 wide, runs deep, face side left, from 40 to 440, bottom at 200, left at 11
join long rail to leg with mortise and tenon)" +
           options + "\njoin short rail to leg with mortise and tenon" + options + "\n";
}

} // namespace

TEST_CASE("two tenons of unstated length keep clear of each other in the leg") {
    const auto built = build_case(corner_of_rails(""));
    REQUIRE(built->sound());
    CHECK(built->clashes() == 0);
    // Tenons 6 thick in the middle of the leg: the other's cheek is 17 from the face, less 3 of wood.
    CHECK(built->size("tenon length", 0) == 14);
    CHECK(built->size("tenon length", 1) == 14);
    CHECK(built->from("tenon length", 0).find("clear of the mortise for short rail") != std::string::npos);
}

TEST_CASE("two tenons of stated length that meet are mitred at their ends") {
    const auto built = build_case(corner_of_rails(", 23 long"));
    REQUIRE(built->sound());
    CHECK(built->clashes() == 0);
    // Each loses half of the square 6 x 6 that they share.
    CHECK(built->volume("long rail") == Approx(18 * 60 * 400 + 48 * (6 * 23 - 18)).epsilon(1e-6));
    CHECK(built->volume("short rail") == Approx(built->volume("long rail")).epsilon(1e-6));
    CHECK(built->volume("leg") == Approx(40 * 40 * 500 - 48 * (2 * 6 * 23 - 36)).epsilon(1e-6));
    CHECK(built->model.joints[0].kind == "mortise and tenon, mitred end");
}

TEST_CASE("a wedged tenon goes through and its mortise flares along the grain") {
    const auto built = build_case(post_and_rail + "join rail to post with mortise and tenon, wedged\n");
    REQUIRE(built->sound());
    // Two wedges of room, each 40 deep and 40/8 high at the outside.
    const double tenon = 6.0 * 48 * 40, flare = 2 * 6.0 * 0.5 * 40 * 5;
    CHECK(built->volume("rail") == Approx(rail_body + tenon).epsilon(1e-6));
    CHECK(built->volume("post") == Approx(post_body - tenon - flare).epsilon(1e-6));
}

TEST_CASE("inches give inch defaults and print as fractions") {
    const auto built = build_text(R"(piece "case"
units in
climate 6% to 12% moisture
rod across left 0, right 40
rod deep front 0, back 40
rod up floor 0, top 40
part post
  wood cherry, flat sawn
  size 1-1/2 x 1-1/2, stands, left at 0, front at 0, from 0 to 20
part rail
  wood cherry, flat sawn
  3/4 thick, 3 wide, runs across, face side front, from 1-1/2 to 20, bottom at 8, front at 3/8
join rail to post with mortise and tenon, pegged
)");
    REQUIRE(built->sound());
    CHECK(built->size("tenon thickness") == Approx(6.35));
    CHECK(built->size("tenon width") == Approx(63.5)); // 3 in less two shoulders of 1/4 in
    CHECK(built->model.hardware.at(0).name == "peg 5/16 x 1-1/2");
}

TEST_CASE("a tenon lies in the wood that a curve or an outline leaves at the shoulder") {
    const auto crest = [](const std::string& shaping, const std::string& option) {
        return build_case(
            "part post, left and right\n  wood cherry, flat sawn\n  size 40 x 40, stands, left at "
            "0, front at 0, from 0 to 500\n"
            "part crest\n  wood cherry, flat sawn\n  20 thick, runs across, face side front, "
            "between post, 120 wide, bottom at 300, front at 10\n  " +
            shaping + "\njoin crest to post with mortise and tenon" + option + "\n");
    };
    // 120 wide, curved down to 76 at both ends; shoulders of 6 mm on either edge.
    const auto curved = crest("curve top edge through (0, 44) (460, 0) (920, 44)", "");
    INFO(curved->said());
    REQUIRE(curved->sound());
    CHECK(curved->size("tenon width") == Approx(64));
    CHECK(curved->clashes() == 0);
    const Made& made = curved->made("crest");
    // Beyond the shoulder stands nothing but the tenon: its end is 64 wide, 6 from the lower edge.
    double low = 1000, high = 0;
    for (const auto& edge : made.solid.edges)
        for (const auto& p : {edge.a, edge.b})
            if (p.x < -1) {
                low = std::min(low, p.y);
                high = std::max(high, p.y);
            }
    CHECK(low == Approx(6));
    CHECK(high == Approx(70));
    const auto drawn =
        crest("outline\n    start 0, 0\n    line to 920, 0\n    line to 920, 60\n    line to 460, "
              "120\n    line to 0, 60\n    close",
              "");
    INFO(drawn->said());
    REQUIRE(drawn->sound());
    CHECK(drawn->size("tenon width") == Approx(48));
    CHECK(crest("curve top edge through (0, 44) (460, 0) (920, 44)", ", 100 wide")
              ->said()
              .find("does not lie within crest, of which 76 mm are left at the shoulder") !=
          std::string::npos);
}
