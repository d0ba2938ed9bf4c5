// Numbers and file names of sheets.
#pragma once

#include <cstddef>
#include <string>

namespace gangway::sheets {

/// "E-07" for sheet 7 of up to 99 walls, "E-007" of more; a wall's second sheet is "E-07-2". `kind` is its
/// letter.
std::string sheetNumber(char kind, std::size_t number, std::size_t count, int part);

/// "E-07-living-room-A": letters and figures of ASCII kept in lower case, anything else becomes one hyphen;
/// the wall keeps its letter case.
std::string fileStem(const std::string& sheet_number, const std::string& room, const std::string& wall);

} // namespace gangway::sheets
