#pragma once
// Errors of one text, kept until the text is read, then handed on in the order of the text.
//
// Of several errors at one place only the first is kept: the others follow from it. After as many as the
// limits say the rest is counted in a last note.

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "findings/finding.hpp"
#include "source/text.hpp"
#include "syntax/match.hpp"

namespace rayfleck::syntax {

class Report {
  public:
    Report(std::string_view text, int file) : text_(text), file_(file) {}

    void error(const char* name, std::size_t begin, std::size_t end, std::string message,
               std::string mend = {});
    /// A rule went wrong. `form`: how the phrase is written, for the remedy; may be empty.
    void missed(const Missed& missed, std::size_t stretch_end, std::string_view form);
    /// A word stands where one of `known` should. gives the word that was probably meant.
    /// `what`: what the word should be, `a statement`.
    std::string unknown_word(std::size_t begin, std::size_t end, const std::vector<std::string>& known,
                             const std::string& message, const std::string& mend);

    bool any() const { return count_ > 0; }
    /// There are more errors than are worth reading on for.
    bool full() const;
    void hand_on(findings::Findings& findings) const;

  private:
    std::string_view text_;
    int file_;
    std::size_t count_ = 0;
    std::map<std::size_t, findings::Finding> kept_;
};

/// The token that begins at `at`: a word, a number, a quoted text or one sign; at most to `end`.
std::string_view token_at(std::string_view text, std::size_t at, std::size_t end);
/// The token that ends at `end`.
std::string_view token_before(std::string_view text, std::size_t end);

} // namespace rayfleck::syntax
