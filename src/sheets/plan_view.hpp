// A storey, or a room of it, as one picture on a sheet. Private to sheets/.
#pragma once

#include "sheets/storey_plan.hpp"
#include "sheets/storey_plan_parts.hpp"

#include <string>
#include <vector>

namespace gangway::sheets {

/// What one plan shows.
struct PlanSubject {
    const plan::Storey* storey = nullptr;
    const plan::Room* room = nullptr; ///< nullptr: the whole storey
    std::string title() const { return room != nullptr ? room->name : storey->name; }
};

/// A plan drawn at some scale around the house's zero point.
struct PlanPicture {
    double scale = 50;
    std::vector<Item> items;
    std::vector<drawing::PlacedObject> placed;
    Rect extent;
};

/// How much paper is shown around a single room: its walls.
double shownAround(double scale);

/// The base with its furniture light, what lies between, and the symbols. Of a single room only the walls
/// around it are shown.
PlanPicture planPicture(const StoreyBase& base, const std::vector<Item>& between,
                        const StoreySymbols& symbols, const plan::Room* room);

/// Words go over lines, on white where a line of something else runs through them: leaders of tags that were
/// placed later must not cross out those placed before.
void putTextsOver(std::vector<Item>& items);

/// Leaves only what belongs to these plates and luminaires, by id, sorted.
void keepOnly(StoreySymbols& symbols, const std::vector<std::string>& ids);

/// Ids of the plates and luminaires of a room, sorted.
std::vector<std::string> thingsIn(const plan::Plan& plan, const plan::Room& room);

} // namespace gangway::sheets
