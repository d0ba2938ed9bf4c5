// Ceilings: as many heights as corners, creases that divide the room, and every part between them plane.
#include "plan/number_text.hpp"
#include "plan/polygon_checks.hpp"
#include "plan/validation.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::plan {

namespace {

using Part = std::vector<std::size_t>; // corners of the outline, in order

constexpr double kPlaneMm = 2; ///< heights are rounded to whole mm in practice; this much they may be off

/// Height of the plane through the part's widest triangle, compared with every corner of the part:
/// the corner that is furthest off, and how far.
struct OffPlane {
    std::size_t corner = 0;
    double by_mm = 0;
};

OffPlane offPlane(const Room& room, const Part& part) {
    const auto p = [&](std::size_t k) { return room.outline[part[k]]; };
    const auto h = [&](std::size_t k) { return room.ceiling.heights_mm[part[k]]; };
    // Best third corner for the base from the first corner to the one furthest from it.
    std::size_t far = 1;
    for (std::size_t k = 2; k < part.size(); ++k)
        if (length(p(k) - p(0)) > length(p(far) - p(0))) far = k;
    std::size_t third = far == 1 ? 2 : 1;
    const auto area = [&](std::size_t k) { return std::abs(cross(p(far) - p(0), p(k) - p(0))); };
    for (std::size_t k = 1; k < part.size(); ++k)
        if (k != far && area(k) > area(third)) third = k;
    const Vec2 a = p(far) - p(0);
    const Vec2 b = p(third) - p(0);
    const double whole = cross(a, b);
    OffPlane worst;
    if (whole == 0) return worst;
    for (std::size_t k = 0; k < part.size(); ++k) {
        const Vec2 d = p(k) - p(0);
        const double plane =
            h(0) + (h(far) - h(0)) * cross(d, b) / whole + (h(third) - h(0)) * cross(a, d) / whole;
        if (std::abs(h(k) - plane) > worst.by_mm) worst = {part[k], std::abs(h(k) - plane)};
    }
    return worst;
}

/// Cuts the part that has both corners, not as neighbours, in two. False when there is none.
bool cut(std::vector<Part>& parts, std::size_t i, std::size_t j) {
    for (Part& part : parts) {
        const auto first = std::ranges::find_if(part, [&](std::size_t c) { return c == i || c == j; });
        if (first == part.end()) continue;
        const std::size_t other = *first == i ? j : i;
        const auto second = std::find(first + 1, part.end(), other);
        if (second == part.end()) continue;
        const bool neighbours = second == first + 1 || (first == part.begin() && second + 1 == part.end());
        if (neighbours) continue;
        Part between(first, second + 1);
        part.erase(first + 1, second);
        parts.push_back(std::move(between));
        return true;
    }
    return false;
}

bool leavesRoom(const std::vector<Vec2>& outline, Vec2 a, Vec2 b) {
    if (!insideOrOn(outline, (a + b) * 0.5, kPlayMm)) return true;
    for (std::size_t i = 0; i < outline.size(); ++i)
        if (crossInside(a, b, outline[i], outline[(i + 1) % outline.size()])) return true;
    return false;
}

/// What is wrong with one crease; empty when it divided the ceiling.
std::string creaseProblem(const Room& room, std::pair<int, int> crease, std::vector<Part>& parts) {
    const auto [i, j] = crease;
    const int corners = static_cast<int>(room.outline.size());
    if (i < 0 || j < 0 || i >= corners || j >= corners)
        return fmt::format("names a corner that is not there; corners count from 0 to {}", corners - 1);
    if (i == j) return "begins and ends at one corner; name two";
    const auto from = static_cast<std::size_t>(i);
    const auto to = static_cast<std::size_t>(j);
    if (std::abs(i - j) == 1 || std::abs(i - j) == corners - 1)
        return "runs along a wall; a crease joins two corners across the room";
    if (leavesRoom(room.outline, room.outline[from], room.outline[to]))
        return "leaves the room; join two corners that see each other";
    if (!cut(parts, from, to)) return "crosses another crease or stands twice; remove one of them";
    return {};
}

} // namespace

void validateCeiling(Validation& v, const Room& room, const std::string& pointer,
                     const std::string& subject) {
    const Ceiling& ceiling = room.ceiling;
    const std::string place = pointer + "/ceiling";
    const std::size_t corners = room.outline.size();
    if (corners < 3) return;
    if (ceiling.heights_mm.size() != 1 && ceiling.heights_mm.size() != corners) {
        v.error(place,
                fmt::format("{}: the ceiling has {} heights; give one, or one for each of the {} corners",
                            subject, ceiling.heights_mm.size(), corners));
        return;
    }
    for (const double height : ceiling.heights_mm)
        if (!(height > 0)) {
            v.error(place, fmt::format("{}: a ceiling height is {}; give more than 0", subject,
                                       shownNumber(height)));
            return;
        }
    if (ceiling.heights_mm.size() == 1) {
        if (!ceiling.creases.empty())
            v.error(place + "/creases",
                    fmt::format("{}: a flat ceiling has no creases; give a height for each of the "
                                "{} corners, or remove 'creases'",
                                subject, corners));
        return;
    }
    std::vector<Part> parts(1);
    for (std::size_t c = 0; c < corners; ++c)
        parts.front().push_back(c);
    for (std::size_t c = 0; c < ceiling.creases.size(); ++c)
        if (const std::string problem = creaseProblem(room, ceiling.creases[c], parts); !problem.empty()) {
            v.error(fmt::format("{}/creases/{}", place, c),
                    fmt::format("{}: crease [{}, {}] {}", subject, ceiling.creases[c].first,
                                ceiling.creases[c].second, problem));
            return;
        }
    for (const Part& part : parts)
        if (const OffPlane off = offPlane(room, part); off.by_mm > kPlaneMm) {
            v.error(place, fmt::format(
                               "{}: the ceiling is not plane, corner {} is {} mm off; correct its height, or "
                               "add 'creases' from corner to corner where the ceiling is folded",
                               subject, off.corner, shownNumber(off.by_mm)));
            return;
        }
}

} // namespace gangway::plan
