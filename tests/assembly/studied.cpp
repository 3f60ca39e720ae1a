// See studied.hpp.

#include "studied.hpp"

#include <algorithm>
#include <optional>

#include <catch2/catch.hpp>

#include "findings/show.hpp"

namespace rayfleck::assembly_tests {
namespace {

std::unique_ptr<Studied> study(const std::string& name, const testing::BytesOf& bytes_of,
                               std::optional<std::size_t> size) {
    auto studied = std::make_unique<Studied>();
    testing::read(studied->texts, studied->project, studied->findings, name, bytes_of);
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

std::unique_ptr<Studied> studied(const std::string& text) {
    return study(
        "piece.fleck", [&](const std::string&) { return text; }, std::nullopt);
}

std::vector<std::unique_ptr<Studied>> studied_sample(const std::string& file) {
    Studied first;
    testing::read(first.texts, first.project, first.findings, file, testing::bytes_of_sample);
    const std::size_t sizes = piece::size_names(first.project).size();
    std::vector<std::unique_ptr<Studied>> all;
    if (sizes == 0) all.push_back(study(file, testing::bytes_of_sample, std::nullopt));
    for (std::size_t i = 0; i < sizes; ++i) all.push_back(study(file, testing::bytes_of_sample, i));
    return all;
}

} // namespace rayfleck::assembly_tests
