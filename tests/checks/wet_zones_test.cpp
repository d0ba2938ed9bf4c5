// Bath and shower zones: where they end, round screens too, what each country makes of them, and how what is
// mounted there is protected. IEC 60364-7-701 unless a case names another source.
#include "checks/checks.hpp"
#include "checks/wet_zones.hpp"

#include "../switching/small_switching.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace gangway;
using plan::Severity;
using plan::Vec2;

namespace {
plan::Furniture& add(plan::Plan& plan, const std::string& kind, Vec2 low, Vec2 high, double height = 2000) {
    plan::Furniture piece;
    piece.id = kind + std::to_string(plan.furniture.size());
    piece.kind = kind;
    piece.room = "room";
    piece.layer = plan::kLayerFurniture;
    piece.size = {high.x - low.x, high.y - low.y, height};
    piece.at_mm = (low + high) * 0.5;
    plan.furniture.push_back(piece);
    return plan.furniture.back();
}

/// A room of its own size with its south-west corner at (0, 0); wall A is its north wall, from the left.
plan::Plan room(double width, double depth) {
    plan::Plan plan;
    plan.storeys.emplace_back().id = "ground";
    addRoom(plan, "room", 0, width);
    plan.rooms.front().outline = {{0, depth}, {width, depth}, {width, 0}, {0, 0}};
    return plan;
}

/// An L: the same with the square from (2000, 0) to (4000, 1500) cut out of its south-east.
plan::Plan bentRoom() {
    plan::Plan plan = room(4000, 3000);
    plan.rooms.front().outline = {{0, 3000}, {4000, 3000}, {4000, 1500}, {2000, 1500}, {2000, 0}, {0, 0}};
    for (const char* wall : {"E", "F"})
        plan.rooms.front().walls.emplace_back().id = wall;
    return plan;
}

/// A tray 900 x 900 in the room's north-west corner.
plan::Plan withTray(double tray_height = 40) {
    plan::Plan plan = room(4000, 3000);
    add(plan, "shower", {0, 2100}, {900, 3000}).with.emplace_back("trayHeight", tray_height);
    return plan;
}

/// The number of the zone a point is in, 9 outside.
int zoneAt(const plan::Plan& plan, plan::Vec3 at, const std::string& pack = "international") {
    int number = 9;
    const geometry::HouseIndex house(plan);
    for (const auto& zone : checks::wetZones(house, packOf(pack), "room"))
        if (const auto* shell = checks::shellAt(zone, at)) number = std::min(number, shell->number);
    return number;
}

double away(const plan::Plan& plan, Vec2 at) {
    const geometry::HouseIndex house(plan);
    return checks::fromZone1(checks::wetZones(house, packOf("international"), "room").front(), at);
}

std::vector<plan::Finding> check(const plan::Plan& plan, const std::string& pack = "international") {
    return checks::check(geometry::HouseIndex(plan), shipped(), packOf(pack));
}

const plan::Finding* find(const std::vector<plan::Finding>& findings, const std::string& rule) {
    for (const auto& finding : findings)
        if (finding.rule == rule) return &finding;
    return nullptr;
}

/// A plate on wall A of a room with a tray.
std::vector<plan::Finding> withPlate(double u, double v, const std::string& type, const std::string& pack,
                                     const std::string& ip = "") {
    plan::Plan plan = withTray();
    plan::Plate& plate = addPlate(plan, "p1", "room", "A", u, {type});
    plate.host.v_mm = v;
    plate.ip = ip;
    return check(plan, pack);
}

/// A bath 900 x 1000 in the south-west corner and a screen along its east side, as in check value 55.
plan::Plan withScreen(double screen_height, double bottom = 0) {
    plan::Plan plan = room(4000, 3000);
    add(plan, "bath", {0, 0}, {900, 1000}, 560);
    auto& screen = add(plan, "shower-screen", {400, 495}, {1400, 505}, screen_height);
    screen.turn_deg = 90;
    screen.bottom_mm = bottom;
    return plan;
}

double areaOf(const plan::Plan& plan, int number) {
    double area = 0;
    const geometry::HouseIndex house(plan);
    for (const auto& volume : checks::wetVolumes(house, packOf("international"), "room"))
        if (volume.number == number) area += geometry::signedArea(volume.outline_mm);
    return area;
}
} // namespace

TEST_CASE("a tray's zones: 899, 901, 1499 and 1501 along its wall, and over them") {
    // 701.30 (4.2 to 4.5): zone 1 over the tray, zone 2 600 beyond, both to 2250.
    const plan::Plan plan = withTray();
    CHECK(zoneAt(plan, {899, 3000, 1000}) == 1);
    CHECK(zoneAt(plan, {901, 3000, 1000}) == 2);
    CHECK(zoneAt(plan, {1499, 3000, 1000}) == 2);
    CHECK(zoneAt(plan, {1501, 3000, 1000}) == 9);
    CHECK(zoneAt(plan, {450, 2550, 30}) == 0);
    CHECK(zoneAt(plan, {450, 2550, 41}) == 1);
    for (const double x : {899.0, 901.0, 1499.0})
        CHECK(zoneAt(plan, {x, 3000, 2260}) == 9);
}

TEST_CASE("a head fixed higher than 2250 takes the zones up with it") {
    plan::Plan plan = withTray();
    plan.furniture.front().with.emplace_back("headHeight", 2300);
    CHECK(zoneAt(plan, {899, 3000, 2260}) == 1);
    CHECK(zoneAt(plan, {901, 3000, 2299}) == 2);
    CHECK(zoneAt(plan, {901, 3000, 2301}) == 9);
}

TEST_CASE("a shower without a tray: zone 1 to 1200 round its outlet, no zone 2, zone 0 to 100") {
    // 701.30 (4.1, 4.5). Its middle stands for the outlet: (450, 2550).
    const plan::Plan plan = withTray(19);
    CHECK(zoneAt(plan, {450, 2550 - 1199, 1000}) == 1);
    CHECK(zoneAt(plan, {450, 2550 - 1201, 1000}) == 9);
    CHECK(zoneAt(plan, {450, 2550 - 1199, 99}) == 0);
    CHECK(zoneAt(plan, {450, 2550 - 1199, 101}) == 1);
    // A tray of 20 is one: zone 1 ends with it, and zone 2 follows (threshold: an assumption of ours).
    CHECK(zoneAt(withTray(20), {450, 2550 - 1040, 1000}) == 2);
    CHECK(zoneAt(withTray(20), {450, 2550 - 1060, 1000}) == 9);
}

TEST_CASE("a permanent screen as high as the zones: the string goes round its end, 948.7") {
    // Check value 55 (4.7): straight it is 300.
    CHECK(away(withScreen(2250), {1200, 100}) == Approx(std::hypot(300, 900)).margin(0.01));
    CHECK(zoneAt(withScreen(2250), {1200, 100, 1000}) == 9);
    CHECK(zoneAt(withScreen(2249), {1200, 100, 1000}) == 2);
    CHECK(away(withScreen(2000), {1200, 100}) == Approx(300));
    // On the bath's rim it closes too, in the air over it not.
    CHECK(away(withScreen(1690, 560), {1200, 100}) == Approx(std::hypot(300, 900)).margin(0.01));
    CHECK(away(withScreen(1700, 561), {1200, 100}) == Approx(300));
    CHECK(away(withScreen(2250), {900, 1300}) == Approx(300));
}

TEST_CASE("two screens in an L: the string lies round both ends, not through where they meet") {
    plan::Plan plan = withScreen(2250);
    plan.furniture.front().size.depth_mm = 600; // the bath ends at y 600
    plan.furniture.front().at_mm.y = 300;
    add(plan, "shower-screen", {300, 995}, {900, 1005}, 2250);
    // From (1200, 100) past (900, 1000) and (300, 1000) to the bath's edge at y 600.
    CHECK(away(plan, {1200, 100}) == Approx(std::hypot(300, 900) + 600 + 400).margin(0.01));
}

TEST_CASE("a shower's own glass counts when it is as high as the zones; closed all round it has a door") {
    plan::Plan plan = room(4000, 3000);
    auto& shower = add(plan, "shower", {1000, 2100}, {1900, 3000});
    shower.with = {{"trayHeight", 40}, {"screenSides", 3}, {"screenHeight", 2250}};
    // Glass in front and at the right; the left is open: from the front round the front left corner.
    CHECK(away(plan, {1450, 2000}) == Approx(std::hypot(450, 100)).margin(0.01));
    plan.furniture.front().with.back().second = 2249;
    CHECK(away(plan, {1450, 2000}) == Approx(100));
    plan.furniture.front().with.back().second = 2250;
    add(plan, "shower-screen", {555, 2545}, {1445, 2555}, 2250).turn_deg =
        90; // at its left, 5 short each end
    CHECK(away(plan, {1450, 2000}) == Approx(100));
}

TEST_CASE("the string goes round a corner of the room, and round a column") {
    plan::Plan plan = bentRoom();
    add(plan, "bath", {1000, 0}, {1900, 500}, 560);
    // (2500, 1500) is on the short wall: straight it would go through the corner at (2000, 1500).
    CHECK(away(plan, {2500, 1500}) == Approx(500 + std::hypot(100, 1000)).margin(0.01));
    plan::Plan pillar = room(4000, 3000);
    add(pillar, "bath", {0, 1000}, {1000, 2000}, 560);
    pillar.rooms.front().columns = {{{1200, 1000}, {1400, 1000}, {1400, 2000}, {1200, 2000}}};
    for (const char* wall : {"E", "F", "G", "H"})
        pillar.rooms.front().walls.emplace_back().id = wall;
    CHECK(away(pillar, {1600, 1500}) == Approx(std::hypot(200, 500) + 200 + 200).margin(0.01));
}

TEST_CASE("a small room has no place 2500 from zone 1: the farthest is 1612") {
    // Check value 54.
    plan::Plan plan = room(2300, 1700);
    add(plan, "shower", {0, 800}, {900, 1700}).with.emplace_back("trayHeight", 40);
    CHECK(away(plan, {2300, 0}) == Approx(1612.5).margin(0.1));
    addPlate(plan, "p1", "room", "B", 1600, {"socket-f"});
    const auto found = check(plan, "gb");
    REQUIRE(find(found, "wet-socket") != nullptr);
    CHECK(find(found, "wet-socket")->remedy.find("1612") != std::string::npos);
}

TEST_CASE("ordinary sockets by edition: 2499 and 2501 from zone 1, and 3 m before 2022") {
    // BS 7671 701.512.3 (4.10 C), check value 52.
    CHECK(find(withPlate(3399, 300, "socket-f", "gb"), "wet-socket") != nullptr);
    CHECK(find(withPlate(3401, 300, "socket-f", "gb"), "wet-socket") == nullptr);
    CHECK(find(withPlate(3401, 300, "socket-f", "gb-2008"), "wet-socket") != nullptr);
    CHECK(find(withPlate(3899, 300, "socket-f", "gb-2008"), "wet-socket") != nullptr);
    CHECK(find(withPlate(3901, 300, "socket-f", "gb-2008"), "wet-socket") == nullptr);
    // DIN VDE 0100-701, NF C 15-100 (4.12 C), CEI 64-8 (from memory): outside zone 2 is enough.
    for (const char* pack : {"de", "fr", "it"}) {
        CHECK(find(withPlate(1499, 300, "socket-f", pack), "wet-zone") != nullptr);
        const auto outside = withPlate(1501, 300, "socket-f", pack);
        CHECK(find(outside, "wet-zone") == nullptr);
        CHECK(find(outside, "wet-socket") == nullptr);
    }
}

TEST_CASE("a shaver unit may be in zone 2, not in zone 1; a switch in neither") {
    // BS 7671 701.512.3 (4.10 C, 4.13).
    CHECK(find(withPlate(950, 1450, "shaver", "gb"), "wet-zone") == nullptr);
    CHECK(find(withPlate(850, 1450, "shaver", "gb"), "wet-zone") != nullptr);
    CHECK(find(withPlate(950, 1450, "switch-1way", "gb"), "wet-zone") != nullptr);
    CHECK(find(withPlate(1501, 1450, "switch-1way", "gb"), "wet-zone") == nullptr);
}

TEST_CASE("France: zone 1 begins at the bottom of the tray or bath") {
    // NF C 15-100, 701 (4.4 B): 2250 above the bottom of the bath, which is 560 - 420 above the floor here.
    plan::Plan plan = room(4000, 3000);
    add(plan, "bath", {0, 2250}, {1700, 3000}, 560);
    CHECK(zoneAt(plan, {800, 3000, 140 + 2249}, "fr") == 1);
    CHECK(zoneAt(plan, {800, 3000, 140 + 2251}, "fr") == 9);
    CHECK(zoneAt(plan, {800, 3000, 2251}, "international") == 9);
    CHECK(zoneAt(withTray(0), {450, 2000, 2251}, "fr") == 9); // no tray: from the floor
}

TEST_CASE("Australia: zone 1 to 2500, zone 2 to 2250, zone 3 2400 further; low sockets and basins") {
    // AS/NZS 3000 (4.17 C, 4.18 A, 4.19 C).
    const plan::Plan plan = withTray();
    CHECK(zoneAt(plan, {899, 3000, 2499}, "au") == 1);
    CHECK(zoneAt(plan, {899, 3000, 2501}, "au") == 9);
    CHECK(zoneAt(plan, {1499, 3000, 2249}, "au") == 2);
    CHECK(zoneAt(plan, {1499, 3000, 2251}, "au") == 3);
    CHECK(zoneAt(plan, {900 + 2999, 3000, 1000}, "au") == 3);
    CHECK(zoneAt(plan, {900 + 3001, 3000, 1000}, "au") == 9);
    const auto low = withPlate(2000, 299, "socket-f", "au");
    REQUIRE(find(low, "wet-socket") != nullptr);
    CHECK(find(low, "wet-socket")->severity == Severity::Warn);
    CHECK(find(withPlate(2000, 300, "socket-f", "au"), "wet-socket") == nullptr);
    plan::Plan basin = room(4000, 3000);
    add(basin, "basin", {1000, 2550}, {1600, 3000}, 850);
    CHECK(zoneAt(basin, {1600 + 149, 3000, 1249}, "au") == 2);
    CHECK(zoneAt(basin, {1600 + 151, 3000, 1249}, "au") == 9);
    CHECK(zoneAt(basin, {1600 + 149, 3000, 1251}, "au") == 9);
    CHECK(zoneAt(basin, {1600, 3000, 1000}, "de") == 9); // 4.23: no zone round a wash basin
}

TEST_CASE("United States: no receptacle within 3 ft and 8 ft above the rim; a switch outside the tub") {
    // NEC 2020 406.9(C), 404.4, 410.10(D) (4.20 to 4.22), check value 56: 3 ft is 914.4, 8 ft 2438.4.
    const auto at = [](double from_tub, double above_rim, const std::string& type) {
        plan::Plan plan = room(4000, 4000);
        plan.rooms.front().ceiling.heights_mm = {3200};
        add(plan, "bath", {0, 3250}, {1000, 4000}, 500);
        addPlate(plan, "p1", "room", "A", 1000 + from_tub, {type}).host.v_mm = 500 + above_rim;
        return check(plan, "us");
    };
    CHECK(find(at(899, 2400, "socket-b"), "wet-socket") != nullptr);
    CHECK(find(at(914, 2400, "socket-b"), "wet-socket") != nullptr);
    CHECK(find(at(915, 2400, "socket-b"), "wet-socket") == nullptr);
    CHECK(find(at(920, 2400, "socket-b"), "wet-socket") == nullptr);
    CHECK(find(at(899, 2438, "socket-b"), "wet-socket") != nullptr);
    CHECK(find(at(899, 2439, "socket-b"), "wet-socket") == nullptr);
    CHECK(find(at(1, 600, "switch-1way"), "wet-zone") == nullptr);
    CHECK(find(at(-1, 600, "switch-1way"), "wet-zone") != nullptr);
    const auto pendant = [](double from_tub) {
        plan::Plan plan = room(4000, 4000);
        add(plan, "bath", {0, 3250}, {1000, 4000}, 500);
        plan::Luminaire& lamp = addLamp(plan, "l1", "room");
        lamp.kind = plan::Luminaire::Kind::Pendant;
        lamp.host.u_mm = 1000 + from_tub;
        lamp.host.v_mm = 3600;
        return check(plan, "us");
    };
    CHECK(find(pendant(914), "wet-lamp") != nullptr);
    CHECK(find(pendant(915), "wet-lamp") == nullptr);
}

TEST_CASE("ip-needed: too low a degree in a zone is a fault, none stated a hint, enough is nothing") {
    // 701.512.2 (4.14 C): IPX4 in zones 1 and 2, IPX7 in zone 0.
    const auto plate = [](const std::string& ip, double u = 950) {
        return withPlate(u, 600, "cord-outlet", "international", ip);
    };
    REQUIRE(find(plate("IP43"), "ip-needed") != nullptr);
    CHECK(find(plate("IP43"), "ip-needed")->severity == Severity::Fault);
    CHECK(find(plate("IP44"), "ip-needed") == nullptr);
    CHECK(find(plate("IPX5"), "ip-needed") == nullptr);
    CHECK(find(plate("IP65/IP67"), "ip-needed") == nullptr);
    REQUIRE(find(plate(""), "ip-needed") != nullptr);
    CHECK(find(plate(""), "ip-needed")->severity == Severity::Hint);
    CHECK(find(plate("splash-proof"), "ip-needed")->severity == Severity::Hint);
    CHECK(find(plate("", 1501), "ip-needed") == nullptr);
    const auto lamp = [](const std::string& ip, double drop) {
        plan::Plan plan = withTray();
        plan::Luminaire& pendant = addLamp(plan, "l1", "room");
        pendant.kind = plan::Luminaire::Kind::Pendant;
        pendant.drop_mm = drop;
        pendant.host.v_mm = 2550;
        pendant.ip = ip;
        return check(plan);
    };
    CHECK(find(lamp("IP20", 150), "ip-needed") != nullptr); // 2400 - 150 is 2250
    CHECK(find(lamp("IP20", 149), "ip-needed") == nullptr);
    CHECK(find(lamp("", 150), "wet-lamp")->severity == Severity::Hint);
    CHECK(find(lamp("IP44", 150), "wet-lamp") == nullptr);
}

TEST_CASE("a socket under a bath is told that a panel may close it off") {
    plan::Plan plan = room(4000, 3000);
    add(plan, "bath", {0, 2250}, {1700, 3000}, 560);
    const auto at = [&](double v) {
        plan.plates.clear();
        addPlate(plan, "p1", "room", "A", 800, {"socket-f"}).host.v_mm = v;
        return find(check(plan), "wet-zone")->remedy;
    };
    CHECK(at(139).find("panel") != std::string::npos); // the bowl's bottom is at 140
    CHECK(at(141).find("panel") == std::string::npos);
}

TEST_CASE("zone 2 on plan: round corners, cut by the room, the same traced where a room is bent") {
    const double exact = 900 * 900 + 2 * 900 * 600 + std::numbers::pi / 4 * 600 * 600;
    CHECK(areaOf(withTray(), 1) == Approx(900 * 900));
    CHECK(areaOf(withTray(), 2) == Approx(exact).epsilon(0.001));
    plan::Plan bent = bentRoom();
    add(bent, "shower", {0, 2100}, {900, 3000}).with.emplace_back("trayHeight", 40);
    CHECK(areaOf(bent, 2) == Approx(exact).epsilon(0.001));
    // Behind the screen of check value 55 nothing is nearer than its end.
    CHECK(areaOf(withScreen(2249), 2) ==
          Approx(900 * 1000 + 900 * 600 + 1000 * 600 + std::numbers::pi / 4 * 360000).epsilon(0.001));
    CHECK(areaOf(withScreen(2250), 2) ==
          Approx(900 * 1000 + 900 * 600 + std::numbers::pi / 2 * 360000).epsilon(0.005));
}

TEST_CASE("zones on a wall: zone 1 as wide as the tray, zone 2 beside it, none on the wall behind a screen") {
    const plan::Plan plan = withTray();
    const geometry::HouseIndex house(plan);
    const auto areas = checks::wallZoneAreas(house, packOf("international"), plan.rooms.front(), 0);
    REQUIRE(areas.size() == 2);
    const auto right = [](const checks::WetWallArea& area) {
        double most = -1e9;
        for (const Vec2 corner : area.outline_mm)
            most = std::max(most, corner.x);
        return most;
    };
    CHECK(areas[0].number == 1);
    CHECK(right(areas[0]) == Approx(900).margin(0.1));
    CHECK(areas[1].number == 2);
    CHECK(right(areas[1]) == Approx(1500).margin(0.1));
    CHECK(geometry::signedArea(areas[1].outline_mm) == Approx(600 * 2250).epsilon(0.001));
    // Wall C, the south wall, runs from the right: the bath's zone 1 covers its last 900, and no zone 2.
    const plan::Plan screened = withScreen(2250);
    const geometry::HouseIndex other(screened);
    const auto south = checks::wallZoneAreas(other, packOf("international"), screened.rooms.front(), 2);
    REQUIRE(south.size() == 1);
    CHECK(geometry::signedArea(south.front().outline_mm) == Approx(900 * 2250).epsilon(0.001));
}
