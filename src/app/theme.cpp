#include "app/theme.hpp"

#include "drawing/drawing.hpp"

#include <cmath>
#include <filesystem>

#include <imgui_freetype.h>

namespace gangway::app {

namespace {
double linear(unsigned eight_bit) {
    const double c = eight_bit / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

double luminance(unsigned rgb) {
    return 0.2126 * linear((rgb >> 16U) & 255U) + 0.7152 * linear((rgb >> 8U) & 255U) +
           0.0722 * linear(rgb & 255U);
}

/// A face with every figure set on the advance of the widest one, so that columns of numbers line up.
ImFont* loadFace(const std::string& file, float em_pixels) {
    // ImGui sizes a face by its line height; Inter's is 1.21 em (its hhea table).
    const float pixels = std::round(em_pixels * 1.21F);
    static const ImWchar letters[] = {0x20,   0x2F,   0x3A,   0x17F,  0x2010, 0x2027, 0x2030, 0x203A,
                                      0x2190, 0x2193, 0x2212, 0x2212, 0x21A9, 0x21AA, 0};
    static const ImWchar figures[] = {'0', '9', 0};
    ImFontConfig config;
    config.OversampleH = 2;
    ImGuiIO& io = ImGui::GetIO();
    ImFont* font = io.Fonts->AddFontFromFileTTF(file.c_str(), pixels, &config, letters);
    config.MergeMode = true;
    // Inter's widest figure is 0.65 em.
    config.GlyphMinAdvanceX = std::round(em_pixels * 0.64F);
    config.GlyphMaxAdvanceX = config.GlyphMinAdvanceX;
    io.Fonts->AddFontFromFileTTF(file.c_str(), pixels, &config, figures);
    return font;
}
} // namespace

double contrast(unsigned a, unsigned b) {
    const double la = luminance(a);
    const double lb = luminance(b);
    return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

ImVec4 colour(unsigned rgb, float alpha) {
    return {static_cast<float>((rgb >> 16U) & 255U) / 255.0F, static_cast<float>((rgb >> 8U) & 255U) / 255.0F,
            static_cast<float>(rgb & 255U) / 255.0F, alpha};
}

ImU32 packed(unsigned rgb, float alpha) {
    return ImGui::ColorConvertFloat4ToU32(colour(rgb, alpha));
}

void applyColours(const Tokens& t, float scale) {
    ImGuiStyle style;
    style.WindowRounding = 0;
    style.ChildRounding = 6;
    style.FrameRounding = 6;
    style.PopupRounding = 8;
    style.ScrollbarRounding = 6;
    style.GrabRounding = 6;
    style.WindowPadding = {16, 16};
    style.FramePadding = {12, 7};
    style.ItemSpacing = {8, 8};
    style.ItemInnerSpacing = {8, 4};
    style.ScrollbarSize = 12;
    style.WindowBorderSize = 0;
    style.PopupBorderSize = 1;
    style.FrameBorderSize = 1;
    style.ScaleAllSizes(scale);
    auto set = [&style](ImGuiCol which, unsigned rgb, float alpha = 1) {
        style.Colors[which] = colour(rgb, alpha);
    };
    set(ImGuiCol_Text, t.ink);
    set(ImGuiCol_TextDisabled, t.soft_ink);
    set(ImGuiCol_WindowBg, t.paper);
    set(ImGuiCol_ChildBg, t.paper, 0);
    set(ImGuiCol_PopupBg, t.paper);
    set(ImGuiCol_Border, t.quiet);
    set(ImGuiCol_FrameBg, t.raised);
    set(ImGuiCol_FrameBgHovered, t.raised);
    set(ImGuiCol_FrameBgActive, t.raised);
    set(ImGuiCol_TitleBg, t.paper);
    set(ImGuiCol_TitleBgActive, t.paper);
    set(ImGuiCol_ScrollbarBg, t.paper, 0);
    set(ImGuiCol_ScrollbarGrab, t.quiet);
    set(ImGuiCol_ScrollbarGrabHovered, t.soft_ink);
    set(ImGuiCol_ScrollbarGrabActive, t.soft_ink);
    set(ImGuiCol_CheckMark, t.accent);
    set(ImGuiCol_Button, t.raised);
    set(ImGuiCol_ButtonHovered, t.quiet, 0.55F);
    set(ImGuiCol_ButtonActive, t.quiet);
    set(ImGuiCol_Header, t.accent, 0.14F);
    set(ImGuiCol_HeaderHovered, t.quiet, 0.45F);
    set(ImGuiCol_HeaderActive, t.quiet, 0.7F);
    set(ImGuiCol_Separator, t.quiet);
    set(ImGuiCol_TextSelectedBg, t.accent, 0.3F);
    set(ImGuiCol_NavHighlight, t.accent);
    set(ImGuiCol_ModalWindowDimBg, t.ink == kLight.ink ? t.ink : t.paper, 0.35F);
    set(ImGuiCol_DragDropTarget, t.accent);
    ImGui::GetStyle() = style;
}

std::string applyTheme(const Tokens& tokens, float scale, Fonts& fonts) {
    applyColours(tokens, scale);
    const std::string regular = drawing::screenFacePath();
    std::string strong = regular;
    if (const auto at = strong.rfind("Regular"); at != std::string::npos) strong.replace(at, 7, "SemiBold");
    std::error_code error;
    if (regular.empty() || !std::filesystem::exists(regular, error))
        return "the screen face Inter is not installed (Debian package fonts-inter)";
    if (!std::filesystem::exists(strong, error)) strong = regular;
    ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    atlas.Clear();
    atlas.FontBuilderIO = ImGuiFreeType::GetBuilderForFreeType();
    fonts.body = loadFace(regular, 15 * scale);
    fonts.strong = loadFace(strong, 15 * scale);
    fonts.large = loadFace(strong, 22 * scale);
    fonts.small = loadFace(regular, 13 * scale);
    return {};
}

} // namespace gangway::app
