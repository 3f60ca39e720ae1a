#pragma once
// The text of one file, cut into lines, and spans into it.
//
// Everything that is said about a piece is said at a place of its text. A Span is two byte offsets and the
// number of the file; lines and columns are computed only when a message is printed. A column counts
// characters as a person sees them: a tab goes to the next multiple of eight, a letter of two or three bytes
// counts once.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace rayfleck::source {

/// Part of a text: bytes [begin, end) of file number `file` in the Texts of this run.
struct Span {
    int file = 0;
    std::size_t begin = 0;
    std::size_t end = 0;
    friend bool operator==(const Span&, const Span&) = default;
};

/// The smallest span that holds both; they must lie in one file.
Span join(Span a, Span b);

/// Line and column as shown to a person, both from 1.
struct Place {
    int line = 1;
    int column = 1;
};

/// One file's name and bytes. The name is what messages show, as the user gave it.
class Text {
  public:
    Text(std::string name, std::string bytes);

    const std::string& name() const { return name_; }
    std::string_view bytes() const { return bytes_; }
    int line_count() const { return static_cast<int>(starts_.size()); }
    /// A line without its line end; `line` from 1.
    std::string_view line(int line) const;
    /// Byte offset at which a line starts; `line` from 1.
    std::size_t start_of(int line) const { return starts_[static_cast<std::size_t>(line - 1)]; }
    Place place(std::size_t offset) const;
    /// Number of the line that holds the offset, from 1.
    int line_of(std::size_t offset) const;

  private:
    std::string name_;
    std::string bytes_;
    std::vector<std::size_t> starts_;
};

/// All texts of a run: the piece, the files it brings in, the shop file, the shipped recipes.
class Texts {
  public:
    /// gives  the number by which spans name this text
    int add(Text text);
    const Text& operator[](int file) const { return texts_[static_cast<std::size_t>(file)]; }
    int count() const { return static_cast<int>(texts_.size()); }

  private:
    std::vector<Text> texts_;
};

/// Columns that a UTF-8 text takes on a terminal, with tabs expanded from `column` (0 is the left margin).
/// Combining marks take none, East Asian wide characters and emoji two; bytes that are not UTF-8 one each.
int display_width(std::string_view utf8, int column = 0);

} // namespace rayfleck::source
