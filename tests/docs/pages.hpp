#pragma once
// The pages of the manual as the tests read them: their text, and the fenced blocks in it.
//
// The words behind ```fleck say what a block is:
//     fleck                    a whole piece; it compiles and no check calls it a fault
//     fleck part               statements of a piece; what they need beyond themselves comes from the
//     skeleton fleck wrong [NAME]       gives at least one error or finding; with a name, one of that name
//     fleck file NAME          a text of that name; blocks further down the page may bring it in
//     fleck step               goes on where the last step of this page ended; all of them so far compile
//     fleck instead            takes the place of the last step, without becoming one
//     fleck skeleton           the piece that examples stand in; one in all pages
//     text shown               stands word for word in what the program says of the block before it

#include <optional>
#include <set>
#include <string>
#include <vector>

namespace rayfleck::docs {

struct Block {
    std::string page; ///< `language.md`
    int line = 0;     ///< of its first line, from 1
    std::string text;
    std::string kind; ///< first word behind the fence: fleck, text, sh
    bool part = false, wrong = false, skeleton = false, shown = false, step = false, instead = false;
    std::string expected;            ///< name of the finding, of a `wrong` one; may be empty
    std::optional<std::string> file; ///< name of the text
};

/// Whole text of a file of the project; a missing file is a failed test.
std::string read(const std::string& path);
/// README.md and every page of docs, in the order of their names.
std::vector<std::string> page_paths();
std::vector<Block> blocks_of(const std::string& path);
std::vector<Block> all_blocks();

/// Every `word` in the first cell of a row of the page's tables.
std::set<std::string> first_cells(const std::string& path);

/// Compares a page with what the program says it should be, or writes it anew when RAYFLECK_REWRITE is set.
void compare_or_rewrite(const std::string& path, const std::string& expected);

} // namespace rayfleck::docs
