// The known word that a misspelt one was probably meant to be.
//
// Distance counts letters put in, left out, exchanged, or swapped with their neighbour (Damerau's count in
// its restricted form: no letter takes part in two changes). Capital and small letters count as the same.
// Of words equally near, the one of the same letters is meant: `peice` is piece, not price.
// Bytes of letters outside ASCII count one by one, which only makes such words a little farther apart.

#include <algorithm>
#include <vector>

#include "findings/finding.hpp"

namespace rayfleck::findings {
namespace {

std::string small_letters(const std::string& word) {
    std::string out = word;
    for (char& c : out)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return out;
}

std::size_t changes(const std::string& a, const std::string& b) {
    const std::size_t width = b.size() + 1;
    std::vector<std::size_t> table((a.size() + 1) * width);
    const auto at = [&](std::size_t i, std::size_t j) -> std::size_t& { return table[i * width + j]; };
    for (std::size_t i = 0; i <= a.size(); ++i) at(i, 0) = i;
    for (std::size_t j = 0; j <= b.size(); ++j) at(0, j) = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t exchange = at(i - 1, j - 1) + (a[i - 1] == b[j - 1] ? 0 : 1);
            at(i, j) = std::min({at(i - 1, j) + 1, at(i, j - 1) + 1, exchange});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                at(i, j) = std::min(at(i, j), at(i - 2, j - 2) + 1);
        }
    }
    return at(a.size(), b.size());
}

bool same_letters(std::string a, std::string b) {
    std::sort(a.begin(), a.end());
    std::sort(b.begin(), b.end());
    return a == b;
}

} // namespace

std::optional<std::string> near_word(const std::string& word, const std::vector<std::string>& known) {
    // A word beyond this length is no slip of the finger, and the table grows with its square.
    constexpr std::size_t longest = 64;
    if (word.size() > longest) return std::nullopt;
    const std::string meant = small_letters(word);
    const std::size_t most = word.size() / 3;
    std::size_t least = most + 1;
    const std::string* found = nullptr;
    bool tie = false;
    bool swapped = false; // `found` has the letters of the word
    for (const std::string& candidate : known) {
        if (candidate.size() > word.size() + most || word.size() > candidate.size() + most) continue;
        const std::size_t distance = changes(meant, small_letters(candidate));
        if (distance > least || distance > most || (found && *found == candidate)) continue;
        const bool same = same_letters(meant, small_letters(candidate));
        if (found && distance == least && same == swapped) {
            tie = true;
        } else if (!found || distance < least || same) {
            least = distance;
            found = &candidate;
            swapped = same;
            tie = false;
        }
    }
    if (!found || tie) return std::nullopt;
    return *found;
}

} // namespace rayfleck::findings
