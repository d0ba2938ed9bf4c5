// Switches beside doors: on the side where the hand is, and not behind the leaf.
#include "switching/proof.hpp"

#include "geometry/coverage.hpp"
#include "geometry/walls.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace gangway::switching {

using plan::Severity;

namespace {

/// A switch further from a door than this is not beside it.
double besideMm(const Proof& proof) {
    return proof.pack.limit("switchDoor").value;
}

constexpr const char* kSideSource =
    "beside a door on its latch side: DIN 18015-3 and common practice (trade facts 2.35, secondary)";

/// A single-leaf hinged door's edges on one face, along u.
struct DoorSides {
    const plan::Opening* door;
    double hinge_mm;
    double latch_mm;
    bool hinge_on_left;
    plan::Vec2 latch_at_mm; ///< on plan
};

std::vector<DoorSides> doorsIn(const geometry::HouseIndex& house, const plan::Room& room, std::size_t wall) {
    std::vector<DoorSides> doors;
    const geometry::Frame frame = geometry::wallFrame(room, wall);
    for (const geometry::FaceHole& hole : geometry::faceHoles(house, {room.id, wall})) {
        const plan::Opening& opening = *hole.opening;
        if (opening.kind != plan::Opening::Kind::HingedDoor || opening.leaves != 1) continue;
        // Seen from the other side of the wall, left is right.
        const bool left = (opening.hinge == plan::Side::Left) == hole.hosted_here;
        const double latch_mm = left ? hole.right_mm : hole.left_mm;
        const plan::Vec3 latch = geometry::toHouse(frame, {latch_mm, 0, 0});
        doors.push_back({&opening, left ? hole.left_mm : hole.right_mm, latch_mm, left, {latch.x, latch.y}});
    }
    return doors;
}

/// How far u lies beyond an edge, away from the door; negative on the door's side of it.
double beyond(double u_mm, double edge_mm, bool to_left) {
    return to_left ? edge_mm - u_mm : u_mm - edge_mm;
}

/// Whether an open leaf stands between a place and its doorway. One that stands across a passage, with the
/// doorway on the near side, is before the wall opposite too, and hides nothing there.
bool partsFromDoorway(const Proof& proof, const std::string& opening_id, const plan::Plate& plate) {
    const auto place = proof.placeOf(plate);
    const auto doors = proof.house.doorsInto(plate.room);
    const auto door = std::ranges::find(doors, opening_id, [](const auto* one) { return one->id; });
    if (!place || door == doors.end()) return true;
    const auto leaves = geometry::doorLeaves(proof.house, **door);
    return std::ranges::any_of(leaves, [&](const geometry::Leaf& leaf) {
        const plan::Vec2 along = leaf.open_mm - leaf.hinge_mm;
        const double doorway = cross(along, leaf.closed_mm - leaf.hinge_mm);
        const double here = cross(along, plan::Vec2{place->x, place->y} - leaf.hinge_mm);
        return doorway * here <= 0;
    });
}

bool isSwitchPlate(const Proof& proof, const plan::Plate& plate) {
    return std::ranges::any_of(proof.net.waysOf(plate.id), isForLight);
}

/// Whether all that a plate's ways work is worked at the latch of a door too: then the plate is a further
/// position, beside a bed or a stair, and not the one that the hand looks for at this door.
bool isFurtherPosition(const Proof& proof, const plan::Plate& plate, const DoorSides& door) {
    const auto at_latch = [&](const Way* way) {
        const auto at = way->plate == &plate ? std::nullopt : proof.placeOf(*way->plate);
        return at && length(plan::Vec2{at->x, at->y} - door.latch_at_mm) <= besideMm(proof);
    };
    bool works = false;
    for (const Way& way : proof.net.waysOf(plate.id))
        for (const plan::SwitchLeg* leg : way.legs) {
            if (std::ranges::none_of(proof.groupOf(*leg).positions, at_latch)) return false;
            works = true;
        }
    return works;
}

void proveSideOf(const Proof& proof, const plan::Plate& plate, const std::vector<DoorSides>& doors,
                 Findings& findings) {
    const double u_mm = plate.host.u_mm;
    const double most_mm = besideMm(proof);
    const auto is_beside = [most_mm](double distance_mm) {
        return distance_mm >= 0 && distance_mm <= most_mm;
    };
    const bool serves_another = std::ranges::any_of(doors, [&](const DoorSides& door) {
        return is_beside(beyond(u_mm, door.latch_mm, !door.hinge_on_left));
    });
    if (serves_another) return;
    for (const DoorSides& door : doors) {
        const double distance_mm = beyond(u_mm, door.hinge_mm, door.hinge_on_left);
        if (!is_beside(distance_mm) || isFurtherPosition(proof, plate, door)) continue;
        auto finding = aboutPlate(proof, "switch-hinge-side", Severity::Warn, plate);
        finding.objects.push_back(door.door->id);
        finding.value_mm = distance_mm;
        finding.message = fmt::format(
            "{} in {} is {:.0f} mm from the hinge side of {}; the hand looks for it "
            "on the latch side.",
            plateTag(plate), roomName(proof.net, plate.room), distance_mm, openingName(*door.door));
        finding.source = kSideSource;
        finding.remedy = "Move it to the latch side, or hang the door on the other side.";
        findings.push_back(std::move(finding));
    }
}

} // namespace

void proveSwitchSide(const Proof& proof, Findings& findings) {
    for (const plan::Plate& plate : proof.plan().plates) {
        if (plate.host.kind != plan::Host::Kind::Wall || !isSwitchPlate(proof, plate)) continue;
        const plan::Room* room = proof.net.room(plate.room);
        const auto wall = room == nullptr ? std::nullopt : plan::wallIndex(*room, plate.host.wall);
        if (!wall) continue;
        proveSideOf(proof, plate, doorsIn(proof.house, *room, *wall), findings);
    }
}

void proveSwitchUncovered(const Proof& proof, Findings& findings) {
    const double least_part = proof.pack.limit("leafHides").value;
    for (const plan::Plate& plate : proof.plan().plates) {
        if (plate.host.kind != plan::Host::Kind::Wall || proof.net.waysOf(plate.id).empty()) continue;
        const auto made = catalogue::compose(proof.net.catalogue(), plate);
        for (const geometry::Cover& cover :
             geometry::leafCoversOf(proof.house, plate.room, plate.host, made.width_mm, made.height_mm)) {
            if (!partsFromDoorway(proof, cover.id, plate)) continue;
            const Severity severity = cover.covered_part >= least_part ? Severity::Fault : Severity::Warn;
            auto finding = aboutPlate(proof, "switch-behind-leaf", severity, plate);
            finding.objects.push_back(cover.id);
            finding.value_mm = cover.gap_mm;
            finding.message = fmt::format(
                "{} in {} is behind {} when it stands open: {} of the plate hidden, the leaf {:.0f} mm off.",
                plateTag(plate), roomName(proof.net, plate.room), cover.name,
                cover.covered_part > 0.99 ? "all" : fmt::format("{:.0f} %", cover.covered_part * 100),
                cover.gap_mm);
            finding.source = "within reach as one enters; common practice, no source";
            finding.remedy = "Move it clear of the open leaf, to the latch side of the door.";
            findings.push_back(std::move(finding));
        }
    }
}

} // namespace gangway::switching
