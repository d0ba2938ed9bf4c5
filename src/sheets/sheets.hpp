// Plan to drawing: elevation sheets and the sign-off booklet.
#pragma once

#include "catalogue/pack.hpp"
#include "drawing/drawing.hpp"
#include "plan/plan.hpp"
#include "sheets/datum.hpp"

#include <expected>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace gangway::sheets {

struct Options {
    std::string paper = "A3";    ///< "A4", "A3", "A2", "A1"
    std::optional<double> scale; ///< 10, 20, 25 or 50; not set: the largest that fits
    std::string room;            ///< only this room id
    std::string wall;            ///< only this wall id
    std::filesystem::path base;  ///< folder of the plan, for glTF files
    /// Whose zones are drawn on elevations; nullptr: none. Must outlive the call.
    const catalogue::CountryPack* pack = nullptr;
    bool wet_zones = true;    ///< round baths and showers
    bool cable_zones = false; ///< where cables run in walls
    /// An older state of the plan: what is not as it was in it is marked; nullptr: nothing is. Must outlive
    /// the call.
    const plan::Plan* since = nullptr;
    bool check_dimensions = true; ///< auxiliary dimensions, in brackets
    Fix fix = Fix::Second;        ///< what elevations show
    unsigned threads = 0;         ///< that draw at the same time; 0: as many as the machine runs at once
    Datum datum;                  ///< from where set-outs and heights of elevations count
};

/// Sheets E-01, E-02... (B-01, B-02... of boxes at first fix) for each wall with something on it, in room and
/// wall order; a wall that is too long or too crowded for one has several. The error is a sentence: an
/// unknown room, wall or paper, or a scale at which a wall does not fit.
[[nodiscard]] std::expected<drawing::Drawing, std::string>
elevationSheets(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const Options& options);

/// The sign-off booklet on A4: a page on what is signed, with counts and room to write, then each room's
/// plates with where they are, what was answered and their fingerprints. Of `options`, room and base count;
/// rooms without plates are left out.
drawing::Drawing agreementBooklet(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                                  const Options& options = {});

} // namespace gangway::sheets
