#include "sheets/luminaire_top_view.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::sheets {

namespace {

using Kind = plan::Luminaire::Kind;

/// Width of a luminaire whose length alone is known; common practice, no source.
constexpr double kBatten = 60;
constexpr double kUnderUnit = 40;

/// What tells round ones apart: the rim of a recessed one, the cable of a pendant, the foot of a stand.
double innerPart(Kind kind) {
    switch (kind) {
    case Kind::Recessed:
        return 0.75;
    case Kind::Pendant:
        return 0.12;
    case Kind::Floor:
    case Kind::Table:
        return 0.4;
    case Kind::Ceiling:
    case Kind::Wall:
    case Kind::Linear:
    case Kind::UnderUnit:
        break;
    }
    return 0;
}

GlyphGroup roundView(Kind kind, double diameter_mm) {
    GlyphGroup group;
    const double radius = diameter_mm / 2;
    Ink ink(group.items, "");
    ink.circle({0, 0}, radius, kOutline);
    if (innerPart(kind) > 0) ink.circle({0, 0}, radius * innerPart(kind), kThin);
    group.from_mm = -radius;
    group.to_mm = radius;
    group.depth_mm = diameter_mm;
    return group;
}

GlyphGroup longView(double length_mm, double width_mm, Pt along) {
    GlyphGroup group;
    const double l = length_mm / 2;
    const double w = width_mm / 2;
    const auto at = [&](double a, double b) {
        return Pt{along.x * a - along.y * b, along.y * a + along.x * b};
    };
    Ink ink(group.items, "");
    ink.polyline({at(-l, -w), at(l, -w), at(l, w), at(-l, w)}, true, kOutline);
    ink.line(at(-l, 0), at(l, 0), kThin);
    const double wide = std::abs(along.x) * l + std::abs(along.y) * w;
    group.from_mm = -wide;
    group.to_mm = wide;
    group.depth_mm = 2 * (std::abs(along.y) * l + std::abs(along.x) * w);
    return group;
}

GlyphGroup wallView(double diameter_mm, Pt normal) {
    GlyphGroup group;
    const double radius = diameter_mm / 2;
    const double turn = turnOf(normal);
    Ink ink(group.items, "");
    ink.arc({0, 0}, radius, turn, turn + 180, kOutline);
    ink.line({normal.y * radius, -normal.x * radius}, {-normal.y * radius, normal.x * radius}, kOutline);
    group.from_mm = -radius;
    group.to_mm = radius;
    group.depth_mm = radius;
    return group;
}

} // namespace

GlyphGroup luminaireTopView(const plan::Luminaire& luminaire, double scale, Pt along, Pt normal,
                            bool on_wall) {
    const double size = luminaire.size_mm / scale;
    if (size <= 0) return {};
    if (luminaire.kind == Kind::Linear || luminaire.kind == Kind::UnderUnit)
        return longView(size, (luminaire.kind == Kind::Linear ? kBatten : kUnderUnit) / scale, along);
    return on_wall ? wallView(size, normal) : roundView(luminaire.kind, size);
}

} // namespace gangway::sheets
