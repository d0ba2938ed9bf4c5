// The document: everything that was decided about a house, and nothing that can be derived from it.
//
// Lengths are mm, angles degrees as they stand in the file, ids are unique within their kind.
// Rooms are drawn on their finished inside faces, clockwise seen from above, so that wall i runs from
// corner i to corner i+1 left to right as seen from inside the room (columns run counter-clockwise,
// for the same reason).
#pragma once

#include "plan/vec.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace gangway::plan {

/// The format number this program writes; a file with a higher one is refused, a lower one converted.
inline constexpr int kFormatNumber = 1;

/// Keys of an object that this version does not know, as raw JSON, kept so that saving loses nothing.
using UnknownKeys = std::vector<std::pair<std::string, std::string>>;

struct Project {
    std::string name;        ///< "The narrow terrace"
    std::string number;      ///< drawing number stem, ISO 7200 identification number
    std::string client;
    std::string address;
    std::string designer;    ///< ISO 7200 creator
    std::string company;     ///< ISO 7200 legal owner
    std::string contact;     ///< who the electrician rings
    std::string approved_by; ///< ISO 7200 approval person
    std::string date;        ///< YYYY-MM-DD, printed as it stands; no clock is read for a sheet
    std::string revision;    ///< "A"; empty before the first issue
    std::string status;      ///< "for agreement", "for construction"
    std::string notes;
    UnknownKeys unknown;
};

enum class DisplayUnits { Millimetres, Centimetres, Metres, FeetInches };

enum class Visibility { Shown, Ghosted, Hidden };

/// A layer: rooms' fabric, furniture, soft furnishings, lamps, plates, or one the designer added.
struct Layer {
    std::string id;
    std::string name;
    Visibility visibility = Visibility::Shown;
    UnknownKeys unknown;
};

/// One course of a floor or wall build-up, listed from the structural face to the finished face.
struct Course {
    std::string material;
    double thickness_mm = 0;
    UnknownKeys unknown;
};

struct Storey {
    std::string id;
    std::string name;
    double elevation_mm = 0;  ///< FFL of this storey above the house's datum
    std::string plate_format; ///< format given to new plates on this storey
    /// The site's level line above FFL (common practice: 1000); the electrician measures from it.
    std::optional<double> site_line_mm;
    UnknownKeys unknown;
};

/// Skirting, dado rail, panelling, cornice or tile field on a wall.
struct WallLine {
    enum class Kind { Skirting, Dado, PictureRail, Cornice, Panel, Tiles };
    Kind kind = Kind::Skirting;
    double bottom_mm = 0;                ///< lower edge above FFL
    double height_mm = 0;
    double depth_mm = 0;                 ///< how far it stands out of the finished face
    std::optional<double> from_mm;       ///< left end along the wall; whole wall when not set
    std::optional<double> to_mm;
    /// Tiles only: size, joint, and the lower left corner of one whole tile.
    double tile_width_mm = 0;
    double tile_height_mm = 0;
    double joint_mm = 0;
    double start_u_mm = 0;
    double start_v_mm = 0;
    UnknownKeys unknown;
};

/// Studs in a wall or joists over a room, where they are known.
struct Framing {
    double spacing_mm = 600;  ///< centre to centre
    double first_mm = 0;      ///< centre of the first one: along u for studs, along the spacing direction for joists
    double width_mm = 45;
    double direction_deg = 0; ///< joists: the direction they run in, counter-clockwise from east
    UnknownKeys unknown;
};

enum class WallStructure { Unknown, Masonry, Stud, Concrete, Timber, None };

/// What a wall does beside standing there: it parts two dwellings, or it is rated to hold fire back.
enum class WallDuty { None, Separating, Fire };

/// One wall face of a room: from its corner i to corner i+1.
struct Wall {
    std::string id;              ///< "A", "B" ... clockwise from the north-most, or the designer's name
    double thickness_mm = 100;   ///< structural thickness between the two structural faces
    WallStructure structure = WallStructure::Unknown;
    WallDuty duty = WallDuty::None;
    std::vector<Course> build_up; ///< on this face, from structure to finish
    std::vector<WallLine> lines;
    std::optional<Framing> studs;
    std::string colour;          ///< "#RRGGBB", empty: the room's default
    UnknownKeys unknown;
};

struct Ceiling {
    /// One height above FFL for a flat ceiling, or one a corner of the outline for sloped ones.
    std::vector<double> heights_mm = {2400};
    /// Pairs of outline corners between which the ceiling is folded (a ridge), so that each part is plane.
    std::vector<std::pair<int, int>> creases;
    std::optional<Framing> joists;
    UnknownKeys unknown;
};

/// What a room is used for; sets which light, counts and reach are usual there.
enum class RoomUse {
    Unstated, Living, Dining, Kitchen, Bedroom, Child, Study, Bathroom, Toilet, Hall, Stair, Utility, Store
};

struct Room {
    std::string id;
    std::string letter;          ///< the K of tag "K-04"
    std::string name;
    RoomUse use = RoomUse::Unstated;
    bool main = false;           ///< the main one of its use, as the main bedroom; more outlets are usual there
    std::string storey;
    std::vector<Vec2> outline;   ///< finished inside faces, clockwise seen from above
    std::vector<Wall> walls;     ///< one for each outline edge, then one for each column edge, always complete
    std::vector<std::vector<Vec2>> columns; ///< inner polygons, counter-clockwise
    Ceiling ceiling;
    std::vector<Course> floor_build_up; ///< from slab to FFL
    std::string floor_finish;    ///< "boards", "tiles", "carpet", "screed": how the stage draws it
    std::string wall_colour;     ///< "#RRGGBB"
    UnknownKeys unknown;
};

enum class Side { Left, Right };
enum class Swing { In, Out };

/// A hole in a wall. `left_mm` is the structural edge nearer the wall's left corner.
struct Opening {
    enum class Kind { HingedDoor, PocketDoor, SlidingDoor, BarnDoor, Window, Plain, Hatch };
    std::string id;
    std::string name;
    Kind kind = Kind::Plain;
    std::string room;
    std::string wall;
    double left_mm = 0;
    double width_mm = 0;   ///< structural
    double sill_mm = 0;    ///< lower edge above FFL
    double height_mm = 0;  ///< structural
    double frame_mm = 0;   ///< width of the frame inside the structural edge, each side
    double casing_mm = 0;  ///< architrave beyond the structural edge, in the host room
    double casing_beyond_mm = 0; ///< architrave on the other side
    std::string joins;     ///< id of the room on the other side; empty: outside or not stated
    // Doors. Sides are as seen from inside the host room.
    Side hinge = Side::Left;
    Swing swing = Swing::In;         ///< In: into the host room
    int leaves = 1;
    std::optional<double> leaf_mm;   ///< one leaf's width; structural less frames when not set
    double stop_deg = 90;            ///< how far the leaf opens
    Side parks = Side::Left;         ///< pocket, sliding and barn doors: where the open leaf stands
    double cavity_mm = 0;            ///< pocket door: length of the cavity in the wall
    // Windows.
    double reveal_mm = 0;            ///< depth from the finished face to the frame
    double sill_board_mm = 0;        ///< how far the sill board stands out into the room
    UnknownKeys unknown;
};

struct Size3 {
    double width_mm = 0;  ///< along the piece's own x (left to right as one faces its front)
    double depth_mm = 0;  ///< front to back
    double height_mm = 0;
};

/// A piece of furniture: a parametric kind (see plan/furniture_kinds.hpp) or a glTF file.
/// At turn 0 its back is to the north: one faces its front looking north, local x east, local y to the back.
struct Furniture {
    std::string id;
    std::string kind;      ///< key of the furniture kind table, or "gltf"
    std::string name;
    std::string room;
    std::string layer;
    Vec2 at_mm;            ///< centre of the footprint, in house coordinates
    double bottom_mm = 0;  ///< underside above FFL
    double turn_deg = 0;   ///< counter-clockwise seen from above
    Size3 size;
    std::vector<std::pair<std::string, double>> with; ///< values that differ from the kind's defaults
    std::string colour;    ///< "#RRGGBB", empty: the kind's own
    std::string file;      ///< glTF file beside the plan, for kind "gltf"
    UnknownKeys unknown;
};

/// What a plate or luminaire is mounted on, and where on it. Each host has its own (u, v, w) frame:
/// wall: u from the left corner, v up from FFL; floor and ceiling: u east and v north from the
/// south-west corner of the room's bounding box; furniture face: u from its left edge as seen from
/// outside the piece, v up from FFL (for faces "top" and "bottom": v towards the back).
struct Host {
    enum class Kind { Wall, Floor, Ceiling, Furniture };
    Kind kind = Kind::Wall;
    std::string wall;      ///< wall id within the room
    std::string furniture; ///< furniture id
    std::string face;      ///< "front", "back", "left", "right", "top", "bottom"
    double u_mm = 0;
    double v_mm = 0;
    bool operator==(const Host&) const = default;
};

/// One gang's insert.
struct Module {
    std::string type;   ///< key in the catalogue: "socket-f", "switch-1way"
    std::string finish; ///< finish id; empty: the plate's
    std::string label;  ///< engraving or note: "hob", "landing"
    UnknownKeys unknown = {};
    /// What the chosen product carries at least and at most; the catalogue's values when not set.
    std::optional<double> min_load_w = {};
    std::optional<double> max_load_w = {};
};

enum class Direction { Horizontal, Vertical };
enum class UseRate { Daily, Weekly, LeftPlugged, Once };
enum class Sight { Any, KeepHidden, KeepInReach };
/// From where a plate's cable comes to its box.
enum class Feed { Unstated, Above, Below, Left, Right };

/// How far the electrician may move a plate without asking, each way, in mm.
struct SiteTolerance {
    double along_mm = 0;
    double height_mm = 0;
    UnknownKeys unknown = {}; ///< may be left out where one is listed by its values
    bool operator==(const SiteTolerance&) const = default;
};

/// A distance of a plate that is kept: when what it is measured from moves, the plate follows along that one
/// direction of its host.
struct KeptDistance {
    /// Corners, openings, furniture and plates are those of the plate's own wall or host; Floor is FFL.
    enum class From { LeftCorner, RightCorner, Floor, Opening, Furniture, Plate };
    enum class Edge { Left, Right, Top, Bottom, Centre };
    From from = From::LeftCorner;
    std::string id;              ///< of the opening, piece of furniture or plate; empty for the others
    Edge edge = Edge::Left;      ///< of what `id` names; a door's edge is its casing's outer edge
    double distance_mm = 0;      ///< from there to the plate's centre, positive to the right or up
    UnknownKeys unknown = {};
    bool operator==(const KeptDistance&) const = default;
};

struct Plate {
    std::string id;
    std::string tag;       ///< "K-04"
    std::string room;
    Host host;
    std::string format;    ///< catalogue plate format
    Direction direction = Direction::Horizontal;
    int gangs = 0;         ///< 0: as many as the modules take
    std::vector<Module> modules; ///< left to right, or top to bottom
    std::string finish;
    std::string purpose;   ///< what it is for: "dishwasher", "bedside left"
    std::string anchor;    ///< furniture or device it belongs to, if any
    UseRate use = UseRate::Daily;
    Sight sight = Sight::Any;
    SiteTolerance tolerance;
    std::string circuit;
    std::optional<double> box_depth_mm; ///< when it differs from the format's
    bool barrier = false;  ///< a partition in the box keeps mains and extra-low voltage apart
    Feed feed = Feed::Unstated;
    std::string ip;        ///< degree of protection of what is mounted, IEC 60529: "IP44"; empty: not stated
    std::optional<KeptDistance> kept_along;  ///< u follows this
    std::optional<KeptDistance> kept_height; ///< v follows this
    /// Where its plan symbol was dragged to: from the plate's own place on plan, house x and y, mm. The plate
    /// does not move by it.
    std::optional<Vec2> symbol_offset_mm;
    std::string note;
    UnknownKeys unknown;
};

/// A plate format of the designer's own, for plates that no country's file has. Lengths as in the
/// catalogue's formats.
struct OwnFormat {
    std::string id;
    std::string name;
    double module_width_mm = 0;  ///< visible part of one module
    double module_height_mm = 0;
    double plate_width_mm = 0;   ///< outline of a one-gang plate
    double plate_height_mm = 0;
    double pitch_mm = 0;         ///< centre to centre of neighbouring gangs
    double corner_mm = 0;        ///< radius
    double relief_mm = 0;        ///< how far the frame stands out of the wall
    int max_gangs = 5;
    double box_width_mm = 0;     ///< of one gang's hole: diameter of a round one
    double box_height_mm = 0;    ///< 0: the box is round
    double box_depth_mm = 0;
    double drill_mm = 0;         ///< cutter diameter; 0 when it is not drilled
    UnknownKeys unknown;
};

/// A composed plate of the designer's library, carried in the plan so that it opens anywhere.
struct LibraryPlate {
    std::string id;
    std::string name;
    std::string category;
    std::string format;
    Direction direction = Direction::Horizontal;
    int gangs = 0;
    std::vector<Module> modules;
    std::string finish;
    std::optional<double> box_depth_mm;
    bool barrier = false;
    std::string note;
    UnknownKeys unknown;
};

/// What the household plugs in.
struct Device {
    enum class Plug { Straight, Flat, PowerBlock };
    std::string id;
    std::string name;
    std::string room;
    std::string furniture;       ///< the piece it is in or on; empty: stands by itself
    Vec3 lead_exit_mm;           ///< where the lead leaves it: house x, y and height above FFL
    double lead_mm = 0;
    Plug plug = Plug::Straight;
    std::string plug_type;       ///< IEC TR 60083 letter: "F", "G"
    double watts = 0;
    bool data = false;
    std::string plate;           ///< plate it is plugged into, if decided
    UnknownKeys unknown;
};

struct Luminaire {
    enum class Kind { Ceiling, Wall, Pendant, Recessed, Linear, UnderUnit, Floor, Table };
    /// How plans show it: as the sheet says for all, or its own way.
    enum class PlanLook { AsSheet, Symbol, TopView };
    std::string id;
    std::string tag;
    std::string name;
    Kind kind = Kind::Ceiling;
    std::string room;
    Host host;
    double drop_mm = 0;          ///< pendant: from the ceiling to the underside of the shade
    double size_mm = 0;          ///< diameter, or length of a linear one
    double turn_deg = 0;         ///< linear: direction, counter-clockwise from east
    double watts = 0;
    double lumens = 0;
    double kelvin = 2700;
    double beam_deg = 0;         ///< full beam angle; 0: all round
    bool dimmable = false;
    std::string ies;             ///< IES file beside the plan
    std::string ip;              ///< degree of protection, IEC 60529: "IP44"; empty: not stated
    PlanLook plan_look = PlanLook::AsSheet;
    bool own_switch = false;     ///< worked by a switch on itself or its lead; floor and table lamps always are
    UnknownKeys unknown;
};

/// One way of one module: the module's number on its plate from 1, and the way from 1.
struct WayRef {
    std::string plate;
    int module = 1;
    int way = 1;
    UnknownKeys unknown = {}; ///< may be left out where one is listed by its values
    bool operator==(const WayRef&) const = default;
};

/// A switch leg: the positions that work it and what it feeds (luminaires, or switched socket plates).
struct SwitchLeg {
    std::string id;
    std::string letter;
    std::string name;
    std::vector<WayRef> controls;
    std::vector<std::string> luminaires;
    std::vector<std::string> plates;
    UnknownKeys unknown = {};
    /// How the plan draws it. Auto: by how crowded the plan is there.
    enum class Line { Auto, Arc, Straight, Orthogonal, Letters };
    Line line = Line::Auto;
    bool relay = false; ///< an impulse relay in the board or a box: any number of push-buttons work it
    std::string circuit = {}; ///< id of the circuit it is fed by, or the name of one that is not described
};

/// A circuit, as the designer's information for the electrician, who designs it.
struct Circuit {
    enum class Kind { Lighting, Sockets, Appliance, Motor };
    std::string id;
    std::string name;
    Kind kind = Kind::Sockets;
    double rated_a = 0;     ///< of its protective device; 0: not stated
    std::string protection; ///< the device in words: "RCBO, 30 mA"
    double volts = 0;       ///< 0: the country pack's
    std::string note;
    UnknownKeys unknown;
};

/// A stored picture of light: how far each leg is on. Legs that are not listed are off.
struct LightScene {
    struct Level {
        std::string leg;
        double percent = 100; ///< 1 to 100; a leg without dimmer is on
        UnknownKeys unknown = {};
        bool operator==(const Level&) const = default;
    };
    std::string id;
    std::string name;
    std::vector<Level> levels;
    UnknownKeys unknown;
};

/// An answer the homeowner gave about a plate; the latest of a plate counts.
struct Agreement {
    enum class Answer { Agree, Query };
    std::string plate;
    Answer answer = Answer::Agree;
    std::string by;
    std::string at;          ///< ISO 8601 time, UTC
    std::string note;
    std::string fingerprint; ///< what was agreed (review/fingerprint.hpp)
    UnknownKeys unknown;
};

/// A finding of the checks that the designer takes as it is. It counts as long as its facts stay the same.
struct Acceptance {
    std::string id;    ///< of the finding: its rule and what it is about (checks/accepted.hpp)
    std::string facts; ///< what the finding said
    std::string by;
    std::string at;    ///< ISO 8601 time, UTC
    std::string note;  ///< why: "client wants it so"
    UnknownKeys unknown;
};

/// A plate as it was issued: what it is set out and made by, nothing else.
struct IssuedPlate {
    Plate plate; ///< its format is empty where it is the room's of then; room is not set
};

/// A luminaire as it was issued: where it is set out.
struct IssuedLuminaire {
    std::string id;
    std::string tag;
    Host host;
    double drop_mm = 0;
    UnknownKeys unknown;
};

/// A room as it was issued, with what is set out in it.
struct IssuedRoom {
    std::string id;
    std::optional<double> floor_mm; ///< thickness of its floor build-up; not set: was not stated
    std::string plate_format;       ///< of most of its plates
    std::vector<IssuedPlate> plates;
    std::vector<IssuedLuminaire> luminaires;
    UnknownKeys unknown;
};

/// A sheet of an issue.
struct IssuedSheet {
    std::string number; ///< "E-07"
    std::string print;  ///< hash of what it shows but for revision, date and page counts
    UnknownKeys unknown;
};

/// A set of sheets as it was handed over: what the next one is compared with. It never changes.
struct Issue {
    /// From where the heights and distances of its sheets count.
    enum class Level { Ffl, Slab, Site };
    enum class Face { Finished, Structural };
    std::string letter;  ///< revision letter: "A"
    std::string date;    ///< YYYY-MM-DD
    std::string by;
    std::string note;    ///< what it is for: "for first fix"
    Level level = Level::Ffl;
    Face face = Face::Finished;
    std::string content; ///< hash of the whole plan as it was, but for answers and earlier issues
    std::vector<IssuedRoom> rooms; ///< those with something set out in them
    std::vector<IssuedSheet> sheets;
    UnknownKeys unknown;
};

struct Plan {
    int format = kFormatNumber;
    Project project;
    std::string pack = "international"; ///< country pack
    bool accessible = false;            ///< the pack's reach for seated and short users counts
    DisplayUnits units = DisplayUnits::Millimetres;
    std::vector<Layer> layers;
    std::vector<Storey> storeys;
    std::vector<Room> rooms;
    std::vector<Opening> openings;
    std::vector<Furniture> furniture;
    std::vector<Plate> plates;
    std::vector<Device> devices;
    std::vector<Luminaire> luminaires;
    std::vector<SwitchLeg> legs;
    std::vector<Circuit> circuits;
    std::vector<LightScene> scenes;
    std::vector<Agreement> agreements;
    std::vector<Acceptance> accepted;
    std::vector<OwnFormat> formats;
    std::vector<LibraryPlate> library;
    std::vector<Issue> issues;          ///< oldest first
    UnknownKeys unknown;
};

/// Ids of the layers every plan has; a plan may add its own.
inline constexpr const char* kLayerBuilding = "building";
inline constexpr const char* kLayerFurniture = "furniture";
inline constexpr const char* kLayerSoft = "soft";
inline constexpr const char* kLayerLamps = "lamps";
inline constexpr const char* kLayerPlates = "plates";

/// Look-ups by id; nullptr when there is none. Pointers live until the plan is changed.
const Storey* findStorey(const Plan& plan, const std::string& id);
const Room* findRoom(const Plan& plan, const std::string& id);
const Furniture* findFurniture(const Plan& plan, const std::string& id);
const Plate* findPlate(const Plan& plan, const std::string& id);
/// By id or by tag ("K-04"), so that people can type what is printed.
const Plate* findPlateByName(const Plan& plan, const std::string& name);
const Luminaire* findLuminaire(const Plan& plan, const std::string& id);
const Layer* findLayer(const Plan& plan, const std::string& id);

/// Index of a wall in room.walls by its id; nullopt when the room has none of that name.
std::optional<std::size_t> wallIndex(const Room& room, const std::string& wall_id);

/// The latest agreement given for a plate, nullptr when there is none.
const Agreement* latestAgreement(const Plan& plan, const std::string& plate_id);

} // namespace gangway::plan
