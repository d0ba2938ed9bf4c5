#include "review/relations.hpp"
#include "review/review.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace gangway::review {
namespace detail {
namespace {

/// The text so far; values are escaped so that no value can look like another line.
class Lines {
public:
    void add(std::string_view key, std::string_view value) {
        text_ += key;
        text_ += '=';
        for (const char letter : value) {
            if (letter == '\\' || letter == '\n') text_ += '\\';
            text_ += letter == '\n' ? 'n' : letter;
        }
        text_ += '\n';
    }
    /// To 0.1 mm (or degree): finer differences are nothing that anyone agreed to.
    void add(std::string_view key, double value) {
        const double tenths = std::round(value * 10);
        add(key, fmt::format("{:.1f}", tenths == 0 ? 0.0 : tenths / 10)); // no "-0.0"
    }
    std::string take() { return std::move(text_); }

private:
    std::string text_;
};

void addHost(Lines& lines, const plan::Host& host) {
    using Kind = plan::Host::Kind;
    switch (host.kind) {
    case Kind::Wall:
        lines.add("wall", host.wall);
        break;
    case Kind::Floor:
        lines.add("host", "floor");
        break;
    case Kind::Ceiling:
        lines.add("host", "ceiling");
        break;
    case Kind::Furniture:
        lines.add("furniture", host.furniture);
        lines.add("face", host.face);
        break;
    }
    lines.add("u", host.u_mm);
    lines.add("v", host.v_mm);
}

void addModules(Lines& lines, const plan::Plate& plate) {
    lines.add("format", plate.format);
    lines.add("direction", plate.direction == plan::Direction::Horizontal ? "horizontal" : "vertical");
    lines.add("gangs", std::to_string(plate.gangs));
    lines.add("finish", plate.finish);
    for (std::size_t i = 0; i < plate.modules.size(); ++i) {
        const plan::Module& module = plate.modules[i];
        const std::string key = fmt::format("module.{}", i + 1);
        lines.add(key, module.type);
        lines.add(key + ".finish", module.finish.empty() ? plate.finish : module.finish);
        lines.add(key + ".label", module.label);
    }
}

void addLegs(Lines& lines, const Relations& relations, const plan::Plate& plate) {
    lines.add("for", plate.purpose);
    for (const plan::SwitchLeg* leg : relations.legs(plate.id)) {
        const std::string key = "leg." + leg->id;
        for (const plan::WayRef& control : leg->controls)
            if (control.plate == plate.id)
                lines.add(key, fmt::format("module {} way {}", control.module, control.way));
        if (std::ranges::find(leg->plates, plate.id) != leg->plates.end()) lines.add(key, "feeds this plate");
        std::vector<std::string> fed = leg->luminaires;
        fed.insert(fed.end(), leg->plates.begin(), leg->plates.end());
        std::ranges::sort(fed);
        for (const std::string& id : fed)
            lines.add(key + ".feeds", id);
    }
}

void addFurniture(Lines& lines, const Relations& relations, const std::string& key, const std::string& id) {
    if (id.empty()) return;
    lines.add(key, id);
    if (const plan::Furniture* piece = relations.furniture(id)) {
        lines.add(key + ".kind", piece->kind);
        lines.add(key + ".x", piece->at_mm.x);
        lines.add(key + ".y", piece->at_mm.y);
        lines.add(key + ".bottom", piece->bottom_mm);
        lines.add(key + ".turn", piece->turn_deg);
        lines.add(key + ".width", piece->size.width_mm);
        lines.add(key + ".depth", piece->size.depth_mm);
        lines.add(key + ".height", piece->size.height_mm);
    } else if (const plan::Device* device = relations.device(id)) {
        lines.add(key + ".lead.x", device->lead_exit_mm.x);
        lines.add(key + ".lead.y", device->lead_exit_mm.y);
        lines.add(key + ".lead.z", device->lead_exit_mm.z);
        lines.add(key + ".lead", device->lead_mm);
    }
}

std::string_view sideWord(plan::Side side) {
    return side == plan::Side::Left ? "left" : "right";
}

void addDoors(Lines& lines, const Relations& relations, const plan::Plate& plate) {
    for (const plan::Opening* door : relations.doors(plate)) {
        const std::string key = "door." + door->id;
        lines.add(key + ".in",
                  door->room + "/" + door->wall); // its left, right, in and out are seen from there
        lines.add(key + ".left", door->left_mm);
        lines.add(key + ".width", door->width_mm);
        lines.add(key + ".leaves", std::to_string(door->leaves));
        if (door->kind == plan::Opening::Kind::HingedDoor) {
            lines.add(key + ".hinge", sideWord(door->hinge));
            lines.add(key + ".swing", door->swing == plan::Swing::In ? "in" : "out");
        } else {
            lines.add(key + ".parks", sideWord(door->parks));
        }
    }
}

void addBuildUp(Lines& lines, const Relations& relations, const plan::Plate& plate) {
    const plan::Room* room = relations.room(plate.room);
    if (!room) return;
    const std::vector<plan::Course>* courses = nullptr;
    if (plate.host.kind == plan::Host::Kind::Floor) courses = &room->floor_build_up;
    if (plate.host.kind == plan::Host::Kind::Wall)
        if (const auto wall = plan::wallIndex(*room, plate.host.wall)) courses = &room->walls[*wall].build_up;
    for (std::size_t i = 0; courses && i < courses->size(); ++i) {
        const std::string key = fmt::format("course.{}", i + 1);
        lines.add(key, (*courses)[i].material);
        lines.add(key + ".thickness", (*courses)[i].thickness_mm);
    }
}

} // namespace

std::string canonicalText(const Relations& relations, const plan::Plate& plate) {
    Lines lines;
    lines.add("fingerprint", "1"); // number of this list of keys; a new one would reopen every plate
    lines.add("plate", plate.id);
    lines.add("room", plate.room);
    addHost(lines, plate.host);
    addModules(lines, plate);
    addLegs(lines, relations, plate);
    addFurniture(lines, relations, "anchor", plate.anchor);
    if (plate.host.furniture != plate.anchor) addFurniture(lines, relations, "carrier", plate.host.furniture);
    addDoors(lines, relations, plate);
    addBuildUp(lines, relations, plate);
    return lines.take();
}

std::string digest(const std::string& canonical_text) {
    constexpr std::size_t kDigits = 16;
    return sha256(canonical_text).substr(0, kDigits);
}

} // namespace detail

std::string fingerprintText(const plan::Plan& plan, const plan::Plate& plate) {
    return detail::canonicalText(detail::Relations(plan), plate);
}

std::string fingerprint(const plan::Plan& plan, const plan::Plate& plate) {
    return detail::digest(fingerprintText(plan, plate));
}

} // namespace gangway::review
