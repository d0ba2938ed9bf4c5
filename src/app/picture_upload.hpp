// A bitmap to a texture that ImGui draws.
#pragma once

#include "export/export.hpp"

namespace gangway::app {

/// Makes the texture when it is 0, else replaces what is in it.
void uploadPicture(unsigned& texture, const exporting::Bitmap& bitmap);

/// The same picture with colours that are not multiplied by their alpha, as ImGui blends them.
exporting::Bitmap straight(exporting::Bitmap bitmap);

} // namespace gangway::app
