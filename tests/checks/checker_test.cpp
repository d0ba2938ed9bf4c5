// Findings kept up to date by the Checker are those of a fresh check, after any edit.
#include "checks/checker.hpp"

#include "checks/accepted.hpp"

#include "../switching/small_switching.hpp"
#include "plan/io.hpp"
#include "support/generated_house.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

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

/// One random edit of one object, as a designer's hand makes them; tells what it touched.
class Hand {
public:
    explicit Hand(std::uint32_t seed) : random_(seed) {}

    checks::Edited edit(plan::Plan& plan) {
        checks::Edited edited;
        switch (below(8)) {
        case 0:
        case 1:
        case 2: { // along, up, or to another wall
            plan::Plate& plate = pick(plan.plates);
            edited.plates = {plate.id};
            if (plate.host.kind != plan::Host::Kind::Wall) break;
            plate.host.u_mm = between(50, 3500);
            if (below(3) == 0) plate.host.v_mm = between(100, 2000);
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
        case 4: {
            plan::Furniture& piece = pick(plan.furniture);
            edited.furniture = {piece.id};
            piece.at_mm = piece.at_mm + plan::Vec2{between(-600, 600), between(-600, 600)};
            if (below(4) == 0) piece.size.width_mm *= 1.2;
            break;
        }
        case 5: { // gone
            const std::size_t at = below(plan.plates.size());
            edited.plates = {plan.plates[at].id};
            plan.plates.erase(plan.plates.begin() + static_cast<std::ptrdiff_t>(at));
            break;
        }
        case 6: {
            if (plan.luminaires.empty()) break;
            plan::Luminaire& lamp = pick(plan.luminaires);
            edited.luminaires = {lamp.id};
            lamp.host.u_mm += between(-300, 300);
            lamp.watts *= 2;
            break;
        }
        default: {
            if (plan.devices.empty()) break;
            plan::Device& device = pick(plan.devices);
            edited.devices = {device.id};
            device.lead_mm = between(200, 3000);
            break;
        }
        }
        return edited;
    }

private:
    std::size_t below(std::size_t end) { return random_() % end; }
    double between(double low, double high) {
        return low + (high - low) * static_cast<double>(random_() % 10007) / 10006;
    }
    template <class T>
    T& pick(std::vector<T>& list) {
        return list[below(list.size())];
    }
    std::mt19937 random_;
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
    keepUp(demo(), plan::assetsFolder() / "demo", 20261126, 60);
}

TEST_CASE("after any edit of a grid of rooms the kept findings are those of a fresh check") {
    keepUp(testing::generatedHouse(9), {}, 7, 60);
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
