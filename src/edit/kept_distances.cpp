#include "edit/kept_distances.hpp"

#include "edit/plate_name.hpp"
#include "edit/wording.hpp"
#include "geometry/furniture.hpp"
#include "geometry/house_index.hpp"
#include "geometry/walls.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <limits>
#include <set>

namespace gangway::edit {
namespace {

using From = plan::KeptDistance::From;
using Edge = plan::KeptDistance::Edge;
using plan::Vec3;

/// What something covers of a host's frame.
struct Span {
    double low_mm = std::numeric_limits<double>::max();
    double high_mm = std::numeric_limits<double>::lowest();
    void include(double at_mm) {
        low_mm = std::min(low_mm, at_mm);
        high_mm = std::max(high_mm, at_mm);
    }
};

double component(const geometry::Frame& frame, Vec3 house_mm, Along along) {
    const Vec3 local = geometry::toFrame(frame, house_mm);
    return along == Along::U ? local.x : local.y;
}

std::expected<Span, std::string> openingSpan(const plan::Plan& plan, const geometry::Frame& frame,
                                             const plan::Plate& plate, const plan::Opening& opening,
                                             Along along) {
    const plan::Room* room = plan::findRoom(plan, opening.room);
    const auto wall = room ? plan::wallIndex(*room, opening.wall) : std::nullopt;
    if (!wall) return std::unexpected(fmt::format("the wall of opening '{}' is not in the plan", opening.id));
    const bool hosted = plate.room == opening.room;
    const double casing = hosted ? opening.casing_mm : opening.casing_beyond_mm;
    const geometry::Frame own = geometry::wallFrame(*room, *wall);
    const double top = opening.sill_mm + opening.height_mm + casing;
    Span span;
    for (const double u : {opening.left_mm - casing, opening.left_mm + opening.width_mm + casing})
        for (const double v : {opening.sill_mm, top})
            span.include(component(frame, geometry::toHouse(own, {u, v, 0}), along));
    return span;
}

/// A headboard may be wider than its bed, so the solids count and not the stated size; heights are the
/// stated ones, because a tap is not a worktop.
Span furnitureSpan(const geometry::Frame& frame, const plan::Furniture& piece, Along along) {
    Span span;
    const bool sideways = along == Along::U || std::abs(frame.v.z) < 0.5;
    if (!sideways || piece.kind == "gltf") {
        for (const plan::Vec2 corner : geometry::footprint(piece))
            for (const double z : {piece.bottom_mm, piece.bottom_mm + piece.size.height_mm})
                span.include(component(frame, {corner.x, corner.y, z}, along));
        return span;
    }
    for (const auto& solid : geometry::furnitureSolids(piece).solids)
        for (const auto& point : solid.mesh.positions_mm)
            span.include(component(frame, point, along));
    return span;
}

double edgeOf(const Span& span, Edge edge) {
    if (edge == Edge::Centre) return (span.low_mm + span.high_mm) / 2;
    return edge == Edge::Left || edge == Edge::Bottom ? span.low_mm : span.high_mm;
}

std::string missing(const plan::KeptDistance& kept) {
    return fmt::format("'{}', which the distance is kept from, is not in the plan", kept.id);
}

/// Whether a plate would, through others, follow itself.
bool follows(const plan::Plan& plan, const std::string& follower, const std::string& target, Along along) {
    std::set<std::string> seen;
    std::string at = target;
    while (at != follower) {
        const plan::Plate* plate = plan::findPlate(plan, at);
        const auto& kept = along == Along::U ? plate->kept_along : plate->kept_height;
        if (!kept || kept->from != From::Plate || !seen.insert(at).second) return false;
        if (plan::findPlate(plan, kept->id) == nullptr) return false;
        at = kept->id;
    }
    return true;
}

std::string_view edgeWord(Edge edge) {
    switch (edge) {
    case Edge::Left:
        return "left edge";
    case Edge::Right:
        return "right edge";
    case Edge::Top:
        return "top";
    case Edge::Bottom:
        return "underside";
    case Edge::Centre:
        return "middle";
    }
    return "";
}

std::string nameOf(const plan::Plan& plan, const plan::KeptDistance& kept) {
    switch (kept.from) {
    case From::LeftCorner:
        return "the left corner";
    case From::RightCorner:
        return "the right corner";
    case From::Floor:
        return "the floor";
    case From::Plate:
        return detail::plateName(plan, kept.id);
    case From::Opening: {
        const auto* opening = detail::findOpening(plan, kept.id);
        const std::string name = opening && !opening->name.empty() ? opening->name : kept.id;
        return fmt::format("{}, {}", name, edgeWord(kept.edge));
    }
    case From::Furniture: {
        const auto* piece = plan::findFurniture(plan, kept.id);
        return fmt::format("{}, {}", piece ? piece->name : kept.id, edgeWord(kept.edge));
    }
    }
    return kept.id;
}

/// Collects what a plate's distance can be kept from.
class Choices {
public:
    Choices(const plan::Plan& plan, const plan::Plate& plate, Along along)
        : plan_(plan), plate_(plate), along_(along) {}

    std::vector<KeepChoice> take() {
        if (along_ == Along::U) {
            offer(From::LeftCorner, "", Edge::Left);
            offer(From::RightCorner, "", Edge::Right);
        } else {
            offer(From::Floor, "", Edge::Bottom);
        }
        openings();
        pieces();
        for (const auto& other : plan_.plates)
            if (other.room == plate_.room && other.id != plate_.id &&
                (along_ == Along::V || sameHost(other)) && !follows(plan_, plate_.id, other.id, along_))
                offer(From::Plate, other.id, Edge::Centre);
        std::ranges::stable_sort(choices_, {},
                                 [](const KeepChoice& choice) { return std::abs(choice.kept.distance_mm); });
        return std::move(choices_);
    }

private:
    bool sameHost(const plan::Plate& other) const {
        return other.host.kind == plate_.host.kind && other.host.wall == plate_.host.wall &&
               other.host.furniture == plate_.host.furniture && other.host.face == plate_.host.face;
    }
    std::pair<Edge, Edge> edges() const {
        return along_ == Along::U ? std::pair{Edge::Left, Edge::Right} : std::pair{Edge::Bottom, Edge::Top};
    }
    void openings() {
        const plan::Room* room = plan::findRoom(plan_, plate_.room);
        const auto wall = room && plate_.host.kind == plan::Host::Kind::Wall
                              ? plan::wallIndex(*room, plate_.host.wall)
                              : std::nullopt;
        if (!wall) return;
        for (const auto& hole : geometry::faceHoles(plan_, {room->id, *wall})) {
            offer(From::Opening, hole.opening->id, edges().first);
            offer(From::Opening, hole.opening->id, edges().second);
        }
    }
    void pieces() {
        constexpr double kAtWall_mm = 400; ///< stands at the wall: a chair in the middle is no reference
        const auto frame = geometry::hostFrame(plan_, plate_.room, plate_.host);
        if (!frame) return;
        for (const auto& piece : plan_.furniture) {
            if (piece.room != plate_.room) continue;
            double near = std::numeric_limits<double>::max();
            for (const plan::Vec2 corner : geometry::footprint(piece))
                near = std::min(near, geometry::toFrame(*frame, {corner.x, corner.y, piece.bottom_mm}).z);
            if (plate_.host.kind != plan::Host::Kind::Furniture && near > kAtWall_mm) continue;
            offer(From::Furniture, piece.id, edges().first);
            offer(From::Furniture, piece.id, Edge::Centre);
            offer(From::Furniture, piece.id, edges().second);
        }
    }
    void offer(From from, const std::string& id, Edge edge) {
        plan::KeptDistance kept{from, id, edge, 0, {}};
        const auto at = keptEdge(plan_, plate_, kept, along_);
        if (!at) return;
        kept.distance_mm = (along_ == Along::U ? plate_.host.u_mm : plate_.host.v_mm) - *at;
        choices_.push_back({kept, nameOf(plan_, kept)});
    }

    const plan::Plan& plan_;
    const plan::Plate& plate_;
    Along along_;
    std::vector<KeepChoice> choices_;
};

} // namespace

std::expected<double, std::string> keptEdge(const plan::Plan& plan, const plan::Plate& plate,
                                            const plan::KeptDistance& kept, Along along) {
    const auto frame = geometry::hostFrame(plan, plate.room, plate.host);
    if (!frame) return std::unexpected(frame.error());
    switch (kept.from) {
    case From::LeftCorner:
    case From::RightCorner:
        if (along == Along::V) return std::unexpected("a height can't be kept from a corner");
        return kept.from == From::LeftCorner ? 0 : frame->length_mm;
    case From::Floor:
        if (along == Along::U || std::abs(frame->v.z) < 0.5)
            return std::unexpected("only a height can be kept from the floor");
        return 0;
    case From::Plate: {
        const plan::Plate* other = plan::findPlate(plan, kept.id);
        if (other == nullptr) return std::unexpected(missing(kept));
        const auto point = geometry::hostPoint(plan, other->room, other->host);
        if (!point) return std::unexpected(point.error());
        return component(*frame, *point, along);
    }
    case From::Opening: {
        const plan::Opening* opening = detail::findOpening(plan, kept.id);
        if (opening == nullptr) return std::unexpected(missing(kept));
        const auto span = openingSpan(plan, *frame, plate, *opening, along);
        if (!span) return std::unexpected(span.error());
        return edgeOf(*span, kept.edge);
    }
    case From::Furniture: {
        const plan::Furniture* piece = plan::findFurniture(plan, kept.id);
        if (piece == nullptr) return std::unexpected(missing(kept));
        return edgeOf(furnitureSpan(*frame, *piece, along), kept.edge);
    }
    }
    return std::unexpected(missing(kept));
}

std::vector<KeepChoice> keepChoices(const plan::Plan& plan, const plan::Plate& plate, Along along) {
    return Choices(plan, plate, along).take();
}

std::string keptSentence(const plan::Plan& plan, const plan::KeptDistance& kept, Along along) {
    const bool before = kept.distance_mm < 0;
    const char* side = along == Along::U ? (before ? "left of" : "right of") : (before ? "below" : "above");
    return fmt::format("{:.10g} {} {}", std::abs(std::round(kept.distance_mm * 10) / 10), side,
                       nameOf(plan, kept));
}

std::expected<Command, std::string> keepDistance(const plan::Plan& plan, const std::string& plate_id,
                                                 const plan::KeptDistance& kept, Along along) {
    const plan::Plate* plate = plan::findPlate(plan, plate_id);
    if (plate == nullptr) return std::unexpected(fmt::format("there is no plate '{}'", plate_id));
    if (const auto edge = keptEdge(plan, *plate, kept, along); !edge) return std::unexpected(edge.error());
    if (kept.from == From::Plate && follows(plan, plate_id, kept.id, along))
        return std::unexpected(fmt::format("{} already follows {}; cut that link first",
                                           detail::plateName(plan, kept.id),
                                           detail::plateName(plan, plate_id)));
    return Command{
        fmt::format("Keep {} {}", detail::plateName(plan, plate_id), keptSentence(plan, kept, along)),
        "keep " + plate_id + (along == Along::U ? " u" : " v"), [plate_id, kept, along](Draft& draft) {
            plan::Plate* changed = draft.change<plan::Plate>(plate_id);
            if (changed == nullptr) return;
            const auto edge = keptEdge(draft.plan(), *changed, kept, along);
            if (!edge) return;
            (along == Along::U ? changed->kept_along : changed->kept_height) = kept;
            (along == Along::U ? changed->host.u_mm : changed->host.v_mm) = *edge + kept.distance_mm;
        }};
}

Command cutLink(const plan::Plan& plan, const std::string& plate_id, Along along) {
    return {fmt::format("Cut the link of {}", detail::plateName(plan, plate_id)), "",
            [plate_id, along](Draft& draft) {
                const plan::Plate* plate = plan::findPlate(draft.plan(), plate_id);
                if (plate == nullptr || !(along == Along::U ? plate->kept_along : plate->kept_height)) return;
                plan::Plate& changed = *draft.change<plan::Plate>(plate_id);
                (along == Along::U ? changed.kept_along : changed.kept_height).reset();
            }};
}

} // namespace gangway::edit
