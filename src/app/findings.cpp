// What the checks found: kept, cut into groups, opened one after the other.
#include "app/findings.hpp"

#include "app/finding_parts.hpp"
#include "app/finding_view.hpp"
#include "checks/accepted.hpp"
#include "checks/checks.hpp"

#include <algorithm>

namespace gangway::app {

namespace {
using plan::Finding;
using plan::Severity;

constexpr std::array kWorstFirst{Severity::Fault, Severity::Warn, Severity::Hint};

void index(State& state) {
    Findings& kept = state.findings;
    kept.ids.clear();
    kept.rooms.clear();
    kept.plates.clear();
    for (std::size_t i = 0; i < kept.list.size(); ++i) {
        const Finding& finding = kept.list[i];
        kept.ids.push_back(checks::findingId(finding));
        kept.rooms.push_back(roomOf(state.plan(), finding));
        if (finding.accepted) continue;
        for (const std::string& id : finding.objects)
            if (plan::findPlate(state.plan(), id) != nullptr) kept.plates[id].push_back(i);
    }
}

bool isListed(const Findings& kept, std::size_t i, const std::string& room) {
    const Finding& finding = kept.list[i];
    return (room.empty() || kept.rooms[i] == room) &&
           kept.shown[static_cast<std::size_t>(finding.severity)] &&
           (!finding.accepted || kept.show_accepted);
}

std::string plural(Severity severity) {
    return std::string(severityWord(severity)) + 's';
}

std::vector<FindingGroup> bySeverity(const State& state, const std::string& room) {
    std::vector<FindingGroup> groups;
    for (const Severity severity : kWorstFirst) {
        FindingGroup group{severityWord(severity), plural(severity), room, {}};
        for (std::size_t i = 0; i < state.findings.list.size(); ++i)
            if (state.findings.list[i].severity == severity && isListed(state.findings, i, room))
                group.rows.push_back(i);
        if (!group.rows.empty()) groups.push_back(std::move(group));
    }
    return groups;
}

std::vector<FindingGroup> byRoom(const State& state) {
    std::vector<FindingGroup> groups;
    const auto add = [&](const std::string& id, const std::string& name) {
        FindingGroup group{"room:" + id, name, id, {}};
        for (std::size_t i = 0; i < state.findings.list.size(); ++i)
            if (state.findings.rooms[i] == id && isListed(state.findings, i, {})) group.rows.push_back(i);
        if (!group.rows.empty()) groups.push_back(std::move(group));
    };
    for (const auto& room : state.plan().rooms)
        add(room.id, room.name.empty() ? room.id : room.name);
    add({}, "The house");
    return groups;
}

/// Filters, tab and heading are set so that its row is in the list.
void bringIntoList(State& state, std::size_t i) {
    Findings& kept = state.findings;
    state.docket = DocketTab::Findings;
    kept.scroll = true;
    kept.shown[static_cast<std::size_t>(kept.list[i].severity)] = true;
    if (kept.list[i].accepted) kept.show_accepted = true;
    if (kept.rooms[i].empty()) state.this_room_only = false;
    if (state.this_room_only) state.room = kept.rooms[i];
    for (const auto& group : findingGroups(state, listedRoom(state)))
        if (std::ranges::find(group.rows, i) != group.rows.end()) kept.folded.erase(group.key);
}

void fadeBefore(State& state, const std::set<std::string>& before) {
    for (const std::string& id : before)
        if (state.faded.insert(id).second) state.findings.faded.insert(id);
}

void putBackFaded(State& state) {
    for (const std::string& id : std::exchange(state.findings.faded, {}))
        state.faded.erase(id);
}

/// On the plan the place comes into the middle; that of a leg is where its plates and lamps are.
void showOnPlan(State& state, const FindingPlace& place) {
    if (const auto* room = plan::findRoom(state.plan(), place.room)) {
        state.room = room->id;
        state.storey = room->storey;
    }
    plan::Vec2 low{1e12, 1e12};
    plan::Vec2 high = low * -1;
    const auto take = [&](plan::Vec3 at) {
        low = {std::min(low.x, at.x), std::min(low.y, at.y)};
        high = {std::max(high.x, at.x), std::max(high.y, at.y)};
    };
    if (place.at_mm) take(*place.at_mm);
    for (const auto& body : place.bodies)
        if (!place.at_mm || body.kind == FindingBody::Kind::Plate)
            for (const plan::Vec3 corner : body.corners_mm)
                take(corner);
    if (low.x <= high.x) state.findings.plan_at = (low + high) * 0.5;
}

std::vector<plan::Vec3> previewed(const State& state, const Finding& finding) {
    if (!state.findings.previewing || !finding.move) return {};
    return movedCorners(state, *finding.move);
}
} // namespace

const catalogue::CountryPack* findingPack(const State& state) {
    const auto* pack = state.packs.pack(state.plan().pack);
    return pack != nullptr ? pack : state.packs.pack("international");
}

namespace {
/// What was touched since the list was made; everything when that can't be told.
checks::Edited editedSince(const State& state) {
    const auto touched =
        state.findings.version == 0 ? std::nullopt : state.document.touchedSince(state.findings.version);
    checks::Edited edited;
    edited.everything = !touched || touched->others || touched->lighting;
    if (edited.everything) return edited;
    edited.plates = touched->plates;
    edited.furniture = touched->furniture;
    edited.luminaires = touched->luminaires;
    edited.devices = touched->devices;
    edited.legs = touched->legs;
    return edited;
}

/// Remembers the list from before the step that is going on, for what it breaks and mends.
void rememberStep(State& state, const checks::Edited& edited) {
    Findings& kept = state.findings;
    const std::string step = state.document.undoName();
    const bool concerns = !edited.furniture.empty() || (edited.everything && kept.version != 0);
    const bool goes_on = !kept.step.empty() && step == kept.step;
    if (!goes_on) kept.before = kept.list;
    kept.step = concerns || goes_on ? step : std::string();
}
} // namespace

const std::vector<Finding>& findingsOf(State& state) {
    Findings& kept = state.findings;
    const auto* pack = findingPack(state);
    // What was derived must be of the plan as it is: an edit of this frame is looked at in the next one.
    if (kept.version == state.document.version() || !state.derived.house ||
        state.derived.version != state.document.version() || pack == nullptr)
        return kept.list;
    checks::Edited edited = editedSince(state);
    rememberStep(state, edited);
    if (!kept.checker || kept.checker_pack != pack->id || kept.version == 0) {
        kept.checker =
            std::make_unique<checks::Checker>(state.catalogue, *pack, state.document.file().parent_path());
        kept.checker_pack = pack->id;
        edited.everything = true;
    }
    kept.list = kept.checker->again(*state.derived.house, edited);
    kept.version = state.document.version();
    kept.ripples =
        kept.step.empty() ? std::vector<checks::Ripple>{} : checks::compare(kept.before, kept.list);
    index(state);
    return kept.list;
}

std::array<int, 3> findingCounts(State& state, const std::string& room) {
    std::array<int, 3> counts{};
    const auto& list = findingsOf(state);
    for (std::size_t i = 0; i < list.size(); ++i)
        if (!list[i].accepted && (room.empty() || state.findings.rooms[i] == room))
            ++counts[static_cast<std::size_t>(list[i].severity)];
    return counts;
}

std::string listedRoom(const State& state) {
    return state.this_room_only ? state.room : std::string();
}

std::vector<FindingGroup> findingGroups(const State& state, const std::string& room) {
    return room.empty() && state.findings.groups == FindingGroups::Room ? byRoom(state)
                                                                        : bySeverity(state, room);
}

std::optional<std::size_t> findingAt(const State& state, const std::string& id) {
    const auto& ids = state.findings.ids;
    const auto at = std::ranges::find(ids, id);
    if (id.empty() || at == ids.end()) return std::nullopt;
    return static_cast<std::size_t>(at - ids.begin());
}

const Finding* openOne(const State& state) {
    const auto at = findingAt(state, state.findings.open);
    return at && state.seat == Seat::Designer ? &state.findings.list[*at] : nullptr;
}

FindingPlace placeOfFinding(const State& state, const Finding& finding) {
    if (!state.derived.house) return {};
    return placeOf(*state.derived.house, state.catalogue, finding);
}

void lookAtFinding(State& state) {
    const Finding* finding = openOne(state);
    if (finding == nullptr || !state.derived.house) return;
    const FindingPlace place = placeOfFinding(state, *finding);
    putBackFaded(state);
    const bool on_plan = state.stance == Stance::Plan && !state.findings.plan_for_it;
    const bool of_plan = place.of_plan || place.room.empty();
    if (on_plan || of_plan) {
        state.findings.plan_for_it = !on_plan;
        if (!on_plan) setStance(state, Stance::Plan);
        showOnPlan(state, place);
        return;
    }
    state.findings.plan_for_it = false;
    FindingViewOptions options;
    if (state.stage.height > 0) options.aspect = state.stage.width / state.stage.height;
    options.also_mm = previewed(state, *finding);
    options.base = state.document.file().parent_path();
    const FindingView view = findingView(*state.derived.house, place, options);
    const plan::Room* room = plan::findRoom(state.plan(), place.room);
    state.stance = Stance::Walk;
    state.room = room->id;
    state.storey = room->storey;
    fadeBefore(state, view.before);
    flyTo(state, view.found ? view.camera : scene::roomView(state.plan(), *room));
}

void openFinding(State& state, const std::string& id) {
    const auto at = findingAt(state, id);
    if (!at || state.seat != Seat::Designer) return;
    choosePlate(state, {}, false);
    state.thing.reset();
    state.findings.open = id;
    state.findings.why.clear();
    state.findings.previewing = false;
    state.findings.then.clear();
    bringIntoList(state, *at);
    lookAtFinding(state);
}

void closeFinding(State& state) {
    putBackFaded(state);
    if (std::exchange(state.findings.plan_for_it, false) && state.stance == Stance::Plan)
        setStance(state, Stance::Walk);
    state.findings.open.clear();
    state.findings.then.clear();
    state.findings.previewing = false;
    state.findings.preview = {};
}

void stepFinding(State& state, int by) {
    findingsOf(state);
    std::vector<std::size_t> order;
    for (const auto& group : findingGroups(state, listedRoom(state)))
        order.insert(order.end(), group.rows.begin(), group.rows.end());
    if (order.empty()) {
        state.docket = DocketTab::Findings;
        say(state, state.this_room_only ? "Nothing is found in this room" : "Nothing is found");
        return;
    }
    const auto open = findingAt(state, state.findings.open);
    const auto here = open ? std::ranges::find(order, *open) : order.end();
    const auto count = static_cast<int>(order.size());
    int next = by > 0 ? 0 : count - 1;
    if (here != order.end()) next = (static_cast<int>(here - order.begin()) + by + count) % count;
    openFinding(state, state.findings.ids[order[static_cast<std::size_t>(next)]]);
}

std::string findingPlate(const State& state) {
    const Finding* finding = openOne(state);
    if (finding == nullptr) return {};
    for (const std::string& id : finding->objects)
        if (plan::findPlate(state.plan(), id) != nullptr) return id;
    return {};
}

void centrePlanOnFinding(State& state) {
    const auto at = std::exchange(state.findings.plan_at, std::nullopt);
    PlanPicture& picture = state.plan_picture;
    if (!at || state.stage.height <= 0) return;
    constexpr double kAcross_mm = 5000; // of the house along the view's shorter side
    const double side = static_cast<double>(std::min(state.stage.width, state.stage.height));
    picture.px_per_mm =
        std::max(picture.px_per_mm, static_cast<float>(side * picture.base.mapping.scale / kAcross_mm));
    picture.centre_mm = *at;
}

void followFindings(State& state) {
    Findings& kept = state.findings;
    if (state.seat != Seat::Designer) {
        if (!kept.open.empty()) closeFinding(state);
        return;
    }
    findingsOf(state);
    if (kept.open.empty() || kept.version != state.document.version()) return;
    const auto at = findingAt(state, kept.open);
    const bool settled = !at || (kept.list[*at].accepted && !kept.then.empty());
    if (!settled) {
        // Its remedy was done and it still stands: it is looked at where it is now.
        if (!std::exchange(kept.then, {}).empty()) lookAtFinding(state);
        return;
    }
    const auto then = std::exchange(kept.then, {});
    closeFinding(state);
    for (const std::string& id : then)
        if (const auto next = findingAt(state, id); next && !kept.list[*next].accepted) {
            openFinding(state, id);
            return;
        }
}

} // namespace gangway::app
