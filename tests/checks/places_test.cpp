// Each rule about a place, just inside and just outside its limit. Limits are the international pack's; where
// a number comes from stands beside it there and is named again here.
#include "checks/checks.hpp"

#include "../switching/small_switching.hpp"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>

using namespace gangway;
using plan::Severity;

namespace {
/// The room of small_switching.hpp without anything to find: 4000 x 3000, ceiling 2400. Wall A is 4000 long
/// and runs from the north-west corner eastwards; a plate of one round gang is 81 x 81.
plan::Plan bareRoom() {
    plan::Plan plan;
    plan.storeys.emplace_back().id = "ground";
    addRoom(plan, "room", 0, 4000);
    return plan;
}

plan::Plate& socketAt(plan::Plan& plan, double u_mm, double v_mm = 300, const std::string& wall = "A") {
    plan::Plate& plate =
        addPlate(plan, "s" + std::to_string(plan.plates.size() + 1), "room", wall, u_mm, {"socket-f"});
    plate.host.v_mm = v_mm;
    return plate;
}

/// With its back to wall A, `left_mm` from the wall's left corner.
plan::Furniture& pieceAt(plan::Plan& plan, const std::string& kind, double left_mm, plan::Size3 size,
                         double bottom_mm = 0) {
    plan::Furniture piece;
    piece.id = kind;
    piece.kind = kind;
    piece.room = "room";
    piece.layer = plan::kLayerFurniture;
    piece.size = size;
    piece.at_mm = {left_mm + size.width_mm / 2, 3000 - size.depth_mm / 2};
    piece.bottom_mm = bottom_mm;
    plan.furniture.push_back(piece);
    return plan.furniture.back();
}

std::vector<plan::Finding> check(const plan::Plan& plan, const std::string& pack = "international") {
    return checks::check(geometry::HouseIndex(plan), shipped(), packOf(pack));
}

const plan::Finding* find(const std::vector<plan::Finding>& findings, const std::string& rule) {
    for (const auto& finding : findings)
        if (finding.rule == rule) return &finding;
    return nullptr;
}

/// Whether the rule speaks of a plan that holds one socket of wall A at this place.
template <class Prepare>
bool speaks(const std::string& rule, double u_mm, double v_mm, const Prepare& prepare,
            Severity least = Severity::Hint) {
    plan::Plan plan = bareRoom();
    socketAt(plan, u_mm, v_mm);
    prepare(plan);
    const auto findings = check(plan);
    const auto* finding = find(findings, rule);
    return finding != nullptr && finding->severity >= least;
}

void window(plan::Plan& plan) {
    plan::Opening opening;
    opening.id = "window";
    opening.kind = plan::Opening::Kind::Window;
    opening.room = "room";
    opening.wall = "A";
    opening.left_mm = 2000;
    opening.width_mm = 1000;
    opening.sill_mm = 200;
    opening.height_mm = 1200;
    opening.casing_mm = 60;
    plan.openings.push_back(opening);
}
} // namespace

TEST_CASE("opening-gap: 50 beside a casing is enough, 49 is not, 9 is a fault") {
    // C8: at least 50, never less than 10; common practice, no source. Casing's edge at 2000 - 60 = 1940.
    const double edge = 1940 - 40.5;
    CHECK_FALSE(speaks("opening-gap", edge - 50, 300, window));
    CHECK(speaks("opening-gap", edge - 49, 300, window));
    CHECK_FALSE(speaks("opening-gap", edge - 11, 300, window, Severity::Fault));
    CHECK(speaks("opening-gap", edge - 9, 300, window, Severity::Fault));
}

TEST_CASE("covered-plate: a wardrobe that reaches 1 mm over a socket is found, one beside it is not") {
    const auto wardrobe = [](plan::Plan& plan) { pieceAt(plan, "chest", 1000, {900, 450, 850}); };
    // C1: any overlap; common practice, no source. The piece begins at 1000.
    CHECK(speaks("covered-plate", 1000 - 40.5 + 1, 300, wardrobe, Severity::Fault));
    CHECK_FALSE(speaks("covered-plate", 1000 - 40.5 - 1, 300, wardrobe));
}

TEST_CASE("plug-depth: 55 before a socket takes a straight plug, 54 does not") {
    // C5: 40 to 60, 55 taken; an assumption of ours.
    const auto away = [](double depth) {
        return [depth](plan::Plan& plan) {
            plan.plates.front().use = plan::UseRate::LeftPlugged;
            pieceAt(plan, "box", 1000, {900, 450, 850}).at_mm.y -= depth;
        };
    };
    CHECK(speaks("plug-depth", 1400, 300, away(54)));
    CHECK_FALSE(speaks("plug-depth", 1400, 300, away(55)));
}

TEST_CASE("a flat plug and a power block ask for their own depth") {
    for (const auto& [plug, depth] :
         {std::pair{plan::Device::Plug::Flat, 25.0}, std::pair{plan::Device::Plug::PowerBlock, 80.0}}) {
        const auto away = [plug = plug](double gap) {
            return [plug, gap](plan::Plan& plan) {
                plan.plates.front().use = plan::UseRate::LeftPlugged;
                plan::Device device;
                device.id = "device";
                device.plate = plan.plates.front().id;
                device.plug = plug;
                plan.devices.push_back(device);
                pieceAt(plan, "box", 1000, {900, 450, 850}).at_mm.y -= gap;
            };
        };
        CHECK(speaks("plug-depth", 1400, 300, away(depth - 1)));
        CHECK_FALSE(speaks("plug-depth", 1400, 300, away(depth)));
    }
}

TEST_CASE("of several plugs in one plate the deepest asks for its depth, in whichever order they stand") {
    // C5: a power block 80.
    using Plug = plan::Device::Plug;
    for (const auto& [first, second] :
         {std::pair{Plug::PowerBlock, Plug::Straight}, std::pair{Plug::Straight, Plug::PowerBlock}})
        CHECK(speaks("plug-depth", 1400, 300, [first = first, second = second](plan::Plan& plan) {
            plan.plates.front().use = plan::UseRate::LeftPlugged;
            for (const Plug plug : {first, second}) {
                plan::Device device;
                device.id = "device" + std::to_string(plan.devices.size());
                device.plate = plan.plates.front().id;
                device.plug = plug;
                plan.devices.push_back(device);
            }
            pieceAt(plan, "box", 1000, {900, 450, 850}).at_mm.y -= 79;
        }));
}

TEST_CASE("radiator: 100 beside and 300 above are enough") {
    // 7.8 P: none behind, 100 beside, 300 above; common practice, no source.
    const auto radiator = [](plan::Plan& plan) { pieceAt(plan, "radiator", 1000, {1000, 100, 600}, 150); };
    CHECK(speaks("radiator", 1500, 450, radiator, Severity::Fault));
    CHECK(speaks("radiator", 1000 - 40.5 - 99, 450, radiator));
    CHECK_FALSE(speaks("radiator", 1000 - 40.5 - 100, 450, radiator));
    CHECK(speaks("radiator", 1500, 750 + 40.5 + 299, radiator));
    CHECK_FALSE(speaks("radiator", 1500, 750 + 40.5 + 300, radiator));
}

TEST_CASE("hob-gap: 300 from the hob's edge, up to the hood") {
    // 2.32 C: guides in the United Kingdom. The hob's edge is at 1580.
    const auto hob = [](plan::Plan& plan) {
        pieceAt(plan, "hob", 1000, {580, 510, 8}, 900);
        pieceAt(plan, "hood", 1000, {600, 330, 800}, 1600);
    };
    CHECK(speaks("hob-gap", 1580 + 40.5 + 299, 1100, hob));
    CHECK_FALSE(speaks("hob-gap", 1580 + 40.5 + 300, 1100, hob));
    CHECK_FALSE(speaks("hob-gap", 1580 + 40.5 + 100, 1600 + 41, hob)); // over the hood's lower edge
}

TEST_CASE("off-wall: a plate reaches neither into the ceiling nor past a slope") {
    const auto slope = [](plan::Plan& plan) {
        plan.rooms.front().ceiling.heights_mm = {1000, 2000, 2000, 1000};
    };
    // Wall A goes from corner 0 (1000 high) to corner 1 (2000 high): at u 2000 it is 1500 high, at the
    // plate's upper left corner 1500 - 40.5 / 4.
    const double highest = 1000 + (2000 - 40.5) / 4 - 40.5;
    CHECK_FALSE(speaks("off-wall", 2000, highest - 1, slope));
    CHECK(speaks("off-wall", 2000, highest + 1, slope, Severity::Fault));
}

TEST_CASE("row-height: 3 off the neighbour is found, the same height and a height of its own are not") {
    const auto beside = [](double v) { return [v](plan::Plan& plan) { socketAt(plan, 1500, v); }; };
    CHECK(speaks("row-height", 1000, 300, beside(303)));
    CHECK_FALSE(speaks("row-height", 1000, 300, beside(300)));
    CHECK_FALSE(speaks("row-height", 1000, 300, beside(450)));
}

TEST_CASE("plate-overlap: frames may touch, not overlap") {
    const auto beside = [](double u) { return [u](plan::Plan& plan) { socketAt(plan, u, 300); }; };
    CHECK_FALSE(speaks("plate-overlap", 1000, 300, beside(1081)));
    CHECK(speaks("plate-overlap", 1000, 300, beside(1080), Severity::Fault));
}

TEST_CASE("lead-short: the way by wall and floor and 150 of slack") {
    const auto with = [](double lead) {
        plan::Plan plan = bareRoom();
        socketAt(plan, 1000, 300);
        plan::Device device;
        device.id = "device";
        device.room = "room";
        device.plate = plan.plates.front().id;
        device.lead_exit_mm = {1400, 2900, 100}; // 400 along, 200 down, 100 out: 700
        device.lead_mm = lead;
        plan.devices.push_back(device);
        return check(plan);
    };
    CHECK(find(with(850), "lead-short") == nullptr);
    REQUIRE(find(with(849), "lead-short") != nullptr);
    CHECK(find(with(849), "lead-short")->severity == Severity::Warn);
    CHECK(find(with(699), "lead-short")->severity == Severity::Fault);
    CHECK(*find(with(699), "lead-short")->value_mm == Approx(700));
}

TEST_CASE("wet zones: corner points of a shower's zones, and the socket's distance by country") {
    // IEC 60364-7-701, from memory: zone 1 over the tray to 2.25 m, zone 2 0.60 m beyond.
    const auto with = [](double u, double v, const std::string& pack) {
        plan::Plan plan = bareRoom();
        pieceAt(plan, "shower", 0, {900, 900, 2000}).with.emplace_back("trayHeight", 40);
        socketAt(plan, u, v);
        return check(plan, pack);
    };
    CHECK(find(with(1499, 1500, "de"), "wet-zone") != nullptr); // 900 + 600
    CHECK(find(with(1501, 1500, "de"), "wet-zone") == nullptr);
    CHECK(find(with(1499, 2251, "de"), "wet-zone") == nullptr); // over the zones
    CHECK(find(with(1499, 2249, "de"), "wet-zone") != nullptr);
    CHECK(find(with(3399, 300, "international"), "wet-socket") != nullptr); // 900 + 2500
    CHECK(find(with(3401, 300, "international"), "wet-socket") == nullptr);
    CHECK(find(with(1501, 1500, "de"), "wet-socket") == nullptr);
}

TEST_CASE("a shower without a basin has no zone 2 and reaches 1.20 m round its outlet") {
    const auto with = [](double u) {
        plan::Plan plan = bareRoom();
        pieceAt(plan, "shower", 0, {900, 900, 2000}).with.emplace_back("trayHeight", 0);
        socketAt(plan, u, 1500);
        return check(plan, "de");
    };
    // The outlet stands for the piece's middle, 450 from wall A: on the wall sqrt(1200^2 - 450^2) = 1112 to
    // its right.
    CHECK(find(with(450 + 1112), "wet-zone") != nullptr);
    CHECK(find(with(450 + 1113), "wet-zone") == nullptr);
}

TEST_CASE("a box leaves 20 of its wall, and boxes of both sides are 150 apart") {
    const auto with = [](double thickness, double other_u) {
        plan::Plan plan = bareRoom();
        addRoom(plan, "hall", -2000 - thickness, -thickness);
        for (auto& room : plan.rooms)
            for (auto& wall : room.walls)
                wall.thickness_mm = thickness;
        socketAt(plan, 1000, 300, "D");
        plan::Plate& other = addPlate(plan, "h1", "hall", "B", other_u, {"socket-f"});
        other.host.v_mm = 300;
        return check(plan);
    };
    // Wall D runs northwards, the hall's wall B southwards: the same place is 3000 - 1000. Boxes 68 wide, 47
    // deep.
    CHECK(find(with(66, 500), "box-depth") != nullptr);
    CHECK(find(with(67, 500), "box-depth") == nullptr);
    CHECK(find(with(100, 2000 - 68 - 149), "back-to-back") != nullptr);
    CHECK(find(with(100, 2000 - 68 - 151), "back-to-back") == nullptr);
    // Straight behind each other 47 + 47 leave 20 of 114, and 19 of 113.
    CHECK(find(with(113, 2000), "back-to-back")->severity == Severity::Fault);
    CHECK(find(with(114, 2000), "back-to-back")->severity == Severity::Hint);
}

TEST_CASE("ies-file: a truncated file is named with its line, a whole one is not") {
    // IES LM-63-2002, written by hand: one lamp, two angles each way.
    const auto folder = std::filesystem::path(GANGWAY_OUT_DIR) / "checks-ies";
    std::filesystem::create_directories(folder);
    const std::string head =
        "IESNA:LM-63-2002\n[TEST] 1\n[TESTLAB] none\n[ISSUEDATE] 2026\n[MANUFAC] none\nTILT=NONE\n"
        "1 1000 1 2 1 1 2 0 0 0\n1 1 10\n0 90\n0\n";
    std::ofstream(folder / "whole.ies") << head << "100 0\n";
    std::ofstream(folder / "cut.ies") << head << "100\n";
    plan::Plan plan = bareRoom();
    for (const char* name : {"whole.ies", "cut.ies", "gone.ies"})
        addLamp(plan, name, "room").ies = name;
    const auto found = checks::check(geometry::HouseIndex(plan), shipped(), packOf("international"), folder);
    std::vector<std::string> about;
    for (const auto& finding : found)
        if (finding.rule == "ies-file") about.push_back(finding.objects.front());
    CHECK(about == std::vector<std::string>{"cut.ies", "gone.ies"});
    CHECK(find(found, "ies-file")->message.find("cut.ies:") != std::string::npos);
}

TEST_CASE("leg-mark-twice: two legs of one mark are found, legs without a mark are not") {
    plan::Plan plan = bareRoom();
    addPlate(plan, "s1", "room", "A", 1000, {"switch-1way"});
    addPlate(plan, "s2", "room", "A", 2000, {"switch-1way"});
    addLamp(plan, "l1", "room");
    addLamp(plan, "l2", "room");
    addLeg(plan, "one", {{"s1", 1, 1}}, {"l1"});
    addLeg(plan, "two", {{"s2", 1, 1}}, {"l2"});
    CHECK(find(check(plan), "leg-mark-twice") == nullptr);
    plan.legs[0].letter = plan.legs[1].letter = "a";
    CHECK(find(check(plan), "leg-mark-twice") != nullptr);
    plan.legs[1].letter = "b";
    CHECK(find(check(plan), "leg-mark-twice") == nullptr);
}
