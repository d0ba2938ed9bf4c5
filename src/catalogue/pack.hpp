// Country packs: what is usual in a country, as data (assets/packs/*.json, assets/schema/pack.schema.json).
#pragma once

#include "catalogue/catalogue.hpp"

#include <map>
#include <string_view>

namespace gangway::catalogue {

/// How well a number is sourced: official text read, trade body or textbook read, secondary page read, from
/// memory, common practice without a source.
enum class Grade { Official, Trade, Secondary, Memory, Practice };

/// A height that plates are usually mounted at.
struct MountingHeight {
    enum class From { Floor, Worktop };
    std::string id;   ///< "socket", unique within its pack
    std::string name; ///< "socket outlets in living rooms"
    double height_mm = 0;
    From from = From::Floor;       ///< FFL, or the top of the worktop below it
    std::vector<ModuleKind> kinds; ///< of modules it applies to; empty: any
    std::string where;             ///< "living rooms", empty: anywhere
    std::string source;            ///< standard and clause, or "common practice, no source"
    Grade grade = Grade::Practice;
};

/// A number and who says so.
struct Sourced {
    double value = 0;
    std::string source;
    Grade grade = Grade::Practice;
};

/// How switched lighting is usually wired, for counting conductors.
enum class WiringConvention {
    LoopInAtLamp, ///< the supply loops through the ceiling roses; switches hang on a drop without a neutral
    NeutralAtSwitch, ///< the supply comes to the first switch box, with a neutral
    JunctionBox      ///< everything meets in a joint box of the room
};
struct Wiring {
    WiringConvention convention = WiringConvention::JunctionBox;
    std::string source;
    Grade grade = Grade::Practice;
};

/// Illuminance usual for a use of rooms, general or for a task; a range, never a verdict.
struct LightTarget {
    plan::RoomUse use = plan::RoomUse::Unstated;
    std::string task; ///< empty: the room in general
    double low_lx = 0;
    double high_lx = 0;
    std::string source;
    Grade grade = Grade::Practice;
};

struct CountryPack {
    std::string id; ///< "gb"
    std::string name;
    plan::DisplayUnits units = plan::DisplayUnits::Millimetres;
    std::string paper;        ///< "A3": one of the sizes that sheets are made in
    std::string plate_format; ///< id of the format for new plates
    std::string height_habit; ///< what a mounting height refers to, in words: "centre line"
    std::string habit_source;
    std::vector<MountingHeight> heights;
    Wiring wiring;
    Sourced volts;             ///< nominal, line to neutral
    Sourced lighting_rated_a;  ///< usual protective device of a lighting circuit
    Sourced circuit_part;      ///< of the rated current that lighting may take, 0 to 1
    Sourced dimmer_led_part;   ///< of a dimmer's filament rating that LED lamps may take, 0 to 1
    Sourced entrance_reach_mm; ///< from an entrance to the switch that lights the room
    Sourced maintenance;       ///< factor of the lumen method
    Sourced utilisation;       ///< factor of the lumen method
    Sourced work_plane_mm;     ///< above FFL
    std::vector<LightTarget> light;
    std::map<std::string, Sourced, std::less<>> limits; ///< by the ids of limits.hpp
    /// The pack's own number, else the international one; a 0 from nowhere for an id that is no limit.
    const Sourced& limit(std::string_view key) const;
    /// The height a new plate gets: the first from the floor whose kinds hold `kind`, nullptr when there is
    /// none.
    const MountingHeight* usualHeight(ModuleKind kind) const;
};

struct CountryPacks {
    std::vector<CountryPack> packs;    ///< in the order of the files' names
    std::vector<std::string> problems; ///< of files left out: "gb.json:12:5: /heights/0/height: ..."
    const CountryPack* pack(const std::string& id) const;
};

/// Reads every *.json of a folder, one pack a file. A file with a mistake is left out and said in `problems`.
/// Fails only when the folder can't be read or holds no pack that can be.
[[nodiscard]] std::expected<CountryPacks, std::string> loadPacks(const std::filesystem::path& folder);

/// "from memory", "common practice, no source": a grade as it is printed beside a number.
std::string gradeText(Grade grade);

} // namespace gangway::catalogue
