// What opens before a plate: a plug in its way, and an open cupboard door before a switch.
#include "checks/rules.hpp"
#include "checks/standing.hpp"
#include "checks/sweeps.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace gangway::checks {

using plan::Severity;
using plan::Vec2;
using plan::Vec3;

namespace {
/// Sample places over a plate, each way.
constexpr int kSamples = 5;
/// An open front further from a wall than this hides nothing there; common practice, no source.
constexpr double kHidesMm = 300;
/// Less than this far in is play of hinges and plugs.
constexpr double kPlayMm = 0.5;

/// How far what stands out of a plate reaches into a sweep.
double reachInto(const Sweep& sweep, const geometry::Frame& frame, const Point& point, double out_mm) {
    double most = 0;
    for (int i = 0; i < kSamples; ++i)
        for (int j = 0; j < kSamples; ++j)
            for (const double part : {0.5, 1.0}) {
                const double u = point.centre_mm().x + point.half_mm.x * (2.0 * i / (kSamples - 1) - 1);
                const double v = point.centre_mm().y + point.half_mm.y * (2.0 * j / (kSamples - 1) - 1);
                most = std::max(most, sweep.into(geometry::toHouse(frame, {u, v, out_mm * part})));
            }
    return most;
}

void sayHindered(const Facts& facts, const Point& point, const Sweep& sweep, double into, double out_mm,
                 Findings& findings) {
    const bool plug = point.plug_mm > 0;
    auto finding = about(facts, "in-sweep", plug ? Severity::Warn : Severity::Hint, point);
    finding.objects.push_back(sweep.object);
    finding.value_mm = into;
    finding.limit_mm = 0;
    finding.message =
        fmt::format("{} reaches {} mm into what {} passes through as it opens: {} {} mm out.",
                    whoIn(facts, point), mm(into), sweep.name,
                    plug ? point.plug_words + " stands" : std::string("its front stands"), mm(out_mm));
    finding.source = plug ? facts.source(point.plug_limit) : "geometry of the plan";
    finding.remedy = "Move it out of the way of what opens, or hinge that at its other side.";
    findings.push_back(std::move(finding));
}

/// Whether an open front stands before a plate on the wall beside its piece.
void findHidden(const Facts& facts, const Point& point, const geometry::Frame& frame, const Sweep& sweep,
                Findings& findings) {
    if (!sweep.stands || point.plate->host.kind != plan::Host::Kind::Wall || isPutAway(*point.plate) ||
        !(point.control || point.socket))
        return;
    const Vec3 hinge = geometry::toFrame(frame, {sweep.hinge_mm.x, sweep.hinge_mm.y, 0});
    const Vec3 free = geometry::toFrame(frame, {sweep.free_mm.x, sweep.free_mm.y, 0});
    const double near = std::min(hinge.z, free.z);
    const double wide = std::abs(free.x - hinge.x);
    if (near < 0 || near > kHidesMm || std::abs(free.z - hinge.z) > wide / 2) return; // away, or not along it
    const Vec2 at = point.centre_mm();
    const double over = std::min(at.x + point.half_mm.x, std::max(hinge.x, free.x)) -
                        std::max(at.x - point.half_mm.x, std::min(hinge.x, free.x));
    if (over <= kPlayMm || at.y + point.half_mm.y <= sweep.low_mm || at.y - point.half_mm.y >= sweep.high_mm)
        return;
    auto finding = about(facts, "behind-front", Severity::Hint, point);
    finding.objects.push_back(sweep.object);
    finding.value_mm = over;
    finding.limit_mm = 0;
    finding.message =
        fmt::format("{} of the {} mm of {} are behind {} when it is open, {} mm off the wall.", mm(over),
                    mm(2 * point.half_mm.x), whoIn(facts, point), sweep.name, mm(near));
    finding.source = "open fronts (C1, C6); common practice, no source";
    finding.remedy = "Move it further from the piece, or hinge the front at its other side.";
    findings.push_back(std::move(finding));
}

void findPoint(const Facts& facts, const Point& point, const std::vector<Sweep>& sweeps, Findings& findings) {
    const plan::Host& host = point.plate->host;
    const auto frame = geometry::hostFrame(facts.house(), point.plate->room, host);
    if (!frame) return;
    const double out = std::max(point.plug_mm, point.made.relief_mm);
    const Sweep* worst = nullptr;
    double most = kPlayMm;
    for (const Sweep& sweep : sweeps) {
        if (host.kind == plan::Host::Kind::Furniture && host.furniture == sweep.object) continue;
        const double into = reachInto(sweep, *frame, point, out);
        if (into > most) {
            most = into;
            worst = &sweep;
        }
        findHidden(facts, point, *frame, sweep, findings);
    }
    if (worst != nullptr) sayHindered(facts, point, *worst, most, out, findings);
}
} // namespace

void findSweeps(const Facts& facts, const plan::Room& room, Findings& findings) {
    if (facts.pointsIn(room.id).empty()) return;
    std::vector<Sweep> sweeps = doorSweeps(facts, room);
    for (const plan::Furniture* piece : facts.house().furnitureIn(room.id)) {
        auto fronts = frontSweeps(facts, *piece);
        std::ranges::move(fronts, std::back_inserter(sweeps));
    }
    for (const Point* point : facts.pointsIn(room.id))
        findPoint(facts, *point, sweeps, findings);
}

} // namespace gangway::checks
