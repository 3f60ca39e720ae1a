// Findings: keeping, sorting and counting them.
//
// Sorting puts them in the order of the text, so that output does not depend on the order in which checks
// ran. Two findings that say the same at the same place are one.

#include "findings/finding.hpp"

#include <algorithm>
#include <iterator>
#include <tuple>
#include <utility>

namespace rayfleck::findings {
namespace {

bool before(const Finding& a, const Finding& b) {
    if (a.severity != b.severity && a.span.file == b.span.file && a.span.begin == b.span.begin)
        return a.severity > b.severity;
    const auto key = [](const Finding& f) {
        return std::tie(f.span.file, f.span.begin, f.name, f.span.end, f.message, f.limit, f.mend, f.parts);
    };
    return key(a) < key(b);
}

} // namespace

std::string name(Severity severity) {
    switch (severity) {
    case Severity::note:
        return "note";
    case Severity::caution:
        return "caution";
    case Severity::fault:
        return "fault";
    case Severity::error:
        return "error";
    }
    return "";
}

Finding& Findings::add(Finding finding) {
    list_.push_back(std::move(finding));
    return list_.back();
}

Finding& Findings::error(std::string name, source::Span span, std::string message) {
    Finding finding;
    finding.name = std::move(name);
    finding.severity = Severity::error;
    finding.span = span;
    finding.message = std::move(message);
    return add(std::move(finding));
}

bool Findings::any(Severity at_or_above) const {
    return std::any_of(list_.begin(), list_.end(), [&](const Finding& finding) {
        return finding.severity >= at_or_above && !finding.accepted_because;
    });
}

void Findings::sort() {
    std::stable_sort(list_.begin(), list_.end(), before);
    const auto same = [](const Finding& a, const Finding& b) { return !before(a, b) && !before(b, a); };
    list_.erase(std::unique(list_.begin(), list_.end(), same), list_.end());
}

void Findings::append(Findings other) {
    list_.insert(list_.end(), std::make_move_iterator(other.list_.begin()),
                 std::make_move_iterator(other.list_.end()));
}

} // namespace rayfleck::findings
