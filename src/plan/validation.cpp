#include "plan/validation.hpp"

#include "plan/wall_names.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::plan {

namespace {
template <class T>
std::unordered_map<std::string_view, const T*> tableOf(const std::vector<T>& list) {
    std::unordered_map<std::string_view, const T*> table;
    table.reserve(list.size());
    for (const T& element : list)
        table.emplace(element.id, &element);
    return table;
}
} // namespace

Validation::Validation(const Plan& plan, const Trust& trust)
    : plan_(plan), trust_(trust), rooms_(tableOf(plan.rooms)), furniture_(tableOf(plan.furniture)),
      plates_(tableOf(plan.plates)) {}

void Validation::error(std::string pointer, std::string message) {
    list_.push_back({Level::Error, 0, 0, std::move(pointer), std::move(message)});
}

void Validation::warning(std::string pointer, std::string message) {
    list_.push_back({Level::Warning, 0, 0, std::move(pointer), std::move(message)});
}

bool Validation::sound(std::string_view list, std::size_t index) const {
    if (trust_.broken.empty()) return true;
    return !trust_.broken.contains(fmt::format("/{}", list)) &&
           !trust_.broken.contains(fmt::format("/{}/{}", list, index));
}

const Room* Validation::soundRoom(const std::string& id) const {
    const Room* found = room(id);
    if (found == nullptr || found->outline.size() < 3 || found->walls.size() < found->outline.size())
        return nullptr;
    const auto heights = found->ceiling.heights_mm.size();
    if (heights != 1 && heights != found->outline.size()) return nullptr;
    return sound("rooms", static_cast<std::size_t>(found - plan_.rooms.data())) ? found : nullptr;
}

void Validation::dangling(std::string_view list_name, const std::vector<std::string>& known,
                          const std::string& id, std::string pointer, const std::string& subject,
                          std::string_view what) {
    // While the list could not be read, or one of it has no readable id, that one may be the one meant.
    if (trust_.broken.contains(fmt::format("/{}", list_name))) return;
    if (std::ranges::find(known, std::string()) != known.end()) return;
    const std::string near = nearestWord(id, known);
    std::string advice = near.empty() ? fmt::format("add it under '{}' or name one that is there", list_name)
                                      : fmt::format("did you mean '{}'?", near);
    error(std::move(pointer), fmt::format("{}: there is no {} '{}'; {}", subject, what, id, advice));
}

std::pair<Vec2, Vec2> edgeOf(const Room& room, std::size_t wall) {
    const auto edge = [](const std::vector<Vec2>& polygon, std::size_t i) {
        return std::pair(polygon[i], polygon[(i + 1) % polygon.size()]);
    };
    if (wall < room.outline.size()) return edge(room.outline, wall);
    wall -= room.outline.size();
    for (const auto& column : room.columns) {
        if (wall < column.size()) return edge(column, wall);
        wall -= column.size();
    }
    return {};
}

double wallLength(const Room& room, std::size_t wall) {
    const auto [from, to] = edgeOf(room, wall);
    return length(to - from);
}

double ceilingOverWall(const Room& room, std::size_t wall, double u_mm) {
    const std::vector<double>& heights = room.ceiling.heights_mm;
    if (heights.size() == 1) return heights.front();
    // A column stands somewhere under the slope; only what is above its highest point is surely wrong.
    if (wall >= room.outline.size()) return *std::ranges::max_element(heights);
    const double left = heights[wall];
    const double right = heights[(wall + 1) % heights.size()];
    const double along = wallLength(room, wall);
    return along > 0 ? std::lerp(left, right, std::clamp(u_mm / along, 0.0, 1.0)) : std::max(left, right);
}

std::optional<std::size_t> Validation::wallOf(const Room& room, const std::string& wall, std::string pointer,
                                              const std::string& subject) {
    const auto index = wallIndex(room, wall);
    if (index && *index < edgeCount(room)) return index;
    std::string names;
    for (const Wall& known : room.walls)
        names += fmt::format("{}'{}'", names.empty() ? "" : ", ", known.id);
    error(std::move(pointer),
          fmt::format("{}: room '{}' has no wall '{}'; its walls are {}", subject, room.id, wall, names));
    return std::nullopt;
}

Diagnostics validate(const Plan& plan, const Trust& trust) {
    Validation v(plan, trust);
    validateIds(v);
    validateRooms(v);
    validateOpenings(v);
    validateFurniture(v);
    validatePlates(v);
    validateReferences(v);
    return v.take();
}

Diagnostics validate(const Plan& plan) {
    return validate(plan, Trust{});
}

} // namespace gangway::plan
