// See study.hpp.

#include "commands/study.hpp"

#include <fmt/format.h>

#include "checks/checks.hpp"

namespace rayfleck::commands {
namespace {

bool same(const findings::Finding& a, const findings::Finding& b) {
    return a.name == b.name && a.severity == b.severity && a.span == b.span && a.message == b.message &&
           a.limit == b.limit && a.mend == b.mend && a.accepted_because == b.accepted_because;
}

} // namespace

std::unique_ptr<Studied> study(const Loaded& loaded, const std::optional<std::string>& size) {
    auto studied = std::make_unique<Studied>();
    studied->size = size;
    studied->findings = loaded.findings;
    const auto has_error = [&] { return studied->findings.any(findings::Severity::error); };

    studied->piece = piece::elaborate(loaded.project, size, studied->findings);
    if (!has_error()) studied->model = joinery::build(studied->piece, studied->findings);
    if (!has_error()) {
        studied->order = assembly::order(studied->model);
        checks::look(studied->model, studied->order, studied->findings);
    }
    studied->compiles = !has_error();
    studied->findings.sort();
    return studied;
}

std::vector<std::optional<std::string>> sizes_of(const Loaded& loaded) {
    std::vector<std::optional<std::string>> sizes;
    for (const std::string& name : piece::size_names(loaded.project)) sizes.emplace_back(name);
    if (sizes.empty()) sizes.emplace_back(std::nullopt);
    return sizes;
}

findings::Findings merged(const std::vector<const Studied*>& sizes) {
    struct Told {
        findings::Finding finding;
        std::vector<std::string> in;
    };
    std::vector<Told> all;
    for (const Studied* studied : sizes)
        for (const findings::Finding& finding : studied->findings) {
            Told* known = nullptr;
            for (Told& told : all)
                if (same(told.finding, finding)) known = &told;
            if (known == nullptr) known = &all.emplace_back(Told{finding, {}});
            const std::string size = studied->size.value_or("");
            if (known->in.empty() || known->in.back() != size) known->in.push_back(size);
        }
    findings::Findings out;
    for (Told& told : all) {
        if (told.in.size() < sizes.size())
            told.finding.message += fmt::format(" (size {})", fmt::join(told.in, ", "));
        out.add(std::move(told.finding));
    }
    out.sort();
    return out;
}

} // namespace rayfleck::commands
