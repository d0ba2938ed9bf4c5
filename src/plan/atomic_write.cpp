#include "plan/io.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace gangway::plan {

namespace {

namespace fs = std::filesystem;

/// A file being written beside its target; deleted again unless it was renamed over it.
class TemporaryFile {
public:
    explicit TemporaryFile(const fs::path& target)
        : name_((target.parent_path() / pattern(target)).string()) {
        number_ = ::mkostemp(name_.data(), O_CLOEXEC);
        error_ = number_ < 0 ? errno : 0;
    }
    ~TemporaryFile() {
        if (number_ >= 0) ::close(number_);
        if (exists()) ::unlink(name_.c_str());
    }
    TemporaryFile(const TemporaryFile&) = delete;
    TemporaryFile& operator=(const TemporaryFile&) = delete;

    bool exists() const { return error_ == 0 && !renamed_; }
    int error() const { return error_; }

    /// 0, or errno.
    int write(std::string_view bytes) {
        while (!bytes.empty()) {
            const ssize_t written = ::write(number_, bytes.data(), bytes.size());
            if (written < 0 && errno == EINTR) continue;
            if (written < 0) return errno;
            bytes.remove_prefix(static_cast<std::size_t>(written));
        }
        return 0;
    }

    /// Gives the new file the rights of the old one, or those a new file of this user has.
    int setRights(const fs::path& target) {
        struct stat old{};
        if (::stat(target.c_str(), &old) == 0) {
            // Handing a file to its old owner needs rights one may not have; then it is ours, which is no
            // loss.
            if (::fchown(number_, old.st_uid, old.st_gid) != 0) errno = 0;
            return ::fchmod(number_, old.st_mode & 07777) == 0 ? 0 : errno;
        }
        const mode_t mask = ::umask(0);
        ::umask(mask);
        return ::fchmod(number_, 0666 & ~mask) == 0 ? 0 : errno;
    }

    /// Flushes to the disk, then takes the target's place.
    int replace(const fs::path& target) {
        if (::fsync(number_) != 0) return errno;
        if (::rename(name_.c_str(), target.c_str()) != 0) return errno;
        renamed_ = true;
        return 0;
    }

private:
    static std::string pattern(const fs::path& target) {
        return fmt::format(".{}.XXXXXX", target.filename().string());
    }

    std::string name_;
    int number_ = -1;
    int error_ = 0;
    bool renamed_ = false;
};

/// The file that is really meant when `file` is a symbolic link, even one to a file not there yet.
fs::path behindLinks(fs::path file) {
    constexpr int kMostLinks = 40; // as the kernel follows
    for (int i = 0; i < kMostLinks; ++i) {
        std::error_code error;
        if (!fs::is_symlink(fs::symlink_status(file, error))) break;
        const fs::path to = fs::read_symlink(file, error);
        if (error) break;
        file = to.is_absolute() ? to : file.parent_path() / to;
    }
    return file;
}

std::string because(int error, const fs::path& file, const fs::path& folder) {
    const std::string name = file.string();
    switch (error) {
    case ENOENT:
        return fmt::format("'{}' cannot be written: there is no folder '{}'; make it or choose another", name,
                           folder.string());
    case ENOTDIR:
        return fmt::format("'{}' cannot be written: '{}' is no folder; choose another place", name,
                           folder.string());
    case EACCES:
    case EPERM:
        return fmt::format(
            "'{}' cannot be written: you may not write in folder '{}'; choose another place or ask its "
            "owner",
            name, folder.string());
    case EROFS:
        return fmt::format("'{}' cannot be written: folder '{}' is on a read-only disk; choose another place",
                           name, folder.string());
    case ENOSPC:
    case EDQUOT:
        return fmt::format(
            "'{}' cannot be written: the disk is full; free some space and try again, the old file is "
            "untouched",
            name);
    case EFBIG:
        return fmt::format(
            "'{}' cannot be written: it would be larger than files may be there; choose another place", name);
    default:
        return fmt::format("'{}' cannot be written: {}; the old file is untouched", name,
                           std::strerror(error));
    }
}

/// Why the target itself bars writing; empty when it does not.
std::string judgeTarget(const fs::path& file, const fs::path& target) {
    if (file.filename().empty()) return fmt::format("'{}' is no file name; add one", file.string());
    struct stat about{};
    if (::stat(target.c_str(), &about) != 0) return {};
    if (S_ISDIR(about.st_mode)) return fmt::format("'{}' is a folder; give a file name in it", file.string());
    if (!S_ISREG(about.st_mode))
        return fmt::format("'{}' is not an ordinary file; choose another name", file.string());
    // A rename would step over the write protection that somebody set on purpose.
    if (::access(target.c_str(), W_OK) != 0)
        return fmt::format("'{}' is write-protected; save under another name or take the protection off",
                           file.string());
    return {};
}

} // namespace

std::expected<void, std::string> writeBytesAtomically(std::string_view bytes,
                                                      const std::filesystem::path& file) {
    const fs::path target = behindLinks(file);
    if (std::string message = judgeTarget(file, target); !message.empty())
        return std::unexpected(std::move(message));
    const fs::path folder = target.parent_path().empty() ? fs::path(".") : target.parent_path();

    TemporaryFile temporary(target);
    int error = temporary.error();
    if (error == 0) error = temporary.write(bytes);
    if (error == 0) error = temporary.setRights(target);
    if (error == 0) error = temporary.replace(target);
    if (error != 0) return std::unexpected(because(error, file, folder));

    // So that the new name survives a power cut; where a file system cannot do this, nothing is lost but
    // that.
    if (const int directory = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC); directory >= 0) {
        if (::fsync(directory) != 0) errno = 0;
        ::close(directory);
    }
    return {};
}

} // namespace gangway::plan
