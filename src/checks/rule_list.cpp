// Every rule by its id, as reports list them.
#include "checks/checks.hpp"

#include <array>

namespace gangway::checks {

namespace {
constexpr auto kRules = std::to_array<switching::Rule>({
    {"off-wall", "A plate lies whole on its wall, under slopes too."},
    {"opening-gap", "A plate is clear of openings and their casings."},
    {"pocket-cavity", "No box is where a leaf slides into the wall."},
    {"line-gap", "A plate is clear of skirtings, rails, cornices and panel mouldings."},
    {"corner-gap", "A plate is as far from inside corners as the country asks."},
    {"covered-plate", "Nothing hides a plate that is used."},
    {"no-access", "What is put away can still be got at."},
    {"plug-depth", "Furniture leaves the depth a plug needs."},
    {"side-gap", "A plate has clear wall beside furniture."},
    {"board-edge", "No shelf, unit side or worktop crosses a plate or comes near its edge."},
    {"worktop-clear", "There is room on the worktop under a plate."},
    {"plinth-socket", "A socket behind a plinth is said to be one."},
    {"in-duct", "No plate is behind a hood's duct."},
    {"tv-bracket", "A plate behind a screen is clear of its bracket."},
    {"appliance-bay", "No outlet is in a built-in appliance's own bay."},
    {"curtain-stack", "A plate is clear of a drawn-back curtain."},
    {"radiator", "No plate is behind a radiator, close beside or above it."},
    {"hob-gap", "Outlets and switches keep away from hobs."},
    {"sink-gap", "Outlets and switches keep away from sinks."},
    {"behind-leaf", "No outlet is behind a door that stands open."},
    {"plate-overlap", "Plates do not overlap each other."},
    {"fragile-place", "A place is right by more than a site's accuracy."},
    {"reach", "What a hand works is within the country's reach."},
    {"socket-low", "A socket is high enough for the cord to bend down."},
    {"row-height", "Plates of one row have one height."},
    {"tile-joint", "A plate sits on a joint or in the middle of a tile."},
    {"mirror-supply", "A mirror cabinet's supply lies in its window."},
    {"box-depth", "A box leaves enough of its wall."},
    {"back-to-back", "Boxes on both sides of a wall are apart."},
    {"floor-box", "A floor box comes up under the piece it feeds."},
    {"off-centre", "Pendants and bedside lamps are over the middle of what they belong to."},
    {"lamp-overlap", "A wall lamp does not reach over what hangs beside it."},
    {"fan-tip", "A ceiling fan's blades are away from a bunk and from lamps."},
    {"lead-short", "A lead reaches its outlet along wall and floor."},
    {"device-without-outlet", "Every device has an outlet."},
    {"wet-zone", "No socket or switch is in a bath's or shower's zones."},
    {"wet-socket", "Ordinary sockets are far enough from baths and showers."},
    {"wet-appliance", "A cabinet in a wet zone is rated for it."},
    {"ies-file", "An IES file that a lamp names can be read."},
    {"leg-mark-twice", "No two legs have one mark."},
    {"wet-lamp", "A lamp in a wet zone is rated for it."},
});
} // namespace

std::vector<switching::Rule> rules() {
    const auto proven = switching::rules();
    std::vector<switching::Rule> all(proven.begin(), proven.end());
    all.insert(all.end(), kRules.begin(), kRules.end());
    return all;
}

} // namespace gangway::checks
