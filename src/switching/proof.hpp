// What the rules of the proof share: the plan made ready for all of them, and findings begun the same way.
// Only for the sources of this folder.
#pragma once

#include "geometry/frames.hpp"
#include "switching/doorways.hpp"
#include "switching/group.hpp"
#include "switching/prove.hpp"

#include <memory>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

namespace gangway::switching {

/// A switch that lights a room, and where it is on plan.
struct RoomSwitch {
    const Way* way = nullptr;
    plan::Vec2 at_mm;
};

/// A plan as the rules look at it. Made in linear time; house, catalogue and pack must outlive it.
struct Proof {
    Proof(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
          const catalogue::CountryPack& pack);
    /// Of a part of a house: plates, luminaires, legs and rooms are those of `part`.
    Proof(const geometry::HouseIndex& house, const plan::Plan& part, const Doorways& doorways,
          const catalogue::Catalogue& catalogue, const catalogue::CountryPack& pack);

    const geometry::HouseIndex& house;
    const catalogue::CountryPack& pack;
    Net net;
    std::vector<Group> groups; ///< one a leg, in the plan's order

    const plan::Plan& plan() const { return net.plan(); }
    const Doorways& doorways() const { return *doorways_; }
    const Group& groupOf(const plan::SwitchLeg& leg) const;
    /// Switches that work a luminaire of the room, each once.
    const std::vector<RoomSwitch>& switchesOf(const std::string& room_id) const;
    std::optional<plan::Vec3> placeOf(const plan::Plate& plate) const;
    std::optional<plan::Vec3> placeOf(const plan::Luminaire& lamp) const;

private:
    void tie();

    std::unique_ptr<const Doorways> own_doorways_; ///< where none were given
    const Doorways* doorways_;
    std::unordered_map<std::string_view, std::vector<RoomSwitch>> switches_;
};

/// A load is over its limit by more than the rounding of a sum, W.
constexpr double kRounding = 1e-6;

/// Whether working it is about light: not a motor's, not heating's.
bool isForLight(const Way& way);
/// "kitchen", by the room's name; its id where it has none.
std::string roomName(const Net& net, const std::string& room_id);
/// "K-01", by tag, else id.
const std::string& plateTag(const plan::Plate& plate);
const std::string& lampTag(const plan::Luminaire& lamp);

/// A finding about a plate, with its place; message, source and remedy are to be filled in.
plan::Finding aboutPlate(const Proof& proof, std::string_view rule, plan::Severity severity,
                         const plan::Plate& plate);
/// A finding about a leg, at its first switch, else at its first lamp; objects: switches, then the leg.
plan::Finding aboutLeg(const Proof& proof, std::string_view rule, plan::Severity severity,
                       const Group& group);

using Findings = std::vector<plan::Finding>;
/// The rules, by family.
void proveWaysFeed(const Proof& proof, Findings& findings);
void proveWaysExist(const Proof& proof, Findings& findings);
void proveWaysOnce(const Proof& proof, Findings& findings);
void proveLampsControlled(const Proof& proof, Findings& findings);
void proveGroupNotAlone(const Proof& proof, Findings& findings);
void proveGroupNoOneWay(const Proof& proof, Findings& findings);
void proveGroupIntermediates(const Proof& proof, Findings& findings);
void proveGroupEnds(const Proof& proof, Findings& findings);
void proveGroupOneTrade(const Proof& proof, Findings& findings);
void provePushHasRelay(const Proof& proof, Findings& findings);
void proveRelayHasPush(const Proof& proof, Findings& findings);
void proveDimmerLamps(const Proof& proof, Findings& findings);
void proveDimmerGreatest(const Proof& proof, Findings& findings);
void proveDimmerLeast(const Proof& proof, Findings& findings);
void proveSwitchSide(const Proof& proof, Findings& findings);
void proveSwitchUncovered(const Proof& proof, Findings& findings);
void proveEntrancesLit(const Proof& proof, Findings& findings);
void proveStairs(const Proof& proof, Findings& findings);
void proveCircuitLoads(const Proof& proof, Findings& findings);
void proveCircuitsDescribed(const Proof& proof, Findings& findings);

} // namespace gangway::switching
