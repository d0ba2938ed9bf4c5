#include "sheets/sheet_names.hpp"

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

enum class Case { Lower, Kept };

std::string slug(const std::string& name, Case letters) {
    std::string out;
    for (const char c : name) {
        const bool upper = c >= 'A' && c <= 'Z';
        const bool plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || upper;
        if (plain)
            out += upper && letters == Case::Lower ? static_cast<char>(c - 'A' + 'a') : c;
        else if (!out.empty() && out.back() != '-')
            out += '-';
    }
    while (!out.empty() && out.back() == '-')
        out.pop_back();
    return out;
}

} // namespace

std::string sheetNumber(char kind, std::size_t number, std::size_t count, int part) {
    std::string text = fmt::format("{}-{:0{}}", kind, number, count > 99 ? 3 : 2);
    if (part > 1) text += fmt::format("-{}", part);
    return text;
}

std::string fileStem(const std::string& sheet_number, const std::string& room, const std::string& wall) {
    std::string stem = sheet_number;
    for (const std::string& part : {slug(room, Case::Lower), slug(wall, Case::Kept)})
        if (!part.empty()) stem += "-" + part;
    return stem;
}

} // namespace gangway::sheets
