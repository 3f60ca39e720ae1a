// The table of joints, in the order in which they are laid out.
//
// A new kind is one file with a function of this shape, a line here and one in kinds.hpp, and its options in
// the table of the piece room (src/piece/joins.cpp). Joints are numbered in the order of the text afterwards.

#include "joinery/kinds.hpp"

#include <array>

namespace rayfleck::joinery {

std::span<const Kind> all_kinds() {
    static const std::array kinds{
        Kind{"groove", grooves},
        Kind{"dado", dados},
        Kind{"rabbet", rabbets},
        Kind{"tongue and groove", tongues_and_grooves},
        Kind{"breadboard end", breadboard_ends},
        Kind{"mortise and tenon", mortises_and_tenons},
        Kind{"bridle", bridles},
        Kind{"half lap", laps, true},
        Kind{"cross lap", laps},
        Kind{"notch over", notches_over},
        Kind{"miter", miters, true},
        Kind{"dovetail", dovetails, true},
        Kind{"half-blind dovetail", dovetails, true},
        Kind{"sliding dovetail", sliding_dovetails},
        Kind{"finger joint", finger_joints, true},
        Kind{"dowels", dowels},
        Kind{"screws", screws},
        Kind{"slotted screws", slotted_screws},
        Kind{"buttons", buttons},
        Kind{"glue", glue},
    };
    return kinds;
}

const Kind* find_kind(std::string_view name) {
    for (const Kind& kind : all_kinds())
        if (kind.name == name) return &kind;
    return nullptr;
}

} // namespace rayfleck::joinery
