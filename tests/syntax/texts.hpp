#pragma once
// A text read for a test: its tree, and its errors as lines that a person can compare.

#include <string>

#include "findings/finding.hpp"
#include "source/text.hpp"
#include "syntax/parse.hpp"

struct Parsed {
    rayfleck::syntax::Tree tree;
    /// One line each: `line:column: message [name]`, then the remedy behind `=`.
    std::string errors;
    std::size_t count = 0;
};

inline Parsed parse_text(const std::string& name, const std::string& bytes) {
    using namespace rayfleck;
    source::Texts texts;
    const int file = texts.add(source::Text(name, bytes));
    findings::Findings findings;
    Parsed out;
    out.tree = syntax::parse(texts, file, findings);
    out.count = findings.size();
    for (const findings::Finding& finding : findings) {
        const source::Place place = texts[file].place(finding.span.begin);
        out.errors += std::to_string(place.line) + ":" + std::to_string(place.column) + ": " +
                      finding.message + " [" + finding.name + "]\n";
        if (!finding.mend.empty()) out.errors += "    = " + finding.mend + "\n";
    }
    return out;
}
