// docs/checks.md is written from the texts of the checks themselves.

#include <fmt/format.h>

#include <catch2/catch.hpp>

#include "checks/checks.hpp"
#include "pages.hpp"

namespace rayfleck::docs {
namespace {

/// Examples of some checks are words, of others a text of several lines.
std::string example(std::string_view text) {
    if (text.find('\n') == std::string_view::npos) return fmt::format("{}\n", text);
    return fmt::format("\n```text\n{}{}```\n", text, text.back() == '\n' ? "" : "\n");
}

std::string lesson(const checks::Check& check) {
    std::string out = fmt::format("## {}\n\n{}.\n\n", check.name, check.title);
    out += fmt::format("**What it sees.** {}\n\n", check.what);
    out += fmt::format("**Why it matters.** {}\n\n", check.why);
    out += fmt::format("**How bad it is.** {}\n\n", check.severity);
    out += fmt::format("**How to mend it.** {}\n\n", check.mend);
    if (!check.wrong.empty()) out += "**Gives the finding:** " + example(check.wrong) + "\n";
    if (!check.right.empty()) out += "**Mended:** " + example(check.right) + "\n";
    if (!check.figures.empty()) {
        out += "| figure | value | source |\n|---|---|---|\n";
        for (const checks::SourcedFigure& figure : check.figures)
            out += fmt::format("| {} | {} | {} |\n", figure.what, figure.value, figure.source);
        out += "\n";
    }
    return out;
}

std::string page() {
    std::string out = R"(# The checks

This page is written by the tests from the texts of the checks; `rayfleck explain NAME` prints the same in a terminal.
Change the text in `src/checks/`, then run the tests with `RAYFLECK_REWRITE=1`.

A finding is a **fault** (it will break, split or not go together), a **caution** (likely trouble, or outside a trade
rule) or a **note**. Every finding names the part, the number, the limit and its source, and what to change. To keep a
piece as it is, say why in the text, and the finding stays listed but no longer counts:

```text
accept short-grain on ear because "it is a plaque and carries nothing"
```

An `accept` that matches no finding becomes a note of its own, `needless-acceptance`.

| check | what it finds |
|---|---|
)";
    for (const checks::Check& check : checks::all())
        out += fmt::format("| [{0}](#{0}) | {1} |\n", check.name, check.title);
    out += "\n";
    for (const checks::Check& check : checks::all()) out += lesson(check);
    while (out.size() > 1 && out[out.size() - 2] == '\n') out.pop_back();
    return out;
}

} // namespace

TEST_CASE("the page of checks holds what the program explains", "[docs]") {
    compare_or_rewrite("docs/checks.md", page());
}

} // namespace rayfleck::docs
