// Schedules: what is where and what is to be ordered, as tables.
#pragma once

#include "catalogue/pack.hpp"
#include "sheets/table.hpp"

#include <string>
#include <vector>

namespace gangway::sheets {

/// Keys of the tables in the order in which `schedules` gives them: plates, luminaires, legs, circuits,
/// modules, frames, boxes, lamps.
std::vector<std::string> scheduleKeys();

/// Every table, rows in the plan's order of rooms (legs and circuits in their own). Lengths mm. What is to be
/// ordered is counted from the same composed plates that are drawn. With a room id, plates, luminaires and
/// orders are that room's; legs and circuits are the ones that touch it, with the loads of the whole house.
std::vector<Table> schedules(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                             const catalogue::CountryPack& pack, const std::string& room = {});

/// What goes with every schedule that leaves the program as a file; sheets carry the cautions of all sheets.
std::string scheduleCaution();

} // namespace gangway::sheets
