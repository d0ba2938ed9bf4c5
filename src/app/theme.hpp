// The look of the screen: one table of colour tokens for the light and the dark theme, sizes on an 8 px
// grid, the faces, and the few widgets that carry the identity.
#pragma once

#include <imgui.h>

#include <array>
#include <string>

namespace gangway::app {

/// Colours by meaning (design.md section 7), as 0xRRGGBB.
struct Tokens {
    unsigned paper = 0;    ///< panels
    unsigned raised = 0;   ///< fields and buttons on paper
    unsigned ink = 0;      ///< text
    unsigned soft_ink = 0; ///< secondary text, still 4.5:1 on paper
    unsigned quiet = 0;    ///< lines
    unsigned accent = 0;
    unsigned on_accent = 0; ///< text on accent, agreed and query
    unsigned agreed = 0;
    unsigned query = 0;
    unsigned fault = 0;
    unsigned stage = 0; ///< background of the stage
};

inline constexpr Tokens kLight{0xF6F2EA, 0xFFFDF8, 0x1E2A32, 0x55605F, 0xC9C2B4, 0xB05029,
                               0xFFFFFF, 0x0B6E5F, 0x8A5A00, 0x9E1B32, 0xE9E3D8};
inline constexpr Tokens kDark{0x1B2226, 0x273035, 0xF1ECE2, 0xB4B8B4, 0x46525A, 0xE58A5C,
                              0x14191C, 0x58C9B4, 0xE2AE4A, 0xF58A9C, 0x242C31};

/// WCAG 2.1 contrast ratio of two sRGB colours, 1 to 21.
double contrast(unsigned a, unsigned b);

ImVec4 colour(unsigned rgb, float alpha = 1);
ImU32 packed(unsigned rgb, float alpha = 1);

/// Faces in use; sizes in pixels at the monitor's scale.
struct Fonts {
    ImFont* body = nullptr;   ///< 15
    ImFont* strong = nullptr; ///< 15, semi-bold
    ImFont* large = nullptr;  ///< 22, semi-bold
    ImFont* small = nullptr;  ///< 13
};

/// Sets ImGui's style and loads Inter with equal-width figures; empty string or what is missing.
std::string applyTheme(const Tokens& tokens, float scale, Fonts& fonts);
void applyColours(const Tokens& tokens, float scale);

} // namespace gangway::app
