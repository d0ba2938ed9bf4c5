// What the schedules are made from: the plates of a house composed once. Private to sheets/.
#pragma once

#include "catalogue/pack.hpp"
#include "sheets/table.hpp"
#include "switching/net.hpp"

#include <string>
#include <vector>

namespace gangway::sheets {

struct ScheduledPlate {
    const plan::Plate* plate = nullptr;
    const plan::Room* room = nullptr; ///< nullptr: the plan names one that is not there
    catalogue::ComposedPlate face;
};

/// What a set of schedules is about; plan, catalogue and net must outlive it.
struct Scheduled {
    const plan::Plan* plan = nullptr;
    const catalogue::Catalogue* catalogue = nullptr;
    const switching::Net* net = nullptr;
    std::string room;                               ///< id; empty: the whole house
    std::vector<ScheduledPlate> plates;             ///< by room
    std::vector<const plan::Luminaire*> luminaires; ///< by room
};

Column textColumn(std::string key, std::string title);
Column numberColumn(std::string key, std::string title, std::string unit, int decimals = 0);
Column countColumn();
/// The table must have it.
Column& columnOf(Table& table, const std::string& key);

std::string finishName(const catalogue::Catalogue& catalogue, const std::string& id);
/// A described circuit's name, else what the plan calls it.
std::string circuitName(const plan::Plan& plan, const std::string& id);
/// "ceiling", "recessed": the words of plan files.
std::string kindName(plan::Luminaire::Kind kind);
/// "68 dia", "75 x 75".
std::string boxName(const catalogue::BoxSpec& spec);
/// A positive number, else nothing: 0 means "not stated" in the plan.
Cell stated(double value);

Table platesTable(const Scheduled& scheduled);
Table luminairesTable(const Scheduled& scheduled);
Table legsTable(const Scheduled& scheduled);
Table circuitsTable(const Scheduled& scheduled, const catalogue::CountryPack& pack);
Table modulesTable(const Scheduled& scheduled);
Table framesTable(const Scheduled& scheduled);
Table boxesTable(const Scheduled& scheduled);
Table lampsTable(const Scheduled& scheduled);

} // namespace gangway::sheets
