// Furniture before a wall as a quiet ghost: near pieces hide far ones, each with its name where there is
// room.
#include "geometry/furniture.hpp"
#include "sheets/elevation_view.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kSmallestSolid = 1.0; ///< on paper; smaller ones (handles, feet) are left out

/// The outline of one solid on the wall, and how near it is to the viewer.
struct Shape {
    const plan::Furniture* piece = nullptr;
    std::vector<Pt> outline;
    double out_mm = 0;     ///< largest distance from the wall
    std::size_t order = 0; ///< as found, for shapes equally far out
};

/// Convex hull, counter-clockwise (Andrew, Another efficient algorithm for convex hulls in two dimensions,
/// 1979).
std::vector<Pt> convexHull(std::vector<Pt> points) {
    const auto order = [](Pt a, Pt b) { return std::tie(a.x, a.y) < std::tie(b.x, b.y); };
    std::sort(points.begin(), points.end(), order);
    points.erase(std::unique(points.begin(), points.end()), points.end());
    if (points.size() < 3) return points;
    const auto turn = [](Pt o, Pt a, Pt b) { return (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x); };
    std::vector<Pt> hull;
    const auto chain = [&](auto first, auto last) {
        const std::size_t start = hull.size();
        for (auto it = first; it != last; ++it) {
            while (hull.size() >= start + 2 && turn(hull[hull.size() - 2], hull.back(), *it) <= 1e-9)
                hull.pop_back();
            hull.push_back(*it);
        }
        hull.pop_back();
    };
    chain(points.begin(), points.end());
    chain(points.rbegin(), points.rend());
    return hull;
}

Rect extentOfOutline(const std::vector<Pt>& outline) {
    Rect rect{outline.front().x, outline.front().y, outline.front().x, outline.front().y};
    for (Pt p : outline)
        rect = united(rect, {p.x, p.y, p.x, p.y});
    return rect;
}

std::vector<Shape> shapesOf(const plan::Furniture& piece, const WallView& view, OnPaper paper) {
    std::vector<Shape> shapes;
    for (const geometry::Solid& solid : geometry::furnitureSolids(piece, view.base()).solids) {
        Shape shape;
        shape.piece = &piece;
        std::vector<Pt> points;
        for (const auto& position : solid.mesh.positions_mm) {
            const auto uvw = geometry::toFrame(view.frame, position);
            points.push_back(paper.at({std::clamp(uvw.x, 0.0, view.length_mm()), uvw.y}));
            shape.out_mm = std::max(shape.out_mm, uvw.z);
        }
        shape.outline = convexHull(std::move(points));
        if (shape.outline.size() < 3) continue;
        const Rect extent = extentOfOutline(shape.outline);
        if (extent.width() < kSmallestSolid || extent.height() < kSmallestSolid) {
            // Thin boards stay (a worktop is seen as a line), crumbs go.
            if (std::max(extent.width(), extent.height()) < 4 * kSmallestSolid) continue;
        }
        shapes.push_back(std::move(shape));
    }
    return shapes;
}

/// True when some line ends inside a word.
bool breaksAWord(const std::string& name, const std::vector<std::string>& lines) {
    std::string joined;
    for (const std::string& line : lines)
        joined += (joined.empty() ? "" : " ") + line;
    return joined != name;
}

/// The name in lines across the piece, else upright along it: no word is broken.
Label nameLabel(const plan::Furniture& piece, const Rect& extent, OnPaper paper) {
    Label label;
    label.within = extent.grown(-0.6);
    label.layer = "furniture";
    label.id = piece.id;
    label.colour = drawing::kGhost;
    if (paper.compact) label.height_mm = kValueText;
    label.lines = wrapped(piece.name, label.height_mm, std::max(label.within.width(), 1.0));
    if (!breaksAWord(piece.name, label.lines)) return label;
    label.lines = {piece.name};
    label.turn_deg = 90;
    return label;
}

/// A piece that plates of this wall are mounted on but that stands further out: its outlines alone, which
/// hide nothing.
void drawFarHosts(std::vector<Item>& items, std::vector<Label>& labels, const WallView& view, OnPaper paper,
                  const std::vector<const plan::Furniture*>& drawn) {
    constexpr Pen kFar{0.18, drawing::LineType::LongDashDoubleDot, drawing::kGhost};
    std::vector<const plan::Furniture*> done = drawn;
    for (const Mounted& item : view.mounted) {
        if (item.out_mm <= kFurnitureReach || item.plate == nullptr) continue;
        const plan::Furniture* host = view.house->index().furniture(item.plate->host.furniture);
        if (host == nullptr || std::find(done.begin(), done.end(), host) != done.end()) continue;
        done.push_back(host);
        const plan::Furniture& piece = *host;
        const auto shapes = shapesOf(piece, view, paper);
        if (shapes.empty()) continue;
        Rect extent = extentOfOutline(shapes.front().outline);
        for (const Shape& shape : shapes) {
            Ink(items, "furniture", piece.id).polyline(shape.outline, true, kFar);
            extent = united(extent, extentOfOutline(shape.outline));
        }
        labels.push_back(nameLabel(piece, extent, paper));
    }
}

} // namespace

void drawFurniture(std::vector<Item>& items, std::vector<Label>& labels, const WallView& view,
                   OnPaper paper) {
    std::vector<Shape> shapes;
    std::vector<const plan::Furniture*> drawn;
    for (const auto& silhouette :
         geometry::silhouettes(view.house->index(), *view.room, view.wall, kFurnitureReach, view.base())) {
        auto own = shapesOf(*silhouette.piece, view, paper);
        if (own.empty()) continue;
        Rect extent = extentOfOutline(own.front().outline);
        for (const Shape& shape : own)
            extent = united(extent, extentOfOutline(shape.outline));
        labels.push_back(nameLabel(*silhouette.piece, extent, paper));
        drawn.push_back(silhouette.piece);
        shapes.insert(shapes.end(), std::make_move_iterator(own.begin()), std::make_move_iterator(own.end()));
    }
    // Far to near, so that what is nearer to the viewer covers what is behind it.
    for (std::size_t i = 0; i < shapes.size(); ++i)
        shapes[i].order = i;
    std::sort(shapes.begin(), shapes.end(), [](const Shape& a, const Shape& b) {
        return std::tie(a.out_mm, a.order) < std::tie(b.out_mm, b.order);
    });
    for (const Shape& shape : shapes) {
        Ink ink(items, "furniture", shape.piece->id);
        ink.fill(shape.outline, drawing::kWhite);
        ink.polyline(shape.outline, true, kGhostPen);
    }
    drawFarHosts(items, labels, view, paper, drawn);
}

} // namespace gangway::sheets
