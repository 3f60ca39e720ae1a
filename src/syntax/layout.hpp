#pragma once
// A text cut into logical lines, each with its stretches between commas and its block of deeper lines.
//
// A logical line is a line of the text less its comment, together with the lines it goes on in after a comma
// at its end. Deeper-indented lines below it are its block. Stretches are what stands between commas outside
// of quotes and parentheses: phrases, lines of a rod, options. What a line says is no concern here.

#include <cstddef>
#include <functional>
#include <string_view>
#include <vector>

#include "source/text.hpp"
#include "syntax/report.hpp"

namespace rayfleck::syntax {

struct Stretch {
    std::size_t begin = 0, end = 0;
};

struct Line {
    std::size_t begin = 0, end = 0; ///< without indentation, comment and blanks at the end
    int indent = 0;                 ///< columns
    bool readable = true;           ///< false: an error has been given for its bytes or its length
    std::vector<Stretch> stretches; ///< never empty when readable
    std::vector<Line> block;
};

/// `begins_statement`: whether a word begins a statement. A line that ends in a comma does not go on in a
/// line that begins with such a word and stands no deeper: the comma was left over.
std::vector<Line> lay_out(const source::Text& text,
                          const std::function<bool(std::string_view)>& begins_statement, Report& report);

} // namespace rayfleck::syntax
