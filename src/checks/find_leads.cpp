// Leads: whether what is plugged in reaches its outlet, and what has none.
#include "checks/rules.hpp"

#include <cmath>
#include <fmt/format.h>

namespace gangway::checks {

using plan::Severity;

namespace {
plan::Finding aboutDevice(std::string rule, Severity severity, const plan::Device& device) {
    plan::Finding finding;
    finding.rule = std::move(rule);
    finding.severity = severity;
    finding.objects = {device.id};
    finding.place_mm = device.lead_exit_mm;
    return finding;
}

void findReach(const Facts& facts, const plan::Device& device, const plan::Plate& plate, Findings& findings) {
    const auto frame = geometry::hostFrame(facts.house(), plate.room, plate.host);
    if (!frame || device.lead_mm <= 0) return;
    // A lead lies along walls and floor, not through the air: the way goes along the wall, up and out.
    const plan::Vec3 from = geometry::toFrame(*frame, device.lead_exit_mm);
    const double way =
        std::abs(from.x - plate.host.u_mm) + std::abs(from.y - plate.host.v_mm) + std::abs(from.z);
    const double slack = facts.limit("leadSlack");
    if (way + slack <= device.lead_mm) return;
    const bool short_of_it = way > device.lead_mm;
    auto finding = aboutDevice("lead-short", short_of_it ? Severity::Fault : Severity::Warn, device);
    finding.objects.push_back(plate.id);
    finding.value_mm = way;
    finding.limit_mm = device.lead_mm - slack;
    finding.message =
        fmt::format("{} in {}: {} mm to {} by wall and floor, and {} of slack, with a lead of {} mm.",
                    device.name.empty() ? device.id : device.name, roomName(facts, device.room), mm(way),
                    plate.tag.empty() ? plate.id : plate.tag, mm(slack), mm(device.lead_mm));
    finding.source = facts.source("leadSlack");
    finding.remedy = "An outlet nearer to where the lead leaves it, or a longer lead from the maker.";
    findings.push_back(std::move(finding));
}
} // namespace

void findLeads(const Facts& facts, Findings& findings) {
    for (const plan::Device& device : facts.plan().devices) {
        if (const Point* point = facts.point(device.plate)) {
            findReach(facts, device, *point->plate, findings);
            continue;
        }
        auto finding = aboutDevice("device-without-outlet", Severity::Warn, device);
        finding.message =
            fmt::format("{} in {} has no outlet.", device.name.empty() ? device.id : device.name,
                        roomName(facts, device.room));
        finding.source = "every device has an outlet; common practice, no source";
        finding.remedy = "Add an outlet for it, or say which one it uses.";
        findings.push_back(std::move(finding));
    }
}

} // namespace gangway::checks
