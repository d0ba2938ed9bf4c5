#include "scene/house_way.hpp"

namespace gangway::scene {

namespace {
constexpr int kMostStairs = 4;
constexpr double kSamePlace_mm = 1;

class Search {
public:
    Search(const std::map<std::string, WalkMap>& maps, const std::vector<StairLink>& stairs, WayPoint to)
        : maps_(maps), stairs_(stairs), to_(std::move(to)) {}

    std::vector<WayPoint> from(const WayPoint& start, int stairs_left) const {
        const auto map = maps_.find(start.storey);
        if (map == maps_.end()) return {};
        if (start.storey == to_.storey) return level(map->second, start, to_.at_mm);
        if (stairs_left == 0) return {};
        for (const auto& stair : stairs_) {
            const WayPoint lower{stair.lower_mm, stair.lower_storey};
            const WayPoint upper{stair.upper_mm, stair.upper_storey};
            for (const auto& [begin, end] : {std::pair{lower, upper}, std::pair{upper, lower}}) {
                if (begin.storey != start.storey) continue;
                auto way = level(map->second, start, begin.at_mm);
                const auto rest = from(end, stairs_left - 1);
                if (way.empty() || rest.empty()) continue;
                way.push_back(end);
                way.insert(way.end(), rest.begin(), rest.end());
                return way;
            }
        }
        return {};
    }

private:
    static std::vector<WayPoint> level(const WalkMap& map, const WayPoint& start, plan::Vec2 to) {
        const plan::Vec2 goal = map.nearestFree(to);
        if (plan::length(goal - start.at_mm) < kSamePlace_mm) return {{goal, start.storey}};
        std::vector<WayPoint> way;
        for (const plan::Vec2 point : map.way(start.at_mm, goal))
            way.push_back({point, start.storey});
        return way;
    }

    const std::map<std::string, WalkMap>& maps_;
    const std::vector<StairLink>& stairs_;
    WayPoint to_;
};
} // namespace

std::vector<WayPoint> wayThroughHouse(const std::map<std::string, WalkMap>& maps,
                                      const std::vector<StairLink>& stairs, const WayPoint& from,
                                      const WayPoint& to) {
    const Search search(maps, stairs, to);
    // Over as few stairs as will do: nobody goes down again to come up elsewhere.
    for (int stairs_left = 0; stairs_left <= kMostStairs; ++stairs_left)
        if (auto way = search.from(from, stairs_left); !way.empty()) return way;
    return {};
}

} // namespace gangway::scene
