// See studied.hpp.

#include "studied.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include <catch2/catch.hpp>

#include "checks/checks.hpp"
#include "piece/recipes.hpp"
#include "reading.hpp"
#include "syntax/parse.hpp"

namespace rayfleck::checks_tests {
std::unique_ptr<Study> study(const std::string& name, std::string bytes,
                             const std::optional<std::string>& folder) {
    auto study = std::make_unique<Study>();
    findings::Findings of_text;
    const auto bytes_by_name = [&](const std::string& wanted) -> std::optional<std::string> {
        if (wanted == name) return bytes;
        return folder ? std::optional(bytes_of(*folder + "/" + wanted)) : std::nullopt;
    };
    testing::read(study->texts, study->project, of_text, name, bytes_by_name);
    for (auto& [recipe, text] : piece::shipped_recipes()) {
        const int number = study->texts.add(source::Text("shipped/" + recipe, std::move(text)));
        study->project.trees.push_back(syntax::parse(study->texts, number, of_text));
        study->project.recipes.push_back(number);
    }
    std::vector<std::optional<std::string>> sizes;
    for (const std::string& size : piece::size_names(study->project)) sizes.emplace_back(size);
    if (sizes.empty()) sizes.emplace_back(std::nullopt);
    for (const std::optional<std::string>& size : sizes) {
        auto studied = std::make_unique<Studied>();
        studied->size = size.value_or("");
        studied->findings = of_text;
        const auto broken = [&] { return studied->findings.any(findings::Severity::error); };
        studied->piece = piece::elaborate(study->project, size, studied->findings);
        if (!broken()) studied->model = joinery::build(studied->piece, studied->findings);
        if (!broken()) checks::look(studied->model, studied->findings);
        studied->findings.sort();
        study->sizes.push_back(std::move(studied));
    }
    return study;
}

std::string bytes_of(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    INFO("file " << path);
    REQUIRE(in);
    std::ostringstream bytes;
    bytes << in.rdbuf();
    return bytes.str();
}

std::vector<std::string> pieces_in(const std::string& folder) {
    std::vector<std::string> paths;
    for (const auto& entry : std::filesystem::directory_iterator(folder))
        if (entry.path().extension() == ".fleck") paths.push_back(entry.path().string());
    std::sort(paths.begin(), paths.end());
    return paths;
}

std::vector<std::string> lines_of(const std::string& bytes) {
    std::vector<std::string> lines;
    std::istringstream in(bytes);
    for (std::string line; std::getline(in, line);) {
        if (!line.empty() && line.back() == '\r') line.pop_back();
        lines.push_back(line);
    }
    return lines;
}

std::vector<findings::Finding> counting(const findings::Findings& all) {
    std::vector<findings::Finding> some;
    for (const findings::Finding& finding : all)
        if (finding.severity >= findings::Severity::caution && !finding.accepted_because)
            some.push_back(finding);
    return some;
}

} // namespace rayfleck::checks_tests
