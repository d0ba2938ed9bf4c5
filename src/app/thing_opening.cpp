// The card of a door, window or other opening.
#include "app/panels.hpp"
#include "app/thing_cards.hpp"
#include "app/thing_place.hpp"
#include "edit/number_shown.hpp"
#include "edit/opening_edits.hpp"
#include "geometry/frames.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace gangway::app::form {

namespace {
using Kind = plan::Opening::Kind;

constexpr std::array kKinds{Kind::HingedDoor, Kind::PocketDoor, Kind::SlidingDoor, Kind::BarnDoor,
                            Kind::Window,     Kind::Plain,      Kind::Hatch};

std::string called(const plan::Opening& opening) {
    return opening.name.empty() ? kindName(opening.kind) : fmt::format("'{}'", opening.name);
}

double wallLength(const State& state, const plan::Opening& opening) {
    plan::Host host;
    host.wall = opening.wall;
    const auto frame = geometry::hostFrame(state.plan(), opening.room, host);
    return frame ? frame->length_mm : 0;
}

/// To exactly this place: where it can't be, the sentence says why, and it is not put beside it.
Refusable movedTo(const State& state, const plan::Opening& opening, double left_mm) {
    const auto exact = edit::resizeOpening(state.plan(), opening.id,
                                           {left_mm, opening.width_mm, opening.sill_mm, opening.height_mm});
    if (!exact) return exact;
    return edit::moveOpening(state.plan(), opening.id, left_mm);
}

void placeAndSize(State& state, const plan::Opening& opening) {
    const double length = wallLength(state, opening);
    const edit::OpeningSize now{opening.left_mm, opening.width_mm, opening.sill_mm, opening.height_mm};
    const auto resized = [&state, id = opening.id, now](double edit::OpeningSize::* part) {
        return [&state, id, now, part](double value) {
            edit::OpeningSize size = now;
            size.*part = value;
            return edit::resizeOpening(state.plan(), id, size);
        };
    };
    note(state, fmt::format("Structural edges, from the corners of wall {}", opening.wall));
    boxes(state, {lengthBox(state, "left", "Left", opening.left_mm,
                            [&state, opening](double value) { return movedTo(state, opening, value); }),
                  lengthBox(state, "width", "Width", opening.width_mm, resized(&edit::OpeningSize::width_mm)),
                  lengthBox(state, "right", "Right", length - opening.left_mm - opening.width_mm,
                            [&state, opening, length](double value) {
                                return movedTo(state, opening, length - value - opening.width_mm);
                            })});
    boxes(state,
          {lengthBox(state, "sill", opening.kind == Kind::Window ? "Sill above floor" : "Above floor",
                     opening.sill_mm, resized(&edit::OpeningSize::sill_mm)),
           lengthBox(state, "height", "Height", opening.height_mm, resized(&edit::OpeningSize::height_mm))});
}

/// A length of the opening that nothing else depends on.
Box part(const State& state, const plan::Opening& opening, const std::string& key, const char* label,
         double plan::Opening::* value, const char* help) {
    return lengthBox(
        state, key, label, opening.*value,
        [&state, opening, value, label](double length) -> Refusable {
            if (length < 0) return std::unexpected("give 0 or more");
            plan::Opening changed = opening;
            changed.*value = length;
            if (value == &plan::Opening::frame_mm && changed.leaf_mm)
                changed.leaf_mm = (changed.width_mm - 2 * length) / changed.leaves;
            return edit::changeOpening(state.plan(), changed,
                                       fmt::format("{} of {}: {}", label, called(opening),
                                                   edit::lengthInWords(length, state.plan().units)));
        },
        help);
}

void trim(State& state, const plan::Opening& opening) {
    std::vector<Box> row{part(state, opening, "casing", "Casing", &plan::Opening::casing_mm,
                              "Width of the casing beyond the structural edge, in this room"),
                         part(state, opening, "casing-beyond", "Casing beyond",
                              &plan::Opening::casing_beyond_mm, "The same on the other side"),
                         part(state, opening, "frame", "Frame", &plan::Opening::frame_mm,
                              "Width of the frame inside the structural edge, each side")};
    boxes(state, row);
    if (opening.kind == Kind::Window)
        boxes(state, {part(state, opening, "reveal", "Reveal", &plan::Opening::reveal_mm,
                           "From the finished face to the frame"),
                      part(state, opening, "sill-board", "Sill board", &plan::Opening::sill_board_mm,
                           "How far it stands out into the room")});
    if (opening.kind == Kind::PocketDoor)
        boxes(state, {part(state, opening, "cavity", "Cavity in the wall", &plan::Opening::cavity_mm,
                           "Length of the cavity the leaf goes into")});
}

void leaves(State& state, const plan::Opening& opening) {
    choice(state, "leaves", "Leaves", {"one", "two"}, opening.leaves == 2 ? 1 : 0,
           [&state, opening](std::size_t i) {
               plan::Opening changed = opening;
               changed.leaves = static_cast<int>(i) + 1;
               if (changed.leaf_mm)
                   changed.leaf_mm = (changed.width_mm - 2 * changed.frame_mm) / changed.leaves;
               return edit::changeOpening(
                   state.plan(), changed,
                   fmt::format("Give {} {}", called(opening), i == 0 ? "one leaf" : "two leaves"));
           });
}

void hand(State& state, const plan::Opening& opening) {
    const bool hinged = opening.kind == Kind::HingedDoor;
    if (!hinged &&
        (opening.kind == Kind::Window || opening.kind == Kind::Plain || opening.kind == Kind::Hatch))
        return;
    const plan::Side side = hinged ? opening.hinge : opening.parks;
    const auto swap = [&state, id = opening.id](std::size_t) { return edit::swapHinge(state.plan(), id); };
    choice(state, "hinge", hinged ? "Hinge, seen from this room" : "Open leaf stands, seen from this room",
           {"left", "right"}, side == plan::Side::Left ? 0 : 1, swap);
    if (!hinged) return;
    choice(state, "swing", "Opens", {"into this room", "out of it"}, opening.swing == plan::Swing::In ? 0 : 1,
           [&state, id = opening.id](std::size_t) { return edit::swapSwing(state.plan(), id); });
    leaves(state, opening);
}
} // namespace

const char* kindName(Kind kind) {
    switch (kind) {
    case Kind::HingedDoor:
        return "hinged door";
    case Kind::PocketDoor:
        return "pocket door";
    case Kind::SlidingDoor:
        return "sliding door";
    case Kind::BarnDoor:
        return "barn door";
    case Kind::Window:
        return "window";
    case Kind::Hatch:
        return "hatch";
    case Kind::Plain:
        break;
    }
    return "plain opening";
}

void openingCard(State& state, const plan::Opening& opening) {
    std::string where = fmt::format("Wall {}, {}", opening.wall, roomTitle(state.plan(), opening.room));
    if (!opening.joins.empty()) where += fmt::format("; leads to {}", roomTitle(state.plan(), opening.joins));
    note(state, where);
    boxes(state, {textBox("name", "Name", opening.name, [&state, opening](const std::string& text) {
              plan::Opening changed = opening;
              changed.name = text;
              return edit::changeOpening(state.plan(), changed, fmt::format("Rename {}", called(opening)));
          })});
    std::vector<std::string> words;
    for (const Kind kind : kKinds)
        words.emplace_back(kindName(kind));
    const auto now = static_cast<std::size_t>(std::ranges::find(kKinds, opening.kind) - kKinds.begin());
    list(state, "kind", "Kind", words, now, [&state, id = opening.id](std::size_t i) {
        return edit::changeOpeningKind(state.plan(), id, kKinds[i]);
    });
    placeAndSize(state, opening);
    hand(state, opening);
    trim(state, opening);
    ImGui::Dummy({0, 2 * state.scale});
    removeButton(state, edit::removeOpenings(state.plan(), {opening.id}));
}

} // namespace gangway::app::form
