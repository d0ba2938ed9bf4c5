// Televisions on the wall, radiators, mirrors, fans, stairs, plants and plain boxes.
#include "geometry/furniture_maker.hpp"

#include <fmt/format.h>

#include <algorithm>

#include <cmath>
#include <numbers>

namespace gangway::geometry {
namespace {

using Surface = Maker::Surface;

constexpr double kUsualRiseMm = 190; // common practice, no source

void tvWall(Maker& m) {
    const double stand_off = std::min(m.value("standOff"), m.depth() - 15);
    const double back = m.back() - stand_off;
    if (stand_off > 8) {
        m.board("bracket", tone::kSteel, Surface::Metal,
                {{-200, m.back() - 8, m.height() / 2 - 150}, {200, m.back(), m.height() / 2 + 150}}, 2);
        m.board("bracket arm", tone::kSteel, Surface::Metal,
                {{-60, back, m.height() / 2 - 60}, {60, m.back() - 8, m.height() / 2 + 60}}, 2);
    }
    m.board("television", m.main(tone::kBlack), Surface::Matt,
            {{m.left(), m.front() + 2, 0}, {m.right(), back, m.height()}}, 5);
    m.board("screen", "#17191B", Surface::Screen,
            {{m.left() + 8, m.front(), 14}, {m.right() - 8, m.front() + 3, m.height() - 8}}, 0.5);
}

void radiator(Maker& m) {
    const std::string colour = m.main(tone::kWhite);
    const double back = m.back() - std::min(m.value("standOff"), m.depth() - 30);
    const double pitch = std::max(m.value("finSpacing"), 20.0);
    const int fins = std::max(1, static_cast<int>(m.width() / pitch));
    const double each = m.width() / fins;
    meshes::Mesh front;
    for (int i = 0; i < fins; ++i) {
        const double x = m.left() + each * i;
        append(front,
               bevelledBox({x + 3, m.front(), 25}, {x + each - 3, m.front() + 14, m.height() - 25}, 5));
    }
    m.add("fins", colour, Surface::Metal, front);
    m.board("panel", colour, Surface::Metal,
            {{m.left(), m.front() + 13, 8}, {m.right(), m.front() + 22, m.height() - 12}}, 2);
    m.board("panel back", colour, Surface::Metal,
            {{m.left(), back - 10, 8}, {m.right(), back, m.height() - 12}}, 2);
    m.board("header", colour, Surface::Metal,
            {{m.left(), m.front() + 22, m.height() - 30}, {m.right(), back - 10, m.height() - 4}}, 3);
    m.board("side left", colour, Surface::Metal,
            {{m.left(), m.front() + 22, 8}, {m.left() + 3, back - 10, m.height() - 30}}, 0.5);
    m.board("side right", colour, Surface::Metal,
            {{m.right() - 3, m.front() + 22, 8}, {m.right(), back - 10, m.height() - 30}}, 0.5);
    m.rod("valve", tone::kWhite, Surface::Matt, {m.right() - 30, m.front() + 30, 8},
          {m.right() - 30, m.front() + 30, -22}, 18, 18);
    for (const double x : {m.left() + 150, m.right() - 150})
        m.board("bracket", colour, Surface::Metal,
                {{x - 15, back, m.height() - 160}, {x + 15, m.back(), m.height() - 80}}, 1);
}

/// A sheet in a frame: a mirror or a picture.
void framed(Maker& m, const char* sheet, const char* sheet_colour, Surface surface) {
    const double frame = std::min({m.value("frameWidth"), m.width() / 4, m.height() / 4});
    const double face = m.front() + std::min(6.0, m.depth() / 3);
    if (frame > 0) {
        const std::string colour = m.main(tone::kOak);
        const auto bar = [&](const char* name, Vec3 low, Vec3 high) {
            m.board(name, colour, Surface::Wood, {low, high}, 3);
        };
        bar("frame left", {m.left(), m.front(), 0}, {m.left() + frame, m.back(), m.height()});
        bar("frame right", {m.right() - frame, m.front(), 0}, {m.right(), m.back(), m.height()});
        bar("frame bottom", {m.left() + frame, m.front(), 0}, {m.right() - frame, m.back(), frame});
        bar("frame top", {m.left() + frame, m.front(), m.height() - frame},
            {m.right() - frame, m.back(), m.height()});
    }
    m.board(sheet, sheet_colour, surface,
            {{m.left() + frame, face, frame}, {m.right() - frame, m.back(), m.height() - frame}}, 1);
}

void mirror(Maker& m) {
    framed(m, "mirror", "#DDE3E4", Surface::Mirror);
}

void picture(Maker& m) {
    framed(m, "picture", "#B9C4BE", Surface::Matt);
}

void fan(Maker& m) {
    const double radius = std::min(m.width(), m.depth()) / 2;
    const double hub = std::min(110.0, m.height() * 0.4);
    const std::string colour = m.main(tone::kWhite);
    m.rod("rod", tone::kSteel, Surface::Metal, {0, 0, hub}, {0, 0, m.height()}, 14);
    m.add("canopy", colour, Surface::Matt, cylinder({0, 0, m.height() - 50}, {0, 0, m.height()}, 45, 28, 70));
    const std::vector<Vec2> profile = {{0, 0},         {60, 4},   {95, 30}, {100, 55},
                                       {90, hub - 10}, {40, hub}, {0, hub}};
    m.add("motor", colour, Surface::Matt, lathe(profile, {0, 0, 0}));
    const int blades = std::max(2, m.count("blades"));
    const double width = m.value("bladeWidth");
    const std::vector<Vec2> outline =
        roundedRectangle({(radius + 90) / 2, 0}, radius - 90, width, width * 0.4, 4);
    const meshes::Mesh blade = extrude(outline, -5, 5);
    for (int i = 0; i < blades; ++i) {
        const double angle_rad = 2 * std::numbers::pi * i / blades;
        const double tilt_rad = 0.2; // blades are set at a slant
        const auto move = [&](Vec3 p) {
            const double y = p.y * std::cos(tilt_rad) - p.z * std::sin(tilt_rad);
            const double z = p.y * std::sin(tilt_rad) + p.z * std::cos(tilt_rad);
            return Vec3{p.x * std::cos(angle_rad) - y * std::sin(angle_rad),
                        p.x * std::sin(angle_rad) + y * std::cos(angle_rad), z + 45};
        };
        m.add(fmt::format("blade {}", i + 1), m.main(tone::kOak), Surface::Wood, placed(blade, move));
    }
}

/// Sizes of a stair as built.
struct Flight {
    int steps = 1;
    double rise = 0;
    double going = 0;
    double direction = 1; ///< 1: rises from the front to the back
    double start = 0;     ///< y of the first riser
    double yOf(double step) const { return start + direction * going * step; }
};

Flight flightOf(const Maker& m) {
    Flight flight;
    flight.steps = m.count("steps");
    if (flight.steps < 1)
        flight.steps = std::max(1, static_cast<int>(std::lround(m.height() / kUsualRiseMm)));
    flight.rise = m.value("rise") > 0 ? m.value("rise") : m.height() / flight.steps;
    // The last rise ends on the landing, so there is one tread fewer than rises.
    flight.going = m.value("going") > 0 ? m.value("going") : m.depth() / std::max(flight.steps - 1, 1);
    flight.direction = m.flag("direction") ? -1 : 1;
    flight.start = flight.direction > 0 ? m.front() : m.back();
    return flight;
}

void addHandrail(Maker& m, const Flight& flight, double x) {
    const int treads = std::max(flight.steps - 1, 1);
    for (int i = 0; i < treads; i += 2) {
        const double y = flight.yOf(i + 0.5);
        m.board("baluster", tone::kWhite, Surface::Wood,
                {{x - 14, y - 14, flight.rise * (i + 1)}, {x + 14, y + 14, flight.rise * (i + 1) + 880}}, 3);
    }
    m.rod("handrail", tone::kOak, Surface::Wood, {x, flight.yOf(0.2), flight.rise + 890},
          {x, flight.yOf(treads - 0.2), flight.rise * treads + 890}, 24, 16);
}

void stair(Maker& m) {
    const Flight flight = flightOf(m);
    const std::string wood = m.main(tone::kOak);
    const bool closed = m.flag("closed");
    const int treads = std::max(flight.steps - 1, 1);
    constexpr double kTreadMm = 40;
    constexpr double kNosingMm = 20;
    for (int i = 0; i < treads; ++i) {
        const double near = flight.yOf(i) - flight.direction * (i == 0 ? 0 : kNosingMm);
        const double far = flight.yOf(i + 1);
        const double z = flight.rise * (i + 1);
        m.board(
            fmt::format("tread {}", i + 1), wood, Surface::Wood,
            {{m.left() + 25, std::min(near, far), z - kTreadMm}, {m.right() - 25, std::max(near, far), z}},
            5);
        if (!closed) continue;
        const double y = flight.yOf(i);
        const double inner = y + flight.direction * 18;
        m.board(fmt::format("riser {}", i + 1), tone::kWhite, Surface::Matt,
                {{m.left() + 25, std::min(y, inner), z - flight.rise},
                 {m.right() - 25, std::max(y, inner), z - kTreadMm}},
                1);
    }
    // A string at each side: the stepped slope down to the floor when closed, a slanted board when open.
    const double low = closed ? 0 : flight.rise * 0.5;
    std::vector<Vec2> side = {{flight.yOf(0), 0}};
    for (int i = 0; i < treads; ++i) {
        side.push_back({flight.yOf(i), flight.rise * (i + 1)});
        side.push_back({flight.yOf(i + 1), flight.rise * (i + 1)});
    }
    if (closed)
        side.push_back({flight.yOf(treads), 0});
    else {
        side.push_back({flight.yOf(treads), flight.rise * treads - low});
        side.push_back({flight.yOf(1), 0});
    }
    for (const double x : {m.left(), m.right() - 25}) {
        // Extruded across and stood up: (x, y, z) of the extrusion is (y, z, x) of the stair.
        const auto stand = [](Vec3 p) { return Vec3{p.z, p.x, p.y}; };
        m.add(x < 0 ? "string left" : "string right", tone::kWhite, Surface::Matt,
              placed(extrude(side, x, x + 25), stand));
    }
    const int rail = m.count("handrail");
    if (rail == 1 || rail == 3) addHandrail(m, flight, m.left() + 40);
    if (rail == 2 || rail == 3) addHandrail(m, flight, m.right() - 40);
}

void plant(Maker& m) {
    const double pot = std::min(m.value("potHeight"), m.height() * 0.6);
    const double radius = std::min(m.width(), m.depth()) * 0.32;
    const std::vector<Vec2> profile = {
        {0, 0},       {radius * 0.72, 0}, {radius, pot}, {radius * 0.9, pot}, {radius * 0.85, pot - 25},
        {0, pot - 25}};
    m.add("pot", m.main(tone::kClay), Surface::Ceramic, lathe(profile, {0, 0, 0}));
    // Long leaves in a rosette: each a flat lens from the pot outwards and up.
    const double crown = m.height() - pot;
    constexpr int kLeaves = 14;
    for (int i = 0; i < kLeaves; ++i) {
        const double angle_rad = 2 * std::numbers::pi * i * 0.382; // the golden angle, as plants do
        const double lean = 0.25 + 0.75 * i / kLeaves;
        const double length_mm = crown * (1.05 - 0.35 * i / kLeaves);
        const double out = std::min(m.width(), m.depth()) * 0.5 * lean;
        const double half = 26 + 24.0 * (i % 3) / 2;
        const Vec3 root{0, 0, pot - 30};
        const Vec3 tip{out * std::cos(angle_rad), out * std::sin(angle_rad),
                       pot - 30 + length_mm * (1 - 0.35 * lean)};
        const Vec3 along = (tip - root) * (1 / length(tip - root));
        const Vec3 across{-std::sin(angle_rad), std::cos(angle_rad), 0};
        const Vec3 up = cross(along, across);
        const auto grow = [&](Vec3 p) { return root + along * p.x + across * p.y + up * p.z; };
        const double size = length(tip - root);
        const std::vector<Vec2> blade = {
            {0, -5},   {size * 0.3, -half * 0.8}, {size * 0.6, -half}, {size * 0.85, -half * 0.6},
            {size, 0}, {size * 0.85, half * 0.6}, {size * 0.6, half},  {size * 0.3, half * 0.8},
            {0, 5}};
        m.add(fmt::format("leaf {}", i + 1), i % 2 == 0 ? tone::kLeafGreen : "#7F9B6C", Surface::Matt,
              placed(extrude(blade, -1.5, 1.5), grow));
    }
}

void plainBox(Maker& m) {
    m.board("box", m.main(tone::kPanel), Surface::Matt, m.whole(), 4);
}

constexpr KindEntry kTable[] = {
    {"tv-wall", tvWall}, {"radiator", radiator}, {"mirror", mirror}, {"picture", picture},
    {"fan", fan},        {"stair", stair},       {"plant", plant},   {"box", plainBox},
};

} // namespace

MakeKind otherKind(std::string_view kind) {
    return findKind(kTable, kind);
}

} // namespace gangway::geometry
