#include "edit/wording.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <fmt/format.h>

namespace gangway::edit::detail {

std::string shownMm(double value_mm) {
    return fmt::format("{:.10g} mm", std::round(value_mm * 10) / 10 + 0.0);
}

std::string counted(std::size_t count, std::string_view one, std::string_view many) {
    return fmt::format("{} {}", count, count == 1 ? one : many);
}

std::string listed(const std::vector<std::string>& parts) {
    std::string text;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const std::string_view joint = i == 0 ? "" : i + 1 == parts.size() ? " and " : ", ";
        text += fmt::format("{}{}", joint, parts[i]);
    }
    return text;
}

std::string roomName(const plan::Room& room) {
    if (room.name.empty()) return fmt::format("'{}'", room.id);
    const auto plain = [](unsigned char c) { return std::islower(c) != 0 || c == ' ' || c == '-'; };
    const auto first = static_cast<unsigned char>(room.name.front());
    if (std::isalpha(first) == 0 || room.name.size() < 3 ||
        !std::all_of(room.name.begin() + 1, room.name.end(), plain))
        return fmt::format("'{}'", room.name);
    return fmt::format("the {:c}{}", static_cast<char>(std::tolower(first)), room.name.substr(1));
}

std::string wallName(const plan::Room& room, std::size_t wall) {
    return fmt::format("wall {} of {}", wall < room.walls.size() ? room.walls[wall].id : "?", roomName(room));
}

std::string_view openingWord(plan::Opening::Kind kind) {
    switch (kind) {
    case plan::Opening::Kind::Window:
        return "window";
    case plan::Opening::Kind::Plain:
        return "opening";
    case plan::Opening::Kind::Hatch:
        return "hatch";
    default:
        return "door";
    }
}

std::string openingName(const plan::Opening& opening) {
    return fmt::format("{} '{}'", openingWord(opening.kind),
                       opening.name.empty() ? opening.id : opening.name);
}

std::string pieceName(const plan::Furniture& piece) {
    return piece.name.empty() ? piece.kind : piece.name;
}

std::string lampName(const plan::Luminaire& lamp) {
    if (!lamp.tag.empty()) return lamp.tag;
    return lamp.name.empty() ? lamp.id : lamp.name;
}

const plan::Opening* findOpening(const plan::Plan& plan, const std::string& id) {
    const auto found = std::ranges::find(plan.openings, id, &plan::Opening::id);
    return found == plan.openings.end() ? nullptr : &*found;
}

std::string withoutNumber(const std::string& id) {
    const std::size_t dash = id.rfind('-');
    if (dash == std::string::npos || dash == 0 || dash + 1 == id.size()) return id;
    const bool number = std::all_of(id.begin() + static_cast<std::ptrdiff_t>(dash) + 1, id.end(),
                                    [](unsigned char c) { return std::isdigit(c) != 0; });
    return number ? id.substr(0, dash) : id;
}

} // namespace gangway::edit::detail
