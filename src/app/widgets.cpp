// The few widgets that carry the identity: state shapes, large answers, a plate's front in true proportion,
// and how a plate is put into words.
#include "app/panels.hpp"
#include "app/plate_front.hpp"

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

std::vector<std::string> linesWithin(const ImFont& font, const std::string& text, float width,
                                     std::size_t lines) {
    static constexpr const char* kLeftOut = "...";
    const auto widthOf = [&font](const std::string& words) {
        return font.CalcTextSizeA(font.FontSize, FLT_MAX, 0, words.c_str()).x;
    };
    std::vector<std::string> broken;
    std::string rest = text;
    while (broken.size() + 1 < lines && widthOf(rest) > width) {
        const char* const begin = rest.c_str();
        const auto cut = static_cast<std::size_t>(
            font.CalcWordWrapPositionA(1, begin, begin + rest.size(), width) - begin);
        if (cut == 0) break;
        broken.push_back(rest.substr(0, cut));
        rest.erase(0, rest.find_first_not_of(' ', cut));
    }
    if (widthOf(rest) > width) {
        while (!rest.empty() && widthOf(rest + kLeftOut) > width) {
            // Never half a letter: a UTF-8 letter goes with all its bytes.
            bool inside_letter = true;
            while (inside_letter && !rest.empty()) {
                inside_letter = (static_cast<unsigned char>(rest.back()) & 0xC0U) == 0x80U;
                rest.pop_back();
            }
        }
        rest += kLeftOut;
    }
    broken.push_back(rest);
    return broken;
}

std::string plateTitle(const State& state, const plan::Plate& plate) {
    const std::string name = plate.tag.empty() ? plate.id : plate.tag;
    return plate.purpose.empty() ? name + "  " + modulesSentence(state, plate) : name + "  " + plate.purpose;
}

namespace {
struct PlainWord {
    const char* trade;
    const char* plain; ///< empty: nothing that a homeowner decides by
};
/// Parts of module names as the catalogue gives them, and what they are called at a kitchen table.
constexpr PlainWord kPlainWords[] = {{"socket outlet", "socket"},
                                     {"switched", "with its own switch"},
                                     {"duplex", "double"},
                                     {"one-way", ""},
                                     {"two-way", ""},
                                     {"intermediate", ""},
                                     {"double-pole", ""},
                                     {"two circuits", "for two lights"},
                                     {"three circuits", "for three lights"},
                                     {"data outlet", "network socket"},
                                     {"one RJ45", ""},
                                     {"two RJ45", "double"},
                                     {"aerial outlet", "aerial socket"},
                                     {"telephone outlet", "telephone socket"},
                                     {"cord outlet", "outlet for a fixed cable"},
                                     {"shaver supply unit", "shaver socket"},
                                     {"blank", "blank cover"}};

std::string plainPart(const std::string& part) {
    if (part.starts_with("type ")) return {};
    const auto* const found =
        std::ranges::find_if(kPlainWords, [&part](const PlainWord& word) { return part == word.trade; });
    return found == std::end(kPlainWords) ? part : found->plain;
}

/// "socket outlet, type G, switched" as "socket, with its own switch".
std::string plainModule(const std::string& name) {
    std::string plain;
    for (std::size_t at = 0; at <= name.size();) {
        const std::size_t comma = std::min(name.find(", ", at), name.size());
        const std::string part = plainPart(name.substr(at, comma - at));
        if (!part.empty()) plain += (plain.empty() ? "" : ", ") + part;
        at = comma + 2;
    }
    return plain;
}

/// Where the plate is, without set-out and datum.
std::string plainHost(const State& state, const plan::Host& host) {
    using Kind = plan::Host::Kind;
    const std::string high = length(state, host.v_mm);
    const auto* piece = plan::findFurniture(state.plan(), host.furniture);
    const std::string name = piece == nullptr ? host.furniture : piece->name;
    switch (host.kind) {
    case Kind::Wall:
        return fmt::format("On wall {}, {} above the floor", host.wall, high);
    case Kind::Floor:
        return "In the floor";
    case Kind::Ceiling:
        return "On the ceiling";
    case Kind::Furniture:
        break;
    }
    if (host.face == "top") return "On top of the " + name;
    if (host.face == "bottom") return "Under the " + name;
    return fmt::format("On the {}, {} above the floor", name, high);
}
} // namespace

std::string modulesSentence(const State& state, const plan::Plate& plate) {
    std::string sentence;
    for (std::size_t i = 0; i < plate.modules.size();) {
        std::size_t run = i + 1;
        while (run < plate.modules.size() && plate.modules[run].type == plate.modules[i].type)
            ++run;
        const auto* module = state.catalogue.module(plate.modules[i].type);
        std::string name = module == nullptr ? plate.modules[i].type : module->name;
        if (state.seat == Seat::Homeowner) name = plainModule(name);
        sentence +=
            (sentence.empty() ? "" : ", ") + (run - i > 1 ? std::to_string(run - i) + " x " : "") + name;
        i = run;
    }
    return sentence.empty() ? "blank plate" : sentence;
}

std::string hostSentence(const State& state, const plan::Plate& plate) {
    using Kind = plan::Host::Kind;
    if (state.seat == Seat::Homeowner) return plainHost(state, plate.host);
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
    drawFront(list, *state.tokens, state.catalogue, catalogue::compose(state.catalogue, plate), centre, px);
}

} // namespace gangway::app
