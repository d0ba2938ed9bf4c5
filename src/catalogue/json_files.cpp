#include "catalogue/json_files.hpp"

#include <algorithm>
#include <charconv>
#include <fmt/format.h>
#include <fstream>
#include <iterator>
#include <optional>
#include <system_error>

namespace gangway::catalogue::detail {
namespace {

/// Steps through a text that is known to be JSON.
class Walker {
public:
    explicit Walker(std::string_view text) : text_(text) { skipBlanks(); }

    std::size_t at() const { return at_; }

    /// To the value of a key or the element of a number; false and no step when there is none.
    bool enter(std::string_view part) {
        const std::size_t start = at_;
        if (peek() == '{' && enterMember(part)) return true;
        if (peek() == '[' && enterElement(part)) return true;
        at_ = start;
        return false;
    }

private:
    char peek() const { return at_ < text_.size() ? text_[at_] : '\0'; }
    void skipBlanks() {
        while (at_ < text_.size() && std::string_view(" \t\r\n,:").contains(text_[at_]))
            ++at_;
    }
    std::string_view skipText() {
        const std::size_t start = ++at_;
        while (peek() != '"' && at_ < text_.size())
            at_ += peek() == '\\' ? 2 : 1;
        return text_.substr(start, at_++ - start);
    }
    void skipValue() {
        int depth = 0;
        do {
            const char c = peek();
            if (c == '"') {
                skipText();
            } else {
                depth += (c == '{' || c == '[') ? 1 : (c == '}' || c == ']') ? -1 : 0;
                ++at_;
                if (depth == 0 && c != '}' && c != ']') skipWord();
            }
            skipBlanks();
        } while (depth > 0 && at_ < text_.size());
    }
    void skipWord() { at_ = std::min(text_.find_first_of(" \t\r\n,]}", at_), text_.size()); }
    bool enterMember(std::string_view key) {
        ++at_;
        for (skipBlanks(); peek() == '"'; skipBlanks()) {
            const bool found = skipText() == key;
            skipBlanks();
            if (found) return true;
            skipValue();
        }
        return false;
    }
    bool enterElement(std::string_view part) {
        std::size_t index = 0;
        if (std::from_chars(part.data(), part.data() + part.size(), index).ec != std::errc{}) return false;
        ++at_;
        skipBlanks();
        for (; index > 0 && peek() != ']' && at_ < text_.size(); --index)
            skipValue();
        return index == 0 && peek() != ']';
    }

    std::string_view text_;
    std::size_t at_ = 0;
};

/// A part of a JSON pointer with its escapes resolved.
std::string unescaped(std::string_view part) {
    std::string plain;
    for (std::size_t i = 0; i < part.size(); ++i) {
        const bool escape = part[i] == '~' && i + 1 < part.size();
        plain += !escape ? part[i] : part[++i] == '1' ? '/' : '~';
    }
    return plain;
}

/// The library's words without its own number and place in front.
std::string reason(const Json::parse_error& error) {
    const std::string text = error.what();
    const std::size_t place = text.find(": ", text.find("column"));
    return place == std::string::npos ? text : text.substr(place + 2);
}

std::optional<JsonFile> readJsonFile(const std::filesystem::path& path, std::vector<std::string>& problems) {
    JsonFile file;
    file.name = path.filename().string();
    std::ifstream stream(path, std::ios::binary);
    file.text.assign(std::istreambuf_iterator<char>(stream), {});
    if (!stream) {
        problems.push_back(fmt::format("{}: the file can't be read", file.name));
        return std::nullopt;
    }
    try {
        file.content = Json::parse(file.text);
        return file;
    } catch (const Json::parse_error& error) {
        const TextPlace place = placeOfByte(file.text, error.byte == 0 ? 0 : error.byte - 1);
        problems.push_back(
            fmt::format("{}:{}:{}: not JSON: {}", file.name, place.line, place.column, reason(error)));
        return std::nullopt;
    }
}

} // namespace

std::expected<std::vector<JsonFile>, std::string> readJsonFiles(const std::filesystem::path& folder,
                                                                const std::string& what,
                                                                std::vector<std::string>& problems) {
    std::error_code failure;
    std::vector<std::filesystem::path> paths;
    for (std::filesystem::directory_iterator entry(folder, failure), end; !failure && entry != end;
         entry.increment(failure))
        if (entry->path().extension() == ".json") paths.push_back(entry->path());
    if (failure)
        return std::unexpected(fmt::format("{} folder '{}': {}", what, folder.string(), failure.message()));
    if (paths.empty())
        return std::unexpected(fmt::format("{} folder '{}': no *.json file in it", what, folder.string()));
    std::ranges::sort(paths);
    std::vector<JsonFile> files;
    for (const auto& path : paths)
        if (auto file = readJsonFile(path, problems)) files.push_back(std::move(*file));
    return files;
}

TextPlace placeOfByte(std::string_view text, std::size_t byte) {
    const std::string_view before = text.substr(0, std::min(byte, text.size()));
    const std::size_t line_start = before.rfind('\n') + 1; // npos + 1 is 0: the first line
    return {1 + static_cast<std::size_t>(std::ranges::count(before, '\n')), before.size() - line_start + 1};
}

TextPlace placeOf(std::string_view text, std::string_view pointer) {
    Walker walker(text);
    while (!pointer.empty()) {
        pointer.remove_prefix(1);
        const std::string_view part = pointer.substr(0, pointer.find('/'));
        pointer.remove_prefix(part.size());
        if (!walker.enter(unescaped(part))) break;
    }
    return placeOfByte(text, walker.at());
}

std::vector<std::string> lines(const JsonFile& file, const Mistakes& mistakes) {
    std::vector<std::string> all;
    for (const Mistake& mistake : mistakes) {
        const TextPlace place = placeOf(file.text, mistake.pointer);
        all.push_back(fmt::format("{}:{}:{}: {}{}{}", file.name, place.line, place.column, mistake.pointer,
                                  mistake.pointer.empty() ? "" : ": ", mistake.message));
    }
    return all;
}

} // namespace gangway::catalogue::detail
