// Moving plates: within their host, to another, by arrow keys.
#include "edit/kept_distances.hpp"
#include "edit/plate_edits.hpp"
#include "edit/plate_name.hpp"

#include <cmath>
#include <fmt/format.h>

namespace gangway::edit {
namespace {

/// Gives a kept distance the value it has where the plate stands now; a link to something that is not there
/// is cut.
void renewKept(const plan::Plan& plan, plan::Plate& plate, Along along) {
    auto& kept = along == Along::U ? plate.kept_along : plate.kept_height;
    if (!kept) return;
    const auto edge = keptEdge(plan, plate, *kept, along);
    if (edge)
        kept->distance_mm = (along == Along::U ? plate.host.u_mm : plate.host.v_mm) - *edge;
    else
        kept.reset();
}

bool sameSurface(const plan::Host& a, const plan::Host& b) {
    return a.kind == b.kind && a.wall == b.wall && a.furniture == b.furniture && a.face == b.face;
}

std::string wordsFor(const plan::Plan& plan, const std::vector<PlateMove>& moves) {
    return moves.size() == 1 ? detail::plateName(plan, moves.front().plate)
                             : fmt::format("{} plates", moves.size());
}

/// "by 71 mm", "71 mm along and 50 mm up", "to wall B": the whole way of a step, by its first plate.
std::string wholeWay(const plan::Plan& after, const Delta& step, const std::string& plate_id) {
    const plan::Plate* now = plan::findPlate(after, plate_id);
    const plan::Plate* before = step.before<plan::Plate>(plate_id);
    if (now == nullptr || before == nullptr) return "";
    if (now->room != before->room || !sameSurface(now->host, before->host)) {
        const plan::Room* room = plan::findRoom(after, now->room);
        return fmt::format(" to the {}", room ? room->name : now->room);
    }
    const double along = std::round((now->host.u_mm - before->host.u_mm) * 10) / 10;
    const double up = std::round((now->host.v_mm - before->host.v_mm) * 10) / 10;
    if (up == 0) return fmt::format(" by {:.10g} mm", std::abs(along));
    const std::string height = fmt::format("{:.10g} mm {}", std::abs(up), up > 0 ? "up" : "down");
    return along == 0 ? " " + height : fmt::format(" by {:.10g} mm and {}", std::abs(along), height);
}

std::string keyFor(std::string_view verb, const std::vector<PlateMove>& moves) {
    std::string key(verb);
    for (const PlateMove& move : moves)
        key.append(" ").append(move.plate);
    return key;
}

/// All are put where they go before any distance is taken anew, so that plates that hang on each other can
/// move together.
void place(Draft& draft, const std::vector<PlateMove>& moves) {
    for (const PlateMove& move : moves) {
        plan::Plate* plate = draft.change<plan::Plate>(move.plate);
        if (plate == nullptr) continue;
        plate->host = move.host;
        if (!move.room.empty()) plate->room = move.room;
    }
    for (const PlateMove& move : moves) {
        plan::Plate* plate = draft.change<plan::Plate>(move.plate);
        if (plate == nullptr) continue;
        renewKept(draft.plan(), *plate, Along::U);
        renewKept(draft.plan(), *plate, Along::V);
    }
}

bool stays(const plan::Plan& plan, const PlateMove& move) {
    const plan::Plate* plate = plan::findPlate(plan, move.plate);
    return plate == nullptr || (plate->host == move.host && (move.room.empty() || move.room == plate->room));
}

} // namespace

Command movePlates(const plan::Plan& plan, const std::vector<PlateMove>& moves) {
    const std::string who = wordsFor(plan, moves);
    const std::string first = moves.empty() ? std::string() : moves.front().plate;
    return {"Move " + who, keyFor("move", moves),
            [moves](Draft& draft) {
                std::vector<PlateMove> real;
                for (const PlateMove& move : moves)
                    if (!stays(draft.plan(), move)) real.push_back(move);
                place(draft, real);
            },
            [who, first](const plan::Plan& after, const Delta& step) {
                return fmt::format("Move {}{}", who, wholeWay(after, step, first));
            }};
}

Command movePlate(const plan::Plan& plan, const std::string& plate_id, double u_mm, double v_mm) {
    const plan::Plate* plate = plan::findPlate(plan, plate_id);
    if (plate == nullptr) return movePlates(plan, {});
    plan::Host host = plate->host;
    host.u_mm = u_mm;
    host.v_mm = v_mm;
    return movePlates(plan, {{plate_id, host, {}}});
}

Command nudgePlates(const plan::Plan& plan, const std::vector<std::string>& plate_ids, double du_mm,
                    double dv_mm) {
    std::vector<PlateMove> moves;
    for (const std::string& id : plate_ids) {
        const plan::Plate* plate = plan::findPlate(plan, id);
        if (plate == nullptr) continue;
        plan::Host host = plate->host;
        host.u_mm += du_mm;
        host.v_mm += dv_mm;
        moves.push_back({id, host, {}});
    }
    return movePlates(plan, moves);
}

Command moveSymbol(const plan::Plan& plan, const std::string& plate_id,
                   const std::optional<plan::Vec2>& offset_mm) {
    const std::string name = detail::plateName(plan, plate_id);
    return {fmt::format("{} the plan symbol of {}", offset_mm ? "Move" : "Put back", name),
            "symbol " + plate_id, [plate_id, offset_mm](Draft& draft) {
                const plan::Plate* plate = plan::findPlate(draft.plan(), plate_id);
                if (plate != nullptr && plate->symbol_offset_mm != offset_mm)
                    draft.change<plan::Plate>(plate_id)->symbol_offset_mm = offset_mm;
            }};
}

} // namespace gangway::edit
