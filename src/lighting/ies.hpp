// Photometric files after IES LM-63 (1986, 1991, 1995, 2002): what a luminaire gives in which direction.
#pragma once

#include <expected>
#include <filesystem>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace gangway::lighting {

/// Type C photometry: vertical angles from straight down (0) to straight up (180), horizontal angles about
/// that axis.
struct IesFile {
    /// How the horizontal angles that are not listed follow from those that are.
    enum class Symmetry {
        Axial,           ///< one angle, all round alike
        Quadrant,        ///< 0 to 90
        Bilateral,       ///< 0 to 180
        BilateralAcross, ///< 90 to 270 (from memory)
        None             ///< 0 to 360
    };
    std::string standard; ///< "IESNA:LM-63-2002"; "LM-63-1986" for files without that line
    std::vector<std::pair<std::string, std::string>> keywords;
    int lamps = 1;
    double lumens_per_lamp = -1; ///< -1: absolute photometry
    double watts = 0;
    Symmetry symmetry = Symmetry::Axial;
    std::vector<double> vertical_deg;   ///< ascending
    std::vector<double> horizontal_deg; ///< ascending
    /// All vertical angles of the first horizontal one, then of the next; multiplier and ballast factors are
    /// in them.
    std::vector<double> candela;
};

/// Reads a file's text. The error is one line, "lamp.ies:12: the reason"; `name` is what it begins with.
/// Refused with a reason: type A and B photometry, TILT in a file of its own, more than 1,000 angles either
/// way. TILT=INCLUDE is read and checked but not applied: luminaires hang as they were measured.
[[nodiscard]] std::expected<IesFile, std::string> parseIes(std::string_view text, const std::string& name);

/// The same from disk; at most 8 MiB.
[[nodiscard]] std::expected<IesFile, std::string> readIes(const std::filesystem::path& file);

/// Intensity in cd, bilinear in the two angles (degrees; any horizontal angle). 0 outside the vertical angles
/// the file lists.
double intensityAt(const IesFile& file, double vertical_deg, double horizontal_deg);

/// A horizontal angle brought into the range the file lists, by its symmetry.
double foldedAngle(const IesFile& file, double horizontal_deg);

/// Luminous flux in lm: the exact integral of the bilinear table over the sphere.
double luminousFlux(const IesFile& file);

} // namespace gangway::lighting
