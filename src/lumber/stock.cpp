// See stock.hpp. Bought stock is made for the blanks at hand alone: each thickness, width, length and sawing
// that one of them asks for. A price without a stock covers every thickness of its wood. What no price covers
// is planned from standard sizes: hardwood thicknesses and lengths of NHLA, dressed lumber of PS 20.

#include "lumber/stock.hpp"

#include <algorithm>
#include <cmath>

#include "wood/lumber.hpp"

namespace rayfleck::lumber {
namespace {

using measure::Rational;

/// Half a tenth: sizes are counted in tenths of a millimetre.
const Length nothing = Length::mm(Rational(1, 20));

/// Whether the price is for boards of that sawing. One that tells none is for boards as they come, and
/// counts only where no other of the same stock tells the sawing that is wanted.
bool of_that_sawing(const piece::Shop::Price& price, const std::string& sawn, const piece::Shop& shop) {
    if (sawn.empty()) return true;
    if (!price.sawn.empty()) return price.sawn == sawn;
    return std::none_of(shop.prices.begin(), shop.prices.end(), [&](const piece::Shop::Price& other) {
        return shop.find_wood(other.wood) == shop.find_wood(price.wood) && other.stock == price.stock &&
               other.sawn == sawn && known_unit(other);
    });
}

bool same(const StockType& a, const StockType& b) {
    return a.on_hand == 0 && b.on_hand == 0 && a.species == b.species && a.sheet == b.sheet &&
           a.sawn == b.sawn && a.thickness == b.thickness && a.width == b.width && a.length == b.length &&
           a.stock == b.stock;
}

class Yard {
  public:
    Yard(const std::vector<BlankType>& blanks, const piece::Shop& shop) : shop_(shop) {
        for (const piece::Shop::Board& board : shop.boards) on_hand(board);
        for (const BlankType& blank : blanks) {
            bool priced = false;
            for (const piece::Shop::Price& price : shop.prices)
                if (shop.find_wood(price.wood) == blank.species && known_unit(price))
                    priced |= offer(blank, &price);
            if (!priced) offer(blank, nullptr);
        }
    }

    std::vector<StockType> all() { return std::move(all_); }

  private:
    void on_hand(const piece::Shop::Board& board) {
        StockType type;
        type.species = shop_.find_wood(board.wood);
        if (type.species == nullptr) return;
        type.sheet = type.species->is_sheet();
        type.sawn = board.sawn;
        type.stock = board.stock;
        type.thickness = board.thickness;
        type.width = board.width;
        type.length = board.length;
        type.on_hand = board.count;
        type.mark = board.id;
        type.board = &board;
        if (const auto named = wood::lumber_named(board.stock); named && named->nominal_width)
            type.dressed = true;
        all_.push_back(std::move(type));
    }

    /// gives  whether this yields boards on which the blank has room
    bool offer(const BlankType& blank, const piece::Shop::Price* price) {
        StockType type;
        type.species = blank.species;
        type.sheet = blank.sheet;
        type.sawn = blank.sawn;
        type.price = price;
        if (blank.sheet) return offer_sheet(blank, type);
        if (price && !of_that_sawing(*price, blank.sawn, shop_)) return false;
        if (price && !price->sawn.empty()) type.sawn = price->sawn;
        const std::string asked = price && !price->stock.empty() ? price->stock
                                  : blank.as_bought              ? blank.stock
                                                                 : standard_thickness(blank);
        const auto lumber = wood::lumber_named(asked);
        if (!lumber) return false;
        type.stock = lumber->name;
        type.dressed = lumber->nominal_width.has_value();
        type.thickness = type.dressed ? lumber->dressed_thickness : lumber->rough_thickness;
        type.random_width = !type.dressed;
        if (!suits(type, blank)) return false;
        // Thicker than need be is bought only where the yard has nothing nearer.
        if (price && !nearest(blank, type.thickness)) return false;
        if (type.dressed)
            type.width = *lumber->dressed_width;
        else if (!width_for(blank, type))
            return false;
        if (clear_width(type.width, type.dressed, shop_) + nothing < blank.width) return false;
        bool fits = offer_lengths(blank, type);
        // The widest of random widths may yield blanks side by side.
        if (!type.dressed && price && price->widths && price->widths->second > type.width) {
            type.width = price->widths->second;
            fits |= offer_lengths(blank, type);
        }
        return fits;
    }

    /// Whether no priced stock of the wood suits the blank with less thickness.
    bool nearest(const BlankType& blank, Length thickness) const {
        for (const piece::Shop::Price& price : shop_.prices) {
            if (shop_.find_wood(price.wood) != blank.species || !known_unit(price) || price.stock.empty() ||
                !of_that_sawing(price, blank.sawn, shop_))
                continue;
            const auto lumber = wood::lumber_named(price.stock);
            if (!lumber) continue;
            StockType other;
            other.species = blank.species;
            other.stock = lumber->name;
            other.sawn = blank.sawn;
            other.dressed = lumber->nominal_width.has_value();
            other.thickness = other.dressed ? lumber->dressed_thickness : lumber->rough_thickness;
            if (other.dressed && *lumber->dressed_width + nothing < blank.width) continue;
            if (other.thickness < thickness && suits(other, blank)) return false;
        }
        return true;
    }

    static std::string standard_thickness(const BlankType& blank) {
        for (const wood::Lumber& lumber : wood::hardwood_thicknesses())
            if (lumber.rough_thickness + nothing >= blank.thickness) return lumber.name;
        return "";
    }

    bool width_for(const BlankType& blank, StockType& type) const {
        const Length need = blank.width + shop_.straightening;
        if (type.price && type.price->widths) {
            // The narrowest that the yard has, or the next whole centimetre or inch above the blank.
            const auto [narrowest, widest] = *type.price->widths;
            const bool in_inches = (narrowest / Length::in(1)).bottom() == 1;
            const Length step = in_inches ? Length::in(1) : Length::mm(10);
            const Length wanted = step * Rational(-measure::floor(-(need / step)));
            type.width = std::min(std::max(narrowest, wanted), widest);
            return type.width + nothing >= need;
        }
        type.width = Length::in(usual_width_in);
        if (type.width + nothing >= need) return true;
        for (const int width : wide_widths_in) {
            type.width = Length::in(width);
            if (type.width + nothing >= need) return true;
        }
        return false;
    }

    bool offer_lengths(const BlankType& blank, StockType& type) {
        const Length need = blank.length + shop_.end_trim * Rational(2);
        bool fits = false;
        std::vector<Length> lengths;
        if (type.price && !type.price->lengths.empty())
            lengths = type.price->lengths;
        else {
            for (const int feet : usual_lengths_ft) lengths.push_back(Length::in(feet * 12));
            if (lengths.back() + nothing < need)
                for (const Length standard : wood::standard_lengths())
                    if (standard + nothing >= need) {
                        lengths.push_back(standard);
                        break;
                    }
        }
        for (const Length length : lengths) {
            if (length + nothing < need) continue;
            fits = true;
            type.length = length;
            add(type);
        }
        return fits;
    }

    bool offer_sheet(const BlankType& blank, StockType& type) {
        if (type.price && !type.price->stock.empty()) {
            const auto told = type.price->thickness;
            if (!told || abs(*told - blank.thickness) > Length::mm(Rational(1, 2))) return false;
            type.stock = type.price->stock;
        }
        type.sawn.clear();
        type.thickness = blank.thickness;
        type.width = Length::in(sheet_width_in);
        type.length = Length::in(sheet_length_in);
        std::vector<Length> lengths{type.length};
        if (type.price && !type.price->lengths.empty()) lengths = type.price->lengths;
        if (type.price && type.price->sheet) {
            type.width = type.price->sheet->first;
            lengths = {type.price->sheet->second};
        }
        bool fits = false;
        for (const Length length : lengths) {
            type.length = length;
            const bool along = blank.length <= length + nothing && blank.width <= type.width + nothing;
            const bool across =
                blank.may_turn && blank.width <= length + nothing && blank.length <= type.width + nothing;
            if (!along && !across) continue;
            fits = true;
            add(type);
        }
        return fits;
    }

    void add(const StockType& type) {
        for (const StockType& known : all_)
            if (same(known, type)) return;
        all_.push_back(type);
    }

    const piece::Shop& shop_;
    std::vector<StockType> all_;
};

} // namespace

std::vector<StockType> stock_for(const std::vector<BlankType>& blanks, const piece::Shop& shop) {
    return Yard(blanks, shop).all();
}

Length widest_for(const wood::Species& species, Length thickness, const piece::Shop& shop) {
    Length widest = Length::in(wide_widths_in[std::size(wide_widths_in) - 1]);
    for (const piece::Shop::Board& board : shop.boards)
        if (shop.find_wood(board.wood) == &species && board.thickness + nothing >= thickness)
            widest = std::max(widest, board.width);
    for (const piece::Shop::Price& price : shop.prices)
        if (shop.find_wood(price.wood) == &species && price.widths)
            widest = std::max(widest, price.widths->second);
    return widest;
}

Length clear_width(Length width, bool straight, const piece::Shop& shop) {
    if (straight) return width;
    return width > shop.straightening ? width - shop.straightening : Length();
}

Length straightened_off(const StockType& stock, const piece::Shop& shop) {
    return stock.sheet || stock.dressed ? Length() : std::min(shop.straightening, stock.width);
}

bool suits(const StockType& stock, const BlankType& blank) {
    if (stock.species != blank.species) return false;
    if (stock.sheet) return abs(stock.thickness - blank.thickness) <= Length::mm(Rational(1, 2));
    if (!stock.sawn.empty() && !blank.sawn.empty() && stock.sawn != blank.sawn) return false;
    if (blank.as_bought) return abs(stock.thickness - blank.thickness) <= nothing;
    return stock.thickness + nothing >= blank.thickness;
}

double board_feet_of(const StockType& stock) {
    if (stock.sheet) return 0;
    Length thickness = stock.thickness, width = stock.width;
    // Dressed lumber is counted by the size that it is called.
    if (const auto named = wood::lumber_named(stock.stock); stock.dressed && named) {
        thickness = named->rough_thickness;
        width = *named->nominal_width;
    }
    return wood::board_feet(thickness, width, stock.length).value();
}

bool known_unit(const piece::Shop::Price& price) {
    return price.per == "board foot" || price.per == "m3" || price.per == "m2" || price.per == "piece";
}

double price_of(const StockType& stock) {
    if (stock.price == nullptr) return 0;
    const auto hundredths = [](double money) { return std::round(money * 100) / 100; };
    const double amount = stock.price->amount;
    const double volume = stock.thickness.value() * stock.width.value() * stock.length.value() / 1e9; // m3
    if (stock.price->per == "piece") return hundredths(amount);
    if (stock.price->per == "m2")
        return hundredths(amount * stock.width.value() * stock.length.value() / 1e6);
    if (stock.price->per == "m3") return hundredths(amount * volume);
    // A sheet sold by the board foot is counted by its volume: 1 board foot is 1 in x 12 in x 12 in.
    constexpr double board_foot_m3 = 144 * 25.4 * 25.4 * 25.4 / 1e9;
    return hundredths(amount * (stock.sheet ? volume / board_foot_m3 : board_feet_of(stock)));
}

} // namespace rayfleck::lumber
