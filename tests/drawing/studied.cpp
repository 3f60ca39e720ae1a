// Reads texts depth first, each once, as the command line does.

#include "studied.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "syntax/parse.hpp"

namespace rayfleck::testing {
namespace {

const std::string samples = std::string(RAYFLECK_ROOT) + "/samples";

void read(Studied& studied, const std::string& name) {
    std::ifstream in(samples + "/" + name, std::ios::binary);
    std::ostringstream bytes;
    bytes << in.rdbuf();
    const int number = studied.texts.add(source::Text(name, bytes.str()));
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
        read(studied, path);
    }
}

} // namespace

std::unique_ptr<Studied> studied_sample(const std::string& file) {
    auto studied = std::make_unique<Studied>();
    read(*studied, file);
    const auto sizes = piece::size_names(studied->project);
    const auto broken = [&] { return studied->findings.any(findings::Severity::error); };
    studied->piece = piece::elaborate(
        studied->project, sizes.empty() ? std::nullopt : std::optional<std::string>(sizes.front()),
        studied->findings);
    if (!broken()) studied->model = joinery::build(studied->piece, studied->findings);
    if (broken()) return nullptr;
    checks::look(studied->model, studied->findings);
    studied->findings.sort();
    studied->cut_list = cutlist::list(studied->model);
    studied->lumber = lumber::plan(studied->model, studied->cut_list);
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

} // namespace rayfleck::testing
