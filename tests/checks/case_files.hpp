#pragma once
// The files of cases, read: src/checks/<check>.fleck. How they are written is told in cases.cpp.

#include <string>
#include <vector>

namespace rayfleck::checks_tests {

struct Expected {
    int line = 0, column = 0; ///< from 1, within the case
    std::string severity, name, message;
    bool met = false;
};

struct Case {
    std::string name, see, text;
    int first_line = 1; ///< of the file
    std::vector<Expected> expected;
};

/// The file of a check's cases.
std::string case_file_of(std::string check);
std::vector<Case> cases_in(const std::string& path);

} // namespace rayfleck::checks_tests
