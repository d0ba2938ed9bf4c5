// The JSON files of a folder, and where in their text a value stands. Private to src/catalogue.
#pragma once

#include "catalogue/read_object.hpp"

#include <expected>
#include <filesystem>
#include <string_view>

namespace gangway::catalogue::detail {

struct JsonFile {
    std::string name; ///< without its folder
    std::string text;
    Json content;
};

/// Every *.json of a folder in the order of their names. Files that are no JSON are said in `problems` with
/// line and column and left out. `what` names the folder in messages: "catalogue".
std::expected<std::vector<JsonFile>, std::string> readJsonFiles(const std::filesystem::path& folder,
                                                                const std::string& what,
                                                                std::vector<std::string>& problems);

struct TextPlace {
    std::size_t line = 1;   ///< from 1
    std::size_t column = 1; ///< from 1, in bytes
};

TextPlace placeOfByte(std::string_view text, std::size_t byte);

/// Where the value that a JSON pointer (RFC 6901) leads to begins; of the last one on the way when it leads
/// nowhere. `text` must be JSON.
TextPlace placeOf(std::string_view text, std::string_view pointer);

/// A line for each mistake: "gb.json:12:5: /formats/0/pitch: ...".
std::vector<std::string> lines(const JsonFile& file, const Mistakes& mistakes);

} // namespace gangway::catalogue::detail
