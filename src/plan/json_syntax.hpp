// Says in our own words why a text is no JSON: only run when the library has refused it.
// Private to src/plan.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace gangway::plan::json {

struct SyntaxProblem {
    std::size_t offset = 0; ///< byte in the text
    std::string message;    ///< what was found, what was expected, what to do
};

/// The first place where `text` breaks the grammar of RFC 8259; when this scan finds none, `fallback_offset`.
SyntaxProblem findSyntaxProblem(std::string_view text, std::size_t fallback_offset);

} // namespace gangway::plan::json
