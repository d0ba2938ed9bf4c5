// Numbers as plan files and messages hold them. Private to src/plan.
#pragma once

#include <string>

namespace gangway::plan {

/// The shortest text that reads back as exactly this number: no exponent, no -0, no point for whole
/// numbers; "null" for what JSON has no number for (NaN and infinities).
std::string numberText(double value);

/// For messages: to a tenth of a mm, which is finer than anybody sets out.
std::string shownNumber(double value);

} // namespace gangway::plan
