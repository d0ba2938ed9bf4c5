// Houses of any number of rooms for benchmarks and growth checks: a row grid of equal rooms with 12 plates
// and 6 pieces of furniture each. Invented; not like any house.
#pragma once

#include "plan/plan.hpp"

#include <array>
#include <string>

namespace gangway::testing {

inline plan::Room generatedRoom(int number, double x0, double y0) {
    constexpr double kWidth = 4200;
    constexpr double kDepth = 3600;
    plan::Room room;
    room.id = "room-" + std::to_string(number);
    room.letter = "R" + std::to_string(number);
    room.name = "Room " + std::to_string(number);
    room.storey = "ground";
    room.outline = {{x0, y0 + kDepth}, {x0 + kWidth, y0 + kDepth}, {x0 + kWidth, y0}, {x0, y0}};
    for (const char* id : {"A", "B", "C", "D"}) {
        plan::Wall wall;
        wall.id = id;
        wall.thickness_mm = 100;
        room.walls.push_back(wall);
    }
    return room;
}

inline void furnish(plan::Plan& plan, const plan::Room& room, double x0, double y0) {
    struct Piece {
        const char* kind;
        double x, y, turn;
        plan::Size3 size;
    };
    const std::array<Piece, 6> pieces = {{{"wardrobe", 700, 3280, 0, {1200, 600, 2200}},
                                          {"bed", 2900, 2500, 0, {1600, 2100, 600}},
                                          {"bedside-table", 3900, 3330, 0, {400, 400, 550}},
                                          {"desk", 700, 350, 180, {1200, 600, 740}},
                                          {"chair", 700, 900, 0, {450, 450, 850}},
                                          {"rug", 2300, 1400, 0, {1600, 1000, 10}}}};
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const Piece& piece = pieces[i];
        plan::Furniture furniture;
        furniture.id = room.id + "-f" + std::to_string(i + 1);
        furniture.kind = piece.kind;
        furniture.name = piece.kind;
        furniture.room = room.id;
        furniture.layer = std::string(piece.kind) == "rug" ? "soft" : "furniture";
        furniture.at_mm = {x0 + piece.x, y0 + piece.y};
        furniture.turn_deg = piece.turn;
        furniture.size = piece.size;
        plan.furniture.push_back(furniture);
    }
}

inline void wire(plan::Plan& plan, const plan::Room& room) {
    static constexpr const char* kWalls[] = {"A", "B", "C", "D"};
    for (int i = 0; i < 12; ++i) {
        plan::Plate plate;
        plate.id = room.id + "-p" + std::to_string(i + 1);
        plate.tag = room.letter + "-" + (i < 9 ? "0" : "") + std::to_string(i + 1);
        plate.room = room.id;
        plate.host.kind = plan::Host::Kind::Wall;
        plate.host.wall = kWalls[i % 4];
        plate.host.u_mm = 400 + 1050.5 * (i / 4);
        plate.host.v_mm = i % 3 == 0 ? 1050 : 300;
        plate.format = "round-71";
        plate.finish = "white";
        plate.purpose = "point " + std::to_string(i + 1);
        const char* type = i % 3 == 0 ? "switch-1way" : "socket-f";
        for (int m = 0; m <= i % 2; ++m)
            plate.modules.push_back({type, "", "", {}});
        plan.plates.push_back(plate);
    }
}

inline plan::Plan generatedHouse(int rooms) {
    plan::Plan plan;
    plan.project.name = "Generated house";
    plan.project.date = "2026-01-01";
    for (const char* id : {"building", "furniture", "soft", "lamps", "plates"})
        plan.layers.push_back({id, id, plan::Visibility::Shown, {}});
    plan.storeys.push_back({"ground", "Ground floor", 0, "round-71", 1000, {}});
    for (int i = 0; i < rooms; ++i) {
        const double x0 = (i % 20) * 4300.0;
        const double y0 = (i / 20) * 3700.0;
        plan.rooms.push_back(generatedRoom(i + 1, x0, y0));
        furnish(plan, plan.rooms.back(), x0, y0);
        wire(plan, plan.rooms.back());
    }
    return plan;
}

} // namespace gangway::testing
