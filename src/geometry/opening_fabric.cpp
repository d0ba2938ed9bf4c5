// What stands in an opening: reveals, threshold, casings, frames, leaves with their handles, windows.
#include "geometry/shapes.hpp"
#include "geometry/wall_build.hpp"

#include <algorithm>

namespace gangway::geometry {
namespace {

using Kind = plan::Opening::Kind;
using Role = FabricPart::Role;

// Joinery sizes: common practice, no source.
constexpr double kCasingDepthMm = 16;
constexpr double kWindowFrameMm = 55;
constexpr double kWindowDepthMm = 70;
constexpr double kSashMm = 45;
constexpr double kGlassMm = 24;
constexpr double kWidePaneMm = 1100;
constexpr double kSillThickMm = 25;
constexpr double kSillEarMm = 30;
constexpr double kLeafAirMm = 4;
constexpr double kHandleHeightMm = 1050;
constexpr double kHandleFromEdgeMm = 65;
constexpr const char* kHandleColour = "#8F8E89";

bool isDoor(const plan::Opening& opening) {
    return opening.kind == Kind::HingedDoor || opening.kind == Kind::PocketDoor ||
           opening.kind == Kind::SlidingDoor || opening.kind == Kind::BarnDoor;
}

/// A sliding door to the outside is made of panes of glass and shown shut.
bool isGlazed(const plan::Opening& opening) {
    return opening.kind == Kind::Window || (opening.kind == Kind::SlidingDoor && opening.joins.empty());
}

/// Boxes on a face, given in (u, v, w).
class Joinery {
public:
    Joinery(const Face& face, Role role, const plan::Opening& opening)
        : part_(fabricPart(role, face, &opening)), frame_(face.frame) {}

    void add(Vec3 low, Vec3 high, double bevel = 2) {
        if (high.x - low.x < 0.5 || high.y - low.y < 0.5 || high.z - low.z < 0.5) return;
        append(part_.mesh, placed(bevelledBox(low, high, bevel), frame_));
    }
    /// Four bars round a rectangle, or three when it stands on the floor.
    void surround(const FaceRect& outer, double bar, double w_low, double w_high, bool with_bottom) {
        const double foot = outer.bottom_mm + (with_bottom ? bar : 0);
        add({outer.left_mm, outer.bottom_mm, w_low}, {outer.left_mm + bar, outer.top_mm, w_high});
        add({outer.right_mm - bar, outer.bottom_mm, w_low}, {outer.right_mm, outer.top_mm, w_high});
        add({outer.left_mm + bar, outer.top_mm - bar, w_low}, {outer.right_mm - bar, outer.top_mm, w_high});
        if (with_bottom)
            add({outer.left_mm + bar, outer.bottom_mm, w_low}, {outer.right_mm - bar, foot, w_high});
    }
    void colour(std::string value) { part_.colour = std::move(value); }
    void join(const meshes::Mesh& mesh) { append(part_.mesh, mesh); }
    void giveTo(std::vector<FabricPart>& parts) {
        if (!part_.mesh.empty()) parts.push_back(std::move(part_));
    }

private:
    FabricPart part_;
    Frame frame_;
};

FaceRect rectOf(const FaceHole& hole) {
    return {hole.left_mm, hole.right_mm, hole.bottom_mm, hole.top_mm};
}

void addReveals(const Face& face, const FaceHole& hole, std::vector<FabricPart>& parts) {
    FabricPart reveal = fabricPart(Role::Reveal, face, hole.opening);
    reveal.colour = face.wall->colour.empty() ? face.room->wall_colour : face.wall->colour;
    FabricPart floor = fabricPart(Role::Floor, face, hole.opening);
    const double l = hole.left_mm, r = hole.right_mm, b = hole.bottom_mm, t = hole.top_mm,
                 d = -hole.through_mm;
    const auto at = [&](double u, double v, double w) { return toHouse(face.frame, {u, v, w}); };
    addQuad(reveal.mesh, at(l, b, d), at(l, t, d), at(l, t, 0), at(l, b, 0));
    addQuad(reveal.mesh, at(r, b, 0), at(r, t, 0), at(r, t, d), at(r, b, d));
    addQuad(reveal.mesh, at(l, t, d), at(r, t, d), at(r, t, 0), at(l, t, 0));
    addQuad(b > 0 ? reveal.mesh : floor.mesh, at(l, b, 0), at(r, b, 0), at(r, b, d), at(l, b, d));
    for (FabricPart* part : {&reveal, &floor})
        if (!part->mesh.empty()) parts.push_back(std::move(*part));
}

/// Architrave round the hole on this face; under a window it stops at the sill.
void addCasing(const Face& face, const FaceHole& hole, std::vector<FabricPart>& parts) {
    const double casing = hole.hosted_here ? hole.opening->casing_mm : hole.opening->casing_beyond_mm;
    if (casing <= 0) return;
    FaceRect outer = rectOf(hole);
    outer.left_mm -= casing;
    outer.right_mm += casing;
    outer.top_mm += casing;
    Joinery joinery(face, Role::Casing, *hole.opening);
    joinery.surround(outer, casing, 0, kCasingDepthMm, false);
    joinery.giveTo(parts);
}

/// The handle of a leaf on both of its sides: a rose and a lever towards the hinge.
meshes::Mesh handles(const Leaf& leaf) {
    const Vec2 along2 = (leaf.open_mm - leaf.hinge_mm) * (1 / std::max(leaf.width_mm, 1.0));
    const Vec3 along{along2.x, along2.y, 0};
    const Vec3 side{-along2.y, along2.x, 0};
    const Vec2 middle2 = (leaf.standing_mm[0] + leaf.standing_mm[3]) * 0.5;
    const double height = std::clamp(kHandleHeightMm, leaf.bottom_mm, leaf.top_mm);
    const Vec3 middle = Vec3{middle2.x, middle2.y, height} + along * (leaf.width_mm - kHandleFromEdgeMm);
    meshes::Mesh mesh;
    for (const double sign : {-1.0, 1.0}) {
        const Vec3 out = side * sign;
        const Vec3 face = middle + out * (leaf.thickness_mm / 2);
        append(mesh, cylinder(face, face + out * 8, 26, 20));
        append(mesh, cylinder(face + out * 8, face + out * 48, 9, 12));
        append(mesh, cylinder(face + out * 48 + along * 9, face + out * 48 - along * 115, 9, 12));
    }
    return mesh;
}

void addLeaves(const Face& face, const FaceHole& hole, std::vector<FabricPart>& parts) {
    for (const Leaf& leaf : doorLeaves(*face.house, *hole.opening)) {
        if (leaf.standing_mm.empty()) continue;
        Joinery panel(face, Role::Leaf, *hole.opening);
        panel.join(extrude(leaf.standing_mm, leaf.bottom_mm + kLeafAirMm, leaf.top_mm - kLeafAirMm));
        panel.giveTo(parts);
        if (hole.opening->kind == Kind::PocketDoor) continue; // its handles are let in flush
        Joinery lever(face, Role::Leaf, *hole.opening);
        lever.colour(kHandleColour);
        lever.join(handles(leaf));
        lever.giveTo(parts);
    }
}

/// Frame, sashes and panes. The frame stands back from the face by the reveal, as far as the wall allows.
void addWindow(const Face& face, const FaceHole& hole, std::vector<FabricPart>& parts) {
    const plan::Opening& opening = *hole.opening;
    const double bar = opening.frame_mm > 0 ? opening.frame_mm : kWindowFrameMm;
    const double depth = std::min(kWindowDepthMm, std::max(hole.through_mm, 20.0));
    const double front = -std::clamp(opening.reveal_mm, 0.0, std::max(hole.through_mm - depth, 0.0));
    Joinery frame(face, Role::Frame, opening);
    Joinery glass(face, Role::Glass, opening);
    FaceRect inner = rectOf(hole);
    frame.surround(inner, bar, front - depth, front, true);
    inner = {inner.left_mm + bar, inner.right_mm - bar, inner.bottom_mm + bar, inner.top_mm - bar};
    const double width = inner.right_mm - inner.left_mm;
    const bool slides = opening.kind == Kind::SlidingDoor;
    const int panes = std::max(slides ? 2 : 1, static_cast<int>(width / kWidePaneMm) + (slides ? 0 : 1));
    for (int i = 0; i < panes; ++i) {
        const FaceRect sash{inner.left_mm + width * i / panes, inner.left_mm + width * (i + 1) / panes,
                            inner.bottom_mm, inner.top_mm};
        const double setback = slides && i % 2 == 1 ? depth / 2 : 8; // sliding panes run on two tracks
        frame.surround(sash, kSashMm, front - setback - 30, front - setback, true);
        const double pane = front - setback - 15;
        glass.add({sash.left_mm + kSashMm, sash.bottom_mm + kSashMm, pane - kGlassMm / 2},
                  {sash.right_mm - kSashMm, sash.top_mm - kSashMm, pane + kGlassMm / 2}, 0);
    }
    frame.giveTo(parts);
    glass.giveTo(parts);
}

void addSillBoard(const Face& face, const FaceHole& hole, std::vector<FabricPart>& parts) {
    const plan::Opening& opening = *hole.opening;
    if (opening.sill_mm <= 0 || (opening.sill_board_mm <= 0 && opening.reveal_mm <= 0)) return;
    Joinery board(face, Role::SillBoard, opening);
    const double back = -std::min(opening.reveal_mm, hole.through_mm);
    board.add({hole.left_mm, hole.bottom_mm - kSillThickMm + 1, back}, {hole.right_mm, hole.bottom_mm + 1, 0},
              0);
    board.add({std::max(hole.left_mm - kSillEarMm, 0.0), hole.bottom_mm - kSillThickMm + 1, 0},
              {std::min(hole.right_mm + kSillEarMm, face.frame.length_mm), hole.bottom_mm + 1,
               std::max(opening.sill_board_mm, 0.0)},
              4);
    board.giveTo(parts);
}

/// A hatch is a flap flush in its hole.
void addHatch(const Face& face, const FaceHole& hole, std::vector<FabricPart>& parts) {
    Joinery flap(face, Role::Leaf, *hole.opening);
    flap.add({hole.left_mm + 3, hole.bottom_mm + 3, -20}, {hole.right_mm - 3, hole.top_mm - 3, 2}, 2);
    flap.giveTo(parts);
}

void addHosted(const Face& face, const FaceHole& hole, std::vector<FabricPart>& parts) {
    const plan::Opening& opening = *hole.opening;
    addReveals(face, hole, parts);
    if (isGlazed(opening))
        addWindow(face, hole, parts);
    else if (isDoor(opening)) {
        if (opening.frame_mm > 0) {
            Joinery lining(face, Role::Frame, opening);
            lining.surround(rectOf(hole), opening.frame_mm, -hole.through_mm, 0, false);
            lining.giveTo(parts);
        }
        addLeaves(face, hole, parts);
    } else if (opening.kind == Kind::Hatch)
        addHatch(face, hole, parts);
    if (opening.kind == Kind::Window) addSillBoard(face, hole, parts);
}

} // namespace

void addOpenings(const Face& face, std::vector<FabricPart>& parts) {
    for (const FaceHole& hole : face.holes) {
        addCasing(face, hole, parts);
        if (hole.hosted_here) addHosted(face, hole, parts);
    }
}

} // namespace gangway::geometry
