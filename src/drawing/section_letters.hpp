#pragma once
// Letters of sections and details, in one row: A, B, C … without I and O, which look like figures (ISO 5457
// leaves them out of its grid, from memory), then AA, AB …

#include <string>

namespace rayfleck::drawing {

/// n  0 for A
inline std::string letter_of(int n) {
    static const std::string letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";
    const int count = static_cast<int>(letters.size());
    std::string word(1, letters[static_cast<std::size_t>(n % count)]);
    return n < count ? word : letter_of(n / count - 1) + word;
}

} // namespace rayfleck::drawing
