#pragma once
// A sample carried from its text to what drawing takes, without a command line.

#include <memory>
#include <string>
#include <vector>

#include "checks/checks.hpp"
#include "cutlist/cutlist.hpp"
#include "joinery/model.hpp"
#include "lumber/lumber.hpp"
#include "piece/elaborate.hpp"
#include "reading.hpp"
#include "source/text.hpp"

namespace rayfleck::testing {

struct Studied {
    source::Texts texts;
    piece::Project project;
    piece::Piece piece;
    joinery::Model model;
    findings::Findings findings;
    cutlist::CutList cut_list;
    lumber::Plan lumber;
};

/// The first size of the piece in a file of samples/, with the files that it names.
/// gives  nullptr when it does not compile; `findings` of nothing else tell why, so the test prints the name
std::unique_ptr<Studied> studied_sample(const std::string& file);

} // namespace rayfleck::testing
