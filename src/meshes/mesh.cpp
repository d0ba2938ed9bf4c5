#include "meshes/meshes.hpp"

namespace gangway::meshes {

void append(Mesh& a, const Mesh& b) {
    const auto shift = static_cast<std::uint32_t>(a.positions_mm.size());
    a.positions_mm.insert(a.positions_mm.end(), b.positions_mm.begin(), b.positions_mm.end());
    a.normals.insert(a.normals.end(), b.normals.begin(), b.normals.end());
    for (const auto& t : b.triangles)
        a.triangles.push_back({t[0] + shift, t[1] + shift, t[2] + shift});
}

} // namespace gangway::meshes
