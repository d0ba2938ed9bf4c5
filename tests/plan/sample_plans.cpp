#include "plan/sample_plans.hpp"

#include "plan/furniture_kinds.hpp"
#include "plan/io.hpp"

#include <array>
#include <random>

namespace gangway::plan::samples {

namespace {

std::vector<Layer> fiveLayers() {
    return {{kLayerBuilding, "Building", Visibility::Shown, {}},
            {kLayerFurniture, "Furniture", Visibility::Shown, {}},
            {kLayerSoft, "Soft furnishings", Visibility::Ghosted, {}},
            {kLayerLamps, "Lamps", Visibility::Shown, {}},
            {kLayerPlates, "Plates", Visibility::Hidden, {}}};
}

std::string numbered(const std::string& stem, std::size_t number) {
    return stem + "-" + std::to_string(number);
}

Room rectangle(const std::string& id, Vec2 corner, double width, double depth) {
    Room room;
    room.id = id;
    room.name = "Room " + id;
    room.letter = "R";
    room.storey = "ground";
    room.outline = {{corner.x, corner.y + depth},
                    {corner.x + width, corner.y + depth},
                    {corner.x + width, corner.y},
                    corner};
    for (const char* name : {"A", "B", "C", "D"}) {
        Wall wall;
        wall.id = name;
        wall.build_up = {{"plaster", 13, {}}};
        room.walls.push_back(wall);
    }
    room.ceiling.heights_mm = {2500};
    return room;
}

void fill(Plan& plan, const Room& room, Vec2 corner) {
    Opening door;
    door.id = room.id + "-door";
    door.kind = Opening::Kind::HingedDoor;
    door.room = room.id;
    door.wall = "C";
    door.left_mm = 300;
    door.width_mm = 900;
    door.height_mm = 2100;
    door.leaf_mm = 826;
    plan.openings.push_back(door);
    constexpr std::array<const char*, 6> kKinds{"wardrobe", "bed", "desk", "chair", "sofa", "table"};
    for (std::size_t i = 0; i < kKinds.size(); ++i) {
        const FurnitureKind* kind = findFurnitureKind(kKinds[i]);
        Furniture piece;
        piece.id = numbered(room.id + "-piece", i + 1);
        piece.kind = kKinds[i];
        piece.name = std::string(kind->name);
        piece.layer = std::string(kind->layer);
        piece.size = kind->size;
        piece.room = room.id;
        piece.at_mm = corner + Vec2{700.0 * static_cast<double>(i) + 300, 1200.5};
        plan.furniture.push_back(piece);
    }
    for (std::size_t i = 0; i < 12; ++i) {
        Plate plate;
        plate.id = numbered(room.id + "-plate", i + 1);
        plate.tag = numbered(room.id, i + 1);
        plate.room = room.id;
        plate.host.wall = std::string(1, static_cast<char>('A' + i % 4));
        plate.host.u_mm = 200 + 250.5 * static_cast<double>(i);
        plate.host.v_mm = i == 0 ? 1050 : 300;
        plate.format = "rect-86";
        plate.modules = {{i == 0 ? "switch-1way" : "socket-g", "", "", {}}, {"blank", "", "", {}}};
        plate.finish = "white";
        plate.purpose = "standing lamp or charger";
        plate.tolerance = {20, 10};
        plan.plates.push_back(plate);
    }
    for (std::size_t i = 0; i < 2; ++i) {
        Luminaire lamp;
        lamp.id = numbered(room.id + "-lamp", i + 1);
        lamp.room = room.id;
        lamp.host = {Host::Kind::Ceiling, "", "", "", 1000.0 + 1000.0 * static_cast<double>(i), 1500};
        lamp.watts = 8;
        lamp.lumens = 806;
        plan.luminaires.push_back(lamp);
    }
    plan.legs.push_back({room.id + "-leg",
                         "a",
                         "",
                         {{room.id + "-plate-1", 1, 1}},
                         {room.id + "-lamp-1", room.id + "-lamp-2"},
                         {},
                         {}});
}

/// Numbers as people and programs write them.
class Dice {
public:
    explicit Dice(std::uint32_t seed) : engine_(seed) {}
    /// 0 to limit - 1. (Not std::uniform_int_distribution: its results differ between libraries.)
    std::size_t below(std::size_t limit) { return engine_() % limit; }
    bool chance() { return below(2) == 0; }
    double length(double low, double high) {
        const double part = static_cast<double>(engine_()) / 4294967296.0;
        const double value = low + (high - low) * part;
        switch (below(4)) {
        case 0:
            return value; // all digits of a double
        case 1:
            return static_cast<double>(static_cast<int>(value * 10)) / 10; // tenths
        default:
            return static_cast<double>(static_cast<int>(value));
        }
    }
    std::string text() {
        constexpr std::array<const char*, 8> kTexts{"",
                                                    "hob",
                                                    "bedside left",
                                                    "a \"quoted\" word",
                                                    "back\\slash",
                                                    "two\nlines\tand a tab",
                                                    "Küche, ½ m²",
                                                    "灯 \x01 \x1f/~"};
        return kTexts[below(kTexts.size())];
    }
    std::string colour() { return chance() ? "" : "#F6F2EA"; }
    UnknownKeys unknown() {
        if (below(5) != 0) return {};
        return {
            {"x-" + std::to_string(below(9)), chance() ? "[1, 2.50, {\"deep\": null}]" : "\"a, b: {c}\""}};
    }
    template <class E>
    E pick(std::initializer_list<E> of) {
        return *(of.begin() + below(of.size()));
    }

private:
    std::mt19937 engine_;
};

std::optional<double> maybe(Dice& dice, double low, double high) {
    return dice.chance() ? std::optional(dice.length(low, high)) : std::nullopt;
}

void decorate(Dice& dice, Wall& wall, double along) {
    wall.thickness_mm = dice.length(50, 400);
    wall.structure = dice.pick({WallStructure::Unknown, WallStructure::Masonry, WallStructure::Stud,
                                WallStructure::Concrete, WallStructure::Timber, WallStructure::None});
    wall.colour = dice.colour();
    if (dice.chance())
        wall.studs = Framing{dice.length(300, 700), dice.length(0, 300), 45, 0, dice.unknown()};
    if (dice.chance()) {
        WallLine line;
        line.kind = dice.pick({WallLine::Kind::Skirting, WallLine::Kind::Cornice, WallLine::Kind::Tiles});
        line.bottom_mm = dice.length(0, 900);
        line.height_mm = dice.length(50, 600);
        line.depth_mm = dice.length(0, 20);
        line.from_mm = maybe(dice, 0, along / 3);
        line.to_mm = maybe(dice, along / 2, along);
        if (line.kind == WallLine::Kind::Tiles) {
            line.tile_width_mm = dice.length(100, 300);
            line.tile_height_mm = dice.length(50, 300);
            line.joint_mm = dice.length(0, 5);
            line.start_u_mm = dice.length(-50, 50);
        }
        line.unknown = dice.unknown();
        wall.lines.push_back(line);
    }
    wall.unknown = dice.unknown();
}

Room randomRoom(Dice& dice, std::size_t number, Vec2 corner) {
    const double width = dice.length(2500, 6000);
    const double depth = dice.length(2500, 6000);
    Room room = rectangle(numbered("room", number), corner, width, depth);
    room.name = dice.text();
    for (Wall& wall : room.walls)
        decorate(dice, wall, std::min(width, depth) - 850); // the notch below shortens two walls
    if (dice.chance()) {                                    // an L: the south-east corner is taken out
        const Vec2 notch = corner + Vec2{width - 800, 700.25};
        room.outline = {room.outline[0], room.outline[1],     {corner.x + width, notch.y},
                        notch,           {notch.x, corner.y}, corner};
        room.walls.insert(room.walls.begin() + 2, 2, Wall{});
        room.walls[2].id = "inner";
        room.walls[3].id = "B2";
    } else if (dice.chance()) { // a roof folded along a diagonal
        room.ceiling.heights_mm = {2500, 2300, 2500, 2900.5};
        room.ceiling.creases = {{0, 2}};
    }
    if (dice.chance()) {
        const Vec2 c = corner + Vec2{900, 1000};
        room.columns = {{c, c + Vec2{300, 0}, c + Vec2{300, 300}, c + Vec2{0, 300}}};
        for (const char* name : {"E", "F", "G", "H"}) {
            room.walls.emplace_back();
            room.walls.back().id = name;
        }
    }
    if (dice.chance()) room.ceiling.joists = Framing{400, 100, 60, dice.length(-90, 90), dice.unknown()};
    if (dice.chance())
        room.floor_build_up = {{"screed", dice.length(40, 80), dice.unknown()}, {"oak", 15, {}}};
    room.floor_finish = dice.pick({"", "boards", "tiles", "carpet", "screed"});
    room.wall_colour = dice.colour();
    room.unknown = dice.unknown();
    return room;
}

Opening randomOpening(Dice& dice, const Room& room, std::size_t number) {
    Opening o;
    o.id = numbered(room.id + "-opening", number);
    o.name = dice.text();
    o.kind = dice.pick({Opening::Kind::HingedDoor, Opening::Kind::PocketDoor, Opening::Kind::SlidingDoor,
                        Opening::Kind::BarnDoor, Opening::Kind::Window, Opening::Kind::Plain,
                        Opening::Kind::Hatch});
    o.room = room.id;
    o.wall = "A";
    o.left_mm = dice.length(0, 500);
    o.width_mm = dice.length(800, 1500);
    o.sill_mm = o.kind == Opening::Kind::Window ? dice.length(0, 900) : 0;
    o.height_mm = dice.length(900, 1300);
    o.frame_mm = dice.length(0, 50);
    o.casing_mm = dice.length(0, 80);
    o.casing_beyond_mm = dice.length(0, 80);
    o.hinge = dice.pick({Side::Left, Side::Right});
    o.swing = dice.pick({Swing::In, Swing::Out});
    o.parks = dice.pick({Side::Left, Side::Right});
    o.leaf_mm = dice.length(600, 700);
    o.stop_deg = dice.length(80, 170);
    o.cavity_mm = dice.length(700, 900);
    o.reveal_mm = dice.length(0, 200);
    o.unknown = dice.unknown();
    return o;
}

Plate randomPlate(Dice& dice, const Room& room, const std::string& piece, std::size_t number) {
    Plate p;
    p.id = numbered(room.id + "-plate", number);
    if (dice.chance()) p.tag = numbered("T" + room.id, number);
    p.room = room.id;
    switch (dice.below(4)) {
    case 0:
        p.host = {Host::Kind::Wall, "A", "", "", dice.length(0, 2000), dice.length(0, 2000)};
        break;
    case 1:
        p.host = {Host::Kind::Floor, "", "", "", dice.length(0, 1500), dice.length(800, 2000)};
        break;
    case 2:
        p.host = {Host::Kind::Furniture, "", piece, "front", dice.length(0, 400), dice.length(0, 400)};
        break;
    default:
        p.host = {Host::Kind::Furniture, "", piece, "top", dice.length(0, 400), dice.length(0, 400)};
    }
    p.format = dice.pick({"rect-86", "round-71", ""});
    p.direction = dice.pick({Direction::Horizontal, Direction::Vertical});
    p.gangs = static_cast<int>(dice.below(4));
    p.modules = {{"socket-f", "", "", {}},
                 {"switch-1way", dice.chance() ? "brass" : "", dice.text(), dice.unknown(), 2.5,
                  maybe(dice, 60, 400)}};
    p.finish = dice.text();
    p.purpose = dice.text();
    if (dice.chance()) p.anchor = piece;
    p.use = dice.pick({UseRate::Daily, UseRate::Weekly, UseRate::LeftPlugged, UseRate::Once});
    p.sight = dice.pick({Sight::Any, Sight::KeepHidden, Sight::KeepInReach});
    p.tolerance = {dice.chance() ? 0 : dice.length(0, 50), dice.length(0, 50), dice.unknown()};
    p.circuit = dice.text();
    p.box_depth_mm = maybe(dice, 35, 61);
    p.note = dice.text();
    p.unknown = dice.unknown();
    return p;
}

void fillRandom(Dice& dice, Plan& plan, const Room& room) {
    plan.openings.push_back(randomOpening(dice, room, 1));
    const FurnitureKind* kind = findFurnitureKind(dice.pick({"wardrobe", "bed", "desk"}));
    Furniture piece{room.id + "-piece",
                    std::string(kind->key),
                    dice.text(),
                    room.id,
                    std::string(kind->layer),
                    {dice.length(-9e5, 9e5), dice.length(-9e5, 9e5)},
                    dice.length(0, 100),
                    dice.length(-180, 180),
                    kind->size,
                    {},
                    dice.colour(),
                    dice.text(),
                    dice.unknown()};
    if (dice.chance()) piece.size = {dice.length(500, 900), dice.length(300, 900), dice.length(300, 2400)};
    if (dice.chance()) piece.with = {{std::string(kind->values.front().key), kind->values.front().max}};
    plan.furniture.push_back(piece);
    for (std::size_t i = 1; i <= 1 + dice.below(4); ++i)
        plan.plates.push_back(randomPlate(dice, room, piece.id, i));
    plan.devices.push_back({room.id + "-device",
                            dice.text(),
                            room.id,
                            dice.chance() ? piece.id : "",
                            {dice.length(-1e6, 1e6), dice.length(0, 9), dice.length(0, 2000)},
                            dice.length(0, 3000),
                            dice.pick({Device::Plug::Straight, Device::Plug::Flat, Device::Plug::PowerBlock}),
                            dice.text(),
                            dice.length(0, 3000),
                            dice.chance(),
                            plan.plates.back().id,
                            dice.unknown()});
    Luminaire lamp;
    lamp.id = room.id + "-lamp";
    lamp.name = dice.text();
    lamp.kind = dice.pick({Luminaire::Kind::Ceiling, Luminaire::Kind::Pendant, Luminaire::Kind::UnderUnit});
    lamp.room = room.id;
    lamp.host = {Host::Kind::Ceiling, "", "", "", dice.length(0, 1500), dice.length(800, 2000)};
    lamp.drop_mm = dice.length(0, 900);
    lamp.size_mm = dice.length(0, 900);
    lamp.turn_deg = dice.length(-180, 180);
    lamp.kelvin = dice.length(2200, 6500);
    lamp.beam_deg = dice.length(0, 360);
    lamp.dimmable = dice.chance();
    lamp.plan_look = dice.pick({Luminaire::PlanLook::AsSheet, Luminaire::PlanLook::TopView});
    lamp.own_switch = dice.chance();
    lamp.unknown = dice.unknown();
    plan.luminaires.push_back(lamp);
    plan.legs.push_back({room.id + "-leg",
                         dice.text(),
                         dice.text(),
                         {{plan.plates.back().id, 2, 1, dice.unknown()}},
                         {lamp.id},
                         dice.chance() ? std::vector<std::string>{} : std::vector{plan.plates.back().id},
                         dice.unknown(),
                         dice.pick({SwitchLeg::Line::Auto, SwitchLeg::Line::Letters}),
                         dice.chance(),
                         dice.text()});
    plan.circuits.push_back({room.id + "-circuit", dice.text(),
                             dice.pick({Circuit::Kind::Lighting, Circuit::Kind::Motor}), dice.length(0, 63),
                             dice.text(), dice.length(0, 400), dice.text(), dice.unknown()});
    plan.scenes.push_back({room.id + "-scene",
                           dice.text(),
                           {{plan.legs.back().id, dice.length(1, 100), dice.unknown()}},
                           dice.unknown()});
    plan.accepted.push_back({"covered-plate:" + plan.plates.back().id,
                             "It is behind the bed.",
                             "Ann",
                             "2026-11-25T12:00:00Z",
                             "the bed is on wheels",
                             {}});
    plan.agreements.push_back({plan.plates.back().id,
                               dice.pick({Agreement::Answer::Agree, Agreement::Answer::Query}), dice.text(),
                               "2026-11-25T12:00:00Z", dice.text(), "0123456789abcdef", dice.unknown()});
}

} // namespace

Plan house(std::size_t rooms) {
    Plan plan;
    plan.project.name = "House of " + std::to_string(rooms);
    plan.layers = fiveLayers();
    plan.storeys = {{"ground", "Ground floor", 0, "rect-86", std::nullopt, {}}};
    constexpr std::size_t kRow = 25;
    for (std::size_t i = 0; i < rooms; ++i) {
        const Vec2 corner{5000.0 * static_cast<double>(i % kRow), 4500.0 * static_cast<double>(i / kRow)};
        plan.rooms.push_back(rectangle(numbered("room", i + 1), corner, 4900, 4400));
        fill(plan, plan.rooms.back(), corner);
    }
    return plan;
}

Plan random(std::uint32_t seed) {
    Dice dice(seed);
    Plan plan;
    plan.project = {dice.text(), dice.text(), dice.text(),   dice.text(), dice.text(),
                    dice.text(), dice.text(), dice.text(),   dice.text(), dice.text(),
                    dice.text(), dice.text(), dice.unknown()};
    plan.pack = dice.pick({"international", "uk"});
    plan.units = dice.pick({DisplayUnits::Millimetres, DisplayUnits::Centimetres, DisplayUnits::Metres,
                            DisplayUnits::FeetInches});
    plan.layers = fiveLayers();
    plan.layers.push_back({"art", dice.text(), Visibility::Shown, dice.unknown()});
    plan.storeys = {{"ground", dice.text(), dice.length(-500, 500), dice.pick({"", "rect-86"}),
                     maybe(dice, 900, 1100), dice.unknown()}};
    for (std::size_t i = 1; i <= 1 + dice.below(4); ++i) {
        plan.rooms.push_back(randomRoom(dice, i, {7000.0 * static_cast<double>(i), dice.length(-900, 900)}));
        fillRandom(dice, plan, plan.rooms.back());
    }
    plan.unknown = dice.unknown();
    return plan;
}

} // namespace gangway::plan::samples
