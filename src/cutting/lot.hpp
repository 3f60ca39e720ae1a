#pragma once
// Choices drawn by lot, the same every time: the multiplier and addend of Knuth's MMIX generator, from
// memory.

#include <cstdint>

namespace rayfleck::cutting {

class Lot {
  public:
    /// From 0 up to, not including, 1.
    double draw() {
        state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
        return static_cast<double>(state_ >> 40) / static_cast<double>(1 << 24);
    }
    /// From 0 up to, not including, limit.
    std::size_t draw(std::size_t limit) {
        return static_cast<std::size_t>(draw() * static_cast<double>(limit));
    }

  private:
    std::uint64_t state_ = 1;
};

} // namespace rayfleck::cutting
