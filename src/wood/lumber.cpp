// Names of lumber read, sizes looked up, feet counted.
//
// A name is one thickness ("8/4", hardwood) or a thickness and a width with an x between (softwood). A whole
// number of quarters in front of an x ("5/4x6") is the same thickness in inches. Widths and thicknesses of PS
// 20 are looked up by their exact nominal size; timbers follow the rule of the standard instead of a table.

#include "wood/lumber.hpp"

#include <array>
#include <stdexcept>

#include <fmt/format.h>

namespace rayfleck::wood {
namespace {

constexpr std::string_view ps20 = "DOC PS 20, American Softwood Lumber Standard";
constexpr std::string_view nhla = "NHLA rough and S2S thicknesses";

/// Sizes in thirty-seconds of an inch, in which every size of the standards is whole.
struct Dressed {
    int nominal, dry, green;
};

constexpr Dressed board_thickness[] = {
    {12, 10, 11}, {16, 14, 15}, {20, 18, 19}, {24, 20, 22}, {32, 24, 25}, {40, 32, 33}, {48, 40, 41},
};
constexpr Dressed board_width[] = {
    {64, 48, 50},    {96, 80, 82},    {128, 112, 114}, {160, 144, 148}, {192, 176, 180},
    {224, 208, 212}, {256, 232, 240}, {288, 264, 272}, {320, 296, 304}, {352, 328, 336},
    {384, 360, 368}, {448, 424, 432}, {512, 488, 496},
};
constexpr Dressed dimension_thickness[] = {
    {64, 48, 50}, {80, 64, 66}, {96, 80, 82}, {112, 96, 98}, {128, 112, 114}, {144, 128, 130},
};
constexpr Dressed dimension_width[] = {
    {64, 48, 50},    {80, 64, 66},    {96, 80, 82},    {112, 96, 98},   {128, 112, 114},
    {144, 128, 130}, {160, 144, 148}, {192, 176, 180}, {256, 232, 240}, {320, 296, 304},
    {384, 360, 368}, {448, 424, 432}, {512, 488, 496},
};

/// Rough hardwood: name, rough and surfaced thickness in thirty-seconds of an inch.
struct Quarter {
    std::string_view name;
    int rough, surfaced;
    Confirmation confirmation;
};
constexpr auto seen = Confirmation::read_secondary;
constexpr auto memory = Confirmation::from_memory;
constexpr Quarter quarters[] = {
    {"3/8", 12, 6, seen},     {"2/4", 16, 10, seen},    {"5/8", 20, 14, seen},  {"3/4", 24, 18, seen},
    {"4/4", 32, 26, seen},    {"5/4", 40, 34, seen},    {"6/4", 48, 42, seen},  {"7/4", 56, 48, memory},
    {"8/4", 64, 56, seen},    {"10/4", 80, 72, memory}, {"12/4", 96, 88, seen}, {"14/4", 112, 104, memory},
    {"16/4", 128, 120, seen},
};

Length thirty_seconds(std::int64_t n) { return Length::in(Rational(n, 32)); }

template <std::size_t N> const Dressed* row_of(const Dressed (&table)[N], Rational inches) {
    for (const Dressed& row : table)
        if (Rational(row.nominal, 32) == inches) return &row;
    return nullptr;
}

/// The standard sets no end; thicker beams are not sawn, and a size in millimetres should not pass for one.
constexpr int greatest_timber = 24;

/// PS 20 timbers: 5 and 6 in lose 1/2; 7 to 15 in lose 3/4 dry, 1/2 green; from 16 in 1 dry, 1/2 green.
std::optional<Dressed> timber_row(Rational inches) {
    if (!inches.is_whole() || inches < Rational(5) || inches > Rational(greatest_timber)) return std::nullopt;
    const int n = static_cast<int>(inches.top());
    const int off_dry = n < 7 ? 16 : n < 16 ? 24 : 32;
    return Dressed{n * 32, n * 32 - off_dry, n * 32 - 16};
}

std::optional<std::int64_t> whole(std::string_view digits) {
    // Four digits are more than any lumber has and cannot overflow.
    if (digits.empty() || digits.size() > 4) return std::nullopt;
    std::int64_t n = 0;
    for (const char c : digits) {
        if (c < '0' || c > '9') return std::nullopt;
        n = n * 10 + (c - '0');
    }
    return n;
}

/// "2", "5/4", "1 1/4", "1-1/4" in inches, above 0.
std::optional<Rational> inches_of(std::string_view typed) {
    Rational sum;
    const auto gap = typed.find_first_of(" -");
    if (gap != std::string_view::npos) {
        const auto before = whole(typed.substr(0, gap));
        if (!before || typed.find('/') == std::string_view::npos) return std::nullopt;
        sum = Rational(*before);
        typed.remove_prefix(gap + 1);
    }
    const auto bar = typed.find('/');
    const auto top = whole(typed.substr(0, bar));
    const auto bottom =
        bar == std::string_view::npos ? std::optional<std::int64_t>(1) : whole(typed.substr(bar + 1));
    if (!top || !bottom || *bottom == 0) return std::nullopt;
    sum += Rational(*top, *bottom);
    if (sum <= Rational(0)) return std::nullopt;
    return sum;
}

std::string_view trimmed(std::string_view s) {
    while (!s.empty() && s.front() == ' ') s.remove_prefix(1);
    while (!s.empty() && s.back() == ' ') s.remove_suffix(1);
    return s;
}

struct Halves {
    Rational thickness, width;
};

std::optional<Halves> halves_of(std::string_view name) {
    std::string plain(name);
    // The multiplication sign is two bytes of UTF-8.
    for (auto at = plain.find("\u00d7"); at != std::string::npos; at = plain.find("\u00d7"))
        plain.replace(at, 2, "x");
    const auto cross = plain.find_first_of("xX");
    if (cross == std::string::npos) return std::nullopt;
    const std::string_view view = plain;
    const auto thickness = inches_of(trimmed(view.substr(0, cross))),
               width = inches_of(trimmed(view.substr(cross + 1)));
    if (!thickness || !width) return std::nullopt;
    return Halves{*thickness, *width};
}

/// "1 1/4", "2".
std::string nominal_text(Rational inches) {
    const std::int64_t n = floor(inches);
    const Rational rest = inches - Rational(n);
    if (rest == Rational(0)) return fmt::format("{}", n);
    const std::string fraction = fmt::format("{}/{}", rest.top(), rest.bottom());
    return n == 0 ? fraction : fmt::format("{} {}", n, fraction);
}

Lumber softwood(const Halves& size, LumberKind kind, const Dressed& thick, const Dressed& wide,
                Seasoning seasoning) {
    const bool dry = seasoning == Seasoning::dry;
    Lumber made;
    made.name = fmt::format("{}x{}", nominal_text(size.thickness), nominal_text(size.width));
    made.kind = kind;
    made.rough_thickness = Length::in(size.thickness);
    made.dressed_thickness = thirty_seconds(dry ? thick.dry : thick.green);
    made.nominal_width = Length::in(size.width);
    made.dressed_width = thirty_seconds(dry ? wide.dry : wide.green);
    made.source = ps20;
    made.confirmation = Confirmation::read_secondary;
    return made;
}

Lumber hardwood(const Quarter& quarter) {
    Lumber made;
    made.name = quarter.name;
    made.kind = LumberKind::hardwood;
    made.rough_thickness = thirty_seconds(quarter.rough);
    made.dressed_thickness = thirty_seconds(quarter.surfaced);
    made.source = nhla;
    made.confirmation = quarter.confirmation;
    return made;
}

/// Nearest whole number; an exact half goes up when told so.
std::int64_t nearest_whole(Rational a, bool raise_half) {
    const std::int64_t below = floor(a);
    const Rational rest = a - Rational(below), half(1, 2);
    return rest > half || (rest == half && raise_half) ? below + 1 : below;
}

} // namespace

std::string_view text(LumberKind kind) {
    switch (kind) {
    case LumberKind::hardwood:
        return "hardwood";
    case LumberKind::board:
        return "board";
    case LumberKind::dimension:
        return "dimension lumber";
    case LumberKind::timber:
        break;
    }
    return "timber";
}

std::optional<Lumber> lumber_named(std::string_view name, Seasoning seasoning) {
    const auto size = halves_of(name);
    if (!size) {
        const std::string_view typed = trimmed(name);
        for (const Lumber& hardwood_row : hardwood_thicknesses())
            if (hardwood_row.name == typed) return hardwood_row;
        return std::nullopt;
    }
    if (size->thickness >= Rational(5)) {
        const auto thick = timber_row(size->thickness), wide = timber_row(size->width);
        if (!thick || !wide) return std::nullopt;
        return softwood(*size, LumberKind::timber, *thick, *wide, seasoning);
    }
    const bool is_board = size->thickness < Rational(2);
    const Dressed* thick =
        is_board ? row_of(board_thickness, size->thickness) : row_of(dimension_thickness, size->thickness);
    const Dressed* wide = is_board ? row_of(board_width, size->width) : row_of(dimension_width, size->width);
    if (thick == nullptr || wide == nullptr) return std::nullopt;
    return softwood(*size, is_board ? LumberKind::board : LumberKind::dimension, *thick, *wide, seasoning);
}

bool looks_like_lumber(std::string_view name) {
    if (halves_of(name)) return true;
    const std::string_view typed = trimmed(name);
    return typed.find('/') != std::string_view::npos && typed.find_first_of(" -") == std::string_view::npos &&
           inches_of(typed).has_value();
}

const std::vector<Lumber>& hardwood_thicknesses() {
    static const std::vector<Lumber> list = [] {
        std::vector<Lumber> made;
        for (const Quarter& quarter : quarters) made.push_back(hardwood(quarter));
        return made;
    }();
    return list;
}

std::optional<Lumber> thinnest_hardwood_for(Length finished) {
    for (const Lumber& row : hardwood_thicknesses())
        if (row.dressed_thickness >= finished) return row;
    return std::nullopt;
}

std::span<const int> european_softwood_thicknesses() {
    static constexpr int sizes[] = {16, 19, 22, 25, 32, 38, 44, 47, 50, 63, 75, 100};
    return sizes;
}

std::span<const int> european_hardwood_thicknesses() {
    static constexpr int sizes[] = {20, 27, 32, 40, 50, 60, 65, 70, 80, 100};
    return sizes;
}

Length european_size_at(Length size, double moisture) {
    return Length::from_geometry(size.value() * (1 + european_size_change.value / 100 * (moisture - 20)));
}

Rational board_feet(Length thickness, Length width, Length length) {
    return thickness.in_inches() * width.in_inches() * length.in_inches() / Rational(144);
}

std::int64_t surface_measure(Length width, Length length) {
    const std::int64_t feet = floor(length.in_inches() / Rational(12));
    return nearest_whole(width.in_inches() * Rational(feet) / Rational(12), true);
}

Rational board_feet_by_surface(std::int64_t surface, Length rough_thickness) {
    const Rational inches = rough_thickness.in_inches();
    return Rational(surface) * (inches < Rational(1) ? Rational(1) : inches);
}

std::int64_t tally_width(Length width, bool raise_half) {
    return nearest_whole(width.in_inches(), raise_half);
}

std::vector<Length> standard_lengths() {
    std::vector<Length> lengths;
    for (int feet = standard_length_least_ft; feet <= standard_length_greatest_ft; ++feet)
        lengths.push_back(Length::in(Rational(12 * feet)));
    return lengths;
}

} // namespace rayfleck::wood
