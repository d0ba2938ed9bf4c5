// Files of sheets: their names, and writing a whole file or nothing. Private to export/.
#pragma once

#include "drawing/drawing.hpp"

#include <expected>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace gangway::exporting {

/// Writes beside the file and renames over it; on failure nothing is left behind. The error is a sentence.
std::expected<void, std::string> writeFile(const std::filesystem::path& file, std::string_view bytes);

/// The file of each sheet in the folder, which is made where it is missing: its stem, or its number, with
/// everything but letters, digits, dot, dash and underscore made a dash. The error is a sentence: no drawing
/// face, a folder that can't be made, two sheets of one name.
std::expected<std::vector<std::filesystem::path>, std::string>
sheetFiles(const drawing::Drawing& drawing, const std::filesystem::path& folder, std::string_view ending);

/// The sentence for a drawing face that can't be read.
std::string missingFace();

} // namespace gangway::exporting
