// Tables, desks, benches and the piano.
#include "geometry/furniture_maker.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gangway::geometry {
namespace {

using Surface = Maker::Surface;

void addTop(Maker& m, const std::string& colour, double thickness, double bevel = 4) {
    m.board("top", colour, Surface::Wood,
            {{m.left(), m.front(), m.height() - thickness}, {m.right(), m.back(), m.height()}}, bevel);
}

void desk(Maker& m) {
    const std::string colour = m.main(tone::kOak);
    const double thickness = m.value("topThickness");
    const double under = m.height() - thickness;
    addTop(m, colour, thickness);
    const int drawers = m.count("drawers");
    const double pedestal = drawers > 0 ? std::min(m.value("drawerWidth"), m.width() * 0.6) : 0;
    const bool panels = m.flag("legs");
    if (panels) {
        m.board("side left", colour, Surface::Wood,
                {{m.left() + 10, m.front() + 20, 0}, {m.left() + 35, m.back() - 10, under}});
        if (pedestal == 0)
            m.board("side right", colour, Surface::Wood,
                    {{m.right() - 35, m.front() + 20, 0}, {m.right() - 10, m.back() - 10, under}});
    } else
        addLegs(m, {{m.left() + 20, m.front() + 20, 0}, {m.right() - 20, m.back() - 20, under}}, 45,
                m.main(tone::kDarkOak), Surface::Wood);
    if (pedestal > 0) {
        const Block body{{m.right() - pedestal, m.front() + kFrontDepthMm + 10, 60},
                         {m.right() - 10, m.back() - 10, under}};
        addCase(m, body, tone::kWhite);
        addDrawers(m, body, drawers, tone::kWhite, body.high.y - body.low.y - 60);
    }
    if (m.flag("modesty"))
        m.board(
            "modesty panel", colour, Surface::Wood,
            {{m.left() + 65, m.back() - 50, under - 350}, {m.right() - 65 - pedestal, m.back() - 32, under}},
            1);
}

void table(Maker& m) {
    const std::string colour = m.main(tone::kOak);
    const double thickness = m.value("topThickness");
    const double under = m.height() - thickness;
    const double leg = m.value("legWidth");
    if (m.flag("round")) {
        m.add("top", colour, Surface::Wood,
              extrude(ellipse({0, 0}, m.width(), m.depth(), 48), under, m.height()));
        const double radius = std::min(m.width(), m.depth()) * 0.28;
        const std::vector<Vec2> profile = {{0, 0},
                                           {radius, 0},
                                           {radius, 14},
                                           {radius * 0.9, 22},
                                           {leg * 0.6, 60},
                                           {leg * 0.55, under - 60},
                                           {leg * 1.6, under},
                                           {0, under}};
        m.add("foot", m.main(tone::kDarkOak), Surface::Wood, lathe(profile, {0, 0, 0}));
        return;
    }
    addTop(m, colour, thickness, 6);
    addLegs(m, {{m.left() + 25, m.front() + 25, 0}, {m.right() - 25, m.back() - 25, under}}, leg, colour,
            Surface::Wood);
    const double apron = std::min(80.0, under * 0.3);
    const double in = 25 + leg * 0.3;
    const auto board = [&](const char* name, Vec3 low, Vec3 high) {
        m.board(name, colour, Surface::Wood, {low, high}, 1);
    };
    board("apron front", {m.left() + 25 + leg, m.front() + in, under - apron},
          {m.right() - 25 - leg, m.front() + in + 20, under});
    board("apron back", {m.left() + 25 + leg, m.back() - in - 20, under - apron},
          {m.right() - 25 - leg, m.back() - in, under});
    board("apron left", {m.left() + in, m.front() + 25 + leg, under - apron},
          {m.left() + in + 20, m.back() - 25 - leg, under});
    board("apron right", {m.right() - in - 20, m.front() + 25 + leg, under - apron},
          {m.right() - in, m.back() - 25 - leg, under});
}

void dressingTable(Maker& m) {
    const std::string colour = m.main(tone::kWhite);
    const double mirror = std::min(m.value("mirrorHeight"), m.height() * 0.8);
    const double top = m.height() - mirror;
    const double thickness = m.value("topThickness");
    const double under = top - thickness;
    m.board("top", m.main(tone::kOak), Surface::Wood,
            {{m.left(), m.front(), under}, {m.right(), m.back(), top}}, 4);
    addLegs(m, {{m.left() + 15, m.front() + 30, 0}, {m.right() - 15, m.back() - 15, under}}, 36,
            tone::kDarkOak, Surface::Wood);
    const int drawers = m.count("drawers");
    const double tall = m.value("drawerHeight");
    for (int i = 0; i < drawers; ++i) {
        const double left = m.left() + 51 + (m.width() - 102) * i / drawers;
        const double right = m.left() + 51 + (m.width() - 102) * (i + 1) / drawers;
        const Block body{{left, m.front() + kFrontDepthMm, under - tall}, {right, m.back() - 20, under}};
        addCase(m, body, colour);
        addDrawers(m, body, 1, colour, 0);
    }
    if (mirror > 0) {
        m.board("mirror frame", m.main(tone::kOak), Surface::Wood,
                {{-m.width() * 0.3, m.back() - 30, top}, {m.width() * 0.3, m.back() - 8, m.height()}}, 4);
        m.board("mirror", "#DDE3E4", Surface::Mirror,
                {{-m.width() * 0.3 + 20, m.back() - 32, top + 20},
                 {m.width() * 0.3 - 20, m.back() - 29, m.height() - 20}},
                0.5);
    }
}

void bench(Maker& m) {
    const std::string colour = m.main(tone::kOak);
    const double thickness = m.value("topThickness");
    addTop(m, colour, thickness, 5);
    for (const double side : {-1.0, 1.0}) {
        const double x = side * (m.width() / 2 - 90);
        m.board(side < 0 ? "leg left" : "leg right", colour, Surface::Wood,
                {{x - 20, m.front() + 25, 0}, {x + 20, m.back() - 25, m.height() - thickness}}, 3);
    }
    m.board("stretcher", colour, Surface::Wood,
            {{-m.width() / 2 + 110, -15, 100}, {m.width() / 2 - 110, 15, 160}}, 2);
}

void piano(Maker& m) {
    const std::string colour = m.main(tone::kBlack);
    const double keys = m.value("keyHeight");
    const double reach = std::min(m.value("keyDepth"), m.depth() * 0.6);
    const double body = m.front() + reach;
    m.board("case", colour, Surface::Screen, {{m.left(), body, 40}, {m.right(), m.back(), m.height() - 25}},
            4);
    m.board("lid", colour, Surface::Screen,
            {{m.left(), body - 15, m.height() - 25}, {m.right(), m.back(), m.height()}}, 4);
    m.board("foot", colour, Surface::Screen, {{m.left(), body - 30, 0}, {m.right(), m.back(), 40}}, 3);
    m.board("key bed", colour, Surface::Screen,
            {{m.left(), m.front(), keys - 90}, {m.right(), body, keys - 30}}, 4);
    for (const double side : {-1.0, 1.0}) {
        const double x = side * (m.width() / 2 - 30);
        m.board(side < 0 ? "cheek left" : "cheek right", colour, Surface::Screen,
                {{x - 30, m.front(), keys - 30}, {x + 30, body, keys + 50}}, 4);
        m.board(side < 0 ? "leg left" : "leg right", colour, Surface::Screen,
                {{x - 28, m.front() + 30, 0}, {x + 28, m.front() + 90, keys - 90}}, 4);
    }
    m.board("keys", tone::kLinen, Surface::Ceramic,
            {{m.left() + 60, m.front() + 20, keys - 30}, {m.right() - 60, body, keys}}, 2);
    // 52 white keys from A up; a black one to the right of each but B and E.
    const double pitch = (m.width() - 120) / 52;
    meshes::Mesh blacks;
    for (int i = 0; i < 51; ++i) {
        const int in_octave = i % 7;
        if (in_octave == 1 || in_octave == 4) continue;
        const double x = m.left() + 60 + pitch * (i + 1);
        append(blacks, bevelledBox({x - pitch * 0.28, m.front() + 20 + (reach - 20) * 0.35, keys},
                                   {x + pitch * 0.28, body, keys + 10}, 1));
    }
    m.add("black keys", tone::kBlack, Surface::Matt, blacks);
    m.board("music stand", colour, Surface::Screen,
            {{-350, body - 30, keys + 130}, {350, body - 18, keys + 340}}, 3);
}

constexpr KindEntry kTable[] = {
    {"desk", desk}, {"table", table}, {"dressing-table", dressingTable}, {"bench", bench}, {"piano", piano},
};

} // namespace

MakeKind tableKind(std::string_view kind) {
    return findKind(kTable, kind);
}

} // namespace gangway::geometry
