#pragma once
// A sample carried from its text to what the lumber room takes, without a command line.

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

namespace rayfleck::lumber_tests {

struct Studied {
    source::Texts texts;
    piece::Project project;
    piece::Piece piece;
    joinery::Model model;
    findings::Findings findings;
    cutlist::CutList cut_list;
};

/// The first size of the piece in a file of samples/, with the files that it names.
/// gives  nullptr when it does not compile; `findings` of nothing else tell why, so the test prints the name
std::unique_ptr<Studied> studied_sample(const std::string& file);
/// A piece as text, with the text of its shop file, which it names `shop.fleck`.
/// fails  fails the running test when it does not compile
std::unique_ptr<Studied> studied_text(const std::string& piece, const std::string& shop);

} // namespace rayfleck::lumber_tests
