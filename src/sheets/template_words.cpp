#include "sheets/template_words.hpp"

#include "catalogue/parts.hpp"
#include "drawing/dimensions.hpp"

#include <cmath>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

using Kind = Surface::Kind;

/// Sizes from the catalogue, to a tenth of a mm: 115.9 of 4 9/16 inches.
std::string size(double value_mm) {
    return fmt::format("{:g}", std::round(value_mm * 10) / 10);
}

/// Two figures only where there are several rows or columns of boxes with one distance between them.
std::string pitchInWords(const Mounted& item) {
    const auto* format = item.face.format;
    if (format == nullptr || item.face.gang_count < 2) return {};
    if (item.face.boxes.size() < 2) return ", modules at " + size(format->pitch_mm);
    if (!format->grid.empty()) return ", pitch " + size(format->pitch_mm);
    return fmt::format(", pitch {} × {}", item.face.boxes.size() - 1, size(format->pitch_mm));
}

std::string wallDatum(const House& house, const plan::Room& room, const Surface& surface, double v_mm,
                      std::size_t lines) {
    const plan::Wall& wall = room.walls[surface.wall];
    const Neighbour left = neighbourOf(room, surface.wall, End::Left);
    std::string words = fmt::format("u from the finished left corner (wall {})", room.walls[left.wall].id);
    if (left.build_up_mm > 0 && left.towards_viewer)
        words += fmt::format(", from its bare face add {}", size(left.build_up_mm));
    words += wall.build_up.empty()
                 ? ". Finish on this face not stated."
                 : fmt::format(". Bare face {} behind the finished one.", size(thicknessOf(wall.build_up)));
    const plan::Storey* storey = plan::findStorey(house.plan(), room.storey);
    if (storey != nullptr && storey->site_line_mm) {
        const double over = v_mm - *storey->site_line_mm;
        words += fmt::format(" {} {}{} from the site level line, which is {} above FFL.",
                             lines > 1 ? "Upper line" : "Level", over > 0.25 ? "+" : "",
                             drawing::number(over), drawing::number(*storey->site_line_mm));
    }
    return words;
}

} // namespace

TemplateLine lineWords(const Surface& surface) {
    if (surface.upright()) return {"level", "above FFL", "UP"};
    if (surface.kind == Kind::Furniture) return {"left to right", "from front", "BACK"};
    return {"east-west", "north", "NORTH"};
}

std::string cutInWords(const catalogue::BoxSpec& spec) {
    if (spec.shape == catalogue::BoxSpec::Shape::Round)
        return "Ø" + size(spec.drill_mm > 0 ? spec.drill_mm : spec.width_mm);
    return fmt::format("{} × {}", size(spec.width_mm), size(spec.height_mm));
}

std::string boxesInWords(const Mounted& item) {
    const std::string plate = fmt::format("plate {} × {}", size(item.width_mm), size(item.height_mm));
    const auto& boxes = item.face.boxes;
    if (boxes.empty()) return "no box; " + plate;
    const catalogue::BoxSpec& spec = boxes.front().spec;
    std::string box = spec.shape == catalogue::BoxSpec::Shape::Round
                          ? "Ø" + size(spec.width_mm)
                          : fmt::format("{} × {}", size(spec.width_mm), size(spec.height_mm));
    if (spec.shape == catalogue::BoxSpec::Shape::Round && spec.drill_mm > 0 && spec.drill_mm != spec.width_mm)
        box += ", drilled Ø" + size(spec.drill_mm);
    return fmt::format("{} {} {}, {} deep{}; {}", boxes.size(), boxes.size() == 1 ? "box" : "boxes", box,
                       size(catalogue::boxDepth(*item.plate, item.face)), pitchInWords(item), plate);
}

std::string datumInWords(const House& house, const plan::Room& room, const Surface& surface, double v_mm,
                         std::size_t lines) {
    switch (surface.kind) {
    case Kind::Wall:
        return wallDatum(house, room, surface, v_mm, lines);
    case Kind::Floor:
        return "u east and the line north of the south-west corner of the room's extent. Seen from above.";
    case Kind::Ceiling:
        return "u east and the line north of the south-west corner of the room's extent. Seen from below: "
               "east is to the left.";
    case Kind::Furniture:
        break;
    }
    return surface.upright()
               ? "u from the left edge of this face of the piece, seen from outside it."
               : "u from the left edge of this face of the piece, the line from its front edge.";
}

std::string roomDatumInWords(const House& house, const plan::Room& room) {
    const plan::Storey* storey = plan::findStorey(house.plan(), room.storey);
    const double build_up_mm = thicknessOf(room.floor_build_up);
    return fmt::format("True size, seen from inside the room. Positions are to finished faces, heights above "
                       "FFL, the finished "
                       "floor level{}{}. Check two numbers on the wall before drilling. Dimensions in mm.",
                       storey != nullptr ? " of: " + storey->name : "",
                       build_up_mm > 0 ? fmt::format(" ({} above the slab)", size(build_up_mm))
                                       : " (build-up not stated)");
}

} // namespace gangway::sheets
