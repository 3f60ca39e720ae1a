// Every leaf is tried before a new one is begun: a block that fills a gap saves paper, and its letter finds
// it.

#include "drawing/filling_leaves.hpp"

#include <algorithm>

namespace rayfleck::drawing {

FreeSpace FillingLeaves::fresh_space(const Job& job) {
    constexpr double off_title_block = 3;
    FreeSpace space(job.paper.usable());
    space.take(grown(job.paper.title_block(), off_title_block));
    return space;
}

/// The upper left corner of the place taken.
std::optional<Point2> FillingLeaves::take(FreeSpace& space, double width, double height, double air) {
    const auto found = space.find(width, height);
    if (!found) return std::nullopt;
    const Point2 corner{found->left, found->top};
    space.take(grown({corner.x, corner.y - height, corner.x + width, corner.y}, air));
    return corner;
}

bool FillingLeaves::place(Filled& on, const Block& block) {
    const Rect& box = block.box();
    const auto corner = take(on.space, box.width(), box.height(), air_);
    if (corner) on.leaf.block.add(block, {corner->x - box.left, corner->y - box.top});
    return corner.has_value();
}

void FillingLeaves::stand(const std::vector<Block>& shapes, const std::string& letter) {
    std::size_t at = 0;
    const auto fits = [&](const Block& shape) { return place(filled_[at], shape); };
    while (at < filled_.size() && std::none_of(shapes.begin(), shapes.end(), fits)) ++at;
    if (at == filled_.size()) {
        Filled fresh{{}, fresh_space(job_), {}, {}};
        fresh.leaf.document_type = document_type_;
        fresh.leaf.scale = scale_;
        filled_.push_back(std::move(fresh));
        if (std::none_of(shapes.begin(), shapes.end(), fits)) {
            const Rect usable = job_.paper.usable(), box = shapes.front().box();
            filled_.back().leaf.block.add(shapes.front(), {usable.left - box.left, usable.top - box.top});
            filled_.back().space.take(usable);
        }
    }
    if (letter.empty()) return;
    if (filled_[at].first.empty()) filled_[at].first = letter;
    filled_[at].last = letter;
}

std::size_t FillingLeaves::needed(const Job& job, const std::vector<Rect>& sizes, double air) {
    std::vector<FreeSpace> spaces;
    for (const Rect& size : sizes) {
        const auto put = [&](FreeSpace& space) {
            return take(space, size.width(), size.height(), air).has_value();
        };
        if (std::any_of(spaces.begin(), spaces.end(), put)) continue;
        spaces.push_back(fresh_space(job));
        if (!put(spaces.back())) return 0;
    }
    return spaces.size();
}

} // namespace rayfleck::drawing
