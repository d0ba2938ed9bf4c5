#include "scene/luminaire_bodies.hpp"

#include "scene/colour.hpp"
#include "scene/palette.hpp"

#include <cmath>
#include <numbers>

namespace gangway::scene::detail {
namespace {

// Emission of parts by what they are: a bare source, opal glass, a lit fabric shade. Chosen by eye.
constexpr float kSource = 6;
constexpr float kOpal = 3;
constexpr float kShade = 0.9f;
// Usual sizes where the plan gives none; common practice, no source.
constexpr double kRecessedBeam_deg = 110;

struct Body {
    ObjectParts& parts;
    const plan::Luminaire& luminaire;
    const Placement& placement;

    double size(double usual_mm) const { return luminaire.size_mm > 0 ? luminaire.size_mm : usual_mm; }
    Material lit(float emission) const { return glowing(lightColour(luminaire.kelvin), emission); }
    void add(const Material& material, Mesh mesh) const {
        meshes::append(parts.of(material), placed(std::move(mesh), placement));
    }
    LightPoint light(Vec3 at, Vec3 direction = {0, 0, 1}) const {
        return {at, direction, luminaire.beam_deg};
    }
};

Material brass() {
    Material metal = matt("#B08D57", 0.35f);
    metal.metalness = 1;
    return metal;
}

Material whiteMetal() {
    return matt("#F1EDE4", 0.4f);
}
Material darkMetal() {
    return matt("#3A3733", 0.5f);
}

// A thin shade between two radii, open at both ends, with an inside.
std::vector<Vec2> shadeProfile(double low_radius, double high_radius, double low_z, double high_z) {
    const double t = 2;
    return {{low_radius - t, low_z},
            {low_radius, low_z},
            {high_radius, high_z},
            {high_radius - t, high_z},
            {low_radius - t, low_z}};
}

Mesh lathe(const std::vector<Vec2>& profile, int steps = 28) {
    Mesh mesh;
    addLathe(mesh, {}, profile, steps);
    return mesh;
}

Mesh rod(Vec3 from, Vec3 to, double radius) {
    Mesh mesh;
    addRod(mesh, from, to, radius);
    return mesh;
}

Mesh sphere(Vec3 centre, double radius) {
    Mesh mesh;
    addSphere(mesh, centre, radius);
    return mesh;
}

LightPoint ceilingDisc(const Body& body) {
    const double r = body.size(380) / 2;
    body.add(brass(), lathe({{0, 0}, {r * 0.98, 0}, {r, 6}, {r, 14}, {r * 0.97, 18}}));
    body.add(body.lit(kOpal),
             lathe({{r * 0.97, 14}, {r * 0.97, 44}, {r * 0.93, 58}, {r * 0.84, 66}, {r * 0.5, 72}, {0, 74}}));
    return body.light({0, 0, 90});
}

LightPoint wallLight(const Body& body) {
    const double r = body.size(220) / 2;
    const double depth = std::max(70.0, r * 0.85);
    Mesh plate;
    addBox(plate, {-r * 0.45, -70, 0}, {r * 0.45, 70, 12});
    body.add(brass(), std::move(plate));
    // The half-round shade stands about the wall's vertical: its lathe axis is the wall's y.
    Mesh shade;
    addLathe(shade, {}, shadeProfile(r * 0.8, r, -85, 85), 18, 0, 180);
    for (auto* vectors : {&shade.positions_mm, &shade.normals}) {
        for (Vec3& p : *vectors)
            p = {-p.x, p.z, p.y};
    }
    for (Vec3& p : shade.positions_mm)
        p.z = p.z * depth / r + 4;
    body.add(body.lit(kShade), std::move(shade));
    body.add(body.lit(kSource), sphere({0, 0, depth * 0.45}, 22));
    return body.light({0, 0, depth + 25});
}

LightPoint pendant(const Body& body) {
    const double r = body.size(320) / 2;
    const double underside = body.luminaire.drop_mm > 0 ? body.luminaire.drop_mm : 800;
    const double height = std::min(r * 1.1, underside * 0.6);
    const double top = underside - height;
    body.add(brass(), lathe({{0, 0}, {50, 0}, {50, 18}, {42, 26}, {0, 26}}, 20));
    body.add(darkMetal(), rod({0, 0, 20}, {0, 0, top + 8}, 3));
    // Dome, from the rim up the inside and down the outside; z runs down from the ceiling.
    std::vector<Vec2> outside;
    constexpr int kRings = 7;
    for (int i = 0; i <= kRings; ++i) {
        const double a = std::numbers::pi / 2 * i / kRings;
        outside.push_back({std::max(18.0, r * std::sin(a)), underside - height * std::cos(a)});
    }
    outside.insert(outside.begin(), {0, top});
    body.add(whiteMetal(), lathe(outside));
    std::vector<Vec2> inside;
    for (auto p = outside.rbegin(); p != outside.rend(); ++p)
        inside.push_back({std::max(0.0, p->x - 2), p->y + 1});
    inside.insert(inside.begin(), outside.back());
    body.add(body.lit(kShade), lathe(inside));
    body.add(body.lit(kSource), sphere({0, 0, underside - height * 0.35}, std::min(45.0, r * 0.3)));
    return body.light({0, 0, underside + 10});
}

LightPoint recessed(const Body& body) {
    const double r = body.size(85) / 2;
    body.add(whiteMetal(), lathe({{r, 0}, {r, 2}, {r - 1, 3.5}, {r * 0.82, 3.5}, {r * 0.74, 1}}, 24));
    body.add(body.lit(kSource), lathe({{r * 0.75, 1}, {0, 1}}, 24));
    LightPoint light = body.light({0, 0, 12});
    // The rim keeps the light off the ceiling whatever the plan says of the beam.
    if (light.beam_deg <= 0) light.beam_deg = kRecessedBeam_deg;
    return light;
}

// Local x turned by the luminaire's own direction, counter-clockwise in (x, y).
Mesh turned(Mesh mesh, double turn_deg) {
    const double a = turn_deg * std::numbers::pi / 180;
    return placed(std::move(mesh),
                  {{}, {std::cos(a), std::sin(a), 0}, {-std::sin(a), std::cos(a), 0}, {0, 0, 1}});
}

LightPoint bar(const Body& body, double usual_length, double width, double height) {
    const double half = body.size(usual_length) / 2;
    const double turn = body.luminaire.turn_deg;
    const double top = body.luminaire.drop_mm;
    if (top > 0) {
        for (const double x : {-half * 0.8, half * 0.8}) {
            body.add(darkMetal(), turned(rod({x, 0, 0}, {x, 0, top}, 1.5), turn));
        }
    }
    Mesh housing;
    addBox(housing, {-half, -width / 2, top}, {half, width / 2, top + height});
    body.add(whiteMetal(), turned(std::move(housing), turn));
    Mesh diffuser;
    addBox(diffuser, {-half + 4, -width * 0.42, top + height},
           {half - 4, width * 0.42, top + height + height * 0.15});
    body.add(body.lit(kOpal), turned(std::move(diffuser), turn));
    return body.light({0, 0, top + height * 1.15 + 12});
}

LightPoint standing(const Body& body, double height, double shade_radius, double shade_height,
                    double base_radius) {
    body.add(darkMetal(),
             lathe({{0, 0}, {base_radius, 0}, {base_radius, 10}, {base_radius * 0.9, 16}, {0, 18}}));
    body.add(brass(), rod({0, 0, 16}, {0, 0, height - shade_height * 0.45}, base_radius > 100 ? 9 : 7));
    body.add(body.lit(kShade),
             lathe(shadeProfile(shade_radius, shade_radius * 0.78, height - shade_height, height)));
    const Vec3 source{0, 0, height - shade_height * 0.45};
    body.add(body.lit(kSource), sphere(source, shade_radius * 0.16));
    return body.light(source + Vec3{0, 0, shade_radius * 0.16 + 10});
}

} // namespace

LightPoint addLuminaire(ObjectParts& parts, const plan::Luminaire& luminaire, const Placement& placement) {
    const Body body{parts, luminaire, placement};
    using Kind = plan::Luminaire::Kind;
    switch (luminaire.kind) {
    case Kind::Ceiling:
        return ceilingDisc(body);
    case Kind::Wall:
        return wallLight(body);
    case Kind::Pendant:
        return pendant(body);
    case Kind::Recessed:
        return recessed(body);
    case Kind::Linear:
        return bar(body, 1200, 46, 40);
    case Kind::UnderUnit:
        return bar(body, 600, 22, 9);
    case Kind::Floor:
        return standing(body, 1550, body.size(400) / 2, 260, 130);
    case Kind::Table:
        return standing(body, 430, body.size(240) / 2, 170, 65);
    }
    return {};
}

} // namespace gangway::scene::detail
