// The parts of findComfort, a file each. Only for this folder.
#pragma once

#include "checks/body_points.hpp"
#include "checks/rules.hpp"

namespace gangway::checks {

void findBeds(const Facts& facts, const plan::Room& room, Findings& findings);  ///< reach from pillows
void findSeats(const Facts& facts, const plan::Room& room, Findings& findings); ///< reach from seats
void findBanks(const Facts& facts, const plan::Room& room,
               Findings& findings); ///< order and number of switches
void findMotors(const Facts& facts, const plan::Room& room, Findings& findings); ///< curtains and blinds
void findCookers(const Facts& facts, const plan::Room& room, Findings& findings);
void findDocks(const Facts& facts, const plan::Room& room, Findings& findings); ///< cleaning robots
void findRows(const Facts& facts, const plan::Room& room, Findings& findings);  ///< rows of lamps
void findUnitLamps(const Facts& facts, const plan::Room& room,
                   Findings& findings);                                          ///< lamps before wall units
void findMeshes(const Facts& facts, const plan::Room& room, Findings& findings); ///< pieces from files

/// The pillow that a plate is meant for by what it is anchored to: the bed itself or a table beside it. `at`:
/// where the plate is.
std::optional<std::size_t> meantFor(const Facts& facts, const plan::Furniture& bed,
                                    const std::vector<BodyPoint>& pillows, const Point& point,
                                    plan::Vec3 at_mm);

} // namespace gangway::checks
