// Sofas, armchairs and chairs.
#include "geometry/furniture_maker.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gangway::geometry {
namespace {

using Surface = Maker::Surface;

constexpr double kFootMm = 110;
constexpr double kSeatPadMm = 160;
constexpr double kBackMm = 220; // frame and cushion of a back rest

void addSofa(Maker& m, int seats) {
    const std::string colour = m.main(tone::kFabric);
    const double seat = m.value("seatHeight");
    const double arm = std::min(m.value("armWidth"), m.width() / 4);
    const double base = std::max(seat - kSeatPadMm, kFootMm + 40);
    const double inner_left = m.left() + arm;
    const double inner_right = m.right() - arm;
    addLegs(m, {{m.left() + 50, m.front() + 50, 0}, {m.right() - 50, m.back() - 50, kFootMm}}, 40,
            tone::kDarkOak, Surface::Wood);
    m.pad("base", colour, {{m.left(), m.front() + 20, kFootMm}, {m.right(), m.back(), base}}, 20);
    if (arm > 0) {
        const double top = m.value("armHeight");
        m.pad("arm left", colour, {{m.left(), m.front(), kFootMm}, {inner_left, m.back(), top}}, 40);
        m.pad("arm right", colour, {{inner_right, m.front(), kFootMm}, {m.right(), m.back(), top}}, 40);
    }
    const double rest = m.back() - kBackMm;
    m.pad("back", colour, {{inner_left, m.back() - 110, base}, {inner_right, m.back(), m.height() - 30}}, 40);
    const double width = (inner_right - inner_left) / std::max(seats, 1);
    for (int i = 0; i < seats; ++i) {
        const double left = inner_left + width * i + 3;
        const double right = left + width - 6;
        m.pad(fmt::format("seat cushion {}", i + 1), colour,
              {{left, m.front() + 10, base}, {right, rest + 40, seat}}, 45);
        m.pad(fmt::format("back cushion {}", i + 1), colour,
              {{left + 4, rest - 20, seat - 20}, {right - 4, m.back() - 90, m.height()}}, 70);
    }
}

void sofa(Maker& m) {
    addSofa(m, std::max(1, m.count("seats")));
    const double seat = m.value("seatHeight");
    const double arm = m.value("armWidth");
    // One loose cushion at the left end, so that it does not look like a bench.
    m.pad("loose cushion", "#B98A6A",
          {{m.left() + arm + 40, m.back() - kBackMm - 150, seat},
           {m.left() + arm + 420, m.back() - kBackMm - 20, seat + 330}},
          62);
}

void armchair(Maker& m) {
    addSofa(m, 1);
}

void chair(Maker& m) {
    const std::string colour = m.main(tone::kOak);
    const double seat = m.value("seatHeight");
    const double leg = 34;
    const double in = 14;
    addLegs(m, {{m.left() + in, m.front() + in, 0}, {m.right() - in, m.back() - in, seat - 40}}, leg, colour,
            Surface::Wood);
    m.board("seat frame", colour, Surface::Wood,
            {{m.left() + 6, m.front() + 6, seat - 55}, {m.right() - 6, m.back() - 6, seat - 30}}, 6);
    m.pad("seat", tone::kFabric,
          {{m.left() + 6, m.front() + 2, seat - 32}, {m.right() - 6, m.back() - 46, seat}}, 16);
    for (const double side : {-1.0, 1.0}) {
        const double x = side * (m.width() / 2 - in - leg / 2);
        m.board(side < 0 ? "back post left" : "back post right", colour, Surface::Wood,
                {{x - leg / 2, m.back() - in - leg, seat - 40}, {x + leg / 2, m.back() - in, m.height()}}, 6);
    }
    const double x = m.width() / 2 - in - leg;
    m.board("back rest", colour, Surface::Wood,
            {{-x, m.back() - in - 26, m.height() - 120}, {x, m.back() - in - 8, m.height() - 10}}, 6);
    m.board("back rail", colour, Surface::Wood,
            {{-x, m.back() - in - 26, seat + 110}, {x, m.back() - in - 8, seat + 150}}, 5);
}

constexpr KindEntry kTable[] = {{"sofa", sofa}, {"armchair", armchair}, {"chair", chair}};

} // namespace

MakeKind seatKind(std::string_view kind) {
    return findKind(kTable, kind);
}

} // namespace gangway::geometry
