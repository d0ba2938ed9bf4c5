// Files of sheets and tables: their names, writing a whole file or nothing, numbers in them. Private to
// export/.
#pragma once

#include "drawing/drawing.hpp"

#include <expected>
#include <filesystem>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace gangway::exporting {

/// Writes beside the file and renames over it; on failure nothing is left behind. The error is a sentence.
std::expected<void, std::string> writeFile(const std::filesystem::path& file, std::string_view bytes);

/// Has `fill` write a file beside this one, then renames it over; on failure nothing is left behind. What
/// `fill` returns, empty when all went well, is why it could not.
std::expected<void, std::string>
replaceFile(const std::filesystem::path& file,
            const std::function<std::string(const std::filesystem::path& part)>& fill);

/// Without the noise of sums such as 0.1 + 0.2: to a millionth, no "-0".
double tidied(double value);
/// The shortest digits that read back as the tidied number: "5780", "12.5".
std::string numberInFull(double value);

/// The file of each sheet in the folder, which is made where it is missing: its stem, or its number, with
/// everything but letters, digits, dot, dash and underscore made a dash. The error is a sentence: no drawing
/// face, a folder that can't be made, two sheets of one name.
std::expected<std::vector<std::filesystem::path>, std::string>
sheetFiles(const drawing::Drawing& drawing, const std::filesystem::path& folder, std::string_view ending);

/// The sentence for a drawing face that can't be read.
std::string missingFace();

} // namespace gangway::exporting
