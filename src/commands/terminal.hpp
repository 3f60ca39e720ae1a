#pragma once
// What the program says, and where: messages for a person on standard error, what was asked for on standard
// output.
//
// Written with plain system calls, so that a closed, full or broken stream is noticed where it matters and
// never ends the program. A message that cannot be shown is dropped: the exit status still tells the outcome.
// Standard output that cannot be written is a failure, except when its reader has gone (`rayfleck explain |
// head`).

#include <string>
#include <string_view>

namespace rayfleck::commands {

enum class Colour { automatic, always, never };

/// Makes sure that a file opened later never takes the number of a closed standard stream, and that writing
/// to a closed pipe or beyond a size limit is an error to handle instead of a signal that kills. Call it
/// first.
void guard_standard_streams();

class Terminal {
  public:
    explicit Terminal(Colour wish);

    /// Whether messages may be coloured. `--color` decides, then NO_COLOR, then CLICOLOR_FORCE or
    /// FORCE_COLOR, then whether standard error is a terminal that is not `dumb`. A variable counts when it
    /// is not empty; the forcing ones also not when they are 0.
    bool colour() const { return colour_; }
    /// To standard error.
    void say(std::string_view words);
    /// To standard output.
    void print(std::string_view words);
    /// Why standard output could not be written; empty when all went well.
    const std::string& trouble() const { return trouble_; }

  private:
    bool colour_ = false;
    std::string trouble_;
};

} // namespace rayfleck::commands
