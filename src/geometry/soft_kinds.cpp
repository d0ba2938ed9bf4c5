// Curtains, blinds and rugs.
#include "geometry/furniture_maker.hpp"

#include <fmt/format.h>

#include <algorithm>

#include <cmath>
#include <numbers>

namespace gangway::geometry {
namespace {

using Surface = Maker::Surface;

constexpr double kClothMm = 4;

/// A hanging cloth in folds between two x, as the outline of its lower edge.
std::vector<Vec2> folds(double from, double to, double depth, double pitch) {
    const int waves = std::max(2, static_cast<int>(std::lround((to - from) / pitch)));
    const int steps = waves * 8;
    std::vector<Vec2> front;
    std::vector<Vec2> back;
    for (int i = 0; i <= steps; ++i) {
        const double x = from + (to - from) * i / steps;
        const double y = (depth - kClothMm) / 2 * std::sin(2 * std::numbers::pi * waves * i / steps);
        front.push_back({x, y - kClothMm / 2});
        back.push_back({x, y + kClothMm / 2});
    }
    front.insert(front.end(), back.rbegin(), back.rend());
    return front;
}

/// The cloth as a mesh; its long sides are shaded round.
meshes::Mesh cloth(double from, double to, double depth, double pitch, double low, double high) {
    const std::vector<Vec2> outline = folds(from, to, depth, pitch);
    return lofted(std::vector<Loop>{{outline, low}, {outline, high}});
}

void curtain(Maker& m) {
    const std::string colour = m.main("#C9BBA6");
    const double rail = m.value("railHeight") > 0 ? m.value("railHeight") : m.height();
    const double depth = std::min(m.value("foldDepth"), m.depth());
    const int leaves = std::max(1, m.count("leaves"));
    const int stack = m.count("stack");
    const bool drawn = m.flag("drawn");
    const double each =
        drawn ? m.width() / leaves : std::min(m.value("stackPart") * m.width(), m.width() / leaves);
    const double pitch = drawn ? 160 : std::max(36.0, depth * 0.5);
    const double low = m.value("clearance");
    m.rod("rail", tone::kSteel, Surface::Metal, {m.left(), 0, rail - 12}, {m.right(), 0, rail - 12}, 12);
    for (const double end : {m.left(), m.right()})
        m.add("rail end", tone::kSteel, Surface::Metal,
              cushion({end - 16, -20, rail - 32}, {end + 16, 20, rail + 8}, 15));
    const bool left = leaves > 1 || stack != 2;
    const bool right = leaves > 1 || stack == 2;
    const double hang = rail - 28;
    if (left)
        m.add("curtain left", colour, Surface::Fabric,
              cloth(m.left(), m.left() + each, depth, pitch, low, hang));
    if (right)
        m.add("curtain right", colour, Surface::Fabric,
              cloth(m.right() - each, m.right(), depth, pitch, low, hang));
}

void blind(Maker& m) {
    const double box = std::min(m.value("boxHeight"), m.height());
    const double drop = (m.height() - box) * std::clamp(m.value("drawn"), 0.0, 1.0);
    m.board("box", tone::kWhite, Surface::Matt,
            {{m.left(), m.front(), m.height() - box}, {m.right(), m.back(), m.height()}}, 8);
    if (drop < 5) return;
    const double low = m.height() - box - drop;
    m.board("cloth", m.main("#D9D2C3"), Surface::Fabric,
            {{m.left() + 12, -2, low}, {m.right() - 12, 2, m.height() - box}}, 0.5);
    m.board("bottom bar", tone::kWhite, Surface::Matt,
            {{m.left() + 12, -8, low - 22}, {m.right() - 12, 8, low}}, 4);
}

void rug(Maker& m) {
    const std::string colour = m.main("#B9A891");
    m.board("rug", colour, Surface::Fabric, m.whole(), 3);
    const double in = std::min(m.width(), m.depth()) * 0.06;
    const auto ring = [&](double by) {
        return std::vector<Vec2>{{m.left() + by, m.front() + by},
                                 {m.right() - by, m.front() + by},
                                 {m.right() - by, m.back() - by},
                                 {m.left() + by, m.back() - by}};
    };
    m.add("border", "#8C7A66", Surface::Fabric,
          extrude(ring(in), m.height(), m.height() + 0.8, {ring(in * 1.5)}));
}

constexpr KindEntry kTable[] = {{"curtain", curtain}, {"blind", blind}, {"rug", rug}};

} // namespace

MakeKind softKind(std::string_view kind) {
    return findKind(kTable, kind);
}

} // namespace gangway::geometry
