#include "cli/shot_plugs.hpp"

#include "checks/outlet_assignment.hpp"
#include "scene/plug_bodies.hpp"

namespace gangway::cli {

void addPlugs(scene::Scene& scene, const plan::Plan& plan, const catalogue::Catalogue& catalogue,
              const catalogue::CountryPack& pack, const std::filesystem::path& base) {
    const geometry::HouseIndex house(plan);
    const checks::Facts facts(house, catalogue, pack, base);
    checks::LeadRooms rooms(facts);
    std::vector<catalogue::PluggedIn> plugged;
    for (const checks::DeviceOutlet& outlet : checks::assignOutlets(facts, rooms).devices)
        if (outlet.plate != nullptr)
            plugged.push_back(
                {outlet.plate->id, outlet.device->id, outlet.device->plug, outlet.device->plug_type});
    scene::addPlugBodies(scene, house, catalogue, pack, catalogue::plugPlaces(plan, catalogue, plugged));
}

} // namespace gangway::cli
