#pragma once
// Finished sheets: strokes, fills, texts and links in millimetres of paper. What drawing gives and writers
// take.
//
// Nothing here knows wood. A writer draws the items of a sheet in their order. Paper coordinates: x to the
// right, y upwards, origin at the bottom left corner of the sheet. Line widths are fixed by the kind of line
// (ISO 128 line group 0.5: wide 0.5 mm, narrow 0.25 mm); a writer never chooses one.

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "drawing/cut_record.hpp"
#include "solid/solid.hpp"

namespace rayfleck::drawing {

using solid::Point2;

/// Kinds of line, after ISO 128 (types 01.2, 01.1, 02.1, 04.1, 04.2, 05.1).
enum class Pen {
    visible,       ///< wide continuous: visible edges, frame
    hidden,        ///< narrow dashed 12d/3d: hidden edges
    thin,          ///< narrow continuous: dimension, extension and leader lines, hatching, table rules
    centre,        ///< narrow long-dash dot 24d/3d/0.5d/3d
    cutting_plane, ///< wide long-dash dot
    phantom,       ///< narrow long-dash double-dot: adjacent parts, traces of an exploded view
};
/// Width in mm of paper.
double width_of(Pen pen);
/// Dash and gap lengths in mm of paper, empty for continuous lines.
std::vector<double> dashes_of(Pen pen);

/// Shades by purpose, not by taste; a sheet must read in black and white.
enum class Ink {
    black,
    grey,  ///< secondary rules, ring lines
    red,   ///< faults on the warnings page
    amber, ///< cautions on the warnings page
    blue,  ///< notes on the warnings page
    green, ///< accepted findings
    pale,  ///< very light fill under a table head or a picture of wood
    white,
};

/// What a stroke stands for; the audit of the drawings reads it, writers ignore it.
enum class Role { edge, frame, dimension, extension, leader, hatch, mark, table, picture, centre };

/// A polyline; closed when the last point repeats the first.
struct Stroke {
    std::vector<Point2> points;
    Pen pen = Pen::thin;
    Ink ink = Ink::black;
    Role role = Role::edge;
};

/// A filled area, even-odd over its rings.
struct Fill {
    std::vector<std::vector<Point2>> rings;
    Ink ink = Ink::black;
};

enum class Typeface {
    sans, ///< DejaVu Sans Condensed: part names, tables, messages
    sans_bold,
    lettering, ///< Routed Gothic: titles and dimension figures; strings it lacks a glyph for fall back to
               ///< sans
};

/// One line of text. Fractions written `17-5/8` may be set stacked by the layout: see `measure_text`.
struct Text {
    Point2 at;           ///< left end of the base line, before turning
    std::string words;   ///< UTF-8, one line
    double height = 2.5; ///< cap height in mm of paper
    Typeface face = Typeface::sans;
    Ink ink = Ink::black;
    double turn = 0; ///< degrees anticlockwise about `at`
};

/// An area that jumps to another place of the set when clicked.
struct Link {
    solid::Point2 low, high;
    int to_sheet = 0; ///< index into Set::sheets
};

using Item = std::variant<Stroke, Fill, Text, Link>;

/// What one dimension says, for the audit and the completeness test.
struct DimensionRecord {
    std::string part;        ///< instance or part name, empty for the whole piece
    char axis = 'L';         ///< L, W, T of a part; X, Y, Z of the piece; A angle; R radius; D diameter
    double from = 0, to = 0; ///< mm in that frame; for A degrees, for R and D from is 0
    std::string shown;       ///< the figure as printed
    bool auxiliary = false;  ///< in parentheses
    int times = 1;           ///< so many equal links in a row
};

/// A view of the whole piece square to two of its axes: a place p of the piece lies on paper at
/// origin + scale * (right_sign * p[right], up_sign * p[up]). For the audit.
struct ViewRecord {
    std::string name;      ///< `front`, `plan`, `from the left`
    int right = 0, up = 2; ///< axes of the piece across and up the picture: 0 x, 1 y, 2 z
    double right_sign = 1, up_sign = 1;
    Point2 origin;
    double scale = 1;
    Point2 low, high; ///< round its wood, paper
};

/// How the fibres of a cut area lie to the cut.
enum class CutGrain { end_grain, long_grain, sheet };

/// One connected area that a section cuts, for the audit.
struct SectionRecord {
    std::string part;                       ///< instance name
    std::string section;                    ///< title of the section, or letter of the detail
    std::vector<std::vector<Point2>> rings; ///< mm of paper, rim first
    CutGrain grain = CutGrain::end_grain;
    double turn = 0, pitch = 0; ///< of its hatch: degrees, mm of paper
    bool filled = false;        ///< too thin to be hatched
};

struct Sheet {
    double width = 297, height = 210; ///< mm
    std::string title;                ///< PDF outline entry and page name
    std::vector<Item> items;
    std::vector<DimensionRecord> dimensions;
    std::vector<ViewRecord> views;
    std::vector<CutRecord> cuts; ///< rows of the tables of cuts
    std::vector<SectionRecord> sections;
    bool full_size = false; ///< a template: ask viewers not to scale
};

/// All sheets of one piece, in the order a builder reads them.
struct Set {
    std::string title;
    std::string creator;
    std::vector<Sheet> sheets;
};

/// Width in mm of a string as the writers set it, from the metrics of the built-in fonts. Same on every
/// machine.
double text_width(const std::string& words, double cap_height, Typeface face);
/// The box a text covers, turned about its anchor: four corners.
std::vector<Point2> text_box(const Text& text);

} // namespace rayfleck::drawing
