#pragma once
// How names typed by a maker are compared; seen inside this room only.

#include <string>
#include <string_view>

namespace rayfleck::wood {

/// Lower case; hyphens, underscores, commas and runs of white space become one space; none at either end.
inline std::string plain_name(std::string_view typed) {
    std::string plain;
    for (const char c : typed) {
        const bool gap = c == ' ' || c == '-' || c == '_' || c == ',' || c == '\t' || c == '\n' || c == '\r';
        if (!gap)
            plain += (c >= 'A' && c <= 'Z') ? static_cast<char>(c - 'A' + 'a') : c;
        else if (!plain.empty() && plain.back() != ' ')
            plain += ' ';
    }
    if (!plain.empty() && plain.back() == ' ') plain.pop_back();
    return plain;
}

} // namespace rayfleck::wood
