// What is wrong with the surface of a piece that comes from a file.
#pragma once

#include "meshes/meshes.hpp"

namespace gangway::meshes {

/// What keeps triangles from bounding a body, as the end of a sentence about their file: "is open: 12 edges
/// belong to one triangle only". Looked for in this order: nothing in it, larger than any furniture, more
/// triangles than are looked through, no thickness, open edges, triangles that pass through each other
/// (within one connected shell: bodies pushed into each other are usual). Corners nearer than 0.01 mm are
/// one. Empty when nothing is wrong. All parts together are one surface: files part them by colour.
std::string flawOf(const std::vector<Part>& parts);

/// Whether some edge of all these surfaces together belongs to one triangle only.
bool isOpen(const std::vector<const Mesh*>& meshes);

} // namespace gangway::meshes
