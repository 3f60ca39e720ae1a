#pragma once
// What the tests of this room share: a text in, the printed piece or the printed errors out.
//
// Further files of a project are given by the names under which the main text brings them in. Shipped recipes
// are there as in the program.

#include <map>
#include <string>

#include "findings/show.hpp"
#include "piece/elaborate.hpp"
#include "piece/recipes.hpp"
#include "syntax/parse.hpp"

namespace rayfleck::piece {

struct Result {
    source::Texts texts;
    findings::Findings findings;
    Piece piece;
};

inline Result elaborate_text(const std::string& text, const std::map<std::string, std::string>& others = {},
                             const std::optional<std::string>& size = std::nullopt) {
    Result out;
    Project project;
    const auto add = [&](const std::string& name, const std::string& bytes) {
        const int file = out.texts.add(source::Text(name, bytes));
        project.trees.push_back(syntax::parse(out.texts, file, out.findings));
        return file;
    };
    project.main = add("piece.fleck", text);
    for (const auto& [name, bytes] : others) project.brought[name] = add(name, bytes);
    for (const auto& [name, bytes] : shipped_recipes()) project.recipes.push_back(add(name, bytes));
    out.piece = elaborate(project, size, out.findings);
    return out;
}

/// Every error with its second places, limit and remedy, as `line: message [name]`.
inline std::string errors_in(const Result& result) {
    std::string out;
    for (const findings::Finding& f : result.findings) {
        const auto line = [&](const source::Span& span) {
            return (span.file == 0 ? "" : result.texts[span.file].name() + ":") +
                   std::to_string(result.texts[span.file].place(span.begin).line);
        };
        out += line(f.span) + ": " + f.message + " [" + f.name + "]\n";
        for (const findings::Label& label : f.labels)
            out += "  " + line(label.span) + ": " + label.text + "\n";
        if (!f.limit.empty()) out += "  limit: " + f.limit + "\n";
        if (!f.mend.empty()) out += "  mend: " + f.mend + "\n";
    }
    return out;
}

/// The errors of a text; when there are none, the piece.
inline std::string outcome(const std::string& text, const std::map<std::string, std::string>& others = {},
                           const std::optional<std::string>& size = std::nullopt) {
    const Result result = elaborate_text(text, others, size);
    return result.findings.empty() ? print(result.piece) : errors_in(result);
}

} // namespace rayfleck::piece
