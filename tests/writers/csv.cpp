// The cut list as CSV, against RFC 4180 and hand calculation.

#include <catch2/catch.hpp>

#include "writers/csv.hpp"

using namespace rayfleck;
using measure::Length;
using measure::Rational;

namespace {

cutlist::CutList one_row() {
    cutlist::Row row;
    row.reference = 1;
    row.name = "leg";
    row.count = 4;
    row.mirrored = {1, 3};
    row.wood = "black cherry";
    row.sawn = "rift sawn";
    row.stock = "8/4";
    row.thickness = row.width = Length::mm(38);
    row.length = Length::in(Rational(71, 3));
    row.rough_thickness = Length::in(2);
    row.rough_width = Length::mm(43);
    row.rough_length = Length::mm(625);
    row.volume_m3 = 0.0054597;
    row.board_feet = 2.3137;
    row.area_m2 = 0.1075;
    row.weight_kg = 1.9124;
    row.finish_area_m2 = 0.37777;
    cutlist::CutList list;
    list.rows = {row};
    return list;
}

const std::string head_mm =
    "reference,name,count,of_them_mirrored,wood,sawn,stock,thickness_mm,width_mm,length_mm,"
    "rough_thickness_mm,rough_width_mm,rough_length_mm,";

} // namespace

TEST_CASE("a row of the cut list in millimetres") {
    CHECK(writers::write_csv(one_row(), {}) ==
          head_mm + "volume_m3,board_feet,area_m2,joinery,remark,weight_kg,finish_area_m2\r\n"
                    "1,leg,4,2,black cherry,rift sawn,8/4,38,38,601.133,50.8,43,625,0.005460,2.314,0.1075,,,"
                    "1.912,0.3778\r\n");
}

TEST_CASE("a maker in inches gets decimal inches too") {
    const std::string csv = writers::write_csv(one_row(), {measure::Unit::in, 1, 32});
    CHECK(csv.rfind(head_mm +
                        "thickness_in,width_in,length_in,rough_thickness_in,rough_width_in,rough_length_in,",
                    0) == 0);
    CHECK(csv.find(",625,1.496,1.496,23.667,2,1.693,24.606,") != std::string::npos);
}

TEST_CASE("commas, quotes and line ends in words are quoted") {
    cutlist::CutList list = one_row();
    list.rows[0].name = "rail, 2\" wide";
    list.rows[0].remark = "one\ntwo";
    const std::string csv = writers::write_csv(list, {});
    CHECK(csv.find("1,\"rail, 2\"\" wide\",4,") != std::string::npos);
    CHECK(csv.find(",\"one\ntwo\",1.912,") != std::string::npos);
}

TEST_CASE("sheet goods leave the column of board feet empty") {
    cutlist::CutList list = one_row();
    list.rows[0].board_feet = 0;
    CHECK(writers::write_csv(list, {}).find(",0.005460,,0.1075,") != std::string::npos);
}
