#pragma once
// A text and all that it names, read and parsed for a test: depth first, each once, as the command line does,
// but from wherever the test has the bytes.

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "findings/finding.hpp"
#include "piece/elaborate.hpp"
#include "source/text.hpp"

namespace rayfleck::testing {

/// The bytes of a text by the name that a piece gives it; nothing for a text that is not to be read.
using BytesOf = std::function<std::optional<std::string>(const std::string&)>;

/// Adds the text of that name and those it names.
void read(source::Texts& texts, piece::Project& project, findings::Findings& findings,
          const std::string& name, const BytesOf& bytes_of);

/// Bytes of a file of samples/; nothing when there is none.
std::optional<std::string> bytes_of_sample(const std::string& name);

/// File names of all pieces in samples/, sorted; the shop file is none.
std::vector<std::string> sample_files();

} // namespace rayfleck::testing
