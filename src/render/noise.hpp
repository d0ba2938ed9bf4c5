// A tiling noise texture for procedural surfaces; its mipmaps keep patterns calm far away.
#pragma once

#include "render/gl_handles.hpp"

namespace gangway::render {

/// 256 x 256, repeating: r soft noise of four octaves, g white noise.
Texture makeNoiseTexture();

} // namespace gangway::render
