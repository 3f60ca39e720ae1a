#pragma once
// Writing: files that are replaced whole or not at all. The only place that changes a folder.
//
// Every file of a piece is first written under a passing name in the folder where it belongs and brought to
// the disk; only when all are there do they take the place of the old ones, each in one step. A viewer never
// sees half a page, and after a full disk or a folder without leave to write, the old files stand as they
// were.

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace rayfleck::commands {

struct Output {
    std::filesystem::path path;
    std::string bytes;
};

/// Writes all, or none when any cannot be written.
/// gives  nothing when all is well, else what went wrong, naming the file
std::optional<std::string> replace(const std::vector<Output>& outputs);

/// Writes a file that must not be there yet.
/// gives  nothing when all is well, else what went wrong, naming the file
std::optional<std::string> create(const Output& output);

/// Makes the folder, and those above it, where they are missing.
std::optional<std::string> make_folder(const std::filesystem::path& folder);

} // namespace rayfleck::commands
