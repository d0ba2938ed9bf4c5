// Which gang of a plate each module stands in, and where the gangs are. Private to src/catalogue.
#pragma once

#include "catalogue/catalogue.hpp"

namespace gangway::catalogue::detail {

using Problems = std::vector<std::string>;

/// A module of the plate and the gangs it stands in; several switches may share one gang.
struct Placed {
    const ModuleType* module = nullptr;
    int number = 0; ///< from 1 in plate.modules, 0 for a blank
    int first_gang = 0;
    int gangs = 1;
    int slot = 0;        ///< place within a shared gang
    int slots = 1;       ///< how many share it
    bool shares = false; ///< takes part of a gang
};

/// The gangs of a plate, numbered from 0 row by row from the top left.
struct Layout {
    int gangs = 1;
    int columns = 1;
    int rows = 1;
    double width_mm = 0;
    double height_mm = 0;
    Vec2 pitch_mm;
    /// From the plate's centre.
    Vec2 centreOf(int gang) const;
};

/// The plate's modules as they are made for the format; nullptr for one that the catalogue does not have.
std::vector<const ModuleType*> chooseModules(const Catalogue& catalogue, const PlateFormat& format,
                                             const plan::Plate& plate, Problems& problems);

/// Gives each module its gangs from the first on; switches share a gang where the format lets them. In a grid
/// of `columns` no module goes over the end of a row; 0: one row.
std::vector<Placed> place(const std::vector<const ModuleType*>& modules, const PlateFormat& format,
                          int columns);

int gangsTaken(const std::vector<Placed>& placed);

/// A plate of nothing but switches that share gangs is one row in the middle, whatever its gangs.
bool isSwitchRow(const std::vector<Placed>& placed);

struct Arrangement {
    std::vector<Placed> placed; ///< without blanks
    Layout layout;
};

/// Modules and gangs of a plate in its format, with what does not add up.
Arrangement arrange(const std::vector<const ModuleType*>& modules, const PlateFormat& format,
                    const plan::Plate& plate, Problems& problems);

/// "module 'sockt' is not in the catalogue; the nearest is 'socket'".
std::string unknownWord(const std::string& what, const std::string& word,
                        const std::vector<std::string>& known);

} // namespace gangway::catalogue::detail
