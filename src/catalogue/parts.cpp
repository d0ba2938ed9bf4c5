#include "catalogue/parts.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <tuple>

namespace gangway::catalogue {
namespace {

std::string finishName(const Catalogue& catalogue, const std::string& id) {
    const Finish* finish = catalogue.finish(id);
    return finish ? finish->name : id;
}

Part framePart(const Catalogue& catalogue, const plan::Plate& plate, const ComposedPlate& composed) {
    const std::string format = composed.format ? composed.format->name : plate.format;
    return {
        Part::Kind::Frame, "",
        fmt::format("frame, {}, {} gang{}", format, composed.gang_count, composed.gang_count == 1 ? "" : "s"),
        finishName(catalogue, composed.finish), 1};
}

Part gangPart(const Catalogue& catalogue, const Gang& gang) {
    const std::string finish = finishName(catalogue, gang.finish);
    if (gang.unknown) return {Part::Kind::Unknown, gang.label, "unknown module", finish, 1};
    if (gang.module == nullptr) return {Part::Kind::Blank, "", "blank", finish, 1};
    const auto kind = gang.module->kind == ModuleKind::Blank ? Part::Kind::Blank : Part::Kind::Module;
    return {kind, gang.module->code, gang.module->name, finish, 1};
}

Part boxPart(const BoxSpec& spec, double depth_mm) {
    const std::string size = spec.shape == BoxSpec::Shape::Round
                                 ? fmt::format("{:g} dia", spec.width_mm)
                                 : fmt::format("{:.4g} x {:.4g}", spec.width_mm, spec.height_mm);
    return {Part::Kind::Box, "", fmt::format("box, {}, {:.4g} deep", size, depth_mm), "", 1};
}

bool isSame(const Part& a, const Part& b) {
    return std::tie(a.kind, a.code, a.name, a.finish) == std::tie(b.kind, b.code, b.name, b.finish);
}

void add(std::vector<Part>& list, const Part& part) {
    const auto same = std::ranges::find_if(list, [&](const Part& other) { return isSame(other, part); });
    if (same == list.end())
        list.push_back(part);
    else
        same->count += part.count;
}

} // namespace

double boxDepth(const plan::Plate& plate, const ComposedPlate& composed) {
    if (composed.boxes.empty()) return 0;
    if (plate.box_depth_mm) return *plate.box_depth_mm;
    const double usual_mm = composed.boxes.front().spec.depth_mm;
    double need_mm = usual_mm;
    for (const Gang& gang : composed.gangs)
        if (gang.module != nullptr) need_mm = std::max(need_mm, gang.module->depth_mm);
    if (need_mm <= usual_mm || composed.format == nullptr) return need_mm;
    double next_mm = 0;
    for (const double made_mm : composed.format->depths_mm)
        if (made_mm >= need_mm && (next_mm == 0 || made_mm < next_mm)) next_mm = made_mm;
    return next_mm > 0 ? next_mm : need_mm;
}

std::vector<Part> parts(const Catalogue& catalogue, const plan::Plate& plate, const ComposedPlate& composed) {
    std::vector<Part> list{framePart(catalogue, plate, composed)};
    for (const Gang& gang : composed.gangs)
        add(list, gangPart(catalogue, gang));
    for (const Box& box : composed.boxes)
        add(list, boxPart(box.spec, boxDepth(plate, composed)));
    if (plate.barrier) list.push_back({Part::Kind::Barrier, "", "barrier in the box", "", 1});
    return list;
}

std::vector<Part> together(const std::vector<std::vector<Part>>& lists) {
    std::vector<Part> all;
    for (const std::vector<Part>& list : lists)
        for (const Part& part : list)
            add(all, part);
    std::ranges::sort(
        all, {}, [](const Part& part) { return std::tie(part.kind, part.name, part.code, part.finish); });
    return all;
}

} // namespace gangway::catalogue
