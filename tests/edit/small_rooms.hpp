// Rooms small enough to work out by hand, and running commands that must not be refused.
#pragma once

#include "edit/room_edits.hpp"
#include "geometry/frames.hpp"
#include "plan/io.hpp"

#include <catch2/catch.hpp>

/// A kitchen of 4000 x 3000 with its south-west corner at the origin, and west of it, behind 100 mm of wall,
/// a hall of 1500 x 3000.
inline gangway::plan::Plan twoRooms() {
    const auto read = gangway::plan::read(R"({
  "gangway": 1,
  "storeys": [ { "id": "ground", "name": "Ground floor", "plateFormat": "round-71" },
               { "id": "upper", "name": "Upper floor", "elevation": 2700 } ],
  "rooms": [ { "id": "kitchen", "letter": "K", "name": "Kitchen", "storey": "ground",
               "outline": [[0, 3000], [4000, 3000], [4000, 0], [0, 0]] },
             { "id": "hall", "letter": "H", "name": "Hall", "storey": "ground",
               "outline": [[-1600, 3000], [-100, 3000], [-100, 0], [-1600, 0]] } ],
  "openings": [ { "id": "door", "name": "hall", "kind": "hinged-door", "room": "kitchen", "wall": "D",
                  "left": 500, "width": 900, "height": 2050, "hinge": "left", "swing": "in", "leaf": 826, "stop": 90,
                  "joins": "hall" },
                { "id": "window", "kind": "window", "room": "kitchen", "wall": "A", "left": 1400,
                  "width": 1200, "sill": 900, "height": 1200 } ],
  "furniture": [ { "id": "desk", "kind": "desk", "room": "kitchen", "at": [2000, 1500] } ],
  "plates": [ { "id": "k1", "tag": "K-01", "room": "kitchen", "wall": "A", "setOut": 3800, "height": 1100,
                "modules": ["socket-f"] },
              { "id": "k2", "tag": "K-02", "room": "kitchen", "wall": "C", "setOut": 300, "height": 300,
                "modules": ["socket-f"] },
              { "id": "k3", "tag": "K-03", "room": "kitchen", "furniture": "desk", "face": "top", "east": 200,
                "north": 100, "modules": ["socket-f"] } ],
  "devices": [ { "id": "computer", "name": "computer", "room": "kitchen", "furniture": "desk",
                 "leadExit": [2100, 1700, 200], "lead": 1500 } ],
  "luminaires": [ { "id": "lamp", "tag": "K-L01", "kind": "ceiling", "room": "kitchen", "ceiling": true,
                    "east": 3600, "north": 1500 } ] }
)");
    REQUIRE(read);
    return read->plan;
}

/// The same with an L-shaped kitchen: walls A 3000 north, B 2000, C 2000, D 2000, E 5000 south, F 4000 west.
inline gangway::plan::Plan cornerRoom() {
    gangway::plan::Plan plan = twoRooms();
    plan.openings.clear();
    plan.rooms.resize(1);
    plan.plates.clear();
    gangway::plan::Room& room = plan.rooms.front();
    room.outline = {{0, 4000}, {3000, 4000}, {3000, 2000}, {5000, 2000}, {5000, 0}, {0, 0}};
    for (const char* id : {"E", "F"}) {
        room.walls.emplace_back();
        room.walls.back().id = id;
    }
    return plan;
}

/// Runs a command that must be possible.
inline void run(gangway::edit::Document& document, const gangway::edit::Refusable& command) {
    if (!command) FAIL("refused: " << command.error());
    document.run(*command);
}

/// What a command that must be refused says; empty when it is not refused.
template <class Outcome>
std::string sentence(const Outcome& outcome) {
    return outcome ? std::string() : outcome.error();
}

/// The plan as it is can be written and read again.
inline void checkReadable(const gangway::plan::Plan& plan) {
    const auto read = gangway::plan::read(gangway::plan::write(plan));
    if (!read) FAIL(gangway::plan::toLine("plan", read.error().front()));
}
