#include "house.hpp"

#include "geometry/frames.hpp"
#include "scene/module_front.hpp"
#include "scene/plate_relief.hpp"

#include <algorithm>
#include <cmath>

using namespace gangway;
using Catch::Matchers::WithinAbs;

namespace {

// Corner-to-corner bounds of a plate in its host's (u, v, w).
struct HostBounds {
    plan::Vec3 low{1e30, 1e30, 1e30};
    plan::Vec3 high{-1e30, -1e30, -1e30};
};

HostBounds inHost(const scene::Scene& scene, const geometry::Frame& frame, const std::string& plate,
                  double elevation_mm) {
    HostBounds bounds;
    for (const scene::Part& part : scene.parts) {
        if (part.object != plate) continue;
        for (std::uint32_t i = part.first_index; i < part.first_index + part.index_count; ++i) {
            plan::Vec3 house_mm = scene::toHouse(scene.vertices[scene.indices[i]].position);
            house_mm.z -= elevation_mm;
            const plan::Vec3 p = geometry::toFrame(frame, house_mm);
            bounds.low = {std::min(bounds.low.x, p.x), std::min(bounds.low.y, p.y),
                          std::min(bounds.low.z, p.z)};
            bounds.high = {std::max(bounds.high.x, p.x), std::max(bounds.high.y, p.y),
                           std::max(bounds.high.z, p.z)};
        }
    }
    return bounds;
}

double elevationOf(const plan::Plan& plan, const plan::Plate& plate) {
    return plan::findStorey(plan, house::room(plan, plate.room).storey)->elevation_mm;
}

// Distance out of the wall of the first thing that a ray square to it meets, at an offset from the plate's
// centre.
double reliefAt(const scene::Scene& scene, const geometry::Frame& frame, const std::string& plate,
                plan::Vec3 centre_uvw, double x, double y) {
    double nearest = -1e30;
    const plan::Vec2 at{centre_uvw.x + x, centre_uvw.y + y};
    for (const scene::Part& part : scene.parts) {
        if (part.object != plate) continue;
        for (std::uint32_t i = part.first_index; i < part.first_index + part.index_count; i += 3) {
            plan::Vec3 p[3];
            for (std::uint32_t k = 0; k < 3; ++k) {
                p[k] =
                    geometry::toFrame(frame, scene::toHouse(scene.vertices[scene.indices[i + k]].position));
            }
            const auto flat = [](plan::Vec3 q) { return plan::Vec2{q.x, q.y}; };
            const double area = plan::cross(flat(p[1]) - flat(p[0]), flat(p[2]) - flat(p[0]));
            if (area < 1e-6) continue; // edge-on, or facing the wall
            const double a = plan::cross(flat(p[1]) - at, flat(p[2]) - at) / area;
            const double b = plan::cross(flat(p[2]) - at, flat(p[0]) - at) / area;
            const double c = 1 - a - b;
            if (a < 0 || b < 0 || c < 0) continue;
            nearest = std::max(nearest, a * p[0].z + b * p[1].z + c * p[2].z);
        }
    }
    return nearest;
}

struct OnWall {
    plan::Plan plan = house::read();
    scene::Scene scene = scene::build(plan, house::catalogue());
    geometry::Frame frame;
    plan::Vec3 centre;

    explicit OnWall(const std::string& id) {
        const plan::Plate* plate = plan::findPlate(plan, id);
        REQUIRE(plate != nullptr);
        frame = *geometry::hostFrame(plan, plate->room, plate->host);
        centre = {plate->host.u_mm, plate->host.v_mm, 0};
    }
    double relief(const std::string& id, double x, double y) const {
        return reliefAt(scene, frame, id, centre, x, y);
    }
};

} // namespace

TEST_CASE("a plate's middle on the stage is where the plan puts it, to a hundredth of a millimetre") {
    const plan::Plan plan = house::read();
    const scene::Scene scene = scene::build(plan, house::catalogue());
    for (const plan::Plate& plate : plan.plates) {
        INFO(plate.id);
        const geometry::Frame frame = *geometry::hostFrame(plan, plate.room, plate.host);
        const plan::Vec3 wanted =
            geometry::toFrame(frame, *geometry::hostPoint(plan, plate.room, plate.host));
        const HostBounds bounds = inHost(scene, frame, plate.id, elevationOf(plan, plate));
        CHECK_THAT((bounds.low.x + bounds.high.x) / 2, WithinAbs(wanted.x, 0.01));
        CHECK_THAT((bounds.low.y + bounds.high.y) / 2, WithinAbs(wanted.y, 0.01));
        const double tiles = plate.id == "on-tiles" ? 8 : 0;
        CHECK_THAT(bounds.low.z, WithinAbs(wanted.z + tiles, 0.01));
    }
}

TEST_CASE("a plate on tiles stands on them, so that its recesses are seen") {
    const OnWall tiled("on-tiles");
    // Tiles of the fixture are 8 thick, frames of the format stand out by 10.
    CHECK(tiled.relief("on-tiles", -35.5, 32) == Approx(18).margin(0.01));
    CHECK(tiled.relief("on-tiles", -35.5 + 9.5, 0) > 8);
}

TEST_CASE("a plate on the stage is as large as it is composed") {
    const OnWall triple("triple");
    const HostBounds bounds = inHost(triple.scene, triple.frame, "triple", 0);
    // Three gangs at pitch 71 with a single of 81: 81 + 2 x 71 = 223 (trade rule of DIN 49073 boxes).
    CHECK_THAT(bounds.high.x - bounds.low.x, WithinAbs(223, 0.01));
    CHECK_THAT(bounds.high.y - bounds.low.y, WithinAbs(81, 0.01));
}

TEST_CASE("the well of a socket is a recess in its face, and its pin holes are deeper") {
    const OnWall triple("triple");
    const double frame_face = triple.relief("triple", -71, 32);
    const double well = triple.relief("triple", -71, 5);
    const double pin = triple.relief("triple", -71 + 9.5, 0);
    CHECK(frame_face == Approx(10).margin(0.01));
    CHECK(well < frame_face - 4);
    CHECK(pin < well - 0.5);
    CHECK(pin > 0);
}

TEST_CASE("a rocker stands out and leans") {
    const OnWall entry("entry");
    const double upper = entry.relief("entry", 0, 35.5 + 20);
    const double lower = entry.relief("entry", 0, 35.5 - 20);
    CHECK(std::min(upper, lower) > 10);
    CHECK(std::abs(upper - lower) > 0.5);
}

TEST_CASE("a dimmer's knob stands further out than its frame") {
    const OnWall entry("entry");
    CHECK(entry.relief("entry", 0, -35.5) > 10 + 4);
}

TEST_CASE("nothing of a plate shows a hole to the wall behind it") {
    const OnWall triple("triple");
    const OnWall entry("entry");
    for (double x = -111; x <= 111; x += 1.7) {
        for (double y = -40; y <= 40; y += 1.3) {
            if (std::hypot(std::max(0.0, std::abs(x) - 106), std::max(0.0, std::abs(y) - 36)) > 3) continue;
            const double relief = triple.relief("triple", x, y);
            if (relief <= 0) FAIL("hole at " << x << ", " << y);
        }
    }
    CHECK(entry.relief("entry", 27.7, 35.5) > 0);
}

TEST_CASE("a mark is drawn where the catalogue has it on the module's front") {
    const catalogue::ModuleType* type = house::catalogue().module("switch-2way");
    REQUIRE(type != nullptr);
    const plan::Vec2 gang{100, 50};
    const auto levels = scene::detail::frontLevels(type->front, {gang, 55, 55, 10, 0.6});
    int strokes = 0;
    for (std::size_t i = 0; i < levels.size(); ++i) {
        if (levels[i].stroke.empty()) continue;
        ++strokes;
        const auto shape = std::find_if(type->front.begin(), type->front.end(),
                                        [](const auto& s) { return s.points_mm.size() > 1; });
        REQUIRE(shape != type->front.end());
        CHECK(levels[i].stroke.front() == gang + shape->points_mm.front());
        for (const plan::Vec2 p : levels[i].stroke) {
            CHECK(levels[i].level.at(p) > levels[levels[i].parent].level.at(p));
        }
    }
    CHECK(strokes >= 1);
}

TEST_CASE("every module of the catalogue makes a closed front in every format that holds it") {
    for (const catalogue::PlateFormat& format : house::catalogue().formats) {
        for (const catalogue::ModuleType& type : house::catalogue().modules) {
            plan::Plate plate;
            plate.format = format.id;
            plate.modules.emplace_back().type = type.id;
            scene::detail::ObjectParts parts;
            const auto composed = catalogue::compose(house::catalogue(), plate);
            scene::detail::addPlate(parts, house::catalogue(), composed, {});
            INFO(type.id << " in " << format.id);
            double covered = 0; // faces that look out of the wall cover the plate's outline at least once
            for (const auto& [material, mesh] : parts.all()) {
                for (const auto& t : mesh.triangles) {
                    const auto flat = [&](std::uint32_t i) {
                        return plan::Vec2{mesh.positions_mm[i].x, mesh.positions_mm[i].y};
                    };
                    covered +=
                        std::max(0.0, plan::cross(flat(t[1]) - flat(t[0]), flat(t[2]) - flat(t[0])) / 2);
                }
            }
            CHECK(covered >
                  composed.width_mm * composed.height_mm - 0.95 * composed.corner_mm * composed.corner_mm);
        }
    }
}
