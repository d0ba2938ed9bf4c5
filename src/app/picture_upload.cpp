#include "app/picture_upload.hpp"

#include <epoxy/gl.h>

#include <algorithm>

namespace gangway::app {

void uploadPicture(unsigned& texture, const exporting::Bitmap& bitmap) {
    if (texture == 0) glGenTextures(1, &texture);
    glBindTexture(GL_TEXTURE_2D, texture);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
    glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, bitmap.width, bitmap.height, 0, GL_RGBA, GL_UNSIGNED_BYTE,
                 bitmap.rgba.data());
}

exporting::Bitmap straight(exporting::Bitmap bitmap) {
    for (std::size_t i = 0; i + 3 < bitmap.rgba.size(); i += 4) {
        const unsigned alpha = bitmap.rgba[i + 3];
        if (alpha == 0 || alpha == 255) continue;
        for (std::size_t k = 0; k < 3; ++k)
            bitmap.rgba[i + k] = static_cast<std::uint8_t>(std::min(255U, bitmap.rgba[i + k] * 255U / alpha));
    }
    return bitmap;
}

} // namespace gangway::app
