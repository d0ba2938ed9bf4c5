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

struct ModuleType {
    std::string id;   ///< "socket-f"
    std::string name; ///< "socket outlet, type F"
    std::string code; ///< short mark for schedules and legends, "SO-F"
    ModuleKind kind = ModuleKind::Blank;
    std::string symbol;  ///< plan symbol id in assets/symbols, IEC 60617 style
    int gangs = 1;       ///< gangs it takes in its format
    int ways = 0;        ///< switched outputs it offers
    int outlets = 0;     ///< plugs it takes
    double depth_mm = 0; ///< box depth it needs
    bool extra_low_voltage = false;
    std::vector<FrontShape> front;
    std::string source;
    /// The same module as it is made for one plate format where size, depth or front differ (a rocker
    /// for a narrow opening). `format` names it; empty on the module itself. compose() picks it.
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
    double fixing_mm = 60; ///< between the centres of the plate's fixing screws
};

struct PlateFormat {
    std::string id; ///< "round-71"
    std::string name;
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
    int switches_per_gang = 1;  ///< switch modules that stand side by side in one gang's front
    bool vertical = true;       ///< gangs may stand one above the other
    bool shared_box = false;    ///< one box behind the whole plate
    std::vector<BoxSpec> boxes; ///< one for each gang count when shared, else one
    std::string height_habit;   ///< what "height" refers to: "centre"
    std::string source;         ///< "pitch: DIN 49073 (...); size: ..."; load() wants one for every number
};

struct Catalogue {
    std::vector<PlateFormat> formats;
    std::vector<ModuleType> modules;
    std::vector<Finish> finishes;
    const PlateFormat* format(const std::string& id) const;
    const ModuleType* module(const std::string& id) const;
    const Finish* finish(const std::string& id) const;
};

/// Ids in the order of the files, for lists to choose from and for naming the nearest.
std::vector<std::string> formatIds(const Catalogue& catalogue);
std::vector<std::string> moduleIds(const Catalogue& catalogue);
std::vector<std::string> finishIds(const Catalogue& catalogue);
/// The module as it is made for a format: its variant for it, else the module itself.
const ModuleType& moduleFor(const ModuleType& module, const PlateFormat& format);

/// Reads every *.json of a catalogue folder in the order of their names; the error names file and key. A
/// number without a source is an error, and so is a front, format or finish that nothing defines.
[[nodiscard]] std::expected<Catalogue, std::string> load(const std::filesystem::path& folder);

/// One gang of a composed plate; offsets from the plate's centre, x right and y up as seen from the room.
struct Gang {
    Vec2 centre_mm;
    double width_mm = 0; ///< visible module width
    double height_mm = 0;
    const ModuleType* module = nullptr; ///< nullptr: nothing chosen, drawn as a blank
    std::string finish;
    std::string label;
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
    std::vector<Gang> gangs;
    std::vector<Box> boxes;
    std::string finish;
    std::vector<std::string> problems; ///< what does not add up, in words; empty when all is well
};

/// Composes a plate: n-gang outline = single + pitch (n-1) unless the format lists widths. Gangs run left
/// to right, or top to bottom when vertical; modules stay upright. Plate.gangs 0 means as many as the
/// modules take; gangs without a module are blanks. Never fails: what is unknown is drawn as a blank, with
/// the nearest known format, and said in `problems`. Pointers live as long as `catalogue`.
[[nodiscard]] ComposedPlate compose(const Catalogue& catalogue, const plan::Plate& plate);

} // namespace gangway::catalogue
