// The window: stage, wall strip, docket and card over Dear ImGui, GLFW and the renderer.
#pragma once

#include <expected>
#include <filesystem>
#include <string>

namespace gangway::app {

struct Options {
    std::filesystem::path plan;    ///< file to open
    std::filesystem::path assets;  ///< folder with catalogue, demo and fonts
    std::filesystem::path shaders;
    int width = 1440;
    int height = 900;
    std::string user;              ///< name put beside answers; the system's user name when empty
    /// Where to write machine-readable events (one JSON line each) for window tests; empty: nowhere.
    std::filesystem::path event_log;
};

/// Opens the window and stays until it is closed. The error says why no window could be opened.
[[nodiscard]] std::expected<void, std::string> run(const Options& options);

} // namespace gangway::app
