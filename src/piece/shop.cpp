// The shop file: kerfs, allowances, machines, sheet and title block; boards and prices stand in yard.cpp.
//
// A shop file may bring in another, which lists boards on hand: what is left of them changes with every
// piece.

#include <algorithm>

#include "piece/yard.hpp"

namespace rayfleck::piece {
namespace {

/// What of a machine is limited.
const std::vector<std::string>& measures() {
    static const std::vector<std::string> words{"width", "height", "thickness", "length"};
    return words;
}

const std::vector<std::string>& allowances() {
    static const std::vector<std::string> words{"planing",  "thickness", "jointing",     "width",
                                                "end trim", "length",    "straightening"};
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

class ShopReader {
  public:
    ShopReader(Elaboration& elaboration, const Context& context, Piece& of_piece)
        : e(elaboration), c(context), shop(of_piece.shop), piece(of_piece) {}

    static const syntax::Tree* tree_of(const Elaboration& e, const std::string& path) {
        const auto found = e.project.brought.find(path);
        if (found == e.project.brought.end() || found->second < 0 ||
            found->second >= static_cast<int>(e.project.trees.size()))
            return nullptr;
        return &e.project.trees[static_cast<std::size_t>(found->second)];
    }

    void read_all(const syntax::Tree& tree) {
        read_.push_back(&tree);
        for (const syntax::Statement& statement : tree.statements) read(statement);
    }

  private:
    Elaboration& e;
    Context c;
    Shop& shop;
    Piece& piece;
    std::vector<const syntax::Tree*> read_;

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
        else if (what == "straightening")
            shop.straightening = *amount;
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

    void keep(const syntax::KeepOffcuts& says) {
        if (says.size.size() != 2) return;
        const auto width = positive(says.size[0], "an offcut"), length = positive(says.size[1], "an offcut");
        if (!width || !length) return;
        shop.keep_width = *width;
        shop.keep_length = *length;
    }

    void limit(const syntax::LimitIs& says) {
        const auto amount = positive(says.amount, "a limit");
        const std::string& what = says.what.text;
        if (std::find(measures().begin(), measures().end(), what) == measures().end())
            e.error("unknown-limit", says.what.span, "nothing of a machine is called its `" + what + "`")
                .mend =
                "name the machine, then width, height, thickness or length: limit band saw height 250";
        else if (amount)
            shop.limits.push_back({says.machine.text, what, *amount});
    }

    /// Boards in a file of their own: the list of what is left after a piece.
    void bring_in(const syntax::BringIn& says, Span span) {
        const syntax::Tree* tree = tree_of(e, says.path.text);
        if (tree == nullptr) return;
        // Every file is read once; of one that is brought in twice the boards would be there twice.
        if (std::find(read_.begin(), read_.end(), tree) != read_.end()) {
            e.error("said-twice", span, "\"" + says.path.text + "\" is brought in twice");
            return;
        }
        read_all(*tree);
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
            read_board(e, c, *wood, statement.header, shop);
        else if (const auto* cost = std::get_if<syntax::PriceIs>(&says))
            read_price(e, c, *cost, statement.header, shop);
        else if (const auto* money = std::get_if<syntax::CurrencyIs>(&says))
            shop.currency = money->text.text;
        else if (const auto* offcuts = std::get_if<syntax::KeepOffcuts>(&says))
            keep(*offcuts);
        else if (const auto* more = std::get_if<syntax::BringIn>(&says))
            bring_in(*more, statement.header);
        else if (const auto* climate = std::get_if<syntax::ClimateIs>(&says)) {
            const auto found = climate_of(e, *climate, statement.header, c);
            if (found && !piece.climate_stated) {
                piece.climate = *found;
                piece.climate_stated = true;
            }
        } else if (!std::holds_alternative<syntax::UnitsAre>(says) &&
                   !std::holds_alternative<syntax::OwnWood>(says) &&
                   !std::holds_alternative<syntax::BrokenStatement>(says)) {
            e.error("out-of-place", statement.header, "this belongs in a piece, not in a shop file").mend =
                "move it to the piece";
        }
    }
};

} // namespace

void read_shop(Elaboration& e, Scope&, const syntax::ShopIn& says, Piece& piece) {
    const syntax::Tree* tree = ShopReader::tree_of(e, says.path.text);
    if (tree == nullptr) return;
    // A shop's figures hang on no names of the piece.
    Scope nowhere;
    Context c;
    c.scope = &nowhere;
    ShopReader(e, c, piece).read_all(*tree);
}

} // namespace rayfleck::piece
