// See studied.hpp.

#include "studied.hpp"

#include <catch2/catch.hpp>

namespace rayfleck::lumber_tests {
namespace {

/// gives  nullptr when it does not compile
std::unique_ptr<Studied> study(const std::string& name, const testing::BytesOf& bytes_of) {
    auto studied = std::make_unique<Studied>();
    testing::read(studied->texts, studied->project, studied->findings, name, bytes_of);
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

std::unique_ptr<Studied> studied_sample(const std::string& file) {
    return study(file, testing::bytes_of_sample);
}

std::unique_ptr<Studied> studied_text(const std::string& piece, const std::string& shop) {
    auto studied =
        study("piece.fleck", [&](const std::string& name) { return name == "shop.fleck" ? shop : piece; });
    REQUIRE(studied);
    return studied;
}

} // namespace rayfleck::lumber_tests
