#pragma once
// An audit of a PDF that is already written, from the file alone.
//
// It does not know the set of sheets, the layout or the roles of lines: it reads what `mutool trace` says is
// painted (strokes with width and dashes, fills, glyphs with place and size) and judges it by the rules of
// the drawing audit that can be judged so. What it leaves out: which views are shown, who refers to what.

#include <string>
#include <vector>

namespace rayfleck::testing {

struct PdfAudit {
    std::vector<std::string> faults; ///< page, rule, place; empty for a sound file
    /// How much there was to judge, so that a reader that finds nothing does not pass for a sound file.
    int pages = 0, strokes = 0, texts = 0, dimensions = 0, templates = 0;
};

/// file   path of the PDF
/// bytes  the same, for what the trace does not tell (viewer preferences)
/// trace  what `mutool trace` says of it
PdfAudit audit_pdf(const std::string& bytes, const std::string& trace);

} // namespace rayfleck::testing
