#include "app/viewer.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <chrono>
#include <cstring>
#include <optional>
#include <thread>

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

namespace gangway::app {

namespace {

constexpr auto kPatience = std::chrono::seconds(4); // xdg-open has found out by then what it can't do
constexpr auto kBetweenLooks = std::chrono::milliseconds(30);

/// The program's process, with a session of its own so that it outlives this one; 0 and errno when there is
/// none.
pid_t spawnViewer(const std::string& file) {
    posix_spawn_file_actions_t files;
    posix_spawnattr_t attributes;
    posix_spawn_file_actions_init(&files);
    posix_spawnattr_init(&attributes);
    for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO})
        posix_spawn_file_actions_addopen(&files, stream, "/dev/null", O_RDWR, 0);
    posix_spawnattr_setflags(&attributes, POSIX_SPAWN_SETSID);
    std::string program = "xdg-open";
    std::string argument = file;
    char* const words[] = {program.data(), argument.data(), nullptr};
    pid_t process = 0;
    const int failed = posix_spawnp(&process, program.c_str(), &files, &attributes, words, environ);
    posix_spawnattr_destroy(&attributes);
    posix_spawn_file_actions_destroy(&files);
    errno = failed;
    return failed == 0 ? process : 0;
}

/// Its exit code; nullopt while it still runs after the wait.
std::optional<int> exitOf(pid_t process) {
    const auto until = std::chrono::steady_clock::now() + kPatience;
    while (std::chrono::steady_clock::now() < until) {
        int status = 0;
        if (::waitpid(process, &status, WNOHANG) == process)
            return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
        std::this_thread::sleep_for(kBetweenLooks);
    }
    return std::nullopt;
}

/// Why no process was made.
std::string whyNone(int error) {
    if (error == ENOENT) return "xdg-open is not installed on this computer (Debian package xdg-utils)";
    return fmt::format("xdg-open could not be started: {}", std::strerror(error));
}

/// What xdg-open means by its exit code (xdg-utils, xdg-open(1)).
const char* reason(int code) {
    constexpr int kNoFile = 2;
    constexpr int kNoTool = 3;
    if (code == kNoFile) return "the file is not there any more";
    if (code == kNoTool) return "no program that opens PDF files was found on this computer";
    return "the program that opens PDF files could not be started";
}

} // namespace

std::expected<void, std::string> openInViewer(const std::filesystem::path& file) {
    const pid_t process = spawnViewer(std::filesystem::absolute(file).string());
    if (process == 0) return std::unexpected(whyNone(errno));
    const auto code = exitOf(process);
    if (!code) {
        // Whenever the viewer is closed, nothing is left of its process.
        std::thread([process] { ::waitpid(process, nullptr, 0); }).detach();
        return {};
    }
    if (*code != 0) return std::unexpected(fmt::format("{}", reason(*code)));
    return {};
}

} // namespace gangway::app
