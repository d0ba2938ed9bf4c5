// Plates and a catalogue made in code, for tests of snapping and arranging: a plate of one gang is 81 x 81,
// each further gang adds 71.
#pragma once

#include "catalogue/catalogue.hpp"
#include "geometry/houses.hpp"

#include <string>

namespace gangway::test {

inline const catalogue::Catalogue& plainCatalogue() {
    static const catalogue::Catalogue made = [] {
        catalogue::Catalogue c;
        catalogue::PlateFormat format; // its defaults: single 81 x 81, pitch 71
        format.id = "round-71";
        format.boxes.emplace_back();
        c.formats.push_back(format);
        for (const char* id : {"socket", "switch"}) {
            catalogue::ModuleType module;
            module.id = id;
            c.modules.push_back(module);
        }
        return c;
    }();
    return made;
}

inline plan::Plate plateOn(const std::string& id, const std::string& room, plan::Host host,
                           const std::vector<std::string>& modules = {"socket"}) {
    plan::Plate plate;
    plate.id = id;
    plate.room = room;
    plate.host = std::move(host);
    plate.format = "round-71";
    for (const std::string& type : modules)
        plate.modules.push_back({type, "", "", {}});
    return plate;
}

} // namespace gangway::test
