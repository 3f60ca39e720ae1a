// See terminal.hpp.

#include "commands/terminal.hpp"

#include <cerrno>
#include <csignal>
#include <cstdlib>
#include <cstring>

#include <fcntl.h>
#include <unistd.h>

namespace rayfleck::commands {
namespace {

/// gives  0, or what went wrong as errno
int write_all(int stream, std::string_view words) {
    while (!words.empty()) {
        const ssize_t written = ::write(stream, words.data(), words.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) return errno;
        words.remove_prefix(static_cast<std::size_t>(written));
    }
    return 0;
}

bool is_set(const char* variable) {
    const char* value = std::getenv(variable);
    return value != nullptr && *value != '\0';
}
bool forces(const char* variable) { return is_set(variable) && std::strcmp(std::getenv(variable), "0") != 0; }

bool wants_colour(Colour wish) {
    if (wish != Colour::automatic) return wish == Colour::always;
    if (is_set("NO_COLOR")) return false;
    if (forces("CLICOLOR_FORCE") || forces("FORCE_COLOR")) return true;
    const char* kind = std::getenv("TERM");
    return ::isatty(STDERR_FILENO) == 1 && kind != nullptr && std::strcmp(kind, "dumb") != 0;
}

} // namespace

void guard_standard_streams() {
    // Opened the wrong way round, so that use of a stream that was closed still fails as it should.
    for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO})
        if (::fcntl(stream, F_GETFD) == -1 && errno == EBADF)
            if (::open("/dev/null", stream == STDIN_FILENO ? O_WRONLY : O_RDONLY) == -1) return;
    std::signal(SIGPIPE, SIG_IGN);
    std::signal(SIGXFSZ, SIG_IGN);
}

Terminal::Terminal(Colour wish) : colour_(wants_colour(wish)) {}

void Terminal::say(std::string_view words) { write_all(STDERR_FILENO, words); }

void Terminal::print(std::string_view words) {
    if (!trouble_.empty()) return;
    const int error = write_all(STDOUT_FILENO, words);
    if (error != 0 && error != EPIPE) trouble_ = std::strerror(error);
}

} // namespace rayfleck::commands
