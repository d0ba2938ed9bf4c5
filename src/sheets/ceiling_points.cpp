#include "sheets/ceiling_points.hpp"

#include "drawing/dimensions.hpp"
#include "sheets/schedules_parts.hpp"
#include "sheets/storey_plan_parts.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kWith = 1e-4;     ///< a wall runs with the sheet's edge when its normal is off by less
constexpr double kSameLine_mm = 1; ///< luminaires this near to one line are in it
constexpr double kSameStep_mm = 0.5;

/// How a wall serves as one to measure from.
struct Candidate {
    std::size_t wall = 0;
    double facing = 0;   ///< cosine between its normal and the way that is measured
    int behind = 0;      ///< points on its wrong side
    int beside = 0;      ///< points that it ends before
    double place_mm = 0; ///< along the way that is measured
    double length_mm = 0;
    auto rank() const {
        return std::tuple(facing < 0.5, behind, facing < 1 - kWith, beside, place_mm, -length_mm);
    }
};

double distanceFrom(const WallLineOnPlan& line, Vec2 at_mm) {
    return plan::dot(at_mm - line.from_mm, line.out);
}
bool isBeside(const WallLineOnPlan& line, Vec2 at_mm) {
    const double u = plan::dot(at_mm - line.from_mm, line.along);
    return u < -0.5 || u > line.length_mm + 0.5;
}

/// The wall whose finished face is measured from along `way`: one that no point is behind, that runs with the
/// sheet and that most points stand straight before; of those the outermost.
std::size_t wallFacing(const plan::Room& room, Vec2 way, const std::vector<Vec2>& points) {
    std::vector<Candidate> candidates;
    for (std::size_t wall = 0; wall < room.outline.size() && wall < room.walls.size(); ++wall) {
        if (room.walls[wall].structure == plan::WallStructure::None) continue;
        const WallLineOnPlan line = wallLineOnPlan(room, wall);
        Candidate candidate{wall, plan::dot(line.out, way),     0,
                            0,    plan::dot(line.from_mm, way), line.length_mm};
        for (Vec2 p : points) {
            candidate.behind += distanceFrom(line, p) < 0 ? 1 : 0;
            candidate.beside += isBeside(line, p) ? 1 : 0;
        }
        candidates.push_back(candidate);
    }
    const auto best = std::ranges::min_element(candidates, {}, &Candidate::rank);
    return best == candidates.end() ? 0 : best->wall;
}

/// "pendant 220, underside 1700".
std::string describe(const plan::Luminaire& luminaire, double height_mm) {
    using Kind = plan::Luminaire::Kind;
    std::string words = kindName(luminaire.kind);
    const bool line = luminaire.kind == Kind::Linear || luminaire.kind == Kind::UnderUnit;
    if (luminaire.size_mm > 0)
        words += fmt::format(" {}{}", drawing::number(luminaire.size_mm), line ? " long" : "");
    if (luminaire.kind == Kind::Linear && luminaire.host.kind == plan::Host::Kind::Ceiling) {
        const double turn = std::fmod(std::fmod(luminaire.turn_deg, 180) + 180, 180);
        words += turn == 0    ? ", along x"
                 : turn == 90 ? ", along y"
                              : fmt::format(", turned {:g} degrees from x", turn);
    }
    if (luminaire.kind == Kind::Pendant && luminaire.drop_mm > 0)
        words += fmt::format(", underside {}", drawing::number(height_mm - luminaire.drop_mm));
    return words;
}

std::string whatOf(const Mounted& item, const std::string& codes, bool on_floor, double height_mm) {
    if (item.luminaire != nullptr) return describe(*item.luminaire, height_mm);
    return fmt::format("{} in the {}", codes, on_floor ? "floor" : "ceiling");
}

void takeLevel(RoomPoints& found, const Surface& surface) {
    const bool floor = surface.kind == Surface::Kind::Floor;
    const geometry::Frame frame = geometry::floorFrame(*found.room);
    for (const Mounted& item : surface.mounted) {
        const auto codes = codesByBox(item);
        const std::size_t count = item.box_centres_mm.size();
        for (std::size_t i = 0; i < count; ++i) {
            const Vec2 uv = item.box_centres_mm[i];
            CeilingPoint point;
            point.id = item.id;
            point.tag = count > 1 ? fmt::format("{} {}/{}", item.tag, i + 1, count) : item.tag;
            point.at_mm = {frame.origin_mm.x + uv.x, frame.origin_mm.y + uv.y};
            point.height_mm = floor ? 0 : geometry::ceilingHeightAt(*found.room, point.at_mm);
            point.what = whatOf(item, codes[std::min(i, codes.size() - 1)], floor, point.height_mm);
            found.points.push_back(std::move(point));
        }
    }
}

void takeOthers(RoomPoints& found, const Surface& surface, const ElevationNumbers& numbers) {
    for (const Mounted& item : surface.mounted) {
        if (item.luminaire == nullptr) continue;
        OtherPoint point;
        point.id = item.id;
        point.tag = item.tag;
        point.what = describe(*item.luminaire, 0);
        point.where = surface.name;
        if (surface.kind == Surface::Kind::Wall) point.where += ", " + numbers.of(*found.room, surface.wall);
        point.u_mm = item.at_mm.x;
        point.v_mm = item.at_mm.y;
        point.upright = surface.upright();
        found.others.push_back(std::move(point));
    }
}

void measure(RoomPoints& found) {
    std::vector<Vec2> places;
    for (const CeilingPoint& point : found.points)
        places.push_back(point.at_mm);
    found.left_wall = wallFacing(*found.room, {1, 0}, places);
    found.bottom_wall = wallFacing(*found.room, {0, 1}, places);
    const WallLineOnPlan left = wallLineOnPlan(*found.room, found.left_wall);
    const WallLineOnPlan bottom = wallLineOnPlan(*found.room, found.bottom_wall);
    found.square = left.out.x > 1 - kWith * kWith && bottom.out.y > 1 - kWith * kWith;
    for (CeilingPoint& point : found.points) {
        point.x_mm = distanceFrom(left, point.at_mm);
        point.y_mm = distanceFrom(bottom, point.at_mm);
        point.beside_x = isBeside(left, point.at_mm);
        point.beside_y = isBeside(bottom, point.at_mm);
    }
    std::ranges::sort(found.points, [](const CeilingPoint& a, const CeilingPoint& b) {
        return std::tuple(-a.y_mm, a.x_mm, a.tag, a.id) < std::tuple(-b.y_mm, b.x_mm, b.tag, b.id);
    });
}

/// Runs of three and more luminaires of a line at one step.
void addRuns(std::vector<EqualSpacing>& spacings, bool along_x, std::vector<const CeilingPoint*> line) {
    const auto place = [&](const CeilingPoint* point) { return along_x ? point->x_mm : point->y_mm; };
    std::ranges::sort(line, {}, place);
    for (std::size_t first = 0; first + 2 < line.size();) {
        const double step = place(line[first + 1]) - place(line[first]);
        std::size_t last = first + 1;
        while (last + 1 < line.size() &&
               std::abs(place(line[last + 1]) - place(line[last]) - step) < kSameStep_mm)
            ++last;
        if (last - first >= 2 && step > kSameLine_mm)
            spacings.push_back({along_x,
                                {line.begin() + static_cast<std::ptrdiff_t>(first),
                                 line.begin() + static_cast<std::ptrdiff_t>(last) + 1},
                                step});
        first = last;
    }
}

} // namespace

std::string EqualSpacing::words() const {
    const auto steps = static_cast<double>(points.size() - 1);
    return fmt::format("({:g} × {} = {})", steps, drawing::number(step_mm), drawing::number(steps * step_mm));
}

std::vector<EqualSpacing> RoomPoints::spacings() const {
    std::vector<EqualSpacing> found;
    for (const bool along_x : {true, false}) {
        std::map<long, std::vector<const CeilingPoint*>> lines;
        for (const CeilingPoint& point : points)
            if (point.height_mm > 0) // what is in the floor makes no line with the ceiling
                lines[std::lround((along_x ? point.y_mm : point.x_mm) / kSameLine_mm)].push_back(&point);
        for (const auto& [place, line] : lines)
            addRuns(found, along_x, line);
    }
    return found;
}

RoomPoints pointsOf(const House& house, const plan::Room& room, const ElevationNumbers& numbers) {
    RoomPoints found;
    found.room = &room;
    for (const Surface& surface : surfacesOf(house, room)) {
        if (surface.kind == Surface::Kind::Floor || surface.kind == Surface::Kind::Ceiling)
            takeLevel(found, surface);
        else
            takeOthers(found, surface, numbers);
    }
    for (const plan::Luminaire* luminaire : house.luminairesIn(room.id))
        if (luminaire->kind == plan::Luminaire::Kind::Floor ||
            luminaire->kind == plan::Luminaire::Kind::Table)
            found.plugged.push_back(luminaire->tag.empty() ? luminaire->id : luminaire->tag);
    measure(found);
    return found;
}

} // namespace gangway::sheets
