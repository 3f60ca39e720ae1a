// See studied.hpp.

#include "studied.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <optional>
#include <sstream>

#include <catch2/catch.hpp>

#include "findings/show.hpp"
#include "syntax/parse.hpp"

namespace rayfleck::assembly_tests {
namespace {

const std::string samples = std::string(RAYFLECK_ROOT) + "/samples";

std::string bytes_of(const std::string& file) {
    std::ifstream in(samples + "/" + file, std::ios::binary);
    INFO("file " << file);
    REQUIRE(in);
    std::ostringstream bytes;
    bytes << in.rdbuf();
    return bytes.str();
}

/// Depth first, each text once, as the command line does.
void read(Studied& studied, const std::string& name, const std::string& bytes) {
    const int number = studied.texts.add(source::Text(name, bytes));
    studied.project.trees.push_back(syntax::parse(studied.texts, number, studied.findings));
    std::vector<std::string> named;
    for (const syntax::Statement& statement : studied.project.trees.back().statements) {
        if (const auto* shop = std::get_if<syntax::ShopIn>(&statement.says)) named.push_back(shop->path.text);
        if (const auto* other = std::get_if<syntax::BringIn>(&statement.says))
            named.push_back(other->path.text);
    }
    for (const std::string& path : named) {
        if (studied.project.brought.contains(path)) continue;
        studied.project.brought[path] = studied.texts.count();
        read(studied, path, bytes_of(path));
    }
}

std::unique_ptr<Studied> study(const std::string& name, const std::string& bytes,
                               std::optional<std::size_t> size) {
    auto studied = std::make_unique<Studied>();
    read(*studied, name, bytes);
    std::optional<std::string> wanted;
    if (size) wanted = piece::size_names(studied->project)[*size];
    studied->piece = piece::elaborate(studied->project, wanted, studied->findings);
    INFO(findings::show(studied->findings, studied->texts, {}));
    REQUIRE_FALSE(studied->findings.any(findings::Severity::error));
    studied->model = joinery::build(studied->piece, studied->findings);
    INFO(findings::show(studied->findings, studied->texts, {}));
    REQUIRE_FALSE(studied->findings.any(findings::Severity::error));
    studied->order = assembly::order(studied->model);
    return studied;
}

} // namespace

int Studied::part(const std::string& name) const {
    for (std::size_t i = 0; i < model.made.size(); ++i)
        if (model.made[i].part->name == name) return static_cast<int>(i);
    FAIL("no part named " << name);
    return -1;
}

int Studied::move_that_brings(const std::vector<std::string>& names) const {
    std::vector<int> parts;
    for (const std::string& name : names) parts.push_back(part(name));
    std::sort(parts.begin(), parts.end());
    for (std::size_t m = 0; m < order.moves.size(); ++m)
        if (order.moves[m].parts == parts) return static_cast<int>(m);
    return -1;
}

std::unique_ptr<Studied> studied(const std::string& text) { return study("piece.fleck", text, std::nullopt); }

std::vector<std::unique_ptr<Studied>> studied_sample(const std::string& file) {
    const std::string bytes = bytes_of(file);
    Studied first;
    read(first, file, bytes);
    const std::size_t sizes = piece::size_names(first.project).size();
    std::vector<std::unique_ptr<Studied>> all;
    if (sizes == 0) all.push_back(study(file, bytes, std::nullopt));
    for (std::size_t i = 0; i < sizes; ++i) all.push_back(study(file, bytes, i));
    return all;
}

std::vector<std::string> sample_files() {
    std::vector<std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator(samples)) {
        const std::string name = entry.path().filename().string();
        if (entry.path().extension() == ".fleck" && name != "shop.fleck") files.push_back(name);
    }
    std::sort(files.begin(), files.end());
    return files;
}

} // namespace rayfleck::assembly_tests
