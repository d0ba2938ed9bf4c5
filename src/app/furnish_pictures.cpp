// Small pictures of the palette: furniture from above in its usual size, openings and luminaires as on a
// plan.
#include "app/furnish_parts.hpp"
#include "app/panels.hpp"
#include "edit/furniture_edits.hpp"
#include "geometry/plan_outline.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gangway::app::form {

namespace {
using plan::Vec2;
constexpr float kTileHeight = 96;
constexpr std::size_t kColumns = 3;
constexpr float kBetween = 6;

float tileWidth(const State& state) {
    const auto many = static_cast<float>(kColumns);
    return std::floor((kPanelWidth * state.scale - (many - 1) * kBetween * state.scale - 14 * state.scale) /
                      many);
}

/// Outlines of a kind from above, the lower parts first.
const std::vector<std::vector<Vec2>>& outlines(State& state, const std::string& kind) {
    auto [entry, is_new] = state.furnish.pictures.try_emplace(kind);
    if (!is_new) return entry->second;
    const auto piece = edit::usualPiece(kind);
    if (!piece) return entry->second;
    auto tops = geometry::topOutlines(*piece);
    std::ranges::stable_sort(tops, {}, &geometry::TopOutline::top_mm);
    for (auto& top : tops)
        entry->second.push_back(std::move(top.hull_mm));
    return entry->second;
}

void polygon(ImDrawList& list, const std::vector<ImVec2>& corners, ImU32 fill, ImU32 ink, float thick) {
    const auto count = static_cast<int>(corners.size());
    list.AddConvexPolyFilled(corners.data(), count, fill);
    list.AddPolyline(corners.data(), count, ink, ImDrawFlags_Closed, thick);
}
} // namespace

bool tile(State& state, const std::string& place_name, const std::string& name, const std::string& help,
          bool chosen, const std::function<void(ImDrawList&, ImVec2, float)>& picture) {
    const float s = state.scale;
    const ImVec2 size{tileWidth(state), kTileHeight * s};
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const bool clicked = ImGui::InvisibleButton(place_name.c_str(), size);
    if (ImGui::IsItemVisible()) place(state, place_name);
    const bool hovered = ImGui::IsItemHovered();
    if (hovered) ImGui::SetTooltip("%s", help.c_str());
    if (!ImGui::IsItemVisible()) return clicked;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const Tokens& t = *state.tokens;
    const ImVec2 end{corner.x + size.x, corner.y + size.y};
    list.AddRectFilled(corner, end, packed(hovered ? t.quiet : t.raised, hovered ? 0.5F : 1.0F), 8 * s);
    list.AddRect(corner, end, packed(chosen || hovered ? t.accent : t.quiet), 8 * s, 0,
                 (chosen ? 2.0F : 1.0F) * s);
    picture(list, {corner.x + size.x / 2, corner.y + 36 * s}, 26 * s);
    ImGui::PushFont(state.fonts.small);
    const auto lines = linesWithin(*state.fonts.small, name, size.x - 12 * s, 1);
    const ImVec2 extent = ImGui::CalcTextSize(lines.front().c_str());
    list.AddText({corner.x + (size.x - extent.x) / 2, end.y - extent.y - 8 * s}, packed(t.ink),
                 lines.front().c_str());
    ImGui::PopFont();
    return clicked;
}

void nextTile(const State& state, std::size_t index) {
    if (index % kColumns != 0) ImGui::SameLine(0, kBetween * state.scale);
}

void piecePicture(State& state, ImDrawList& list, const std::string& kind, ImVec2 centre, float half) {
    const auto& parts = outlines(state, kind);
    double reach = 1;
    for (const auto& part : parts)
        for (const Vec2 p : part)
            reach = std::max({reach, std::abs(p.x), std::abs(p.y)});
    const float px = half / static_cast<float>(reach);
    for (const auto& part : parts) {
        std::vector<ImVec2> corners;
        for (const Vec2 p : part)
            corners.push_back(
                {centre.x + static_cast<float>(p.x) * px, centre.y - static_cast<float>(p.y) * px});
        polygon(list, corners, packed(state.tokens->paper), packed(state.tokens->ink), 1.1F * state.scale);
    }
}

namespace {
/// Strokes of a picture in parts of its half size, y downwards.
class Strokes {
public:
    Strokes(ImDrawList& list, ImVec2 centre, float half, ImU32 ink, float scale)
        : list_(&list), centre_(centre), half_(half), ink_(ink), scale_(scale) {}
    void line(float x0, float y0, float x1, float y1, float thick = 1.3F) {
        list_->AddLine(at(x0, y0), at(x1, y1), ink_, thick * scale_);
    }
    void box(float x0, float y0, float x1, float y1) {
        list_->AddRect(at(x0, y0), at(x1, y1), ink_, 0, 0, 1.3F * scale_);
    }
    void solid(float x0, float y0, float x1, float y1) { list_->AddRectFilled(at(x0, y0), at(x1, y1), ink_); }
    void circle(float x, float y, float radius) {
        list_->AddCircle(at(x, y), radius * half_, ink_, 28, 1.3F * scale_);
    }
    void dot(float x, float y, float radius) { list_->AddCircleFilled(at(x, y), radius * half_, ink_, 20); }
    /// A quarter of a circle from angle `from`, radians, clockwise on screen.
    void quarter(float x, float y, float radius, float from) {
        list_->PathArcTo(at(x, y), radius * half_, from, from + std::numbers::pi_v<float> / 2, 16);
        list_->PathStroke(ink_, 0, 1.0F * scale_);
    }

private:
    ImVec2 at(float x, float y) const { return {centre_.x + x * half_, centre_.y + y * half_}; }
    ImDrawList* list_;
    ImVec2 centre_;
    float half_;
    ImU32 ink_;
    float scale_;
};

void wallEnds(Strokes& draw) {
    draw.solid(-1, 0.42F, -0.6F, 0.66F);
    draw.solid(0.6F, 0.42F, 1, 0.66F);
}
} // namespace

void openingPicture(const State& state, ImDrawList& list, plan::Opening::Kind kind, ImVec2 centre,
                    float half) {
    using Kind = plan::Opening::Kind;
    Strokes draw(list, centre, half, packed(state.tokens->ink), state.scale);
    wallEnds(draw);
    switch (kind) {
    case Kind::HingedDoor:
        draw.line(-0.6F, 0.42F, -0.6F, -0.78F, 2);
        draw.quarter(-0.6F, 0.42F, 1.2F, -std::numbers::pi_v<float> / 2);
        return;
    case Kind::PocketDoor:
        draw.line(-0.95F, 0.54F, 0.1F, 0.54F, 2.4F);
        draw.line(0.1F, 0.54F, 0.6F, 0.54F, 0.8F);
        return;
    case Kind::SlidingDoor:
        draw.line(-0.6F, 0.49F, 0.1F, 0.49F, 2);
        draw.line(-0.1F, 0.6F, 0.6F, 0.6F, 2);
        return;
    case Kind::BarnDoor:
        draw.line(-1, 0.3F, 0.3F, 0.3F, 2.4F);
        draw.line(-1, 0.2F, 0.9F, 0.2F, 0.8F);
        return;
    case Kind::Window:
        draw.box(-0.6F, 0.42F, 0.6F, 0.66F);
        draw.line(-0.6F, 0.54F, 0.6F, 0.54F);
        return;
    case Kind::Hatch:
        draw.box(-0.6F, 0.42F, 0.6F, 0.66F);
        draw.line(-0.6F, 0.66F, 0.6F, 0.42F);
        return;
    case Kind::Plain:
        draw.line(-0.6F, 0.42F, 0.6F, 0.42F, 0.8F);
        draw.line(-0.6F, 0.66F, 0.6F, 0.66F, 0.8F);
        return;
    }
}

void lampPicture(const State& state, ImDrawList& list, plan::Luminaire::Kind kind, ImVec2 centre,
                 float half) {
    using Kind = plan::Luminaire::Kind;
    Strokes draw(list, centre, half, packed(state.tokens->ink), state.scale);
    const auto crossed = [&draw](float radius) {
        const float d = radius * std::numbers::sqrt2_v<float> / 2;
        draw.circle(0, 0, radius);
        draw.line(-d, -d, d, d);
        draw.line(-d, d, d, -d);
    };
    switch (kind) {
    case Kind::Ceiling:
        crossed(0.6F);
        return;
    case Kind::Wall:
        draw.solid(-0.8F, 0.45F, 0.8F, 0.6F);
        draw.circle(0, 0, 0.45F);
        return;
    case Kind::Pendant:
        draw.line(0, -1, 0, -0.3F);
        draw.line(-0.18F, -0.3F, 0.18F, -0.3F);
        draw.line(-0.18F, -0.3F, -0.65F, 0.5F);
        draw.line(0.18F, -0.3F, 0.65F, 0.5F);
        draw.line(-0.65F, 0.5F, 0.65F, 0.5F);
        return;
    case Kind::Recessed:
        draw.circle(0, 0, 0.5F);
        draw.dot(0, 0, 0.2F);
        return;
    case Kind::Linear:
        draw.box(-0.95F, -0.12F, 0.95F, 0.12F);
        draw.line(-0.75F, 0, 0.75F, 0);
        return;
    case Kind::UnderUnit:
        draw.box(-0.75F, -0.7F, 0.75F, 0.15F);
        draw.solid(-0.5F, 0.25F, 0.5F, 0.38F);
        return;
    case Kind::Floor:
        draw.line(0, -0.4F, 0, 0.85F);
        draw.line(-0.4F, 0.85F, 0.4F, 0.85F);
        draw.line(-0.25F, -0.9F, 0.25F, -0.9F);
        draw.line(-0.25F, -0.9F, -0.5F, -0.4F);
        draw.line(0.25F, -0.9F, 0.5F, -0.4F);
        draw.line(-0.5F, -0.4F, 0.5F, -0.4F);
        return;
    case Kind::Table:
        draw.line(0, 0.1F, 0, 0.6F);
        draw.line(-0.3F, 0.6F, 0.3F, 0.6F);
        draw.line(-0.3F, -0.55F, 0.3F, -0.55F);
        draw.line(-0.3F, -0.55F, -0.6F, 0.1F);
        draw.line(0.3F, -0.55F, 0.6F, 0.1F);
        draw.line(-0.6F, 0.1F, 0.6F, 0.1F);
        return;
    }
}

} // namespace gangway::app::form
