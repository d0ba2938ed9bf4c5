#include "edit/opening_edits.hpp"

#include "edit/part_check.hpp"
#include "edit/wording.hpp"
#include "geometry/walls.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <optional>

namespace gangway::edit {
namespace {

using Kind = plan::Opening::Kind;
using detail::openingName;
using detail::shownMm;

struct UsualSize {
    Kind kind;
    double width_mm, sill_mm, height_mm;
    double frame_mm, casing_mm;
    double cavity_mm, reveal_mm, sill_board_mm;
};
/// Common practice, no source.
constexpr UsualSize kUsual[] = {
    {Kind::HingedDoor, 900, 0, 2050, 32, 70, 0, 0, 0},  {Kind::PocketDoor, 900, 0, 2050, 32, 70, 900, 0, 0},
    {Kind::SlidingDoor, 1800, 0, 2100, 50, 0, 0, 0, 0}, {Kind::BarnDoor, 900, 0, 2050, 0, 0, 0, 0, 0},
    {Kind::Window, 1200, 900, 1200, 60, 0, 0, 100, 30}, {Kind::Plain, 900, 0, 2050, 0, 0, 0, 0, 0},
    {Kind::Hatch, 600, 1000, 600, 30, 0, 0, 0, 0},
};

bool isDoor(Kind kind) {
    return kind != Kind::Window && kind != Kind::Plain && kind != Kind::Hatch;
}

/// The wall an opening is in.
struct OnWall {
    const plan::Room* room = nullptr;
    std::size_t wall = 0;
    double length_mm = 0;
};
std::expected<OnWall, std::string> wallOf(const plan::Plan& plan, const plan::Opening& opening) {
    const plan::Room* room = plan::findRoom(plan, opening.room);
    if (room == nullptr) return std::unexpected(fmt::format("there is no room '{}'", opening.room));
    const auto wall = plan::wallIndex(*room, opening.wall);
    if (!wall)
        return std::unexpected(fmt::format("{} has no wall {}", detail::roomName(*room), opening.wall));
    const geometry::WallEdge edge = geometry::wallEdge(*room, *wall);
    return OnWall{room, *wall, length(edge.to_mm - edge.from_mm)};
}

/// The left edge nearest to the wanted one at which the opening is on its wall and clear of all others whose
/// height it shares.
std::optional<double> freeLeft(const plan::Plan& plan, const OnWall& at, const plan::Opening& opening) {
    std::vector<std::pair<double, double>> taken;
    for (const geometry::FaceHole& hole : geometry::faceHoles(plan, {at.room->id, at.wall}))
        if (hole.opening->id != opening.id && hole.bottom_mm < opening.sill_mm + opening.height_mm &&
            hole.top_mm > opening.sill_mm)
            taken.emplace_back(hole.left_mm, hole.right_mm);
    std::ranges::sort(taken);
    taken.emplace_back(at.length_mm, at.length_mm);
    std::optional<double> best;
    double from = 0;
    for (const auto& [left, right] : taken) {
        const double last = std::min(left, at.length_mm) - opening.width_mm;
        if (last >= from) {
            const double place = std::clamp(opening.left_mm, from, last);
            if (!best || std::abs(place - opening.left_mm) < std::abs(*best - opening.left_mm)) best = place;
        }
        from = std::max(from, right);
    }
    return best;
}

/// The room behind the middle of an opening; empty when there is none.
std::string roomBehind(const plan::Plan& plan, const OnWall& at, const plan::Opening& opening) {
    const double middle = opening.left_mm + opening.width_mm / 2;
    for (const geometry::PairedFace& pair : geometry::pairedFaces(plan, {at.room->id, at.wall}))
        if (pair.from_mm <= middle && middle <= pair.to_mm && pair.other.room != at.room->id)
            return pair.other.room;
    return {};
}

/// What reading would say against the opening in its room; empty when nothing.
std::string problemWith(const plan::Plan& plan, const plan::Opening& opening) {
    plan::Plan part = detail::partOf(plan, {opening.room, opening.joins});
    const auto there = std::ranges::find(part.openings, opening.id, &plan::Opening::id);
    if (there != part.openings.end())
        *there = opening;
    else
        part.openings.push_back(opening);
    return detail::problemOf(part).value_or("");
}

Refusable replaced(const plan::Plan& plan, plan::Opening after, std::string name, std::string merge_key) {
    if (std::string problem = problemWith(plan, after); !problem.empty()) return std::unexpected(problem);
    return Command{std::move(name), std::move(merge_key), [after = std::move(after)](Draft& draft) {
                       if (plan::Opening* opening = draft.change<plan::Opening>(after.id)) *opening = after;
                   }};
}

std::expected<plan::Opening, std::string> copyOf(const plan::Plan& plan, const std::string& id) {
    const plan::Opening* opening = detail::findOpening(plan, id);
    if (opening == nullptr) return std::unexpected(fmt::format("there is no opening '{}'", id));
    return *opening;
}

/// Gives a hinged door the leaf that fills it.
void fillWithLeaf(plan::Opening& opening) {
    if (opening.kind == Kind::HingedDoor)
        opening.leaf_mm = (opening.width_mm - 2 * opening.frame_mm) / opening.leaves;
}

std::string removalName(const plan::Plan& plan, const std::vector<std::string>& ids) {
    const plan::Opening* first = detail::findOpening(plan, ids.front());
    return ids.size() == 1 ? fmt::format("Remove {}", openingName(*first))
                           : fmt::format("Remove {} openings", ids.size());
}

} // namespace

plan::Opening usualOpening(Kind kind) {
    const auto& usual = *std::ranges::find(kUsual, kind, &UsualSize::kind);
    plan::Opening opening;
    opening.kind = kind;
    opening.width_mm = usual.width_mm;
    opening.sill_mm = usual.sill_mm;
    opening.height_mm = usual.height_mm;
    opening.frame_mm = usual.frame_mm;
    opening.casing_mm = opening.casing_beyond_mm = usual.casing_mm;
    opening.cavity_mm = usual.cavity_mm;
    opening.reveal_mm = usual.reveal_mm;
    opening.sill_board_mm = usual.sill_board_mm;
    fillWithLeaf(opening);
    return opening;
}

Refusable addOpening(const plan::Plan& plan, plan::Opening opening) {
    const auto at = wallOf(plan, opening);
    if (!at) return std::unexpected(at.error());
    opening.id =
        detail::freeId(opening.id, fmt::format("{}-{}", opening.room, detail::openingWord(opening.kind)),
                       [&](const std::string& id) { return detail::findOpening(plan, id) != nullptr; });
    const auto left = freeLeft(plan, *at, opening);
    if (!left)
        return std::unexpected(fmt::format("no gap of {} is {} wide", detail::wallName(*at->room, at->wall),
                                           shownMm(opening.width_mm)));
    opening.left_mm = *left;
    if (opening.joins.empty()) opening.joins = roomBehind(plan, *at, opening);
    if (std::string problem = problemWith(plan, opening); !problem.empty()) return std::unexpected(problem);
    std::string name = opening.name.empty() ? fmt::format("Add {} to {}", detail::openingWord(opening.kind),
                                                          detail::wallName(*at->room, at->wall))
                                            : fmt::format("Add {}", openingName(opening));
    return Command{std::move(name), "", [opening = std::move(opening)](Draft& draft) { draft.add(opening); }};
}

Refusable moveOpening(const plan::Plan& plan, const std::string& opening_id, double left_mm) {
    auto opening = copyOf(plan, opening_id);
    if (!opening) return std::unexpected(opening.error());
    const auto at = wallOf(plan, *opening);
    if (!at) return std::unexpected(at.error());
    const double before = opening->left_mm;
    const std::string behind = roomBehind(plan, *at, *opening);
    opening->left_mm = left_mm;
    const auto left = freeLeft(plan, *at, *opening);
    if (!left)
        return std::unexpected(fmt::format("no gap of {} is {} wide", detail::wallName(*at->room, at->wall),
                                           shownMm(opening->width_mm)));
    opening->left_mm = *left;
    // What a door led to is taken anew where the walls say so, and left alone where they never did.
    const std::string now_behind = roomBehind(plan, *at, *opening);
    if (!now_behind.empty() || opening->joins == behind) opening->joins = now_behind;
    const std::string who = openingName(*opening);
    auto command = replaced(plan, std::move(*opening),
                            fmt::format("Move {} by {}", who, shownMm(std::abs(*left - before))),
                            fmt::format("move opening {}", opening_id));
    if (command)
        command->describe = [who, opening_id](const plan::Plan& after, const Delta& step) {
            const auto* was = step.before<plan::Opening>(opening_id);
            const auto* is = detail::findOpening(after, opening_id);
            const double way = was && is ? is->left_mm - was->left_mm : 0;
            return fmt::format("Move {} by {}", who, shownMm(std::abs(way)));
        };
    return command;
}

Refusable resizeOpening(const plan::Plan& plan, const std::string& opening_id, const OpeningSize& size) {
    auto opening = copyOf(plan, opening_id);
    if (!opening) return std::unexpected(opening.error());
    const auto at = wallOf(plan, *opening);
    if (!at) return std::unexpected(at.error());
    if (!(size.width_mm > 0 && size.height_mm > 0))
        return std::unexpected(
            fmt::format("{} needs a width and a height above 0 mm", openingName(*opening)));
    if (size.left_mm < 0 || size.left_mm + size.width_mm > at->length_mm)
        return std::unexpected(fmt::format("{} would reach past {}, which is {} long", openingName(*opening),
                                           detail::wallName(*at->room, at->wall), shownMm(at->length_mm)));
    if (opening->leaf_mm) *opening->leaf_mm += (size.width_mm - opening->width_mm) / opening->leaves;
    if (size.width_mm <= 2 * opening->frame_mm || (opening->leaf_mm && *opening->leaf_mm <= 0))
        return std::unexpected(fmt::format("{} would have no clear width left", openingName(*opening)));
    opening->left_mm = size.left_mm;
    opening->width_mm = size.width_mm;
    opening->sill_mm = size.sill_mm;
    opening->height_mm = size.height_mm;
    const auto left = freeLeft(plan, *at, *opening);
    if (!left || *left != size.left_mm)
        return std::unexpected(fmt::format("{} would overlap another opening", openingName(*opening)));
    const std::string name = fmt::format("Resize {} to {} x {}", openingName(*opening),
                                         shownMm(size.width_mm), shownMm(size.height_mm));
    return replaced(plan, std::move(*opening), name, fmt::format("resize opening {}", opening_id));
}

Refusable changeOpening(const plan::Plan& plan, plan::Opening opening, const std::string& what,
                        const std::string& merge_key) {
    if (auto there = copyOf(plan, opening.id); !there) return std::unexpected(there.error());
    return replaced(plan, std::move(opening), what, merge_key);
}

Refusable swapHinge(const plan::Plan& plan, const std::string& opening_id) {
    auto opening = copyOf(plan, opening_id);
    if (!opening) return std::unexpected(opening.error());
    if (!isDoor(opening->kind)) return std::unexpected(fmt::format("{} is no door", openingName(*opening)));
    plan::Side& side = opening->kind == Kind::HingedDoor ? opening->hinge : opening->parks;
    side = side == plan::Side::Left ? plan::Side::Right : plan::Side::Left;
    const std::string name =
        fmt::format("{} {} on the {}", opening->kind == Kind::HingedDoor ? "Hinge" : "Park",
                    openingName(*opening), side == plan::Side::Left ? "left" : "right");
    return replaced(plan, std::move(*opening), name, "");
}

Refusable swapSwing(const plan::Plan& plan, const std::string& opening_id) {
    auto opening = copyOf(plan, opening_id);
    if (!opening) return std::unexpected(opening.error());
    if (opening->kind != Kind::HingedDoor)
        return std::unexpected(fmt::format("{} does not swing", openingName(*opening)));
    opening->swing = opening->swing == plan::Swing::In ? plan::Swing::Out : plan::Swing::In;
    const plan::Room* room = plan::findRoom(plan, opening->room);
    const std::string name = fmt::format("Open {} {} {}", openingName(*opening),
                                         opening->swing == plan::Swing::In ? "into" : "out of",
                                         room ? detail::roomName(*room) : opening->room);
    return replaced(plan, std::move(*opening), name, "");
}

Refusable changeOpeningKind(const plan::Plan& plan, const std::string& opening_id, Kind kind) {
    auto opening = copyOf(plan, opening_id);
    if (!opening) return std::unexpected(opening.error());
    const std::string before = openingName(*opening);
    const plan::Opening usual = usualOpening(kind);
    opening->kind = kind;
    opening->frame_mm = std::min(usual.frame_mm, opening->width_mm / 4);
    opening->casing_mm = usual.casing_mm;
    opening->casing_beyond_mm = usual.casing_beyond_mm;
    opening->cavity_mm = kind == Kind::PocketDoor ? opening->width_mm : 0;
    opening->reveal_mm = usual.reveal_mm;
    opening->sill_board_mm = usual.sill_board_mm;
    opening->leaf_mm.reset();
    fillWithLeaf(*opening);
    constexpr std::pair<Kind, std::string_view> kWords[] = {{Kind::HingedDoor, "hinged door"},
                                                            {Kind::PocketDoor, "pocket door"},
                                                            {Kind::SlidingDoor, "sliding door"},
                                                            {Kind::BarnDoor, "barn door"},
                                                            {Kind::Window, "window"},
                                                            {Kind::Plain, "plain opening"},
                                                            {Kind::Hatch, "hatch"}};
    const auto word = std::ranges::find(kWords, kind, &std::pair<Kind, std::string_view>::first);
    return replaced(plan, std::move(*opening), fmt::format("Make {} a {}", before, word->second), "");
}

Refusable removeOpenings(const plan::Plan& plan, const std::vector<std::string>& opening_ids) {
    if (opening_ids.empty()) return std::unexpected("choose an opening to remove");
    for (const std::string& id : opening_ids)
        if (auto there = copyOf(plan, id); !there) return std::unexpected(there.error());
    return Command{removalName(plan, opening_ids), "", [opening_ids](Draft& draft) {
                       for (const std::string& id : opening_ids)
                           draft.remove<plan::Opening>(id);
                   }};
}

} // namespace gangway::edit
