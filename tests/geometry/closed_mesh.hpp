// Whether a mesh is the closed surface of a body: edges, volume, normals.
#pragma once

#include "meshes/meshes.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>
#include <utility>

namespace gangway::test {

/// Edges (points welded to a ten-thousandth of a mm) that are not run through as often one way as the other.
inline int openEdges(const meshes::Mesh& mesh) {
    using Key = std::tuple<long long, long long, long long>;
    const auto key = [](plan::Vec3 p) {
        return Key{std::llround(p.x * 1e4), std::llround(p.y * 1e4), std::llround(p.z * 1e4)};
    };
    std::map<std::pair<Key, Key>, int> balance;
    for (const auto& t : mesh.triangles) {
        for (std::size_t k = 0; k < 3; ++k) {
            const Key a = key(mesh.positions_mm[t[k]]);
            const Key b = key(mesh.positions_mm[t[(k + 1) % 3]]);
            if (a == b) continue;
            if (a < b)
                ++balance[{a, b}];
            else
                --balance[{b, a}];
        }
    }
    return static_cast<int>(
        std::ranges::count_if(balance, [](const auto& edge) { return edge.second != 0; }));
}

/// Volume by the divergence theorem, taken about the first point so that far-away bodies lose no digits.
inline double volume(const meshes::Mesh& mesh) {
    if (mesh.empty()) return 0;
    const plan::Vec3 about = mesh.positions_mm.front();
    double sum = 0;
    for (const auto& t : mesh.triangles)
        sum += dot(mesh.positions_mm[t[0]] - about,
                   cross(mesh.positions_mm[t[1]] - about, mesh.positions_mm[t[2]] - about)) /
               6;
    return sum;
}

/// Least cosine between a vertex normal and its triangle's own; -1 for a normal that is not of unit length.
inline double worstNormal(const meshes::Mesh& mesh) {
    double worst = 1;
    for (const auto& t : mesh.triangles) {
        const plan::Vec3 n = cross(mesh.positions_mm[t[1]] - mesh.positions_mm[t[0]],
                                   mesh.positions_mm[t[2]] - mesh.positions_mm[t[0]]);
        const double size = length(n);
        if (size < 1e-3) continue;
        for (const std::uint32_t i : t) {
            if (std::abs(length(mesh.normals[i]) - 1) > 1e-6) return -1;
            worst = std::min(worst, dot(mesh.normals[i], n) / size);
        }
    }
    return worst;
}

} // namespace gangway::test
