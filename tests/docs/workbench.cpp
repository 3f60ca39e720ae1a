// See workbench.hpp.

#include "workbench.hpp"

#include <algorithm>
#include <set>
#include <sstream>
#include <vector>

#include "checks/checks.hpp"
#include "findings/show.hpp"
#include "joinery/model.hpp"
#include "piece/elaborate.hpp"
#include "piece/recipes.hpp"
#include "syntax/parse.hpp"

namespace rayfleck::docs {
namespace {

using Others = std::map<std::string, std::string>;

void read(Compiled& out, piece::Project& project, const std::string& name, const std::string& text,
          const Others& others) {
    const int number = out.texts.add(source::Text(name, text));
    project.trees.push_back(syntax::parse(out.texts, number, out.findings));
    std::vector<syntax::Quoted> named;
    for (const syntax::Statement& statement : project.trees.back().statements) {
        if (const auto* shop = std::get_if<syntax::ShopIn>(&statement.says)) named.push_back(shop->path);
        if (const auto* other = std::get_if<syntax::BringIn>(&statement.says)) named.push_back(other->path);
    }
    for (const syntax::Quoted& path : named) {
        if (project.brought.contains(path.text)) continue;
        const auto found = others.find(path.text);
        if (found == others.end()) {
            out.findings.error("missing-file", path.span,
                               "no block of this page is a file \"" + path.text + "\"");
            continue;
        }
        project.brought[path.text] = out.texts.count();
        read(out, project, path.text, found->second, others);
    }
}

/// A statement with its block, and by what it is known: `rod across`, `part long apron`, `units`.
struct Chunk {
    std::string key, name, text;
};

std::vector<Chunk> chunks_of(const std::string& text) {
    std::vector<Chunk> chunks;
    std::istringstream in(text);
    std::string line;
    while (std::getline(in, line)) {
        const bool goes_on = !chunks.empty() && (line.empty() || line[0] == ' ');
        if (!goes_on) {
            if (line.empty() || line[0] == '#') continue;
            Chunk chunk;
            std::istringstream words(line);
            std::string word;
            words >> word;
            chunk.key = word;
            if (word == "rod") {
                words >> word;
                chunk.key += " " + word;
            } else if (word == "part" || word == "value" || word == "recipe" || word == "make") {
                while (words >> word) {
                    if (word == "like" || word == "=" || word == "from") break;
                    const bool last = word.back() == ',';
                    if (last) word.pop_back();
                    chunk.name += (chunk.name.empty() ? "" : " ") + word;
                    if (last) break;
                }
                chunk.key += " " + chunk.name;
            } else if (word == "join" || word == "note" || word == "hardware" || word == "require") {
                chunk.key = line;
            }
            chunks.push_back(chunk);
        }
        chunks.back().text += line + "\n";
    }
    return chunks;
}

bool speaks_of(const std::string& text, const std::string& name) {
    for (std::size_t at = text.find(name); at != std::string::npos; at = text.find(name, at + 1)) {
        const auto inside = [&](std::size_t i) {
            return i < text.size() &&
                   (std::isalnum(static_cast<unsigned char>(text[i])) != 0 || text[i] == '-');
        };
        if (!(at > 0 && inside(at - 1)) && !inside(at + name.size())) return true;
    }
    return false;
}

} // namespace

Compiled compile(const std::string& name, const std::string& text, const Others& others) {
    Compiled out;
    piece::Project project;
    read(out, project, name, text, others);
    for (const auto& [file, recipe] : piece::shipped_recipes()) {
        project.recipes.push_back(out.texts.count());
        read(out, project, file, recipe, {});
    }
    const auto broken = [&] { return out.findings.any(findings::Severity::error); };
    const std::vector<std::string> names = piece::size_names(project);
    std::vector<std::optional<std::string>> sizes;
    for (const std::string& size : names) sizes.emplace_back(size);
    if (sizes.empty()) sizes.emplace_back(std::nullopt);
    for (const std::optional<std::string>& size : sizes) {
        const piece::Piece piece = piece::elaborate(project, size, out.findings);
        if (broken()) break;
        const joinery::Model model = joinery::build(piece, out.findings);
        if (broken()) break;
        checks::look(model, out.findings);
    }
    out.findings.sort();
    out.compiles = !broken();
    out.shown = findings::show(out.findings, out.texts, {});
    return out;
}

std::string in_skeleton(const std::string& example, const std::string& skeleton) {
    std::set<std::string> own;
    for (const Chunk& chunk : chunks_of(example)) own.insert(chunk.key);
    const std::vector<Chunk> offered = chunks_of(skeleton);
    std::vector<bool> taken(offered.size(), false);
    std::string text = example;
    bool more = true;
    while (more) {
        more = false;
        for (std::size_t i = 0; i < offered.size(); ++i) {
            const Chunk& chunk = offered[i];
            if (taken[i] || own.contains(chunk.key)) continue;
            if (!chunk.name.empty() && !speaks_of(text, chunk.name)) continue;
            taken[i] = more = true;
            text += chunk.text;
        }
    }
    // The example first, so that a message names the line of the page's block.
    std::string out = example;
    for (std::size_t i = 0; i < offered.size(); ++i)
        if (taken[i]) out += offered[i].text;
    return out;
}

} // namespace rayfleck::docs
