// Aligning and spacing plates that are there.
#include "edit/arrange.hpp"

#include "edit/number_shown.hpp"
#include "edit/staying.hpp"
#include "edit/wall_marks.hpp"
#include "geometry/frames.hpp"
#include "geometry/furniture.hpp"
#include "geometry/wall_hit.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace gangway::edit {
namespace {

using detail::nameOf;
using Plates = std::vector<const plan::Plate*>;

double& coordinate(plan::Host& host, Along along) {
    return along == Along::U ? host.u_mm : host.v_mm;
}
double coordinate(const plan::Host& host, Along along) {
    return along == Along::U ? host.u_mm : host.v_mm;
}

std::optional<std::string> onOneHost(const Plates& plates) {
    const auto elsewhere = std::ranges::find_if(plates, [&](const plan::Plate* plate) {
        return plate->room != plates.front()->room || !detail::sameHost(plate->host, plates.front()->host);
    });
    if (elsewhere == plates.end()) return std::nullopt;
    return fmt::format("{} and {} are not on one wall or face", nameOf(*plates.front()), nameOf(**elsewhere));
}

/// Centres of a row, left to right.
std::vector<double> rowOf(int count, double from_mm, double to_mm, RowEnds ends) {
    const double low = std::min(from_mm, to_mm);
    const double length = std::abs(to_mm - from_mm);
    std::vector<double> places;
    for (int i = 0; i < count; ++i) {
        const bool half = ends == RowEnds::HalfSpaces || count == 1;
        places.push_back(low + length * (half ? (i + 0.5) / count : static_cast<double>(i) / (count - 1)));
    }
    return places;
}

/// What a copy of a plate takes with it to another place on the same host.
plan::Plate copyOf(const plan::Plate& plate) {
    plan::Plate copy = plate;
    copy.symbol_offset_mm.reset();
    copy.kept_along.reset();
    return copy;
}

constexpr int kLongestRow = 100;

} // namespace

Arranged alignHeights(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const PlateIds& ids,
                      double height_mm) {
    const auto plates = detail::platesOf(plan, ids);
    if (!plates) return std::unexpected(plates.error());
    std::vector<PlateMove> moves;
    for (const plan::Plate* plate : *plates) {
        const auto frame = geometry::hostFrame(plan, plate->room, plate->host);
        if (!frame) return std::unexpected(frame.error());
        if (!detail::isUpright(*frame))
            return std::unexpected(fmt::format("{} lies flat and has no height", nameOf(*plate)));
        moves.push_back({plate->id, plate->host, {}});
        moves.back().host.v_mm = height_mm;
    }
    return detail::arranged(
        plan, catalogue,
        fmt::format("Align {} at {}", detail::wordsFor(*plates), lengthInWords(height_mm, plan.units)),
        std::move(moves));
}

Arranged alignHeightsWith(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const PlateIds& ids,
                          const std::string& reference) {
    const plan::Plate* plate = plan::findPlate(plan, reference);
    if (plate == nullptr) return std::unexpected(fmt::format("there is no plate '{}'", reference));
    PlateIds all = ids;
    all.push_back(reference); // one that lies flat has no height to give
    return alignHeights(plan, catalogue, all, plate->host.v_mm);
}

Arranged alignCentresWith(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const PlateIds& ids,
                          const std::string& reference) {
    PlateIds all = {reference};
    all.insert(all.end(), ids.begin(), ids.end());
    const auto plates = detail::platesOf(plan, all, 2);
    if (!plates) return std::unexpected(plates.error());
    if (auto apart = onOneHost(*plates)) return std::unexpected(*apart);
    const Plates others(plates->begin() + 1, plates->end());
    std::vector<PlateMove> moves;
    for (const plan::Plate* plate : others) {
        moves.push_back({plate->id, plate->host, {}});
        moves.back().host.u_mm = plates->front()->host.u_mm;
    }
    return detail::arranged(
        plan, catalogue,
        fmt::format("Line up {} with {}", detail::wordsFor(others), nameOf(*plates->front())),
        std::move(moves));
}

Arranged distributeEvenly(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const PlateIds& ids,
                          Along along) {
    auto plates = detail::platesOf(plan, ids, 3);
    if (!plates) return std::unexpected(plates.error());
    if (auto apart = onOneHost(*plates)) return std::unexpected(*apart);
    std::ranges::stable_sort(*plates, {},
                             [&](const plan::Plate* plate) { return coordinate(plate->host, along); });
    const double first = coordinate(plates->front()->host, along);
    const double last = coordinate(plates->back()->host, along);
    const auto spaces = static_cast<double>(plates->size() - 1);
    std::vector<PlateMove> moves;
    for (std::size_t i = 1; i + 1 < plates->size(); ++i) {
        moves.push_back({(*plates)[i]->id, (*plates)[i]->host, {}});
        coordinate(moves.back().host, along) = first + (last - first) * static_cast<double>(i) / spaces;
    }
    return detail::arranged(plan, catalogue, fmt::format("Space {} evenly", detail::wordsFor(*plates)),
                            std::move(moves));
}

Arranged arrayAlong(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const std::string& id,
                    int count, double from_mm, double to_mm, RowEnds ends) {
    const plan::Plate* plate = plan::findPlate(plan, id);
    if (plate == nullptr) return std::unexpected(fmt::format("there is no plate '{}'", id));
    if (count < 1 || count > kLongestRow)
        return std::unexpected(fmt::format("a row has 1 to {} plates", kLongestRow));
    const std::vector<double> places = rowOf(count, from_mm, to_mm, ends);
    const auto own =
        std::ranges::min_element(places, {}, [&](double u) { return std::abs(u - plate->host.u_mm); });
    std::vector<PlateMove> moves = {{id, plate->host, {}}};
    moves.front().host.u_mm = *own;
    std::vector<plan::Plate> added;
    for (auto place = places.begin(); place != places.end(); ++place) {
        if (place == own) continue;
        added.push_back(copyOf(*plate));
        added.back().host.u_mm = *place;
    }
    return detail::arranged(plan, catalogue, fmt::format("Make a row of {} like {}", count, nameOf(*plate)),
                            std::move(moves), std::move(added));
}

Arranged arrayOnFurniture(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                          const std::string& id, const std::string& furniture_id, int count, RowEnds ends) {
    const plan::Plate* plate = plan::findPlate(plan, id);
    if (plate == nullptr) return std::unexpected(fmt::format("there is no plate '{}'", id));
    const plan::Furniture* piece = plan::findFurniture(plan, furniture_id);
    if (piece == nullptr) return std::unexpected(fmt::format("there is no furniture '{}'", furniture_id));
    const geometry::HouseIndex house(plan, plate->room);
    const auto marks = detail::wallMarks(house, plate->room, plate->host.wall);
    const auto mark = std::ranges::find(marks, piece, &detail::WallMark::piece);
    const auto frame = geometry::hostFrame(plan, plate->room, plate->host);
    if (mark == marks.end() || !frame)
        return std::unexpected(
            fmt::format("the {} does not stand at the wall of {}", piece->name, nameOf(*plate)));
    return arrayAlong(plan, catalogue, id, count, std::max(mark->left_mm, 0.0),
                      std::min(mark->right_mm, frame->length_mm), ends);
}

Arranged flipToOtherFace(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                         const std::string& id) {
    const plan::Plate* plate = plan::findPlate(plan, id);
    if (plate == nullptr) return std::unexpected(fmt::format("there is no plate '{}'", id));
    if (plate->host.kind != plan::Host::Kind::Wall)
        return std::unexpected(fmt::format("{} is on no wall, so there is no other side", nameOf(*plate)));
    const auto other = geometry::otherFace(plan, *plate);
    if (!other)
        return std::unexpected(
            fmt::format("no room lies behind wall {} at {}", plate->host.wall, nameOf(*plate)));
    const plan::Room* room = plan::findRoom(plan, other->room);
    return detail::arranged(plan, catalogue,
                            fmt::format("Move {} to the other side, {}", nameOf(*plate),
                                        room && !room->name.empty() ? room->name : other->room),
                            {{id, other->host, other->room}});
}

} // namespace gangway::edit
