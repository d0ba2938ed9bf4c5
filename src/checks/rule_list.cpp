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
    {"feed-zone", "A plate's cable comes to it through the country's zones for cables."},
    {"fixing-in-zone", "What hangs on a wall is not screwed into a zone for cables."},
    {"stud-gap", "A box is clear of studs."},
    {"joist-gap", "A recessed lamp is clear of joists."},
    {"chase-depth", "A box cuts no deeper into masonry than the country lets it."},
    {"chase-along", "A plate fed along masonry needs a shallow chase."},
    {"fire-boxes", "The boxes in a wall that holds fire back take little of it."},
    {"floor-box", "A floor box comes up under the piece it feeds."},
    {"off-centre", "Pendants and bedside lamps are over the middle of what they belong to."},
    {"lamp-overlap", "A wall lamp does not reach over what hangs beside it."},
    {"fan-tip", "A ceiling fan's blades are away from a bunk and from lamps."},
    {"lead-short", "A lead reaches its outlet along wall and floor."},
    {"lead-crosses", "A lead lies across no doorway, walking way, hob or sink."},
    {"device-without-outlet", "Every device has an outlet."},
    {"device-unassigned", "It is decided where each device is plugged in."},
    {"outlets-overfull", "A plate has an outlet for each plug, also beside power blocks."},
    {"plate-watts", "What is plugged into a plate does not take more than its outlets carry."},
    {"circuit-watts", "What is plugged into a circuit does not take more than its rating."},
    {"dark-walk", "At night a switch is in reach before one has walked far in the dark."},
    {"wet-zone", "No socket or switch is in a bath's or shower's zones."},
    {"wet-socket", "Ordinary sockets are far enough from baths and showers."},
    {"wet-appliance", "A cabinet in a wet zone is rated for it."},
    {"ies-file", "An IES file that a lamp names can be read."},
    {"leg-mark-twice", "No two legs have one mark."},
    {"ip-needed", "What is mounted in a wet zone has the degree of protection asked for there."},
    {"wet-lamp", "A lamp in a wet zone is rated for it."},
    {"off-face", "A plate on furniture lies whole on its side of the piece."},
    {"screen-inside", "What feeds a screen is hidden behind it, not at its edge."},
    {"picture-place", "No plate is where a picture hangs."},
    {"bedside-clear", "A plate is over what stands on a bedside table."},
    {"cord-room", "A socket's cord has room to bend down where the country asks for it."},
    {"in-sight", "What is to be kept hidden is not seen from a seat, a bed or an entrance."},
    {"bed-reach", "What is meant for a bed is reached from its pillow."},
    {"bunk-reach", "Both who sleep in a bunk reach a switch."},
    {"sofa-reach", "The switch of a reading lamp is reached from its seat."},
    {"bedside-lamp", "A lamp beside a bed is at the height of who reads, clear of a headboard."},
    {"bank-order", "Switches run from near to far, alike at every repeat, mirrored at a bed."},
    {"bank-size", "A bank has no more switches than are told apart."},
    {"motor-side", "The outlet of a curtain's or blind's motor is at the motor's end."},
    {"cooker-switch", "A cooker's switch is near the cooker."},
    {"worktop-high", "A socket over a worktop is not too high above it."},
    {"robot-dock", "A cleaning robot's dock has its width, and a socket near."},
    {"lamp-spacing", "Lamps in a row have equal distances."},
    {"unit-lamp", "A downlight before a wall unit lights the worktop."},
    {"floor-leg", "No floor box is under what stands on the floor."},
    {"floor-lane", "No open floor box is where one walks."},
    {"in-sweep", "Nothing plugged in is in the way of a door, a front or a drawer."},
    {"behind-front", "No switch or socket is behind a cupboard's open door."},
    {"mesh-hull", "A piece from a file is a sound body; else it is judged by its hull."},
    {"outlet-count", "A room has as many outlets and lights as the country asks or is usual."},
    {"hall-outlet", "A long hall has a socket."},
    {"wall-spacing", "No point along a wall is too far from a socket."},
    {"counter-spacing", "No point along a worktop is too far from a socket, and islands have theirs."},
    {"worktop-spacing", "Sockets over a worktop are near enough to each other."},
    {"basin-reach", "A socket is near each basin."},
});
} // namespace

std::vector<switching::Rule> rules() {
    const auto proven = switching::rules();
    std::vector<switching::Rule> all(proven.begin(), proven.end());
    all.insert(all.end(), kRules.begin(), kRules.end());
    return all;
}

} // namespace gangway::checks
