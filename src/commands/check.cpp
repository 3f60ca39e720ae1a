// See check.hpp. An error in a file that many pieces bring in is told once.

#include "commands/check.hpp"

#include <algorithm>
#include <deque>
#include <exception>
#include <filesystem>
#include <set>

#include <fmt/format.h>

#include "commands/study.hpp"
#include "commands/tally.hpp"
#include "findings/show.hpp"
#include "writers/json.hpp"

namespace rayfleck::commands {
namespace {

namespace fs = std::filesystem;

struct Walked {
    std::vector<std::string> files;
    std::vector<std::string> troubles;
};

void walk(const fs::path& folder, Walked& walked) {
    std::error_code error;
    std::vector<fs::directory_entry> entries;
    fs::directory_iterator entry(folder, error);
    for (; !error && entry != fs::directory_iterator(); entry.increment(error)) entries.push_back(*entry);
    if (error)
        walked.troubles.push_back(
            fmt::format("cannot read the folder {}: {}", folder.string(), error.message()));
    std::sort(entries.begin(), entries.end(),
              [](const auto& a, const auto& b) { return a.path() < b.path(); });
    for (const fs::directory_entry& found : entries) {
        const std::string name = found.path().filename().string();
        std::error_code ignored;
        if (name.front() == '.' || found.is_symlink(ignored)) continue;
        if (found.is_directory(ignored))
            walk(found.path(), walked);
        else if (found.path().extension() == ".fleck")
            walked.files.push_back(found.path().string());
    }
}

/// What is kept of one text until all are printed.
struct Seen {
    source::Texts texts;
    findings::Findings findings;
    writers::Checked told;
};

class Checking {
  public:
    Checking(const CheckWish& wish, Terminal& terminal) : wish_(wish), terminal_(terminal) {}

    void path(const std::string& path) {
        std::error_code ignored;
        if (path == "-" || !fs::is_directory(path, ignored)) return file(path);
        Walked walked;
        walk(path, walked);
        for (const std::string& trouble : walked.troubles) fail(trouble);
        if (walked.files.empty() && walked.troubles.empty())
            fail(fmt::format("there is no text (*.fleck) in {}", path));
        for (const std::string& found : walked.files) file(found);
    }

    Status finish() {
        if (wish_.format == Format::json) {
            std::vector<writers::Checked> all;
            for (Seen& seen : seen_) {
                seen.told.findings = &seen.findings;
                seen.told.texts = &seen.texts;
                all.push_back(seen.told);
            }
            terminal_.print(writers::write_findings_json(all));
        }
        terminal_.say(tally_.words() + "\n");
        return status_;
    }

  private:
    void fail(const std::string& words) {
        terminal_.say("rayfleck: " + words + "\n");
        status_ = Status::failure;
    }

    void file(const std::string& name) {
        ++tally_.texts;
        Seen& seen = seen_.emplace_back();
        seen.told.file = name;
        try {
            look_at(name, seen);
        } catch (const std::exception& defect) {
            fail(fmt::format("{}: a defect of this program: {}", name, defect.what()));
        }
    }

    void look_at(const std::string& name, Seen& seen) {
        Loaded loaded = load(name);
        if (loaded.unreadable) {
            ++tally_.unreadable;
            seen.told.unreadable = loaded.unreadable;
            return fail(fmt::format("cannot read {}: {}", name, *loaded.unreadable));
        }
        const Holds kind = holds(loaded.project.trees.front());
        if (kind == Holds::shop || kind == Holds::recipes)
            seen.findings = loaded.findings;
        else {
            std::vector<std::unique_ptr<Studied>> studied;
            std::vector<const Studied*> sizes;
            for (const auto& size : sizes_of(loaded)) {
                studied.push_back(study(loaded, size));
                sizes.push_back(studied.back().get());
                if (size) seen.told.sizes.push_back(*size);
            }
            seen.told.title = studied.front()->piece.title;
            seen.findings = merged(sizes);
        }
        seen.texts = std::move(loaded.texts);
        drop_what_was_told(seen);
        tally_.add(seen.findings);
        status_ = worse(status_, status_of(seen.findings, wish_.fail_on));
        if (wish_.format == Format::text)
            terminal_.say(findings::show(seen.findings, seen.texts, {terminal_.colour(), wish_.brief}));
    }

    void drop_what_was_told(Seen& seen) {
        findings::Findings fresh;
        for (const findings::Finding& finding : seen.findings)
            if (finding.severity != findings::Severity::error ||
                told_.insert(findings::show(finding, seen.texts, {false, false})).second)
                fresh.add(finding);
        // A text whose only errors were told before does not compile all the same.
        if (fresh.size() < seen.findings.size()) status_ = worse(status_, Status::does_not_compile);
        seen.findings = std::move(fresh);
    }

    const CheckWish& wish_;
    Terminal& terminal_;
    std::deque<Seen> seen_;
    std::set<std::string> told_; ///< errors of the texts, as shown
    Tally tally_;
    Status status_ = Status::sound;
};

} // namespace

Status check(const CheckWish& wish, Terminal& terminal) {
    Checking checking(wish, terminal);
    for (const std::string& path : wish.paths) checking.path(path);
    return checking.finish();
}

} // namespace rayfleck::commands
