#pragma once
// Every kind of joint that a maker can ask for, in the order in which they are laid out.
//
// Grooves come before mortises, because a tenon must clear the panel's groove; what only fastens comes last.
// Options were held against the table of the piece room (src/piece/joins.cpp): nothing unknown arrives here.

#include <span>
#include <string_view>
#include <vector>

#include "joinery/bench.hpp"

namespace rayfleck::joinery {

struct Kind {
    std::string_view name;
    /// Lays out all pairs of this kind in the piece.
    void (*lay_out)(Bench& bench, const std::vector<Pair>& pairs);
    /// Parts that only share a corner line may be joined by it.
    bool corners_count = false;
};

std::span<const Kind> all_kinds();
const Kind* find_kind(std::string_view name);

// One function per file of this room.
void grooves(Bench& bench, const std::vector<Pair>& pairs);
void dados(Bench& bench, const std::vector<Pair>& pairs);
void rabbets(Bench& bench, const std::vector<Pair>& pairs);
void tongues_and_grooves(Bench& bench, const std::vector<Pair>& pairs);
void breadboard_ends(Bench& bench, const std::vector<Pair>& pairs);
void mortises_and_tenons(Bench& bench, const std::vector<Pair>& pairs);
void bridles(Bench& bench, const std::vector<Pair>& pairs);
void laps(Bench& bench, const std::vector<Pair>& pairs);
void notches_over(Bench& bench, const std::vector<Pair>& pairs);
void miters(Bench& bench, const std::vector<Pair>& pairs);
void dovetails(Bench& bench, const std::vector<Pair>& pairs);
void sliding_dovetails(Bench& bench, const std::vector<Pair>& pairs);
void finger_joints(Bench& bench, const std::vector<Pair>& pairs);
void dowels(Bench& bench, const std::vector<Pair>& pairs);
void screws(Bench& bench, const std::vector<Pair>& pairs);
void slotted_screws(Bench& bench, const std::vector<Pair>& pairs);
void buttons(Bench& bench, const std::vector<Pair>& pairs);
void glue(Bench& bench, const std::vector<Pair>& pairs);

} // namespace rayfleck::joinery
