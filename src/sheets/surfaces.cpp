#include "sheets/surfaces.hpp"

#include "drawing/dimensions.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

using Kind = Surface::Kind;

/// Floor and table luminaires have a lead with a plug.
bool hasPoint(const plan::Luminaire& luminaire) {
    return luminaire.kind != plan::Luminaire::Kind::Floor && luminaire.kind != plan::Luminaire::Kind::Table;
}

/// The surfaces of a room while they are being filled.
class Sorter {
public:
    Sorter(const House& house, const plan::Room& room) : house_(house), room_(room) {
        for (std::size_t wall = 0; wall < room.walls.size(); ++wall) {
            Surface surface;
            surface.wall = wall;
            surface.name = "wall " + room.walls[wall].id;
            walls_.push_back(std::move(surface));
        }
        floor_.kind = Kind::Floor;
        floor_.name = "floor";
        ceiling_.kind = Kind::Ceiling;
        ceiling_.name = "ceiling";
    }

    void take(const plan::Plate& plate) {
        if (Surface* surface = surfaceFor(plate.host))
            surface->mounted.push_back(
                mountedPlate(house_.catalogue(), plate, {0, {plate.host.u_mm, plate.host.v_mm}, {}, 0}));
    }

    void take(const plan::Luminaire& luminaire) {
        if (!hasPoint(luminaire)) return;
        if (Surface* surface = surfaceFor(luminaire.host))
            surface->mounted.push_back(
                mountedLuminaire(luminaire, {0, {luminaire.host.u_mm, luminaire.host.v_mm}, {}, 0}));
    }

    std::vector<Surface> sorted() {
        std::vector<Surface> all = std::move(walls_);
        std::ranges::move(furniture_, std::back_inserter(all));
        all.push_back(std::move(floor_));
        all.push_back(std::move(ceiling_));
        std::erase_if(all, [](const Surface& surface) { return surface.mounted.empty(); });
        for (Surface& surface : all)
            std::ranges::sort(surface.mounted, [](const Mounted& a, const Mounted& b) {
                return std::tie(a.at_mm.x, a.at_mm.y, a.tag, a.id) <
                       std::tie(b.at_mm.x, b.at_mm.y, b.tag, b.id);
            });
        return all;
    }

private:
    /// nullptr for a wall that the room does not have, which no plan that was read names.
    Surface* surfaceFor(const plan::Host& host) {
        switch (host.kind) {
        case plan::Host::Kind::Wall: {
            const auto wall = plan::wallIndex(room_, host.wall);
            return wall ? &walls_[*wall] : nullptr;
        }
        case plan::Host::Kind::Floor:
            return &floor_;
        case plan::Host::Kind::Ceiling:
            return &ceiling_;
        case plan::Host::Kind::Furniture:
            return &faceOf(host);
        }
        return nullptr;
    }

    Surface& faceOf(const plan::Host& host) {
        const plan::Furniture* piece = house_.index().furniture(host.furniture);
        const auto known = std::ranges::find_if(furniture_, [&](const Surface& surface) {
            return surface.piece == piece && surface.face == host.face;
        });
        if (known != furniture_.end()) return *known;
        Surface surface;
        surface.kind = Kind::Furniture;
        surface.piece = piece;
        surface.face = host.face;
        surface.name = fmt::format("{} ({})", piece != nullptr ? piece->name : host.furniture, host.face);
        furniture_.push_back(std::move(surface));
        return furniture_.back();
    }

    const House& house_;
    const plan::Room& room_;
    std::vector<Surface> walls_;
    std::vector<Surface> furniture_;
    Surface floor_;
    Surface ceiling_;
};

bool isBefore(const catalogue::Gang& gang, Vec2 box_mm) {
    constexpr double kTouch = 0.5;
    return std::abs(gang.centre_mm.x - box_mm.x) <= gang.width_mm / 2 + kTouch &&
           std::abs(gang.centre_mm.y - box_mm.y) <= gang.height_mm / 2 + kTouch;
}

} // namespace

std::size_t Surface::boxes() const {
    std::size_t count = 0;
    for (const Mounted& item : mounted)
        count += item.face.boxes.size();
    return count;
}

std::size_t Surface::points() const {
    return static_cast<std::size_t>(
        std::ranges::count_if(mounted, [](const Mounted& item) { return item.luminaire != nullptr; }));
}

std::vector<Surface> surfacesOf(const House& house, const plan::Room& room) {
    Sorter sorter(house, room);
    for (const plan::Plate* plate : house.platesIn(room.id))
        sorter.take(*plate);
    for (const plan::Luminaire* luminaire : house.luminairesIn(room.id))
        sorter.take(*luminaire);
    return sorter.sorted();
}

std::string measuredInWords(const Surface& surface) {
    switch (surface.kind) {
    case Kind::Wall:
        return "u from the left corner, v above FFL";
    case Kind::Floor:
    case Kind::Ceiling:
        return "u east, v north of the south-west corner of the room's extent";
    case Kind::Furniture:
        break;
    }
    return surface.upright() ? "u from the left edge of this face, v above FFL"
                             : "u from the left edge of this face, v towards the back";
}

std::string gangCode(const catalogue::Gang& gang) {
    std::string code = gang.module != nullptr ? gang.module->code : gang.unknown ? "unknown" : "blank";
    if (!gang.label.empty()) code += " '" + gang.label + "'";
    return code;
}

std::vector<std::string> codesByBox(const Mounted& item) {
    if (item.luminaire != nullptr) return {"lamp point"};
    const auto& boxes = item.face.boxes;
    std::vector<std::string> codes(std::max<std::size_t>(boxes.size(), 1));
    for (std::size_t i = 0; i < codes.size(); ++i)
        for (const catalogue::Gang& gang : item.face.gangs)
            if (boxes.size() < 2 || isBefore(gang, boxes[i].centre_mm))
                codes[i] += (codes[i].empty() ? "" : ", ") + gangCode(gang);
    return codes;
}

std::vector<std::string> lengthLines(double value_mm, plan::DisplayUnits units) {
    std::vector<std::string> lines{drawing::number(value_mm)};
    if (units == plan::DisplayUnits::FeetInches)
        lines.push_back(fmt::format("({})", drawing::number(value_mm, drawing::Units::FeetInches)));
    return lines;
}

} // namespace gangway::sheets
