#include "lighting/photometry.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

namespace gangway::lighting {

namespace {

constexpr double kPi = std::numbers::pi;
constexpr double kDegree = kPi / 180;
/// Edge of a recessed luminaire's light where the plan gives no beam; common practice, no source.
constexpr double kRecessedBeam_deg = 110;

/// Integral over the half space of 2^-(2 t / beam)^2, by Simpson's rule; the shape is smooth.
double beamIntegral(double sharpness) {
    constexpr int kSteps = 1800;
    const double step = kPi / 2 / kSteps;
    double sum = 0;
    for (int i = 0; i <= kSteps; ++i) {
        const double t = i * step;
        const double weight = i == 0 || i == kSteps ? 1 : i % 2 == 1 ? 4 : 2;
        sum += weight * std::exp(-sharpness * t * t) * std::sin(t);
    }
    return 2 * kPi * sum * step / 3;
}

/// Steps a degree of evenly spaced angles; 1 for a single one, 0 for uneven ones.
double perDegree(const std::vector<double>& angles) {
    if (angles.size() < 2) return 1;
    const double step = (angles.back() - angles.front()) / static_cast<double>(angles.size() - 1);
    for (std::size_t i = 0; i < angles.size(); ++i)
        if (std::abs(angles[i] - angles.front() - step * static_cast<double>(i)) > 1e-6) return 0;
    return 1 / step;
}

Distribution usualFor(const plan::Luminaire& luminaire) {
    using Kind = plan::Luminaire::Kind;
    if (luminaire.beam_deg > 0 && luminaire.beam_deg < 180)
        return Distribution::beam(luminaire.lumens, luminaire.beam_deg);
    switch (luminaire.kind) {
    case Kind::Recessed:
        return Distribution::beam(luminaire.lumens, kRecessedBeam_deg);
    case Kind::Wall:
        return Distribution::halfSpace(luminaire.lumens);
    case Kind::Floor:
    case Kind::Table:
        return Distribution::uniform(luminaire.lumens);
    case Kind::Ceiling:
    case Kind::Pendant:
    case Kind::Linear:
    case Kind::UnderUnit:
        break;
    }
    return Distribution::cosine(luminaire.lumens);
}

std::string nameOf(const plan::Luminaire& luminaire) {
    return luminaire.tag.empty() ? luminaire.id : luminaire.tag;
}

} // namespace

Distribution Distribution::uniform(double lumens) {
    Distribution made;
    made.lumens_ = lumens;
    made.scale_ = lumens / (4 * kPi);
    return made;
}

Distribution Distribution::cosine(double lumens) {
    Distribution made = uniform(lumens);
    made.shape_ = Shape::Cosine;
    made.least_cosine_ = 0;
    made.scale_ = lumens / kPi;
    return made;
}

Distribution Distribution::halfSpace(double lumens) {
    Distribution made = uniform(lumens);
    made.shape_ = Shape::HalfSpace;
    made.least_cosine_ = 0;
    made.scale_ = lumens / (2 * kPi);
    return made;
}

Distribution Distribution::beam(double lumens, double beam_deg) {
    Distribution made = uniform(lumens);
    made.shape_ = Shape::Beam;
    made.least_cosine_ = 0;
    const double half = std::clamp(beam_deg, 1.0, 170.0) / 2 * kDegree;
    made.sharpness_ = std::numbers::ln2 / (half * half);
    made.scale_ = lumens / beamIntegral(made.sharpness_);
    return made;
}

Distribution Distribution::fromIes(IesFile file, double lumens) {
    const double own = luminousFlux(file);
    Distribution made;
    made.shape_ = Shape::Table;
    made.lumens_ = own > 0 && lumens > 0 ? lumens : own;
    made.scale_ = own > 0 ? made.lumens_ / own : 0;
    // A little beyond, for what rounding leaves of a cosine.
    made.least_cosine_ = std::cos(std::min(180.0, file.vertical_deg.back()) * kDegree) - 1e-4;
    made.vertical_per_deg_ = perDegree(file.vertical_deg);
    made.horizontal_per_deg_ = perDegree(file.horizontal_deg);
    made.table_ = std::move(file);
    return made;
}

double Distribution::intensity(double along_axis, double forward, double aside) const {
    switch (shape_) {
    case Shape::Uniform:
        return scale_;
    case Shape::HalfSpace:
        return along_axis > 0 ? scale_ : 0;
    case Shape::Cosine:
        return along_axis > 0 ? scale_ * along_axis : 0;
    case Shape::Beam: {
        if (along_axis <= 0) return 0;
        const double t = std::acos(std::min(1.0, along_axis));
        return scale_ * std::exp(-sharpness_ * t * t);
    }
    case Shape::Table:
        break;
    }
    constexpr double kPerDegree = 180 / kPi;
    const double vertical = std::acos(std::clamp(along_axis, -1.0, 1.0)) * kPerDegree;
    const double horizontal = turned() ? std::atan2(aside, forward) * kPerDegree : 0;
    if (vertical_per_deg_ > 0 && horizontal_per_deg_ > 0) return scale_ * fromEvenTable(vertical, horizontal);
    return scale_ * intensityAt(table_, vertical, horizontal);
}

double Distribution::fromEvenTable(double vertical_deg, double horizontal_deg) const {
    const std::size_t size = table_.vertical_deg.size();
    const double v = (vertical_deg - table_.vertical_deg.front()) * vertical_per_deg_;
    if (v < 0 || v > static_cast<double>(size - 1)) return intensityAt(table_, vertical_deg, horizontal_deg);
    const std::size_t i = std::min(static_cast<std::size_t>(v), size - 2);
    const double part = v - static_cast<double>(i);
    const double* row = table_.candela.data() + i;
    if (!turned()) return row[0] + (row[1] - row[0]) * part;
    const double angle = foldedAngle(table_, horizontal_deg);
    const double h = (angle - table_.horizontal_deg.front()) * horizontal_per_deg_;
    const std::size_t j = std::min(static_cast<std::size_t>(h), table_.horizontal_deg.size() - 2);
    row += j * size;
    const double here = row[0] + (row[1] - row[0]) * part;
    const double next = row[size] + (row[size + 1] - row[size]) * part;
    return here + (next - here) * (h - static_cast<double>(j));
}

LuminaireLight distributionOf(const plan::Luminaire& luminaire, const std::filesystem::path& base) {
    LuminaireLight light;
    if (!luminaire.ies.empty()) {
        auto file = readIes(base / luminaire.ies);
        if (file && luminousFlux(*file) > 0) {
            light.distribution = Distribution::fromIes(std::move(*file), luminaire.lumens);
            light.from_file = true;
            return light;
        }
        const std::string reason = file ? fmt::format("{}: gives no light", luminaire.ies) : file.error();
        light.problem = fmt::format("{}: {}. A usual distribution for its kind is taken instead.",
                                    nameOf(luminaire), reason);
    }
    light.distribution = usualFor(luminaire);
    return light;
}

} // namespace gangway::lighting
