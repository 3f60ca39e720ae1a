// See case_files.hpp.

#include "case_files.hpp"

#include <algorithm>
#include <regex>

#include "studied.hpp"

namespace rayfleck::checks_tests {

std::string case_file_of(std::string check) {
    std::replace(check.begin(), check.end(), '-', '_');
    return std::string(RAYFLECK_ROOT) + "/src/checks/" + check + ".fleck";
}

std::vector<Case> cases_in(const std::string& path) {
    static const std::regex head("^# --- ([a-z0-9-]+)$"), see("^# See: (.+)$"),
        mark("^(#(?=<)| *# *)(<|\\^+) (note|caution|fault|error) ([a-z-]+)(?:: (.*))?$");
    std::vector<Case> cases;
    int number = 0, in_case = 0, marked = 0;
    for (const std::string& line : lines_of(bytes_of(path))) {
        ++number;
        std::smatch found;
        if (std::regex_match(line, found, head)) {
            cases.push_back({});
            cases.back().name = found[1];
            cases.back().first_line = number + 1;
            in_case = 0;
            continue;
        }
        if (cases.empty()) continue;
        Case& one = cases.back();
        ++in_case;
        one.text += line + "\n";
        if (std::regex_match(line, found, see))
            one.see = found[1];
        else if (std::regex_match(line, found, mark))
            one.expected.push_back({marked, found[2] == "<" ? 1 : static_cast<int>(found.length(1)) + 1,
                                    found[3], found[4], found[5]});
        else
            marked = in_case;
    }
    return cases;
}

} // namespace rayfleck::checks_tests
