// The side panel "Switching": the ways of a room, its lamps, which works which, and proposals.
#include "app/edit_actions.hpp"
#include "app/furnish_parts.hpp"
#include "app/lamps.hpp"
#include "app/thing_form.hpp"
#include "app/tying.hpp"
#include "edit/leg_edits.hpp"
#include "switching/group.hpp"
#include "switching/loads.hpp"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <algorithm>

namespace gangway::app {

namespace {
using switching::Net;
using switching::Way;

const std::string& tagOf(const plan::Plate& plate) {
    return plate.tag.empty() ? plate.id : plate.tag;
}

/// A line of two texts to click on: strong at the left, what it means behind it; true when clicked.
bool line(State& state, const std::string& name, const std::string& strong, const std::string& words,
          bool chosen, bool quiet) {
    const float s = state.scale;
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const float width = form::kPanelWidth * s;
    const float height = 28 * s;
    ImGui::PushID(name.c_str());
    const bool clicked = ImGui::InvisibleButton("line", {width, height});
    ImGui::PopID();
    place(state, name);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const Tokens& t = *state.tokens;
    const ImVec2 end{corner.x + width, corner.y + height};
    if (chosen || ImGui::IsItemHovered())
        list.AddRectFilled(corner, end, packed(chosen ? t.accent : t.quiet, chosen ? 0.16F : 0.4F), 6 * s);
    if (chosen) list.AddRect(corner, end, packed(t.accent), 6 * s, 0, 1.5F * s);
    const float y = corner.y + (height - state.fonts.body->FontSize) / 2;
    list.AddText(state.fonts.strong, state.fonts.strong->FontSize, {corner.x + 10 * s, y}, packed(t.ink),
                 strong.c_str());
    const float left = corner.x + std::max(64 * s, ImGui::CalcTextSize(strong.c_str()).x + 26 * s);
    const std::string shown = linesWithin(*state.fonts.body, words, end.x - left - 8 * s, 1).front();
    list.AddText(state.fonts.body, state.fonts.body->FontSize, {left, y}, packed(quiet ? t.soft_ink : t.ink),
                 shown.c_str());
    if (ImGui::IsItemHovered() && shown != words) ImGui::SetTooltip("%s", words.c_str());
    return clicked;
}

void heading(const State& state, const std::string& words) {
    ImGui::Dummy({0, 4 * state.scale});
    ImGui::PushFont(state.fonts.strong);
    ImGui::TextUnformatted(words.c_str());
    ImGui::PopFont();
}

/// What the next click does.
void prompt(State& state, const Net& net) {
    const Tying& now = state.tying;
    if (now.way) {
        const Way* way = net.way(*now.way);
        form::note(state, fmt::format("{}: {}. Click lamps on the stage, in the plan or below; a second "
                                      "click unties. In the plan Ctrl and drag takes a box. Esc ends.",
                                      switching::wayName(net, *now.way),
                                      way == nullptr ? "gone" : feedsInWords(net, *way)));
    } else if (now.taking) {
        form::note(state, fmt::format("{} {} picked. Now click the way that is to work {}. Esc ends.",
                                      now.lamps.size(), now.lamps.size() == 1 ? "lamp" : "lamps",
                                      now.lamps.size() == 1 ? "it" : "them"));
    } else {
        form::note(state, "Pick a way and then its lamps, or the lamps first and then the way.");
    }
}

/// Plates of a room with ways, and those elsewhere that work one of its lamps.
std::vector<const plan::Plate*> switchesOf(const Net& net, const plan::Room& room) {
    std::set<std::string_view> outside;
    for (const plan::Luminaire& lamp : net.plan().luminaires)
        if (lamp.room == room.id)
            for (const plan::SwitchLeg* leg : net.legsOfLuminaire(lamp.id))
                for (const plan::WayRef& ref : leg->controls)
                    outside.insert(ref.plate);
    std::vector<const plan::Plate*> plates;
    for (const bool here : {true, false})
        for (const plan::Plate& plate : net.plan().plates)
            if ((plate.room == room.id) == here && (here || outside.contains(plate.id)) &&
                !net.waysOf(plate.id).empty())
                plates.push_back(&plate);
    return plates;
}

/// Ways to be picked; nullopt when none was.
std::optional<plan::WayRef> waysOfPlate(State& state, const Net& net, const plan::Plate& plate) {
    std::optional<plan::WayRef> picked;
    int number = 0;
    const auto ways = net.waysOf(plate.id);
    for (const Way& way : ways) {
        ++number;
        const std::string strong =
            ways.size() == 1 ? tagOf(plate) : fmt::format("{}/{}", tagOf(plate), number);
        if (line(state, fmt::format("way:{}/{}", tagOf(plate), number), strong, feedsInWords(net, way),
                 state.tying.way == way.ref, way.legs.empty()))
            picked = way.ref;
    }
    return picked;
}

void ask(State& state, const char* what, const std::expected<edit::Command, std::string>& command) {
    if (command && command->name.empty()) say(state, what);
    runArranged(state, command);
}

bool entered(State& state, const char* label, const char* name, std::string& text, float width) {
    ImGui::BeginGroup();
    form::caption(state, label);
    ImGui::SetNextItemWidth(width);
    const bool enter =
        ImGui::InputText(fmt::format("##{}", name).c_str(), &text,
                         ImGuiInputTextFlags_EnterReturnsTrue | ImGuiInputTextFlags_AutoSelectAll);
    const bool left = ImGui::IsItemDeactivatedAfterEdit();
    place(state, name);
    ImGui::EndGroup();
    return enter || left;
}

void keepTexts(State& state, const plan::SwitchLeg& leg) {
    Tying& now = state.tying;
    if (now.text_leg == leg.id && now.text_version == state.document.version()) return;
    now.text_leg = leg.id;
    now.text_version = state.document.version();
    now.mark_text = leg.letter;
    now.name_text = leg.name;
    now.circuit_text = leg.circuit;
}

/// Mark, name, circuit, line and load of the picked way's leg.
void legDetails(State& state, const Net& net, const plan::SwitchLeg& shown) {
    keepTexts(state, shown);
    const plan::SwitchLeg leg = shown;
    plan::SwitchLeg after = leg;
    const float s = state.scale;
    const float gap = 8 * s;
    const auto load = switching::legLoad(net, leg);
    heading(state, fmt::format("Leg {}", switching::legName(leg)));
    form::note(state, fmt::format("{}, {:.0f} W, {:.0f} lm",
                                  switching::arrangementName(switching::groupOf(net, shown)), load.watts,
                                  load.lumens));
    const float third = (form::kPanelWidth * s - 2 * gap) / 3;
    std::string what;
    if (entered(state, "Mark", "leg:mark", state.tying.mark_text, third * 0.7F)) {
        after.letter = state.tying.mark_text;
        what = fmt::format("Mark {}", after.letter);
    }
    ImGui::SameLine(0, gap);
    if (entered(state, "Name", "leg:name", state.tying.name_text, third * 1.3F)) {
        after.name = state.tying.name_text;
        what = fmt::format("Name {}", switching::legMark(net, leg));
    }
    ImGui::SameLine(0, gap);
    if (entered(state, "Circuit", "leg:circuit", state.tying.circuit_text, third)) {
        after.circuit = state.tying.circuit_text;
        what = fmt::format("Circuit of {}", switching::legMark(net, leg));
    }
    form::caption(state, "Drawn on the plan as");
    constexpr const char* kLines[] = {"as fits", "arc", "straight", "square", "marks"};
    for (int i = 0; i < 5; ++i) {
        if (i > 0) ImGui::SameLine(0, 4 * s);
        if (form::chooseButton(state, kLines[i], static_cast<int>(leg.line) == i,
                               (form::kPanelWidth * s - 16 * s) / 5)) {
            after.line = static_cast<plan::SwitchLeg::Line>(i);
            what = fmt::format("Draw {} {}", switching::legMark(net, leg), kLines[i]);
        }
        place(state, fmt::format("leg:line:{}", kLines[i]));
    }
    bool relay = leg.relay;
    if (ImGui::Checkbox("Worked through a relay", &relay)) {
        after.relay = relay;
        what = fmt::format("Relay of {}", switching::legMark(net, leg));
    }
    place(state, "leg:relay");
    if (leg.controls.size() > 1) {
        ImGui::SameLine(0, gap);
        if (ImGui::Button("Take this way off")) {
            ask(state, "Take off", edit::partWay(state.plan(), leg.id, *state.tying.way));
            return;
        }
        place(state, "leg:part");
    }
    const bool changed = after.letter != leg.letter || after.name != leg.name ||
                         after.circuit != leg.circuit || after.line != leg.line || after.relay != leg.relay;
    if (!what.empty() && changed) ask(state, "Change", edit::changeLeg(state.plan(), after, what));
}

/// A free way may join a leg that another way of the house works already.
void joinList(State& state, const Net& net) {
    form::caption(state, "Or let it work a leg that is there");
    ImGui::SetNextItemWidth(form::kPanelWidth * state.scale);
    std::string chosen;
    const bool open = ImGui::BeginCombo("##join", "choose a leg", ImGuiComboFlags_HeightLarge);
    place(state, "leg:join");
    if (open) {
        for (const plan::SwitchLeg& leg : net.plan().legs) {
            if (ImGui::Selectable(switching::legName(leg).c_str())) chosen = leg.id;
            place(state, fmt::format("leg:join:{}", leg.id));
        }
        ImGui::EndCombo();
    }
    if (!chosen.empty()) ask(state, "Join", edit::joinWay(state.plan(), chosen, *state.tying.way));
}

void lampLines(State& state, const Net& net, const plan::Room& room) {
    heading(state, "Lamps");
    std::string clicked;
    const Way* picked = state.tying.way ? net.way(*state.tying.way) : nullptr;
    bool any = false;
    for (const plan::Luminaire& lamp : net.plan().luminaires) {
        if (lamp.room != room.id) continue;
        any = true;
        const auto legs = net.legsOfLuminaire(lamp.id);
        std::string words = lamp.name;
        std::string mark = switching::hasOwnSwitch(lamp) ? "own switch" : "nothing works it";
        if (!legs.empty()) mark = switching::legName(*legs.front());
        const bool mine = picked != nullptr && !legs.empty() && !picked->legs.empty() &&
                          legs.front() == picked->legs.front();
        if (line(state, fmt::format("lamp:{}", lamp.id), lamp.tag.empty() ? lamp.id : lamp.tag,
                 words.empty() ? mark : fmt::format("{}: {}", words, mark),
                 mine || state.tying.lamps.contains(lamp.id), legs.empty()))
            clicked = lamp.id;
    }
    if (!any) form::note(state, "No lamp in this room yet: put some in under Furnish.");
    if (!clicked.empty()) clickLamp(state, clicked);
}

edit::Switching asEdit(const switching::Suggestion& proposal) {
    edit::Switching edit{proposal.plates, {}, proposal.leg};
    for (const auto& change : proposal.changes)
        edit.modules.push_back({change.plate, change.module, change.type});
    return edit;
}

void refreshProposals(State& state, const std::string& room_id) {
    Tying& now = state.tying;
    const auto* pack = state.packs.pack(state.plan().pack);
    if (!state.derived.house || pack == nullptr || now.proposals_room != room_id) return;
    if (now.proposals_version == state.document.version()) return;
    now.proposals = switching::suggest(*state.derived.house, state.catalogue, *pack, room_id);
    now.proposals_version = state.document.version();
}

void proposals(State& state, const plan::Room& room) {
    Tying& now = state.tying;
    if (now.proposals_room != room.id) {
        if (form::button(state, "propose", "Propose switching for this room",
                         form::kPanelWidth * state.scale)) {
            now.proposals_room = room.id;
            now.proposals_version = 0;
        }
        return;
    }
    heading(state, "Proposals");
    refreshProposals(state, room.id);
    std::optional<std::size_t> accepted;
    std::size_t shown = 0;
    for (std::size_t i = 0; i < now.proposals.size(); ++i) {
        const auto& proposal = now.proposals[i];
        if (now.put_aside.contains(proposal.title)) continue;
        ++shown;
        wrapped(proposal.title);
        form::note(state, proposal.why);
        const float half = (form::kPanelWidth * state.scale - 8 * state.scale) / 2;
        ImGui::PushID(static_cast<int>(i));
        if (form::button(state, fmt::format("accept:{}", shown), "Do this", half)) accepted = i;
        ImGui::SameLine(0, 8 * state.scale);
        if (form::button(state, fmt::format("refuse:{}", shown), "Not this", half))
            now.put_aside.insert(proposal.title);
        ImGui::PopID();
    }
    if (shown == 0) form::note(state, "Nothing to propose here: every lamp has what works it.");
    if (!accepted) return;
    const auto proposal = now.proposals[*accepted];
    runArranged(state, edit::applySwitching(state.plan(), asEdit(proposal), proposal.title));
}
} // namespace

void tyingPanel(State& state) {
    const plan::Room* standing = standingRoom(state);
    if (standing == nullptr) {
        wrapped("Go into a room to tie its switches.");
        return;
    }
    const plan::Room room = *standing;
    ImGui::PushFont(state.fonts.strong);
    wrapped(room.name.empty() ? room.id : room.name);
    ImGui::PopFont();
    std::optional<plan::WayRef> picked;
    {
        const Net& net = netOf(state);
        prompt(state, net);
    }
    proposals(state, room);
    {
        const Net& net = netOf(state);
        heading(state, "Switches");
        const auto plates = switchesOf(net, room);
        for (const plan::Plate* plate : plates)
            if (const auto way = waysOfPlate(state, net, *plate)) picked = way;
        if (plates.empty()) form::note(state, "No switch in this room yet.");
    }
    if (picked) pickWay(state, *picked);
    lampLines(state, netOf(state), room);
    if (state.tying.way) {
        const Net& net = netOf(state);
        const Way* way = net.way(*state.tying.way);
        if (way == nullptr)
            state.tying.way.reset();
        else if (way->legs.empty())
            joinList(state, net);
        else
            legDetails(state, net, *way->legs.front());
    }
    circuitLines(state);
}

void wayRows(State& state, const std::string& plate_id) {
    const Net& net = netOf(state);
    const auto ways = net.waysOf(plate_id);
    if (ways.empty()) return;
    std::optional<plan::WayRef> picked;
    int number = 0;
    for (const Way& way : ways) {
        ++number;
        ImGui::PushFont(state.fonts.small);
        ImGui::PushStyleColor(ImGuiCol_Text,
                              colour(way.legs.empty() ? state.tokens->soft_ink : state.tokens->ink));
        wrapped(fmt::format("{}  {}", ways.size() == 1 ? std::string("Works") : fmt::format("Way {}", number),
                            feedsInWords(net, way)));
        ImGui::PopStyleColor();
        ImGui::PopFont();
        if (state.seat == Seat::Designer && ImGui::IsItemClicked()) picked = way.ref;
        place(state, fmt::format("card:way:{}", number));
        if (state.seat == Seat::Designer && ImGui::IsItemHovered())
            ImGui::SetTooltip("Click to tie lamps to this way");
    }
    if (!picked) return;
    state.panel = Panel::Switching;
    state.tying.way = *picked;
}

} // namespace gangway::app
