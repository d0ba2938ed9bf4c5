// A QR code (ISO/IEC 18004) as fills on paper.
#pragma once

#include "sheets/canvas.hpp"

#include <string>

namespace gangway::sheets {

/// Least size of a module that a telephone reads off a copy (common practice, no source).
inline constexpr double kQrModule = 0.8;
inline constexpr int kQrQuiet = 4; ///< clear modules around a code: ISO/IEC 18004, from memory

/// Modules along one side, without the quiet zone; 0 when the text is too long for a code.
int qrModules(const std::string& text);
/// Draws the code with the quiet zone's lower left corner at `corner`; error correction Q, so that a quarter
/// of it may be soiled. Nothing for a text that is too long.
void drawQr(Ink& ink, Pt corner, const std::string& text, double module_mm);

} // namespace gangway::sheets
