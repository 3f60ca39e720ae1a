#pragma once
// Sheets as one PDF file: a page per sheet in true size, text that can be searched, a table of contents,
// links.
//
// Same set, same bytes: no date is written unless given, and the file's identifier is a digest of the set.

#include <cstdint>
#include <optional>
#include <string>

#include "drawing/sheet.hpp"

namespace rayfleck::writers {

struct PdfManner {
    bool compressed = true;           ///< false keeps the pages readable, for tests
    std::optional<std::int64_t> date; ///< seconds since 1970-01-01 UTC, written as the date of making
};

/// The bytes of the file.
/// fails  PdfFailure (see pdf_file.hpp) when the set has no sheet, a sheet is smaller than 2 mm or larger
/// than 5 m, a
///        place lies off every possible page or is no number, or a link leads to no sheet
std::string write_pdf(const drawing::Set& set, const PdfManner& manner = {});

} // namespace rayfleck::writers
