#include "lighting/emitters.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

namespace gangway::lighting {

namespace {

using plan::Vec3;

constexpr Vec3 kDown{0, 0, -1};
/// Long luminaires are cut into pieces no longer than this: a fifth of the distance at which a point may
/// stand for them, at a worktop 750 under a unit (the rule of five is common practice, no source).
constexpr double kPiece_mm = 150;
constexpr int kMostPieces = 24;

/// How far out of its host's surface a luminaire's light starts, mm.
double standOff(const plan::Luminaire& lamp) {
    using Kind = plan::Luminaire::Kind;
    switch (lamp.kind) {
    case Kind::Ceiling:
        return 90;
    case Kind::Wall:
        return std::max(70.0, (lamp.size_mm > 0 ? lamp.size_mm : 220) / 2 * 0.85) + 25;
    case Kind::Pendant:
        return (lamp.drop_mm > 0 ? lamp.drop_mm : 800) + 10;
    case Kind::Recessed:
        return 12;
    case Kind::Linear:
        return lamp.drop_mm + 58;
    case Kind::UnderUnit:
        return lamp.drop_mm + 22;
    case Kind::Floor:
        return 1430;
    case Kind::Table:
        return 350;
    }
    return 0;
}

double lengthOf(const plan::Luminaire& lamp) {
    using Kind = plan::Luminaire::Kind;
    if (lamp.kind == Kind::Linear) return lamp.size_mm > 0 ? lamp.size_mm : 1200;
    if (lamp.kind == Kind::UnderUnit) return lamp.size_mm > 0 ? lamp.size_mm : 600;
    return 0;
}

bool level(Vec3 w) {
    return std::abs(w.z) < 0.5;
}

/// Any unit direction square to `aim`, the one nearest to `wanted` where there is one.
Vec3 squareTo(Vec3 aim, Vec3 wanted) {
    for (const Vec3 candidate : {wanted, Vec3{1, 0, 0}, Vec3{0, 1, 0}}) {
        const Vec3 rest = candidate - aim * dot(candidate, aim);
        if (length(rest) > 0.1) return rest * (1 / length(rest));
    }
    return {1, 0, 0};
}

struct Placed {
    geometry::Frame frame;
    Vec3 at;
    Vec3 along; ///< of a long one
};

void addPoints(Emitters& emitters, const plan::Luminaire& lamp, const Placed& placed, LuminaireLight light,
               double level_part) {
    const double long_mm = lengthOf(lamp);
    const int pieces = std::clamp(static_cast<int>(std::ceil(long_mm / kPiece_mm)), 1, kMostPieces);
    Emitter emitter;
    emitter.luminaire = &lamp;
    emitter.aim = level(placed.frame.w) && !light.from_file ? placed.frame.w : kDown;
    emitter.ahead = squareTo(emitter.aim, level(placed.frame.w) ? placed.frame.w : placed.along);
    emitter.part = level_part / pieces;
    emitter.distribution = std::make_shared<const Distribution>(std::move(light.distribution));
    for (int i = 0; i < pieces; ++i) {
        emitter.at_mm = placed.at + placed.along * (long_mm * ((i + 0.5) / pieces - 0.5));
        emitters.points.push_back(emitter);
    }
}

} // namespace

Emitters emittersOf(const geometry::HouseIndex& house, const std::vector<const plan::Luminaire*>& luminaires,
                    const LightOptions& options) {
    Emitters emitters;
    for (const plan::Luminaire* lamp : luminaires) {
        const auto dimmed = options.levels.find(lamp->id);
        const double level_part = dimmed == options.levels.end() ? 1 : std::clamp(dimmed->second, 0.f, 1.f);
        if (level_part <= 0) continue;
        const auto frame = geometry::hostFrame(house, lamp->room, lamp->host);
        if (!frame) {
            emitters.problems.push_back(fmt::format("{}: {}", lamp->id, frame.error()));
            continue;
        }
        LuminaireLight light = distributionOf(*lamp, options.base);
        if (!light.problem.empty()) emitters.problems.push_back(light.problem);
        if (light.distribution.dark()) continue;
        const double turn = lamp->turn_deg * std::numbers::pi / 180;
        const Placed placed{*frame,
                            geometry::toHouse(*frame, {lamp->host.u_mm, lamp->host.v_mm, standOff(*lamp)}),
                            frame->u * std::cos(turn) + frame->v * std::sin(turn)};
        addPoints(emitters, *lamp, placed, std::move(light), level_part);
    }
    return emitters;
}

} // namespace gangway::lighting
