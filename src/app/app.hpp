// The window: stage, wall strip, docket and card over Dear ImGui, GLFW and the renderer.
#pragma once

#include <expected>
#include <filesystem>
#include <string>

namespace gangway::app {

struct Options {
    std::filesystem::path plan;   ///< file to open
    std::filesystem::path assets; ///< folder with catalogue, demo and fonts
    std::filesystem::path shaders;
    int width = 1440;
    int height = 900;
    bool plain = false;            ///< the picture grows no finer at rest, for slow graphics
    std::string user;              ///< name put beside answers; the system's user name when empty
    std::string plate;             ///< go to this plate at once (id or tag)
    std::filesystem::path picture; ///< write the drawn window here as PNG and close; empty: stay open
    std::filesystem::path
        report; ///< keep this file up to date with what the window shows (JSON); empty: none
};

/// Opens the window and stays until it is closed. The error says why no window could be opened.
[[nodiscard]] std::expected<void, std::string> run(const Options& options);

} // namespace gangway::app
