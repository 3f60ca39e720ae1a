// Text to tree: lines first, then statements.
//
// Nothing here stops at an error. What is too large, not UTF-8 or laid out wrongly is reported by the layout;
// what a line says wrongly is reported by the line; the report keeps one finding for each place and puts them
// in order.

#include "syntax/parse.hpp"

#include "syntax/layout.hpp"
#include "syntax/reading.hpp"
#include "syntax/statements.hpp"

namespace rayfleck::syntax {

Tree parse(const source::Texts& texts, int file, findings::Findings& findings) {
    const source::Text& text = texts[file];
    Tree tree;
    tree.file = file;
    Report report(text.bytes(), file);
    const std::string_view bytes = text.bytes();
    if (bytes.size() > limits.bytes) {
        report.error("file-too-large", 0, 0,
                     "this file is " + std::to_string(bytes.size()) + " bytes long, more than " +
                         std::to_string(limits.bytes),
                     "bring in parts of it from files of their own");
    } else if (bytes.starts_with("\xFF\xFE") || bytes.starts_with("\xFE\xFF")) {
        report.error("not-utf-8", 0, 2, "this file is not UTF-8 but UTF-16", "save the file as UTF-8");
    } else {
        const std::vector<Line> lines = lay_out(
            text,
            // A wood of the shop is rare, and a part's phrase that begins so is not: `20 thick,` may go on
            // with `wood cherry` in the next line.
            [](std::string_view word) { return word != "wood" && begins_statement(word); }, report);
        const Reading reading(bytes, file, report);
        read_statements(reading, lines, false, tree.statements);
    }
    tree.broken = report.any();
    report.hand_on(findings);
    return tree;
}

} // namespace rayfleck::syntax
