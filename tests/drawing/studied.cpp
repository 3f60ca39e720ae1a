// See studied.hpp.

#include "studied.hpp"

namespace rayfleck::testing {
std::unique_ptr<Studied> studied_sample(const std::string& file) {
    auto studied = std::make_unique<Studied>();
    read(studied->texts, studied->project, studied->findings, file, bytes_of_sample);
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

} // namespace rayfleck::testing
