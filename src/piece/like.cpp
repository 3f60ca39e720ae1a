// `part short apron like long apron`: phrases taken over from another part.
//
// All phrases of the other part are taken, except those of a sort that the part says itself: a size replaces
// the same size, `front at` whatever told the place of the front, `runs` the direction. Notes are added. The
// other part's copies are not taken: they tell where it stands.

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

/// Whether `own` says again what `taken` says.
bool replaces(Elaboration& e, Scope& scope, const Phrase& own, const Phrase& taken) {
    if (std::holds_alternative<syntax::NoteIs>(own.says)) return false;
    if (own.says.index() != taken.says.index()) return false;
    if (const auto* size = std::get_if<syntax::SizeIs>(&own.says))
        return tells_size(*size, std::get<syntax::SizeIs>(taken.says));
    if (const auto* at = std::get_if<syntax::SideAt>(&own.says))
        return at->side.side == std::get<syntax::SideAt>(taken.says).side.side;
    if (const auto* looks = std::get_if<syntax::FaceLooks>(&own.says))
        return looks->edge == std::get<syntax::FaceLooks>(taken.says).edge;
    if (const auto* bark = std::get_if<syntax::BarkIs>(&own.says))
        return bark->edge == std::get<syntax::BarkIs>(taken.says).edge;
    if (const auto* from_to = std::get_if<syntax::FromTo>(&own.says)) {
        const auto& other = std::get<syntax::FromTo>(taken.says);
        return direction_of(e, from_to->from, scope, nullptr) == direction_of(e, other.from, scope, nullptr);
    }
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
