// The few widgets that carry the identity: state shapes, large answers, a plate's front in true proportion,
// and how a plate is put into words.
#include "app/panels.hpp"

#include "drawing/dimensions.hpp"
#include "review/review.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gangway::app {

namespace {
ImVec2 at(ImVec2 centre, float x, float y) {
    return {centre.x + x, centre.y + y};
}

std::string length(const State& state, double value_mm) {
    using drawing::Units;
    using plan::DisplayUnits;
    switch (state.plan().units) {
    case DisplayUnits::Centimetres:
        return drawing::number(value_mm, Units::Centimetres) + " cm";
    case DisplayUnits::Metres:
        return drawing::number(value_mm, Units::Metres) + " m";
    case DisplayUnits::FeetInches:
        return drawing::number(value_mm, Units::FeetInches);
    case DisplayUnits::Millimetres:
        break;
    }
    return drawing::number(value_mm, Units::Millimetres) + " mm";
}

/// Parses "#RRGGBB"; grey for anything else.
unsigned rgbOf(const std::string& text) {
    if (text.size() != 7 || text[0] != '#') return 0xDDDDDD;
    return static_cast<unsigned>(std::strtoul(text.c_str() + 1, nullptr, 16));
}

unsigned shade(unsigned rgb, float factor) {
    const auto part = [factor, rgb](unsigned shift) {
        const float value = static_cast<float>((rgb >> shift) & 255U) * factor;
        return static_cast<unsigned>(std::clamp(value, 0.0F, 255.0F)) << shift;
    };
    return part(16) | part(8) | part(0);
}

void frontShape(ImDrawList& list, const catalogue::FrontShape& shape, ImVec2 gang, float px, unsigned face) {
    using Kind = catalogue::FrontShape::Kind;
    using Role = catalogue::FrontShape::Role;
    const ImVec2 centre =
        at(gang, static_cast<float>(shape.centre_mm.x) * px, -static_cast<float>(shape.centre_mm.y) * px);
    const ImU32 line = packed(shade(face, 0.45F));
    float factor = shape.relief_mm < 0 ? 0.82F : 0.97F;
    if (shape.role == Role::Pin || shape.role == Role::Contact) factor = 0.25F;
    const ImU32 fill = packed(shade(face, factor));
    if (shape.kind == Kind::Circle) {
        const float radius = static_cast<float>(shape.width_mm) / 2 * px;
        list.AddCircleFilled(centre, radius, fill, 40);
        list.AddCircle(centre, radius, line, 40, 1);
        return;
    }
    std::vector<ImVec2> points;
    const double angle = shape.turn_deg * std::numbers::pi / 180;
    const auto add = [&](double x, double y) {
        const double rx = x * std::cos(angle) - y * std::sin(angle);
        const double ry = x * std::sin(angle) + y * std::cos(angle);
        points.push_back(at(centre, static_cast<float>(rx) * px, -static_cast<float>(ry) * px));
    };
    if (shape.kind == Kind::Polyline) {
        for (const auto& point : shape.points_mm)
            add(point.x, point.y);
        list.AddPolyline(points.data(), static_cast<int>(points.size()), line, 0, 1.5F);
        return;
    }
    const double w = shape.width_mm / 2;
    const double h = shape.height_mm / 2;
    for (const auto& [x, y] : {std::pair{-w, -h}, {w, -h}, {w, h}, {-w, h}})
        add(x, y);
    list.AddConvexPolyFilled(points.data(), 4, fill);
    list.AddPolyline(points.data(), 4, line, ImDrawFlags_Closed, 1);
}
} // namespace

unsigned stateColour(const State& state, review::State plate_state) {
    switch (plate_state) {
    case review::State::Agreed:
        return state.tokens->agreed;
    case review::State::Queried:
        return state.tokens->query;
    case review::State::Reopened:
        return state.tokens->fault;
    case review::State::Open:
        break;
    }
    return state.tokens->soft_ink;
}

/// Open: a ring. Agreed: a disc with a tick. Queried: a diamond with a question mark. Reopened: a half-filled
/// ring.
void stateShape(const State& state, ImDrawList& list, ImVec2 c, float r, review::State plate_state) {
    const ImU32 ink = packed(stateColour(state, plate_state));
    const ImU32 paper = packed(state.tokens->paper);
    const ImU32 on = packed(state.tokens->on_accent);
    const float thick = std::max(1.5F, r * 0.22F);
    switch (plate_state) {
    case review::State::Agreed: {
        list.AddCircleFilled(c, r, ink, 28);
        const ImVec2 tick[] = {at(c, -0.45F * r, 0.02F * r), at(c, -0.12F * r, 0.38F * r),
                               at(c, 0.48F * r, -0.36F * r)};
        list.AddPolyline(tick, 3, on, 0, thick);
        return;
    }
    case review::State::Queried: {
        const float d = r * 1.2F;
        list.AddQuadFilled(at(c, 0, -d), at(c, d, 0), at(c, 0, d), at(c, -d, 0), ink);
        const ImVec2 size = ImGui::CalcTextSize("?");
        list.AddText({c.x - size.x / 2, c.y - size.y / 2}, on, "?");
        return;
    }
    case review::State::Reopened:
        list.AddCircleFilled(c, r, paper, 28);
        list.PathArcTo(c, r, -std::numbers::pi_v<float> / 2, std::numbers::pi_v<float> / 2, 20);
        list.PathFillConvex(ink);
        list.AddCircle(c, r - thick / 2, ink, 28, thick);
        return;
    case review::State::Open:
        list.AddCircleFilled(c, r, paper, 28);
        list.AddCircle(c, r - thick / 2, ink, 28, thick);
        return;
    }
}

bool largeButton(const State& state, const char* label, unsigned rgb, ImVec2 size, bool filled) {
    const Tokens& t = *state.tokens;
    ImGui::PushStyleColor(ImGuiCol_Button, colour(filled ? rgb : t.raised));
    ImGui::PushStyleColor(ImGuiCol_ButtonHovered,
                          colour(filled ? shade(rgb, 0.9F) : t.quiet, filled ? 1.0F : 0.5F));
    ImGui::PushStyleColor(ImGuiCol_ButtonActive, colour(filled ? shade(rgb, 0.8F) : t.quiet));
    ImGui::PushStyleColor(ImGuiCol_Border, colour(rgb));
    ImGui::PushStyleColor(ImGuiCol_Text, colour(filled ? t.on_accent : rgb));
    ImGui::PushFont(state.fonts.strong);
    const bool clicked = ImGui::Button(label, size);
    ImGui::PopFont();
    ImGui::PopStyleColor(5);
    return clicked;
}

void wrapped(const std::string& text) {
    ImGui::PushTextWrapPos(0);
    ImGui::TextUnformatted(text.c_str());
    ImGui::PopTextWrapPos();
}

std::string plateTitle(const State& state, const plan::Plate& plate) {
    const std::string name = plate.tag.empty() ? plate.id : plate.tag;
    return plate.purpose.empty() ? name + "  " + modulesSentence(state, plate) : name + "  " + plate.purpose;
}

std::string modulesSentence(const State& state, const plan::Plate& plate) {
    std::string sentence;
    for (std::size_t i = 0; i < plate.modules.size();) {
        std::size_t run = i + 1;
        while (run < plate.modules.size() && plate.modules[run].type == plate.modules[i].type)
            ++run;
        const auto* module = state.catalogue.module(plate.modules[i].type);
        const std::string name = module == nullptr ? plate.modules[i].type : module->name;
        sentence +=
            (sentence.empty() ? "" : ", ") + (run - i > 1 ? std::to_string(run - i) + " x " : "") + name;
        i = run;
    }
    return sentence.empty() ? "blank plate" : sentence;
}

std::string hostSentence(const State& state, const plan::Plate& plate) {
    using Kind = plan::Host::Kind;
    const std::string u = length(state, plate.host.u_mm);
    const std::string v = length(state, plate.host.v_mm);
    switch (plate.host.kind) {
    case Kind::Wall:
        return fmt::format("Wall {}: {} from its left corner, {} above FFL", plate.host.wall, u, v);
    case Kind::Floor:
        return fmt::format("Floor: {} east and {} north of the south-west corner", u, v);
    case Kind::Ceiling:
        return fmt::format("Ceiling: {} east and {} north of the south-west corner", u, v);
    case Kind::Furniture:
        break;
    }
    const auto* piece = plan::findFurniture(state.plan(), plate.host.furniture);
    return fmt::format("In the {} ({}): {} from its left edge, {} above FFL",
                       piece == nullptr ? plate.host.furniture : piece->name, plate.host.face, u, v);
}

void plateFront(const State& state, ImDrawList& list, const plan::Plate& plate, ImVec2 centre, float px) {
    const auto composed = catalogue::compose(state.catalogue, plate);
    const auto colour_of = [&state](const std::string& finish) {
        const auto* found = state.catalogue.finish(finish);
        return found == nullptr ? 0xF2F0EBU : rgbOf(found->srgb);
    };
    const unsigned frame = colour_of(composed.finish);
    const float w = static_cast<float>(composed.width_mm) / 2 * px;
    const float h = static_cast<float>(composed.height_mm) / 2 * px;
    const float round = static_cast<float>(composed.corner_mm) * px;
    list.AddRectFilled(at(centre, -w + 3, -h + 4), at(centre, w + 3, h + 4), packed(state.tokens->ink, 0.12F),
                       round);
    list.AddRectFilled(at(centre, -w, -h), at(centre, w, h), packed(frame), round);
    list.AddRect(at(centre, -w, -h), at(centre, w, h), packed(shade(frame, 0.6F)), round, 0, 1.2F);
    for (const auto& gang : composed.gangs) {
        const ImVec2 middle =
            at(centre, static_cast<float>(gang.centre_mm.x) * px, -static_cast<float>(gang.centre_mm.y) * px);
        const float gw = static_cast<float>(gang.width_mm) / 2 * px;
        const float gh = static_cast<float>(gang.height_mm) / 2 * px;
        const unsigned face = colour_of(gang.finish.empty() ? composed.finish : gang.finish);
        list.AddRectFilled(at(middle, -gw, -gh), at(middle, gw, gh), packed(shade(face, 0.985F)));
        list.AddRect(at(middle, -gw, -gh), at(middle, gw, gh), packed(shade(face, 0.7F)));
        if (gang.module == nullptr) continue;
        for (const auto& shape : gang.module->front)
            frontShape(list, shape, middle, px, face);
    }
}

} // namespace gangway::app
