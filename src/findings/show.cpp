// Findings for the terminal.
//
//     table.fleck:12:8: error: 'runs acros': did you mean 'across'? [near-word]
//       12 |   runs acros
//          |        ^^^^^
//          = limit: ...
//          = mend: ...
//
// The marker is placed by columns as a terminal shows them; tabs of the source line are widened to blanks so
// that both lines agree. Bytes that would steer the terminal (control characters) are shown as `?`: a text
// from elsewhere must not recolour or clear the reader's screen. Of a long line only the stretch around the
// marker is shown.

#include "findings/show.hpp"

#include <algorithm>
#include <string_view>

namespace rayfleck::findings {
namespace {

constexpr int widest = 120; ///< columns of a source line that are shown

/// A text with its control characters made harmless and its tabs widened; line ends become blanks.
std::string harmless(std::string_view bytes) {
    std::string out;
    for (std::size_t i = 0; i < bytes.size(); ++i) {
        const auto c = static_cast<unsigned char>(bytes[i]);
        if (c == '\t') {
            out.append(static_cast<std::size_t>(8 - source::display_width(out) % 8), ' ');
        } else if (c == '\n' || c == '\r') {
            out += ' ';
        } else if (c < 0x20 || c == 0x7F) {
            out += '?';
        } else if (c == 0xC2 && i + 1 < bytes.size() && static_cast<unsigned char>(bytes[i + 1]) < 0xA0) {
            out += '?'; // C1 control characters
            ++i;
        } else {
            out += static_cast<char>(c);
        }
    }
    return out;
}

/// Begin of the letter after byte `i`.
std::size_t next_letter(std::string_view utf8, std::size_t i) {
    ++i;
    while (i < utf8.size() && (static_cast<unsigned char>(utf8[i]) & 0xC0) == 0x80) ++i;
    return i;
}

struct Paint {
    bool on = false;
    std::string operator()(const char* code, const std::string& text) const {
        return on ? "\x1b[" + std::string(code) + "m" + text + "\x1b[0m" : text;
    }
};

const char* colour_of(Severity severity) {
    switch (severity) {
    case Severity::note:
        return "1;36";
    case Severity::caution:
        return "1;33";
    case Severity::fault:
        return "1;31";
    case Severity::error:
        return "1;31";
    }
    return "0";
}

std::string place_text(source::Span span, const source::Texts& texts) {
    const source::Text& text = texts[span.file];
    const source::Place place = text.place(span.begin);
    return harmless(text.name()) + ":" + std::to_string(place.line) + ":" + std::to_string(place.column);
}

/// The source line of a span and the marker under it, each behind a gutter of the given width.
std::string marked_line(source::Span span, const source::Texts& texts, std::size_t gutter, const char* colour,
                        const std::string& label, const Paint& paint) {
    const source::Text& text = texts[span.file];
    const source::Place place = text.place(span.begin);
    std::string_view bytes = text.line(place.line);
    std::size_t start = text.start_of(place.line);
    if (place.line == 1 && bytes.starts_with("\xEF\xBB\xBF")) {
        bytes.remove_prefix(3);
        start += 3;
    }
    const std::size_t first = std::min(span.begin > start ? span.begin - start : 0, bytes.size());
    const std::size_t last = std::clamp(span.end > start ? span.end - start : 0, first, bytes.size());

    std::string shown = harmless(bytes.substr(0, first));
    int column = source::display_width(shown);
    std::string under = harmless(bytes.substr(0, last)).substr(shown.size());
    int marks = std::max(1, source::display_width(under));
    shown = harmless(bytes);

    if (source::display_width(shown) > widest) {
        // Cut on the left until the marker stands within the first third, then on the right.
        std::size_t cut = 0;
        int gone = 0;
        while (cut < shown.size() && column - gone > widest / 3) {
            const std::size_t next = next_letter(shown, cut);
            gone += source::display_width(std::string_view(shown).substr(cut, next - cut));
            cut = next;
        }
        shown.erase(0, cut);
        column -= gone;
        if (cut > 0) {
            shown.insert(0, "... ");
            column += 4;
        }
        std::size_t keep = 0;
        while (keep < shown.size() && source::display_width(std::string_view(shown).substr(0, keep)) < widest)
            keep = next_letter(shown, keep);
        if (keep < shown.size()) {
            shown.resize(keep);
            shown += " ...";
        }
        marks = std::clamp(marks, 1, std::max(1, widest - column));
    }

    const std::string number = std::to_string(place.line);
    std::string out =
        "  " + std::string(gutter - std::min(gutter, number.size()), ' ') + number + " | " + shown + "\n";
    out += "  " + std::string(gutter, ' ') + " | " + std::string(static_cast<std::size_t>(column), ' ');
    out += paint(colour, std::string(static_cast<std::size_t>(marks), '^'));
    if (!label.empty()) out += " " + label;
    return out + "\n";
}

} // namespace

std::string show(const Finding& finding, const source::Texts& texts, const Look& look) {
    const Paint paint{look.colour};
    const bool placed = finding.span.file >= 0 && finding.span.file < texts.count();
    std::string out = placed ? paint("1", place_text(finding.span, texts) + ":") + " " : std::string();
    out += paint(colour_of(finding.severity), name(finding.severity) + ":") + " " +
           harmless(finding.message) + " [" + finding.name + "]\n";
    if (look.brief) return out;

    std::size_t gutter = 1;
    if (placed) gutter = std::to_string(texts[finding.span.file].place(finding.span.begin).line).size();
    for (const Label& label : finding.labels)
        if (label.span.file >= 0 && label.span.file < texts.count())
            gutter =
                std::max(gutter, std::to_string(texts[label.span.file].place(label.span.begin).line).size());

    if (placed) out += marked_line(finding.span, texts, gutter, colour_of(finding.severity), "", paint);
    const std::string margin = "  " + std::string(gutter, ' ') + " ";
    for (const Label& label : finding.labels) {
        if (label.span.file < 0 || label.span.file >= texts.count()) continue;
        out += margin + "> " + place_text(label.span, texts) + "\n";
        out += marked_line(label.span, texts, gutter, "1;34", harmless(label.text), paint);
    }
    if (!finding.limit.empty()) out += margin + "= limit: " + harmless(finding.limit) + "\n";
    if (!finding.mend.empty()) out += margin + "= mend: " + harmless(finding.mend) + "\n";
    if (finding.accepted_because) out += margin + "= accepted: " + harmless(*finding.accepted_because) + "\n";
    return out;
}

std::string show(const Findings& findings, const source::Texts& texts, const Look& look) {
    std::string out;
    for (const Finding& finding : findings) {
        out += show(finding, texts, look);
        if (!look.brief) out += "\n";
    }
    return out;
}

} // namespace rayfleck::findings
