#include "review/changes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string_view>
#include <unordered_map>
#include <unordered_set>

namespace gangway::review {

namespace {
using plan::Plate;

/// Half of the step in which lengths are printed.
constexpr double kPrinted_mm = 0.25;

template <class Thing>
std::string tagOf(const Thing& thing) {
    return thing.tag.empty() ? thing.id : thing.tag;
}

std::string roomName(const plan::Plan& plan, const std::string& id) {
    const plan::Room* room = plan::findRoom(plan, id);
    return room == nullptr || room->name.empty() ? id : room->name;
}

/// As printed: to 0.5 mm, without a needless ".0".
std::string length(double mm) {
    return fmt::format("{:g}", std::round(mm * 2) / 2);
}

/// What stands somewhere: a plate or a luminaire.
template <class Thing>
std::string hostWords(const plan::Plan& plan, const Thing& thing) {
    using Kind = plan::Host::Kind;
    const std::string room = roomName(plan, thing.room);
    switch (thing.host.kind) {
    case Kind::Wall:
        return fmt::format("wall {} of {}", thing.host.wall, room);
    case Kind::Floor:
        return fmt::format("the floor of {}", room);
    case Kind::Ceiling:
        return fmt::format("the ceiling of {}", room);
    case Kind::Furniture:
        return fmt::format("the {} of {} in {}", thing.host.face, thing.host.furniture, room);
    }
    return room;
}

template <class Thing>
bool sameHost(const Thing& a, const Thing& b) {
    return a.room == b.room && a.host.kind == b.host.kind && a.host.wall == b.host.wall &&
           a.host.furniture == b.host.furniture && a.host.face == b.host.face;
}

/// "moved 120 right, 50 up"; floors and ceilings are set out east and north. Empty: it has not moved.
template <class Thing>
std::string moveWords(const plan::Plan& plan, const Thing& before, const Thing& after) {
    if (!sameHost(before, after))
        return fmt::format("moved to {}, at {}, {}", hostWords(plan, after), length(after.host.u_mm),
                           length(after.host.v_mm));
    const double along = after.host.u_mm - before.host.u_mm;
    const double up = after.host.v_mm - before.host.v_mm;
    const bool flat =
        after.host.kind == plan::Host::Kind::Floor || after.host.kind == plan::Host::Kind::Ceiling;
    std::string words;
    const auto say = [&words](double mm, std::string_view more, std::string_view less) {
        if (std::abs(mm) < kPrinted_mm) return;
        words += fmt::format("{}{} {}", words.empty() ? "moved " : ", ", length(std::abs(mm)),
                             mm > 0 ? more : less);
    };
    say(along, flat ? "east" : "right", flat ? "west" : "left");
    say(up, flat ? "north" : "up", flat ? "south" : "down");
    return words;
}

std::string modulesOf(const Plate& plate) {
    std::string list;
    for (const plan::Module& module : plate.modules) {
        list += (list.empty() ? "" : ", ") + module.type;
        if (!module.label.empty()) list += fmt::format(" '{}'", module.label);
        if (!module.finish.empty() && module.finish != plate.finish) list += " in " + module.finish;
    }
    return list.empty() ? "none" : list;
}

std::string shown(const std::string& text) {
    return text.empty() ? "none" : text;
}

/// What is different about the plate itself.
std::vector<std::string> makeWords(const Plate& before, const Plate& after) {
    std::vector<std::string> words;
    if (before.tag != after.tag) words.push_back("was " + tagOf(before));
    if (before.format != after.format) words.push_back("format now " + shown(after.format));
    if (modulesOf(before) != modulesOf(after))
        words.push_back(fmt::format("modules {} (were {})", modulesOf(after), modulesOf(before)));
    if (before.gangs != after.gangs) words.push_back(fmt::format("gangs now {}", after.gangs));
    if (before.direction != after.direction)
        words.emplace_back(after.direction == plan::Direction::Vertical ? "now upright" : "now lying");
    if (before.finish != after.finish) words.push_back("finish now " + shown(after.finish));
    if (before.box_depth_mm != after.box_depth_mm)
        words.push_back(after.box_depth_mm ? fmt::format("box {} deep", length(*after.box_depth_mm))
                                           : std::string("box as deep as usual"));
    if (before.barrier != after.barrier)
        words.emplace_back(after.barrier ? "partition in the box" : "no partition in the box");
    if (before.purpose != after.purpose) words.push_back("for " + shown(after.purpose));
    if (before.circuit != after.circuit) words.push_back("circuit " + shown(after.circuit));
    if (before.feed != after.feed) words.emplace_back("feed from another side");
    if (before.ip != after.ip) words.push_back("degree of protection " + shown(after.ip));
    if (before.tolerance.along_mm != after.tolerance.along_mm ||
        before.tolerance.height_mm != after.tolerance.height_mm)
        words.push_back(fmt::format("may move {} along, {} in height", length(after.tolerance.along_mm),
                                    length(after.tolerance.height_mm)));
    return words;
}

PlateChange compared(const plan::Plan& plan, const Plate& before, const Plate& after) {
    PlateChange change{PlateChange::Kind::Changed, &before, &after, false, {}};
    const auto append = [&change](const std::string& words) {
        change.words += (change.words.empty() ? " " : "; ") + words;
    };
    if (const std::string moved = moveWords(plan, before, after); !moved.empty()) {
        change.moved = true;
        append(moved);
    }
    for (const std::string& words : makeWords(before, after))
        append(words);
    if (!change.words.empty()) change.words.insert(0, tagOf(after));
    return change;
}
} // namespace

std::vector<PlateChange> platesChanged(const plan::Plan& before, const plan::Plan& after) {
    std::unordered_map<std::string_view, const Plate*> old;
    for (const Plate& plate : before.plates)
        old.emplace(plate.id, &plate);
    std::vector<PlateChange> changes;
    std::unordered_set<std::string_view> kept;
    for (const Plate& plate : after.plates) {
        kept.insert(plate.id);
        const auto found = old.find(plate.id);
        if (found == old.end()) {
            changes.push_back({PlateChange::Kind::Added, nullptr, &plate, true,
                               fmt::format("{} is new on {}", tagOf(plate), hostWords(after, plate))});
            continue;
        }
        if (PlateChange change = compared(after, *found->second, plate); !change.words.empty())
            changes.push_back(std::move(change));
    }
    for (const Plate& plate : before.plates)
        if (!kept.contains(plate.id))
            changes.push_back(
                {PlateChange::Kind::Removed, &plate, nullptr, true,
                 fmt::format("{} is gone from {}: no box there", tagOf(plate), hostWords(before, plate))});
    return changes;
}

std::vector<std::string> luminairesChanged(const plan::Plan& before, const plan::Plan& after) {
    using plan::Luminaire;
    std::unordered_map<std::string_view, const Luminaire*> old;
    for (const Luminaire& lamp : before.luminaires)
        old.emplace(lamp.id, &lamp);
    std::vector<std::string> lines;
    for (const Luminaire& lamp : after.luminaires) {
        const auto found = old.find(lamp.id);
        if (found == old.end()) {
            lines.push_back(fmt::format("{} is new on {}", tagOf(lamp), hostWords(after, lamp)));
            continue;
        }
        const Luminaire& was = *found->second;
        std::string words = moveWords(after, was, lamp);
        if (std::abs(was.drop_mm - lamp.drop_mm) >= kPrinted_mm)
            words += fmt::format("{}now hangs {} below the ceiling", words.empty() ? "" : "; ",
                                 length(lamp.drop_mm));
        if (was.tag != lamp.tag) words += fmt::format("{}was {}", words.empty() ? "" : "; ", tagOf(was));
        if (!words.empty()) lines.push_back(tagOf(lamp) + " " + words);
        old.erase(found);
    }
    for (const Luminaire& lamp : before.luminaires)
        if (old.contains(lamp.id))
            lines.push_back(fmt::format("{} is gone from {}", tagOf(lamp), hostWords(before, lamp)));
    return lines;
}

std::vector<std::string> floorsChanged(const plan::Plan& before, const plan::Plan& after) {
    const auto thick = [](const plan::Room& room) -> std::optional<double> {
        if (room.floor_build_up.empty()) return std::nullopt;
        double sum = 0;
        for (const plan::Course& course : room.floor_build_up)
            sum += course.thickness_mm;
        return sum;
    };
    std::vector<std::string> lines;
    for (const plan::Room& room : after.rooms) {
        const plan::Room* old = plan::findRoom(before, room.id);
        if (old == nullptr) continue;
        const auto was = thick(*old);
        const auto is = thick(room);
        const std::string name = roomName(after, room.id);
        if (was && is && std::abs(*is - *was) >= kPrinted_mm)
            lines.push_back(fmt::format("{}: floor build-up {} -> {}: heights above the slab change by {}{}",
                                        name, length(*was), length(*is), *is > *was ? "+" : "",
                                        length(*is - *was)));
        else if (was && !is)
            lines.push_back(fmt::format("{}: floor build-up was {}, now not stated", name, length(*was)));
        else if (!was && is)
            lines.push_back(fmt::format("{}: floor build-up now {}, was not stated", name, length(*is)));
    }
    return lines;
}

std::vector<std::string> changesInWords(const plan::Plan& before, const plan::Plan& after) {
    std::vector<std::string> lines = floorsChanged(before, after);
    for (PlateChange& change : platesChanged(before, after))
        lines.push_back(std::move(change.words));
    for (std::string& line : luminairesChanged(before, after))
        lines.push_back(std::move(line));
    return lines;
}

} // namespace gangway::review
