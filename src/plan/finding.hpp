// A finding: one result of looking at a readable plan, as plain data that can be listed, clicked,
// printed and written as JSON. Checks, switching and review all report this type.
#pragma once

#include "plan/vec.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gangway::plan {

enum class Severity { Hint, Warn, Fault };

/// A remedy the program can carry out: a plate goes to another place on its host.
struct PlateMove {
    std::string plate; ///< id
    double u_mm = 0;
    double v_mm = 0;
};

/// Another: a device is plugged into another plate.
struct Plugging {
    std::string device; ///< id
    std::string plate;  ///< id
};

/// The two places between which something was measured, house coordinates, z above FFL.
struct Gap {
    Vec3 from_mm;
    Vec3 to_mm;
};

struct Finding {
    std::string rule;                 ///< "covered-plate"
    Severity severity = Severity::Hint;
    std::vector<std::string> objects; ///< ids, the plate first
    std::optional<double> value_mm;   ///< what was measured
    std::optional<double> limit_mm;   ///< what it was held against
    std::string message;              ///< what and where, in a sentence
    std::string source;               ///< standard and clause, or "common practice, no source"
    std::string remedy;               ///< what would settle it
    std::optional<PlateMove> move;    ///< the same as an edit, where it is one that causes no worse finding
    std::optional<Plugging> plug;     ///< or this
    std::string rehang;               ///< or this: id of a door that is hung at its other side
    std::optional<Vec3> place_mm;     ///< in house coordinates, z above FFL
    std::optional<Gap> gap;           ///< what the measure lies between, where it can be drawn
    std::optional<std::string> accepted; ///< the designer takes it as it is: why
};

} // namespace gangway::plan
