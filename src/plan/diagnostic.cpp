#include "plan/diagnostic.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gangway::plan {

std::string toLine(const std::string& file, const Diagnostic& diagnostic) {
    std::string line = file;
    if (diagnostic.line > 0) line += fmt::format(":{}:{}", diagnostic.line, diagnostic.column);
    line += diagnostic.level == Level::Error ? ": error: " : ": warning: ";
    if (!diagnostic.pointer.empty()) line += diagnostic.pointer + ": ";
    return line + diagnostic.message;
}

bool hasErrors(const Diagnostics& diagnostics) {
    return std::ranges::any_of(diagnostics, [](const Diagnostic& d) { return d.level == Level::Error; });
}

} // namespace gangway::plan
