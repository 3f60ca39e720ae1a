#pragma once
// Exit status, the same for every command. CI recipes rely on these numbers; they never change their meaning.

#include <algorithm>

namespace rayfleck::commands {

enum class Status {
    sound = 0,            ///< nothing at or above the failing level
    findings = 1,         ///< findings at or above it
    does_not_compile = 2, ///< the text has errors
    failure =
        3, ///< wrong usage, or something outside the text failed: unreadable file, full disk, a defect here
};

/// Of several pieces, the worst counts.
inline Status worse(Status a, Status b) { return std::max(a, b); }

} // namespace rayfleck::commands
