#include "catalogue/limits.hpp"

#include <algorithm>
#include <array>

namespace gangway::catalogue {

namespace {
constexpr auto kKinds = std::to_array<LimitKind>({
    {"coverReach", 50, 1000, "furniture nearer to the wall than this hides what is behind it, mm"},
    {"sideGap", 0, 300, "from a plate to the side of furniture, mm"},
    {"tallGap", 0, 300, "from a plate to the side of something tall, mm"},
    {"boardEdge", 0, 100, "from a plate to the edge of a shelf, a drawer or a unit's side, mm"},
    {"plugFlat", 5, 200, "free depth before a socket for a flat or angled plug, mm"},
    {"plugStraight", 5, 200, "free depth before a socket for a straight plug and its cord, mm"},
    {"plugBlock", 5, 300, "free depth before a socket for a plug-in power block, mm"},
    {"leafAngle", 0, 90, "a leaf that stands nearer to parallel to a wall than this hides it, degrees"},
    {"openingGap", 0, 300, "from a plate to a casing or the edge of an opening, mm"},
    {"openingLeast", 0, 100, "never nearer to a casing or the edge of an opening, mm"},
    {"lineGap", 0, 200, "from a plate to a moulding, a rail or a cornice, mm"},
    {"skirtingGap", 0, 200, "from a plate to the top of the skirting, mm"},
    {"socketLowest", 0, 1000, "lowest centre of a socket above FFL, mm"},
    {"tileOff", 0, 50, "from a plate's centre to a joint or to the middle of a tile, mm"},
    {"plinthSockets", 0, 1, "1 where sockets behind a plinth are taken, 0 where they are refused"},
    {"stackGap", 0, 200, "from a plate to a drawn-back curtain, mm"},
    {"bracketGap", 0, 300, "from a plate to the bracket of a screen on the wall, mm"},
    {"radiatorBeside", 0, 1000, "from a plate to the side of a radiator, mm"},
    {"radiatorAbove", 0, 2000, "from a plate to the top of a radiator below it, mm"},
    {"floorInside", 0, 1000, "a floor box from the edge of the piece it stands under, mm"},
    {"centreOff", 0, 300, "a lamp from the middle of what it belongs to, mm"},
    {"mirrorLow", 0, 3000,
     "lower end of the window in which a mirror cabinet takes its supply, above FFL, mm"},
    {"mirrorHigh", 0, 3000, "upper end of that window, above FFL, mm"},
    {"hobGap", 0, 2000, "from a plate to the edge of a hob, along the wall, mm"},
    {"sinkGap", 0, 2000, "from a plate to the edge of a sink's bowl, along the wall, mm"},
    {"wetZone1Top", 1500, 4000, "height of wet zone 1 above the floor of the bath or shower, mm"},
    {"wetZone2", 0, 2000, "how far wet zone 2 reaches beyond zone 1, mm"},
    {"wetNoTray", 500, 3000, "radius of zone 1 of a shower without a basin, round its outlet, mm"},
    {"wetSocket", 0, 5000, "from zone 1 to an ordinary socket outlet, mm"},
    {"leadSlack", 0, 1000, "a lead is longer than its way by this, mm"},
    {"fanTip", 0, 3000, "from the tips of a fan's blades to furniture one lies on and to lamps, mm"},
    {"sameHeight", 0, 100, "heights that differ by no more than this are meant to be one, mm"},
    {"backToBack", 0, 2000, "between boxes on both sides of one wall, along it; 0: not asked, mm"},
    {"wallLeft", 0, 200, "of the wall behind a box, mm"},
    {"cornerGap", 0, 1000, "from an inside corner to the centre of a switch or socket; 0: not asked, mm"},
    {"reachLow", 0, 1500, "lowest centre of what a hand works; 0: not asked, mm"},
    {"reachHigh", 0, 3000, "highest centre of what a hand works; 0: not asked, mm"},
    {"worktopClear", 0, 500, "from a worktop up to the lower edge of a plate, mm"},
    {"marginWarn", 0, 100, "a place that is right by less than this is fragile, mm"},
    {"marginFault", 0, 100, "a place that is right by less than this is a fault, mm"},
    {"cordBelow", 0, 500,
     "from a socket's lower edge down to a surface its cord has to bend over; 0: not asked, mm"},
    {"leafHandle", 0, 200, "how far a door's handle stands out of its leaf, mm"},
    {"screenInside", 0, 200, "a plate behind a screen from the screen's edge, mm"},
    {"cookerFar", 0, 5000, "from a cooker's switch to the cooker or hob; 0: not asked, mm"},
    {"laneWidth", 0, 3000, "width of a walking way that floor boxes and leads keep out of, mm"},
    {"equalSpacing", 0, 100, "lamps in a row differ in their distances by no more than this, mm"},
    {"framingClear", 0, 100, "from a box or a recessed lamp to a stud or joist, mm"},
    {"driverReach", 0, 4000, "highest place of a driver or junction that must be got at, mm"},
    {"fireApart", 0, 2000, "between boxes on both sides of a wall that holds fire back; 0: not asked, mm"},
    {"chaseUpright", 0, 1,
     "part of a wall's thickness that an upright chase or a box may take; 0: not asked"},
    {"chaseAcross", 0, 1, "part of a wall's thickness that a chase along it may take; 0: not asked"},
    {"artClear", 0, 500, "from a plate to a picture's place, mm"},
    {"accessLow", 0, 1500, "lowest centre for seated and short users; 0: not asked, mm"},
    {"accessHigh", 0, 3000, "highest centre for seated and short users; 0: not asked, mm"},
    {"accessCorner", 0, 1000, "from an inside corner to the centre for seated users; 0: not asked, mm"},
    {"overNearDepth", 0, 1500,
     "depth of a counter that one reaches over, up to which overNearHigh counts; 0: not asked, mm"},
    {"overNearHigh", 0, 3000, "highest centre over a counter of that depth, mm"},
    {"overFarDepth", 0, 1500, "depth of a counter beyond which nothing over it is in reach, mm"},
    {"overFarHigh", 0, 3000, "highest centre over a counter between the two depths, mm"},
    {"zoneDepth", 0, 200, "a cable deeper in a wall than this is bound to no zone; 0: all are, mm"},
    {"thinWall", 0, 500,
     "a wall no thicker than this takes the zones of its other side too; 0: none does, mm"},
    {"bedReach", 0, 2000, "from a pillow to what is used in bed, mm"},
    {"bedTableClear", 0, 500, "from a bedside table's top up to the lower edge of a plate, mm"},
    {"worktopHigh", 0, 1500, "highest centre above a worktop; 0: not asked, mm"},
    {"worktopSpacing", 0, 5000, "between neighbouring sockets over one run of worktop; 0: not asked, mm"},
    {"counterReach", 0, 5000, "from any point along a counter to a socket over it; 0: not asked, mm"},
    {"counterLeast", 0, 5000, "shorter pieces of counter need no socket, mm"},
    {"counterHigh", 0, 3000, "sockets higher above a counter do not serve it; 0: all do, mm"},
    {"basinReach", 0, 5000, "from a basin's edge to a socket; 0: not asked, mm"},
    {"spacingReach", 0, 10000, "from any point along the walls to a socket; 0: not asked, mm"},
    {"spacingLeast", 0, 10000, "shorter pieces of wall need no socket, mm"},
    {"spacingHighest", 0, 3000, "sockets higher than this do not serve a wall; 0: all do, mm"},
    {"spacingFloor", 0, 3000, "floor boxes nearer to a wall than this serve it, mm"},
    {"darkStretch", 0, 20000, "longest way in the dark before a switch is in reach, mm"},
    {"darkReach", 0, 3000, "from where one stands in the dark to a switch, mm"},
    {"bankMost", 0, 20, "switches in one bank; 0: not asked"},
    {"unitLampNear", 0, 2000, "from the front of a wall unit to the middle of a downlight before it, mm"},
    {"unitLampFar", 0, 2000, "and no further than this before it, mm"},
    {"dockReach", 0, 5000, "from a cleaning robot's dock to its socket, mm"},
    {"dockWidth", 0, 2000, "width of a cleaning robot's niche, mm"},
    {"sofaReach", 0, 3000, "from a seat to the switch of the lamp one reads by, mm"},
    {"ipZone0", 0, 9, "second digit of the degree of protection in wet zone 0"},
    {"ipZone1", 0, 9, "second digit of the degree of protection in wet zone 1"},
    {"ipZone2", 0, 9, "second digit of the degree of protection in wet zone 2"},
    {"wetZone2Top", 0, 4000, "height of wet zone 2; 0: as zone 1, mm"},
    {"wetSocketTop", 0, 4000,
     "sockets higher than this above the floor are far enough from a bath or shower; 0: none is, mm"},
});
} // namespace

std::span<const LimitKind> limitKinds() {
    return kKinds;
}

const LimitKind* limitKind(std::string_view id) {
    const auto found = std::ranges::find(kKinds, id, &LimitKind::id);
    return found == kKinds.end() ? nullptr : &*found;
}

} // namespace gangway::catalogue
