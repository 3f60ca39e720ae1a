// See output.hpp. The passing name begins with a dot and is short, so that it fits wherever the real one
// does.

#include "commands/output.hpp"

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <string_view>
#include <utility>

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

namespace rayfleck::commands {
namespace {

namespace fs = std::filesystem;

std::string cannot_write(const fs::path& path, const std::string& why) {
    return fmt::format("cannot write {}: {}", path.string(), why);
}

fs::path folder_of(const fs::path& path) {
    return path.has_parent_path() ? path.parent_path() : fs::path(".");
}

/// Mode that a new file gets, or that of the file it replaces.
mode_t mode_for(const fs::path& path) {
    struct stat about {};
    if (::stat(path.c_str(), &about) == 0) return about.st_mode & 07777;
    const mode_t mask = ::umask(0);
    ::umask(mask);
    return 0666 & ~mask;
}

/// Writes, brings to the disk and closes. gives 0 or errno
int fill(int file, std::string_view bytes) {
    int error = 0;
    while (error == 0 && !bytes.empty()) {
        const ssize_t written = ::write(file, bytes.data(), bytes.size());
        if (written >= 0)
            bytes.remove_prefix(static_cast<std::size_t>(written));
        else if (errno != EINTR)
            error = errno;
    }
    // A place that cannot be brought to the disk (a pipe, some network folders) says EINVAL; that is no loss.
    if (error == 0 && ::fsync(file) != 0 && errno != EINVAL && errno != ENOTSUP) error = errno;
    if (::close(file) != 0 && error == 0) error = errno;
    return error;
}

/// A file under its passing name; gone again unless it has taken its place.
class Passing {
  public:
    explicit Passing(const Output& output) : target_(output.path) {
        if (fs::is_directory(target_)) {
            trouble_ = "there is a folder of that name";
            return;
        }
        std::string name = (folder_of(target_) / ".rayfleck.XXXXXX").string();
        const int file = ::mkostemp(name.data(), O_CLOEXEC);
        if (file < 0) {
            trouble_ = std::strerror(errno);
            return;
        }
        name_ = name;
        ::fchmod(file, mode_for(target_));
        if (const int error = fill(file, output.bytes)) trouble_ = std::strerror(error);
    }
    Passing(Passing&& other) noexcept
        : target_(std::move(other.target_)), name_(std::exchange(other.name_, {})),
          trouble_(std::move(other.trouble_)) {}
    Passing& operator=(Passing&&) = delete;
    ~Passing() {
        if (!name_.empty()) ::unlink(name_.c_str());
    }

    const std::string& trouble() const { return trouble_; }
    const fs::path& target() const { return target_; }
    /// gives  0 or errno
    int take_place() {
        if (::rename(name_.c_str(), target_.c_str()) != 0) return errno;
        name_.clear();
        return 0;
    }

  private:
    fs::path target_;
    std::string name_;
    std::string trouble_;
};

/// Brings the names in a folder to the disk. Where that is not possible, nothing is lost but time after a
/// power cut.
void settle(const fs::path& folder) {
    const int handle = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (handle < 0) return;
    ::fsync(handle);
    ::close(handle);
}

} // namespace

std::optional<std::string> replace(const std::vector<Output>& outputs) {
    std::vector<Passing> passing;
    passing.reserve(outputs.size());
    for (const Output& output : outputs) {
        passing.emplace_back(output);
        if (!passing.back().trouble().empty()) return cannot_write(output.path, passing.back().trouble());
    }
    for (Passing& file : passing)
        if (const int error = file.take_place()) return cannot_write(file.target(), std::strerror(error));
    if (!outputs.empty()) settle(folder_of(outputs.front().path));
    return std::nullopt;
}

std::optional<std::string> create(const Output& output) {
    const int file = ::open(output.path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (file < 0)
        return cannot_write(output.path, errno == EEXIST ? "it is there already" : std::strerror(errno));
    if (const int error = fill(file, output.bytes)) {
        ::unlink(output.path.c_str());
        return cannot_write(output.path, std::strerror(error));
    }
    settle(folder_of(output.path));
    return std::nullopt;
}

std::optional<std::string> make_folder(const fs::path& folder) {
    std::error_code error;
    if (fs::is_directory(folder, error)) return std::nullopt;
    if (fs::exists(folder, error)) return fmt::format("{} is not a folder", folder.string());
    fs::create_directories(folder, error);
    if (error) return fmt::format("cannot make the folder {}: {}", folder.string(), error.message());
    return std::nullopt;
}

} // namespace rayfleck::commands
