// What a plan file holds, described once: for each type its keys in the order they are written, with
// unit, range and default. Reader (read.cpp), writer (write.cpp) and key list (known_keys.cpp) are
// visitors of these descriptions. Private to src/plan.
//
// A fallback of kRequired means that the key must stand in the file; any other value is what a missing
// key means, and a key that holds it is not written.
#pragma once

#include "plan/enum_words.hpp"
#include "plan/furniture_kinds.hpp"

#include <optional>
#include <string_view>
#include <type_traits>

namespace gangway::plan::fields {

inline constexpr std::nullopt_t kRequired = std::nullopt;

/// What a number may be, and what it is counted in.
struct Range {
    double min = 0;
    double max = 0;
    std::string_view unit = "mm";
    bool above_min = false; ///< min itself is not allowed
};
inline constexpr Range kPlace{-1e6, 1e6};         ///< a coordinate
inline constexpr Range kLength{0, 1e6};           ///< may be nothing
inline constexpr Range kSize{0, 1e6, "mm", true}; ///< must be something
inline constexpr Range kAngle{-360, 360, "degrees"};
inline constexpr Range kStop{0, 180, "degrees", true};
inline constexpr Range kBeam{0, 360, "degrees"};
inline constexpr Range kWatts{0, 1e6, "W"};
inline constexpr Range kAmperes{0, 1000, "A"};
inline constexpr Range kVolts{0, 1000, "V"};
inline constexpr Range kPercent{1, 100, "%"};
inline constexpr Range kLumens{0, 1e6, "lm"};
inline constexpr Range kKelvin{1000, 20000, "K"};
inline constexpr Range kLeaves{1, 2, ""};
inline constexpr Range kGangs{0, 20, ""};
inline constexpr Range kMaxGangs{1, 20, ""};
inline constexpr Range kNumbering{1, 100, ""};
inline constexpr Range kCorner{0, 1999, ""};

inline constexpr std::size_t kMaxBytes = std::size_t{256} * 1024 * 1024;
inline constexpr std::size_t kMaxList = 100'000;
inline constexpr std::size_t kMaxCorners = 2'000;
inline constexpr std::size_t kMaxTextBytes = 10'000;

/// T& for visitors that fill a plan, const T& for those that look at one.
template <class V, class T>
using Ref = std::conditional_t<V::kFills, T&, const T&>;

template <class V>
void describe(V& v, Ref<V, Project> p) {
    v.text("name", p.name, "");
    v.text("number", p.number, "");
    v.text("client", p.client, "");
    v.text("address", p.address, "");
    v.text("designer", p.designer, "");
    v.text("company", p.company, "");
    v.text("contact", p.contact, "");
    v.text("approvedBy", p.approved_by, "");
    v.text("date", p.date, "");
    v.text("revision", p.revision, "");
    v.text("status", p.status, "");
    v.text("notes", p.notes, "");
    v.unknown(p.unknown);
}

template <class V>
void describe(V& v, Ref<V, Layer> l) {
    v.id("id", l.id);
    v.text("name", l.name, kRequired);
    v.word("visibility", l.visibility, words::kVisibility, Visibility::Shown);
    v.unknown(l.unknown);
}

template <class V>
void describe(V& v, Ref<V, Course> c) {
    v.text("material", c.material, kRequired);
    v.number("thickness", c.thickness_mm, kLength, kRequired);
    v.unknown(c.unknown);
}

template <class V>
void describe(V& v, Ref<V, Storey> s) {
    v.id("id", s.id);
    v.text("name", s.name, kRequired);
    v.number("elevation", s.elevation_mm, kPlace, 0.0);
    v.text("plateFormat", s.plate_format, "");
    v.maybe("siteLine", s.site_line_mm, kPlace);
    v.unknown(s.unknown);
}

template <class V>
void describe(V& v, Ref<V, WallLine> l) {
    v.word("kind", l.kind, words::kWallLine, kRequired);
    v.number("bottom", l.bottom_mm, kPlace, 0.0);
    v.number("height", l.height_mm, kSize, kRequired);
    v.number("depth", l.depth_mm, kLength, 0.0);
    v.maybe("from", l.from_mm, kPlace);
    v.maybe("to", l.to_mm, kPlace);
    v.pair("tile", l.tile_width_mm, l.tile_height_mm, kLength);
    v.number("joint", l.joint_mm, kLength, 0.0);
    v.pair("start", l.start_u_mm, l.start_v_mm, kPlace);
    v.unknown(l.unknown);
}

/// Studs have no direction of their own: they stand upright.
enum class FramingUse { Studs, Joists };

template <class V>
void describe(V& v, Ref<V, Framing> f, FramingUse use) {
    v.number("spacing", f.spacing_mm, kSize, 600.0);
    v.number("first", f.first_mm, kPlace, 0.0);
    v.number("width", f.width_mm, kSize, 45.0);
    if (use == FramingUse::Joists) v.number("direction", f.direction_deg, kAngle, 0.0);
    v.unknown(f.unknown);
}

template <class V>
void describe(V& v, Ref<V, Wall> w) {
    v.wallId("id", w.id);
    v.number("thickness", w.thickness_mm, kLength, 100.0);
    v.word("structure", w.structure, words::kStructure, WallStructure::Unknown);
    v.word("duty", w.duty, words::kDuty, WallDuty::None);
    v.objects("buildUp", w.build_up);
    v.objects("lines", w.lines);
    v.framing("studs", w.studs, FramingUse::Studs);
    v.colour("colour", w.colour);
    v.unknown(w.unknown);
}

/// The long form of a ceiling; a flat one is written as its height alone.
template <class V>
void describe(V& v, Ref<V, Ceiling> c) {
    v.numbers("heights", c.heights_mm, kSize, kMaxCorners);
    v.cornerPairs("creases", c.creases);
    v.framing("joists", c.joists, FramingUse::Joists);
    v.unknown(c.unknown);
}

template <class V>
void describe(V& v, Ref<V, Room> r) {
    v.id("id", r.id);
    v.text("letter", r.letter, "");
    v.text("name", r.name, kRequired);
    v.word("use", r.use, words::kRoomUse, RoomUse::Unstated);
    v.flag("main", r.main);
    v.id("storey", r.storey);
    v.polygon("outline", r.outline);
    v.objects("walls", r.walls);
    v.polygons("columns", r.columns);
    v.ceiling("ceiling", r.ceiling);
    v.objects("floorBuildUp", r.floor_build_up);
    v.wordText("floorFinish", r.floor_finish, words::kFloorFinish);
    v.colour("wallColour", r.wall_colour);
    v.unknown(r.unknown);
}

template <class V>
void describe(V& v, Ref<V, Opening> o) {
    using Kind = Opening::Kind;
    v.id("id", o.id);
    v.text("name", o.name, "");
    v.word("kind", o.kind, words::kOpening, kRequired);
    v.id("room", o.room);
    v.id("wall", o.wall);
    v.number("left", o.left_mm, kPlace, kRequired);
    v.number("width", o.width_mm, kSize, kRequired);
    v.number("sill", o.sill_mm, kPlace, 0.0);
    v.number("height", o.height_mm, kSize, kRequired);
    v.number("frame", o.frame_mm, kLength, 0.0);
    v.number("casing", o.casing_mm, kLength, 0.0);
    v.number("casingBeyond", o.casing_beyond_mm, kLength, 0.0);
    v.text("joins", o.joins, "");
    // A door whose hand is guessed is a switch behind an open leaf: these are never defaulted.
    const bool hinged = o.kind == Kind::HingedDoor;
    const bool slides = o.kind == Kind::PocketDoor || o.kind == Kind::SlidingDoor || o.kind == Kind::BarnDoor;
    const bool pocket = o.kind == Kind::PocketDoor;
    v.word("hinge", o.hinge, words::kSide, hinged ? std::optional<Side>{} : Side::Left);
    v.word("swing", o.swing, words::kSwing, hinged ? std::optional<Swing>{} : Swing::In);
    v.integer("leaves", o.leaves, kLeaves, 1);
    v.maybe("leaf", o.leaf_mm, kSize, hinged);
    v.number("stop", o.stop_deg, kStop, hinged ? std::optional<double>{} : 90.0);
    v.word("parks", o.parks, words::kSide, slides ? std::optional<Side>{} : Side::Left);
    v.number("cavity", o.cavity_mm, kLength, pocket ? std::optional<double>{} : 0.0);
    v.number("reveal", o.reveal_mm, kLength, 0.0);
    v.number("sillBoard", o.sill_board_mm, kLength, 0.0);
    v.unknown(o.unknown);
}

template <class V>
void describe(V& v, Ref<V, Furniture> f) {
    v.id("id", f.id);
    v.id("kind", f.kind);
    const FurnitureKind* kind = findFurnitureKind(f.kind);
    v.text("name", f.name, kind ? kind->name : std::string_view{});
    v.id("room", f.room);
    v.text("layer", f.layer, kind ? kind->layer : std::string_view(kLayerFurniture));
    v.point("at", f.at_mm);
    v.number("bottom", f.bottom_mm, kPlace, 0.0);
    v.number("turn", f.turn_deg, kAngle, 0.0);
    v.size("size", f.size, kind ? std::optional(kind->size) : std::nullopt);
    v.values("with", f.with);
    v.colour("colour", f.colour);
    v.text("file", f.file, "");
    v.unknown(f.unknown);
}

template <class V>
void describe(V& v, Ref<V, Module> m) {
    v.id("type", m.type);
    v.text("finish", m.finish, "");
    v.text("label", m.label, "");
    v.maybe("minLoad", m.min_load_w, kWatts);
    v.maybe("maxLoad", m.max_load_w, kWatts);
    v.unknown(m.unknown);
}

template <class V>
void describe(V& v, Ref<V, SiteTolerance> t) {
    v.number("along", t.along_mm, kLength, 0.0);
    v.number("height", t.height_mm, kLength, 0.0);
    v.unknown(t.unknown);
}

template <class V>
void describe(V& v, Ref<V, KeptDistance> k) {
    v.word("from", k.from, words::kKeptFrom, kRequired);
    v.text("id", k.id, "");
    v.word("edge", k.edge, words::kKeptEdge, KeptDistance::Edge::Left);
    v.number("distance", k.distance_mm, kPlace, kRequired);
    v.unknown(k.unknown);
}

template <class V>
void describe(V& v, Ref<V, Plate> p) {
    v.id("id", p.id);
    v.text("tag", p.tag, "");
    v.id("room", p.room);
    v.host(p.host);
    v.text("format", p.format, v.storeyFormat(p.room));
    v.word("direction", p.direction, words::kDirection, Direction::Horizontal);
    v.integer("gangs", p.gangs, kGangs, 0);
    v.modules("modules", p.modules);
    v.text("finish", p.finish, "");
    v.text("for", p.purpose, "");
    v.text("anchor", p.anchor, "");
    v.word("use", p.use, words::kUse, UseRate::Daily);
    v.word("sight", p.sight, words::kSight, Sight::Any);
    v.group("mayMove", p.tolerance);
    v.text("circuit", p.circuit, "");
    v.maybe("boxDepth", p.box_depth_mm, kSize);
    v.flag("barrier", p.barrier);
    v.word("feed", p.feed, words::kFeed, Feed::Unstated);
    v.text("ip", p.ip, "");
    v.maybeObject("keptAlong", p.kept_along);
    v.maybeObject("keptHeight", p.kept_height);
    v.maybePoint("symbolOffset", p.symbol_offset_mm);
    v.text("note", p.note, "");
    v.unknown(p.unknown);
}

template <class V>
void describe(V& v, Ref<V, OwnFormat> f) {
    v.id("id", f.id);
    v.text("name", f.name, kRequired);
    v.number("moduleWidth", f.module_width_mm, kSize, kRequired);
    v.number("moduleHeight", f.module_height_mm, kSize, kRequired);
    v.number("plateWidth", f.plate_width_mm, kSize, kRequired);
    v.number("plateHeight", f.plate_height_mm, kSize, kRequired);
    v.number("pitch", f.pitch_mm, kSize, kRequired);
    v.number("corner", f.corner_mm, kLength, 0.0);
    v.number("relief", f.relief_mm, kLength, 0.0);
    v.integer("maxGangs", f.max_gangs, kMaxGangs, 5);
    v.number("boxWidth", f.box_width_mm, kSize, kRequired);
    v.number("boxHeight", f.box_height_mm, kLength, 0.0);
    v.number("boxDepth", f.box_depth_mm, kSize, kRequired);
    v.number("drill", f.drill_mm, kLength, 0.0);
    v.unknown(f.unknown);
}

template <class V>
void describe(V& v, Ref<V, LibraryPlate> p) {
    v.id("id", p.id);
    v.text("name", p.name, kRequired);
    v.text("category", p.category, "");
    v.id("format", p.format);
    v.word("direction", p.direction, words::kDirection, Direction::Horizontal);
    v.integer("gangs", p.gangs, kGangs, 0);
    v.modules("modules", p.modules);
    v.text("finish", p.finish, "");
    v.maybe("boxDepth", p.box_depth_mm, kSize);
    v.flag("barrier", p.barrier);
    v.text("note", p.note, "");
    v.unknown(p.unknown);
}

template <class V>
void describe(V& v, Ref<V, Device> d) {
    v.id("id", d.id);
    v.text("name", d.name, kRequired);
    v.id("room", d.room);
    v.text("furniture", d.furniture, "");
    v.point3("leadExit", d.lead_exit_mm);
    v.number("lead", d.lead_mm, kLength, kRequired);
    v.word("plug", d.plug, words::kPlug, Device::Plug::Straight);
    v.text("plugType", d.plug_type, "");
    v.number("watts", d.watts, kWatts, 0.0);
    v.flag("data", d.data);
    v.text("plate", d.plate, "");
    v.unknown(d.unknown);
}

template <class V>
void describe(V& v, Ref<V, Luminaire> l) {
    v.id("id", l.id);
    v.text("tag", l.tag, "");
    v.text("name", l.name, "");
    v.word("kind", l.kind, words::kLuminaire, kRequired);
    v.id("room", l.room);
    v.host(l.host);
    v.number("drop", l.drop_mm, kLength, 0.0);
    v.number("size", l.size_mm, kLength, 0.0);
    v.number("turn", l.turn_deg, kAngle, 0.0);
    v.number("watts", l.watts, kWatts, 0.0);
    v.number("lumens", l.lumens, kLumens, 0.0);
    v.number("kelvin", l.kelvin, kKelvin, 2700.0);
    v.number("beam", l.beam_deg, kBeam, 0.0);
    v.flag("dimmable", l.dimmable);
    v.text("ies", l.ies, "");
    v.text("ip", l.ip, "");
    v.word("planLook", l.plan_look, words::kPlanLook, Luminaire::PlanLook::AsSheet);
    v.flag("ownSwitch", l.own_switch);
    v.unknown(l.unknown);
}

template <class V>
void describe(V& v, Ref<V, WayRef> w) {
    v.id("plate", w.plate);
    v.integer("module", w.module, kNumbering, 1);
    v.integer("way", w.way, kNumbering, 1);
    v.unknown(w.unknown);
}

template <class V>
void describe(V& v, Ref<V, SwitchLeg> l) {
    v.id("id", l.id);
    v.text("letter", l.letter, "");
    v.text("name", l.name, "");
    v.objects("controls", l.controls);
    v.texts("luminaires", l.luminaires);
    v.texts("plates", l.plates);
    v.word("line", l.line, words::kLegLine, SwitchLeg::Line::Auto);
    v.flag("relay", l.relay);
    v.text("circuit", l.circuit, "");
    v.unknown(l.unknown);
}

template <class V>
void describe(V& v, Ref<V, Circuit> c) {
    v.id("id", c.id);
    v.text("name", c.name, "");
    v.word("kind", c.kind, words::kCircuit, kRequired);
    v.number("rated", c.rated_a, kAmperes, 0.0);
    v.text("protection", c.protection, "");
    v.number("volts", c.volts, kVolts, 0.0);
    v.text("note", c.note, "");
    v.unknown(c.unknown);
}

template <class V>
void describe(V& v, Ref<V, LightScene::Level> l) {
    v.id("leg", l.leg);
    v.number("percent", l.percent, kPercent, 100.0);
    v.unknown(l.unknown);
}

template <class V>
void describe(V& v, Ref<V, LightScene> s) {
    v.id("id", s.id);
    v.text("name", s.name, "");
    v.objects("levels", s.levels);
    v.unknown(s.unknown);
}

template <class V>
void describe(V& v, Ref<V, Agreement> a) {
    v.id("plate", a.plate);
    v.word("answer", a.answer, words::kAnswer, kRequired);
    v.text("by", a.by, kRequired);
    v.text("at", a.at, kRequired);
    v.text("note", a.note, "");
    v.text("fingerprint", a.fingerprint, kRequired);
    v.unknown(a.unknown);
}

template <class V>
void describe(V& v, Ref<V, Acceptance> a) {
    v.id("id", a.id);
    v.text("facts", a.facts, kRequired);
    v.text("by", a.by, kRequired);
    v.text("at", a.at, kRequired);
    v.text("note", a.note, "");
    v.unknown(a.unknown);
}

/// What others see of a plate and what it is set out by; the rest of a plate is not kept in an issue.
template <class V>
void describe(V& v, Ref<V, IssuedPlate> issued) {
    auto& p = issued.plate;
    v.id("id", p.id);
    v.text("tag", p.tag, "");
    v.host(p.host);
    v.text("format", p.format, "");
    v.word("direction", p.direction, words::kDirection, Direction::Horizontal);
    v.integer("gangs", p.gangs, kGangs, 0);
    v.modules("modules", p.modules);
    v.text("finish", p.finish, "");
    v.text("for", p.purpose, "");
    v.group("mayMove", p.tolerance);
    v.text("circuit", p.circuit, "");
    v.maybe("boxDepth", p.box_depth_mm, kSize);
    v.flag("barrier", p.barrier);
    v.word("feed", p.feed, words::kFeed, Feed::Unstated);
    v.text("ip", p.ip, "");
    v.unknown(p.unknown);
}

template <class V>
void describe(V& v, Ref<V, IssuedLuminaire> l) {
    v.id("id", l.id);
    v.text("tag", l.tag, "");
    v.host(l.host);
    v.number("drop", l.drop_mm, kLength, 0.0);
    v.unknown(l.unknown);
}

template <class V>
void describe(V& v, Ref<V, IssuedRoom> r) {
    v.id("id", r.id);
    v.maybe("floor", r.floor_mm, kLength);
    v.text("plateFormat", r.plate_format, "");
    v.objects("plates", r.plates);
    v.objects("luminaires", r.luminaires);
    v.unknown(r.unknown);
}

template <class V>
void describe(V& v, Ref<V, IssuedSheet> s) {
    v.id("number", s.number);
    v.id("print", s.print);
    v.unknown(s.unknown);
}

template <class V>
void describe(V& v, Ref<V, Issue> i) {
    v.id("letter", i.letter);
    v.id("date", i.date);
    v.text("by", i.by, kRequired);
    v.text("note", i.note, "");
    v.word("level", i.level, words::kIssueLevel, Issue::Level::Ffl);
    v.word("face", i.face, words::kIssueFace, Issue::Face::Finished);
    v.text("content", i.content, "");
    v.objects("rooms", i.rooms);
    v.objects("sheets", i.sheets);
    v.unknown(i.unknown);
}

template <class V>
void describe(V& v, Ref<V, Plan> p) {
    v.format("gangway", p.format);
    v.group("project", p.project);
    v.text("pack", p.pack, "international");
    v.flag("accessible", p.accessible);
    v.word("units", p.units, words::kUnits, DisplayUnits::Millimetres);
    v.objects("layers", p.layers);
    v.objects("storeys", p.storeys);
    v.objects("rooms", p.rooms);
    v.objects("openings", p.openings);
    v.objects("furniture", p.furniture);
    v.objects("plates", p.plates);
    v.objects("devices", p.devices);
    v.objects("luminaires", p.luminaires);
    v.objects("legs", p.legs);
    v.objects("circuits", p.circuits);
    v.objects("scenes", p.scenes);
    v.objects("agreements", p.agreements);
    v.objects("accepted", p.accepted);
    v.objects("formats", p.formats);
    v.objects("library", p.library);
    v.objects("issues", p.issues);
    v.unknown(p.unknown);
}

} // namespace gangway::plan::fields
