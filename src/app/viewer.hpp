// The system's own viewer for a file, where it is looked at and printed.
#pragma once

#include <expected>
#include <filesystem>
#include <string>

namespace gangway::app {

/// Opens the file with xdg-open and waits a few seconds for it to say that it could not; viewers that stay in
/// the foreground count as opened. The error is a sentence on what is missing.
[[nodiscard]] std::expected<void, std::string> openInViewer(const std::filesystem::path& file);

} // namespace gangway::app
