// The drawn plan of a storey. Positions are worked by hand from the plans' coordinates.
#include "sheet_reading.hpp"
#include "sheets/storey_plan.hpp"
#include "shipped_plans.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <cmath>
#include <map>
#include <set>

using namespace gangway;
using sheets::PlanThing;

namespace {

const plan::Plan& terrace() {
    return *test::shippedPlans().front();
}

std::size_t countOf(const std::vector<drawing::Item>& items, const std::string& layer,
                    const std::string& id) {
    return static_cast<std::size_t>(std::count_if(
        items.begin(), items.end(), [&](const auto& item) { return item.layer == layer && item.id == id; }));
}

/// Items as text, for comparing drawings.
std::string dumped(std::vector<drawing::Item> items) {
    drawing::Sheet sheet;
    sheet.items = std::move(items);
    return drawing::dump(sheet);
}

void show(plan::Plan& plan, const std::string& layer, plan::Visibility visibility) {
    for (auto& one : plan.layers)
        if (one.id == layer) one.visibility = visibility;
}

/// The last hit of a plate: its symbol, which is drawn over its tag.
sheets::PlanHit symbolHit(const std::vector<sheets::PlanHit>& hits, const std::string& id) {
    for (std::size_t i = hits.size(); i-- > 0;)
        if (hits[i].kind == PlanThing::Plate && hits[i].id == id) return hits[i];
    throw std::runtime_error("no hit for " + id);
}

plan::Plate* findPlate(plan::Plan& plan, const std::string& id) {
    for (auto& plate : plan.plates)
        if (plate.id == id) return &plate;
    throw std::runtime_error("no plate " + id);
}

} // namespace

TEST_CASE("every plate and luminaire of the storey is drawn once, with its tag, and none of another storey") {
    for (const plan::Plan* plan : test::shippedPlans())
        for (const auto& storey : plan->storeys) {
            const auto drawn = sheets::storeyPlan(*plan, test::shippedCatalogue(), storey.id);
            for (const auto& plate : plan->plates) {
                const bool here = plan::findRoom(*plan, plate.room)->storey == storey.id;
                INFO(plate.id);
                CHECK((countOf(drawn.sheet.items, "plates", plate.id) > 0) == here);
                CHECK(test::hasText(drawn.sheet, plate.tag.empty() ? plate.id : plate.tag) == here);
            }
            for (const auto& lamp : plan->luminaires) {
                const bool here = plan::findRoom(*plan, lamp.room)->storey == storey.id;
                CHECK((countOf(drawn.sheet.items, "symbols", lamp.id) > 0) == here);
            }
        }
}

TEST_CASE("paper and house map onto each other, north up and at the stated scale") {
    const auto drawn = sheets::storeyPlan(terrace(), test::shippedCatalogue(), "ground");
    const auto a = drawn.mapping.paper({0, 0});
    const auto b = drawn.mapping.paper({5000, 2500});
    CHECK(b.x - a.x == Approx(100)); // 1:50
    CHECK(b.y - a.y == Approx(50));
    const auto back = drawn.mapping.house(b);
    CHECK(back.x == Approx(5000));
    CHECK(back.y == Approx(2500));
    for (const auto& item : drawn.sheet.items)
        if (const auto* fill = std::get_if<drawing::Fill>(&item.primitive))
            for (const auto& p : fill->outline) {
                CHECK(p.x >= 0);
                CHECK(p.x <= drawn.sheet.width_mm);
                CHECK(p.y >= 0);
                CHECK(p.y <= drawn.sheet.height_mm);
            }
}

TEST_CASE("a click on a socket at its wall finds the plate, within the room the room") {
    const auto drawn = sheets::storeyPlan(terrace(), test::shippedCatalogue(), "ground");
    // Kitchen wall C is the south wall and runs west from x = 6200: plate 17 at 2600 is at x = 3600.
    const auto* plate = sheets::hitAt(drawn.hits, {3600, 60});
    REQUIRE(plate != nullptr);
    CHECK(plate->kind == PlanThing::Plate);
    CHECK(plate->id == "kitchen-17");
    CHECK(plate->wall == "C");
    const auto* outside = sheets::hitAt(drawn.hits, {-50000, 0});
    CHECK(outside == nullptr);
    const auto* wall = sheets::hitAt(drawn.hits, {5000, -50});
    REQUIRE(wall != nullptr);
    CHECK(wall->kind == PlanThing::Wall);
    CHECK(wall->room == "kitchen");
}

TEST_CASE("no two texts lie on each other, with heights or without") {
    for (const plan::Plan* plan : test::shippedPlans())
        for (const auto& storey : plan->storeys)
            for (const bool heights : {false, true}) {
                sheets::StoreyPlanOptions options;
                options.heights = heights;
                const auto drawn = sheets::storeyPlan(*plan, test::shippedCatalogue(), storey.id, options);
                INFO(storey.id << " " << heights);
                CHECK(test::touchingWords(drawn.sheet, 0) == "");
            }
}

TEST_CASE("no two plates' symbols lie on each other") {
    const auto& catalogue = test::shippedCatalogue();
    for (const auto& storey : terrace().storeys) {
        const auto base = sheets::storeyBase(terrace(), storey.id);
        const auto symbols = sheets::storeySymbols(terrace(), catalogue, base);
        // Of a plate's hits the last is its symbol, upright boxes here, 0.6 mm of grip on paper around.
        std::map<std::string, std::array<double, 4>> boxes;
        for (const auto& hit : symbols.hits) {
            if (hit.kind != PlanThing::Plate) continue;
            std::array<double, 4> box = {1e300, 1e300, -1e300, -1e300};
            for (const auto& p : hit.outline_mm)
                box = {std::min(box[0], p.x), std::min(box[1], p.y), std::max(box[2], p.x),
                       std::max(box[3], p.y)};
            boxes[hit.id] = box;
        }
        REQUIRE(boxes.size() > 3);
        const double grip_mm = 2 * 0.6 * 50;
        for (const auto& [id, a] : boxes)
            for (const auto& [other, b] : boxes) {
                const bool over_x = a[2] - b[0] > grip_mm && b[2] - a[0] > grip_mm;
                const bool over_y = a[3] - b[1] > grip_mm && b[3] - a[1] > grip_mm;
                INFO(id << " and " << other);
                CHECK((id == other || !(over_x && over_y)));
            }
    }
}

TEST_CASE("lines are of the ISO 128-2 series and letters at least 2.5 high") {
    const std::set<double> series = {0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0}; // drawing-standards 1.1
    for (const auto& storey : terrace().storeys) {
        const auto drawn = sheets::storeyPlan(terrace(), test::shippedCatalogue(), storey.id);
        for (const auto& pen : test::pensOf(drawn.sheet))
            CHECK(series.contains(pen.width_mm));
        for (const auto& text : test::textsOf(drawn.sheet))
            CHECK(text.height_mm >= 2.5);
    }
}

TEST_CASE("the base does not change while plates move, and the symbols are the only thing that does") {
    auto plan = terrace();
    const auto& catalogue = test::shippedCatalogue();
    const auto base = sheets::storeyBase(plan, "ground");
    const auto before = sheets::storeySymbols(plan, catalogue, base);
    findPlate(plan, "hall-04")->host.u_mm += 300;
    const auto after = sheets::storeySymbols(plan, catalogue, base);
    CHECK(dumped(before.items) != dumped(after.items));
    // Hall wall D is the west wall and runs north: the symbol goes north by 300 mm.
    const auto was = symbolHit(before.hits, "hall-04").outline_mm.front();
    const auto is = symbolHit(after.hits, "hall-04").outline_mm.front();
    CHECK(is.x == Approx(was.x));
    CHECK(is.y - was.y == Approx(300));
    // Drawn twice it is the same.
    CHECK(dumped(after.items) == dumped(sheets::storeySymbols(plan, catalogue, base).items));
}

TEST_CASE("a switch above a socket is pulled out on a leader from a dot at its true place") {
    auto plan = terrace();
    auto above = *findPlate(plan, "hall-04");
    above.id = "hall-04-above";
    above.tag = "H-99";
    above.host.v_mm = 1050;
    plan.plates.push_back(above);
    const auto drawn = sheets::storeyPlan(plan, test::shippedCatalogue(), "ground");
    const auto place = drawn.mapping.paper({-2076, -1400 + above.host.u_mm}); // wall D runs north
    bool leader = false;
    bool socket_has_leader = false;
    for (const auto& item : drawn.sheet.items)
        if (const auto* line = std::get_if<drawing::Line>(&item.primitive)) {
            const bool from_place = std::hypot(line->from.x - place.x, line->from.y - place.y) < 1e-6 &&
                                    line->pen.width_mm == 0.18;
            leader |= from_place && item.id == "hall-04-above" && line->to.x > line->from.x;
            socket_has_leader |= from_place && item.id == "hall-04";
        }
    CHECK(leader);
    CHECK_FALSE(socket_has_leader);
}

TEST_CASE("a dragged symbol stands where it was dragged, and its plate stays") {
    auto plan = terrace();
    const auto& catalogue = test::shippedCatalogue();
    const auto base = sheets::storeyBase(plan, "ground");
    const auto middleOf = [&] {
        const auto symbols = sheets::storeySymbols(plan, catalogue, base);
        plan::Vec2 middle;
        for (const auto& p : symbolHit(symbols.hits, "hall-04").outline_mm)
            middle = middle + p * 0.25;
        return middle;
    };
    const auto before = middleOf();
    findPlate(plan, "hall-04")->symbol_offset_mm = plan::Vec2{600, -250};
    const auto after = middleOf();
    CHECK(after.x - before.x == Approx(600));
    CHECK(after.y - before.y == Approx(-250));
}

TEST_CASE("hidden layers are left out of drawing and hits, ghosted ones are drawn light") {
    auto plan = terrace();
    const auto& catalogue = test::shippedCatalogue();
    show(plan, "plates", plan::Visibility::Hidden);
    show(plan, "furniture", plan::Visibility::Hidden);
    show(plan, "lamps", plan::Visibility::Ghosted);
    const auto drawn = sheets::storeyPlan(plan, catalogue, "ground");
    CHECK(countOf(drawn.sheet.items, "plates", "kitchen-17") == 0);
    CHECK(countOf(drawn.sheet.items, "furniture", "kitchen-island") == 0);
    for (const auto& hit : drawn.hits) {
        CHECK(hit.kind != PlanThing::Plate);
        CHECK(hit.id != "kitchen-island");
    }
    std::size_t lines = 0;
    for (const auto& item : drawn.sheet.items)
        if (const auto* arc = std::get_if<drawing::Arc>(&item.primitive); arc && item.layer == "symbols") {
            CHECK(arc->pen.colour.r > 0x90);
            ++lines;
        }
    CHECK(lines > 10);
}

TEST_CASE("what is selected is in the accent colour with a frame, and nothing else is") {
    sheets::StoreyPlanOptions options;
    options.selected = {{PlanThing::Plate, "kitchen-17", ""}, {PlanThing::Furniture, "kitchen-island", ""}};
    const auto drawn = sheets::storeyPlan(terrace(), test::shippedCatalogue(), "ground", options);
    std::set<std::string> accented;
    std::size_t frames = 0;
    for (const auto& item : drawn.sheet.items)
        if (const auto* polyline = std::get_if<drawing::Polyline>(&item.primitive))
            if (polyline->pen.colour == options.accent) {
                accented.insert(item.id);
                frames += polyline->closed ? 1 : 0;
            }
    CHECK(accented == std::set<std::string>{"", "kitchen-17"}); // "": the frame around the island
    CHECK(frames == 2);
}

TEST_CASE("heights are printed under the tags when asked for") {
    sheets::StoreyPlanOptions options;
    const auto without = sheets::storeyPlan(terrace(), test::shippedCatalogue(), "ground", options);
    CHECK_FALSE(test::hasText(without.sheet, "1073"));
    options.heights = true;
    const auto with = sheets::storeyPlan(terrace(), test::shippedCatalogue(), "ground", options);
    CHECK(test::hasText(with.sheet, "1073"));
}

TEST_CASE("a storey without rooms gives an empty plan") {
    const auto drawn = sheets::storeyPlan(terrace(), test::shippedCatalogue(), "no such storey");
    CHECK(drawn.sheet.items.empty());
    CHECK(drawn.hits.empty());
}

TEST_CASE("rooms are named where there is space, and doors swing into the room the plan says") {
    const auto drawn = sheets::storeyPlan(terrace(), test::shippedCatalogue(), "ground");
    for (const auto& room : terrace().rooms)
        if (room.storey == "ground") CHECK(test::hasText(drawn.sheet, room.name));
    for (const auto& opening : terrace().openings) {
        const auto* room = plan::findRoom(terrace(), opening.room);
        if (room->storey != "ground" || opening.kind != plan::Opening::Kind::HingedDoor) continue;
        std::size_t arcs = 0;
        for (const auto& item : drawn.sheet.items)
            if (item.id == opening.id && std::holds_alternative<drawing::Arc>(item.primitive)) ++arcs;
        CHECK(arcs == static_cast<std::size_t>(opening.leaves));
    }
}

TEST_CASE("a piece over a rug is hit before the rug, whatever their order in the plan") {
    plan::Plan plan = terrace();
    const auto* bed = plan::findFurniture(plan, "bedroom-bed");
    REQUIRE(bed != nullptr);
    const plan::Vec2 middle = bed->at_mm;
    for (int turn = 0; turn < 2; ++turn) {
        const auto drawn = sheets::storeyPlan(plan, test::shippedCatalogue(), "upper");
        const auto* hit = sheets::hitAt(drawn.hits, middle);
        REQUIRE(hit != nullptr);
        CHECK(hit->id == "bedroom-bed");
        std::reverse(plan.furniture.begin(), plan.furniture.end());
    }
}
