// A room, sockets on its walls and pieces at its north wall, for tests of numbers and spacing.
#pragma once

#include "checks/checks.hpp"

#include "../switching/small_switching.hpp"

namespace gangway {

inline constexpr double kFoot = 304.8;
inline constexpr double kInch = 25.4;

/// One room, wall A to the north from the west corner eastwards, B, C, D clockwise.
inline plan::Plan roomOf(double width_mm, double depth_mm, plan::RoomUse use) {
    plan::Plan plan;
    plan.storeys.emplace_back().id = "ground";
    plan::Room& room = addRoom(plan, "room", 0, width_mm);
    room.outline = {{0, depth_mm}, {width_mm, depth_mm}, {width_mm, 0}, {0, 0}};
    room.use = use;
    return plan;
}

inline plan::Plate& socketOn(plan::Plan& plan, const std::string& wall, double u_mm, double v_mm = 300,
                             const std::vector<std::string>& modules = {"socket-f"}) {
    plan::Plate& plate =
        addPlate(plan, "s" + std::to_string(plan.plates.size() + 1), "room", wall, u_mm, modules);
    plate.host.v_mm = v_mm;
    return plate;
}

/// With its back to wall A.
inline plan::Furniture& pieceAt(plan::Plan& plan, const std::string& kind, double left_mm, plan::Size3 size,
                                double bottom_mm = 0) {
    plan::Furniture& piece = plan.furniture.emplace_back();
    piece.id = kind + std::to_string(plan.furniture.size());
    piece.kind = kind;
    piece.room = "room";
    piece.layer = plan::kLayerFurniture;
    piece.size = size;
    piece.at_mm = {left_mm + size.width_mm / 2, plan.rooms[0].outline[0].y - size.depth_mm / 2};
    piece.bottom_mm = bottom_mm;
    return piece;
}

inline std::vector<plan::Finding> found(const plan::Plan& plan, const std::string& pack,
                                        const std::string& rule) {
    return ofRule(checks::check(geometry::HouseIndex(plan), shipped(), packOf(pack)), rule);
}

} // namespace gangway
