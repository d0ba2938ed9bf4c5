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

/// How a length without a unit is meant.
struct BareLength {
    double unit_mm = 1; ///< what a bare number counts
    /// The inch mark may be left out after feet ("3'-6", "3' 6 1/2") and after a fraction ("6 1/2"). A minus
    /// between feet and inches then has a space before it ("3' - 6").
    bool inches = false;
};
/// The same sums with bare numbers meant so. "2*6" of bare inches is 12 inches.
[[nodiscard]] std::expected<double, std::string> parseLength(std::string_view text, BareLength bare);

} // namespace gangway::edit
