// The bounded knapsack by rows. See strip_fill.hpp.
//
// After each lie the row of best values by length is kept, so that the items are found again by asking, from
// the last lie back, how many of it make the difference. Several copies come in as 1, 2, 4 ... together.

#include "cutting/strip_fill.hpp"

#include <algorithm>

namespace rayfleck::cutting {

StripFill::StripFill(std::vector<Lie> lies, Measure longest) : lies_(std::move(lies)), longest_(longest) {
    std::stable_sort(lies_.begin(), lies_.end(),
                     [](const Lie& a, const Lie& b) { return a.v != b.v ? a.v < b.v : a.u > b.u; });
    for (std::size_t i = 0; i < lies_.size(); ++i) {
        if (widths_.empty() || widths_.back() != lies_[i].v) {
            widths_.push_back(lies_[i].v);
            last_lie_.push_back(i);
        }
        last_lie_.back() = i;
    }
    stride_ = static_cast<std::size_t>(longest + 1);
}

int StripFill::level_of(Measure v) const {
    return static_cast<int>(std::upper_bound(widths_.begin(), widths_.end(), v) - widths_.begin()) - 1;
}

void StripFill::step(const std::int32_t* __restrict from, std::int32_t* __restrict to, Measure length,
                     std::int32_t price) {
    std::copy(from, from + std::min(length, longest_ + 1), to);
    for (Measure u = length; u <= longest_; ++u) {
        const std::int32_t with = from[u - length] + price;
        to[u] = from[u] > with ? from[u] : with;
    }
}

void StripFill::run(const Prices& prices, Measure longest, std::int64_t& work) {
    longest_ = std::min(longest, static_cast<Measure>(stride_) - 1);
    if (table_.size() < stride_) table_.resize(stride_);
    std::fill(table_.begin(), table_.begin() + static_cast<std::ptrdiff_t>(stride_), 0);
    taken_.clear();
    row_of_level_.clear();
    taken_of_level_.clear();
    std::size_t rows = 1, level = 0;
    for (std::size_t i = 0; i < lies_.size(); ++i) {
        const Lie& lie = lies_[i];
        const std::int32_t price = prices.of_type[lie.type];
        const std::int64_t most = std::min<std::int64_t>(prices.most[lie.type], longest_ / lie.u);
        if (price > 0 && most > 0) {
            if (table_.size() < (rows + 1) * stride_) table_.resize((rows + 8) * stride_);
            const std::int32_t* from = row(rows - 1);
            std::int64_t left = most, many = 1;
            for (int turn = 0; left > 0; turn ^= 1) {
                many = std::min(many, left);
                left -= many;
                if (left > 0 && spare_[turn].size() < stride_) spare_[turn].resize(stride_);
                std::int32_t* to = left > 0 ? spare_[turn].data() : row(rows);
                step(from, to, lie.u * many, price * static_cast<std::int32_t>(many));
                work += longest_ / 4 + 8;
                from = to;
                many *= 2;
            }
            taken_.push_back({i, rows, rows - 1, most, price});
            ++rows;
        }
        if (i == last_lie_[level]) {
            row_of_level_.push_back(rows - 1);
            taken_of_level_.push_back(taken_.size());
            ++level;
        }
    }
}

std::vector<Lie> StripFill::items(std::size_t level, Measure length) const {
    std::vector<Lie> items;
    Measure u = std::min(length, longest_);
    for (std::size_t i = taken_of_level_[level]; i-- > 0;) {
        const Taken& taken = taken_[i];
        const Lie& lie = lies_[taken.lie];
        const std::int32_t value = row(taken.row)[u];
        for (std::int64_t n = 0; n <= taken.most && u - n * lie.u >= 0; ++n)
            if (row(taken.before)[u - n * lie.u] + n * taken.price == value) {
                items.insert(items.end(), static_cast<std::size_t>(n), lie);
                u -= n * lie.u;
                break;
            }
    }
    return items;
}

} // namespace rayfleck::cutting
