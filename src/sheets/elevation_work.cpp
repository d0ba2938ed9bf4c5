#include "sheets/elevation_work.hpp"

#include "checks/margins.hpp"
#include "drawing/dimensions.hpp"
#include "sheets/paper.hpp"
#include "sheets/sheet_names.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {
void addZones(WallView& view, const Options& options) {
    if (options.pack == nullptr) return;
    const House& house = *view.house;
    view.zones_pack = options.pack;
    if (options.wet_zones)
        view.wet_zones = checks::wallZoneAreas(house.index(), *options.pack, *view.room, view.wall);
    if (options.cable_zones)
        view.cable_zones =
            checks::zoneAreas(house.index(), house.catalogue(), *options.pack, *view.room, view.wall);
}

RevisionMarks changesSince(const House& house, const Options& options) {
    if (options.since == nullptr) return {};
    return revisionMarks(House(*options.since, house.catalogue(), options.base), house);
}

void addChanges(WallView& view, const Options& options, const RevisionMarks& changes) {
    if (options.since == nullptr) return;
    const plan::Project& old = options.since->project;
    view.since = old.revision.empty() ? "the plan before" : "revision " + old.revision;
    if (!old.date.empty()) view.since += " of " + old.date;
    if (const auto found = changes.find({view.room->id, view.wall}); found != changes.end())
        view.changes = found->second;
}

/// Margins of all plates by id, where there is a pack to check them by.
std::map<std::string, double> marginsOf(const House& house, const Options& options) {
    std::map<std::string, double> by_plate;
    if (options.pack == nullptr) return by_plate;
    const checks::Facts facts(house.index(), house.catalogue(), *options.pack, options.base);
    for (const checks::PlaceMargin& margin : checks::margins(facts))
        by_plate.emplace(margin.plate, std::max(margin.mm, 0.0));
    return by_plate;
}

/// The distance from the nearest edge of an opening that one can measure from: of its casing, at first fix of
/// the opening itself. Farther than an arm reaches it is no check.
std::string distanceFromOpening(const WallView& view, const Mounted& item) {
    constexpr double kReach = 1000;
    double nearest = kReach;
    const geometry::FaceHole* from = nullptr;
    for (const geometry::FaceHole& hole : view.holes) {
        const double casing_mm = view.fix == Fix::First ? 0
                                 : hole.hosted_here     ? hole.opening->casing_mm
                                                        : hole.opening->casing_beyond_mm;
        for (const double away :
             {hole.left_mm - casing_mm - item.at_mm.x, item.at_mm.x - hole.right_mm - casing_mm})
            if (away > 0 && away < nearest) {
                nearest = away;
                from = &hole;
            }
    }
    if (from == nullptr) return {};
    const std::string& name = from->opening->name.empty() ? from->opening->id : from->opening->name;
    return fmt::format("check ({}) from {}", drawing::number(nearest), name);
}

/// "boxes (2 × 71)": the pitch of a row or column of boxes, once.
std::string pitchOf(const Mounted& item) {
    const auto& boxes = item.box_centres_mm;
    if (boxes.size() < 2) return {};
    const auto step = [&](std::size_t i) { return boxes[i + 1] - boxes[i]; };
    for (std::size_t i = 1; i + 1 < boxes.size(); ++i)
        if (plan::length(step(i) - step(0)) > 0.25) return {};
    return fmt::format("boxes ({} × {})", boxes.size() - 1, drawing::number(plan::length(step(0))));
}

void addChecks(WallView& view) {
    for (Mounted& item : view.mounted)
        for (const std::string& words : {distanceFromOpening(view, item), pitchOf(item)})
            if (!words.empty()) item.checks += (item.checks.empty() ? "" : "; ") + words;
}

std::string listOf(const std::vector<std::string>& names) {
    std::string list;
    for (const std::string& name : names)
        list += (list.empty() ? "'" : ", '") + name + "'";
    return list;
}
} // namespace

std::vector<WallWork> wallsWithSomething(const House& house) {
    std::vector<WallWork> work;
    for (const plan::Room& room : house.plan().rooms) {
        auto walls = mountedByWall(house, room);
        for (std::size_t wall = 0; wall < walls.size(); ++wall)
            if (!walls[wall].empty()) work.push_back({&room, wall, std::move(walls[wall])});
    }
    return work;
}

ElevationNumbers::ElevationNumbers(const std::vector<WallWork>& walls) {
    for (const WallWork& wall : walls)
        numbers_.emplace(std::pair(wall.room->id, wall.wall), numbers_.size() + 1);
}

std::string ElevationNumbers::of(const plan::Room& room, std::size_t wall) const {
    const auto found = numbers_.find({room.id, wall});
    return found == numbers_.end() ? std::string() : sheetNumber('E', found->second, numbers_.size(), 1);
}

std::string problemWith(const plan::Plan& plan, const Options& options) {
    if (!findPaper(options.paper))
        return fmt::format("there is no paper '{}'; give one of {}", options.paper, paperNames());
    constexpr std::array<double, 4> kScales{10, 20, 25, 50};
    if (options.scale && std::find(kScales.begin(), kScales.end(), *options.scale) == kScales.end())
        return fmt::format("1:{:g} is not a scale of these sheets; give 10, 20, 25 or 50", *options.scale);
    std::vector<std::string> rooms;
    std::vector<std::string> walls;
    for (const plan::Room& room : plan.rooms) {
        rooms.push_back(room.id);
        if (!options.room.empty() && room.id != options.room) continue;
        for (const plan::Wall& wall : room.walls)
            if (std::find(walls.begin(), walls.end(), wall.id) == walls.end()) walls.push_back(wall.id);
    }
    if (!options.room.empty() && plan::findRoom(plan, options.room) == nullptr)
        return fmt::format("there is no room '{}'; the plan has {}", options.room, listOf(rooms));
    if (!options.wall.empty() && std::find(walls.begin(), walls.end(), options.wall) == walls.end())
        return fmt::format("there is no wall '{}'{}; there are {}", options.wall,
                           options.room.empty() ? "" : fmt::format(" in room '{}'", options.room),
                           listOf(walls));
    return {};
}

WallLooks::WallLooks(const House& house, const Options& options)
    : house_(&house), options_(&options), answers_(house.plan()), margins_(marginsOf(house, options)),
      changes_(changesSince(house, options)) {}

std::expected<WallView, std::string> WallLooks::at(WallWork wall) const {
    findCovers(*house_, *wall.room, wall.mounted);
    answers_.fill(wall.mounted);
    for (Mounted& item : wall.mounted)
        if (const auto margin = margins_.find(item.id); margin != margins_.end())
            item.margin_mm = margin->second;
    WallView view = lookAt(*house_, *wall.room, wall.wall, std::move(wall.mounted));
    view.fix = options_->fix;
    // On the bare wall nothing stands before a box.
    if (view.fix == Fix::First)
        for (Mounted& item : view.mounted)
            item.behind.clear();
    view.check_dimensions = options_->check_dimensions;
    if (view.check_dimensions) addChecks(view);
    addZones(view, *options_);
    addChanges(view, *options_, changes_);
    if (std::string problem = countFrom(view, options_->datum); !problem.empty())
        return std::unexpected(std::move(problem));
    return view;
}

} // namespace gangway::sheets
