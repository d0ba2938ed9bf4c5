#include "render/noise.hpp"

#include <array>
#include <cmath>
#include <cstdint>
#include <vector>

namespace gangway::render {

namespace {

constexpr int kSize = 256;

/// Mixes the bits of a place into a number from 0 to 1; the same on every machine.
float hashed(int x, int y, int layer) {
    auto h = static_cast<std::uint32_t>(x) * 0x9E3779B1u ^ static_cast<std::uint32_t>(y) * 0x85EBCA77u ^
             static_cast<std::uint32_t>(layer) * 0xC2B2AE3Du;
    h = (h ^ (h >> 15)) * 0x2C1B3C6Du;
    h = (h ^ (h >> 12)) * 0x297A2D39u;
    return static_cast<float>((h ^ (h >> 15)) & 0xffffffu) / static_cast<float>(0xffffff);
}

/// Value noise that repeats after `period` cells.
float soft(float x, float y, int period, int layer) {
    const auto smooth = [](float t) { return t * t * (3 - 2 * t); };
    const int column = static_cast<int>(std::floor(x));
    const int row = static_cast<int>(std::floor(y));
    const float s = smooth(x - static_cast<float>(column));
    const float t = smooth(y - static_cast<float>(row));
    const auto at = [&](int dx, int dy) {
        return hashed((column + dx) % period, (row + dy) % period, layer);
    };
    return std::lerp(std::lerp(at(0, 0), at(1, 0), s), std::lerp(at(0, 1), at(1, 1), s), t);
}

std::uint8_t byteOf(float value) {
    return static_cast<std::uint8_t>(std::lround(255 * std::fmin(std::fmax(value, 0.0f), 1.0f)));
}

} // namespace

Texture makeNoiseTexture() {
    std::vector<std::array<std::uint8_t, 2>> texels;
    texels.reserve(std::size_t{kSize} * kSize);
    for (int y = 0; y < kSize; ++y)
        for (int x = 0; x < kSize; ++x) {
            float sum = 0;
            float weight = 0.5f;
            for (int octave = 0; octave < 4; ++octave, weight *= 0.5f) {
                const int period = 8 << octave;
                const float cell = static_cast<float>(period) / kSize;
                sum += weight *
                       soft(static_cast<float>(x) * cell, static_cast<float>(y) * cell, period, octave + 1);
            }
            texels.push_back({byteOf(sum / 0.9375f), byteOf(hashed(x, y, 9))});
        }
    Texture texture = Texture::make();
    glBindTexture(GL_TEXTURE_2D, texture.name());
    glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
    glTexImage2D(GL_TEXTURE_2D, 0, GL_RG8, kSize, kSize, 0, GL_RG, GL_UNSIGNED_BYTE, texels.data());
    glPixelStorei(GL_UNPACK_ALIGNMENT, 4);
    glGenerateMipmap(GL_TEXTURE_2D);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR_MIPMAP_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
    return texture;
}

} // namespace gangway::render
