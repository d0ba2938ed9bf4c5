// The catalogue: plate formats, modules and finishes as data (assets/catalogue/*.json), and the
// composition of a plate of the plan into its outline, gang frames, box centres and drill circles.
#pragma once

#include "plan/plan.hpp"

#include <expected>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace gangway::catalogue {

using plan::Vec2;

/// A colour as 8-bit sRGB and how it shines.
struct Finish {
    enum class Gloss { Matt, Satin, Gloss, Metal, Glass };
    std::string id;
    std::string name;
    std::string srgb; ///< "#RRGGBB"
    Gloss gloss = Gloss::Satin;
    std::string source;
};

/// A shape on a module's front, in mm from the gang's centre (x right, y up as seen from the room).
/// Relief is out of the plate's face when positive, a recess when negative. Drawn on the elevation as
/// outlines and built in 3D as relief from the same numbers. Shapes are listed from back to front: a pin
/// follows the well it stands in. The module's own face (Gang::width_mm x height_mm) is not among them.
struct FrontShape {
    enum class Kind { Rect, Circle, Polyline };
    enum class Role { Cap, Rocker, Well, Pin, Contact, Shutter, Knob, Mark, Hinge };
    Kind kind = Kind::Rect;
    Role role = Role::Cap;
    Vec2 centre_mm;
    double width_mm = 0; ///< circle: diameter
    double height_mm = 0;
    double corner_mm = 0; ///< rect: corner radius
    double turn_deg = 0;  ///< counter-clockwise
    double relief_mm = 0;
    std::vector<Vec2> points_mm; ///< Polyline: a mark drawn on the face
};

enum class ModuleKind {
    Socket,
    Switch,
    Dimmer,
    Data,
    Tv,
    Telephone,
    Usb,
    Blank,
    CordOutlet,
    Sensor,
    Control
};

/// What working one way of a module does to what it feeds.
enum class WayAction {
    None,
    OneWay,       ///< on and off from here alone
    TwoWay,       ///< changeover: one end of a group
    Intermediate, ///< crossover: between the two ends of a group
    Push,         ///< a pulse for a relay
    Sensor,
    Timer,
    Motor, ///< runs a motor one way while pressed: up or open is way 1, down or close way 2
    Heating
};

struct ModuleType {
    std::string id;   ///< "socket-f"
    std::string name; ///< "socket outlet, type F"
    std::string code; ///< short mark for schedules and legends, "SO-F"
    ModuleKind kind = ModuleKind::Blank;
    std::string symbol;                 ///< plan symbol of drawing/symbols.hpp, IEC 60617 style
    int gangs = 1;                      ///< gangs it takes in its format
    int ways = 0;                       ///< switched outputs it offers
    WayAction action = WayAction::None; ///< of each of its ways
    int outlets = 0;                    ///< plugs it takes
    double depth_mm = 0;                ///< box depth it needs
    bool extra_low_voltage = false;
    double min_load_w = 0; ///< dimmers: least load of lamps; 0: not stated
    double max_load_w =
        0; ///< dimmers: greatest load of filament lamps; LED lamps by the pack's part; 0: not stated
    double rated_current_a = 0; ///< where a standard gives one, else 0
    bool switched = false;      ///< a socket outlet with its own switch
    bool usb = false;           ///< charges through USB
    /// Families of plate formats it is made for; empty: whatever its front fits in.
    std::vector<std::string> families;
    std::vector<FrontShape> front;
    std::string source;
    /// The same module as it is made for one plate format, or one family of them, where size, depth or front
    /// differ (a rocker for a narrow opening). `format` names either; empty on the module itself.
    std::string format;
    std::vector<ModuleType> variants;
};

/// A back box or wall hole of one gang (or of the whole plate when `shared`).
struct BoxSpec {
    enum class Shape { Round, Rect };
    Shape shape = Shape::Round;
    double width_mm = 68; ///< diameter for Round
    double height_mm = 68;
    double depth_mm = 47;
    double drill_mm = 68;  ///< cutter diameter; 0 when it is not drilled
    double fixing_mm = 60; ///< between the centres of a pair of fixing screws; 0: not known, none drawn
    /// Lying: one pair to the left and right of the box's centre. Upright: one pair above and below the
    /// centre of each gang that the box holds.
    enum class Fixing { Lying, Upright };
    Fixing fixing = Fixing::Lying;
};

/// A plate of several rows. Gangs fill it row by row from the top left.
struct GridLayout {
    int columns = 1;
    int rows = 1;
    double width_mm = 0; ///< outline
    double height_mm = 0;
};

/// The point that a mounting height refers to by a country's habit. TopGang: of an upright plate the centre
/// of the top gang, from four gangs on of the second from the top; of any other plate its centre.
enum class HeightReference { Centre, TopGang };

struct PlateFormat {
    std::string id; ///< "round-71"
    std::string name;
    std::string family;          ///< "round": formats that take the same modules; empty: takes what fits
    double pitch_mm = 71;        ///< centre to centre of neighbouring gangs
    double single_width_mm = 81; ///< outline of a one-gang plate across its gangs' direction of growth
    double single_height_mm = 81;
    std::vector<double> widths_mm; ///< outline widths by gang count when they do not follow the pitch
    double corner_mm = 4;
    double relief_mm = 10;         ///< how far the frame stands out of the wall
    double aperture_width_mm = 55; ///< visible part of a module
    double aperture_height_mm = 55;
    int min_gangs = 1; ///< a plate is never made with fewer
    int max_gangs = 5;
    int switches_per_gang = 1;     ///< switch modules that stand side by side in one gang's front
    bool vertical = true;          ///< gangs may stand one above the other
    bool shared_box = false;       ///< one box behind the whole plate
    std::vector<BoxSpec> boxes;    ///< when shared one for each gang count (each layout of a grid), else one
    std::vector<double> depths_mm; ///< box depths that are usual, to choose from; may be empty
    /// Only of grids: plates by growing size. Others are one row, or one column when vertical.
    std::vector<GridLayout> grid;
    double row_pitch_mm = 0;  ///< grids: between the centres of neighbouring rows
    std::string height_habit; ///< what "height" refers to, in words: "centre"
    HeightReference height_reference = HeightReference::Centre;
    std::string source; ///< "pitch: DIN 49073 (...); size: ..."; load() wants one for every number
};

struct Catalogue {
    std::vector<PlateFormat> formats;
    std::vector<ModuleType> modules;
    std::vector<Finish> finishes;
    /// What is wrong with files that were left out, a line each: "gb.json:12:5: /formats/0/pitch: ...".
    std::vector<std::string> problems;
    const PlateFormat* format(const std::string& id) const;
    const ModuleType* module(const std::string& id) const;
    const Finish* finish(const std::string& id) const;
};

/// Ids in the order of the files, for lists to choose from and for naming the nearest.
std::vector<std::string> formatIds(const Catalogue& catalogue);
std::vector<std::string> moduleIds(const Catalogue& catalogue);
std::vector<std::string> finishIds(const Catalogue& catalogue);
/// The module as it is made for a format: its variant for it or for its family, else the module itself.
const ModuleType& moduleFor(const ModuleType& module, const PlateFormat& format);
/// Whether the trade makes the module for the format's family. Says nothing of the space behind it.
bool isMadeFor(const ModuleType& module, const PlateFormat& format);

/// A format of the designer's own as a plate format: one box a gang, both directions, no fixing holes.
PlateFormat toFormat(const plan::OwnFormat& own);
/// The catalogue with a plan's own formats behind it. Where ids are equal the plan's wins, so that a plan
/// looks the same whatever catalogue opens it.
Catalogue withOwn(const Catalogue& catalogue, const plan::Plan& plan);

/// Reads every *.json of a catalogue folder (assets/schema/catalogue.schema.json) in the order of their
/// names. A file with a mistake is left out whole and said in Catalogue::problems with file, line, column and
/// key; the rest loads. A number without a source is a mistake, and so is a front or format that nothing
/// defines. Fails only when the folder can't be read or no plate format is left.
[[nodiscard]] std::expected<Catalogue, std::string> load(const std::filesystem::path& folder);

/// One gang of a composed plate; offsets from the plate's centre, x right and y up as seen from the room.
struct Gang {
    Vec2 centre_mm;
    double width_mm = 0; ///< visible module width
    double height_mm = 0;
    const ModuleType* module = nullptr; ///< nullptr: nothing chosen, drawn as a blank, or unknown
    bool unknown = false;               ///< the plan names a module that the catalogue does not have
    std::string finish;
    std::string label;     ///< the module's own; of an unknown one the type that the plan names
    int module_number = 0; ///< index from 1 in plate.modules, 0 when empty
};

struct Box {
    Vec2 centre_mm;
    BoxSpec spec;
};

struct ComposedPlate {
    double width_mm = 0;
    double height_mm = 0;
    double corner_mm = 0;
    double relief_mm = 0;
    const PlateFormat* format = nullptr; ///< the one it was composed with; lives as long as the catalogue
    int gang_count = 1;                  ///< places of the plate, grids and blanks included
    std::vector<Gang> gangs;
    std::vector<Box> boxes;
    std::vector<Vec2> fixings_mm; ///< screws, from the plate's centre; empty when not known
    Vec2 reference_mm; ///< the point a height refers to (PlateFormat::height_reference), from there too
    std::string finish;
    std::vector<std::string> problems; ///< what does not add up, in words; empty when all is well
};

/// Composes a plate: n-gang outline = single + pitch (n-1) unless the format lists widths or is a grid. Gangs
/// run left to right, or top to bottom when vertical, in a grid row by row; modules stay upright. Plate.gangs
/// 0 means as many as the modules take; gangs without a module are blanks. Never fails: what is unknown keeps
/// its place (Gang::unknown), with the nearest known format, and is said in `problems`, as is whatever does
/// not add up: a box too shallow, a module not made for the format or too large for it, too many gangs,
/// extra-low voltage and mains in one box without a barrier. Pointers live as long as `catalogue`.
[[nodiscard]] ComposedPlate compose(const Catalogue& catalogue, const plan::Plate& plate);

} // namespace gangway::catalogue
