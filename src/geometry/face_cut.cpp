// Cutting rectangles out of a wall face, and the small steps by which flat faces become triangles.
#include "geometry/wall_build.hpp"

#include <algorithm>

namespace gangway::geometry {
namespace {

void sortUnique(std::vector<double>& values) {
    std::ranges::sort(values);
    values.erase(std::unique(values.begin(), values.end()), values.end());
}

/// The part of a cell under the line from (left, top_left) to (right, top_right).
std::vector<Vec2> underLine(const FaceRect& cell, double top_left, double top_right) {
    const auto lineAt = [&](double u) {
        return top_left + (top_right - top_left) * (u - cell.left_mm) / (cell.right_mm - cell.left_mm);
    };
    const std::vector<Vec2> corners = {{cell.left_mm, cell.bottom_mm},
                                       {cell.right_mm, cell.bottom_mm},
                                       {cell.right_mm, cell.top_mm},
                                       {cell.left_mm, cell.top_mm}};
    std::vector<Vec2> kept;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Vec2 a = corners[i];
        const Vec2 b = corners[(i + 1) % corners.size()];
        const double over_a = a.y - lineAt(a.x);
        const double over_b = b.y - lineAt(b.x);
        if (over_a <= 0) kept.push_back(a);
        if ((over_a < 0 && over_b > 0) || (over_a > 0 && over_b < 0))
            kept.push_back(a + (b - a) * (over_a / (over_a - over_b)));
    }
    return kept.size() < 3 || signedArea(kept) <= 0 ? std::vector<Vec2>{} : kept;
}

bool inHole(const FaceRect& cell, const FaceHole& hole) {
    return hole.left_mm <= cell.left_mm && hole.right_mm >= cell.right_mm &&
           hole.bottom_mm <= cell.bottom_mm && hole.top_mm >= cell.top_mm;
}

} // namespace

double topAt(const std::vector<Vec2>& outline, double u_mm) {
    // Corners from the third on run along the top from right to left.
    if (outline.size() < 4) return 0;
    if (u_mm >= outline[2].x) return outline[2].y;
    for (std::size_t i = 2; i + 1 < outline.size(); ++i) {
        const Vec2 right = outline[i];
        const Vec2 left = outline[i + 1];
        if (u_mm < left.x || right.x <= left.x) continue;
        return left.y + (right.y - left.y) * (u_mm - left.x) / (right.x - left.x);
    }
    return outline.back().y;
}

std::vector<std::vector<Vec2>> cutFace(const std::vector<Vec2>& outline, const FaceRect& area,
                                       const std::vector<FaceHole>& holes) {
    std::vector<double> us = {area.left_mm, area.right_mm};
    std::vector<double> vs = {area.bottom_mm, area.top_mm};
    const auto addWithin = [](std::vector<double>& values, double value, double low, double high) {
        if (value > low && value < high) values.push_back(value);
    };
    for (std::size_t i = 2; i < outline.size(); ++i)
        addWithin(us, outline[i].x, area.left_mm, area.right_mm);
    for (const FaceHole& hole : holes) {
        addWithin(us, hole.left_mm, area.left_mm, area.right_mm);
        addWithin(us, hole.right_mm, area.left_mm, area.right_mm);
        addWithin(vs, hole.bottom_mm, area.bottom_mm, area.top_mm);
        addWithin(vs, hole.top_mm, area.bottom_mm, area.top_mm);
    }
    sortUnique(us);
    sortUnique(vs);
    std::vector<std::vector<Vec2>> polygons;
    for (std::size_t i = 0; i + 1 < us.size(); ++i) {
        for (std::size_t j = 0; j + 1 < vs.size(); ++j) {
            const FaceRect cell{us[i], us[i + 1], vs[j], vs[j + 1]};
            if (std::ranges::any_of(holes, [&](const FaceHole& hole) { return inHole(cell, hole); }))
                continue;
            auto polygon = underLine(cell, topAt(outline, cell.left_mm), topAt(outline, cell.right_mm));
            if (!polygon.empty()) polygons.push_back(std::move(polygon));
        }
    }
    return polygons;
}

FabricPart fabricPart(FabricPart::Role role, const Face& face, const plan::Opening* opening) {
    FabricPart part;
    part.role = role;
    part.room = face.room->id;
    part.wall = face.wall->id;
    if (opening != nullptr) part.opening = opening->id;
    return part;
}

void addPolygon(meshes::Mesh& mesh, const Frame& frame, const std::vector<Vec2>& polygon, double w_mm,
                Seen seen) {
    const auto first = static_cast<std::uint32_t>(mesh.positions_mm.size());
    const Vec3 normal = seen == Seen::FromRoom ? frame.w : frame.w * -1;
    for (const Vec2 p : polygon) {
        mesh.positions_mm.push_back(toHouse(frame, {p.x, p.y, w_mm}));
        mesh.normals.push_back(normal);
    }
    for (std::uint32_t i = 1; i + 1 < polygon.size(); ++i) {
        if (seen == Seen::FromRoom)
            mesh.triangles.push_back({first, first + i, first + i + 1});
        else
            mesh.triangles.push_back({first, first + i + 1, first + i});
    }
}

void addQuad(meshes::Mesh& mesh, Vec3 a, Vec3 b, Vec3 c, Vec3 d) {
    const Vec3 across = cross(c - a, d - b);
    const double size = length(across);
    if (size == 0) return;
    const auto first = static_cast<std::uint32_t>(mesh.positions_mm.size());
    mesh.positions_mm.insert(mesh.positions_mm.end(), {a, b, c, d});
    mesh.normals.insert(mesh.normals.end(), 4, across * (1 / size));
    mesh.triangles.push_back({first, first + 1, first + 2});
    mesh.triangles.push_back({first, first + 2, first + 3});
}

} // namespace gangway::geometry
