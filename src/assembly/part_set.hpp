#pragma once
// A set of parts as bits, so that what depends on what can be followed by whole words at a time.

#include <bit>
#include <cstdint>
#include <vector>

namespace rayfleck::assembly {

class PartSet {
  public:
    PartSet() = default;
    explicit PartSet(std::size_t parts) : words_((parts + 63) / 64) {}
    static PartSet of(std::size_t parts, const std::vector<int>& members) {
        PartSet set(parts);
        for (const int m : members) set.add(m);
        return set;
    }
    void add(int part) { words_[word(part)] |= bit(part); }
    void drop(int part) { words_[word(part)] &= ~bit(part); }
    bool has(int part) const { return (words_[word(part)] & bit(part)) != 0; }
    bool empty() const {
        for (const std::uint64_t w : words_)
            if (w) return false;
        return true;
    }
    std::size_t size() const {
        std::size_t n = 0;
        for (const std::uint64_t w : words_) n += static_cast<std::size_t>(std::popcount(w));
        return n;
    }
    int first() const { return next(0); }
    /// The lowest member from `from` on; -1 when there is none.
    int next(int from) const {
        std::size_t w = word(from);
        if (w >= words_.size()) return -1;
        std::uint64_t rest = words_[w] & (~std::uint64_t{0} << (from & 63));
        while (!rest) {
            if (++w >= words_.size()) return -1;
            rest = words_[w];
        }
        return static_cast<int>(w * 64) + std::countr_zero(rest);
    }
    std::vector<int> members() const {
        std::vector<int> all;
        for (int p = first(); p >= 0; p = next(p + 1)) all.push_back(p);
        return all;
    }
    PartSet& operator|=(const PartSet& other) {
        for (std::size_t i = 0; i < words_.size(); ++i) words_[i] |= other.words_[i];
        return *this;
    }
    PartSet& operator&=(const PartSet& other) {
        for (std::size_t i = 0; i < words_.size(); ++i) words_[i] &= other.words_[i];
        return *this;
    }
    PartSet& operator-=(const PartSet& other) {
        for (std::size_t i = 0; i < words_.size(); ++i) words_[i] &= ~other.words_[i];
        return *this;
    }
    friend PartSet operator-(PartSet a, const PartSet& b) { return a -= b; }
    friend PartSet operator&(PartSet a, const PartSet& b) { return a &= b; }
    bool meets(const PartSet& other) const {
        for (std::size_t i = 0; i < words_.size(); ++i)
            if (words_[i] & other.words_[i]) return true;
        return false;
    }
    bool within(const PartSet& other) const {
        for (std::size_t i = 0; i < words_.size(); ++i)
            if (words_[i] & ~other.words_[i]) return false;
        return true;
    }
    friend bool operator==(const PartSet&, const PartSet&) = default;
    friend auto operator<=>(const PartSet&, const PartSet&) = default;

  private:
    static std::size_t word(int part) { return static_cast<std::size_t>(part) / 64; }
    static std::uint64_t bit(int part) { return std::uint64_t{1} << (part & 63); }
    std::vector<std::uint64_t> words_;
};

} // namespace rayfleck::assembly
