// The checks of meaning behind plan::validate, one file a subject. Private to src/plan.
#pragma once

#include "plan/io.hpp"

#include <fmt/format.h>

#include <map>
#include <optional>
#include <set>
#include <unordered_map>

namespace gangway::plan {

/// What reading already found to be wrong, as pointers: "/rooms/3", or "/rooms" for the whole list.
struct Trust {
    std::set<std::string> broken;
};

Diagnostics validate(const Plan& plan, const Trust& trust);

/// A plan with its look-up tables and the list the checks report to.
class Validation {
public:
    Validation(const Plan& plan, const Trust& trust);

    const Plan& plan() const { return plan_; }
    void error(std::string pointer, std::string message);
    void warning(std::string pointer, std::string message);
    Diagnostics take() { return std::move(list_); }

    /// Whether reading found nothing wrong in this element, such as ("rooms", 3).
    bool sound(std::string_view list, std::size_t index) const;

    /// Elements by id; nullptr for none. The first of two with one id.
    const Room* room(const std::string& id) const { return look(rooms_, id); }
    const Furniture* furniture(const std::string& id) const { return look(furniture_, id); }
    const Plate* plate(const std::string& id) const { return look(plates_, id); }
    /// A room whose own data is right, so that walls and heights can be judged by it.
    const Room* soundRoom(const std::string& id) const;

    /// Reports a reference to something that is not there, with the nearest id there is. False when it
    /// dangles.
    template <class T>
    bool refers(const std::vector<T>& list, std::string_view list_name, const std::string& id,
                std::string pointer, const std::string& subject, std::string_view what) {
        const auto& ids = idsOf(list, list_name);
        if (ids.contains(id)) return true;
        dangling(list_name, {ids.begin(), ids.end()}, id, std::move(pointer), subject, what);
        return false;
    }

    /// The wall of a room, or nullopt with the problem reported.
    std::optional<std::size_t> wallOf(const Room& room, const std::string& wall, std::string pointer,
                                      const std::string& subject);

private:
    template <class T>
    static const T* look(const std::unordered_map<std::string_view, const T*>& table, const std::string& id) {
        const auto found = table.find(id);
        return found == table.end() ? nullptr : found->second;
    }
    template <class T>
    const std::set<std::string>& idsOf(const std::vector<T>& list, std::string_view list_name) {
        const auto [entry, made] = ids_.try_emplace(std::string(list_name));
        if (made)
            for (const T& element : list)
                entry->second.insert(element.id);
        return entry->second;
    }
    void dangling(std::string_view list_name, const std::vector<std::string>& known, const std::string& id,
                  std::string pointer, const std::string& subject, std::string_view what);

    const Plan& plan_;
    const Trust& trust_;
    Diagnostics list_;
    std::unordered_map<std::string_view, const Room*> rooms_;
    std::unordered_map<std::string_view, const Furniture*> furniture_;
    std::unordered_map<std::string_view, const Plate*> plates_;
    std::unordered_map<std::string, std::set<std::string>> ids_;
};

void validateIds(Validation& v);
void validateRooms(Validation& v);
void validateOpenings(Validation& v);
void validateFurniture(Validation& v);
void validatePlates(Validation& v);
void validateReferences(Validation& v);
/// Called for each room by validateRooms; `pointer` and `subject` are the room's.
void validateCeiling(Validation& v, const Room& room, const std::string& pointer, const std::string& subject);

/// Left and right end of a wall's edge on plan.
std::pair<Vec2, Vec2> edgeOf(const Room& room, std::size_t wall);
double wallLength(const Room& room, std::size_t wall);
/// Ceiling height over a point of a wall; for the sides of a column under a slope the highest there is.
double ceilingOverWall(const Room& room, std::size_t wall, double u_mm);

/// Drawn lengths are compared with this much play, in mm: less than anybody can set out.
inline constexpr double kPlayMm = 0.5;

} // namespace gangway::plan
