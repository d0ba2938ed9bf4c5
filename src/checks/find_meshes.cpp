// Pieces from files that are no sound bodies: what they are judged by instead is said.
#include "checks/comfort.hpp"

#include "meshes/flaws.hpp"

#include <fmt/format.h>

namespace gangway::checks {

void findMeshes(const Facts& facts, const plan::Room& room, Findings& findings) {
    for (const plan::Furniture* piece : facts.house().furnitureIn(room.id)) {
        if (piece->kind != "gltf") continue;
        const auto parts = meshes::readGltf(facts.base() / piece->file);
        const std::string flaw = parts ? meshes::flawOf(*parts) : parts.error();
        if (flaw.empty()) continue;
        plan::Finding finding;
        finding.rule = "mesh-hull";
        finding.severity = plan::Severity::Hint;
        finding.objects = {piece->id};
        finding.place_mm = plan::Vec3{piece->at_mm.x, piece->at_mm.y, piece->bottom_mm};
        finding.message =
            parts ? fmt::format("{} in {}: its file '{}' {}. It is judged by its hull.", pieceName(*piece),
                                roomName(facts, room.id), piece->file, flaw)
                  : fmt::format("{} in {} can't be read: {}. It is judged as a box of its stated size.",
                                pieceName(*piece), roomName(facts, room.id), flaw);
        finding.source = "geometry of the plan";
        finding.remedy = "Save the model as one closed body, or use a kind of furniture of the program.";
        findings.push_back(std::move(finding));
    }
}

} // namespace gangway::checks
