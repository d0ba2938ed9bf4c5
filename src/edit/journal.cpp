// Where unsaved work is kept until it is saved, and how it is found again.
#include "edit/edit.hpp"
#include "plan/io.hpp"
#include "review/review.hpp"

#include <cstdlib>
#include <system_error>

namespace gangway::edit {
namespace {

/// XDG Base Directory Specification 0.8: a relative path in the variable is to be ignored.
std::expected<std::filesystem::path, std::string> stateFolder() {
    const auto absoluteFrom = [](const char* variable) {
        const char* value = std::getenv(variable);
        const std::filesystem::path path = value ? value : "";
        return path.is_absolute() ? path : std::filesystem::path();
    };
    if (const auto state = absoluteFrom("XDG_STATE_HOME"); !state.empty()) return state;
    if (const auto home = absoluteFrom("HOME"); !home.empty()) return home / ".local" / "state";
    return std::unexpected("unsaved work can't be kept: neither XDG_STATE_HOME nor HOME names a folder");
}

/// The file's name without its ending, short enough to leave room for the hash in a file name (255 bytes).
std::string stem(const std::filesystem::path& file) {
    constexpr std::string_view kEnding = ".plan.json";
    constexpr std::size_t kLongest = 100;
    std::string name = file.filename().string();
    if (name.ends_with(kEnding)) name.resize(name.size() - kEnding.size());
    if (name.size() > kLongest) name.resize(kLongest);
    return name;
}

/// One name for one file however it was reached: absolute, with links followed as far as it exists.
std::filesystem::path onePath(const std::filesystem::path& file) {
    std::error_code failure;
    std::filesystem::path absolute = std::filesystem::absolute(file, failure);
    if (failure) return file.lexically_normal();
    std::filesystem::path canonical = std::filesystem::weakly_canonical(absolute, failure);
    return failure ? absolute.lexically_normal() : canonical;
}

} // namespace

std::expected<std::filesystem::path, std::string> journalPath(const std::filesystem::path& file) {
    const auto folder = stateFolder();
    if (!folder) return folder;
    std::string name = "unsaved";
    if (!file.empty()) {
        constexpr std::size_t kDigits = 16;
        name = stem(file) + "-" + review::sha256(onePath(file).string()).substr(0, kDigits);
    }
    return *folder / "gangway" / "journal" / (name + ".plan.json");
}

std::filesystem::path journalFor(const std::filesystem::path& file) {
    const auto journal = journalPath(file);
    std::error_code failure;
    if (!journal || !std::filesystem::is_regular_file(*journal, failure)) return {};
    const auto kept = plan::readFile(*journal);
    if (!kept) return {};
    if (file.empty()) return *journal;
    // Compared as plans, not as bytes or times: a file written by hand reads the same in other bytes.
    const auto saved = plan::readFile(file);
    const bool same = saved && plan::write(saved->plan) == plan::write(kept->plan);
    return same ? std::filesystem::path() : *journal;
}

void discardJournal(const std::filesystem::path& file) {
    const auto journal = journalPath(file);
    std::error_code ignored; // a journal that stays is offered again, which loses nothing
    if (journal) std::filesystem::remove(*journal, ignored);
}

} // namespace gangway::edit
