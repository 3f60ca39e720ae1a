// The folder of the samples is known from the build.

#include "reading.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "syntax/parse.hpp"

namespace rayfleck::testing {
namespace {

const std::string samples = std::string(RAYFLECK_ROOT) + "/samples";

} // namespace

void read(source::Texts& texts, piece::Project& project, findings::Findings& findings,
          const std::string& name, const BytesOf& bytes_of) {
    std::optional<std::string> bytes = bytes_of(name);
    if (!bytes) return;
    const int number = texts.add(source::Text(name, std::move(*bytes)));
    project.trees.push_back(syntax::parse(texts, number, findings));
    std::vector<std::string> named;
    for (const syntax::Statement& statement : project.trees.back().statements) {
        if (const auto* shop = std::get_if<syntax::ShopIn>(&statement.says)) named.push_back(shop->path.text);
        if (const auto* other = std::get_if<syntax::BringIn>(&statement.says))
            named.push_back(other->path.text);
    }
    for (const std::string& path : named) {
        if (project.brought.contains(path)) continue;
        // Known before it is read, so that texts which name each other end.
        const int next = project.brought[path] = texts.count();
        read(texts, project, findings, path, bytes_of);
        if (texts.count() == next) project.brought.erase(path);
    }
}

std::optional<std::string> bytes_of_sample(const std::string& name) {
    std::ifstream in(samples + "/" + name, std::ios::binary);
    if (!in) return std::nullopt;
    std::ostringstream bytes;
    bytes << in.rdbuf();
    return bytes.str();
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
