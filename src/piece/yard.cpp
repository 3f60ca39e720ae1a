// See yard.hpp. A board is read as it lies on the bench: length from left to right, width from front to back,
// the better face up. Its flaws are kept as rectangles from its left end and its front edge; of a round knot
// that is the square about it. What is told of one board and cannot be (a flaw beside it, sapwood wider than
// the board) is an error at its place.

#include "piece/yard.hpp"

#include <algorithm>

namespace rayfleck::piece {
namespace {

const std::vector<std::string>& sawn_words() {
    static const std::vector<std::string> words{"flat", "rift", "quarter"};
    return words;
}

const std::vector<std::string>& price_units() {
    static const std::vector<std::string> words{"board foot", "m3", "m2", "piece"};
    return words;
}

/// `18mm`, `1.5mm`, `3/4in`: a thickness as the name of a stock.
std::optional<Length> thickness_named(const std::string& name) {
    const std::size_t end = name.find_first_not_of("0123456789./");
    if (end == std::string::npos || end == 0 || end > 8) return std::nullopt;
    const std::string digits = name.substr(0, end), unit = name.substr(end);
    const std::size_t slash = digits.find('/'), point = digits.find('.');
    const auto whole = [](const std::string& text) -> std::optional<std::int64_t> {
        if (text.empty() || text.find_first_not_of("0123456789") != std::string::npos) return std::nullopt;
        return std::stoll(text);
    };
    std::optional<Rational> amount;
    if (slash != std::string::npos) {
        const auto over = whole(digits.substr(0, slash)), under = whole(digits.substr(slash + 1));
        if (over && under && *under != 0) amount = Rational(*over, *under);
    } else if (point != std::string::npos) {
        const auto before = whole(digits.substr(0, point)), after = whole(digits.substr(point + 1));
        if (before && after) {
            std::int64_t scale = 1;
            for (std::size_t i = point + 1; i < digits.size(); ++i) scale *= 10;
            amount = Rational(*before) + Rational(*after, scale);
        }
    } else if (const auto all = whole(digits))
        amount = Rational(*all);
    if (!amount) return std::nullopt;
    if (unit == "mm") return Length::mm(*amount);
    if (unit == "cm") return Length::mm(*amount * Rational(10));
    if (unit == "in") return Length::in(*amount);
    return std::nullopt;
}

struct Reader {
    Elaboration& e;
    const Context& c;

    std::optional<Length> positive(const Expression& x, const std::string& what) const {
        const auto length = length_of(e, x, c);
        if (!length) return std::nullopt;
        if (*length <= Length()) {
            e.error("no-size", x.span, what + " is " + e.shown(*length));
            return std::nullopt;
        }
        return length;
    }

    bool known_wood(const std::optional<syntax::Name>& name) const {
        if (!name || wood::find(name->text, e.own_woods)) return true;
        const auto near = findings::near_word(name->text, names_of_woods(e));
        const auto meanings = wood::meanings(name->text);
        std::string list;
        for (std::size_t i = 0; i < meanings.size() && i < 8; ++i)
            list += (i ? ", " : "say which: ") + meanings[i];
        e.error("unknown-wood", name->span, "there is no wood `" + name->text + "` in the tables").mend =
            near            ? "did you mean `" + *near + "`?"
            : !list.empty() ? list
                            : "`rayfleck wood` lists the woods";
        return false;
    }

    std::string sawn(const syntax::Name& name) const {
        if (std::find(sawn_words().begin(), sawn_words().end(), name.text) == sawn_words().end())
            e.error("unknown-sawing", name.span, "a board is not `" + name.text + "` sawn").mend =
                did_you_mean(name.text, sawn_words());
        return name.text;
    }

    /// Thickness, width and length; false when something is missing or wrong, and reported.
    bool size(const syntax::BoardIs& says, Span span, Shop::Board& out) const {
        std::optional<Length> thickness;
        if (says.stock) {
            const auto lumber = wood::lumber_named(says.stock->text);
            if (!lumber) {
                e.error("unknown-stock", says.stock->span, "there is no stock `" + says.stock->text + "`")
                    .mend =
                    "stock is named as in the yard: 4/4, 8/4, 2x4; or give thickness, width and length";
                return false;
            }
            out.stock = lumber->name;
            // Hardwood lies there rough, softwood dressed.
            thickness = lumber->kind == wood::LumberKind::hardwood ? lumber->rough_thickness
                                                                   : lumber->dressed_thickness;
        }
        std::vector<Length> sizes;
        for (const Expression& x : says.size) {
            const auto one = positive(x, "a board's size");
            if (!one) return false;
            sizes.push_back(*one);
        }
        if (sizes.size() == 3) {
            thickness = sizes.front();
            sizes.erase(sizes.begin());
        }
        if (sizes.size() != 2 || !thickness) {
            e.error("open-size", span, "the board `" + out.id + "` needs thickness, width and length").mend =
                "write `board " + out.id +
                ", cherry, 4/4, 190 x 2400`, or all three, as in `26 x 190 x 2400`";
            return false;
        }
        out.thickness = *thickness;
        out.width = sizes[0];
        out.length = sizes[1];
        return true;
    }

    void bark(const syntax::BarkIs& says, Shop::Board& out) const {
        Side side = says.towards.side;
        const bool fits =
            says.edge ? side == Side::front || side == Side::back : side == Side::top || side == Side::bottom;
        if (!fits) {
            e.error("bark-looks-elsewhere", says.towards.span,
                    std::string("the ") + (says.edge ? "edges" : "faces") + " of a board on hand look " +
                        (says.edge ? "front and back" : "up and down"))
                .mend = "a board lies with its length from left to right, its better face up";
            return;
        }
        if (says.heart)
            side = side == Side::front  ? Side::back
                   : side == Side::back ? Side::front
                   : side == Side::top  ? Side::bottom
                                        : Side::top;
        out.bark = side;
    }

    void sapwood(const std::pair<Expression, syntax::SideName>& says, Shop::Board& out) const {
        const auto wide = positive(says.first, "sapwood");
        if (!wide) return;
        const Side side = says.second.side;
        if (side != Side::front && side != Side::back) {
            e.error("which-side", says.second.span, "a board's edges are front and back").mend =
                "a board lies with its length from left to right: sapwood 20 on back edge";
            return;
        }
        if (*wide > out.width) {
            e.error("outside-part", says.first.span,
                    "the sapwood is wider than the board, which is " + e.shown(out.width) + " wide")
                .mend = "measure it from that edge inwards";
            return;
        }
        (side == Side::front ? out.sapwood_front : out.sapwood_back) = *wide;
    }

    void checks(const std::pair<Expression, syntax::SideName>& says, Shop::Board& out) const {
        const auto deep = positive(says.first, "a check");
        if (!deep) return;
        const Side side = says.second.side;
        if (side != Side::left && side != Side::right) {
            e.error("which-side", says.second.span, "a board's ends are left and right").mend =
                "a board lies with its length from left to right: checks 60 at right end";
            return;
        }
        if (*deep >= out.length) {
            e.error("outside-part", says.first.span,
                    "the checks are as long as the board, which is " + e.shown(out.length) + " long")
                .mend = "measure them from that end inwards, or leave the board out";
            return;
        }
        (side == Side::left ? out.checks_left : out.checks_right) = *deep;
    }

    void flaw(const syntax::FlawIs& says, Shop::Board& out) const {
        std::vector<Length> sizes;
        for (const Expression& x : says.sizes) {
            const auto size = length_of(e, x, c);
            if (!size) return;
            sizes.push_back(*size);
        }
        Shop::Board::Flaw flaw;
        flaw.kind = says.kind.text;
        if (sizes.size() == 3) {
            flaw.round = true;
            flaw.length = flaw.width = sizes[0];
            flaw.along = sizes[1] - sizes[0] / Rational(2);
            flaw.across = sizes[2] - sizes[0] / Rational(2);
        } else if (sizes.size() == 4) {
            flaw.along = std::min(sizes[0], sizes[1]);
            flaw.length = std::max(sizes[0], sizes[1]) - flaw.along;
            flaw.across = std::min(sizes[2], sizes[3]);
            flaw.width = std::max(sizes[2], sizes[3]) - flaw.across;
        } else
            return;
        if (flaw.length <= Length() || flaw.width <= Length()) {
            e.error("no-size", says.kind.span, "the " + flaw.kind + " has no size").mend =
                "write its diameter or the box round it, larger than nought";
            return;
        }
        if (flaw.along >= out.length || flaw.across >= out.width || flaw.along + flaw.length <= Length() ||
            flaw.across + flaw.width <= Length()) {
            e.error("outside-part", says.kind.span,
                    "the " + flaw.kind + " does not lie on the board, which is " + e.shown(out.width) +
                        " wide and " + e.shown(out.length) + " long")
                .mend = "first along from the left end, then across from the front edge";
            return;
        }
        out.flaws.push_back(flaw);
    }
};

} // namespace

void read_board(Elaboration& e, const Context& c, const syntax::BoardIs& says, Span span, Shop& shop) {
    const Reader reader{e, c};
    Shop::Board out;
    out.id = says.id.text;
    out.span = span;
    for (const Shop::Board& other : shop.boards)
        if (other.id == out.id) {
            e.error("name-twice", says.id.span, "there are two boards `" + out.id + "`")
                .labels.push_back({other.span, "the first"});
            return;
        }
    if (!reader.known_wood(says.wood)) return;
    if (says.wood) out.wood = says.wood->text;
    if (says.sawn) out.sawn = reader.sawn(*says.sawn);
    if (!reader.size(says, span, out)) return;
    if (says.count) {
        const auto count = count_of(e, *says.count, c, "the number of boards", 10000);
        if (!count) return;
        out.count = *count;
    }
    if (says.rings) {
        const auto degrees = degrees_of(e, *says.rings, c);
        if (!degrees) return;
        if (*degrees < -90 || *degrees > 90) {
            e.error("out-of-range", says.rings->span,
                    "the rings lie between 0 (flat) and 90 degrees (quarter) to the face")
                .mend = "measure at the end, from the wide face to the rings";
            return;
        }
        out.rings = *degrees;
        if (out.sawn.empty()) {
            const std::string words(wood::text(wood::sawn_at(measure::Angle::degrees(*degrees))));
            out.sawn = words.substr(0, words.find(' '));
        }
    }
    if (says.bark) reader.bark(*says.bark, out);
    for (const auto& one : says.sapwood) reader.sapwood(one, out);
    for (const auto& one : says.checks) reader.checks(one, out);
    for (const syntax::FlawIs& one : says.flaws) reader.flaw(one, out);
    shop.boards.push_back(std::move(out));
}

void read_price(Elaboration& e, const Context& c, const syntax::PriceIs& says, Span span, Shop& shop) {
    const Reader reader{e, c};
    Shop::Price out;
    out.span = span;
    if (!reader.known_wood(says.wood)) return;
    out.wood = says.wood.text;
    if (says.stock) {
        const auto lumber = wood::lumber_named(says.stock->text);
        out.stock = lumber ? lumber->name : says.stock->text;
        if (lumber)
            out.thickness = lumber->kind == wood::LumberKind::hardwood ? lumber->rough_thickness
                                                                       : lumber->dressed_thickness;
        else {
            const auto thickness = thickness_named(says.stock->text);
            if (wood::looks_like_lumber(says.stock->text) || !thickness || *thickness <= Length()) {
                e.error("unknown-stock", says.stock->span, "there is no stock `" + says.stock->text + "`")
                    .mend = "write it as in the yard, 4/4 or 2x4, or its thickness with the unit: 18mm";
                return;
            }
            out.thickness = *thickness;
        }
    }
    if (says.sawn) out.sawn = reader.sawn(*says.sawn);
    const auto amount = number_of(e, says.amount, c, "a price");
    if (!amount) return;
    if (*amount < Rational(0)) {
        e.error("out-of-range", says.amount.span, "a price is not below nought").mend =
            "write what the yard asks";
        return;
    }
    out.amount = amount->value();
    out.per = says.per;
    if (out.per == "board feet") out.per = "board foot";
    if (std::find(price_units().begin(), price_units().end(), out.per) == price_units().end()) {
        e.error("unknown-price-unit", says.amount.span, "a price is not per `" + out.per + "`").mend =
            did_you_mean(out.per, price_units());
        return;
    }
    const auto all = [&](const std::vector<Expression>& from, std::vector<Length>& to) {
        for (const Expression& x : from) {
            const auto length = reader.positive(x, "a size");
            if (!length) return false;
            to.push_back(*length);
        }
        return true;
    };
    std::vector<Length> widths, sheet;
    if (!all(says.lengths, out.lengths) || !all(says.widths, widths) || !all(says.sheets, sheet)) return;
    // Neither would ever be asked for.
    const wood::Species* species = wood::find(out.wood, e.own_woods);
    if (species != nullptr && species->is_sheet() && !widths.empty()) {
        e.error("sheet-or-board", says.widths.front().span,
                "sheets of " + out.wood + " have one width, not widths to choose from")
            .mend = "write the size of the sheet: sheets 1220mm x 2440mm";
        return;
    }
    if (species != nullptr && !species->is_sheet() && !sheet.empty()) {
        e.error("sheet-or-board", says.sheets.front().span, "boards of " + out.wood + " are no sheets").mend =
            "write the widths and lengths of its boards: widths 5in to 9in, lengths 8ft";
        return;
    }
    if (widths.size() == 2)
        out.widths = std::pair(std::min(widths[0], widths[1]), std::max(widths[0], widths[1]));
    if (sheet.size() == 2) out.sheet = std::pair(sheet[0], sheet[1]);
    shop.prices.push_back(std::move(out));
}

} // namespace rayfleck::piece
