// The shop file: kerfs, allowances, machines, boards on hand, prices, sheet and title block.

#include <algorithm>

#include "piece/elaboration.hpp"

namespace rayfleck::piece {
namespace {

const std::vector<std::string>& sawn_words() {
    static const std::vector<std::string> words{"flat", "rift", "quarter"};
    return words;
}

const std::vector<std::string>& allowances() {
    static const std::vector<std::string> words{"planing", "thickness", "jointing",
                                                "width",   "end trim",  "length"};
    return words;
}

const std::vector<std::string>& sheets() {
    static const std::vector<std::string> names{"A4",      "A3",     "A2",     "A1",     "A0",    "letter",
                                                "tabloid", "ANSI A", "ANSI B", "ANSI C", "ANSI D"};
    return names;
}

std::string upper(std::string text) {
    for (char& c : text)
        if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    return text;
}

struct ShopReader {
    Elaboration& e;
    Context c;
    Shop& shop;
    Piece& piece;

    std::optional<Length> positive(const Expression& x, const std::string& what, bool may_be_nought = false) {
        const auto length = length_of(e, x, c);
        if (!length) return std::nullopt;
        if (*length < Length() || (!may_be_nought && *length == Length())) {
            e.error("no-size", x.span, what + " is " + e.shown(*length));
            return std::nullopt;
        }
        return length;
    }

    void kerf(const syntax::KerfIs& says) {
        if (const auto width = positive(says.width, "a kerf", true)) {
            for (const auto& [saw, other] : shop.kerfs)
                if (saw == says.saw.text) {
                    e.error("said-twice", says.saw.span, "the kerf of `" + saw + "` is told twice");
                    return;
                }
            shop.kerfs.emplace_back(says.saw.text, *width);
        }
    }

    void allow(const syntax::AllowIs& says) {
        const auto amount = positive(says.amount, "an allowance", true);
        if (!amount) return;
        const std::string& what = says.what.text;
        if (what == "planing" || what == "thickness")
            shop.allow_thickness = *amount;
        else if (what == "jointing" || what == "width")
            shop.allow_width = *amount;
        else if (what == "length")
            shop.allow_length = *amount;
        else if (what == "end trim")
            shop.end_trim = *amount;
        else
            e.error("unknown-allowance", says.what.span, "nothing is allowed for `" + what + "`").mend =
                did_you_mean(what, allowances());
    }

    void title(const syntax::TitleField& says) {
        if (says.field.text == "owner")
            shop.owner = says.text.text;
        else if (says.field.text == "approved by" || says.field.text == "approved")
            shop.approved_by = says.text.text;
        else if (says.field.text == "creator" || says.field.text == "drawn by")
            shop.creator = says.text.text;
        else
            shop.title_fields.emplace_back(says.field.text, says.text.text);
    }

    void sheet(const syntax::SheetIs& says) {
        for (const std::string& name : sheets())
            if (upper(name) == upper(says.size.text)) {
                shop.sheet = name;
                return;
            }
        e.error("unknown-sheet", says.size.span, "there is no sheet `" + says.size.text + "`").mend =
            did_you_mean(says.size.text, sheets());
    }

    bool known_wood(const std::optional<syntax::Name>& name) {
        if (!name || wood::find(name->text)) return true;
        const auto near = findings::near_word(name->text, wood::known_names());
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

    void board(const syntax::BoardIs& says, Span span) {
        Shop::Board out;
        out.id = says.id.text;
        out.span = span;
        for (const Shop::Board& other : shop.boards)
            if (other.id == out.id) {
                e.error("name-twice", says.id.span, "there are two boards `" + out.id + "`")
                    .labels.push_back({other.span, "the first"});
                return;
            }
        if (!known_wood(says.wood)) return;
        if (says.wood) out.wood = says.wood->text;
        std::optional<Length> thickness;
        if (says.stock) {
            const auto lumber = wood::lumber_named(says.stock->text);
            if (!lumber) {
                e.error("unknown-stock", says.stock->span, "there is no stock `" + says.stock->text + "`")
                    .mend =
                    "stock is named as in the yard: 4/4, 8/4, 2x4; or give thickness, width and length";
                return;
            }
            out.stock = lumber->name;
            // Hardwood lies there rough, softwood dressed.
            thickness = lumber->kind == wood::LumberKind::hardwood ? lumber->rough_thickness
                                                                   : lumber->dressed_thickness;
        }
        if (says.sawn) {
            if (std::find(sawn_words().begin(), sawn_words().end(), says.sawn->text) == sawn_words().end())
                e.error("unknown-sawing", says.sawn->span, "a board is not `" + says.sawn->text + "` sawn")
                    .mend = did_you_mean(says.sawn->text, sawn_words());
            out.sawn = says.sawn->text;
        }
        std::vector<Length> sizes;
        for (const Expression& x : says.size) {
            const auto size = positive(x, "a board's size");
            if (!size) return;
            sizes.push_back(*size);
        }
        if (sizes.size() == 3) {
            thickness = sizes.front();
            sizes.erase(sizes.begin());
        }
        if (sizes.size() != 2 || !thickness) {
            e.error("open-size", span, "the board `" + out.id + "` needs thickness, width and length").mend =
                "write `board " + out.id +
                ", cherry, 4/4, 190 x 2400`, or all three, as in `26 x 190 x 2400`";
            return;
        }
        out.thickness = *thickness;
        out.width = sizes[0];
        out.length = sizes[1];
        if (says.count) {
            const auto count = count_of(e, *says.count, c, "the number of boards", 10000);
            if (!count) return;
            out.count = *count;
        }
        shop.boards.push_back(std::move(out));
    }

    void price(const syntax::PriceIs& says) {
        Shop::Price out;
        if (!known_wood(says.wood)) return;
        out.wood = says.wood.text;
        if (says.stock) {
            const auto lumber = wood::lumber_named(says.stock->text);
            out.stock = lumber ? lumber->name : says.stock->text;
            if (!lumber && wood::looks_like_lumber(says.stock->text)) {
                e.error("unknown-stock", says.stock->span, "there is no stock `" + says.stock->text + "`");
                return;
            }
        }
        const auto amount = number_of(e, says.amount, c, "a price");
        if (!amount) return;
        if (*amount < Rational(0)) {
            e.error("out-of-range", says.amount.span, "a price is not below nought");
            return;
        }
        out.amount = amount->value();
        out.per = says.per;
        for (const Expression& x : says.lengths) {
            const auto length = positive(x, "a length");
            if (!length) return;
            out.lengths.push_back(*length);
        }
        shop.prices.push_back(std::move(out));
    }

    void limit(const syntax::LimitIs& says) {
        if (const auto amount = positive(says.amount, "a limit"))
            shop.limits.push_back({says.machine.text, says.what.text, *amount});
    }

    void read(const syntax::Statement& statement) {
        const auto& says = statement.says;
        if (const auto* file = std::get_if<syntax::ShopFile>(&says)) {
            if (shop.owner.empty()) shop.owner = file->name.text;
        } else if (const auto* one = std::get_if<syntax::KerfIs>(&says))
            kerf(*one);
        else if (const auto* amount = std::get_if<syntax::AllowIs>(&says))
            allow(*amount);
        else if (const auto* machine = std::get_if<syntax::LimitIs>(&says))
            limit(*machine);
        else if (const auto* field = std::get_if<syntax::TitleField>(&says))
            title(*field);
        else if (const auto* size = std::get_if<syntax::SheetIs>(&says))
            sheet(*size);
        else if (const auto* angle = std::get_if<syntax::ProjectionIs>(&says))
            shop.first_angle = angle->first_angle;
        else if (const auto* wood = std::get_if<syntax::BoardIs>(&says))
            board(*wood, statement.header);
        else if (const auto* cost = std::get_if<syntax::PriceIs>(&says))
            price(*cost);
        else if (const auto* climate = std::get_if<syntax::ClimateIs>(&says)) {
            const auto found = climate_of(e, *climate, statement.header, c);
            if (found && !piece.climate_stated) {
                piece.climate = *found;
                piece.climate_stated = true;
            }
        } else if (!std::holds_alternative<syntax::UnitsAre>(says) &&
                   !std::holds_alternative<syntax::BrokenStatement>(says)) {
            e.error("out-of-place", statement.header, "this belongs in a piece, not in a shop file").mend =
                "move it to the piece";
        }
    }
};

} // namespace

void read_shop(Elaboration& e, Scope&, const syntax::ShopIn& says, Piece& piece) {
    const auto found = e.project.brought.find(says.path.text);
    if (found == e.project.brought.end() || found->second < 0 ||
        found->second >= static_cast<int>(e.project.trees.size()))
        return;
    // A shop's figures hang on no names of the piece.
    Scope nowhere;
    Context c;
    c.scope = &nowhere;
    ShopReader reader{e, c, piece.shop, piece};
    for (const syntax::Statement& statement :
         e.project.trees[static_cast<std::size_t>(found->second)].statements)
        reader.read(statement);
}

} // namespace rayfleck::piece
