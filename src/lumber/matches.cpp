// Matches as sequences of the order. A row of parts is one stick that is crosscut in the end: as long as all
// of them with the kerfs between, as wide as the widest. Whether a board is long enough is seen from the
// sizes alone here; whether it is clear of flaws there, the cutting room finds out.

#include <algorithm>

#include <fmt/format.h>

#include "lumber/orders.hpp"

namespace rayfleck::lumber {
namespace {

struct Asking {
    std::vector<Problem>& problems;
    const std::vector<BlankType>& blanks;
    const std::vector<Source>& sources;

    /// The blanks of a part: types, and which of their blanks; its staves or layers in their order.
    std::vector<std::pair<std::size_t, std::size_t>> blanks_of_part(std::size_t source, int part) const {
        std::vector<std::pair<std::size_t, std::size_t>> out;
        for (std::size_t b = 0; b < blanks.size(); ++b)
            if (blanks[b].source == source)
                for (std::size_t n = 0; n < blanks[b].blanks.size(); ++n)
                    if (blanks[b].blanks[n].front().part == part) out.emplace_back(b, n);
        return out;
    }

    /// gives  why it cannot be asked for; empty when it was
    std::string ask(std::size_t source, std::size_t index) {
        const piece::Match& match = sources[source].model->piece->matches[index];
        // Those are put together before, and resawn.
        if (match.how == syntax::Matching::book_matched) return "";
        std::vector<std::pair<std::size_t, std::size_t>> members;
        for (const int part : match.parts)
            for (const auto& one : blanks_of_part(source, part)) members.push_back(one);
        if (members.size() < 2) return "";
        Problem* problem = nullptr;
        cutting::Sequence sequence;
        cutting::Measure length = 0, width = 0, longest = 0, widest = 0;
        std::vector<std::size_t> stocks;
        for (const auto& [blank, ignored] : members) {
            Problem* here = nullptr;
            std::size_t place = 0;
            for (Problem& one : problems) {
                const auto at = std::find(one.blanks.begin(), one.blanks.end(), blank);
                if (at == one.blanks.end()) continue;
                here = &one;
                place = static_cast<std::size_t>(at - one.blanks.begin());
            }
            if (here == nullptr || (problem != nullptr && here != problem))
                return "they need boards of different thickness or sawing";
            const cutting::Part& wanted = here->order.parts[place];
            if (problem == nullptr)
                stocks = wanted.stocks;
            else
                std::erase_if(stocks, [&](std::size_t s) {
                    return std::find(wanted.stocks.begin(), wanted.stocks.end(), s) == wanted.stocks.end();
                });
            problem = here;
            sequence.parts.push_back(place);
            length += wanted.length;
            width += wanted.width;
            longest = std::max(longest, wanted.length);
            widest = std::max(widest, wanted.width);
        }
        const auto kerfs = static_cast<cutting::Measure>(members.size()) - 1;
        length += kerfs * problem->order.kerf_crosscut;
        width += kerfs * problem->order.kerf_rip;
        const auto holds = [&](cutting::Measure along, cutting::Measure across) {
            return std::any_of(stocks.begin(), stocks.end(), [&](std::size_t s) {
                const cutting::Stock& stock = problem->order.stocks[s];
                return stock.length >= along && stock.width >= across;
            });
        };
        if (holds(length, widest))
            sequence.towards = cutting::Sequence::Towards::along;
        else if (match.how == syntax::Matching::one_board && holds(longest, width))
            sequence.towards = cutting::Sequence::Towards::across;
        else
            return "no board is large enough for all of them together";
        problem->order.sequences.push_back(std::move(sequence));
        problem->rows.push_back({source, index, std::move(members)});
        return "";
    }
};

} // namespace

void ask_for_matches(std::vector<Problem>& problems, const std::vector<BlankType>& blanks,
                     const std::vector<Source>& sources, std::vector<std::string>& remarks) {
    Asking asking{problems, blanks, sources};
    for (std::size_t s = 0; s < sources.size(); ++s) {
        const piece::Piece& piece = *sources[s].model->piece;
        for (std::size_t m = 0; m < piece.matches.size(); ++m)
            if (const std::string why = asking.ask(s, m); !why.empty())
                remarks.push_back(fmt::format(
                    "match of {}: {}",
                    piece.parts[static_cast<std::size_t>(piece.matches[m].parts.front())].base, why));
    }
}

} // namespace rayfleck::lumber
