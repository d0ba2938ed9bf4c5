// Lengths as people type them: "1200+71/2", "45 cm", "3'-5 5/16\"", "1.05 m".
#pragma once

#include <expected>
#include <string>
#include <string_view>

namespace gangway::edit {

/// A typed length in mm. Bare numbers are mm; units mm, cm, m, ', " bind to the number before them; + - * /
/// and brackets as in sums; a space joins feet and inches and an inch fraction ("5' 6 7/16\""). The error
/// says what was not understood and where. 1 in = 25.4 mm exactly (international inch).
[[nodiscard]] std::expected<double, std::string> parseLength(std::string_view text);

} // namespace gangway::edit
