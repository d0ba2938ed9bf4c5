// A small sheet with everything a display list can hold, and the outside tools that read it back.
#pragma once

#include "drawing/drawing.hpp"

#include <filesystem>
#include <string>

namespace gangway::testing {

/// A3 at 1:20: a frame, a line of 1 m, dimensions, a dashed plate, a fill with a hole, letters beyond ASCII.
drawing::Sheet sampleSheet(const std::string& number);
/// Two such sheets, dated 2026-03-01.
drawing::Drawing sampleDrawing();

/// Where this test program may write; made, and emptied of what `name` held before.
std::filesystem::path freshFolder(const std::string& name);

/// Standard output of a shell command; `status` gets its exit status.
std::string output(const std::string& command, int* status = nullptr);
std::string fileBytes(const std::filesystem::path& file);

} // namespace gangway::testing
