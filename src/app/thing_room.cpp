// The cards of a room and of one of its walls.
#include "app/panels.hpp"
#include "app/thing_cards.hpp"
#include "app/thing_place.hpp"
#include "edit/number_shown.hpp"
#include "edit/opening_edits.hpp"
#include "edit/room_edits.hpp"
#include "geometry/frames.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace gangway::app::form {

namespace {
struct Structure {
    plan::WallStructure structure;
    const char* name;
};
constexpr std::array kStructures{Structure{plan::WallStructure::Unknown, "not known"},
                                 Structure{plan::WallStructure::Masonry, "masonry"},
                                 Structure{plan::WallStructure::Stud, "stud"},
                                 Structure{plan::WallStructure::Concrete, "concrete"},
                                 Structure{plan::WallStructure::Timber, "timber"},
                                 Structure{plan::WallStructure::None, "none: open to beyond"}};

/// What the stage draws of a floor: the words of Room::floor_finish.
constexpr std::array kFinishes{"", "boards", "tiles", "carpet", "screed"};

double lengthOf(const plan::Room& room, std::size_t wall) {
    const geometry::WallEdge edge = geometry::wallEdge(room, wall);
    return plan::length(edge.to_mm - edge.from_mm);
}

std::string areaInWords(const plan::Room& room, plan::DisplayUnits units) {
    double area_mm2 = std::abs(geometry::signedArea(room.outline));
    for (const auto& column : room.columns)
        area_mm2 -= std::abs(geometry::signedArea(column));
    constexpr double kSquareFoot_mm2 = 304.8 * 304.8;
    if (units == plan::DisplayUnits::FeetInches)
        return fmt::format("{:.1f} sq ft", area_mm2 / kSquareFoot_mm2);
    return fmt::format("{:.2f} m\u00B2", area_mm2 / 1e6);
}

/// Adds an opening near the wall's middle and chooses it.
void addOpening(State& state, const plan::Room& room, std::size_t wall, plan::Opening::Kind kind) {
    plan::Opening opening = edit::usualOpening(kind);
    opening.room = room.id;
    opening.wall = room.walls[wall].id;
    opening.left_mm = (lengthOf(room, wall) - opening.width_mm) / 2;
    ask(state, "add", edit::addOpening(state.plan(), opening),
        [](State& s) { chooseThing(s, {sheets::PlanThing::Opening, s.plan().openings.back().id, {}}); });
}

void wallLengths(State& state, const plan::Room& room, std::size_t wall) {
    ThingForm& form = state.furnish.form;
    boxes(state, {lengthBox(state, "length", "Length", lengthOf(room, wall),
                            [&state, id = room.id, wall, stays = form.stays](double value) {
                                return edit::setWallLength(state.plan(), id, wall, value, stays);
                            }),
                  lengthBox(
                      state, "move", "Move outwards by", 0,
                      [&state, id = room.id, wall, both = form.both_sides](double value) {
                          return edit::moveWall(state.plan(), id, wall, value,
                                                both ? edit::Beyond::Together : edit::Beyond::Stays);
                      },
                      "Out of the room; a minus sign moves it inwards")});
    caption(state, "A new length keeps");
    const float half = (ImGui::GetContentRegionAvail().x - 4 * state.scale) / 2;
    if (chooseButton(state, "left corner", form.stays == edit::End::Left, half)) form.stays = edit::End::Left;
    place(state, "thing:stays:left");
    ImGui::SameLine(0, 4 * state.scale);
    if (chooseButton(state, "right corner", form.stays == edit::End::Right, half))
        form.stays = edit::End::Right;
    place(state, "thing:stays:right");
    caption(state, "Moving takes along");
    if (chooseButton(state, "both sides", form.both_sides, half)) form.both_sides = true;
    place(state, "thing:beyond:both");
    ImGui::SameLine(0, 4 * state.scale);
    if (chooseButton(state, "this face only", !form.both_sides, half)) form.both_sides = false;
    place(state, "thing:beyond:this");
}

void wallMatter(State& state, const plan::Room& room, std::size_t wall) {
    const plan::Wall now = room.walls[wall];
    const auto change = [&state, id = room.id, wall, name = now.id](const plan::Wall& changed,
                                                                    const char* what) {
        return edit::changeWall(state.plan(), id, wall, changed, fmt::format("{} of wall {}", what, name));
    };
    boxes(state, {textBox("name", "Name", now.id,
                          [now, change](const std::string& text) {
                              plan::Wall changed = now;
                              changed.id = text;
                              return change(changed, "Name");
                          }),
                  lengthBox(
                      state, "thickness", "Thickness", now.thickness_mm,
                      [&state, id = room.id, wall](double value) {
                          return edit::setWallThickness(state.plan(), id, wall, value);
                      },
                      "Structure only, without plaster or boards")});
    std::vector<std::string> words;
    for (const auto& one : kStructures)
        words.emplace_back(one.name);
    const auto chosen = static_cast<std::size_t>(
        std::ranges::find(kStructures, now.structure, &Structure::structure) - kStructures.begin());
    list(state, "structure", "Built of", words, chosen, [now, change](std::size_t i) {
        plan::Wall changed = now;
        changed.structure = kStructures[i].structure;
        return change(changed, "Structure");
    });
    colourRow(state, "colour", "Colour", now.colour, [now, change](const std::string& hex) {
        plan::Wall changed = now;
        changed.colour = hex;
        return change(changed, "Colour");
    });
}

void storeyAndCeiling(State& state, const plan::Room& room) {
    std::vector<std::string> words;
    std::vector<std::string> ids;
    std::size_t chosen = 0;
    for (const auto& storey : state.plan().storeys) {
        if (storey.id == room.storey) chosen = ids.size();
        ids.push_back(storey.id);
        words.push_back(storey.name.empty() ? storey.id : storey.name);
    }
    list(state, "storey", "Storey", words, chosen, [&state, id = room.id, ids](std::size_t i) {
        return edit::setRoomStorey(state.plan(), id, ids[i]);
    });
    const auto& heights = room.ceiling.heights_mm;
    const bool sloped =
        heights.size() > 1 && std::ranges::any_of(heights, [&](double h) { return h != heights.front(); });
    boxes(state, {lengthBox(state, "ceiling", sloped ? "Ceiling, first corner" : "Ceiling height",
                            heights.empty() ? 0 : heights.front(), [&state, id = room.id](double value) {
                                return edit::setCeilingHeight(state.plan(), id, value);
                            })});
    if (sloped) note(state, "The ceiling slopes. A height typed here makes it flat.");
}
} // namespace

std::string roomTitle(const plan::Plan& plan, const std::string& room_id) {
    const plan::Room* room = plan::findRoom(plan, room_id);
    return room == nullptr || room->name.empty() ? room_id : room->name;
}

void wallCard(State& state, const plan::Room& room, std::size_t wall) {
    note(state, room.name.empty() ? room.id : room.name);
    if (wall < room.outline.size()) wallLengths(state, room, wall);
    wallMatter(state, room, wall);
    if (wall >= room.outline.size()) {
        note(state, "A side of a column.");
        return;
    }
    boxes(state, {lengthBox(state, "split", "Split, from its left corner", lengthOf(room, wall) / 2,
                            [&state, id = room.id, wall](double value) {
                                return edit::splitWall(state.plan(), id, wall, value);
                            })});
    const float half = (ImGui::GetContentRegionAvail().x - 8 * state.scale) / 2;
    if (button(state, "split-now", "Split in the middle", half))
        ask(state, "split", edit::splitWall(state.plan(), room.id, wall, lengthOf(room, wall) / 2));
    ImGui::SameLine();
    if (button(state, "remove-corner", "Join to the left wall", half))
        ask(state, "split", edit::removeCorner(state.plan(), room.id, wall));
    if (button(state, "add-door", "Add a door", half))
        addOpening(state, room, wall, plan::Opening::Kind::HingedDoor);
    ImGui::SameLine();
    if (button(state, "add-window", "Add a window", half))
        addOpening(state, room, wall, plan::Opening::Kind::Window);
    mistake(state, "add");
}

void roomCard(State& state, const plan::Room& room) {
    note(state, fmt::format("{}, {} walls", areaInWords(room, state.plan().units), room.walls.size()));
    boxes(state, {textBox("name", "Name", room.name,
                          [&state, id = room.id](const std::string& text) {
                              return edit::renameRoom(state.plan(), id, text);
                          }),
                  textBox("letter", "Letter of its tags", room.letter,
                          [&state, id = room.id](const std::string& text) {
                              return edit::setRoomLetter(state.plan(), id, text);
                          })});
    storeyAndCeiling(state, room);
    std::vector<std::string> words;
    for (const char* finish : kFinishes)
        words.emplace_back(*finish == '\0' ? "not stated" : finish);
    const auto chosen = static_cast<std::size_t>(
        std::ranges::find_if(kFinishes, [&](const char* finish) { return room.floor_finish == finish; }) -
        kFinishes.begin());
    list(state, "floor", "Floor finish", words, chosen, [&state, id = room.id](std::size_t i) {
        return edit::setFloorFinish(state.plan(), id, kFinishes[i]);
    });
    colourRow(state, "colour", "Wall colour", room.wall_colour,
              [&state, id = room.id](const std::string& hex) {
                  return edit::setWallColour(state.plan(), id, hex);
              });
    ImGui::Dummy({0, 2 * state.scale});
    removeButton(state, edit::removeRooms(state.plan(), {room.id}));
}

} // namespace gangway::app::form
