#pragma once
// The rules of thumb by which joints get their sizes when the maker leaves them out, each with its source.
//
// Old textbooks, navy manuals and makers' manuals give proportions rather than strength calculations, and
// some rules that every shop follows stand in no publication that we could find: those say so. Where sources
// contradict each other (the slope of dovetails) both are here and the one in use is named. t is the
// thickness of the piece that is cut.

#include <array>

#include "wood/figure.hpp"
#include "wood/species.hpp"

namespace rayfleck::wood::rules {

inline constexpr std::string_view of_stock = "thickness of the piece that is cut";
inline constexpr std::string_view no_source = "common practice, no published source";

// Tenons and mortises.

/// Tenon of a framed joint.
inline constexpr Proportion tenon_thickness{
    1, 3, of_stock, "Practical Building Construction, ch. XVI (textbook, date not seen)", Confirmation::read};
/// Thinnest tenon that still leaves stout cheeks in proportion.
inline constexpr Proportion tenon_thickness_least{
    1, 4, of_stock, "Building Construction 3-1 (textbook, date not seen)", Confirmation::read};
/// Widths of mortising chisels and bits that shops have, in mm and in thirty-seconds of an inch: a mortise is
/// as wide as its chisel, so a tenon takes the width nearest to its share. Common practice, no published
/// source.
inline constexpr std::array<int, 16> chisels_mm{3, 4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 22, 25, 28, 30, 32};
inline constexpr std::array<int, 10> chisels_in_32nds{4, 6, 8, 10, 12, 16, 20, 24, 28, 32};
/// Thickest tenon that still leaves the mortised piece as strong beside it.
inline constexpr Proportion tenon_thickness_greatest{1, 2, of_stock, no_source, Confirmation::none};
/// Wider than this many times its thickness a tenon bends: divide or haunch it.
inline constexpr Proportion tenon_width_greatest{5, 1, "thickness of the tenon",
                                                 "Building Construction 3-1 (textbook, date not seen)",
                                                 Confirmation::read};
/// Through tenon: at least this much of the thickness of the mortised piece.
inline constexpr Proportion tenon_length_least{3, 2, "thickness of the mortised piece",
                                               "a public web text; otherwise no source", Confirmation::read};
/// Depth of a stub mortise in cabinet work.
inline constexpr Proportion stub_mortise_depth{7, 8, "width of the mortised piece",
                                               "W. Fairham, Woodwork Joints", Confirmation::read};
/// Cheek beside a mortise: what a tenon of a third leaves on either side.
inline constexpr Proportion mortise_wall{
    1, 3, of_stock, "follows from the tenon of one third, Practical Building Construction, ch. XVI",
    Confirmation::read};
/// Twin tenons in a rail that lies flat: shoulder, tenon, room, tenon, shoulder, a fifth each.
inline constexpr Proportion flat_twin_tenon{1, 5, "width of the rail", no_source, Confirmation::none};
/// How far a haunch stands beyond the shoulder: small and large work.
inline constexpr Figure haunch_length{12, "mm", "Building Construction 3-1 (textbook, date not seen)",
                                      Confirmation::read};
inline constexpr Figure haunch_length_large{25, "mm", "Building Construction 3-1 (textbook, date not seen)",
                                            Confirmation::read};
/// Width of the tenon at the end of a frame: this share of the rail's width less the groove; the rest is
/// haunch.
inline constexpr Proportion tenon_width_beside_haunch{1, 2, "width of the rail less the depth of the groove",
                                                      "W. Noyes, Handwork in Wood, 1910, ch. VII",
                                                      Confirmation::read};
/// Haunch of a table rail at the top of the leg.
inline constexpr Figure table_rail_haunch_least{0.75, "in", "woodworking magazine, 2007", Confirmation::read};
inline constexpr Figure table_rail_haunch_greatest{1, "in", "woodworking magazine, 2007", Confirmation::read};
/// Horn left beyond a mortise near an end while working.
inline constexpr Figure horn_length{18, "mm", "a public handyman's text; Noyes, ch. VII, gives no number",
                                    Confirmation::read};
/// Tusk tenon.
inline constexpr Proportion tusk_tenon_thickness{1, 6, of_stock, "W. Noyes, Handwork in Wood, 1910, ch. IX",
                                                 Confirmation::read};
/// Mitred ends of twin tenons in one leg add 15 to 20 % to their length.
inline constexpr Figure mitred_twin_tenon_gain_least{15, "%", "woodworking magazine, 2007",
                                                     Confirmation::read};
inline constexpr Figure mitred_twin_tenon_gain_greatest{20, "%", "woodworking magazine, 2007",
                                                        Confirmation::read};

// Grooves, dados, rabbets, laps.

/// Half lap: half of each piece.
inline constexpr Proportion half_lap_depth{1, 2, of_stock, no_source, Confirmation::none};
/// Dado or housing, and the deepest that is still usual.
inline constexpr Proportion dado_depth{1, 3, of_stock, no_source, Confirmation::none};
inline constexpr Proportion dado_depth_greatest{1, 2, of_stock, no_source, Confirmation::none};
/// Rabbet, usual and deepest.
inline constexpr Proportion rabbet_depth{1, 2, of_stock, no_source, Confirmation::none};
inline constexpr Proportion rabbet_depth_greatest{2, 3, of_stock, no_source, Confirmation::none};
/// Panel groove in a frame: as wide as the mortise (a third), half as deep as the stock is thick, within
/// these bounds.
inline constexpr Proportion groove_width{
    1, 3, of_stock, "mortise and groove are of one width: W. Noyes, Handwork in Wood, 1910, ch. VII",
    Confirmation::read};
inline constexpr Proportion groove_depth{1, 2, of_stock, no_source, Confirmation::none};
inline constexpr Figure groove_depth_least{6, "mm", no_source, Confirmation::none};
inline constexpr Figure groove_depth_greatest{12, "mm", no_source, Confirmation::none};

// Edge joints.

inline constexpr std::string_view navy_manual = "US Navy NAVEDTRA 14119, ch. 3";
inline constexpr Proportion dowel_diameter{1, 3, of_stock, navy_manual, Confirmation::read};
inline constexpr Proportion tongue_thickness{1, 3, of_stock, navy_manual, Confirmation::read};
/// The manual's words for a tongue's projection are unclear; as long as it is thick is what shops cut.
inline constexpr Proportion tongue_length{1, 3, of_stock, no_source, Confirmation::none};
inline constexpr Proportion spline_thickness{1, 3, of_stock, navy_manual, Confirmation::read};
inline constexpr Proportion spline_width{2, 1, of_stock, navy_manual, Confirmation::read};

// Dovetails. Slope 1 in n: the side of the tail leaves the line of the grain by one unit in n along it.

/// One unit of slope in so many along the grain: today's custom.
inline constexpr Figure dovetail_slope_hardwood{
    8, "", "today's custom, no source of authority; older textbooks say the opposite", Confirmation::none};
inline constexpr Figure dovetail_slope_softwood{
    6, "", "today's custom, no source of authority; older textbooks say the opposite", Confirmation::none};
/// The steepest that a published text teaches, and the flattest and steepest of a maker's manual.
inline constexpr Figure dovetail_slope_steepest{4, "", "G. A. Ross, Elementary Course in Woodwork",
                                                Confirmation::read};
inline constexpr Figure dovetail_slope_manual_steepest{5, "", "E. Joyce, The Technique of Furniture Making",
                                                       Confirmation::read};
inline constexpr Figure dovetail_slope_manual_flattest{7, "", "E. Joyce, The Technique of Furniture Making",
                                                       Confirmation::read};
/// The custom for a wood: 1 in 6 in softwood, 1 in 8 in all other.
constexpr const Figure& dovetail_slope(const Species& species) {
    return species.kind == Kind::softwood ? dovetail_slope_softwood : dovetail_slope_hardwood;
}

// Glue.

/// Strength of a glued butt of end grain at best, against the tension strength of the wood.
inline constexpr Proportion end_grain_glue_at_best{1, 4, "tension strength of the wood",
                                                   "Wood Handbook 2010, ch. 10", Confirmation::read};
/// A scarf: glue area against the section, and the slope (1 in n) that is strongest.
inline constexpr Figure scarf_area_least{10, "times the section", "Wood Handbook 2010, ch. 10",
                                         Confirmation::read};
inline constexpr Figure scarf_slope{12, "", "Wood Handbook 2010, ch. 10", Confirmation::read};
/// Width of a glued cross-grain contact below which movement is not worth a thought.
inline constexpr Figure cross_grain_width_harmless{
    101.6, "mm", "common practice (3 to 4 in, here 4), no published source", Confirmation::none};

// Screws, nails, bolts.

inline constexpr Proportion lead_hole_softwood{70, 100, "root diameter of the screw",
                                               "Wood Handbook 2021, ch. 8", Confirmation::read_secondary};
inline constexpr Proportion lead_hole_hardwood{90, 100, "root diameter of the screw",
                                               "Wood Handbook 2021, ch. 8", Confirmation::read_secondary};
/// Thread in the second piece for the full lateral load.
inline constexpr Figure screw_penetration{7, "shank diameters", "Wood Handbook 2021, ch. 8",
                                          Confirmation::read_secondary};
inline constexpr Figure nail_penetration_dense{10, "diameters", "Wood Handbook 2021, ch. 8",
                                               Confirmation::read_secondary};
inline constexpr Figure nail_penetration_light{14, "diameters", "Wood Handbook 2021, ch. 8",
                                               Confirmation::read_secondary};
/// Screw as long as so many times the piece it holds; two thirds of it in the second piece.
inline constexpr Proportion screw_length{3, 1, "thickness of the piece held", no_source, Confirmation::none};
inline constexpr Proportion screw_in_second_piece{2, 3, "length of the screw", no_source, Confirmation::none};
/// Holding of a screw in end grain against side grain, when nothing splits.
inline constexpr Proportion screw_in_end_grain{3, 4, "withdrawal from side grain", "Wood Handbook, ch. 8",
                                               Confirmation::from_memory};
/// Distances, in diameters, that the handbook gives for bolts; used for screws and bores as well.
inline constexpr Figure end_distance_softwood{7, "diameters", "Wood Handbook, ch. 8, bolts in tension",
                                              Confirmation::from_memory};
inline constexpr Figure end_distance_hardwood{5, "diameters", "Wood Handbook, ch. 8, bolts in tension",
                                              Confirmation::from_memory};
inline constexpr Figure edge_distance{1.5, "diameters", "Wood Handbook, ch. 8, bolts",
                                      Confirmation::from_memory};
inline constexpr Figure spacing{4, "diameters", "Wood Handbook, ch. 8, bolts", Confirmation::from_memory};

} // namespace rayfleck::wood::rules
