#include "scene/plate_relief.hpp"

#include "scene/module_front.hpp"
#include "scene/palette.hpp"
#include "scene/unknown_front.hpp"

#include <algorithm>
#include <vector>

namespace gangway::scene::detail {
namespace {

using Role = catalogue::FrontShape::Role;
using Form = FrontLevel::Form;

constexpr double kGroove_mm = 1.2; // depth of the groove between frame and module
// The deepest recess ends this far out of the wall: more than tiles given without a depth stand out.
constexpr double kFloor_mm = 1.8;
constexpr double kLeastRelief_mm = 2;
constexpr double kStroke_mm = 0.7;
constexpr float kDarkFinish = 0.12f; // linear; on darker modules marks are light

Material markMaterial(const Material& finish) {
    const float brightness = std::max({finish.colour.r, finish.colour.g, finish.colour.b});
    return matt(brightness < kDarkFinish ? "#C9C2B4" : "#6B655C", 0.7f);
}

Material materialOf(const FrontLevel& level, const Material& finish) {
    switch (level.role) {
    case Role::Pin:
        if (level.form != Form::Raised) return matt("#191817", 0.9f);
        [[fallthrough]];
    case Role::Contact: {
        Material metal = matt("#C8C2B2", 0.3f);
        metal.metalness = 1;
        return metal;
    }
    case Role::Well:
        return shaded(finish, 0.88f);
    case Role::Shutter:
        return shaded(finish, 0.6f);
    case Role::Hinge:
        return shaded(finish, 0.7f);
    case Role::Mark:
        return markMaterial(finish);
    case Role::Cap:
    case Role::Rocker:
    case Role::Knob:
        break;
    }
    return finish;
}

// The loop moved inwards by `inset`: exact for circles and rectangles, which is all there is.
Loop inset(const Loop& loop, double by_mm) {
    Vec2 low = loop.front();
    Vec2 high = loop.front();
    for (const Vec2 p : loop) {
        low = {std::min(low.x, p.x), std::min(low.y, p.y)};
        high = {std::max(high.x, p.x), std::max(high.y, p.y)};
    }
    const Vec2 centre = (low + high) * 0.5;
    const double sx = std::max(0.1, 1 - 2 * by_mm / std::max(0.1, high.x - low.x));
    const double sy = std::max(0.1, 1 - 2 * by_mm / std::max(0.1, high.y - low.y));
    Loop smaller;
    for (const Vec2 p : loop)
        smaller.push_back({centre.x + (p.x - centre.x) * sx, centre.y + (p.y - centre.y) * sy});
    return smaller;
}

// Recesses cut into level `parent`, as far as its face still goes round them.
std::vector<Loop> holesIn(const std::vector<FrontLevel>& levels, std::size_t parent) {
    std::vector<Loop> holes;
    for (std::size_t i = 1; i < levels.size(); ++i) {
        if (levels[i].form == Form::Sunk && levels[i].parent == parent) holes.push_back(levels[i].outline);
    }
    return holes;
}

// A block from `ground` up to its own level with a chamfered edge, so that the edge catches light.
void addBlock(Mesh& mesh, const FrontLevel& block, Level ground, const std::vector<Loop>& holes) {
    const Vec2 at = block.outline.front();
    const double rise = block.level.at(at) - ground.at(at);
    const bool has_room = std::all_of(holes.begin(), holes.end(), [&](const Loop& hole) {
        const Loop face = inset(block.outline, 0.5);
        return std::all_of(hole.begin(), hole.end(), [&](Vec2 p) { return insideConvex(face, p, 0.02); });
    });
    const double chamfer = rise > 0.4 && has_room ? std::min(0.4, rise / 3) : 0;
    const Loop top = chamfer > 0 ? inset(block.outline, chamfer) : block.outline;
    const Shading shading = block.round ? Shading::Round : Shading::Flat;
    addBand(mesh, block.outline, ground, block.outline, block.level.raised(-chamfer), Facing::Outwards,
            shading);
    if (chamfer > 0) {
        addBand(mesh, block.outline, block.level.raised(-chamfer), top, block.level, Facing::Outwards);
    }
    addFace(mesh, top, holes, block.level);
}

void addFront(ObjectParts& parts, const std::vector<FrontLevel>& levels, const Material& finish,
              double groove_z, const Placement& placement) {
    for (std::size_t i = 0; i < levels.size(); ++i) {
        const FrontLevel& level = levels[i];
        Mesh mesh;
        const std::vector<Loop> holes = holesIn(levels, i);
        switch (level.form) {
        case Form::Base:
            addBlock(mesh, level, {groove_z}, holes);
            break;
        case Form::Raised:
            addBlock(mesh, level, levels[level.parent].level, holes);
            break;
        case Form::Sunk:
            addBand(mesh, level.outline, level.level, level.outline, levels[level.parent].level,
                    Facing::Inwards, level.round ? Shading::Round : Shading::Flat);
            addFace(mesh, level.outline, holes, level.level);
            break;
        case Form::Flat:
            if (level.stroke.empty()) {
                addFace(mesh, level.outline, {}, level.level);
            } else {
                addStroke(mesh, level.stroke, kStroke_mm, level.level);
            }
            break;
        }
        meshes::append(parts.of(materialOf(level, finish)), placed(std::move(mesh), placement));
    }
}

struct FrameShape {
    Loop face;
    double face_z = 0;
};

// Sides and rounded edge of the frame, in three bands; the face itself is added once its holes are known.
FrameShape addFrameEdge(Mesh& mesh, const catalogue::ComposedPlate& plate) {
    const double z = std::max(plate.relief_mm, kLeastRelief_mm);
    const double bevel = std::min(1.6, z * 0.35);
    const auto ring = [&](double by_mm) {
        return roundedRect({}, plate.width_mm - 2 * by_mm, plate.height_mm - 2 * by_mm,
                           std::max(0.2, plate.corner_mm - by_mm), 0, 4);
    };
    const Loop outer = ring(0);
    const Loop middle = ring(bevel * 0.3);
    const Loop face = ring(bevel);
    addBand(mesh, outer, {0}, outer, {z - bevel}, Facing::Outwards);
    addBand(mesh, outer, {z - bevel}, middle, {z - bevel * 0.3}, Facing::Outwards);
    addBand(mesh, middle, {z - bevel * 0.3}, face, {z}, Facing::Outwards);
    return {face, z};
}

} // namespace

void addPlate(ObjectParts& parts, const catalogue::Catalogue& catalogue,
              const catalogue::ComposedPlate& plate, const Placement& placement) {
    const Material frame_material = finishMaterial(catalogue, plate.finish);
    Mesh frame;
    const FrameShape shape = addFrameEdge(frame, plate);
    const double groove_z = shape.face_z - kGroove_mm;
    std::vector<Loop> apertures;
    for (const catalogue::Gang& gang : plate.gangs) {
        const FrontSpace space{gang.centre_mm, gang.width_mm, gang.height_mm, shape.face_z, kFloor_mm};
        std::vector<catalogue::FrontShape> front;
        if (gang.unknown) {
            front = unknownFront(gang.width_mm, gang.height_mm);
        } else if (gang.module != nullptr) {
            front = gang.module->front;
        }
        const std::vector<FrontLevel> levels = frontLevels(front, space);
        const Loop aperture =
            roundedRect(gang.centre_mm, gang.width_mm - 0.1, gang.height_mm - 0.1, 1.2, 0, 3);
        const bool framed = std::all_of(aperture.begin(), aperture.end(),
                                        [&](Vec2 p) { return insideConvex(shape.face, p, 0.2); });
        if (framed) {
            apertures.push_back(aperture);
            addBand(frame, aperture, {groove_z}, aperture, {shape.face_z}, Facing::Inwards);
            addBand(frame, aperture, {groove_z}, levels.front().outline, {groove_z}, Facing::Outwards);
        }
        const std::string& finish = gang.finish.empty() ? plate.finish : gang.finish;
        addFront(parts, levels, finishMaterial(catalogue, finish), groove_z, placement);
    }
    addFace(frame, shape.face, apertures, {shape.face_z});
    meshes::append(parts.of(frame_material), placed(std::move(frame), placement));
}

} // namespace gangway::scene::detail
