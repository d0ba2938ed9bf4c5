// Rooms: outline, columns, wall lines. Their ceilings are in validate_ceilings.cpp.
#include "plan/number_text.hpp"
#include "plan/polygon_checks.hpp"
#include "plan/validation.hpp"
#include "plan/wall_names.hpp"

#include <algorithm>

namespace gangway::plan {

namespace {

std::string at(Vec2 point) {
    return fmt::format("[{}, {}]", shownNumber(point.x), shownNumber(point.y));
}

/// What outlines and columns must both be. False when nothing further can be said about the polygon.
bool validatePolygon(Validation& v, const std::vector<Vec2>& polygon, const std::string& pointer,
                     const std::string& subject) {
    if (polygon.size() < 3) {
        v.error(pointer, fmt::format("{} has {} corners; give at least 3", subject, polygon.size()));
        return false;
    }
    if (const auto edge = zeroEdge(polygon)) {
        const std::size_t next = (*edge + 1) % polygon.size();
        v.error(fmt::format("{}/{}", pointer, next),
                fmt::format("{}: corners {} and {} are both at {}; remove one of them", subject, *edge + 1,
                            next + 1, at(polygon[next])));
        return false;
    }
    if (const auto edges = crossingEdges(polygon)) {
        const auto [i, j] = *edges;
        v.error(fmt::format("{}/{}", pointer, j),
                fmt::format(
                    "{} crosses or touches itself: the edge from corner {} meets the edge from corner {}; "
                    "list the corners in the order one walks past them",
                    subject, i + 1, j + 1));
        return false;
    }
    return true;
}

void validateColumns(Validation& v, const Room& room, const std::string& pointer,
                     const std::string& room_name) {
    for (std::size_t i = 0; i < room.columns.size(); ++i) {
        const std::vector<Vec2>& column = room.columns[i];
        const std::string place = fmt::format("{}/columns/{}", pointer, i);
        const std::string subject = fmt::format("{}: column {}", room_name, i + 1);
        if (!validatePolygon(v, column, place, subject)) continue;
        if (signedAreaOf(column) < 0)
            v.error(place,
                    fmt::format("{} is listed clockwise; reverse its corner list, columns run anti-clockwise",
                                subject));
        for (std::size_t c = 0; c < column.size(); ++c)
            if (!insideOrOn(room.outline, column[c], kPlayMm)) {
                v.error(fmt::format("{}/{}", place, c),
                        fmt::format("{}: corner {} at {} lies outside the room; move "
                                    "the column or draw it as part of the outline",
                                    subject, c + 1, at(column[c])));
                break;
            }
    }
}

void validateOutline(Validation& v, const Room& room, const std::string& pointer,
                     const std::string& subject) {
    if (!validatePolygon(v, room.outline, pointer + "/outline", subject + ": the outline")) return;
    if (signedAreaOf(room.outline) > 0)
        v.error(
            pointer + "/outline",
            fmt::format("{}: the outline is listed anti-clockwise; reverse the corner list, so that it runs "
                        "clockwise seen from above",
                        subject));
    validateColumns(v, room, pointer, subject);
}

void validateLine(Validation& v, const WallLine& line, const std::string& pointer, const std::string& subject,
                  double wall_length_mm) {
    const double from = line.from_mm.value_or(0);
    const double to = line.to_mm.value_or(wall_length_mm);
    const auto past = [&](double value) { return value < -kPlayMm || value > wall_length_mm + kPlayMm; };
    if (line.from_mm && past(from))
        v.error(pointer + "/from", fmt::format("{}: from {} lies off the wall; give 0 to {}", subject,
                                               shownNumber(from), shownNumber(wall_length_mm)));
    if (line.to_mm && past(to))
        v.error(pointer + "/to", fmt::format("{}: to {} lies off the wall; give 0 to {}", subject,
                                             shownNumber(to), shownNumber(wall_length_mm)));
    if (to <= from)
        v.error(pointer, fmt::format("{}: it runs from {} to {}; 'to' must be the larger", subject,
                                     shownNumber(from), shownNumber(to)));
    if (line.kind == WallLine::Kind::Tiles && (line.tile_width_mm <= 0 || line.tile_height_mm <= 0))
        v.error(pointer,
                fmt::format("{}: tiles need their size; add 'tile': [width, height] in mm", subject));
}

void validateWalls(Validation& v, const Room& room, const std::string& pointer, const std::string& subject) {
    const std::size_t edges = edgeCount(room);
    if (room.walls.size() != edges)
        v.error(
            pointer + "/walls",
            fmt::format(
                "{} has {} walls but {} edges (outline and columns); give one wall for each edge, or leave "
                "'walls' out",
                subject, room.walls.size(), edges));
    for (std::size_t w = 0; w < std::min(room.walls.size(), edges); ++w)
        for (std::size_t i = 0; i < room.walls[w].lines.size(); ++i)
            validateLine(v, room.walls[w].lines[i], fmt::format("{}/walls/{}/lines/{}", pointer, w, i),
                         fmt::format("{}, wall '{}': line {}", subject, room.walls[w].id, i + 1),
                         wallLength(room, w));
}

} // namespace

void validateRooms(Validation& v) {
    const Plan& plan = v.plan();
    for (std::size_t i = 0; i < plan.rooms.size(); ++i) {
        const Room& room = plan.rooms[i];
        if (!v.sound("rooms", i)) continue;
        const std::string pointer = fmt::format("/rooms/{}", i);
        const std::string subject = fmt::format("room '{}'", room.id);
        v.refers(plan.storeys, "storeys", room.storey, pointer + "/storey", subject, "storey");
        validateOutline(v, room, pointer, subject);
        validateWalls(v, room, pointer, subject);
        validateCeiling(v, room, pointer, subject);
    }
}

} // namespace gangway::plan
