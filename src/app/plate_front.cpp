#include "app/plate_front.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace gangway::app {

namespace {
using catalogue::FrontShape;

ImVec2 at(ImVec2 centre, float x, float y) {
    return {centre.x + x, centre.y + y};
}

unsigned channel(unsigned rgb, unsigned shift) {
    return (rgb >> shift) & 255U;
}

bool isDark(unsigned rgb) {
    return channel(rgb, 16) * 2 + channel(rgb, 8) * 5 + channel(rgb, 0) < 8 * 88;
}

/// Parses "#RRGGBB"; a warm white for anything else.
unsigned rgbOf(const std::string& text) {
    if (text.size() != 7 || text[0] != '#') return 0xF2F0EB;
    return static_cast<unsigned>(std::strtoul(text.c_str() + 1, nullptr, 16));
}

/// A rectangle with round corners as points, turned about its centre.
std::vector<ImVec2> rectangle(const FrontShape& shape, ImVec2 centre, float px) {
    const double angle = shape.turn_deg * std::numbers::pi / 180;
    const double w = shape.width_mm / 2;
    const double h = shape.height_mm / 2;
    const double round = std::clamp(shape.corner_mm, 0.0, std::min(w, h));
    const int steps = round * static_cast<double>(px) > 1 ? 5 : 0;
    std::vector<ImVec2> points;
    for (int corner = 0; corner < 4; ++corner) {
        const double sx = corner == 0 || corner == 3 ? 1 : -1;
        const double sy = corner < 2 ? 1 : -1;
        for (int step = 0; step <= steps; ++step) {
            const double turn =
                (corner + (steps == 0 ? 0.5 : static_cast<double>(step) / steps)) * std::numbers::pi / 2;
            const double reach = steps == 0 ? 0 : round;
            const double x = sx * (w - reach) + reach * std::cos(turn);
            const double y = sy * (h - reach) + reach * std::sin(turn);
            points.push_back(at(centre, static_cast<float>(x * std::cos(angle) - y * std::sin(angle)) * px,
                                -static_cast<float>(x * std::sin(angle) + y * std::cos(angle)) * px));
        }
    }
    std::ranges::reverse(points); // clockwise on screen, as smooth filling wants it
    return points;
}

void drawShape(ImDrawList& list, const FrontShape& shape, ImVec2 gang, float px, unsigned face) {
    using Role = FrontShape::Role;
    const ImVec2 centre =
        at(gang, static_cast<float>(shape.centre_mm.x) * px, -static_cast<float>(shape.centre_mm.y) * px);
    const ImU32 line = packed(onSurface(face, 0.45F));
    float factor = shape.relief_mm < 0 ? 0.82F : 0.97F;
    if (shape.role == Role::Pin || shape.role == Role::Contact) factor = 0.25F;
    const ImU32 fill = packed(onSurface(face, factor));
    if (shape.kind == FrontShape::Kind::Circle) {
        const float radius = static_cast<float>(shape.width_mm) / 2 * px;
        list.AddCircleFilled(centre, radius, fill, 48);
        list.AddCircle(centre, radius, line, 48, 1);
        return;
    }
    if (shape.kind == FrontShape::Kind::Polyline) {
        // A stroke's points are from the gang's centre already.
        std::vector<ImVec2> points;
        for (const auto& p : shape.points_mm)
            points.push_back(at(gang, static_cast<float>(p.x) * px, -static_cast<float>(p.y) * px));
        list.AddPolyline(points.data(), static_cast<int>(points.size()), line, 0, 1.5F);
        return;
    }
    const auto points = rectangle(shape, centre, px);
    list.AddConvexPolyFilled(points.data(), static_cast<int>(points.size()), fill);
    list.AddPolyline(points.data(), static_cast<int>(points.size()), line, ImDrawFlags_Closed, 1);
}

void drawUnknown(ImDrawList& list, ImVec2 centre, float half_width, float half_height, unsigned face) {
    const ImU32 ink = packed(onSurface(face, 0.4F));
    dashedRect(list, at(centre, -half_width * 0.8F, -half_height * 0.8F),
               at(centre, half_width * 0.8F, half_height * 0.8F), ink, 4, 3);
    const float size = std::clamp(half_height * 0.9F, 9.0F, 40.0F);
    ImFont& font = *ImGui::GetFont();
    const ImVec2 extent = font.CalcTextSizeA(size, 1e4F, 0, "?");
    list.AddText(&font, size, at(centre, -extent.x / 2, -extent.y / 2), ink, "?");
}
} // namespace

unsigned shade(unsigned rgb, float factor) {
    const auto part = [factor, rgb](unsigned shift) {
        const float value = static_cast<float>(channel(rgb, shift)) * factor;
        return static_cast<unsigned>(std::clamp(value, 0.0F, 255.0F)) << shift;
    };
    return part(16) | part(8) | part(0);
}

unsigned onSurface(unsigned rgb, float factor) {
    if (!isDark(rgb)) return shade(rgb, factor);
    const auto part = [factor, rgb](unsigned shift) {
        const auto value = static_cast<float>(channel(rgb, shift));
        return static_cast<unsigned>(value + (255 - value) * (1 - factor) * 0.6F) << shift;
    };
    return part(16) | part(8) | part(0);
}

unsigned finishColour(const catalogue::Catalogue& catalogue, const std::string& finish) {
    const auto* found = catalogue.finish(finish);
    return rgbOf(found == nullptr ? "" : found->srgb);
}

void drawShapes(ImDrawList& list, std::span<const FrontShape> front, ImVec2 centre, float px, unsigned face) {
    for (const auto& shape : front)
        drawShape(list, shape, centre, px, face);
}

void drawModule(ImDrawList& list, const catalogue::ModuleType* module, ImVec2 centre, double width_mm,
                double height_mm, float px, unsigned face) {
    const float w = static_cast<float>(width_mm) / 2 * px;
    const float h = static_cast<float>(height_mm) / 2 * px;
    list.AddRectFilled(at(centre, -w, -h), at(centre, w, h), packed(onSurface(face, 0.985F)));
    list.AddRect(at(centre, -w, -h), at(centre, w, h), packed(onSurface(face, 0.7F)));
    if (module != nullptr) drawShapes(list, module->front, centre, px, face);
}

void drawFront(ImDrawList& list, const Tokens& tokens, const catalogue::Catalogue& catalogue,
               const catalogue::ComposedPlate& plate, ImVec2 centre, float px) {
    const unsigned frame = finishColour(catalogue, plate.finish);
    const float w = static_cast<float>(plate.width_mm) / 2 * px;
    const float h = static_cast<float>(plate.height_mm) / 2 * px;
    const float round = static_cast<float>(plate.corner_mm) * px;
    const unsigned shadow = isDark(tokens.paper) ? 0x000000 : tokens.ink;
    list.AddRectFilled(at(centre, -w + 2, -h + 3), at(centre, w + 2, h + 3), packed(shadow, 0.14F), round);
    list.AddRectFilled(at(centre, -w, -h), at(centre, w, h), packed(frame), round);
    list.AddRect(at(centre, -w, -h), at(centre, w, h), packed(onSurface(frame, 0.6F)), round, 0, 1.2F);
    for (const auto& gang : plate.gangs) {
        const ImVec2 middle =
            at(centre, static_cast<float>(gang.centre_mm.x) * px, -static_cast<float>(gang.centre_mm.y) * px);
        const unsigned face = finishColour(catalogue, gang.finish.empty() ? plate.finish : gang.finish);
        drawModule(list, gang.module, middle, gang.width_mm, gang.height_mm, px, face);
        if (gang.unknown)
            drawUnknown(list, middle, static_cast<float>(gang.width_mm) / 2 * px,
                        static_cast<float>(gang.height_mm) / 2 * px, face);
    }
}

void dashedLine(ImDrawList& list, ImVec2 from, ImVec2 to, ImU32 ink, float dash, float gap, float thick) {
    const float dx = to.x - from.x;
    const float dy = to.y - from.y;
    const float length = std::hypot(dx, dy);
    if (length <= 0) return;
    const auto count = static_cast<int>(length / (dash + gap)) + 1;
    for (int i = 0; i < count; ++i) {
        const float begin = static_cast<float>(i) * (dash + gap) / length;
        const float end = std::min(1.0F, begin + dash / length);
        if (begin < 1)
            list.AddLine({from.x + dx * begin, from.y + dy * begin}, {from.x + dx * end, from.y + dy * end},
                         ink, thick);
    }
}

void dashedRect(ImDrawList& list, ImVec2 low, ImVec2 high, ImU32 ink, float dash, float gap) {
    dashedLine(list, low, {high.x, low.y}, ink, dash, gap);
    dashedLine(list, {high.x, low.y}, high, ink, dash, gap);
    dashedLine(list, high, {low.x, high.y}, ink, dash, gap);
    dashedLine(list, {low.x, high.y}, low, ink, dash, gap);
}

} // namespace gangway::app
