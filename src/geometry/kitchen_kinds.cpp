// Kitchen units, worktops and appliances.
#include "geometry/furniture_maker.hpp"

#include <fmt/format.h>

#include <algorithm>

#include <cmath>
#include <numbers>

namespace gangway::geometry {
namespace {

using Surface = Maker::Surface;

/// Where the body of a floor unit begins and ends: above its toe space, under its worktop, behind its fronts.
struct UnitBody {
    Block block;
    double plinth = 0;
    double worktop = 0;
    Block fronts() const {
        return {{block.low.x, block.low.y, plinth}, {block.high.x, block.high.y, block.high.z}};
    }
};

UnitBody unitBody(const Maker& m, bool with_worktop) {
    UnitBody body;
    body.plinth = m.value("plinthHeight");
    body.worktop = with_worktop ? m.value("worktopThickness") : 0;
    body.block = {{m.left(), m.front() + kFrontDepthMm, body.plinth},
                  {m.right(), m.back(), m.height() - body.worktop}};
    return body;
}

void addToeSpace(Maker& m, const UnitBody& body) {
    const double y = m.front() + kHandleRoomMm + std::max(m.value("toeDepth"), 0.0);
    addPlinth(m, {{m.left(), y, 0}, {m.right(), m.back(), body.plinth}}, tone::kPanel);
}

void addWorktop(Maker& m, double thickness, const std::string& colour = tone::kStone) {
    m.board("worktop", colour, Surface::Stone,
            {{m.left(), m.front(), m.height() - thickness}, {m.right(), m.back(), m.height()}}, 3);
}

void baseUnit(Maker& m) {
    const std::string colour = m.main(tone::kWhite);
    const UnitBody body = unitBody(m, true);
    addToeSpace(m, body);
    addCase(m, body.block, colour);
    m.board("shelf", colour, Surface::Matt,
            {{m.left() + kBoardMm, body.block.low.y + 60, (body.block.low.z + body.block.high.z) / 2},
             {m.right() - kBoardMm, m.back() - kBoardMm / 2,
              (body.block.low.z + body.block.high.z) / 2 + kBoardMm}},
            1);
    if (m.count("doors") > 0) addDoors(m, body.fronts(), m.count("doors"), colour);
    addWorktop(m, body.worktop);
}

void drawerUnit(Maker& m) {
    const std::string colour = m.main(tone::kWhite);
    const UnitBody body = unitBody(m, true);
    addToeSpace(m, body);
    addCase(m, body.block, colour);
    addDrawers(m, body.fronts(), std::max(1, m.count("drawers")), colour,
               body.block.high.y - body.block.low.y - 60);
    addWorktop(m, body.worktop);
}

void wallUnit(Maker& m) {
    const std::string colour = m.main(tone::kWhite);
    const Block body{{m.left(), m.front() + kFrontDepthMm, 0}, {m.right(), m.back(), m.height()}};
    addCase(m, body, colour);
    const int shelves = m.count("shelves");
    for (int i = 1; i <= shelves; ++i) {
        const double z = m.height() * i / (shelves + 1);
        m.board(fmt::format("shelf {}", i), colour, Surface::Matt,
                {{m.left() + kBoardMm, body.low.y + 20, z},
                 {m.right() - kBoardMm, m.back() - kBoardMm / 2, z + kBoardMm}},
                1);
    }
    if (m.count("doors") > 0) addDoors(m, body, m.count("doors"), colour);
}

/// A built-in oven's front: panel with knobs, glass door, bar handle.
void addOvenFront(Maker& m, Block front) {
    const double x0 = front.low.x, x1 = front.high.x, y = front.low.y, z0 = front.low.z, z1 = front.high.z;
    const double panel = z1 - std::min(100.0, (z1 - z0) * 0.2);
    m.board("oven panel", tone::kSteel, Surface::Metal, {{x0, y, panel + 2}, {x1, y + 20, z1}}, 2);
    m.board("oven door", tone::kBlack, Surface::Screen, {{x0, y, z0}, {x1, y + 20, panel - 2}}, 3);
    m.board("oven display", "#17191B", Surface::Screen,
            {{(x0 + x1) / 2 - 50, y - 1, panel + 30}, {(x0 + x1) / 2 + 50, y + 1, panel + 70}}, 0.3);
    for (const double side : {0.18, 0.82}) {
        const double x = x0 + (x1 - x0) * side;
        m.rod("oven knob", tone::kSteel, Surface::Metal, {x, y, panel + 50}, {x, y - 14, panel + 50}, 20, 20);
    }
    const double z = panel - 45;
    m.rod("oven handle", tone::kSteel, Surface::Metal, {x0 + 60, y - 14, z}, {x1 - 60, y - 14, z}, 7);
    for (const double x : {x0 + 80, x1 - 80})
        m.rod("oven handle post", tone::kSteel, Surface::Metal, {x, y, z}, {x, y - 14, z}, 5, 10);
}

void oven(Maker& m) {
    m.board("oven", tone::kPanel, Surface::Metal,
            {{m.left() + 8, m.front() + kFrontDepthMm, 4}, {m.right() - 8, m.back(), m.height() - 4}}, 2);
    addOvenFront(
        m, {{m.left(), m.front() + kHandleRoomMm, 0}, {m.right(), m.front() + kFrontDepthMm, m.height()}});
}

void tallUnit(Maker& m) {
    const std::string colour = m.main(tone::kWhite);
    const UnitBody body = unitBody(m, false);
    const double height = m.height();
    addToeSpace(m, body);
    addCase(m, body.block, colour);
    const double oven_bottom = m.value("ovenBottom");
    const double oven_top = oven_bottom + 595;
    const bool has_oven = oven_bottom > body.plinth && oven_top < height;
    if (has_oven) {
        m.board("oven body", tone::kPanel, Surface::Metal,
                {{m.left() + 25, body.block.low.y, oven_bottom + 5},
                 {m.right() - 25, m.back() - 40, oven_top - 5}},
                2);
        addOvenFront(m, {{m.left() + 2, m.front() + kHandleRoomMm, oven_bottom},
                         {m.right() - 2, body.block.low.y, oven_top}});
    }
    const int doors = m.count("doors");
    const auto addFront = [&](double low, double high) {
        if (high - low > 60)
            addDoors(m, {{m.left(), body.block.low.y, low}, {m.right(), m.back(), high}}, 1, colour);
    };
    if (has_oven) {
        addFront(body.plinth, oven_bottom);
        addFront(oven_top, height);
    } else {
        for (int i = 0; i < doors; ++i) // the lower door is the taller one
            addFront(i == 0 ? body.plinth
                            : body.plinth +
                                  (height - body.plinth) * (0.6 + 0.4 * (i - 1) / std::max(doors - 1, 1)),
                     doors == 1
                         ? height
                         : body.plinth + (height - body.plinth) * (0.6 + 0.4 * i / std::max(doors - 1, 1)));
    }
}

void worktop(Maker& m) {
    const double upstand = std::min(m.value("upstand"), std::max(0.0, m.height() - 5));
    const double top = m.height() - upstand;
    const double thickness = std::min(m.value("thickness"), top);
    m.board("worktop", m.main(tone::kStone), Surface::Stone,
            {{m.left(), m.front(), top - thickness}, {m.right(), m.back(), top}}, 3);
    m.board("upstand", m.main(tone::kStone), Surface::Stone,
            {{m.left(), m.back() - 20, top}, {m.right(), m.back(), m.height()}}, 2);
}

void island(Maker& m) {
    const std::string colour = m.main("#4E6069");
    const double plinth = m.value("plinthHeight");
    const double thickness = m.value("worktopThickness");
    const double out = std::min(m.value("overhang"), m.width() / 4);
    const double knee = std::min(m.value("kneeDepth"), m.depth() / 2);
    const double top = m.height() - thickness;
    const double toe = m.value("toeDepth");
    const Block body{{m.left() + out, m.front() + std::max(out, kFrontDepthMm), plinth},
                     {m.right() - out, m.back() - std::max(out, knee), top}};
    m.board(
        "plinth", tone::kPanel, Surface::Matt,
        {{body.low.x + toe, body.low.y + toe - kDoorMm, 0}, {body.high.x - toe, body.high.y - toe, plinth}},
        1);
    addCase(m, body, colour);
    const int doors = m.count("doors");
    if (doors > 0) addDoors(m, body, doors, colour);
    m.board("worktop", tone::kStone, Surface::Stone,
            {{m.left(), m.front(), top}, {m.right(), m.back(), m.height()}}, 4);
}

void hob(Maker& m) {
    m.board("hob", tone::kBlack, Surface::Screen, m.whole(), 2);
    const int rings = std::max(1, m.count("rings"));
    const int columns = rings <= 3 ? rings : (rings + 1) / 2;
    const int rows = (rings + columns - 1) / columns;
    for (int i = 0; i < rings; ++i) {
        const double x = m.left() + m.width() * (i % columns + 0.5) / columns;
        const double y = m.front() + 30 + (m.depth() - 30) * (i / columns + 0.5) / rows;
        const double radius =
            std::min(m.width() / columns, (m.depth() - 30) / rows) * (i % 2 == 0 ? 0.38 : 0.32);
        const auto outer = ellipse({x, y}, 2 * radius, 2 * radius, 40);
        const auto inner = ellipse({x, y}, 2 * radius - 7, 2 * radius - 7, 40);
        m.add(fmt::format("ring {}", i + 1), "#8D8F90", Surface::Matt,
              extrude(outer, m.height(), m.height() + 0.6, {inner}));
    }
}

void hood(Maker& m) {
    const double canopy = std::min(m.value("canopyHeight"), m.height());
    const double chimney = std::min(m.value("chimneyWidth"), m.width());
    const double edge = std::min(45.0, canopy * 0.4);
    m.board("canopy", m.main(tone::kSteel), Surface::Metal,
            {{m.left(), m.front(), 0}, {m.right(), m.back(), edge}}, 2);
    const double half = std::max(chimney / 2, m.width() * 0.2);
    const double far = m.depth() * 0.7;
    const std::vector<Loop> slope = {
        {roundedRectangle({0, 0}, m.width(), m.depth(), 3), edge},
        {roundedRectangle({0, (m.depth() - far) / 2}, 2 * half, far, 3), canopy}};
    if (canopy > edge) m.add("slope", m.main(tone::kSteel), Surface::Metal, lofted(slope));
    if (chimney > 0)
        m.board("chimney", m.main(tone::kSteel), Surface::Metal,
                {{-chimney / 2, m.back() - m.depth() * 0.7, canopy}, {chimney / 2, m.back(), m.height()}}, 2);
}

/// A bowl let into a top of which `rim` is the outer edge.
void addBowl(Maker& m, const char* name, Block rim, Vec2 centre, Vec2 size, double depth, const char* colour,
             Surface surface) {
    const Vec2 middle{(rim.low.x + rim.high.x) / 2, (rim.low.y + rim.high.y) / 2};
    const double width = rim.high.x - rim.low.x;
    const double length = rim.high.y - rim.low.y;
    const double under = std::max(rim.high.z - depth - 4, rim.low.z);
    const std::vector<Loop> loops = {
        {roundedRectangle(centre, size.x + 8, size.y + 8, 50), under},
        {roundedRectangle(centre, size.x + 8, size.y + 8, 50), rim.high.z - 6},
        {roundedRectangle(middle, width, length, 12), rim.high.z - 6},
        {roundedRectangle(middle, width, length, 12), rim.high.z},
        {roundedRectangle(centre, size.x, size.y, 46), rim.high.z},
        {roundedRectangle(centre, size.x - 16, size.y - 16, 40), under + 12},
        {roundedRectangle(centre, size.x - 60, size.y - 60, 20), under + 3},
    };
    m.add(name, colour, surface, lofted(loops));
    m.rod("waste", tone::kSteel, Surface::Metal, {centre.x, centre.y, under + 3},
          {centre.x, centre.y, under + 6}, 32, 20);
}

void sink(Maker& m) {
    const bool unit = m.flag("unit");
    const std::string colour = m.main(tone::kWhite);
    const double rim = 3; // the sink's edge lies on the worktop
    const double bowl = std::min(m.value("bowlWidth"), m.width() - 40);
    const double length = std::min(400.0, m.depth() - (unit ? 190 : 110));
    const Vec2 centre{m.value("bowlOffset"), m.back() - 95 - length / 2};
    const double depth = m.value("bowlDepth");
    if (unit) {
        const double plinth = m.value("plinthHeight");
        const double top = m.height() - 40;
        addPlinth(
            m,
            {{m.left(), m.front() + kHandleRoomMm + m.value("toeDepth"), 0}, {m.right(), m.back(), plinth}},
            tone::kPanel);
        const Block body{{m.left(), m.front() + kFrontDepthMm, plinth}, {m.right(), m.back(), top}};
        const double t = kBoardMm;
        m.board("side left", colour, Surface::Matt, {body.low, {body.low.x + t, body.high.y, top}}, 1.5);
        m.board("side right", colour, Surface::Matt, {{body.high.x - t, body.low.y, plinth}, body.high}, 1.5);
        m.board("bottom", colour, Surface::Matt,
                {{body.low.x + t, body.low.y, plinth}, {body.high.x - t, body.high.y, plinth + t}}, 1.5);
        addDoors(m, body, m.width() > 650 ? 2 : 1, colour);
        const std::vector<Vec2> slab = {
            {m.left(), m.front()}, {m.right(), m.front()}, {m.right(), m.back()}, {m.left(), m.back()}};
        m.add("worktop", tone::kStone, Surface::Stone,
              extrude(slab, top, m.height() - rim, {roundedRectangle(centre, bowl + 10, length + 10, 50)}));
    }
    const double margin = unit ? 25 : 0;
    const Block edge{{std::max(m.left() + margin, centre.x - bowl / 2 - (unit ? 40 : 1e4)),
                      m.front() + (unit ? 70 : 0), 0},
                     {std::min(m.right() - margin, centre.x + bowl / 2 + (unit ? 40 : 1e4)),
                      m.back() - (unit ? 25 : 0), m.height()}};
    addBowl(m, "sink", edge, centre, {bowl, length}, depth, tone::kSteel, Surface::Metal);
    addTap(m, {centre.x, m.back() - 60, m.height()}, 280, 190);
}

void fridge(Maker& m) {
    const std::string colour = m.main(tone::kWhite);
    const double plinth = m.value("plinthHeight");
    const double freezer = std::min(m.value("freezerHeight"), m.height() - 200);
    addPlinth(m, {{m.left() + 10, m.front() + kFrontDepthMm + 30, 0}, {m.right() - 10, m.back(), plinth}},
              tone::kBlack);
    m.board("body", colour, Surface::Metal,
            {{m.left(), m.front() + kFrontDepthMm + 22, plinth}, {m.right(), m.back(), m.height()}}, 4);
    const auto door = [&](const char* name, double low, double high, bool handle_low) {
        const double y = m.front() + kHandleRoomMm;
        m.board(name, colour, Surface::Metal, {{m.left(), y, low + 2}, {m.right(), y + 38, high - 2}}, 8);
        const double middle = handle_low ? low + 40 + 190 : high - 40 - 190;
        m.rod("handle", tone::kSteel, Surface::Metal, {m.left() + 45, y - 13, middle - 160},
              {m.left() + 45, y - 13, middle + 160}, 8);
        for (const double z : {middle - 130, middle + 130})
            m.rod("handle post", tone::kSteel, Surface::Metal, {m.left() + 45, y, z},
                  {m.left() + 45, y - 13, z}, 5, 10);
    };
    if (freezer > 450) {
        door("freezer door", plinth, freezer, false);
        door("fridge door", freezer, m.height(), true);
    } else
        door("door", plinth, m.height(), false);
}

void dishwasher(Maker& m) {
    const bool integrated = m.flag("integrated");
    const std::string colour = m.main(integrated ? tone::kWhite : tone::kSteel);
    const UnitBody body = unitBody(m, true);
    addToeSpace(m, body);
    m.board("body", tone::kSteel, Surface::Metal,
            {{m.left() + 3, body.block.low.y, body.plinth},
             {m.right() - 3, m.back() - 20, body.block.high.z - 2}},
            2);
    addDrawers(m, body.fronts(), 1, colour, 0);
    if (!integrated)
        m.board("display", "#17191B", Surface::Screen,
                {{-60, m.front() + kHandleRoomMm - 1, body.block.high.z - 30},
                 {60, m.front() + kHandleRoomMm + 1, body.block.high.z - 12}},
                0.3);
    addWorktop(m, body.worktop);
}

/// Washing machine and dryer: a body, a round door, a panel with a knob and a display.
void drumMachine(Maker& m, bool with_drawer) {
    const std::string colour = m.main(tone::kWhite);
    const double feet = m.value("legHeight");
    const double face = m.front() + kHandleRoomMm;
    addLegs(m, {{m.left() + 30, face + 30, 0}, {m.right() - 30, m.back() - 30, feet}}, 36, tone::kBlack,
            Surface::Matt);
    m.board("body", colour, Surface::Metal, {{m.left(), face, feet}, {m.right(), m.back(), m.height()}}, 8);
    const double radius = std::min(m.width(), m.height()) * 0.29;
    const Vec3 centre{0, face, feet + (m.height() - feet) * 0.46};
    m.rod("door ring", tone::kSteel, Surface::Metal, centre, centre - Vec3{0, 16, 0}, radius, 40);
    m.rod("door glass", "#3C4347", Surface::Screen, centre - Vec3{0, 16, 0}, centre - Vec3{0, 19, 0},
          radius * 0.78, 40);
    const double panel = m.height() - 75;
    m.board("display", "#17191B", Surface::Screen,
            {{60, face - 1.5, panel - 20}, {m.right() - 60, face + 1, panel + 25}}, 0.5);
    m.rod("knob", tone::kSteel, Surface::Metal, {0, face, panel}, {0, face - 18, panel}, 26, 24);
    if (with_drawer)
        m.board("soap drawer", tone::kPanel, Surface::Matt,
                {{m.left() + 25, face - 3, panel - 35}, {m.left() + 190, face + 1, panel + 35}}, 1);
}

void washingMachine(Maker& m) {
    drumMachine(m, true);
}

void dryer(Maker& m) {
    drumMachine(m, false);
}

void boiler(Maker& m) {
    m.board("boiler", m.main(tone::kWhite), Surface::Metal, m.whole(), 12);
    m.board("display", "#17191B", Surface::Screen, {{-70, m.front() - 0.5, 60}, {70, m.front() + 1, 110}},
            0.3);
    for (int i = 0; i < 4; ++i) {
        const double x = m.left() + m.width() * (i + 1) / 5;
        m.rod(fmt::format("pipe {}", i + 1), "#B87A4B", Surface::Metal, {x, m.back() - 60, -120},
              {x, m.back() - 60, 4}, 8, 12);
    }
}

constexpr KindEntry kTable[] = {
    {"base-unit", baseUnit},
    {"drawer-unit", drawerUnit},
    {"wall-unit", wallUnit},
    {"tall-unit", tallUnit},
    {"worktop", worktop},
    {"island", island},
    {"hob", hob},
    {"hood", hood},
    {"oven", oven},
    {"sink", sink},
    {"fridge", fridge},
    {"dishwasher", dishwasher},
    {"washing-machine", washingMachine},
    {"dryer", dryer},
    {"boiler", boiler},
};

} // namespace

MakeKind kitchenKind(std::string_view kind) {
    return findKind(kTable, kind);
}

} // namespace gangway::geometry
