#pragma once
// Which rule of the grammar stands behind which entry. One list, so that `match` and the test that looks for
// endless loops in the grammar see the same rules.

#include "grammar/expected.hpp"
#include "syntax/match.hpp"

namespace rayfleck::syntax {

/// The whole of a stretch: blanks, the rule, the end.
template <typename Rule> struct whole : grammar::seq<grammar::gap, Rule, grammar::must<grammar::line_end>> {};

template <Entry entry, typename Rule> struct EntryRule {
    static constexpr Entry key = entry;
    using rule = whole<Rule>;
};

template <typename... Rules> struct EntryList {};

using Entries = EntryList<
    EntryRule<Entry::wood, grammar::wood>, EntryRule<Entry::sawn, grammar::sawn>,
    EntryRule<Entry::rings, grammar::rings>, EntryRule<Entry::pith, grammar::pith>,
    EntryRule<Entry::bark, grammar::bark>, EntryRule<Entry::stock, grammar::stock>,
    EntryRule<Entry::sizes, grammar::sizes_phrase>, EntryRule<Entry::labelled_size, grammar::labelled_size>,
    EntryRule<Entry::grain, grammar::grain>, EntryRule<Entry::glued_up, grammar::glued_up>,
    EntryRule<Entry::laminated, grammar::laminated>, EntryRule<Entry::carries, grammar::carries>,
    EntryRule<Entry::sapwood, grammar::sapwood>, EntryRule<Entry::note, grammar::note>,
    EntryRule<Entry::nothing_more, grammar::nothing_more>, EntryRule<Entry::runs, grammar::runs>,
    EntryRule<Entry::face, grammar::face>, EntryRule<Entry::from, grammar::from>,
    EntryRule<Entry::between, grammar::between>, EntryRule<Entry::side_at, grammar::side_at>,
    EntryRule<Entry::centred, grammar::centred>, EntryRule<Entry::set_back, grammar::set_back>,
    EntryRule<Entry::overhanging, grammar::overhanging>, EntryRule<Entry::over, grammar::over>,
    EntryRule<Entry::flush, grammar::flush>, EntryRule<Entry::tilt, grammar::tilt>,
    EntryRule<Entry::turned_on_plan, grammar::turned_on_plan>, EntryRule<Entry::taper, grammar::taper>,
    EntryRule<Entry::chamfer, grammar::chamfer>, EntryRule<Entry::round_over, grammar::round_over>,
    EntryRule<Entry::mould, grammar::mould>, EntryRule<Entry::miter, grammar::miter>,
    EntryRule<Entry::compound, grammar::compound>, EntryRule<Entry::crosscut, grammar::crosscut>,
    EntryRule<Entry::rip, grammar::rip>, EntryRule<Entry::resaw, grammar::resaw>,
    EntryRule<Entry::bore, grammar::bore>, EntryRule<Entry::groove, grammar::groove>,
    EntryRule<Entry::rabbet, grammar::rabbet>, EntryRule<Entry::notch, grammar::notch>,
    EntryRule<Entry::curve, grammar::curve>, EntryRule<Entry::outline_step, grammar::outline_step>,
    EntryRule<Entry::turned_station, grammar::turned_station>, EntryRule<Entry::piece, grammar::piece>,
    EntryRule<Entry::units, grammar::units>, EntryRule<Entry::climate, grammar::climate>,
    EntryRule<Entry::made, grammar::made>, EntryRule<Entry::shop, grammar::shop>,
    EntryRule<Entry::bring, grammar::bring>, EntryRule<Entry::value, grammar::value>,
    EntryRule<Entry::headings, grammar::headings>, EntryRule<Entry::size_row, grammar::size_row>,
    EntryRule<Entry::require, grammar::require>, EntryRule<Entry::rod, grammar::rod>,
    EntryRule<Entry::rod_line, grammar::rod_line>, EntryRule<Entry::part, grammar::part>,
    EntryRule<Entry::copies, grammar::copies>, EntryRule<Entry::join, grammar::join>,
    EntryRule<Entry::joint_option, grammar::joint_option>, EntryRule<Entry::hardware, grammar::hardware>,
    EntryRule<Entry::accept, grammar::accept>, EntryRule<Entry::recipe, grammar::recipe>,
    EntryRule<Entry::takes, grammar::takes>, EntryRule<Entry::make, grammar::make>,
    EntryRule<Entry::given, grammar::given>, EntryRule<Entry::kerf, grammar::kerf>,
    EntryRule<Entry::allow, grammar::allow>, EntryRule<Entry::limit, grammar::limit>,
    EntryRule<Entry::title, grammar::title>, EntryRule<Entry::sheet, grammar::sheet>,
    EntryRule<Entry::projection, grammar::projection>, EntryRule<Entry::board, grammar::board>,
    EntryRule<Entry::board_item, grammar::board_item>, EntryRule<Entry::price, grammar::price>,
    EntryRule<Entry::price_item, grammar::price_item>, EntryRule<Entry::own_wood, grammar::own_wood>,
    EntryRule<Entry::wood_figure, grammar::wood_figure>, EntryRule<Entry::currency, grammar::currency>,
    EntryRule<Entry::keep, grammar::keep>, EntryRule<Entry::match, grammar::matching>,
    EntryRule<Entry::match_how, grammar::match_how>>;

} // namespace rayfleck::syntax
