// How findings are begun and worded.
#include "checks/rules.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <limits>

namespace gangway::checks {

plan::Finding about(const Facts& facts, std::string rule, plan::Severity severity, const Point& point) {
    plan::Finding finding;
    finding.rule = std::move(rule);
    finding.severity = severity;
    finding.objects = {point.plate->id};
    if (const auto at = geometry::hostPoint(facts.house(), point.plate->room, point.plate->host))
        finding.place_mm = *at;
    return finding;
}

std::string roomName(const Facts& facts, const std::string& room_id) {
    const plan::Room* room = facts.house().room(room_id);
    return room == nullptr || room->name.empty() ? room_id : room->name;
}

std::string whoIn(const Facts& facts, const Point& point) {
    return fmt::format("{} in {}", point.tag(), roomName(facts, point.plate->room));
}

std::string mm(double length_mm) {
    const double rounded = std::round(length_mm * 10) / 10;
    if (std::abs(rounded - std::round(rounded)) < 0.05)
        return fmt::format("{:.0f}", std::abs(rounded) < 0.05 ? 0.0 : rounded);
    return fmt::format("{:.1f}", rounded);
}

double toOutline(const std::vector<plan::Vec2>& outline, plan::Vec2 at) {
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const plan::Vec2 a = outline[i];
        const plan::Vec2 edge = outline[(i + 1) % outline.size()] - a;
        const double part =
            dot(edge, edge) > 0 ? std::clamp(dot(at - a, edge) / dot(edge, edge), 0.0, 1.0) : 0;
        least = std::min(least, length(at - (a + edge * part)));
    }
    return least;
}

} // namespace gangway::checks
