#pragma once
// The built program, run in a folder of its own that is gone afterwards; what it printed and how it ended.

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <string>

#include <sys/wait.h>
#include <unistd.h>

namespace rayfleck::testing {

namespace fs = std::filesystem;

struct Ran {
    int status = -1; ///< of the exit; 128 and more when a signal ended it
    std::string out, err;
};

inline std::string bytes_of(const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

class Folder {
  public:
    Folder() {
        std::string name = (fs::temp_directory_path() / "rayfleck-test.XXXXXX").string();
        path_ = ::mkdtemp(name.data());
        logs_ = path_.string() + ".logs";
        fs::create_directory(logs_);
    }
    ~Folder() {
        std::error_code ignored;
        fs::remove_all(path_, ignored);
        fs::remove_all(logs_, ignored);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    fs::path operator/(const std::string& name) const { return path_ / name; }
    void write(const std::string& name, const std::string& text) const {
        fs::create_directories((path_ / name).parent_path());
        std::ofstream(path_ / name, std::ios::binary) << text;
    }
    /// Names of everything in a folder, hidden ones too.
    std::set<std::string> names(const std::string& folder = ".") const {
        std::set<std::string> names;
        for (const fs::directory_entry& entry : fs::directory_iterator(path_ / folder))
            names.insert(entry.path().filename().string());
        return names;
    }

    /// Runs a line of shell in the folder; `$R` is the program.
    Ran shell(const std::string& line) const {
        const std::string command =
            "cd '" + path_.string() + "' && R='" RAYFLECK_PROGRAM "' && export R && { " + line + "\n} >'" +
            (logs_ / "out").string() + "' 2>'" + (logs_ / "err").string() + "' </dev/null";
        const int ended = std::system(command.c_str());
        Ran ran;
        ran.status = WIFEXITED(ended) ? WEXITSTATUS(ended) : 128 + WTERMSIG(ended);
        ran.out = bytes_of(logs_ / "out");
        ran.err = bytes_of(logs_ / "err");
        return ran;
    }
    /// Runs the program with these words.
    Ran run(const std::string& words) const { return shell("\"$R\" " + words); }

  private:
    fs::path path_, logs_;
};

inline bool holds(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

/// A board on its own: the smallest piece that compiles. `loose`, because nothing holds it.
inline const char* const board = R"(piece "Board"
units mm
climate 35% to 60% humidity at 20 C
part board
  wood cherry, quarter sawn
  size 20 x 100 x 400, runs across, face side up, loose
  left at 0, front at 0, bottom at 0
)";

/// Two boards in one place.
inline const char* const overlapping = R"(piece "Overlap"
units mm
climate 35% to 60% humidity at 20 C
part board
  wood cherry, quarter sawn
  size 20 x 100 x 400, runs across, face side up
  left at 0, front at 0, bottom at 0
part other
  wood cherry, quarter sawn
  size 20 x 100 x 400, runs across, face side up
  left at 0, front at 0, bottom at 0
)";

/// Lines that are no statement, on line 2 and line 4.
inline const char* const broken = R"(piece "Broken"
unitz mm
part board
  wod cherry
)";

} // namespace rayfleck::testing
