// A text and its lines.
//
// Line starts are found once, when the text is made, so that a place is a binary search. A line ends at LF,
// at CR LF or at a lone CR (which some old editors write); the last line may have no end. A byte order mark
// at the start of the file stays in the bytes but takes no column.

#include "source/text.hpp"

#include <algorithm>
#include <utility>

namespace rayfleck::source {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

} // namespace

Span join(Span a, Span b) { return {a.file, std::min(a.begin, b.begin), std::max(a.end, b.end)}; }

Text::Text(std::string name, std::string bytes) : name_(std::move(name)), bytes_(std::move(bytes)) {
    starts_.push_back(0);
    for (std::size_t i = 0; i < bytes_.size(); ++i) {
        const bool lone_return = bytes_[i] == '\r' && (i + 1 == bytes_.size() || bytes_[i + 1] != '\n');
        if (bytes_[i] == '\n' || lone_return) starts_.push_back(i + 1);
    }
}

std::string_view Text::line(int line) const {
    if (line < 1 || line > line_count()) return {};
    const std::size_t begin = start_of(line);
    std::size_t end = line < line_count() ? start_of(line + 1) : bytes_.size();
    if (line < line_count()) {
        --end;
        if (bytes_[end] == '\n' && end > begin && bytes_[end - 1] == '\r') --end;
    }
    return std::string_view(bytes_).substr(begin, end - begin);
}

int Text::line_of(std::size_t offset) const {
    const auto after = std::upper_bound(starts_.begin(), starts_.end(), offset);
    return static_cast<int>(after - starts_.begin());
}

Place Text::place(std::size_t offset) const {
    offset = std::min(offset, bytes_.size());
    const int line = line_of(offset);
    std::size_t begin = start_of(line);
    if (line == 1 && bytes_.starts_with(byte_order_mark)) begin = byte_order_mark.size();
    if (offset < begin) return {line, 1};
    return {line, 1 + display_width(std::string_view(bytes_).substr(begin, offset - begin))};
}

int Texts::add(Text text) {
    texts_.push_back(std::move(text));
    return count() - 1;
}

} // namespace rayfleck::source
