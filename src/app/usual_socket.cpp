// The socket plate that is offered where one is missing.
#include "app/inventory.hpp"
#include "app/state.hpp"

#include <algorithm>
#include <map>

namespace gangway::app {

namespace {
bool socketsOnly(const catalogue::Catalogue& catalogue, const plan::Plate& plate) {
    return !plate.modules.empty() && std::ranges::all_of(plate.modules, [&](const plan::Module& module) {
        const auto* type = catalogue.module(module.type);
        return type != nullptr && type->kind == catalogue::ModuleKind::Socket;
    });
}

/// Format and modules, as text: plates of one make.
std::string makeOf(const plan::Plate& plate) {
    std::string make = plate.format;
    for (const plan::Module& module : plate.modules)
        make += ' ' + module.type;
    return make;
}

plan::Plate bare(const plan::Plate& like) {
    plan::Plate plate;
    plate.format = like.format;
    plate.direction = like.direction;
    for (const plan::Module& module : like.modules) {
        plan::Module& made = plate.modules.emplace_back();
        made.type = module.type;
    }
    return plate;
}
} // namespace

std::optional<plan::Plate> usualSocket(const State& state, const std::string& room_id) {
    std::map<std::string, int> counts;
    const plan::Plate* most = nullptr;
    // Those of the room itself weigh more than all of the house: its wall may ask for another format.
    for (const bool in_room : {true, false}) {
        for (const plan::Plate& plate : state.plan().plates) {
            if (in_room && plate.room != room_id) continue;
            if (!socketsOnly(state.catalogue, plate)) continue;
            const int count = ++counts[makeOf(plate)];
            if (most == nullptr || count > counts[makeOf(*most)]) most = &plate;
        }
        if (most != nullptr) return bare(*most);
    }
    for (const plan::LibraryPlate& stored : state.plan().library)
        if (const plan::Plate plate = catalogue::fromLibrary(stored); socketsOnly(state.catalogue, plate))
            return bare(plate);
    return std::nullopt;
}

} // namespace gangway::app
