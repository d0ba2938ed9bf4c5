// Runs a command as a person would in a shell, and gives back what it printed and its exit code.
#pragma once

#include <sys/wait.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

namespace gangway::testing {

struct Ran {
    int code = -1;
    std::string out; ///< standard output
    std::string err; ///< standard error
};

inline std::string slurp(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

/// A folder of this test's own, emptied first.
inline std::filesystem::path freshFolder(const std::string& name) {
    const std::filesystem::path folder = std::filesystem::path(GANGWAY_OUT_DIR) / name;
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
    return folder;
}

inline Ran run(const std::string& command) {
    std::filesystem::create_directories(GANGWAY_OUT_DIR);
    const std::filesystem::path out =
        std::filesystem::path(GANGWAY_OUT_DIR) / ("stdout-" + std::to_string(::getpid()));
    const std::filesystem::path err =
        std::filesystem::path(GANGWAY_OUT_DIR) / ("stderr-" + std::to_string(::getpid()));
    const int status = std::system((command + " >'" + out.string() + "' 2>'" + err.string() + "'").c_str());
    Ran ran{WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status), slurp(out), slurp(err)};
    std::filesystem::remove(out);
    std::filesystem::remove(err);
    return ran;
}

} // namespace gangway::testing
