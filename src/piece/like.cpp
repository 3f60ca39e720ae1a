// `part short apron like long apron`: phrases taken over from another part.
//
// All phrases of the other part are taken, except those that the part says anew: a size replaces the same
// size, `runs` the direction, a moulding the mouldings. What tells an end or the middle in one direction
// replaces whatever told one there, `from ... to` all that told the place there. Notes are added. The other
// part's copies are not taken: they tell where it stands.

#include <algorithm>

#include "piece/elaboration.hpp"

namespace rayfleck::piece {
namespace {

using syntax::Phrase;

bool tells_size(const syntax::SizeIs& a, const syntax::SizeIs& b) {
    return std::any_of(a.sizes.begin(), a.sizes.end(), [&](const auto& one) {
        return std::any_of(b.sizes.begin(), b.sizes.end(),
                           [&](const auto& other) { return one.first == other.first; });
    });
}

/// What a phrase tells of the place: a span from end to end, one end or the middle; and where, if that is
/// plain.
struct Placing {
    enum class Sort { none, span, end } sort = Sort::none;
    std::optional<Direction> direction;
};

struct PlacingOf {
    Elaboration& e;
    Scope& scope;
    Placing operator()(const syntax::FromTo& p) const {
        const auto d = direction_of(e, p.from, scope, nullptr);
        return {Placing::Sort::span, d ? d : direction_of(e, p.to, scope, nullptr)};
    }
    Placing operator()(const syntax::Between& p) const { return {Placing::Sort::span, p.direction}; }
    Placing operator()(const syntax::SideAt& p) const {
        return {Placing::Sort::end, direction_of(p.side.side)};
    }
    Placing operator()(const syntax::SetBack& p) const {
        return {Placing::Sort::end, direction_of(p.from.side)};
    }
    Placing operator()(const syntax::FlushWith& p) const {
        return {Placing::Sort::end, direction_of(p.side.side)};
    }
    Placing operator()(const syntax::OverUnder&) const { return {Placing::Sort::end, Direction::up}; }
    Placing operator()(const syntax::CentredOn& p) const {
        if (p.direction || p.between.empty()) return {Placing::Sort::end, p.direction};
        return {Placing::Sort::end, direction_of(e, p.between.front(), scope, nullptr)};
    }
    template <class Other> Placing operator()(const Other&) const { return {}; }
};

/// Whether `own` says again what `taken` says.
bool replaces(Elaboration& e, Scope& scope, const Phrase& own, const Phrase& taken) {
    if (std::holds_alternative<syntax::NoteIs>(own.says)) return false;
    const Placing mine = std::visit(PlacingOf{e, scope}, own.says),
                  theirs = std::visit(PlacingOf{e, scope}, taken.says);
    if (mine.sort != Placing::Sort::none && theirs.sort != Placing::Sort::none) {
        if (mine.direction != theirs.direction) return false;
        return mine.sort == theirs.sort || mine.sort == Placing::Sort::span;
    }
    if (own.says.index() != taken.says.index()) return false;
    if (const auto* size = std::get_if<syntax::SizeIs>(&own.says))
        return tells_size(*size, std::get<syntax::SizeIs>(taken.says));
    if (const auto* looks = std::get_if<syntax::FaceLooks>(&own.says))
        return looks->edge == std::get<syntax::FaceLooks>(taken.says).edge;
    if (const auto* bark = std::get_if<syntax::BarkIs>(&own.says))
        return bark->edge == std::get<syntax::BarkIs>(taken.says).edge;
    return true;
}

} // namespace

const std::vector<const Phrase*>& phrases_of(Elaboration& e, PartEntry& part) {
    if (part.phrases_progress == Progress::done) return part.phrases;
    const Working working(e, part.phrases_progress, part.name, part.header);
    if (!working.begun()) return part.phrases;
    for (const Phrase& phrase : part.says->phrases) part.phrases.push_back(&phrase);
    if (!part.says->like) return part.phrases;

    const syntax::PartName& like = *part.says->like;
    PartEntry* other = nullptr;
    for (const auto& candidate : part.scope->parts)
        if (candidate->name == like.name.text) other = candidate.get();
    if (!other) {
        // The name is sought as any part's, for its near word; a part of a made thing cannot be taken as a
        // pattern.
        if (!parts_named(e, *part.scope, like).empty())
            e.error("unlike", like.span,
                    "`" + like.name.text + "` is part of a made thing, and cannot be a pattern here");
        return part.phrases;
    }
    const std::vector<const Phrase*> taken = phrases_of(e, *other);
    const std::size_t own = part.phrases.size();
    for (const Phrase* phrase : taken) {
        const bool again =
            std::any_of(part.phrases.begin(), part.phrases.begin() + static_cast<std::ptrdiff_t>(own),
                        [&](const Phrase* mine) { return replaces(e, *part.scope, *mine, *phrase); });
        if (!again) part.phrases.push_back(phrase);
    }
    return part.phrases;
}

} // namespace rayfleck::piece
