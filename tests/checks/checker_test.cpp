// Findings kept up to date by the Checker are those of a fresh check, after any edit.
#include "checks/checker.hpp"

#include "checks/accepted.hpp"

#include "../switching/small_switching.hpp"
#include "plan/io.hpp"
#include "support/generated_house.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <random>

using namespace gangway;

namespace {
plan::Plan demo() {
    auto read = plan::readFile(plan::assetsFolder() / "demo" / "terrace.plan.json");
    if (!read) throw std::runtime_error("demo");
    return read->plan;
}

std::vector<std::string> lines(const std::vector<plan::Finding>& findings) {
    std::vector<std::string> lines;
    for (const plan::Finding& finding : findings)
        lines.push_back(fmt::format("{} {} {} {} {} {}", static_cast<int>(finding.severity),
                                    checks::findingId(finding), checks::factsOf(finding), finding.remedy,
                                    finding.move ? finding.move->u_mm : -1, finding.accepted.has_value()));
    return lines;
}

/// Bed, hall and WC in a row from west to east, 4000, 6000 and 2000 wide and 3000 deep, with a door between
/// each; every room's lamp is worked from the far side of it as one comes from the bed.
plan::Plan nightHouse() {
    plan::Plan plan = testing::generatedHouse(3);
    const std::array<const char*, 3> names = {"bed-room", "hall", "wc-room"};
    const std::array<double, 4> walls = {0, 4000, 10100, 12200};
    plan.plates.clear();
    plan.furniture.clear();
    for (std::size_t i = 0; i < 3; ++i) {
        plan::Room& room = plan.rooms[i];
        const double left = walls[i] + (i == 0 ? 0 : 100);
        room.id = room.name = names[i];
        room.outline = {{left, 3000}, {walls[i + 1], 3000}, {walls[i + 1], 0}, {left, 0}};
        plan::Plate& plate = plan.plates.emplace_back();
        plate.id = room.id + "-switch";
        plate.room = room.id;
        plate.host = {plan::Host::Kind::Wall, "A", "", "", walls[i + 1] - left - 300, 1050};
        plate.format = "round-71";
        plate.modules = {{"switch-1way", "", "", {}}};
        plan::Luminaire& lamp = plan.luminaires.emplace_back();
        lamp.id = room.id + "-lamp";
        lamp.room = room.id;
        lamp.host = {plan::Host::Kind::Ceiling, "", "", "", 900, 1500};
        lamp.watts = 6;
        plan.legs.push_back({room.id + "-leg", "", "", {{plate.id, 1, 1}}, {lamp.id}, {}});
        if (i == 2) continue;
        plan::Opening& door = plan.openings.emplace_back();
        door.id = room.id + "-door";
        door.kind = plan::Opening::Kind::HingedDoor;
        door.room = room.id;
        door.wall = "B"; // the east one, from north to south
        door.left_mm = 1900;
        door.width_mm = 800;
        door.height_mm = 2100;
        door.joins = names[i + 1];
    }
    const auto put = [&](const char* id, const char* kind, const char* room, plan::Vec2 at,
                         plan::Size3 size) {
        plan::Furniture& piece = plan.furniture.emplace_back();
        piece.id = id;
        piece.kind = kind;
        piece.room = room;
        piece.layer = plan::kLayerFurniture;
        piece.at_mm = at;
        piece.size = size;
    };
    put("bed", "bed", "bed-room", {1200, 1900}, {1600, 2000, 500});
    put("chest", "chest", "hall", {7000, 600}, {1200, 500, 900});
    put("seat", "chair", "hall", {8500, 2400}, {500, 500, 900});
    put("wc", "wc", "wc-room", {11200, 2600}, {400, 700, 400});
    return plan;
}

/// One random edit of one object, as a designer's hand makes them; tells what it touched.
class Hand {
public:
    explicit Hand(std::uint32_t seed) : random_(seed) {}

    checks::Edited edit(plan::Plan& plan) {
        checks::Edited edited;
        switch (below(14)) {
        case 0:
        case 1:
            movePlate(pick(plan.plates), edited);
            break;
        case 2: { // of a leg
            if (plan.legs.empty() || pick(plan.legs).controls.empty()) break;
            const plan::SwitchLeg& leg = pick(plan.legs);
            const auto plate =
                leg.controls.empty()
                    ? plan.plates.end()
                    : std::ranges::find(plan.plates, leg.controls.front().plate, &plan::Plate::id);
            if (plate != plan.plates.end()) movePlate(*plate, edited);
            break;
        }
        case 3: { // into another room
            plan::Plate& plate = pick(plan.plates);
            const plan::Room& room = pick(plan.rooms);
            edited.plates = {plate.id};
            plate.room = room.id;
            plate.host = {plan::Host::Kind::Wall, room.walls[below(room.walls.size())].id, "", "", 500, 300};
            break;
        }
        case 4:
        case 5: {
            plan::Furniture& piece = pick(plan.furniture);
            edited.furniture = {piece.id};
            piece.at_mm = piece.at_mm + plan::Vec2{between(-600, 600), between(-600, 600)};
            if (below(4) == 0) piece.size.width_mm *= 1.2;
            break;
        }
        case 6: { // gone, or come back at the end of the list
            if (!gone_.empty() && below(2) == 0) {
                plan.plates.push_back(gone_.back());
                gone_.pop_back();
                edited.plates = {plan.plates.back().id};
                break;
            }
            if (plan.plates.size() < 3) break;
            const std::size_t at = below(plan.plates.size());
            edited.plates = {plan.plates[at].id};
            gone_.push_back(plan.plates[at]);
            plan.plates.erase(plan.plates.begin() + static_cast<std::ptrdiff_t>(at));
            break;
        }
        case 7: { // other modules, another circuit
            plan::Plate& plate = pick(plan.plates);
            edited.plates = {plate.id};
            if (!plate.modules.empty())
                plate.modules.front().type = std::array{"switch-2way", "switch-1way", "socket-f"}[below(3)];
            plate.circuit = std::array{"", "L", "another"}[below(3)];
            break;
        }
        case 8:
        case 9:
            if (!plan.luminaires.empty()) changeLamp(plan, edited);
            break;
        case 10:
        case 11:
            if (!plan.devices.empty()) changeDevice(plan, edited);
            break;
        default:
            if (!plan.legs.empty()) changeLeg(plan, edited);
            break;
        }
        return edited;
    }

private:
    void movePlate(plan::Plate& plate, checks::Edited& edited) { // along, up
        edited.plates = {plate.id};
        if (plate.host.kind != plan::Host::Kind::Wall) return;
        plate.host.u_mm = between(50, 3500);
        if (below(3) == 0) plate.host.v_mm = between(100, 2000);
    }
    void changeLamp(plan::Plan& plan, checks::Edited& edited) {
        plan::Luminaire& lamp = pick(plan.luminaires);
        edited.luminaires = {lamp.id};
        switch (below(5)) {
        case 0:
            lamp.watts *= 8;
            break;
        case 1:
            lamp.own_switch = !lamp.own_switch;
            break;
        case 2:
            lamp.room = pick(plan.rooms).id;
            lamp.host = {plan::Host::Kind::Ceiling, "", "", "", 900, 900};
            break;
        default:
            lamp.host.u_mm += between(-900, 900);
            break;
        }
    }
    void changeDevice(plan::Plan& plan, checks::Edited& edited) {
        plan::Device& device = pick(plan.devices);
        edited.devices = {device.id};
        switch (below(4)) {
        case 0:
            device.lead_mm = between(200, 3000);
            break;
        case 1:
            device.watts = between(10, 6000);
            break;
        case 2: // wherever it is
            device.plate = below(3) == 0 ? "" : pick(plan.plates).id;
            break;
        default:
            device.room = pick(plan.rooms).id;
            break;
        }
    }
    void changeLeg(plan::Plan& plan, checks::Edited& edited) {
        const std::size_t at = below(plan.legs.size());
        plan::SwitchLeg& leg = plan.legs[at];
        edited.legs = {leg.id};
        switch (below(7)) {
        case 0:
            leg.controls.push_back({pick(plan.plates).id, 1, 1});
            break;
        case 1:
            if (!leg.controls.empty()) leg.controls.erase(leg.controls.begin());
            break;
        case 2:
            if (!leg.luminaires.empty()) leg.luminaires.pop_back();
            break;
        case 3:
            if (!plan.luminaires.empty()) leg.luminaires.push_back(pick(plan.luminaires).id);
            break;
        case 4:
            leg.letter = below(2) == 0 ? "q" : "";
            leg.circuit = below(2) == 0 ? "L" : "";
            break;
        case 5:
            leg.plates.push_back(pick(plan.plates).id);
            break;
        default:
            plan.legs.erase(plan.legs.begin() + static_cast<std::ptrdiff_t>(at));
            break;
        }
    }
    std::size_t below(std::size_t end) { return random_() % end; }
    double between(double low, double high) {
        return low + (high - low) * static_cast<double>(random_() % 10007) / 10006;
    }
    template <class T>
    T& pick(std::vector<T>& list) {
        return list[below(list.size())];
    }
    std::mt19937 random_;
    std::vector<plan::Plate> gone_;
};

void keepUp(plan::Plan plan, const std::filesystem::path& base, std::uint32_t seed, int edits) {
    const auto catalogue = catalogue::withOwn(shipped(), plan);
    const auto pack = packOf("international");
    checks::Checker checker(catalogue, pack, base);
    checker.all(geometry::HouseIndex(plan));
    Hand hand(seed);
    for (int i = 0; i < edits; ++i) {
        const checks::Edited edited = hand.edit(plan);
        const geometry::HouseIndex house(plan);
        INFO("seed " << seed << ", edit " << i);
        REQUIRE(lines(checker.again(house, edited)) == lines(checks::check(house, catalogue, pack, base)));
    }
}
} // namespace

TEST_CASE("after any edit of the demo the kept findings are those of a fresh check, in the same order") {
    for (const std::uint32_t seed : {20261126U, 1U, 2U})
        keepUp(demo(), plan::assetsFolder() / "demo", seed, 90);
}

TEST_CASE("after any edit of a grid of rooms the kept findings are those of a fresh check") {
    keepUp(testing::generatedHouse(9), {}, 7, 120);
}

TEST_CASE("after any edit about ways at night the kept findings are those of a fresh check") {
    for (const std::uint32_t seed : {3U, 4U, 5U})
        keepUp(nightHouse(), {}, seed, 120);
}

TEST_CASE("furniture and a switch in the hall change what is said of the way from the bed to the WC") {
    plan::Plan plan = nightHouse();
    const auto pack = packOf("international");
    checks::Checker checker(shipped(), pack);
    const auto ofBed = [](const std::vector<plan::Finding>& all) {
        const auto found = std::ranges::find_if(all, [](const plan::Finding& finding) {
            return finding.rule == "dark-walk" && finding.objects.front() == "bed";
        });
        return found == all.end() ? std::string() : checks::factsOf(*found);
    };
    const std::string before = ofBed(checker.all(geometry::HouseIndex(plan)));
    REQUIRE_FALSE(before.empty());
    // A WC in the hall itself is nearer than the one behind it.
    plan.furniture.back().room = "hall";
    plan.furniture.back().at_mm = {5000, 2500};
    checks::Edited edited;
    edited.furniture = {plan.furniture.back().id};
    const geometry::HouseIndex house(plan);
    const std::string after = ofBed(checker.again(house, edited));
    CHECK(after != before);
    CHECK(after == ofBed(checks::check(house, shipped(), pack)));
}

TEST_CASE("an acceptance marks kept findings and its withdrawal frees them, with nothing looked at again") {
    plan::Plan plan = worked({"switch-2way", "switch-2way", "switch-2way"});
    const auto pack = packOf("international");
    checks::Checker checker(shipped(), pack);
    const plan::Finding first = checker.all(geometry::HouseIndex(plan)).at(0);
    plan.accepted.push_back({checks::findingId(first), checks::factsOf(first), "Ann", "", "so", {}});
    CHECK(checker.again(geometry::HouseIndex(plan), {}).at(0).accepted == "so");
    plan.accepted.clear();
    CHECK_FALSE(checker.again(geometry::HouseIndex(plan), {}).at(0).accepted);
}
