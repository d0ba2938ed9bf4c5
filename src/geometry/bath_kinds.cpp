// Bathroom pieces: bath, shower, basin, vanity unit, WC.
#include "geometry/furniture_maker.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gangway::geometry {
namespace {

using Surface = Maker::Surface;

/// A ceramic body with a hollow: outer loops up to the rim, then inner loops down to the bottom.
void addHollow(Maker& m, const char* name, std::vector<Loop> loops) {
    m.add(name, m.main(tone::kCeramic), Surface::Ceramic, lofted(loops));
}

void addWaste(Maker& m, Vec3 at) {
    m.rod("waste", tone::kSteel, Surface::Metal, at, at + Vec3{0, 0, 3}, 30, 20);
}

void bath(Maker& m) {
    const double rim = m.value("rimWidth");
    const double floor = std::max(m.height() - m.value("bowlDepth"), 40.0);
    const double w = m.width(), d = m.depth(), h = m.height();
    addHollow(m, "bath",
              {{roundedRectangle({0, 0}, w - 30, d - 30, 8), 0},
               {roundedRectangle({0, 0}, w - 30, d - 30, 8), h - 30},
               {roundedRectangle({0, 0}, w, d, 14), h - 30},
               {roundedRectangle({0, 0}, w, d, 14), h - 4},
               {roundedRectangle({0, 0}, w - 8, d - 8, 12), h},
               {roundedRectangle({0, 0}, w - 2 * rim, d - 2 * rim, 150), h},
               {roundedRectangle({0, 0}, w - 2 * rim - 50, d - 2 * rim - 30, 150), (h + floor) / 2},
               {roundedRectangle({0, 0}, w - 2 * rim - 180, d - 2 * rim - 110, 130), floor + 15},
               {roundedRectangle({0, 0}, w - 2 * rim - 280, d - 2 * rim - 200, 90), floor}});
    addWaste(m, {m.left() + rim + 330, 0, floor});
    addTap(m, {0, m.back() - rim * 0.45, h}, 150, 140);
}

void shower(Maker& m) {
    const double tray = m.value("trayHeight");
    const double w = m.width(), d = m.depth();
    addHollow(m, "tray",
              {{roundedRectangle({0, 0}, w, d, 6), 0},
               {roundedRectangle({0, 0}, w, d, 6), std::max(tray, 6.0)},
               {roundedRectangle({0, 0}, w - 70, d - 70, 20), std::max(tray, 6.0)},
               {roundedRectangle({0, 0}, w - 90, d - 90, 16), std::max(tray, 6.0) * 0.5}});
    m.rod("waste", tone::kSteel, Surface::Metal, {0, 0, tray * 0.5}, {0, 0, tray * 0.5 + 4}, 45, 24);
    const double top = m.value("screenHeight");
    const int sides = m.count("screenSides");
    const auto pane = [&](const char* name, Vec3 low, Vec3 high) {
        m.board(name, tone::kGlass, Surface::Glass, {low, high}, 0.5);
    };
    if (top > tray + 50 && sides > 0) {
        pane("glass front", {m.left() + 10, m.front() + 14, tray}, {m.right() - 10, m.front() + 22, top});
        m.board("glass rail", tone::kSteel, Surface::Metal,
                {{m.left() + 4, m.front() + 8, top}, {m.right() - 4, m.front() + 28, top + 18}}, 3);
        if (sides == 2)
            pane("glass left", {m.left() + 14, m.front() + 28, tray}, {m.left() + 22, m.back() - 4, top});
        if (sides == 3)
            pane("glass right", {m.right() - 22, m.front() + 28, tray}, {m.right() - 14, m.back() - 4, top});
    }
    const double y = m.back() - 45;
    m.board("mixer", tone::kSteel, Surface::Metal, {{-140, m.back() - 70, 1060}, {140, m.back() - 20, 1105}},
            15);
    m.rod("riser", tone::kSteel, Surface::Metal, {0, y, 1100}, {0, y, 2050}, 10);
    m.rod("arm", tone::kSteel, Surface::Metal, {0, y + 10, 2050}, {0, y - 330, 2050}, 10);
    m.rod("shower head", tone::kSteel, Surface::Metal, {0, y - 320, 2028}, {0, y - 320, 2042}, 120, 32);
}

void showerScreen(Maker& m) {
    m.board("glass", tone::kGlass, Surface::Glass, m.whole(), 0.5);
}

void basin(Maker& m) {
    const double w = m.width(), d = m.depth(), h = m.height();
    const double bowl = std::min(m.value("bowlDepth"), h - 40);
    const double body = bowl + 45;
    const double shelf = 90; // behind the bowl, where the tap stands
    const Vec2 centre{0, -shelf / 2 + 10};
    addHollow(m, "basin",
              {{roundedRectangle({0, d * 0.15}, w * 0.45, d * 0.6, 90), h - body},
               {roundedRectangle({0, 0}, w * 0.97, d * 0.97, 90), h - 70},
               {roundedRectangle({0, 0}, w, d, 80), h - 45},
               {roundedRectangle({0, 0}, w, d, 80), h - 5},
               {roundedRectangle({0, 0}, w - 8, d - 8, 78), h},
               {roundedRectangle(centre, w - 90, d - shelf - 60, 120), h},
               {roundedRectangle(centre, w - 150, d - shelf - 110, 110), h - bowl * 0.7},
               {roundedRectangle(centre, w * 0.4, d * 0.3, 60), h - bowl}});
    addWaste(m, {centre.x, centre.y, h - bowl});
    if (m.flag("pedestal")) {
        const double r = std::min(w, d) * 0.2;
        const std::vector<Vec2> profile = {{0, 0},
                                           {r * 1.15, 0},
                                           {r * 1.1, 30},
                                           {r * 0.85, 120},
                                           {r * 0.8, h - body - 60},
                                           {r * 1.1, h - body + 10},
                                           {0, h - body + 10}};
        m.add("pedestal", m.main(tone::kCeramic), Surface::Ceramic, lathe(profile, {0, d * 0.15, 0}));
    }
    addTap(m, {0, m.back() - 55, h}, 150, 120);
}

void vanity(Maker& m) {
    const std::string wood = m.main(tone::kOak);
    const double d = m.depth(), h = m.height();
    const double foot = m.value("plinthHeight");
    const double bowl = std::min(m.value("bowlDepth"), 200.0);
    const double slab = 40;
    const double rim = h - 8; // the basin's edge stands a little above the top
    const double top = rim - slab;
    if (foot > 0)
        addPlinth(m, {{m.left() + 10, m.front() + kFrontDepthMm + 30, 0}, {m.right() - 10, m.back(), foot}},
                  tone::kPanel);
    const double t = kBoardMm;
    const Block body{{m.left(), m.front() + kFrontDepthMm, foot}, {m.right(), m.back(), top}};
    m.board("side left", wood, Surface::Wood, {body.low, {body.low.x + t, body.high.y, top}}, 1.5);
    m.board("side right", wood, Surface::Wood, {{body.high.x - t, body.low.y, foot}, body.high}, 1.5);
    m.board("bottom", wood, Surface::Wood,
            {{body.low.x + t, body.low.y, foot}, {body.high.x - t, body.high.y, foot + t}}, 1.5);
    const int drawers = m.count("drawers");
    if (drawers > 0) addDrawers(m, body, drawers, wood, 0);
    const double width = std::min(m.value("basinWidth"), m.width() - 60);
    const double length = d - 170;
    const Vec2 centre{
        std::clamp(m.value("basinOffset"), -(m.width() - width) / 2 + 20, (m.width() - width) / 2 - 20), -35};
    const std::vector<Vec2> plate = {
        {m.left(), m.front()}, {m.right(), m.front()}, {m.right(), m.back()}, {m.left(), m.back()}};
    m.add("top", tone::kCeramic, Surface::Ceramic,
          extrude(plate, top, rim, {roundedRectangle(centre, width - 4, length - 4, 70)}));
    m.add("basin", tone::kCeramic, Surface::Ceramic,
          lofted(std::vector<Loop>{{roundedRectangle(centre, width - 60, length - 60, 60), rim - bowl - 10},
                                   {roundedRectangle(centre, width - 6, length - 6, 70), rim - 10},
                                   {roundedRectangle(centre, width + 16, length + 16, 76), rim},
                                   {roundedRectangle(centre, width + 16, length + 16, 76), h - 2},
                                   {roundedRectangle(centre, width + 10, length + 10, 74), h},
                                   {roundedRectangle(centre, width - 16, length - 16, 68), h},
                                   {roundedRectangle(centre, width - 60, length - 60, 60), rim - bowl * 0.6},
                                   {roundedRectangle(centre, width * 0.4, length * 0.4, 40), rim - bowl}}));
    addWaste(m, {centre.x, centre.y, rim - bowl});
    addTap(m, {centre.x, m.back() - 55, rim}, 160, 130);
}

/// An oval that is square at the back, as WC pans are, between two y.
std::vector<Vec2> panOutline(double front, double back, double width) {
    std::vector<Vec2> outline;
    const double radius = width / 2;
    const double length = std::max(std::min((back - front) * 0.72, back - front - 10), 1.0);
    const Vec2 middle{0, front + length};
    for (int i = 0; i <= 20; ++i) { // the round front, from the left to the right
        const double angle_rad = std::numbers::pi * (1 + i / 20.0);
        outline.push_back(middle + Vec2{radius * std::cos(angle_rad), length * std::sin(angle_rad)});
    }
    outline.push_back({radius * 0.92, back});
    outline.push_back({-radius * 0.92, back});
    return outline;
}

void wc(Maker& m) {
    const double seat = m.value("seatHeight");
    const bool cistern = m.flag("cistern");
    const double tank = cistern ? 175 : 30;
    const double back = m.back() - (cistern ? tank : 0);
    const double f = m.front(), w = m.width();
    const double rim = seat - 22;
    addHollow(m, "pan",
              {{panOutline(f + 130, m.back(), w * 0.62), 0},
               {panOutline(f + 120, m.back(), w * 0.62), rim * 0.35},
               {panOutline(f + 10, m.back(), w * 0.98), rim * 0.85},
               {panOutline(f, m.back(), w), rim},
               {panOutline(f + 50, back - 90, w - 100), rim},
               {panOutline(f + 80, back - 110, w - 150), rim - 90},
               {panOutline(f + 150, back - 200, w * 0.3), rim - 190}});
    m.add("seat", m.main(tone::kCeramic), Surface::Ceramic,
          extrude(panOutline(f + 2, back - 40, w - 4), rim, seat, {panOutline(f + 65, back - 110, w - 130)}));
    // The lid stands open against the cistern or the wall.
    const double lid = std::min(back - f - 60, 420.0);
    m.pad("lid", m.main(tone::kCeramic),
          {{-w / 2 + 6, back - 36, seat + 6}, {w / 2 - 6, back - 16, seat + lid}}, 9, Surface::Ceramic);
    if (!cistern) {
        m.board("flush plate", tone::kSteel, Surface::Metal,
                {{-120, m.back() - 12, 980}, {120, m.back(), 1140}}, 4);
        return;
    }
    m.pad("cistern", m.main(tone::kCeramic),
          {{-w / 2, m.back() - tank, rim}, {w / 2, m.back(), m.height() - 30}}, 28, Surface::Ceramic);
    m.pad("cistern lid", m.main(tone::kCeramic),
          {{-w / 2 - 6, m.back() - tank - 6, m.height() - 32}, {w / 2 + 6, m.back(), m.height()}}, 12,
          Surface::Ceramic);
    m.rod("flush button", tone::kSteel, Surface::Metal, {0, m.back() - tank / 2, m.height()},
          {0, m.back() - tank / 2, m.height() + 5}, 22, 24);
}

constexpr KindEntry kTable[] = {{"bath", bath},   {"shower", shower}, {"shower-screen", showerScreen},
                                {"basin", basin}, {"vanity", vanity}, {"wc", wc}};

} // namespace

MakeKind bathKind(std::string_view kind) {
    return findKind(kTable, kind);
}

} // namespace gangway::geometry
