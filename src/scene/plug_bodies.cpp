#include "scene/plug_bodies.hpp"

#include "catalogue/plug_shapes.hpp"
#include "scene/drawn_objects.hpp"
#include "scene/object_parts.hpp"
#include "scene/palette.hpp"
#include "scene/solids.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gangway::scene {

using catalogue::OutletPlace;
using catalogue::plugShape;
using catalogue::PlugShape;
using detail::Facing;
using detail::Loop;
using detail::Mesh;
using detail::ObjectParts;
using detail::Shading;
using plan::Vec2;
using plan::Vec3;
using State = OutletPlace::State;

namespace {
constexpr double kLeastRelief_mm = 2;   // as plates are drawn
constexpr double kRecessFloor_mm = 1.9; // a little before the floor that recesses are drawn with
constexpr double kThinnest_mm = 4;      // a body, where the pack's depth ends within the plate
constexpr double kBehind_mm = 14;       // of the depth, what a cord out of the end needs for its bend
constexpr double kBend_mm = 6;          // radius of its middle line
constexpr double kGland_mm = 8;         // length of the sleeve where a cord leaves
constexpr double kFrame_mm = 2;         // width of the frame round an outlet
// Over the plate's face; plates are drawn a little nearer than they are, 2 mm at 4.5 m (shaders/part.glsl).
constexpr double kFrameOut_mm = 3;

/// The body's outline, smaller by `inset` all round; always as many points.
Loop outline(const PlugShape& shape, Vec2 centre, double inset) {
    const double width = shape.width_mm - 2 * inset;
    const double height = shape.height_mm - 2 * inset;
    const double corner = std::max(0.2, shape.corner_mm - inset);
    Loop loop = detail::roundedRect({}, width, height, corner, 0, 6);
    for (Vec2& point : loop) {
        // As wide as it says above the lower corners.
        const double up = std::max(0.0, point.y + height / 2 - corner) / (height - corner);
        point = centre + Vec2{point.x * (1 + (shape.top_part - 1) * up), point.y};
    }
    return loop;
}

/// A block from one level to another with a rounded outer edge.
void addBody(Mesh& mesh, const PlugShape& shape, Vec2 centre, double from_z, double to_z) {
    const double edge = std::min(3.0, (to_z - from_z) / 3);
    const Loop outer = outline(shape, centre, 0);
    const Loop middle = outline(shape, centre, edge * 0.3);
    const Loop face = outline(shape, centre, edge);
    detail::addBand(mesh, outer, {from_z}, outer, {to_z - edge}, Facing::Outwards, Shading::Round);
    detail::addBand(mesh, outer, {to_z - edge}, middle, {to_z - edge * 0.3}, Facing::Outwards);
    detail::addBand(mesh, middle, {to_z - edge * 0.3}, face, {to_z}, Facing::Outwards);
    detail::addFace(mesh, face, {}, {to_z});
}

void addCord(Mesh& mesh, const std::vector<Vec3>& points, double radius) {
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        detail::addRod(mesh, points[i], points[i + 1], radius, 10);
        if (i > 0) detail::addSphere(mesh, points[i], radius, 10);
    }
}

/// Straight out to `out_z`, round a bend, and down to `end_y`.
void addBentCord(Mesh& mesh, Vec3 from, double out_z, double end_y, double radius) {
    constexpr int kSteps = 5;
    detail::addRod(mesh, from, from + Vec3{0, 0, (out_z - kBend_mm - from.z) * 0.8}, radius * 1.5, 12);
    std::vector<Vec3> points{from};
    const Vec3 middle{from.x, from.y - kBend_mm, out_z - kBend_mm};
    for (int i = 0; i <= kSteps; ++i) {
        const double angle = std::numbers::pi / 2 * i / kSteps;
        points.push_back(middle + Vec3{0, kBend_mm * std::cos(angle), kBend_mm * std::sin(angle)});
    }
    points.push_back({from.x, end_y, out_z});
    addCord(mesh, points, radius);
}

/// Out of the middle of the lower side, and down.
void addHangingCord(Mesh& mesh, Vec3 from, double radius) {
    detail::addRod(mesh, from, from - Vec3{0, kGland_mm, 0}, radius * 1.4, 12);
    addCord(mesh, {from, from - Vec3{0, kCordStubMm, 0}}, radius);
}

struct Depths {
    double face_mm = 0; ///< of the plate, from what it is fixed to
    double plug_mm = 0; ///< to where the plug with its cord ends
};

void addPlug(Mesh& mesh, const PlugShape& shape, const OutletPlace& outlet, Depths depths) {
    const Vec2 at = outlet.centre_mm;
    const bool sinks =
        outlet.recess_mm > 0 && std::max(shape.width_mm, shape.height_mm) <= outlet.recess_mm + 1;
    const double from = sinks ? kRecessFloor_mm : depths.face_mm;
    const bool behind = shape.cord == PlugShape::Cord::Behind;
    const double to = std::max(depths.plug_mm - (behind ? kBehind_mm : 0), depths.face_mm + kThinnest_mm);
    addBody(mesh, shape, at, from, to);
    const double low = at.y - shape.height_mm / 2;
    const double radius = std::min(shape.cord_mm, to - depths.face_mm) / 2;
    if (behind)
        addBentCord(mesh, {at.x, at.y, to}, to + kBehind_mm - radius, low - kCordStubMm, radius);
    else
        addHangingCord(mesh, {at.x, low, (depths.face_mm + to) / 2}, radius);
}

/// What comes out of a cord outlet.
void addFixedCord(Mesh& mesh, Vec2 at, double face_mm) {
    constexpr double kRadius = 4;
    addBentCord(mesh, {at.x, at.y, face_mm}, face_mm + kBehind_mm, at.y - kCordStubMm, kRadius);
}

/// A frame as large as a plug, before the plate's face; crossed out when something hides the outlet.
void addFrame(Mesh& mesh, const PlugShape& shape, Vec2 at, double z, bool crossed) {
    const Loop outer = outline(shape, at, 0);
    const Loop inner = outline(shape, at, kFrame_mm);
    const double top = z + kFrameOut_mm;
    detail::addBand(mesh, outer, {z}, outer, {top}, Facing::Outwards);
    detail::addBand(mesh, inner, {z}, inner, {top}, Facing::Inwards);
    detail::addFace(mesh, outer, {inner}, {top});
    if (!crossed) return;
    const Vec2 half{shape.width_mm * 0.33, shape.height_mm * 0.33};
    for (const double side : {-1.0, 1.0})
        detail::addStroke(mesh, {at - Vec2{half.x * side, half.y}, at + Vec2{half.x * side, half.y}},
                          kFrame_mm, {top + 0.1});
}

/// A crossed-out frame stands before the bodies that reach over its outlet.
double frontOver(const OutletPlace& outlet, std::span<const OutletPlace> on_plate, double face_mm,
                 const catalogue::CountryPack& pack) {
    double front = face_mm;
    for (const OutletPlace& other : on_plate) {
        if (other.state != State::Taken || other.fixed) continue;
        const PlugShape shape = plugShape(other.plugged.plug, other.plugged.plug_type);
        const Vec2 off = outlet.centre_mm - other.centre_mm;
        if (std::abs(off.x) < shape.width_mm / 2 && std::abs(off.y) < shape.height_mm / 2)
            front = std::max(front, pack.limit(catalogue::plugLimit(other.plugged.plug)).value);
    }
    return front;
}

void addOutlet(ObjectParts& parts, const OutletPlace& outlet, std::span<const OutletPlace> on_plate,
               double face_mm, const catalogue::CountryPack& pack, const detail::Placement& placement) {
    using Kind = plan::Device::Plug;
    const auto add = [&](const Material& material, Mesh mesh) {
        meshes::append(parts.of(material), detail::placed(std::move(mesh), placement));
    };
    Mesh mesh;
    const Material pale = detail::matt("#E9E4D8", 0.6f);
    if (outlet.state == State::Taken && outlet.fixed) {
        addFixedCord(mesh, outlet.centre_mm, face_mm);
        return add(pale, std::move(mesh));
    }
    if (outlet.state == State::Taken) {
        const std::string& type = outlet.plugged.plug_type.empty() ? outlet.type : outlet.plugged.plug_type;
        addPlug(mesh, plugShape(outlet.plugged.plug, type), outlet,
                {face_mm, pack.limit(catalogue::plugLimit(outlet.plugged.plug)).value});
        const bool block = outlet.plugged.plug == Kind::PowerBlock;
        return add(block ? detail::matt("#33312E", 0.6f) : pale, std::move(mesh));
    }
    if (outlet.fixed) return;
    const bool blocked = outlet.state == State::Blocked;
    const double z = blocked ? frontOver(outlet, on_plate, face_mm, pack) : face_mm;
    addFrame(mesh, plugShape(Kind::Straight, outlet.type), outlet.centre_mm, z, blocked);
    // The tokens of "agreed" and "fault" (design.md section 7).
    add(detail::matt(blocked ? "#9E1B32" : "#0B6E5F", 0.7f), std::move(mesh));
}
} // namespace

void addPlugBodies(Scene& scene, const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
                   const catalogue::CountryPack& pack, const catalogue::PlugPlaces& places,
                   const std::set<std::string>* plates) {
    const std::span all(places.outlets);
    std::size_t first = 0;
    for (const plan::Plate& plate : house.plan().plates) {
        std::size_t end = first;
        while (end < all.size() && all[end].plate == plate.id)
            ++end;
        const auto on_plate = all.subspan(first, end - first);
        first = end;
        if (on_plate.empty() || (plates != nullptr && !plates->contains(plate.id))) continue;
        const auto composed = catalogue::compose(catalogue, plate);
        const auto mounting = detail::plateMounting(house, plate, composed);
        if (!mounting) continue; // said where the plate itself is drawn
        ObjectParts parts;
        const double face = std::max(composed.relief_mm, kLeastRelief_mm);
        for (const OutletPlace& outlet : on_plate)
            addOutlet(parts, outlet, on_plate, face, pack, mounting->placement);
        Part label = detail::plateLabel(house, plate, *mounting);
        label.kind = PartKind::Plug;
        label.layer = kLayerPlugs;
        detail::addToScene(scene, label, parts, detail::elevationOf(house, plate.room));
    }
}

} // namespace gangway::scene
