// Country packs: what is usual in a country, as data (assets/packs/*.json, assets/schema/pack.schema.json).
#pragma once

#include "catalogue/catalogue.hpp"

#include <map>
#include <optional>
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

/// A strip of a wall in which cables are run. Bands lie along the ceiling or the floor, or stand beside
/// corners, doors and windows; strips of points run straight up, down and sideways from what is mounted.
struct CableZone {
    enum class From { Ceiling, Floor, Corner, DoorLatch, DoorBoth, Window, Point };
    std::string id;   ///< "upper", unique within its pack
    std::string name; ///< "upper horizontal zone"
    From from = From::Ceiling;
    double low_mm = 0;       ///< from what it is measured from to its nearer edge; 0 for points
    double high_mm = 0;      ///< to its further edge; 0 for points
    double preferred_mm = 0; ///< where a cable is preferably laid; 0: not said
    std::vector<plan::RoomUse> uses; ///< of rooms it applies to; empty: all
    std::string source;
    Grade grade = Grade::Practice;
};

/// How many outlets a use of rooms has at least.
struct OutletCount {
    enum class Which { Any, AboveWorktop, NotAboveWorktop, Lighting };
    plan::RoomUse use = plan::RoomUse::Unstated;
    std::optional<bool> main;  ///< only the main one of its use, only the others; not set: both
    Which which = Which::Any;
    int least = 0;
    double per_m2 = 0;         ///< one more for each of this many square metres begun, in all; 0: no
    double area_from_m2 = 0;   ///< rooms larger than this
    double area_to_m2 = 1e9;   ///< and not larger than this
    double length_from_mm = 0; ///< rooms at least this long
    bool double_is_one = false; ///< a double socket counts as one outlet
    bool beyond_appliances = false;    ///< sockets that an appliance is always plugged into do not count
    std::optional<plan::RoomUse> unless; ///< not in a house that has a room of this use
    std::string source;
    Grade grade = Grade::Practice;
};

/// Something that is often forgotten in a use of rooms, offered to the designer.
struct RoomThing {
    plan::RoomUse use = plan::RoomUse::Unstated;
    std::string name;  ///< "dishwasher"
    std::string words; ///< words of a device's, plate's or piece's name that show that it is there, with |
    double watts = 0;
    double lead_mm = 0;
    bool data = false;
    bool once = false; ///< one in the house is enough
    std::string source;
    Grade grade = Grade::Practice;
};

/// Whose arm and whose eyes: a person's measures, standing or not.
struct Body {
    std::string id;   ///< "standing"
    std::string name; ///< "an adult, standing"
    double eye_mm = 0;      ///< above what one stands, sits or lies on the floor by
    double shoulder_mm = 0; ///< above FFL
    double arm_mm = 0;      ///< from the shoulder to where the hand works
    double low_mm = 0;      ///< lowest and highest that is reached with ease
    double high_mm = 0;
    std::string source;
    Grade grade = Grade::Practice;
};

struct CountryPack {
    std::string id; ///< "gb"
    std::string name;
    std::string extends; ///< id of the pack it starts from; empty: none
    std::string edition; ///< of the standards it follows, as it is printed: "BS 7671:2018+A2:2022"
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
    std::vector<CableZone> zones;      ///< where cables run in walls; empty: not checked
    std::vector<OutletCount> outlets;  ///< numbers of outlets; empty: not checked
    std::vector<RoomThing> things;     ///< often forgotten; the international ones when left out
    std::vector<Body> bodies;          ///< the international ones when left out
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
/// A pack that extends another says only what differs. Fails only when the folder can't be read or holds no
/// pack that can be.
[[nodiscard]] std::expected<CountryPacks, std::string> loadPacks(const std::filesystem::path& folder);
/// The same over the shipped folder and then the designer's own folders, which may be missing. A pack of
/// theirs with the id of a shipped one takes its place.
[[nodiscard]] std::expected<CountryPacks, std::string>
loadPacks(const std::filesystem::path& shipped, const std::vector<std::filesystem::path>& own);
/// Where a designer's own packs are: gangway/packs of the configuration folder ($XDG_CONFIG_HOME, else
/// ~/.config: XDG Base Directory Specification 0.8), and "packs" beside the plan, when one is given.
std::vector<std::filesystem::path> ownPackFolders(const std::filesystem::path& plan_file = {});
/// A file for a pack of one's own that starts from another: every limit, with its value and source, to be
/// changed; the rest is taken from `base`.
std::string packCopy(const CountryPack& base, const std::string& id, const std::string& name);

/// "from memory", "common practice, no source": a grade as it is printed beside a number.
std::string gradeText(Grade grade);

} // namespace gangway::catalogue
