// Reads texts depth first, each once, as the command line does.

#include "studied.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <functional>
#include <sstream>

#include <catch2/catch.hpp>

#include "syntax/parse.hpp"

namespace rayfleck::lumber_tests {
namespace {

const std::string samples = std::string(RAYFLECK_ROOT) + "/samples";

using BytesOf = std::function<std::string(const std::string&)>;

std::string bytes_of_sample(const std::string& name) {
    std::ifstream in(samples + "/" + name, std::ios::binary);
    std::ostringstream bytes;
    bytes << in.rdbuf();
    return bytes.str();
}

void read(Studied& studied, const std::string& name, const BytesOf& bytes_of) {
    const int number = studied.texts.add(source::Text(name, bytes_of(name)));
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
        read(studied, path, bytes_of);
    }
}

/// gives  nullptr when it does not compile
std::unique_ptr<Studied> study(const std::string& name, const BytesOf& bytes_of) {
    auto studied = std::make_unique<Studied>();
    read(*studied, name, bytes_of);
    const auto sizes = piece::size_names(studied->project);
    const auto broken = [&] { return studied->findings.any(findings::Severity::error); };
    studied->piece = piece::elaborate(
        studied->project, sizes.empty() ? std::nullopt : std::optional<std::string>(sizes.front()),
        studied->findings);
    if (!broken()) studied->model = joinery::build(studied->piece, studied->findings);
    for (const findings::Finding& finding : studied->findings)
        if (finding.severity == findings::Severity::error) UNSCOPED_INFO(finding.message);
    if (broken()) return nullptr;
    studied->cut_list = cutlist::list(studied->model);
    return studied;
}

} // namespace

std::unique_ptr<Studied> studied_sample(const std::string& file) { return study(file, bytes_of_sample); }

std::unique_ptr<Studied> studied_text(const std::string& piece, const std::string& shop) {
    auto studied =
        study("piece.fleck", [&](const std::string& name) { return name == "shop.fleck" ? shop : piece; });
    REQUIRE(studied);
    return studied;
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

} // namespace rayfleck::lumber_tests
