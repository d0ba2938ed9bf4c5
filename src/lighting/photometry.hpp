// How luminaires spread their light: from an IES file, or by kind where there is none.
#pragma once

#include "lighting/ies.hpp"
#include "plan/plan.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace gangway::lighting {

/// Intensity by direction about an axis. The axis is where the light is aimed (vertical angle 0); for IES
/// files it is straight down.
class Distribution {
public:
    /// The same all round: I = flux / 4 pi (trade-facts 8.5).
    static Distribution uniform(double lumens);
    /// A flat emitter: I = flux / pi cos t (8.5).
    static Distribution cosine(double lumens);
    /// The same over the half space before it: I = flux / 2 pi. For wall lights, whose shades differ too much
    /// for better: common practice, no source.
    static Distribution halfSpace(double lumens);
    /// A cone of full angle `beam_deg` (1 to 170) at whose edge the intensity is half of the axis's, falling
    /// as I0 2^-(2 t / beam)^2; I0 makes the whole half space give `lumens`. The shape is common practice, no
    /// source; compare 8.6 for the mean over a sharp cone.
    static Distribution beam(double lumens, double beam_deg);
    /// A file's shape, scaled to `lumens`; as the file says when lumens is 0.
    static Distribution fromIes(IesFile file, double lumens);

    double lumens() const { return lumens_; }
    /// cd. `along_axis` is the cosine of the angle to the axis; `forward` and `aside` are the direction's
    /// components along horizontal angle 0 and 90 and count for IES files that are not axial. The three make
    /// a unit vector.
    double intensity(double along_axis, double forward = 1, double aside = 0) const;
    /// Shone nowhere: no ray is worth casting.
    bool dark() const { return lumens_ <= 0; }
    /// The least cosine to the axis that any light goes at.
    double leastCosine() const { return least_cosine_; }
    /// False where light is the same all round the axis: `forward` and `aside` need not be given.
    bool turned() const { return shape_ == Shape::Table && table_.symmetry != IesFile::Symmetry::Axial; }

private:
    /// intensityAt() without searching, for evenly spaced angles.
    double fromEvenTable(double vertical_deg, double horizontal_deg) const;

    enum class Shape { Uniform, HalfSpace, Cosine, Beam, Table };
    Shape shape_ = Shape::Uniform;
    double lumens_ = 0;
    double scale_ = 0; ///< cd on the axis, or what the table is multiplied with
    double sharpness_ = 0;
    double least_cosine_ = -1;
    IesFile table_;
    double vertical_per_deg_ = 0; ///< steps a degree of the table; 0 where they are uneven
    double horizontal_per_deg_ = 0;
};

/// A luminaire's distribution, and a sentence when its IES file could not be used and a usual one stands in.
/// The plan's lumens are the luminaire's own flux: where an IES file is given too, it gives the shape and
/// they give the amount; without lumens in the plan the file gives both.
struct LuminaireLight {
    Distribution distribution;
    bool from_file = false; ///< aimed straight down, whatever it is mounted on
    std::string problem;
};
LuminaireLight distributionOf(const plan::Luminaire& luminaire, const std::filesystem::path& base);

} // namespace gangway::lighting
