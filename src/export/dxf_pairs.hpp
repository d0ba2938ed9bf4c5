// The lines a DXF file is made of: a group code and a value each. Private to export/.
#pragma once

#include "drawing/drawing.hpp"

#include <cstdint>
#include <string>
#include <string_view>

namespace gangway::exporting {

/// Written in hexadecimal; 0 is nobody's.
using DxfHandle = std::uint32_t;

/// Any text as the code page of AC1015 holds it: UTF-8 in, bytes of ANSI_1252 out, other characters as
/// \U+XXXX (those beyond four digits as the replacement character), control characters left out, %% ^ and \U+ kept from
/// being read as codes.
std::string dxfText(std::string_view utf8);

/// A name for a table of the file: letters, digits, dot, dash, underscore and space, the rest made a dash;
/// never empty.
std::string dxfName(std::string_view name);

/// Collects pairs. Reals are written to a millionth.
class DxfPairs {
public:
    /// As it is: dxfText and dxfName make it fit.
    void text(int code, std::string_view value);
    void real(int code, double value);
    void integer(int code, long long value);
    void handle(int code, DxfHandle value);
    /// x under `code`, y under code + 10.
    void flat(int code, drawing::Pt p);
    /// With z under code + 20.
    void point(int code, drawing::Pt p, double z = 0);
    void append(const DxfPairs& more) { bytes_ += more.bytes_; }

    const std::string& bytes() const { return bytes_; }

private:
    std::string bytes_;
};

} // namespace gangway::exporting
