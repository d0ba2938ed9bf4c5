#include "app/thing_form.hpp"

#include "app/panels.hpp"
#include "edit/number_shown.hpp"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>

namespace gangway::app::form {

namespace {
constexpr float kGap = 8; ///< between boxes side by side, pixels at scale 1

struct Chip {
    const char* name;
    const char* hex;
};
/// A few paints and woods to start from; our own choice.
constexpr Chip kChips[] = {{"white", "#F4F1EA"},  {"oat", "#DCCFB8"},  {"oak", "#B98A5A"},
                           {"walnut", "#6B4A34"}, {"sage", "#8FA089"}, {"slate", "#5C6B73"},
                           {"clay", "#B0664A"},   {"ink", "#2B343A"}};

unsigned rgbOf(const std::string& hex) {
    unsigned rgb = 0;
    if (hex.size() == 7) std::from_chars(hex.data() + 1, hex.data() + 7, rgb, 16);
    return rgb;
}

bool isHexColour(const std::string& text) {
    return text.size() == 7 && text.front() == '#' &&
           std::all_of(text.begin() + 1, text.end(), [](unsigned char c) { return std::isxdigit(c) != 0; });
}

/// A number as people type it, with a comma or a point.
std::expected<double, std::string> plainNumber(std::string text) {
    std::ranges::replace(text, ',', '.');
    const std::size_t first = text.find_first_not_of(' ');
    const std::size_t last = text.find_last_not_of(' ');
    if (first == std::string::npos) return std::unexpected("give a number");
    text = text.substr(first, last - first + 1);
    double value = 0;
    const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
    if (read.ec != std::errc{} || read.ptr != text.data() + text.size())
        return std::unexpected(fmt::format("'{}' is no number", text));
    return value;
}

void agreeOn(State& state, const Box& box) {
    ThingForm& form = state.furnish.form;
    const std::string text = form.typed[box.key];
    form.mistakes.erase(box.key);
    if (text == box.shown) {
        form.typed.erase(box.key);
        return;
    }
    const Refusable command = box.apply(text);
    ask(state, box.key, command);
    if (command) form.typed.erase(box.key);
}

void drawBox(State& state, const Box& box, float width) {
    ThingForm& form = state.furnish.form;
    ImGui::BeginGroup();
    caption(state, box.label);
    const auto typed = form.typed.find(box.key);
    std::string text = typed == form.typed.end() ? box.shown : typed->second;
    const bool wrong = form.mistakes.contains(box.key);
    if (wrong) ImGui::PushStyleColor(ImGuiCol_Border, colour(state.tokens->fault));
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {9 * state.scale, 6 * state.scale});
    ImGui::SetNextItemWidth(width);
    const bool entered =
        ImGui::InputText(fmt::format("##{}", box.key).c_str(), &text,
                         ImGuiInputTextFlags_EnterReturnsTrue | ImGuiInputTextFlags_AutoSelectAll);
    if (ImGui::IsItemEdited()) form.typed[box.key] = text;
    const bool left = ImGui::IsItemDeactivatedAfterEdit();
    if (ImGui::IsItemHovered() && !box.help.empty()) ImGui::SetTooltip("%s", box.help.c_str());
    place(state, "thing:" + box.key);
    ImGui::PopStyleVar();
    if (wrong) ImGui::PopStyleColor();
    ImGui::EndGroup();
    if ((entered || left) && form.typed.contains(box.key)) agreeOn(state, box);
}

} // namespace

bool chooseButton(const State& state, const char* words, bool chosen, float width) {
    const Tokens& t = *state.tokens;
    ImGui::PushStyleColor(ImGuiCol_Button, colour(chosen ? t.accent : t.raised));
    ImGui::PushStyleColor(ImGuiCol_ButtonHovered, colour(chosen ? t.accent : t.quiet, chosen ? 1.0F : 0.5F));
    ImGui::PushStyleColor(ImGuiCol_Text, colour(chosen ? t.on_accent : t.ink));
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {6 * state.scale, 6 * state.scale});
    const bool clicked = ImGui::Button(words, {width, 0});
    ImGui::PopStyleVar();
    ImGui::PopStyleColor(3);
    return clicked;
}

Box lengthBox(const State& state, const std::string& key, const std::string& label, double value_mm,
              std::function<Refusable(double value_mm)> apply, const std::string& help) {
    const auto units = state.plan().units;
    return {key, label, edit::shownLength(value_mm, units),
            [units, apply = std::move(apply)](const std::string& text) -> Refusable {
                const auto value = edit::parseLengthIn(text, units);
                if (!value) return std::unexpected(value.error());
                return apply(*value);
            },
            help};
}

Box numberBox(const std::string& key, const std::string& label, double value,
              std::function<Refusable(double value)> apply, const std::string& help) {
    return {key, label, fmt::format("{:.6g}", value),
            [apply = std::move(apply)](const std::string& text) -> Refusable {
                const auto number = plainNumber(text);
                if (!number) return std::unexpected(number.error());
                return apply(*number);
            },
            help};
}

Box textBox(const std::string& key, const std::string& label, const std::string& value,
            std::function<Refusable(const std::string& text)> apply, const std::string& help) {
    return {key, label, value, std::move(apply), help};
}

void boxes(State& state, const std::vector<Box>& row, std::size_t columns) {
    if (columns == 0) columns = row.size();
    const float gap = kGap * state.scale;
    const auto many = static_cast<float>(columns);
    const float width = std::floor((ImGui::GetContentRegionAvail().x - gap * (many - 1)) / many);
    for (std::size_t first = 0; first < row.size(); first += columns) {
        const std::size_t last = std::min(first + columns, row.size());
        for (std::size_t i = first; i < last; ++i) {
            if (i > first) ImGui::SameLine(0, gap);
            drawBox(state, row[i], width);
        }
        for (std::size_t i = first; i < last; ++i)
            mistake(state, row[i].key, row[i].label);
    }
}

void caption(const State& state, const std::string& words) {
    ImGui::PushFont(state.fonts.small);
    // Drawn, not set as text: text beside a box would be lowered to the line of the box's words.
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImGui::GetWindowDrawList()->AddText(at, packed(state.tokens->soft_ink), words.c_str());
    ImGui::Dummy(ImGui::CalcTextSize(words.c_str()));
    ImGui::PopFont();
}

void note(const State& state, const std::string& words) {
    ImGui::PushFont(state.fonts.small);
    ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->soft_ink));
    wrapped(words);
    ImGui::PopStyleColor();
    ImGui::PopFont();
}

void mistake(State& state, const std::string& key, const std::string& label) {
    const auto found = state.furnish.form.mistakes.find(key);
    if (found == state.furnish.form.mistakes.end()) return;
    ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->fault));
    wrapped(label.empty() ? found->second : fmt::format("{}: {}", label, found->second));
    ImGui::PopStyleColor();
    place(state, "thing-mistake:" + key);
}

void ask(State& state, const std::string& key, const Refusable& command, std::function<void(State&)> then) {
    ThingForm& form = state.furnish.form;
    form.mistakes.erase(key);
    if (!command) {
        form.mistakes[key] = command.error();
        return;
    }
    form.todo = *command;
    form.then = std::move(then);
}

void choice(State& state, const std::string& key, const std::string& label,
            const std::vector<std::string>& words, std::size_t chosen,
            const std::function<Refusable(std::size_t)>& apply) {
    if (!label.empty()) caption(state, label);
    const float gap = 4 * state.scale;
    const auto many = static_cast<float>(words.size());
    const float width = std::floor((ImGui::GetContentRegionAvail().x - gap * (many - 1)) / many);
    ImGui::PushID(key.c_str());
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) ImGui::SameLine(0, gap);
        if (chooseButton(state, words[i].c_str(), i == chosen, width) && i != chosen)
            ask(state, key, apply(i));
        place(state, fmt::format("thing:{}:{}", key, words[i]));
    }
    ImGui::PopID();
    mistake(state, key);
}

void list(State& state, const std::string& key, const std::string& label,
          const std::vector<std::string>& words, std::size_t chosen,
          const std::function<Refusable(std::size_t)>& apply) {
    caption(state, label);
    ImGui::SetNextItemWidth(-1);
    const char* shown = chosen < words.size() ? words[chosen].c_str() : "";
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {9 * state.scale, 6 * state.scale});
    const bool open = ImGui::BeginCombo(fmt::format("##{}", key).c_str(), shown, ImGuiComboFlags_HeightLarge);
    ImGui::PopStyleVar();
    place(state, "thing:" + key);
    if (open) {
        for (std::size_t i = 0; i < words.size(); ++i) {
            if (ImGui::Selectable(words[i].c_str(), i == chosen) && i != chosen) ask(state, key, apply(i));
            place(state, fmt::format("thing:{}:{}", key, words[i]));
        }
        ImGui::EndCombo();
    }
    mistake(state, key);
}

void colourRow(State& state, const std::string& key, const std::string& label, const std::string& value,
               const std::function<Refusable(const std::string&)>& apply) {
    caption(state, label);
    const float s = state.scale;
    const float side = 24 * s;
    ImGui::PushID(key.c_str());
    for (const Chip& chip : kChips) {
        const ImVec2 corner = ImGui::GetCursorScreenPos();
        const ImVec2 end{corner.x + side, corner.y + side};
        if (ImGui::InvisibleButton(chip.hex, {side, side}) && value != chip.hex)
            ask(state, key, apply(chip.hex));
        place(state, fmt::format("thing:{}:{}", key, chip.name));
        if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s", chip.name);
        ImDrawList& draw = *ImGui::GetWindowDrawList();
        draw.AddRectFilled(corner, end, packed(rgbOf(chip.hex)), 5 * s);
        const bool chosen = value == chip.hex;
        draw.AddRect(corner, end, packed(chosen ? state.tokens->accent : state.tokens->quiet), 5 * s, 0,
                     (chosen ? 2.5F : 1.0F) * s);
        ImGui::SameLine(0, 6 * s);
    }
    ImGui::NewLine();
    ImGui::PopID();
    boxes(state,
          {textBox(key, "Or #RRGGBB; empty is as usual", value, [apply](const std::string& hex) -> Refusable {
              if (!hex.empty() && !isHexColour(hex))
                  return std::unexpected("write a colour as #RRGGBB, such as #F6F2EA");
              return apply(hex);
          })});
}

bool button(State& state, const std::string& key, const char* words, float width) {
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {8 * state.scale, 7 * state.scale});
    const bool clicked = ImGui::Button(words, {width, 0});
    ImGui::PopStyleVar();
    place(state, "thing:" + key);
    return clicked;
}

void removeButton(State& state, const Refusable& removal) {
    ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->fault));
    const bool clicked = button(state, "remove", "Remove", ImGui::GetContentRegionAvail().x);
    ImGui::PopStyleColor();
    if (removal) {
        const std::size_t with = removal->name.find(" with ");
        if (with != std::string::npos)
            note(state, fmt::format("Goes with it: {}", removal->name.substr(with + 6)));
    }
    if (clicked) ask(state, "remove", removal, [](State& s) { s.thing.reset(); });
    mistake(state, "remove");
}

} // namespace gangway::app::form
