#include "plan/io.hpp"

#include "plan/fields.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace gangway::plan {

using fields::kMaxBytes;

namespace {

Diagnostics wholeFile(std::string message) {
    return {{Level::Error, 0, 0, {}, std::move(message)}};
}

/// Closes a file descriptor when it goes out of scope.
class Descriptor {
public:
    explicit Descriptor(int number) : number_(number) {}
    ~Descriptor() {
        if (number_ >= 0) ::close(number_);
    }
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    int get() const { return number_; }

private:
    int number_;
};

std::string openProblem(const std::filesystem::path& file, int error) {
    if (error == ENOENT)
        return fmt::format("there is no file '{}'; check the name and the folder", file.string());
    if (error == EACCES)
        return fmt::format("'{}' may not be read by you; ask its owner for the right to read it",
                           file.string());
    return fmt::format("'{}' cannot be opened: {}", file.string(), std::strerror(error));
}

/// Why a file is not read at all, judged by what the file system says; empty when it may be.
std::string judgeFile(const std::filesystem::path& file, const struct stat& about) {
    if (S_ISDIR(about.st_mode))
        return fmt::format("'{}' is a folder; give a plan file in it, which ends in .plan.json",
                           file.string());
    if (!S_ISREG(about.st_mode))
        return fmt::format("'{}' is not an ordinary file; give a plan file", file.string());
    if (static_cast<std::size_t>(about.st_size) > kMaxBytes)
        return fmt::format("the file is {} MiB large; at most 256 MiB are read, so divide the plan",
                           static_cast<std::size_t>(about.st_size) / (std::size_t{1024} * 1024));
    return {};
}

} // namespace

std::expected<ReadResult, Diagnostics> readFile(const std::filesystem::path& file) {
    // O_NONBLOCK so that a pipe without a writer is refused instead of waited for.
    const Descriptor in(::open(file.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
    if (in.get() < 0) return std::unexpected(wholeFile(openProblem(file, errno)));
    struct stat about{};
    if (::fstat(in.get(), &about) != 0) return std::unexpected(wholeFile(openProblem(file, errno)));
    if (std::string message = judgeFile(file, about); !message.empty())
        return std::unexpected(wholeFile(std::move(message)));

    std::string text(static_cast<std::size_t>(about.st_size), '\0');
    std::size_t size = 0;
    while (size < text.size()) {
        const ssize_t got = ::read(in.get(), text.data() + size, text.size() - size);
        if (got < 0 && errno == EINTR) continue;
        if (got < 0)
            return std::unexpected(
                wholeFile(fmt::format("'{}' cannot be read: {}", file.string(), std::strerror(errno))));
        if (got == 0) break; // it became shorter meanwhile
        size += static_cast<std::size_t>(got);
    }
    text.resize(size);
    return read(text);
}

} // namespace gangway::plan
