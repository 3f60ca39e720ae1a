// See load.hpp for what may be read. Files are opened without waiting and read up to the language's limit, so
// that a pipe, a device or a huge file cannot hang the program or eat its memory.

#include "commands/load.hpp"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <map>

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include "piece/recipes.hpp"
#include "syntax/parse.hpp"

namespace rayfleck::commands {
namespace {

namespace fs = std::filesystem;

struct Bytes {
    std::string text;
    std::optional<std::string> trouble;
};

Bytes read_stream(int stream) {
    Bytes bytes;
    char buffer[1 << 16];
    while (true) {
        const ssize_t count = ::read(stream, buffer, sizeof buffer);
        if (count < 0 && errno == EINTR) continue;
        if (count < 0) return {{}, std::strerror(errno)};
        if (count == 0) return bytes;
        bytes.text.append(buffer, static_cast<std::size_t>(count));
        if (bytes.text.size() > syntax::limits.bytes)
            return {{}, fmt::format("larger than {} MiB, the limit for a text", syntax::limits.bytes >> 20)};
    }
}

/// only_files  refuse what is no ordinary file; a pipe is welcome as the main file alone
Bytes read_file(const fs::path& path, bool only_files) {
    const int file = ::open(path.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC | (only_files ? O_NOFOLLOW : 0));
    if (file < 0) return {{}, std::strerror(errno)};
    struct stat about {};
    Bytes bytes;
    if (::fstat(file, &about) != 0)
        bytes.trouble = std::strerror(errno);
    else if (S_ISDIR(about.st_mode))
        bytes.trouble = "is a folder";
    else if (only_files && !S_ISREG(about.st_mode))
        bytes.trouble = "is not an ordinary file";
    else {
        ::fcntl(file, F_SETFL, ::fcntl(file, F_GETFL) & ~O_NONBLOCK);
        bytes = read_stream(file);
    }
    ::close(file);
    return bytes;
}

bool is_within(const fs::path& file, const fs::path& folder) {
    const auto [mismatch, ignored] = std::mismatch(folder.begin(), folder.end(), file.begin(), file.end());
    return mismatch == folder.end();
}

/// A path as a text names it, with its place.
struct Named {
    std::string path;
    source::Span span;
};

std::vector<Named> named_in(const syntax::Tree& tree) {
    std::vector<Named> named;
    const auto from = [&](const std::vector<syntax::Statement>& statements) {
        for (const syntax::Statement& statement : statements) {
            if (const auto* shop = std::get_if<syntax::ShopIn>(&statement.says))
                named.push_back({shop->path.text, shop->path.span});
            if (const auto* other = std::get_if<syntax::BringIn>(&statement.says))
                named.push_back({other->path.text, other->path.span});
        }
    };
    from(tree.statements);
    return named;
}

class Reader {
  public:
    Reader(Loaded& loaded, std::string shown_folder, fs::path folder)
        : loaded_(loaded), shown_folder_(std::move(shown_folder)), folder_(std::move(folder)) {}

    void read(const std::string& name, const fs::path& file, std::string bytes) {
        const int number = loaded_.texts.add(source::Text(name, std::move(bytes)));
        if (!file.empty()) numbers_[file.string()] = number;
        loaded_.project.trees.push_back(syntax::parse(loaded_.texts, number, loaded_.findings));
        being_read_.push_back(number);
        // By value: reading on adds trees, which may move this one.
        for (const Named& named : named_in(loaded_.project.trees.back())) bring_in(named);
        being_read_.pop_back();
    }

  private:
    void bring_in(const Named& named) {
        const fs::path written(named.path);
        if (named.path.empty() || named.path.find('\0') != std::string::npos || written.is_absolute() ||
            std::find(written.begin(), written.end(), "..") != written.end())
            return outside(named);
        std::error_code error;
        const fs::path file = fs::canonical(folder_ / written, error);
        if (error) return missing(named, error);
        if (!is_within(file, folder_)) return outside(named);

        const auto known = numbers_.find(file.string());
        if (known != numbers_.end()) {
            const auto open = std::find(being_read_.begin(), being_read_.end(), known->second);
            if (open != being_read_.end()) return circle(named, open);
            loaded_.project.brought[named.path] = known->second;
            return;
        }
        if (loaded_.texts.count() >= files_at_most) {
            if (!said_too_many_)
                loaded_.findings.error("too-many-files", named.span,
                                       fmt::format("the piece brings in more than {} files", files_at_most));
            said_too_many_ = true;
            return;
        }
        Bytes bytes = read_file(file, true);
        if (bytes.trouble) {
            loaded_.findings.error("unreadable-file", named.span,
                                   fmt::format("\"{}\" cannot be read: {}", named.path, *bytes.trouble));
            return;
        }
        loaded_.project.brought[named.path] = loaded_.texts.count();
        read(shown_folder_ + named.path, file, std::move(bytes.text));
    }

    void outside(const Named& named) {
        loaded_.findings
            .error("file-outside-folder", named.span,
                   fmt::format("\"{}\" lies outside the folder of the piece", named.path))
            .mend = "name a file in the folder of the main text or below it, without `..`";
    }

    void missing(const Named& named, const std::error_code& error) {
        findings::Finding& finding = loaded_.findings.error(
            "missing-file", named.span,
            error == std::errc::no_such_file_or_directory
                ? fmt::format("there is no file \"{}\" in the folder of the piece", named.path)
                : fmt::format("\"{}\" cannot be read: {}", named.path, error.message()));
        std::vector<std::string> here;
        std::error_code ignored;
        for (fs::directory_iterator entry(folder_, ignored), end; entry != end && here.size() < 1000;
             entry.increment(ignored))
            if (entry->path().extension() == ".fleck") here.push_back(entry->path().filename().string());
        std::sort(here.begin(), here.end());
        if (const auto near = findings::near_word(named.path, here))
            finding.mend = fmt::format("write \"{}\" if that is the file", *near);
    }

    void circle(const Named& named, std::vector<int>::iterator first) {
        std::string way;
        for (auto number = first; number != being_read_.end(); ++number)
            way += loaded_.texts[*number].name() + " → ";
        loaded_.findings
            .error("circular-bring-in", named.span,
                   fmt::format("\"{}\" leads back to itself: {}{}", named.path, way,
                               loaded_.texts[*first].name()))
            .mend = "move what both need into a third file";
    }

    Loaded& loaded_;
    std::string shown_folder_;           ///< put before a written path in messages, with its `/`
    fs::path folder_;                    ///< canonical
    std::map<std::string, int> numbers_; ///< canonical path → file number
    std::vector<int> being_read_;
    bool said_too_many_ = false;
};

} // namespace

Loaded load(const std::string& path) {
    Loaded loaded;
    const bool standard_input = path == "-";
    Bytes bytes = standard_input ? read_stream(STDIN_FILENO) : read_file(path, false);
    if (bytes.trouble) {
        loaded.unreadable = *bytes.trouble;
        return loaded;
    }
    std::error_code error;
    const fs::path shown = standard_input ? fs::path() : fs::path(path).parent_path();
    const fs::path folder = fs::canonical(shown.empty() ? fs::path(".") : shown, error);
    if (error) {
        loaded.unreadable = "its folder cannot be found: " + error.message();
        return loaded;
    }
    const fs::path file = standard_input ? fs::path() : fs::canonical(path, error);
    std::string shown_folder = shown.string();
    if (!shown_folder.empty() && shown_folder.back() != '/') shown_folder += '/';
    Reader(loaded, shown_folder, folder)
        .read(standard_input ? "standard input" : path, error ? fs::path() : file, std::move(bytes.text));
    for (auto& [name, text] : piece::shipped_recipes()) {
        const int number = loaded.texts.add(source::Text("shipped/" + name, std::move(text)));
        loaded.project.trees.push_back(syntax::parse(loaded.texts, number, loaded.findings));
        loaded.project.recipes.push_back(number);
    }
    loaded.findings.sort();
    return loaded;
}

Holds holds(const syntax::Tree& tree) {
    bool recipe = false, other = false;
    for (const syntax::Statement& statement : tree.statements) {
        if (std::holds_alternative<syntax::PieceIs>(statement.says)) return Holds::piece;
        if (std::holds_alternative<syntax::ShopFile>(statement.says)) return Holds::shop;
        if (std::holds_alternative<syntax::RecipeIs>(statement.says))
            recipe = true;
        else if (std::holds_alternative<syntax::PartIs>(statement.says) ||
                 std::holds_alternative<syntax::MakeIs>(statement.says) ||
                 std::holds_alternative<syntax::RodIs>(statement.says))
            other = true;
    }
    return recipe && !other ? Holds::recipes : Holds::unclear;
}

} // namespace rayfleck::commands
