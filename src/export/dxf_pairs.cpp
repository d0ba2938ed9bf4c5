#include "export/dxf_pairs.hpp"

#include "drawing/face.hpp"
#include "export/files.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <iterator>

namespace gangway::exporting {

namespace {

constexpr char32_t kReplacement = 0xFFFD;

bool printableAscii(char32_t code) {
    return code >= 0x20 && code < 0x7F;
}

bool control(char32_t code) {
    return code < 0x20 || (code >= 0x7F && code < 0xA0);
}

/// Windows code page 1252 from 80 to 9F, as Unicode's mapping table CP1252.TXT has it (from memory); 0:
/// unused.
constexpr std::array<char32_t, 32> kUpper1252{0x20AC, 0,      0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021,
                                              0x02C6, 0x2030, 0x0160, 0x2039, 0x0152, 0,      0x017D, 0,
                                              0,      0x2018, 0x2019, 0x201C, 0x201D, 0x2022, 0x2013, 0x2014,
                                              0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0,      0x017E, 0x0178};

/// The byte of the file's code page for a character; 0: it has none.
unsigned char codePageByte(char32_t code) {
    if (code >= 0xA0 && code <= 0xFF) return static_cast<unsigned char>(code);
    const auto found = std::ranges::find(kUpper1252, code);
    if (code < 0x80 || found == kUpper1252.end()) return 0;
    return static_cast<unsigned char>(0x80 + (found - kUpper1252.begin()));
}

void appendEscaped(std::string& out, char32_t code) {
    if (code > 0xFFFF) code = kReplacement;
    fmt::format_to(std::back_inserter(out), "\\U+{:04X}", static_cast<std::uint32_t>(code));
}

} // namespace

std::string dxfText(std::string_view utf8) {
    const std::u32string codes = drawing::codePoints(utf8);
    std::string out;
    for (std::size_t i = 0; i < codes.size(); ++i) {
        const char32_t code = codes[i];
        const char32_t before = i > 0 ? codes[i - 1] : U' ';
        const char32_t after = i + 1 < codes.size() ? codes[i + 1] : U' ';
        if (control(code)) continue;
        if (code == U'%' && (before == U'%' || after == U'%'))
            out += "%%%"; // one per cent sign; two would begin a code
        else if (code == U'^')
            out += "^ "; // alone it makes a control character of what follows
        else if (code == U'\\' && after != U' ')
            appendEscaped(out, code);
        else if (printableAscii(code))
            out += static_cast<char>(code);
        else if (const unsigned char byte = codePageByte(code); byte != 0)
            out += static_cast<char>(byte);
        else
            appendEscaped(out, code);
    }
    return out;
}

std::string dxfName(std::string_view name) {
    std::string out;
    for (const char c : name) {
        const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
        out += letter || c == '-' || c == '_' || c == '.' || c == ' ' ? c : '-';
    }
    return out.empty() ? "-" : out;
}

void DxfPairs::text(int code, std::string_view value) {
    fmt::format_to(std::back_inserter(bytes_), "{:>3}\n{}\n", code, value);
}

void DxfPairs::real(int code, double value) {
    std::string number = numberInFull(value);
    // A real without a point is taken for a whole number by some readers.
    if (number.find_first_of(".e") == std::string::npos) number += ".0";
    text(code, number);
}

void DxfPairs::integer(int code, long long value) {
    fmt::format_to(std::back_inserter(bytes_), "{:>3}\n{}\n", code, value);
}

void DxfPairs::handle(int code, DxfHandle value) {
    fmt::format_to(std::back_inserter(bytes_), "{:>3}\n{:X}\n", code, value);
}

void DxfPairs::flat(int code, drawing::Pt p) {
    real(code, p.x);
    real(code + 10, p.y);
}

void DxfPairs::point(int code, drawing::Pt p, double z) {
    flat(code, p);
    real(code + 20, z);
}

} // namespace gangway::exporting
