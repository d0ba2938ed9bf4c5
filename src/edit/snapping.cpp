#include "edit/snapping.hpp"

#include "edit/number_shown.hpp"
#include "edit/wall_marks.hpp"
#include "geometry/furniture.hpp"
#include "plan/furniture_kinds.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <tuple>

namespace gangway::edit {
namespace {

using detail::WallMark;
using Axis = Guide::Axis;
using Part = Guide::Part;

constexpr double kNear_mm = 600;       ///< further above or below nothing is lined up along the wall
constexpr double kSmallTile_mm = 40;   ///< of smaller tiles a joint is always near
constexpr double kSamePlace_mm = 1e-6; ///< two guides nearer than this are one

/// Which of several guides at one place gives the reason.
enum Rank {
    kPlateHere,
    kUsualHeight,
    kUsualDistance,
    kMiddle,
    kOpeningEdge,
    kFurnitureEdge,
    kTouching,
    kPlateElsewhere,
    kTile,
    kHostEnd
};

struct Range {
    double low_mm = 0;
    double high_mm = 0;
};

/// Collects the guides of one host.
class Collector {
public:
    Collector(const geometry::HouseIndex& house, const geometry::Frame& frame, const plan::Host& host)
        : house_(house), frame_(frame), host_(host),
          extents_(detail::extentsOf(frame, host, house.furniture(host.furniture))) {}

    void plates(const catalogue::Catalogue& catalogue, const std::string& room_id,
                const std::vector<std::string>& except) {
        for (const plan::Plate& plate : house_.plan().plates) {
            if (plate.room != room_id || std::ranges::find(except, plate.id) != except.end()) continue;
            if (detail::sameHost(plate.host, host_))
                plateHere(catalogue, plate);
            else if (detail::isUpright(frame_))
                plateElsewhere(plate);
        }
    }
    void marks(const std::vector<WallMark>& marks, const UsualPlaces& usual) {
        for (const WallMark& mark : marks) {
            if (mark.opening != nullptr)
                opening(mark, usual);
            else
                piece(mark, usual);
        }
    }
    void usualHeights(const UsualPlaces& usual) {
        for (const UsualHeight& height : usual.heights)
            if (height.from == UsualHeight::From::Floor)
                across(height.height_mm, Part::Centre, fmt::format("usual height: {}", height.name),
                       kUsualHeight, {0, frame_.length_mm});
    }
    void lines(const plan::Wall& wall) {
        for (const plan::WallLine& line : wall.lines)
            if (line.kind == plan::WallLine::Kind::Tiles) tiles(line);
    }
    void hostItself() {
        const bool upright = detail::isUpright(frame_);
        const Range height{upright ? host_.v_mm : 0, upright ? host_.v_mm : frame_.height_mm};
        up(frame_.length_mm / 2, Part::Centre, upright ? "middle between the ends" : "middle", kMiddle,
           height);
        up(0, Part::LowEdge, "left end", kHostEnd, height);
        up(frame_.length_mm, Part::HighEdge, "right end", kHostEnd, height);
        if (!upright) across(frame_.height_mm / 2, Part::Centre, "middle", kMiddle, {0, frame_.length_mm});
    }
    /// Guides at one place for one part of the plate become one.
    std::vector<Guide> take() {
        std::ranges::stable_sort(guides_, {}, [](const Guide& guide) {
            return std::tuple(guide.axis, guide.part, guide.at_mm, guide.rank);
        });
        std::vector<Guide> kept;
        for (Guide& guide : guides_) {
            const bool same = !kept.empty() && kept.back().axis == guide.axis &&
                              kept.back().part == guide.part &&
                              guide.at_mm - kept.back().at_mm < kSamePlace_mm;
            if (!same)
                kept.push_back(std::move(guide));
            else if (guide.rank < kept.back().rank)
                kept.back() = std::move(guide);
        }
        return kept;
    }

private:
    /// A line upwards at a u, drawn over the heights of what it comes from and the plate's own.
    void up(double u_mm, Part part, std::string reason, int rank, Range heights) {
        if (u_mm < extents_.left_mm || u_mm > extents_.right_mm) return;
        const double low = std::min(heights.low_mm, host_.v_mm);
        const double high = std::max(heights.high_mm, host_.v_mm);
        guides_.push_back({Axis::Along, part, u_mm, std::move(reason), rank, {u_mm, low}, {u_mm, high}});
    }
    void across(double v_mm, Part part, std::string reason, int rank, Range along) {
        if (v_mm < 0 || v_mm > extents_.top_mm) return;
        const double low = std::min(along.low_mm, host_.u_mm);
        const double high = std::max(along.high_mm, host_.u_mm);
        guides_.push_back({Axis::Height, part, v_mm, std::move(reason), rank, {low, v_mm}, {high, v_mm}});
    }

    void plateHere(const catalogue::Catalogue& catalogue, const plan::Plate& plate) {
        const std::string& name = detail::nameOf(plate);
        const plan::Host& at = plate.host;
        up(at.u_mm, Part::Centre, fmt::format("centre of {}", name), kPlateHere, {at.v_mm, at.v_mm});
        across(at.v_mm, Part::Centre, fmt::format("height of {}", name), kPlateHere, {at.u_mm, at.u_mm});
        const catalogue::ComposedPlate composed = catalogue::compose(catalogue, plate);
        const Range heights{at.v_mm - composed.height_mm / 2, at.v_mm + composed.height_mm / 2};
        if (host_.v_mm < heights.low_mm || host_.v_mm > heights.high_mm) return;
        up(at.u_mm + composed.width_mm / 2, Part::LowEdge, fmt::format("touches {}", name), kTouching,
           heights);
        up(at.u_mm - composed.width_mm / 2, Part::HighEdge, fmt::format("touches {}", name), kTouching,
           heights);
    }
    void plateElsewhere(const plan::Plate& plate) {
        const bool upright = plate.host.kind == plan::Host::Kind::Wall ||
                             (plate.host.kind == plan::Host::Kind::Furniture && plate.host.face != "top" &&
                              plate.host.face != "bottom");
        if (upright)
            across(plate.host.v_mm, Part::Centre, fmt::format("height of {}", detail::nameOf(plate)),
                   kPlateElsewhere, {0, frame_.length_mm});
    }

    bool nearHeight(Range heights) const {
        return host_.v_mm > heights.low_mm - kNear_mm && host_.v_mm < heights.high_mm + kNear_mm;
    }
    void opening(const WallMark& mark, const UsualPlaces& usual) {
        const Range heights{mark.bottom_mm, mark.top_mm};
        const bool window = mark.opening->kind == plan::Opening::Kind::Window ||
                            mark.opening->kind == plan::Opening::Kind::Hatch;
        if (nearHeight(heights)) {
            up(mark.left_mm, Part::HighEdge, fmt::format("right edge at {}", mark.name), kOpeningEdge,
               heights);
            up(mark.right_mm, Part::LowEdge, fmt::format("left edge at {}", mark.name), kOpeningEdge,
               heights);
            if (window)
                up((mark.left_mm + mark.right_mm) / 2, Part::Centre, fmt::format("middle of {}", mark.name),
                   kMiddle, heights);
            if (!window && usual.from_jamb_mm) besideJamb(mark, *usual.from_jamb_mm, heights);
        }
        if (window)
            across(mark.bottom_mm, Part::HighEdge, fmt::format("top edge at the sill of {}", mark.name),
                   kOpeningEdge, {mark.left_mm, mark.right_mm});
    }
    void besideJamb(const WallMark& mark, double distance_mm, Range heights) {
        const std::string reason = fmt::format("usual distance: {} from {}",
                                               lengthInWords(distance_mm, house_.plan().units), mark.name);
        up(mark.left_mm - distance_mm, Part::Centre, reason, kUsualDistance, heights);
        up(mark.right_mm + distance_mm, Part::Centre, reason, kUsualDistance, heights);
    }

    void piece(const WallMark& mark, const UsualPlaces& usual) {
        sides(mark.left_mm, mark.right_mm, mark.name, {mark.bottom_mm, mark.top_mm});
        const Range along{mark.left_mm, mark.right_mm};
        top(mark.top_mm, mark.name, along);
        headboard(*mark.piece);
        const bool worktop =
            mark.piece->kind == "worktop" || plan::furnitureValue(*mark.piece, "worktopThickness") > 0;
        if (!worktop) return;
        for (const UsualHeight& height : usual.heights)
            if (height.from == UsualHeight::From::Worktop)
                across(mark.top_mm + height.height_mm, Part::Centre,
                       fmt::format("usual height: {}", height.name), kUsualHeight, along);
    }
    void sides(double left_mm, double right_mm, const std::string& name, Range heights) {
        if (!nearHeight(heights)) return;
        up((left_mm + right_mm) / 2, Part::Centre, fmt::format("middle of {}", name), kMiddle, heights);
        for (const Part part : {Part::LowEdge, Part::HighEdge}) {
            const char* own = part == Part::LowEdge ? "left" : "right";
            up(left_mm, part, fmt::format("{} edge at {}, left edge", own, name), kFurnitureEdge, heights);
            up(right_mm, part, fmt::format("{} edge at {}, right edge", own, name), kFurnitureEdge, heights);
        }
    }
    void top(double top_mm, const std::string& name, Range along) {
        across(top_mm, Part::LowEdge, fmt::format("lower edge at the top of {}", name), kFurnitureEdge,
               along);
        across(top_mm, Part::HighEdge, fmt::format("top edge at the top of {}", name), kFurnitureEdge, along);
    }
    /// A headboard that stands against this wall and is not the piece's own box: wider, narrower or higher.
    void headboard(const plan::Furniture& piece) {
        const double height = plan::furnitureValue(piece, "headboardHeight");
        if (height <= 0) return;
        const double width = plan::furnitureValue(piece, "headboardWidth");
        const double half = (width > 0 ? width : piece.size.width_mm) / 2;
        const auto at = [&](double x_mm) {
            return geometry::toFrame(frame_,
                                     geometry::fromLocal(piece, {x_mm, piece.size.depth_mm / 2, height}));
        };
        const plan::Vec3 one = at(-half);
        const plan::Vec3 other = at(half);
        if (std::abs(one.z - other.z) > 1) return; // its bed stands askew or sideways to this wall
        if (one.z > kNear_mm) return;              // the foot is at this wall
        const Range along{std::min(one.x, other.x), std::max(one.x, other.x)};
        sides(along.low_mm, along.high_mm, "the headboard", {piece.bottom_mm, one.y});
        top(one.y, "the headboard", along);
    }

    void tiles(const plan::WallLine& line) {
        const Range along{line.from_mm.value_or(0), line.to_mm.value_or(frame_.length_mm)};
        const Range heights{line.bottom_mm, line.bottom_mm + line.height_mm};
        repeat(line.start_u_mm, line.tile_width_mm, line.joint_mm, along,
               [&](double u, const char* what) { up(u, Part::Centre, what, kTile, heights); });
        repeat(line.start_v_mm, line.tile_height_mm, line.joint_mm, heights,
               [&](double v, const char* what) { across(v, Part::Centre, what, kTile, along); });
    }
    /// Middles of joints and of tiles within a range, from where one whole tile begins.
    template <class Add>
    static void repeat(double start_mm, double tile_mm, double joint_mm, Range range, Add add) {
        const double pitch = tile_mm + joint_mm;
        if (tile_mm < kSmallTile_mm || !(pitch > 0)) return;
        const double first = std::ceil((range.low_mm - start_mm) / pitch) - 1;
        const double last = std::floor((range.high_mm - start_mm) / pitch) + 1;
        const auto addWithin = [&](double at_mm, const char* what) {
            if (at_mm >= range.low_mm && at_mm <= range.high_mm) add(at_mm, what);
        };
        for (double i = first; i <= last; ++i) {
            addWithin(start_mm + i * pitch - joint_mm / 2, "tile joint");
            addWithin(start_mm + i * pitch + tile_mm / 2, "middle of a tile");
        }
    }

    const geometry::HouseIndex& house_;
    const geometry::Frame& frame_;
    const plan::Host& host_;
    const detail::HostExtents extents_;
    std::vector<Guide> guides_;
};

/// Where the plate's centre goes when its part lies on the guide.
double centreOn(const Guide& guide, plan::Vec2 plate_size_mm) {
    const double half = (guide.axis == Axis::Along ? plate_size_mm.x : plate_size_mm.y) / 2;
    switch (guide.part) {
    case Part::LowEdge:
        return guide.at_mm + half;
    case Part::HighEdge:
        return guide.at_mm - half;
    case Part::Centre:
        return guide.at_mm;
    }
    return guide.at_mm;
}

/// The nearest place counts, and of guides at equal distance the lowest rank.
const Guide* nearest(const std::vector<Guide>& guides, Axis axis, double at_mm, plan::Vec2 plate_size_mm,
                     double tolerance_mm) {
    const Guide* best = nullptr;
    double least = tolerance_mm;
    for (const Guide& guide : guides) {
        if (guide.axis != axis) continue;
        const double away = std::abs(centreOn(guide, plate_size_mm) - at_mm);
        if (!(away <= least)) continue;
        if (best != nullptr && away == least && guide.rank >= best->rank) continue;
        best = &guide;
        least = away;
    }
    return best;
}

} // namespace

std::vector<Guide> guides(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
                          const std::string& room_id, const plan::Host& host,
                          const std::vector<std::string>& except_plates, const UsualPlaces& usual) {
    const auto frame = geometry::hostFrame(house, room_id, host);
    if (!frame) return {};
    Collector collector(house, *frame, host);
    collector.plates(catalogue, room_id, except_plates);
    if (host.kind == plan::Host::Kind::Wall) {
        const plan::Room& room = *house.room(room_id);
        collector.marks(detail::wallMarks(house, room_id, host.wall), usual);
        collector.lines(room.walls[*plan::wallIndex(room, host.wall)]);
    }
    if (detail::isUpright(*frame)) collector.usualHeights(usual);
    collector.hostItself();
    return collector.take();
}

Snapped snap(const std::vector<Guide>& guides, double u_mm, double v_mm, plan::Vec2 plate_size_mm,
             double tolerance_mm) {
    Snapped snapped{u_mm, v_mm, std::nullopt, std::nullopt};
    if (const Guide* along = nearest(guides, Axis::Along, u_mm, plate_size_mm, tolerance_mm)) {
        snapped.u_mm = centreOn(*along, plate_size_mm);
        snapped.along = *along;
    }
    if (const Guide* height = nearest(guides, Axis::Height, v_mm, plate_size_mm, tolerance_mm)) {
        snapped.v_mm = centreOn(*height, plate_size_mm);
        snapped.height = *height;
    }
    return snapped;
}

} // namespace gangway::edit
