// Joins, hardware, notes, acceptances: kinds by their names, options held against a table.

#include <catch2/catch.hpp>

#include "elaborated.hpp"

using namespace rayfleck::piece;

namespace {

const std::string two = "piece \"t\"\nunits mm\nrod across  left 0, right 400\nrod deep  front 0, back "
                        "20\nrod up  floor 0, high 100\n"
                        "part leg, left and right\n  wood cherry\n  size 40 x 20, stands, from floor to "
                        "high, left at left, front at front\n"
                        "part rail\n  wood cherry\n  size 20 x 40, runs across, between leg, front at front, "
                        "top at high, face side front\n";

std::string joined(const std::string& text) {
    const std::string out = outcome(two + text);
    const std::size_t at = out.find("join ");
    return at == std::string::npos ? out : out.substr(at);
}

} // namespace

TEST_CASE("a join lists every copy on both sides, and its options with figures") {
    CHECK(joined("join rail to leg with mortise and tenon, haunched 12, 6 thick, set 4 from top, pegged\n") ==
          "join rail to leg at left, leg at right with mortise and tenon\n  haunched 12\n  thick 6\n  set 4 "
          "top\n  pegged\n");
    CHECK(
        joined("join rail to leg at left with dovetail\n  5 tails\n  slope 1:8\n  note \"tails first\"\n") ==
        "join rail to leg at left with dovetail\n  tails 5\n  slope 1 8\n  note \"tails first\"\n");
    CHECK(joined("join rail to leg with screws, \"8 x 40\", 1 screw\n") ==
          "join rail to leg at left, leg at right with screws\n   \"8 x 40\"\n  screws 1\n");
}

TEST_CASE("other names of a joint come out canonical") {
    CHECK(joined("join rail to leg with mortise-and-tenon\n").find("with mortise and tenon\n") !=
          std::string::npos);
    CHECK(joined("join rail to leg with housing\n").find("with dado\n") != std::string::npos);
}

TEST_CASE("joints and options that do not exist get the near word") {
    CHECK(joined("join rail to leg with mortice and tenon\n").find("did you mean `mortise and tenon`?") !=
          std::string::npos);
    CHECK(joined("join rail to leg with mortise and tenon, haunchd\n").find("did you mean `haunched`?") !=
          std::string::npos);
    CHECK(
        joined("join rail to leg with dado, 5 tails\n").find("`dado` has no option `tails` [joint-option]") !=
        std::string::npos);
    CHECK(joined("join rail to leg with dovetail, tails\n")
              .find("`tails` of `dovetail` takes one number, not 0") != std::string::npos);
    CHECK(joined("join rail to leg with dovetail, 2.5 tails\n").find("counts") != std::string::npos);
    CHECK(joined("join rail to leg with dovetail, slope 8\n").find("takes `slope 1:8`") != std::string::npos);
    CHECK(joined("join ral to leg with dado\n").find("did you mean `rail`?") != std::string::npos);
    CHECK(joined("join rail to legs with dado\n").find("did you mean `leg`?") != std::string::npos);
}

TEST_CASE("hardware, notes and acceptances name their parts") {
    const std::string out =
        outcome(two + "hardware \"Brass butt hinge 50\", 2 off, on rail to leg at left\nnote \"oil it\"\n"
                      "accept short-grain on leg because \"it carries nothing\"\n");
    CHECK(out.find("hardware \"Brass butt hinge 50\" 2 off, on rail to leg at left\n"
                   "note \"oil it\"\n"
                   "accept short-grain on leg at left, leg at right because \"it carries nothing\"\n") !=
          std::string::npos);
}

TEST_CASE("a joint counts its fastenings up to a limit") {
    const auto refuses = [](const std::string& option, const std::string& words) {
        return outcome(two + "join rail to leg with dowels, " + option + "\n").find(words) !=
               std::string::npos;
    };
    CHECK(refuses("201 dowels", "`dowels` counts 201, more than 200 in one joint [too-many]"));
    CHECK_FALSE(refuses("200 dowels", "[too-many]"));
    CHECK(refuses("every 4.9", "is closer than 5 mm [too-many]"));
    CHECK_FALSE(refuses("every 5", "[too-many]"));
}
