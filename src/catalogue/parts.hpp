// What a composed plate is made of, as lines with counts: for the plate bench and for schedules.
#pragma once

#include "catalogue/catalogue.hpp"

namespace gangway::catalogue {

struct Part {
    enum class Kind { Frame, Module, Blank, Unknown, Box, Barrier };
    Kind kind = Kind::Frame;
    std::string code; ///< a module's; of an unknown one the type that the plan names; else empty
    std::string
        name; ///< "frame, round boxes, pitch 71, 3 gangs", "socket outlet, type F", "box, 68 dia, 47 deep"
    std::string finish; ///< name of the finish; empty for what lies in the wall
    int count = 1;
    bool operator==(const Part&) const = default;
};

/// The box depth to fit, mm: what the plate states, else the format's, or where its modules need more the
/// next that is usual for the format. 0 for a plate without boxes.
double boxDepth(const plan::Plate& plate, const ComposedPlate& composed);

/// Frame, modules in the order of the plate, blanks, boxes, barrier; equal ones counted in one line.
std::vector<Part> parts(const Catalogue& catalogue, const plan::Plate& plate, const ComposedPlate& composed);

/// Parts of several plates as one list: equal lines added up, by kind and then by name and finish.
std::vector<Part> together(const std::vector<std::vector<Part>>& lists);

} // namespace gangway::catalogue
