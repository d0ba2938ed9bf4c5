#include "export/files.hpp"

#include "drawing/face.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <memory>
#include <set>
#include <unistd.h>

namespace gangway::exporting {

namespace {

struct FileDone {
    void operator()(std::FILE* file) const { std::fclose(file); }
};

bool writeAll(const std::filesystem::path& file, std::string_view bytes) {
    std::unique_ptr<std::FILE, FileDone> out(std::fopen(file.c_str(), "wb"));
    if (!out) return false;
    const bool whole = std::fwrite(bytes.data(), 1, bytes.size(), out.get()) == bytes.size() &&
                       std::fflush(out.get()) == 0 && fsync(fileno(out.get())) == 0;
    return std::fclose(out.release()) == 0 && whole;
}

std::string fileStem(const std::string& stem, const std::string& number) {
    std::string name = stem.empty() ? number : stem;
    if (name.empty()) name = "sheet";
    for (char& c : name) {
        const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
        const bool kept = letter || c == '-' || c == '_' || (c == '.' && &c != name.data());
        if (!kept) c = '-';
    }
    return name;
}

} // namespace

std::expected<void, std::string>
replaceFile(const std::filesystem::path& file,
            const std::function<std::string(const std::filesystem::path& part)>& fill) {
    std::filesystem::path part = file;
    part += fmt::format(".part-{}", getpid());
    std::error_code error;
    std::string why = fill(part);
    if (why.empty()) {
        std::filesystem::rename(part, file, error);
        if (!error) return {};
        why = error.message();
    }
    std::filesystem::remove(part, error);
    return std::unexpected(fmt::format("cannot write '{}': {}", file.string(), why));
}

std::expected<void, std::string> writeFile(const std::filesystem::path& file, std::string_view bytes) {
    return replaceFile(file, [&](const std::filesystem::path& part) -> std::string {
        return writeAll(part, bytes) ? "" : std::strerror(errno);
    });
}

double tidied(double value) {
    constexpr double kTidy = 1e6;
    const double rounded = std::round(value * kTidy) / kTidy;
    return rounded == 0 ? 0 : rounded;
}

std::string numberInFull(double value) {
    return fmt::format("{}", tidied(value));
}

std::expected<std::vector<std::filesystem::path>, std::string>
sheetFiles(const drawing::Drawing& drawing, const std::filesystem::path& folder, std::string_view ending) {
    if (!drawing::Face::drawingFace().loaded()) return std::unexpected(missingFace());
    std::error_code error;
    std::filesystem::create_directories(folder, error);
    if (!std::filesystem::is_directory(folder))
        return std::unexpected(
            fmt::format("cannot make the folder '{}': {}", folder.string(), error.message()));
    std::vector<std::filesystem::path> files;
    std::set<std::string> names;
    for (const drawing::Sheet& sheet : drawing.sheets) {
        const std::string name = fileStem(sheet.file_stem, sheet.number) + std::string(ending);
        if (!names.insert(name).second)
            return std::unexpected(
                fmt::format("two sheets would be written to '{}'", (folder / name).string()));
        files.push_back(folder / name);
    }
    return files;
}

std::string missingFace() {
    return fmt::format("the drawing face is missing: no readable font '{}'; install Debian's fonts-osifont",
                       drawing::drawingFacePath());
}

} // namespace gangway::exporting
