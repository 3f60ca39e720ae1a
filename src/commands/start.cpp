// See start.hpp. The piece is a low stool: four legs, four rails, a seat; every kind of statement that most
// pieces need occurs in it once, with a word on what it does. The tests compile it.

#include "commands/start.hpp"

#include <cctype>
#include <filesystem>

#include <fmt/format.h>

#include "commands/output.hpp"

namespace rayfleck::commands {
namespace {

namespace fs = std::filesystem;

constexpr const char* stool = R"(# A low stool to begin from. Change a number, then run:
#   rayfleck check {0}.fleck
#   rayfleck compile {0}.fleck -o out
piece "{1}"
units mm
climate 35% to 60% humidity at 20 C

# The rods: named lines in three directions. Parts sit between them.
rod across  left 0, right 400
rod deep    front 0, back 300
rod up      floor 0, rail-low 330, rail-top 390

part leg, at each corner
  wood cherry, rift sawn
  size 40 x 40, stands
  left at left, front at front, from floor to rail-top

part long rail, front and back
  wood cherry, quarter sawn
  20 thick, runs across, face side outside
  between leg, from rail-low to rail-top
  set back 5 from outside of leg

# As the long rail, but for what is said here.
part short rail like long rail, left and right
  runs deep

# Wide boards move across the grain, so the seat is held by buttons.
part seat
  wood cherry, quarter sawn, bark face up
  22 thick, runs across, over long rail
  overhanging leg by 15 all round
  glued up of staves at most 110 wide

# Sizes left out are those of the trade: a tenon is a third of the thickness.
join long rail to leg with mortise and tenon
join short rail to leg with mortise and tenon
join seat to long rail with buttons, every 150
)";

/// `side-table` becomes `Side table`; what would end the quotes is left out.
std::string title_of(const std::string& stem) {
    std::string title;
    for (const char c : stem)
        if (c != '"' && static_cast<unsigned char>(c) >= 0x20) title += c == '-' || c == '_' ? ' ' : c;
    if (!title.empty())
        title.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(title.front())));
    return title.empty() ? "Stool" : title;
}

} // namespace

Status start(const std::string& name, Terminal& terminal) {
    fs::path path(name);
    if (path.extension() == ".fleck") path.replace_extension();
    const std::string stem = path.filename().string();
    if (stem.empty() || stem == "." || stem == "..") {
        terminal.say("rayfleck: start needs a name for the piece, such as side-table\n");
        return Status::failure;
    }
    const fs::path file(path.string() + ".fleck");
    if (const auto trouble = create({file, fmt::format(fmt::runtime(stool), stem, title_of(stem))})) {
        terminal.say("rayfleck: " + *trouble + "\n");
        return Status::failure;
    }
    terminal.say(fmt::format("wrote {}; next: rayfleck compile {} -o out\n", file.string(), file.string()));
    return Status::sound;
}

} // namespace rayfleck::commands
