// Plugs on one plate by itself, by the sizes of src/catalogue/plug_shapes.cpp: what stands beside each other
// and what does not. A block of 75 is common practice without a source; plugs are from memory.
#include "catalogue/plug_places.hpp"
#include "shipped_catalogue.hpp"

#include <algorithm>
#include <fmt/format.h>

using namespace gangway;
using catalogue::OutletPlace;
using Kind = plan::Device::Plug;
using State = OutletPlace::State;

namespace {
std::vector<OutletPlace> on(const plan::Plate& plate, const std::vector<Kind>& plugs,
                            const std::string& type = "") {
    std::vector<catalogue::PluggedIn> plugged;
    for (const Kind plug : plugs)
        plugged.push_back({"", fmt::format("d{}", plugged.size() + 1), plug, type});
    return catalogue::plugPlaces(plate, catalogue::compose(shippedCatalogue(), plate), plugged).outlets;
}

bool clash(const std::vector<OutletPlace>& outlets) {
    return std::ranges::any_of(outlets, [](const OutletPlace& outlet) {
        return outlet.state == State::Taken && !outlet.blocked_by.empty();
    });
}
} // namespace

TEST_CASE("in a frame of pitch 71 a block stands beside a plug, not beside a block") {
    // DIN 49073, pitch 71 (trade facts 1.3): a block and a plug of 39 need 57, two blocks 75.
    const auto frame = plateOf("round-71", {"socket-f", "socket-f"});
    CHECK_FALSE(clash(on(frame, {Kind::PowerBlock, Kind::Straight})));
    CHECK(clash(on(frame, {Kind::PowerBlock, Kind::PowerBlock})));
    const auto alone = on(frame, {Kind::PowerBlock});
    REQUIRE(alone.size() == 2);
    CHECK(alone[1].state == State::Free);
    // With one between them, where a plug fits.
    const auto three = plateOf("round-71", {"socket-f", "socket-f", "socket-f"});
    CHECK_FALSE(clash(on(three, {Kind::PowerBlock, Kind::PowerBlock})));
    CHECK_FALSE(clash(on(three, {Kind::PowerBlock, Kind::PowerBlock, Kind::Straight})));
}

TEST_CASE("on a double of pitch 60.3 a block hides the other outlet") {
    // Trade facts, check value 45: a block and a plug of 48 need 61.5.
    const auto twin = plateOf("rect-86", {"socket-g-double"});
    CHECK_FALSE(clash(on(twin, {Kind::Straight, Kind::Straight}, "G")));
    CHECK(clash(on(twin, {Kind::PowerBlock, Kind::Straight}, "G")));
    CHECK(on(twin, {Kind::PowerBlock}, "G")[1].state == State::Blocked);
}

TEST_CASE("a socket takes as many straight plugs of its own type as it has outlets") {
    // That is what it is made for.
    int tried = 0;
    for (const catalogue::ModuleType& module : shippedCatalogue().modules)
        for (const catalogue::PlateFormat& format : shippedCatalogue().formats) {
            if (module.kind != catalogue::ModuleKind::Socket || module.outlets < 2 ||
                !catalogue::isMadeFor(module, format))
                continue;
            INFO(module.id << " in " << format.id);
            const auto plate = plateOf(format.id, {module.id});
            const auto made = catalogue::compose(shippedCatalogue(), plate);
            REQUIRE_FALSE(made.gangs.empty());
            const auto count = static_cast<std::size_t>(made.gangs.front().module->outlets);
            const auto outlets = on(plate, std::vector<Kind>(count, Kind::Straight));
            CHECK(outlets.size() == count);
            CHECK_FALSE(clash(outlets));
            ++tried;
        }
    CHECK(tried > 3);
}
