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
