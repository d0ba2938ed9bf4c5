// Small helps for tests with files.
#pragma once

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <string_view>

namespace gangway::plan::testing {

inline std::string slurp(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

inline void spill(const std::filesystem::path& file, std::string_view bytes) {
    std::ofstream(file, std::ios::binary) << bytes;
}

/// An empty folder of its own for a test, below the build tree.
inline std::filesystem::path freshFolder(const std::string& name) {
    const std::filesystem::path folder = std::filesystem::path(GANGWAY_OUT_DIR) / "plan" / name;
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
    return folder;
}

inline std::filesystem::path fixtures() {
    return std::filesystem::path(GANGWAY_TESTS_DIR) / "plan";
}

/// The text with the first `from` in it replaced.
inline std::string replaced(std::string text, std::string_view from, std::string_view to) {
    const std::size_t at = text.find(from);
    if (at != std::string::npos) text.replace(at, from.size(), to);
    return text;
}

} // namespace gangway::plan::testing
