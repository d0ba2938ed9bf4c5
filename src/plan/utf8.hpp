// UTF-8 by RFC 3629. Private to src/plan.
#pragma once

#include <cstddef>
#include <string_view>

namespace gangway::plan {

/// Bytes of the character that begins at `at` (Unicode, table 3-7, Well-Formed UTF-8 Byte Sequences); 0 when
/// there is none.
std::size_t utf8Length(std::string_view text, std::size_t at);

} // namespace gangway::plan
