// The furniture kinds. Sizes are usual ones: common practice, no source.
#include "plan/furniture_kinds.hpp"

#include <algorithm>
#include <array>

namespace gangway::plan {
namespace {

using Value = FurnitureValue;

constexpr Value kWardrobe[] = {
    {"doors", 3, 0, 12, "number of doors; 0 for an open wardrobe"},
    {"sliding", 0, 0, 1, "1 when the doors slide one behind the other"},
    {"plinthHeight", 80, 0, 300, "height of the plinth under the doors"},
};
constexpr Value kBed[] = {
    {"headboardHeight", 1000, 0, 2400, "top of the headboard above the piece's underside; 0 for none"},
    {"headboardWidth", 0, 0, 6000, "width of the headboard, which may pass the bed; 0 for the bed's own"},
    {"headboardDepth", 60, 0, 400, "thickness of the headboard, within the piece's depth at the back"},
    {"mattressHeight", 220, 50, 500, "thickness of the mattress"},
    {"mattressTop", 0, 0, 1500, "top of the mattress above the piece's underside; 0 for the piece's height"},
    {"frameWidth", 30, 0, 200, "how far the frame stands out round the mattress"},
    {"pillows", 0, 0, 4, "number of pillows; 0 for one up to 1200 wide, else two"},
};
constexpr Value kBunkBed[] = {
    {"lowerTop", 400, 150, 1000, "top of the lower mattress above the floor"},
    {"upperTop", 1350, 800, 2200, "top of the upper mattress above the floor"},
    {"mattressHeight", 150, 50, 300, "thickness of each mattress"},
    {"ladder", 1, 0, 2, "ladder on the long side: 0 none, 1 at the front end, 2 at the back end"},
    {"openSide", 1, 0, 1, "long side one climbs in from: 0 left, 1 right"},
};
constexpr Value kSofa[] = {
    {"seatHeight", 430, 250, 600, "top of the seat cushions"},
    {"seats", 3, 1, 8, "number of seat cushions"},
    {"armWidth", 160, 0, 400, "width of each arm; 0 for none"},
    {"armHeight", 600, 0, 900, "top of the arms"},
};
constexpr Value kArmchair[] = {
    {"seatHeight", 430, 250, 600, "top of the seat cushion"},
    {"armWidth", 120, 0, 400, "width of each arm; 0 for none"},
    {"armHeight", 600, 0, 900, "top of the arms"},
};
constexpr Value kDesk[] = {
    {"topThickness", 25, 10, 100, "thickness of the top"},
    {"legs", 0, 0, 1, "what carries the top: 0 four legs, 1 two side panels"},
    {"drawers", 0, 0, 6, "drawers of a pedestal under the right end; 0 for none"},
    {"drawerWidth", 400, 200, 900, "width of the pedestal"},
    {"modesty", 0, 0, 1, "1 with a panel at the back of the knee space"},
};
constexpr Value kBaseUnit[] = {
    {"doors", 1, 0, 4, "number of doors; 0 for an open unit"},
    {"plinthHeight", 120, 0, 300, "height of the toe space"},
    {"toeDepth", 50, 0, 200, "how far the plinth stands back from the front"},
    {"worktopThickness", 40, 0, 100, "thickness of the worktop on it, within its height; 0 for none"},
};
constexpr Value kDrawerUnit[] = {
    {"drawers", 3, 1, 8, "number of drawers"},
    {"plinthHeight", 120, 0, 300, "height of the toe space"},
    {"toeDepth", 50, 0, 200, "how far the plinth stands back from the front"},
    {"worktopThickness", 40, 0, 100, "thickness of the worktop on it, within its height; 0 for none"},
};
constexpr Value kWallUnit[] = {
    {"doors", 2, 0, 4, "number of doors; 0 for an open unit"},
    {"shelves", 2, 0, 8, "number of shelves inside"},
};
constexpr Value kTallUnit[] = {
    {"doors", 2, 0, 4, "number of doors one above the other; 0 for an open unit"},
    {"plinthHeight", 120, 0, 300, "height of the toe space"},
    {"toeDepth", 50, 0, 200, "how far the plinth stands back from the front"},
    {"ovenBottom", 0, 0, 2000, "underside of a built-in oven above the floor; 0 for none"},
};
constexpr Value kWorktop[] = {
    {"thickness", 40, 10, 100, "thickness of the worktop, at the top of the piece"},
    {"upstand", 0, 0, 600, "height of an upstand along the back; 0 for none"},
};
constexpr Value kIsland[] = {
    {"plinthHeight", 120, 0, 300, "height of the toe space, all round"},
    {"toeDepth", 50, 0, 200, "how far the plinth stands back"},
    {"worktopThickness", 40, 10, 100, "thickness of the worktop, within the height"},
    {"overhang", 20, 0, 600, "how far the worktop stands out all round"},
    {"kneeDepth", 0, 0, 800, "depth of the knee space under the worktop at the back side; 0 for none"},
    {"doors", 3, 0, 8, "number of doors at the front"},
};
constexpr Value kTable[] = {
    {"topThickness", 30, 10, 120, "thickness of the top"},
    {"legWidth", 60, 20, 200, "width of each leg"},
    {"round", 0, 0, 1, "1 for a round top on one foot"},
};
constexpr Value kChair[] = {
    {"seatHeight", 450, 250, 800, "top of the seat"},
};
constexpr Value kTvWall[] = {
    {"standOff", 60, 0, 600, "from the wall to the back of the screen: the bracket's depth, at the back"},
};
constexpr Value kTvStand[] = {
    {"cabinetHeight", 450, 0, 1200, "height of the cabinet under the screen; 0 for a screen on its foot"},
    {"screenWidth", 1230, 0, 3000, "width of the screen; 0 for no screen"},
    {"screenHeight", 710, 0, 2000, "height of the screen"},
};
constexpr Value kRadiator[] = {
    {"standOff", 35, 0, 200, "from the wall to the back of the panel"},
    {"finSpacing", 60, 20, 300, "distance between fins"},
};
constexpr Value kCurtain[] = {
    {"leaves", 2, 1, 2, "number of curtains on the rail"},
    {"stack", 0, 0, 2, "where a drawn-back curtain stands: 0 both ends, 1 left end, 2 right end"},
    {"stackPart", 0.1, 0.02, 1, "part of the rail's length that each drawn-back curtain takes (not mm)"},
    {"drawn", 0, 0, 1, "0 drawn back, 1 drawn shut"},
    {"foldDepth", 80, 10, 300, "depth of the folds"},
    {"railHeight", 0, 0, 6000, "height of the rail above the piece's underside; 0 for the piece's height"},
    {"motor", 0, 0, 2, "end of the rail where its motor is, seen from the room: 0 none, 1 left, 2 right"},
    {"clearance", 15, 0, 300, "lower edge of the curtain above the piece's underside"},
};
constexpr Value kBlind[] = {
    {"drawn", 0.15, 0, 1, "part of the height that is let down (not mm)"},
    {"boxHeight", 90, 20, 300, "height of the box or roll at the top"},
    {"motor", 0, 0, 2, "end where its motor is, seen from the room: 0 none, 1 left, 2 right"},
};
constexpr Value kMirror[] = {
    {"frameWidth", 20, 0, 200, "width of the frame; 0 for none"},
};
constexpr Value kPicture[] = {
    {"frameWidth", 25, 0, 200, "width of the frame; 0 for none"},
};
constexpr Value kMirrorCabinet[] = {
    {"doors", 2, 1, 4, "number of mirror doors"},
};
constexpr Value kBath[] = {
    {"rimWidth", 70, 20, 200, "width of the rim"},
    {"bowlDepth", 420, 100, 800, "depth of the bowl under the rim"},
    {"headHeight", 0, 0, 4000, "highest fixed head or outlet above the floor; 0 when it is not stated"},
};
constexpr Value kShower[] = {
    {"trayHeight", 40, 0, 300, "height of the tray"},
    {"screenHeight", 2000, 0, 2600, "height of the glass above the floor; 0 for none"},
    {"screenSides", 1, 0, 3, "glass at: 0 no side, 1 front, 2 front and left, 3 front and right"},
    {"headHeight", 0, 0, 4000, "highest fixed head or outlet above the floor; 0 when it is not stated"},
};
constexpr Value kBasin[] = {
    {"bowlDepth", 120, 40, 300, "depth of the bowl"},
    {"pedestal", 1, 0, 1, "1 with a pedestal to the floor"},
};
constexpr Value kVanity[] = {
    {"basinWidth", 500, 200, 1500, "width of the basin in the top"},
    {"basinOffset", 0, -1500, 1500, "basin's centre to the right of the unit's centre"},
    {"bowlDepth", 110, 40, 300, "depth of the basin"},
    {"drawers", 2, 0, 6, "number of drawers"},
    {"plinthHeight", 0, 0, 600, "space under the unit: plinth or air"},
};
constexpr Value kWc[] = {
    {"seatHeight", 420, 300, 600, "top of the seat"},
    {"cistern", 1, 0, 1, "1 with a cistern standing on the pan, 0 with one in the wall"},
};
constexpr Value kHob[] = {
    {"rings", 4, 1, 6, "number of cooking rings"},
};
constexpr Value kHood[] = {
    {"chimneyWidth", 320, 0, 1200, "width of the chimney; 0 for none"},
    {"canopyHeight", 120, 30, 600, "height of the canopy"},
    {"ductDiameter", 150, 0, 400, "diameter of the duct behind the chimney"},
    {"ductOffset", 0, -600, 600, "duct's centre to the right of the hood's centre"},
};
constexpr Value kSink[] = {
    {"bowlWidth", 400, 100, 1500, "width of the bowl"},
    {"bowlOffset", 0, -1500, 1500, "bowl's centre to the right of the sink's centre"},
    {"bowlDepth", 180, 60, 400, "depth of the bowl under the rim"},
    {"unit", 0, 0, 1, "1 when the piece is the whole unit with cabinet, 0 for the sink top alone"},
    {"plinthHeight", 120, 0, 300, "toe space of a whole unit"},
    {"toeDepth", 50, 0, 200, "how far its plinth stands back"},
};
constexpr Value kFridge[] = {
    {"freezerHeight", 700, 0, 2000, "height of the lower door; 0 for one door"},
    {"plinthHeight", 60, 0, 300, "height of the plinth"},
};
constexpr Value kDishwasher[] = {
    {"integrated", 1, 0, 1, "1 behind a furniture front, 0 standing free"},
    {"plinthHeight", 120, 0, 300, "height of the toe space"},
    {"toeDepth", 50, 0, 200, "how far the plinth stands back"},
    {"worktopThickness", 0, 0, 100, "thickness of a worktop over it, within its height; 0 for none"},
};
constexpr Value kShelf[] = {
    {"thickness", 25, 5, 100, "thickness of the boards"},
    {"boards", 1, 1, 12, "number of boards, spread over the height"},
    {"sides", 0, 0, 1, "1 with side boards (a shelf box)"},
};
constexpr Value kBedsideTable[] = {
    {"drawers", 2, 0, 8, "number of drawers"},
    {"legHeight", 120, 0, 600, "height of the feet"},
};
constexpr Value kChest[] = {
    {"drawers", 4, 0, 10, "number of drawers"},
    {"legHeight", 80, 0, 600, "height of the feet"},
};
constexpr Value kShoeCabinet[] = {
    {"flaps", 3, 1, 6, "number of flaps one above the other"},
    {"plinthHeight", 50, 0, 300, "height of the plinth"},
};
constexpr Value kDressingTable[] = {
    {"topThickness", 25, 10, 100, "thickness of the top"},
    {"drawers", 2, 0, 4, "number of drawers side by side under the top"},
    {"drawerHeight", 110, 50, 300, "height of the drawers"},
    {"mirrorHeight", 0, 0, 1500, "height of a mirror standing on it; 0 for none"},
};
constexpr Value kFan[] = {
    {"blades", 4, 2, 8, "number of blades"},
    {"bladeWidth", 130, 50, 300, "width of a blade"},
};
constexpr Value kStair[] = {
    {"steps", 0, 0, 60, "number of rises; 0 for as many as make rises of about 190"},
    {"rise", 0, 0, 400, "height of one rise; 0 for the height shared by the steps"},
    {"going", 0, 0, 600, "depth of one going; 0 for the depth shared by the steps"},
    {"direction", 0, 0, 1, "0 rises from the front to the back, 1 from the back to the front"},
    {"closed", 1, 0, 1, "1 closed beneath the steps, 0 open treads"},
    {"handrail", 1, 0, 3, "handrail: 0 none, 1 left, 2 right, 3 both (going up from the front)"},
};
constexpr Value kBookcase[] = {
    {"shelves", 4, 0, 20, "number of shelves between bottom and top"},
    {"columns", 1, 1, 8, "number of bays side by side"},
    {"back", 1, 0, 1, "1 with a back panel"},
    {"books", 1, 0, 1, "1 with books on the shelves"},
};
constexpr Value kBench[] = {
    {"topThickness", 40, 10, 150, "thickness of the seat"},
};
constexpr Value kPlant[] = {
    {"potHeight", 300, 50, 900, "height of the pot"},
};
constexpr Value kPiano[] = {
    {"keyHeight", 720, 500, 900, "top of the keys above the floor"},
    {"keyDepth", 220, 100, 500, "how far the keyboard stands out in front"},
};
constexpr Value kFreeAppliance[] = {
    {"legHeight", 20, 0, 100, "height of the feet"},
};

constexpr std::string_view kHard = kLayerFurniture;
constexpr std::string_view kSoft = kLayerSoft;

constexpr auto kKinds = std::to_array<FurnitureKind>({
    {"wardrobe", "wardrobe", kHard, {1500, 600, 2100}, kWardrobe},
    {"bed", "bed", kHard, {1660, 2120, 550}, kBed},
    {"bunk-bed", "bunk bed", kHard, {1000, 2090, 1650}, kBunkBed},
    {"sofa", "sofa", kHard, {2100, 900, 800}, kSofa},
    {"armchair", "armchair", kHard, {850, 850, 800}, kArmchair},
    {"desk", "desk", kHard, {1400, 700, 740}, kDesk},
    {"base-unit", "base unit", kHard, {600, 600, 920}, kBaseUnit},
    {"drawer-unit", "drawer unit", kHard, {600, 600, 920}, kDrawerUnit},
    {"wall-unit", "wall unit", kHard, {600, 330, 720}, kWallUnit},
    {"tall-unit", "tall unit", kHard, {600, 600, 2150}, kTallUnit},
    {"worktop", "worktop", kHard, {2400, 600, 40}, kWorktop},
    {"island", "island", kHard, {1800, 900, 920}, kIsland},
    {"table", "table", kHard, {1600, 900, 750}, kTable},
    {"chair", "chair", kHard, {450, 500, 850}, kChair},
    {"tv-wall", "wall television", kHard, {1230, 110, 710}, kTvWall},
    {"tv-stand", "television cabinet", kHard, {1600, 420, 1200}, kTvStand},
    {"radiator", "radiator", kHard, {1000, 100, 600}, kRadiator},
    {"curtain", "curtain", kSoft, {2000, 120, 2300}, kCurtain},
    {"blind", "blind", kSoft, {1200, 60, 1300}, kBlind},
    {"mirror", "mirror", kHard, {600, 25, 900}, kMirror},
    {"mirror-cabinet", "mirror cabinet", kHard, {800, 130, 700}, kMirrorCabinet},
    {"picture", "picture", kHard, {800, 25, 600}, kPicture},
    {"shower-screen", "shower screen", kHard, {900, 10, 2000}, {}},
    {"bath", "bath", kHard, {1700, 750, 560}, kBath},
    {"shower", "shower", kHard, {900, 900, 2000}, kShower},
    {"basin", "basin", kHard, {600, 450, 850}, kBasin},
    {"vanity", "vanity unit", kHard, {800, 450, 850}, kVanity},
    {"wc", "WC", kHard, {360, 680, 800}, kWc},
    {"hob", "hob", kHard, {580, 510, 8}, kHob},
    {"hood", "cooker hood", kHard, {600, 330, 930}, kHood},
    {"oven", "oven", kHard, {595, 560, 595}, {}},
    {"sink", "sink", kHard, {600, 500, 200}, kSink},
    {"fridge", "fridge", kHard, {600, 650, 1850}, kFridge},
    {"dishwasher", "dishwasher", kHard, {600, 600, 880}, kDishwasher},
    {"washing-machine", "washing machine", kHard, {600, 600, 850}, kFreeAppliance},
    {"dryer", "dryer", kHard, {600, 600, 850}, kFreeAppliance},
    {"boiler", "boiler", kHard, {450, 350, 750}, {}},
    {"rug", "rug", kSoft, {2000, 1400, 10}, {}},
    {"bedside-table", "bedside table", kHard, {450, 400, 550}, kBedsideTable},
    {"shelf", "shelf", kHard, {1000, 250, 25}, kShelf},
    {"chest", "chest of drawers", kHard, {900, 450, 850}, kChest},
    {"shoe-cabinet", "shoe cabinet", kHard, {1000, 350, 1100}, kShoeCabinet},
    {"dressing-table", "dressing table", kHard, {1100, 450, 750}, kDressingTable},
    {"fan", "ceiling fan", kHard, {1120, 1120, 350}, kFan},
    {"stair", "stair", kHard, {900, 3300, 2700}, kStair},
    {"bookcase", "bookcase", kHard, {800, 300, 1900}, kBookcase},
    {"bench", "bench", kHard, {1200, 350, 450}, kBench},
    {"plant", "plant", kHard, {500, 500, 1200}, kPlant},
    {"piano", "piano", kHard, {1500, 600, 1200}, kPiano},
    {"box", "box", kHard, {500, 500, 500}, {}},
});

} // namespace

std::span<const FurnitureKind> furnitureKinds() {
    return kKinds;
}

const FurnitureKind* findFurnitureKind(std::string_view key) {
    const auto found = std::ranges::find(kKinds, key, &FurnitureKind::key);
    return found == kKinds.end() ? nullptr : &*found;
}

double furnitureValue(const Furniture& piece, std::string_view key) {
    const auto given =
        std::ranges::find(piece.with, key, [](const auto& entry) { return std::string_view(entry.first); });
    if (given != piece.with.end()) return given->second;
    const FurnitureKind* kind = findFurnitureKind(piece.kind);
    if (kind == nullptr) return 0;
    const auto known = std::ranges::find(kind->values, key, &FurnitureValue::key);
    return known == kind->values.end() ? 0 : known->default_value;
}

} // namespace gangway::plan
