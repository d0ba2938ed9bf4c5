// Circuits, on the panel "Switching": the designer's information for the electrician.
#include "app/edit_actions.hpp"
#include "app/furnish_parts.hpp"
#include "app/lamps.hpp"
#include "app/thing_form.hpp"
#include "app/tying.hpp"
#include "edit/leg_edits.hpp"
#include "switching/loads.hpp"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <algorithm>

namespace gangway::app {

namespace {
std::string loadWords(const switching::CircuitLoad& load) {
    std::string words;
    const auto add = [&](bool there, const std::string& part) {
        if (there) words += words.empty() ? part : fmt::format(", {}", part);
    };
    add(load.circuit == nullptr, "not described");
    add(load.rated_a > 0, fmt::format("{:.0f} A", load.rated_a));
    add(load.plates > 0, fmt::format("{} {}", load.plates, load.plates == 1 ? "plate" : "plates"));
    add(load.legs > 0, fmt::format("{} {}", load.legs, load.legs == 1 ? "leg" : "legs"));
    add(load.lighting_w > 0, fmt::format("light {:.0f} W", load.lighting_w));
    return words;
}

bool box(State& state, const char* label, const char* name, std::string& text, float width) {
    ImGui::BeginGroup();
    form::caption(state, label);
    ImGui::SetNextItemWidth(width);
    const bool entered =
        ImGui::InputText(fmt::format("##{}", name).c_str(), &text,
                         ImGuiInputTextFlags_EnterReturnsTrue | ImGuiInputTextFlags_AutoSelectAll);
    const bool left = ImGui::IsItemDeactivatedAfterEdit();
    place(state, name);
    ImGui::EndGroup();
    return entered || left;
}

void keepTexts(CircuitForm& form, const plan::Circuit& circuit, std::uint64_t version) {
    if (form.circuit == circuit.id && form.version == version) return;
    form.circuit = circuit.id;
    form.version = version;
    form.name = circuit.name;
    form.rated = fmt::format("{}", circuit.rated_a);
    form.protection = circuit.protection;
}

/// Boxes of the circuit that is open.
void circuitBoxes(State& state, const plan::Circuit& circuit) {
    CircuitForm& form = state.tying.circuit_form;
    keepTexts(form, circuit, state.document.version());
    const float gap = 8 * state.scale;
    const float third = (form::kPanelWidth * state.scale - 2 * gap) / 3;
    plan::Circuit after = circuit;
    std::string what;
    if (box(state, "Name", "circuit:name", form.name, third) && form.name != circuit.name) {
        after.name = form.name;
        what = fmt::format("Name circuit {}", form.name);
    }
    ImGui::SameLine(0, gap);
    if (box(state, "Rated, A", "circuit:rated", form.rated, third * 0.6F)) {
        char* end = nullptr;
        const double rated = std::strtod(form.rated.c_str(), &end);
        if (end == form.rated.c_str() || *end != '\0' || !(rated >= 0) || rated > 1000) {
            say(state, fmt::format("'{}' is no current; give 0 to 1000 A", form.rated));
            form.version = 0;
        } else if (rated != circuit.rated_a) {
            after.rated_a = rated;
            what = fmt::format("Rate circuit {} at {} A", circuit.name, rated);
        }
    }
    ImGui::SameLine(0, gap);
    if (box(state, "Protective device", "circuit:protection", form.protection, third * 1.4F) &&
        form.protection != circuit.protection) {
        after.protection = form.protection;
        what = fmt::format("Protective device of {}", circuit.name);
    }
    constexpr const char* kKinds[] = {"lighting", "sockets", "appliance", "motor"};
    for (int i = 0; i < 4; ++i) {
        if (i > 0) ImGui::SameLine(0, 4 * state.scale);
        if (form::chooseButton(state, kKinds[i], static_cast<int>(circuit.kind) == i,
                               (form::kPanelWidth * state.scale - 12 * state.scale) / 4)) {
            after.kind = static_cast<plan::Circuit::Kind>(i);
            what = fmt::format("Circuit {} for {}", circuit.name, kKinds[i]);
        }
        place(state, fmt::format("circuit:kind:{}", kKinds[i]));
    }
    if (!what.empty()) runArranged(state, edit::changeCircuit(state.plan(), after, what));
}
} // namespace

void circuitLines(State& state) {
    const auto* pack = state.packs.pack(state.plan().pack);
    if (pack == nullptr) return;
    if (!ImGui::CollapsingHeader("Circuits")) {
        place(state, "circuits");
        return;
    }
    place(state, "circuits");
    form::note(state, "Information for the electrician, who designs the circuits.");
    std::string clicked;
    std::optional<plan::Circuit> open;
    for (const auto& load : switching::circuitLoads(netOf(state), *pack)) {
        const std::string& name =
            load.circuit != nullptr && !load.circuit->name.empty() ? load.circuit->name : load.id;
        const bool chosen = state.tying.circuit == load.id;
        if (ImGui::Selectable(fmt::format("{}  {}##{}", name, loadWords(load), load.id).c_str(), chosen))
            clicked = load.id;
        place(state, fmt::format("circuit:{}", load.id));
        if (chosen && load.circuit != nullptr) open = *load.circuit;
    }
    if (!clicked.empty()) state.tying.circuit = state.tying.circuit == clicked ? "" : clicked;
    if (open) circuitBoxes(state, *open);
    const float width = form::kPanelWidth * state.scale;
    const bool known = std::ranges::any_of(state.plan().circuits,
                                           [&](const auto& c) { return c.id == state.tying.circuit; });
    if (!state.tying.circuit.empty() && !known) {
        if (form::button(state, "circuit-describe", "Describe this circuit", width)) {
            plan::Circuit made;
            made.id = made.name = state.tying.circuit;
            runArranged(state, edit::addCircuit(state.plan(), made));
        }
    } else if (form::button(state, "circuit-add", "Add a circuit", width)) {
        plan::Circuit made;
        made.name = fmt::format("circuit {}", state.plan().circuits.size() + 1);
        runArranged(state, edit::addCircuit(state.plan(), made));
        if (!state.plan().circuits.empty()) state.tying.circuit = state.plan().circuits.back().id;
    }
}

} // namespace gangway::app
