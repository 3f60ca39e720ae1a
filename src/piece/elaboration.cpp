// The stack of works, circles, and the words for sides and directions.
//
// A circle is reported where it was closed, with every member of the loop as a second place, in the order in
// which one asks for the next; its members stay unknown, and what hangs on them stays quiet.

#include "piece/elaboration.hpp"

namespace rayfleck::piece {

std::string text(Direction direction) {
    switch (direction) {
    case Direction::across:
        return "across";
    case Direction::deep:
        return "deep";
    case Direction::up:
        return "up";
    }
    return {};
}

std::string text(Side side) {
    constexpr std::array names{"left", "right", "front", "back", "top", "bottom", "inside", "outside"};
    return names[static_cast<std::size_t>(side)];
}

bool is_high(Side side) { return side == Side::right || side == Side::back || side == Side::top; }

std::optional<Direction> direction_of(Side side) {
    switch (side) {
    case Side::left:
    case Side::right:
        return Direction::across;
    case Side::front:
    case Side::back:
        return Direction::deep;
    case Side::top:
    case Side::bottom:
        return Direction::up;
    case Side::inside:
    case Side::outside:
        break;
    }
    return std::nullopt;
}

Side side_of(Direction direction, bool high) {
    switch (direction) {
    case Direction::across:
        return high ? Side::right : Side::left;
    case Direction::deep:
        return high ? Side::back : Side::front;
    case Direction::up:
        return high ? Side::top : Side::bottom;
    }
    return Side::left;
}

Vector unit_vector(Direction direction, bool high) {
    Vector v;
    v[index_of(direction)] = high ? 1.0 : -1.0;
    return v;
}

findings::Finding& Elaboration::error(const std::string& name, Span span, const std::string& message) {
    if (!reported.emplace(name, span.file, span.begin, span.end).second) return dropped = {};
    return findings.error(name, span, message);
}

Working::Working(Elaboration& e, Progress& progress, std::string name, Span span)
    : e_(e), progress_(progress) {
    if (progress == Progress::done) return;
    if (progress == Progress::busy) {
        std::size_t first = e.works.size();
        while (first > 0 && e.works[first - 1].what != &progress) --first;
        if (first == 0) return;
        std::string loop;
        for (std::size_t i = first - 1; i < e.works.size(); ++i) loop += e.works[i].name + " → ";
        loop += e.works[first - 1].name;
        const Work& start = e.works[first - 1];
        findings::Finding& f = e.error("circle", start.span, start.name + " hangs on itself: " + loop);
        f.mend = "give one of them a figure of its own";
        for (std::size_t i = first; i < e.works.size(); ++i)
            f.labels.push_back({e.works[i].span, e.works[i].name + " is asked for from here on"});
        return;
    }
    if (e.depth > Deeper::deepest) {
        e.error("too-deep", span, name + " hangs on too long a chain of other things");
        progress = Progress::done;
        return;
    }
    progress = Progress::busy;
    e.works.push_back({&progress, std::move(name), span});
    e.depth += 8;
    begun_ = true;
}

Working::~Working() {
    if (!begun_) return;
    progress_ = Progress::done;
    e_.works.pop_back();
    e_.depth -= 8;
}

} // namespace rayfleck::piece
