// What is wrong with a file: every problem with its place and what to do about it.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace gangway::plan {

enum class Level { Error, Warning };

struct Diagnostic {
    Level level = Level::Error;
    std::size_t line = 0;   ///< from 1; 0 when the problem is the file itself
    std::size_t column = 0; ///< from 1, in bytes
    std::string pointer;    ///< JSON pointer (RFC 6901); empty for the whole document
    std::string message;    ///< what, where, what was found, what to do
};

using Diagnostics = std::vector<Diagnostic>;

/// One line as compilers print it: "house.plan.json:412:18: error: /plates/7/setOut: 5230 is past ...".
std::string toLine(const std::string& file, const Diagnostic& diagnostic);

bool hasErrors(const Diagnostics& diagnostics);

} // namespace gangway::plan
