// The card of a luminaire.
#include "app/panels.hpp"
#include "app/thing_cards.hpp"
#include "app/thing_place.hpp"
#include "edit/luminaire_edits.hpp"
#include "geometry/frames.hpp"
#include "lighting/ies.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gangway::app::form {

namespace {
using Kind = plan::Luminaire::Kind;
using On = plan::Host::Kind;

std::string called(const plan::Luminaire& lamp) {
    if (!lamp.tag.empty()) return lamp.tag;
    return lamp.name.empty() ? lamp.id : lamp.name;
}

/// Kinds that may hang where the lamp hangs.
std::vector<Kind> kindsFor(const plan::Luminaire& lamp) {
    std::vector<Kind> kinds;
    switch (lamp.host.kind) {
    case On::Ceiling:
        kinds = {Kind::Ceiling, Kind::Pendant, Kind::Recessed, Kind::Linear};
        break;
    case On::Wall:
        kinds = {Kind::Wall, Kind::Linear};
        break;
    case On::Floor:
        kinds = {Kind::Floor, Kind::Recessed};
        break;
    case On::Furniture:
        kinds = {Kind::UnderUnit, Kind::Table, Kind::Linear};
        break;
    }
    if (std::ranges::find(kinds, lamp.kind) == kinds.end()) kinds.push_back(lamp.kind);
    return kinds;
}

Refusable movedTo(const State& state, const plan::Luminaire& lamp, double u_mm, double v_mm) {
    plan::Host host = lamp.host;
    host.u_mm = u_mm;
    host.v_mm = v_mm;
    return edit::moveLuminaires(state.plan(), {{lamp.id, host, {}}});
}

void placeOnWall(State& state, const plan::Luminaire& lamp, const geometry::Frame& frame) {
    const double length = frame.length_mm;
    const auto within = [length](double u_mm) { return u_mm >= 0 && u_mm <= length; };
    const auto to = [&state, lamp, within](double u_mm, double v_mm) -> Refusable {
        if (!within(u_mm)) return std::unexpected("that lies past the wall's end");
        return movedTo(state, lamp, u_mm, v_mm);
    };
    const plan::Host& host = lamp.host;
    note(state, host.kind == On::Wall ? fmt::format("On wall {}", host.wall)
                                      : fmt::format("On the {} of the piece", host.face));
    boxes(state,
          {lengthBox(state, "left", "Left", host.u_mm,
                     [to, v = host.v_mm](double value) { return to(value, v); }),
           lengthBox(state, "right", "Right", length - host.u_mm,
                     [to, length, v = host.v_mm](double value) { return to(length - value, v); }),
           lengthBox(state, "height", host.face == "top" || host.face == "bottom" ? "Up the face" : "Height",
                     host.v_mm, [to, u = host.u_mm](double value) { return to(u, value); })});
}

void placeInRoom(State& state, const plan::Luminaire& lamp, const plan::Room& room) {
    const plan::Vec2 at = southWest(room) + plan::Vec2{lamp.host.u_mm, lamp.host.v_mm};
    const auto around = distancesAround(room, at);
    std::vector<Box> row;
    for (std::size_t side = 0; side < around.size(); ++side) {
        if (!around[side]) continue;
        const plan::Vec2 way = towards(static_cast<Compass>(side));
        row.push_back(lengthBox(state, fmt::format("to-{}", kCompassWords[side]), kCompassWords[side],
                                *around[side], [&state, lamp, way, from = *around[side]](double value) {
                                    const plan::Vec2 by = way * (from - value);
                                    return movedTo(state, lamp, lamp.host.u_mm + by.x, lamp.host.v_mm + by.y);
                                }));
    }
    note(state, lamp.host.kind == On::Floor ? "On the floor; its middle to the walls around it"
                                            : "On the ceiling; its middle to the walls around it");
    boxes(state, row, 2);
}

void position(State& state, const plan::Luminaire& lamp) {
    if (lamp.host.kind == On::Ceiling || lamp.host.kind == On::Floor) {
        if (const plan::Room* room = plan::findRoom(state.plan(), lamp.room)) placeInRoom(state, lamp, *room);
    } else if (const auto frame = geometry::hostFrame(state.plan(), lamp.room, lamp.host)) {
        placeOnWall(state, lamp, *frame);
    }
}

Refusable changed(const State& state, const plan::Luminaire& lamp, const std::string& what) {
    return edit::changeLuminaire(state.plan(), lamp, what);
}

/// A number of the lamp with its name in the step: "Watts of K-L01".
std::function<Refusable(double)> part(const State& state, const plan::Luminaire& lamp,
                                      double plan::Luminaire::* value, const char* name) {
    return [&state, lamp, value, name](double number) {
        plan::Luminaire after = lamp;
        after.*value = number;
        return changed(state, after, fmt::format("{} of {}", name, called(lamp)));
    };
}

void body(State& state, const plan::Luminaire& lamp) {
    using L = plan::Luminaire;
    std::vector<Box> row{lengthBox(state, "size", lamp.kind == Kind::Linear ? "Length" : "Diameter",
                                   lamp.size_mm, part(state, lamp, &L::size_mm, "Size"))};
    if (lamp.kind == Kind::Pendant)
        row.push_back(lengthBox(state, "drop", "Drop", lamp.drop_mm, part(state, lamp, &L::drop_mm, "Drop"),
                                "From the ceiling to the underside of the shade"));
    if (lamp.kind == Kind::Linear)
        row.push_back(numberBox("turn", "Turn, degrees", lamp.turn_deg,
                                part(state, lamp, &L::turn_deg, "Turn"), "Counter-clockwise from east"));
    boxes(state, row, 2);
    boxes(state,
          {numberBox("watts", "Watts", lamp.watts, part(state, lamp, &L::watts, "Watts")),
           numberBox("lumens", "Lumens", lamp.lumens, part(state, lamp, &L::lumens, "Lumens")),
           numberBox("kelvin", "Kelvin", lamp.kelvin, part(state, lamp, &L::kelvin, "Colour temperature"))});
    boxes(state, {numberBox("beam", "Beam, degrees", lamp.beam_deg, part(state, lamp, &L::beam_deg, "Beam"),
                            "Full beam angle; 0 shines all round")});
    choice(state, "dimmable", "Dimmable", {"no", "yes"}, lamp.dimmable ? 1 : 0,
           [&state, lamp](std::size_t i) {
               L after = lamp;
               after.dimmable = i == 1;
               return changed(state, after,
                              fmt::format("Make {} {}", called(lamp), i == 1 ? "dimmable" : "not dimmable"));
           });
}
/// A photometric file, its own switch, and how plans show it.
void light(State& state, const plan::Luminaire& lamp) {
    using L = plan::Luminaire;
    note(state, workedInWords(state, lamp));
    boxes(state, {textBox("ies", "IES file beside the plan; empty: a usual distribution", lamp.ies,
                          [&state, lamp](const std::string& file) -> Refusable {
                              const auto folder = state.document.file().parent_path();
                              if (!file.empty())
                                  if (const auto read = lighting::readIes(folder / file); !read)
                                      return std::unexpected(read.error());
                              L after = lamp;
                              after.ies = file;
                              return changed(state, after, fmt::format("IES file of {}", called(lamp)));
                          })});
    choice(state, "own-switch", "Own switch", {"no", "yes"}, lamp.own_switch ? 1 : 0,
           [&state, lamp](std::size_t i) {
               L after = lamp;
               after.own_switch = i == 1;
               return changed(state, after, fmt::format("Own switch of {}", called(lamp)));
           });
    choice(state, "plan-look", "On switching plans", {"as the sheet", "symbol", "from above"},
           static_cast<std::size_t>(lamp.plan_look), [&state, lamp](std::size_t i) {
               L after = lamp;
               after.plan_look = static_cast<L::PlanLook>(i);
               return changed(state, after, fmt::format("Plan look of {}", called(lamp)));
           });
}

} // namespace

const char* kindName(Kind kind) {
    switch (kind) {
    case Kind::Ceiling:
        return "ceiling luminaire";
    case Kind::Wall:
        return "wall luminaire";
    case Kind::Pendant:
        return "pendant";
    case Kind::Recessed:
        return "recessed luminaire";
    case Kind::Linear:
        return "linear luminaire";
    case Kind::UnderUnit:
        return "under-unit luminaire";
    case Kind::Floor:
        return "floor lamp";
    case Kind::Table:
        break;
    }
    return "table lamp";
}

void luminaireCard(State& state, const plan::Luminaire& lamp) {
    note(state, fmt::format("{}, {}", kindName(lamp.kind), roomTitle(state.plan(), lamp.room)));
    boxes(state, {textBox("tag", "Tag", lamp.tag,
                          [&state, lamp](const std::string& text) -> Refusable {
                              if (text.empty()) return std::unexpected("give a tag");
                              plan::Luminaire after = lamp;
                              after.tag = text;
                              return changed(state, after, fmt::format("Tag {} as {}", called(lamp), text));
                          }),
                  textBox("name", "Name", lamp.name, [&state, lamp](const std::string& text) {
                      plan::Luminaire after = lamp;
                      after.name = text;
                      return changed(state, after, fmt::format("Rename {}", called(lamp)));
                  })});
    const auto kinds = kindsFor(lamp);
    std::vector<std::string> words;
    for (const Kind kind : kinds)
        words.emplace_back(kindName(kind));
    const auto now = static_cast<std::size_t>(std::ranges::find(kinds, lamp.kind) - kinds.begin());
    list(state, "kind", "Kind", words, now, [&state, lamp, kinds, words](std::size_t i) {
        plan::Luminaire after = lamp;
        after.kind = kinds[i];
        return changed(state, after, fmt::format("Make {} a {}", called(lamp), words[i]));
    });
    position(state, lamp);
    body(state, lamp);
    light(state, lamp);
    ImGui::Dummy({0, 2 * state.scale});
    removeButton(state, edit::removeLuminaires(state.plan(), {lamp.id}));
}

} // namespace gangway::app::form
