// Stairs: light that can be worked before one goes up and before one comes down.
#include "switching/proof.hpp"

#include "geometry/furniture.hpp"
#include "geometry/plan_outline.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace gangway::switching {

namespace {

/// A lamp this near to the flight on plan lights it, and a switch this near to its foot or head is at hand
/// there.
double nearStairMm(const Proof& proof) {
    return proof.pack.limit("switchStair").value;
}

double toSegment(plan::Vec2 p, plan::Vec2 a, plan::Vec2 b) {
    const plan::Vec2 along = b - a;
    const double size = dot(along, along);
    const double part = size == 0 ? 0 : std::clamp(dot(p - a, along) / size, 0.0, 1.0);
    return length(p - (a + along * part));
}

double toOutline(const std::vector<plan::Vec2>& outline, plan::Vec2 p) {
    if (geometry::insidePolygon(outline, p)) return 0;
    double least = length(p - outline.front());
    for (std::size_t i = 0; i < outline.size(); ++i)
        least = std::min(least, toSegment(p, outline[i], outline[(i + 1) % outline.size()]));
    return least;
}

/// A stair that leads from one storey to another.
struct Flight {
    const plan::Furniture* stair;
    std::string lower; ///< storey ids
    std::string upper;
    std::vector<plan::Vec2> outline_mm;
    geometry::Rise rise;
};

std::vector<Flight> flights(const Proof& proof) {
    std::vector<Flight> all;
    for (const plan::Furniture& piece : proof.plan().furniture) {
        if (piece.kind != "stair") continue;
        const plan::Room* room = proof.net.room(piece.room);
        const plan::Storey* lower = room == nullptr ? nullptr : plan::findStorey(proof.plan(), room->storey);
        const plan::Storey* upper =
            lower == nullptr ? nullptr : geometry::storeyReached(proof.plan(), *lower, piece);
        if (upper == nullptr) continue;
        all.push_back({&piece, lower->id, upper->id, geometry::footprint(piece), geometry::stairRise(piece)});
    }
    return all;
}

std::string storeyOf(const Proof& proof, const std::string& room_id) {
    const plan::Room* room = proof.net.room(room_id);
    return room == nullptr ? std::string() : room->storey;
}

bool lights(const Proof& proof, const plan::SwitchLeg& leg, const Flight& flight) {
    return std::ranges::any_of(leg.luminaires, [&](const std::string& id) {
        const plan::Luminaire* lamp = proof.net.luminaire(id);
        if (lamp == nullptr) return false;
        const std::string storey = storeyOf(proof, lamp->room);
        if (storey != flight.lower && storey != flight.upper) return false;
        const auto at = proof.placeOf(*lamp);
        return at && toOutline(flight.outline_mm, {at->x, at->y}) <= nearStairMm(proof);
    });
}

bool worksFrom(const Proof& proof, const Group& group, const std::string& storey, plan::Vec2 end_mm) {
    return std::ranges::any_of(group.positions, [&](const Way* way) {
        if (!isForLight(*way)) return false;
        if (way->action == catalogue::WayAction::Sensor) return true;
        if (storeyOf(proof, way->plate->room) != storey) return false;
        const auto at = proof.placeOf(*way->plate);
        return at && length(plan::Vec2{at->x, at->y} - end_mm) <= nearStairMm(proof);
    });
}

/// Legs whose lamps light a flight, and at which of its ends each is worked.
struct Lit {
    std::vector<const Group*> legs;
    bool at_foot = false;
    bool at_head = false;
    bool both = false; ///< one leg from both ends
};

Lit litBy(const Proof& proof, const Flight& flight) {
    Lit lit;
    for (const Group& group : proof.groups) {
        if (!lights(proof, *group.leg, flight)) continue;
        const bool foot = worksFrom(proof, group, flight.lower, flight.rise.foot_mm);
        const bool head = worksFrom(proof, group, flight.upper, flight.rise.head_mm);
        lit.legs.push_back(&group);
        lit.at_foot |= foot;
        lit.at_head |= head;
        lit.both |= foot && head;
    }
    return lit;
}

std::string shortfall(const Lit& lit, double near_mm) {
    if (lit.legs.empty()) return fmt::format("no leg has a lamp within {:.0f} mm of it", near_mm);
    if (lit.at_foot && lit.at_head) return "no leg that lights it is worked from both its foot and its head";
    if (lit.at_foot) return "its light can't be worked from the head";
    if (lit.at_head) return "its light can't be worked from the foot";
    return "its light can be worked neither from the foot nor from the head";
}

} // namespace

// Before any lamp is tied this would only say that the switching has yet to be drawn.
void proveStairs(const Proof& proof, Findings& findings) {
    if (proof.plan().legs.empty()) return;
    for (const Flight& flight : flights(proof)) {
        const Lit lit = litBy(proof, flight);
        if (lit.both) continue;
        plan::Finding finding;
        finding.rule = "stairs-two-way";
        finding.severity = plan::Severity::Fault;
        for (const Group* group : lit.legs)
            for (const Way* way : group->positions)
                if (std::ranges::find(finding.objects, way->plate->id) == finding.objects.end())
                    finding.objects.push_back(way->plate->id);
        for (const Group* group : lit.legs)
            finding.objects.push_back(group->leg->id);
        finding.objects.push_back(flight.stair->id);
        finding.limit_mm = nearStairMm(proof);
        finding.place_mm = plan::Vec3{flight.stair->at_mm.x, flight.stair->at_mm.y, flight.stair->bottom_mm};
        finding.message =
            fmt::format("{} in {}: {}.", flight.stair->name.empty() ? "The stair" : flight.stair->name,
                        roomName(proof.net, flight.stair->room), shortfall(lit, nearStairMm(proof)));
        finding.source = fmt::format(
            "two-way switching at each stair level: NHBC Standards 8.1 (trade facts 3.14); within "
            "{:.0f} mm of foot and head: {}",
            nearStairMm(proof), proof.pack.limit("switchStair").source);
        finding.remedy = "Give one leg that lights the stair a two-way position at its foot and at its head.";
        findings.push_back(std::move(finding));
    }
}

} // namespace gangway::switching
