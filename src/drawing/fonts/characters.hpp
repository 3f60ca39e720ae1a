#pragma once
// UTF-8 text as characters, and back. Broken bytes never fail: they count as U+FFFD, the replacement
// character.

#include <string>

namespace rayfleck::drawing {

/// Overlong, cut and surrogate forms give U+FFFD, one for each byte that starts none.
std::u32string characters_of(const std::string& utf8);
/// characters  Unicode scalar values
std::string utf8_of(const std::u32string& characters);

} // namespace rayfleck::drawing
