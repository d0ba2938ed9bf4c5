// A piece of furniture as solids: by its kind's maker, or from its glTF file.
#include "geometry/furniture_maker.hpp"

#include "plan/furniture_kinds.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::geometry {
namespace {

MakeKind makerOf(std::string_view kind) {
    for (const auto look_up :
         {storageKind, kitchenKind, tableKind, seatKind, bedKind, bathKind, softKind, otherKind})
        if (const MakeKind make = look_up(kind)) return make;
    return nullptr;
}

void makeBox(Maker& maker) {
    maker.board("box", maker.main(tone::kPanel), Maker::Surface::Matt, maker.whole(), 4);
}

Block boundsOf(const std::vector<meshes::Part>& parts) {
    Block bounds{parts.front().mesh.positions_mm.front(), parts.front().mesh.positions_mm.front()};
    for (const meshes::Part& part : parts) {
        for (const Vec3 p : part.mesh.positions_mm) {
            bounds.low = {std::min(bounds.low.x, p.x), std::min(bounds.low.y, p.y),
                          std::min(bounds.low.z, p.z)};
            bounds.high = {std::max(bounds.high.x, p.x), std::max(bounds.high.y, p.y),
                           std::max(bounds.high.z, p.z)};
        }
    }
    return bounds;
}

/// The file's triangles set down on the middle of the footprint. The file's own size holds: a plan states the
/// size for those who read it, and stretching a model would falsify what it covers.
std::string addFile(const plan::Furniture& piece, const std::filesystem::path& base, Maker& maker) {
    const auto parts = meshes::readGltf(base / piece.file);
    if (!parts) return parts.error();
    const Block bounds = boundsOf(*parts);
    const Vec3 foot{(bounds.low.x + bounds.high.x) / 2, (bounds.low.y + bounds.high.y) / 2, bounds.low.z};
    for (const meshes::Part& part : *parts) {
        meshes::Mesh mesh = part.mesh;
        for (Vec3& p : mesh.positions_mm)
            p = p - foot;
        maker.add(part.name, piece.colour.empty() ? part.colour : piece.colour, Maker::Surface::Matt, mesh);
    }
    return {};
}

} // namespace

double Maker::value(std::string_view key) const {
    return plan::furnitureValue(piece_, key);
}

int Maker::count(std::string_view key) const {
    return static_cast<int>(std::lround(std::clamp(value(key), 0.0, 200.0)));
}

void Maker::add(std::string name, std::string colour, Surface surface, const meshes::Mesh& local) {
    if (local.empty()) return;
    const auto move = [this](Vec3 p) { return fromLocal(piece_, p); };
    solids_.push_back({std::move(name), std::move(colour), surface, placed(local, move)});
}

void Maker::board(std::string name, std::string colour, Surface surface, Block block, double bevel_mm) {
    const Vec3 size = block.high - block.low;
    if (std::min({size.x, size.y, size.z}) < 0.1) return;
    add(std::move(name), std::move(colour), surface, bevelledBox(block.low, block.high, bevel_mm));
}

void Maker::pad(std::string name, std::string colour, Block block, double radius_mm, Surface surface) {
    const Vec3 size = block.high - block.low;
    if (std::min({size.x, size.y, size.z}) < 1) return;
    add(std::move(name), std::move(colour), surface, cushion(block.low, block.high, radius_mm));
}

void Maker::rod(std::string name, std::string colour, Surface surface, Vec3 from, Vec3 to, double radius_mm,
                int sides) {
    if (length(to - from) < 0.1) return;
    add(std::move(name), std::move(colour), surface, cylinder(from, to, radius_mm, sides));
}

MakeKind findKind(std::span<const KindEntry> table, std::string_view kind) {
    const auto found = std::ranges::find(table, kind, &KindEntry::kind);
    return found == table.end() ? nullptr : found->make;
}

FurnitureSolids furnitureSolids(const plan::Furniture& piece, const std::filesystem::path& base) {
    FurnitureSolids made;
    Maker maker(piece, made.solids);
    if (piece.kind == "gltf") {
        made.problem = addFile(piece, base, maker);
        if (!made.problem.empty()) makeBox(maker);
        return made;
    }
    const MakeKind make = makerOf(piece.kind);
    (make == nullptr ? &makeBox : make)(maker);
    if (made.solids.empty()) makeBox(maker);
    return made;
}

} // namespace gangway::geometry
