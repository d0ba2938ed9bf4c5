// The docket's tab "Devices": what is plugged in where, what could be, what has no outlet, what is often
// forgotten; watts by plate and circuit.
#include "app/edit_actions.hpp"
#include "app/finding_parts.hpp"
#include "app/inventory.hpp"
#include "app/lamps.hpp"
#include "edit/finding_edits.hpp"
#include "edit/number_shown.hpp"
#include "switching/loads.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gangway::app {

namespace {
std::string tagOf(const State& state, const std::string& plate_id) {
    const auto* plate = plan::findPlate(state.plan(), plate_id);
    return plate == nullptr || plate->tag.empty() ? plate_id : plate->tag;
}

/// A number and its unit stay on one line.
std::string said(const State& state, double length_mm) {
    std::string words;
    for (const char letter : edit::lengthInWords(length_mm, state.plan().units))
        words += letter == ' ' ? std::string("\u00a0") : std::string(1, letter);
    return words;
}

bool tooFar(const DeviceRow& row) {
    return row.decided && row.way_mm && row.lead_mm > 0 && *row.way_mm > row.lead_mm;
}

/// What a row asks for; done when all rows are drawn, so that nothing changes under their feet.
struct Wish {
    std::string device, plug_into; ///< plug the device in; empty plate: take it out
    bool plug = false;
    std::string show;       ///< plate to go to
    std::string room;       ///< where a socket is wanted
    std::string socket_for; ///< what for
    bool socket = false;
};

/// A plug: filled where it is decided, outlined where it is proposed, struck through where there is none.
void plugShape(const State& state, ImVec2 centre, const DeviceRow& row) {
    const float s = state.scale;
    const unsigned rgb = row.plate.empty() ? state.tokens->fault
                         : row.decided     ? state.tokens->ink
                                           : state.tokens->query;
    const ImU32 ink = packed(rgb);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 low{centre.x - 6 * s, centre.y - 1 * s};
    const ImVec2 high{centre.x + 6 * s, centre.y + 7 * s};
    if (row.decided)
        list.AddRectFilled(low, high, ink, 2 * s);
    else
        list.AddRect(low, high, ink, 2 * s, 0, 1.6F * s);
    for (const float x : {-3.0F, 3.0F})
        list.AddLine({centre.x + x * s, centre.y - 7 * s}, {centre.x + x * s, centre.y - 1 * s}, ink, 2 * s);
    if (row.plate.empty())
        list.AddLine({centre.x - 9 * s, centre.y + 9 * s}, {centre.x + 9 * s, centre.y - 9 * s}, ink,
                     1.8F * s);
}

std::string leadWords(const State& state, const DeviceRow& row) {
    std::string words;
    if (row.way_mm)
        words = row.lead_mm > 0
                    ? fmt::format("way {}, lead {}", said(state, *row.way_mm), said(state, row.lead_mm))
                    : fmt::format("way {}", said(state, *row.way_mm));
    if (!row.crosses.empty()) words += ", lies " + row.crosses;
    if (!row.data.empty()) words += ", data at " + tagOf(state, row.data);
    return words;
}

std::string placeWords(const State& state, const DeviceRow& row) {
    if (row.plate.empty()) return "No outlet: " + row.why;
    const std::string lead = leadWords(state, row);
    return fmt::format("{} {}{}{}", row.decided ? "In" : "Could go into", tagOf(state, row.plate),
                       lead.empty() ? "" : ": ", lead);
}

bool smallButton(State& state, const char* label, const std::string& name) {
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {8 * state.scale, 3 * state.scale});
    const bool clicked = ImGui::Button(label);
    ImGui::PopStyleVar();
    place(state, name);
    return clicked;
}

void deviceButtons(State& state, const std::string& room, const DeviceRow& row, float left, Wish& wish) {
    ImGui::SetCursorScreenPos({left, ImGui::GetCursorScreenPos().y});
    if (row.plate.empty()) {
        if (smallButton(state, "Place a socket for it", "device-socket:" + row.device))
            wish = {{}, {}, false, {}, room, row.name, true};
    } else if (row.decided) {
        if (smallButton(state, "Unplug", "unplug:" + row.device))
            wish = {row.device, {}, true, {}, {}, {}, false};
    } else if (smallButton(state, "Plug it in there", "plug:" + row.device)) {
        wish = {row.device, row.plate, true, {}, {}, {}, false};
    }
    ImGui::Dummy({0, 3 * state.scale});
}

void deviceRow(State& state, const std::string& room, const DeviceRow& row, Wish& wish) {
    const float s = state.scale;
    const ImFont& small = *state.fonts.small;
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const float left = corner.x + 34 * s;
    const auto lines = linesWithin(small, placeWords(state, row), corner.x + width - 4 * s - left, 4);
    const float step = small.FontSize + 3 * s;
    const float height = 28 * s + static_cast<float>(lines.size()) * step;
    ImGui::PushID(row.device.c_str());
    if (ImGui::Selectable("##device", !row.plate.empty() && state.selected == row.plate, 0, {width, height}))
        wish.show = row.plate;
    place(state, "device:" + row.device);
    if (ImGui::IsItemHovered() && !row.plate.empty()) state.hovered = row.plate;
    plugShape(state, {corner.x + 15 * s, corner.y + 14 * s}, row);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImFont& strong = *state.fonts.strong;
    const std::string watts = row.watts > 0 ? fmt::format("{:.0f} W", row.watts) : std::string();
    const float watts_px = small.CalcTextSizeA(small.FontSize, 1e4F, 0, watts.c_str()).x;
    list.AddText(
        &strong, strong.FontSize, {left, corner.y + 4 * s}, packed(state.tokens->ink),
        linesWithin(strong, row.name, corner.x + width - watts_px - 16 * s - left, 1).front().c_str());
    list.AddText(&small, small.FontSize, {corner.x + width - watts_px - 6 * s, corner.y + 6 * s},
                 packed(state.tokens->soft_ink), watts.c_str());
    const unsigned ink = row.plate.empty() || tooFar(row) ? state.tokens->fault : state.tokens->soft_ink;
    for (std::size_t i = 0; i < lines.size(); ++i)
        list.AddText(&small, small.FontSize, {left, corner.y + 25 * s + static_cast<float>(i) * step},
                     packed(ink), lines[i].c_str());
    ImGui::PushFont(state.fonts.small);
    deviceButtons(state, room, row, left, wish);
    ImGui::PopFont();
    ImGui::PopID();
}

std::string wattWords(double watts, double limit_w) {
    if (limit_w > 0) return fmt::format("{:.0f} of {:.0f} W", watts, limit_w);
    return watts > 0 ? fmt::format("{:.0f} W", watts) : std::string();
}

/// A name at the left, words at the right, both on one line.
bool lineRow(const State& state, const std::string& key, const std::string& name, const std::string& words,
             unsigned ink) {
    const float s = state.scale;
    const ImFont& small = *state.fonts.small;
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const bool clicked = ImGui::Selectable(("##" + key).c_str(), false, 0, {width, 20 * s});
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float words_px = small.CalcTextSizeA(small.FontSize, 1e4F, 0, words.c_str()).x;
    const float y = corner.y + (20 * s - small.FontSize) / 2;
    list.AddText(&small, small.FontSize, {corner.x + 8 * s, y}, packed(state.tokens->ink),
                 linesWithin(small, name, width - words_px - 24 * s, 1).front().c_str());
    list.AddText(&small, small.FontSize, {corner.x + width - words_px - 6 * s, y}, packed(ink),
                 words.c_str());
    return clicked;
}

void caption(const State& state, const char* words) {
    ImGui::Dummy({0, 2 * state.scale});
    ImGui::PushFont(state.fonts.small);
    ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->soft_ink));
    ImGui::TextUnformatted(words);
    ImGui::PopStyleColor();
    ImGui::PopFont();
}

/// "2 outlets, 1 free, 1 blocked", and the watts.
void outletRow(State& state, const OutletRow& row, Wish& wish) {
    const int free = row.outlets - row.taken - row.proposed - row.blocked;
    std::string words = free < 0 ? fmt::format("{} too many", -free) : fmt::format("{} free", free);
    words = fmt::format("{}{} of {}", words, row.blocked > 0 ? fmt::format(", {} hidden", row.blocked) : "",
                        row.outlets);
    const std::string watts = wattWords(row.watts, row.limit_w);
    if (!watts.empty()) words += "   " + watts;
    const bool wrong = free < 0 || (row.limit_w > 0 && row.watts > row.limit_w);
    if (lineRow(state, "outlets " + row.plate, tagOf(state, row.plate), words,
                wrong ? state.tokens->fault : state.tokens->soft_ink))
        wish.show = row.plate;
    place(state, "outlets:" + row.plate);
}

void forgottenRows(State& state, const std::string& room, Wish& wish) {
    bool said_so = false;
    for (const ForgottenRow& row : forgottenOf(state)) {
        if (row.room != room) continue;
        if (!said_so) caption(state, "Often forgotten, and not in the plan");
        said_so = true;
        ImGui::PushID(row.name.c_str());
        ImGui::PushFont(state.fonts.small);
        const float button = ImGui::CalcTextSize("Place a socket").x + 16 * state.scale;
        const float right = ImGui::GetWindowContentRegionMax().x - button - 6 * state.scale;
        ImGui::AlignTextToFramePadding();
        ImGui::SetCursorPosX(ImGui::GetCursorPosX() + 8 * state.scale);
        ImGui::PushTextWrapPos(right - 6 * state.scale);
        ImGui::TextWrapped("%s", row.name.c_str());
        ImGui::PopTextWrapPos();
        ImGui::SameLine(right);
        if (smallButton(state, "Place a socket", fmt::format("forgotten:{}:{}", room, row.name)))
            wish = {{}, {}, false, {}, room, row.name, true};
        ImGui::PopFont();
        ImGui::PopID();
    }
}

void roomSection(State& state, const plan::Room& room, bool heading, Wish& wish) {
    const RoomInventory& inventory = inventoryOf(state, room.id);
    const bool forgotten =
        std::ranges::find(forgottenOf(state), room.id, &ForgottenRow::room) != forgottenOf(state).end();
    if (inventory.devices.empty() && inventory.plates.empty() && !forgotten) {
        if (!heading) ImGui::TextDisabled("Nothing is plugged in here.");
        return;
    }
    if (heading) {
        ImGui::Dummy({0, 4 * state.scale});
        ImGui::PushFont(state.fonts.strong);
        ImGui::TextUnformatted(room.name.empty() ? room.id.c_str() : room.name.c_str());
        ImGui::PopFont();
    }
    for (const DeviceRow& row : inventory.devices)
        deviceRow(state, room.id, row, wish);
    if (!inventory.plates.empty()) caption(state, "Outlets of the plates");
    for (const OutletRow& row : inventory.plates)
        outletRow(state, row, wish);
    forgottenRows(state, room.id, wish);
}

void circuitRows(State& state) {
    const auto* pack = findingPack(state);
    if (pack == nullptr) return;
    bool said_so = false;
    for (const auto& load : switching::circuitLoads(netOf(state), *pack)) {
        if (load.appliances_w <= 0 && load.rated_a <= 0) continue;
        if (!said_so) caption(state, "Circuits: plugged in, and lamps, of what they carry");
        said_so = true;
        const std::string& name =
            load.circuit != nullptr && !load.circuit->name.empty() ? load.circuit->name : load.id;
        const double all = load.appliances_w + load.lighting_w;
        const bool over = load.limit_w > 0 && all > load.limit_w;
        lineRow(state, "circuit " + load.id, name,
                fmt::format("{:.0f} + {}", load.appliances_w, wattWords(load.lighting_w, load.limit_w)),
                over ? state.tokens->fault : state.tokens->soft_ink);
        place(state, "device-circuit:" + load.id);
    }
}

void foot(const State& state) {
    ImGui::Dummy({0, 6 * state.scale});
    ImGui::PushFont(state.fonts.small);
    ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->soft_ink));
    wrapped(
        "Ways of leads go along wall and floor; watts are as stated, all at once. The electrician designs "
        "the circuits. Isolate the supply before any work; a licensed person and the local code decide.");
    ImGui::PopStyleColor();
    ImGui::PopFont();
}

void carryOut(State& state, const Wish& wish) {
    if (!wish.show.empty()) {
        choosePlate(state, wish.show, false);
        showPlate(state, wish.show);
    }
    if (wish.plug)
        runArranged(state, wish.plug_into.empty()
                               ? edit::unplugDevice(state.plan(), wish.device)
                               : edit::plugDevice(state.plan(), wish.device, wish.plug_into));
    if (!wish.socket) return;
    auto plate = usualSocket(state, wish.room);
    if (!plate) {
        say(state, "The plan has no socket plate to take as a pattern. Make one under Plates.");
        return;
    }
    plate->purpose = wish.socket_for;
    if (wish.room != state.room) enterRoom(state, wish.room);
    startPlacing(state, *plate);
}
} // namespace

void deviceRows(State& state, const std::string& room) {
    ImGui::BeginChild("devices", {0, 0});
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {8 * state.scale, 2 * state.scale});
    Wish wish;
    if (room.empty()) {
        fillInventory(state);
        for (const plan::Room& one : state.plan().rooms)
            roomSection(state, one, true, wish);
        circuitRows(state);
    } else if (const plan::Room* one = plan::findRoom(state.plan(), room)) {
        roomSection(state, *one, false, wish);
    }
    foot(state);
    ImGui::PopStyleVar();
    ImGui::EndChild();
    carryOut(state, wish);
}

void outletLines(State& state, const std::string& plate_id) {
    const plan::Plate* plate = plan::findPlate(state.plan(), plate_id);
    if (plate == nullptr || state.seat != Seat::Designer) return;
    const RoomInventory& inventory = inventoryOf(state, plate->room);
    const auto use = std::ranges::find(inventory.plates, plate_id, &OutletRow::plate);
    if (use == inventory.plates.end()) return;
    const auto nameOf = [&](const std::string& id) {
        const auto device = std::ranges::find(state.plan().devices, id, &plan::Device::id);
        return device == state.plan().devices.end() || device->name.empty() ? id : device->name;
    };
    std::string words;
    for (const auto& outlet : inventory.places.outlets) {
        if (outlet.plate != plate_id) continue;
        using Kind = catalogue::OutletPlace::State;
        if (!words.empty()) words += ", ";
        words += outlet.state == Kind::Taken     ? nameOf(outlet.plugged.device)
                 : outlet.state == Kind::Blocked ? "hidden by " + nameOf(outlet.blocked_by)
                                                 : "free";
    }
    const std::string watts = wattWords(use->watts, use->limit_w);
    ImGui::PushFont(state.fonts.small);
    ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->soft_ink));
    wrapped(fmt::format("{}: {}{}{}", use->outlets == 1 ? "Outlet" : "Outlets", words,
                        watts.empty() ? "" : ". ", watts));
    ImGui::PopStyleColor();
    ImGui::PopFont();
    place(state, "outlet-lines");
}

} // namespace gangway::app
