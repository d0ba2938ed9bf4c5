// Skirting, rails, cornices, panels and tiles on a wall, interrupted where openings and their casings are.
#include "geometry/shapes.hpp"
#include "geometry/wall_build.hpp"

#include <algorithm>

namespace gangway::geometry {
namespace {

using Kind = plan::WallLine::Kind;

/// Tiles given without a thickness still stand a little proud, so that they are seen.
constexpr double kLeastTileMm = 1.5;

/// Holes with the casing round them, so that a skirting ends at the architrave.
std::vector<FaceHole> holesWithCasings(const Face& face) {
    std::vector<FaceHole> holes = face.holes;
    for (FaceHole& hole : holes) {
        const double casing = hole.hosted_here ? hole.opening->casing_mm : hole.opening->casing_beyond_mm;
        hole.left_mm -= casing;
        hole.right_mm += casing;
        hole.top_mm += casing;
        if (hole.opening->sill_mm > 0) hole.bottom_mm -= casing;
    }
    return holes;
}

FaceRect lineArea(const Face& face, const plan::WallLine& line) {
    const double from = std::clamp(line.from_mm.value_or(0), 0.0, face.frame.length_mm);
    const double to = std::clamp(line.to_mm.value_or(face.frame.length_mm), from, face.frame.length_mm);
    return {from, to, line.bottom_mm, line.bottom_mm + line.height_mm};
}

/// Bars of a skirting or rail: the stretch of the line less every hole that reaches into its height.
void addBars(const Face& face, const plan::WallLine& line, meshes::Mesh& mesh) {
    const FaceRect area = lineArea(face, line);
    double from = area.left_mm;
    const auto addBar = [&](double to) {
        if (to - from < 1 || line.depth_mm <= 0 || line.height_mm <= 0) return;
        append(mesh, placed(bevelledBox({from, area.bottom_mm, 0}, {to, area.top_mm, line.depth_mm}, 4),
                            face.frame));
    };
    for (const FaceHole& hole : holesWithCasings(face)) {
        if (hole.top_mm <= area.bottom_mm || hole.bottom_mm >= area.top_mm) continue;
        addBar(std::min(hole.left_mm, area.right_mm));
        from = std::max(from, hole.right_mm);
    }
    addBar(area.right_mm);
}

/// Top, bottom and end edges of a field that stands proud of the wall.
void addFieldEdges(const Face& face, const FaceRect& area, double out, meshes::Mesh& mesh) {
    const auto at = [&](double u, double v, double w) { return toHouse(face.frame, {u, v, w}); };
    const double l = area.left_mm, r = area.right_mm, b = area.bottom_mm;
    const double tl = std::min(area.top_mm, topAt(face.outline, l));
    const double tr = std::min(area.top_mm, topAt(face.outline, r));
    addQuad(mesh, at(l, tl, out), at(r, tr, out), at(r, tr, 0), at(l, tl, 0));
    addQuad(mesh, at(l, b, 0), at(r, b, 0), at(r, b, out), at(l, b, out));
    addQuad(mesh, at(l, b, 0), at(l, b, out), at(l, tl, out), at(l, tl, 0));
    addQuad(mesh, at(r, b, out), at(r, b, 0), at(r, tr, 0), at(r, tr, out));
}

void addField(const Face& face, const plan::WallLine& line, meshes::Mesh& mesh) {
    const FaceRect area = lineArea(face, line);
    if (area.right_mm - area.left_mm < 1 || line.height_mm <= 0) return;
    const double out = std::max(line.depth_mm, kLeastTileMm);
    for (const auto& polygon : cutFace(face.outline, area, face.holes))
        addPolygon(mesh, face.frame, polygon, out, Seen::FromRoom);
    addFieldEdges(face, area, out, mesh);
}

} // namespace

void addLines(const Face& face, std::vector<FabricPart>& parts) {
    for (const plan::WallLine& line : face.wall->lines) {
        const bool field = line.kind == Kind::Tiles || line.kind == Kind::Panel;
        const auto role = line.kind == Kind::Tiles   ? FabricPart::Role::Tiles
                          : line.kind == Kind::Panel ? FabricPart::Role::Panel
                                                     : FabricPart::Role::Skirting;
        FabricPart part = fabricPart(role, face);
        if (field)
            addField(face, line, part.mesh);
        else
            addBars(face, line, part.mesh);
        if (!part.mesh.empty()) parts.push_back(std::move(part));
    }
}

} // namespace gangway::geometry
