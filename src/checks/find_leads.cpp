// Leads: whether what is plugged in reaches its outlet and across what, and what could be plugged in where.
#include "checks/outlet_assignment.hpp"
#include "checks/rules.hpp"
#include "checks/stretches.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace gangway::checks {

using plan::Severity;

namespace {
constexpr const char* kClearSource =
    "leads lie clear of doors, hobs, sinks and walking ways (C22); common practice, no source";

const std::string& tagOf(const plan::Plate& plate) {
    return plate.tag.empty() ? plate.id : plate.tag;
}

std::string whoIn(const Facts& facts, const plan::Device& device) {
    return fmt::format("{} in {}", device.name.empty() ? device.id : device.name,
                       roomName(facts, device.room));
}

plan::Finding aboutDevice(std::string rule, Severity severity, const DeviceOutlet& outlet) {
    plan::Finding finding;
    finding.rule = std::move(rule);
    finding.severity = severity;
    finding.objects = {outlet.device->id};
    if (outlet.plate != nullptr) finding.objects.push_back(outlet.plate->id);
    finding.place_mm = outlet.device->lead_exit_mm;
    return finding;
}

/// A place for a plate on its own wall, or another plate.
struct Nearer {
    plan::PlateMove move;
    double way_mm = 0;
};

/// Heights worth trying: the plate's own, the lead's, and those usual for sockets.
std::vector<double> heightsFor(const Facts& facts, const plan::Device& device, const plan::Plate& plate) {
    std::vector<double> heights = {plate.host.v_mm, std::round(device.lead_exit_mm.z)};
    for (const catalogue::MountingHeight& usual : facts.pack().heights)
        if (usual.from == catalogue::MountingHeight::From::Floor &&
            std::ranges::find(usual.kinds, catalogue::ModuleKind::Socket) != usual.kinds.end())
            heights.push_back(usual.height_mm);
    return heights;
}

/// The place nearest to where the lead comes out that nothing bars and that all leads of the plate reach.
std::optional<Nearer> placeNearer(const Facts& facts, const LeadRoom& leads, const plan::Device& device,
                                  const Point& point) {
    const plan::Room* room = facts.house().room(point.plate->room);
    const auto wall = room == nullptr ? std::nullopt : plan::wallIndex(*room, point.plate->host.wall);
    if (!wall || point.plate->host.kind != plan::Host::Kind::Wall) return std::nullopt;
    const WallScene scene = sceneOf(facts, *room, *wall);
    const double exit_u = geometry::toFrame(scene.frame, device.lead_exit_mm).x;
    const double play = facts.limit("marginWarn");
    std::optional<Nearer> best;
    for (const double v : heightsFor(facts, device, *point.plate)) {
        plan::Plate moved = *point.plate;
        moved.host.v_mm = v;
        Point there = point;
        there.plate = &moved;
        const Interval reached = reachedByLeads(facts, scene, there);
        const plan::Vec2 half = there.half_mm + plan::Vec2{play, play};
        auto bars = barsFor(facts, scene, there);
        // Behind the device itself it could not be unplugged without pulling it out.
        for (Bar& bar : bars)
            if (bar.object == device.furniture) bar.severity = std::max(bar.severity, Severity::Warn);
        const auto free = freeStretches(bars, half, v, reached, Severity::Warn);
        const auto at = nearestFree(free, exit_u);
        if (!at) continue;
        // Whole millimetres are set out.
        for (const double u : {std::round(*at), std::ceil(*at), std::floor(*at)}) {
            moved.host.u_mm = u;
            const bool inside = std::ranges::any_of(
                free, [&](const Stretch& one) { return u >= one.u.from_mm && u <= one.u.to_mm; });
            const LeadWay way = leads.way(device, moved);
            if (!inside || !way.crossings.empty() || way.length_mm > reachOf(facts, device)) continue;
            if (!best || way.length_mm < best->way_mm) best = Nearer{{moved.id, u, v}, way.length_mm};
            break;
        }
    }
    return best;
}

/// The nearest plate of the room with an outlet that nobody has or is to have.
std::optional<std::pair<const plan::Plate*, double>> plateNearer(const Facts& facts, const LeadRoom& leads,
                                                                 const OutletAssignment& all,
                                                                 const DeviceOutlet& outlet) {
    std::optional<std::pair<const plan::Plate*, double>> best;
    for (const PlateUse& use : all.plates) {
        if (!use.point->socket || use.free - use.given <= 0 || use.point->plate == outlet.plate) continue;
        const LeadWay way = leads.way(*outlet.device, *use.point->plate);
        if (!way.crossings.empty() || way.length_mm > reachOf(facts, *outlet.device)) continue;
        if (!best || way.length_mm < best->second) best = {use.point->plate, way.length_mm};
    }
    return best;
}

void proposeNearer(const Facts& facts, LeadRooms& rooms, const OutletAssignment& all,
                   const DeviceOutlet& outlet, plan::Finding& finding) {
    const LeadRoom* leads = rooms.room(outlet.plate->room);
    if (leads == nullptr) return;
    if (const auto other = plateNearer(facts, *leads, all, outlet)) {
        finding.plug = plan::Plugging{outlet.device->id, other->first->id};
        finding.remedy = fmt::format("Plug it into {}: {} mm to it by wall and floor.", tagOf(*other->first),
                                     mm(other->second));
        return;
    }
    const Point* point = facts.point(outlet.plate->id);
    const auto place = point == nullptr ? std::nullopt : placeNearer(facts, *leads, *outlet.device, *point);
    if (!place) return;
    finding.move = place->move;
    finding.remedy =
        fmt::format("Move {} to {} from the left corner, {} high: {} mm to it.", tagOf(*outlet.plate),
                    mm(place->move.u_mm), mm(place->move.v_mm), mm(place->way_mm));
}

void findReach(const Facts& facts, LeadRooms& rooms, const OutletAssignment& all, const DeviceOutlet& outlet,
               Findings& findings) {
    const plan::Device& device = *outlet.device;
    if (!outlet.way || device.lead_mm <= 0) return;
    const LeadWay& way = *outlet.way;
    const double slack = facts.limit("leadSlack");
    const bool reaches = way.length_mm + slack <= device.lead_mm;
    if (reaches && way.crossings.empty()) return;
    const bool too_short = way.length_mm > device.lead_mm;
    auto finding = aboutDevice(reaches ? "lead-crosses" : "lead-short",
                               too_short ? Severity::Fault : Severity::Warn, outlet);
    finding.value_mm = way.length_mm;
    finding.limit_mm = device.lead_mm - slack;
    const std::string who = whoIn(facts, device);
    const std::string& tag = tagOf(*outlet.plate);
    if (reaches) {
        finding.objects.push_back(way.crossings.front().id);
        finding.message = fmt::format("The lead of {} lies {} on its way to {}, {} mm long.", who,
                                      crossingWords(way), tag, mm(way.length_mm));
        finding.source = kClearSource;
        finding.remedy = "An outlet on this side of it.";
    } else {
        const std::string across = crossingWords(way);
        finding.message = fmt::format(
            "{}: {} mm to {} by wall and floor{}, and {} of slack, with a lead of {} mm.", who,
            mm(way.length_mm), tag, across.empty() ? "" : ", " + across, mm(slack), mm(device.lead_mm));
        finding.source = facts.source("leadSlack");
        finding.remedy = "An outlet nearer to where the lead leaves it, or a longer lead from the maker.";
    }
    proposeNearer(facts, rooms, all, outlet, finding);
    findings.push_back(std::move(finding));
}

void findUnassigned(const Facts& facts, const DeviceOutlet& outlet, Findings& findings) {
    const plan::Device& device = *outlet.device;
    if (outlet.plate == nullptr) {
        auto finding = aboutDevice("device-without-outlet", Severity::Warn, outlet);
        finding.message = fmt::format("{} has no outlet: {}.", whoIn(facts, device), outlet.why);
        finding.source = "every device has an outlet; common practice, no source";
        finding.remedy = device.data ? "Add power and data for it, or say which outlet it uses."
                                     : "Add an outlet for it, or say which one it uses.";
        findings.push_back(std::move(finding));
        return;
    }
    auto finding = aboutDevice("device-unassigned", Severity::Hint, outlet);
    finding.value_mm = outlet.way->length_mm;
    if (device.lead_mm > 0) finding.limit_mm = reachOf(facts, device);
    finding.message = fmt::format("{} is plugged in nowhere yet; {} has an outlet for it, {} mm away{}.",
                                  whoIn(facts, device), tagOf(*outlet.plate), mm(outlet.way->length_mm),
                                  outlet.data == nullptr ? "" : ", with data at " + tagOf(*outlet.data));
    finding.source = "every device has an outlet; common practice, no source";
    finding.remedy = fmt::format("Plug it into {}.", tagOf(*outlet.plate));
    finding.plug = plan::Plugging{device.id, outlet.plate->id};
    findings.push_back(std::move(finding));
}
} // namespace

void findLeads(const Facts& facts, const plan::Room& room, Findings& findings) {
    LeadRooms rooms(facts);
    const OutletAssignment all = assignOutlets(facts, rooms, room);
    for (const DeviceOutlet& outlet : all.devices) {
        if (outlet.decided)
            findReach(facts, rooms, all, outlet, findings);
        else
            findUnassigned(facts, outlet, findings);
    }
    findPlugs(facts, all, findings);
}

} // namespace gangway::checks
