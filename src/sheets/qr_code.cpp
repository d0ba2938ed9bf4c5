#include "sheets/qr_code.hpp"

#include <qrencode.h>

#include <memory>

namespace gangway::sheets {

namespace {
struct Release {
    void operator()(QRcode* code) const { QRcode_free(code); }
};
using Code = std::unique_ptr<QRcode, Release>;

Code encoded(const std::string& text) {
    return Code(QRcode_encodeString8bit(text.c_str(), 0, QR_ECLEVEL_Q));
}

/// Neighbouring rows lie over each other by this much of a module, so that no hairline stays between them.
constexpr double kOverRow = 0.04;
} // namespace

int qrModules(const std::string& text) {
    const Code code = encoded(text);
    return code == nullptr ? 0 : code->width;
}

void drawQr(Ink& ink, Pt corner, const std::string& text, double module_mm) {
    const Code code = encoded(text);
    if (code == nullptr) return;
    const int wide = code->width;
    const auto dark = [&](int row, int column) {
        return (code->data[static_cast<std::size_t>(row * wide + column)] & 1) != 0;
    };
    const double left = corner.x + kQrQuiet * module_mm;
    const double top = corner.y + (kQrQuiet + wide) * module_mm;
    for (int row = 0; row < wide; ++row)
        for (int column = 0; column < wide; ++column) {
            if (!dark(row, column)) continue;
            const int first = column;
            while (column + 1 < wide && dark(row, column + 1))
                ++column;
            ink.fill(Rect{left + first * module_mm, top - (row + 1 + kOverRow) * module_mm,
                          left + (column + 1) * module_mm, top - row * module_mm},
                     drawing::kBlack);
        }
}

} // namespace gangway::sheets
