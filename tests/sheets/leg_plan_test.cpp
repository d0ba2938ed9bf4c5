// Legs on the plan of the demo house and the bungalow.
#include "shipped_plans.hpp"

#include "drawing/leg_lines.hpp"
#include "drawing/lines.hpp"
#include "sheet_reading.hpp"
#include "sheets/leg_plan.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <numeric>
#include <set>

using namespace gangway;
using plan::SwitchLeg;

namespace {

const plan::Plan& demo() {
    return *test::shippedPlans().front();
}

struct Drawn {
    sheets::StoreyBase base;
    sheets::StoreySymbols symbols;
    sheets::StoreyLegs legs;
};

Drawn drawnLegs(const plan::Plan& plan, const std::string& storey, double scale = 50,
                const sheets::LegOptions& legs = {}) {
    sheets::StoreyPlanOptions options;
    options.scale = scale;
    options.luminaire_tags = true;
    options.marks = sheets::marksAtSymbols(plan);
    const switching::Net net(plan, test::shippedCatalogue());
    options.only_plates = sheets::platesOfSwitching(net);
    Drawn drawn;
    drawn.base = sheets::storeyBase(plan, storey, options);
    drawn.symbols = sheets::storeySymbols(plan, test::shippedCatalogue(), drawn.base, options);
    drawn.legs = sheets::legsOnPlan(net, drawn.base, drawn.symbols, legs);
    return drawn;
}

const sheets::DrawnLeg& drawnLeg(const sheets::StoreyLegs& legs, const std::string& id) {
    return *std::ranges::find_if(legs.legs, [&](const auto& drawn) { return drawn.leg->id == id; });
}

std::vector<drawing::Polyline> linesOf(const sheets::StoreyLegs& legs, const std::string& id) {
    std::vector<drawing::Polyline> lines;
    for (const auto& item : legs.items)
        if (item.id == id) lines.push_back(std::get<drawing::Polyline>(item.primitive));
    return lines;
}

plan::Plan withLine(SwitchLeg::Line line) {
    plan::Plan plan = demo();
    for (SwitchLeg& leg : plan.legs)
        leg.line = line;
    return plan;
}

std::string roomOf(const plan::Plan& plan, const std::string& id) {
    for (const auto& plate : plan.plates)
        if (plate.id == id) return plate.room;
    for (const auto& luminaire : plan.luminaires)
        if (luminaire.id == id) return luminaire.room;
    return {};
}

std::set<std::string> roomsOf(const plan::Plan& plan, const SwitchLeg& leg) {
    std::set<std::string> rooms;
    for (const auto& ref : leg.controls)
        rooms.insert(roomOf(plan, ref.plate));
    for (const auto& id : leg.luminaires)
        rooms.insert(roomOf(plan, id));
    for (const auto& id : leg.plates)
        rooms.insert(roomOf(plan, id));
    return rooms;
}

} // namespace

TEST_CASE("every leg of a storey is drawn with all its positions joined") {
    // A tree over n things has n - 1 lines (graph theory); positions beyond the first add one each.
    for (const plan::Plan* plan : test::shippedPlans())
        for (const auto& storey : plan->storeys) {
            const Drawn drawn = drawnLegs(*plan, storey.id);
            for (const SwitchLeg& leg : plan->legs) {
                std::set<std::string> here;
                const auto take = [&](const std::string& id) {
                    const plan::Room* room = plan::findRoom(*plan, roomOf(*plan, id));
                    if (room != nullptr && room->storey == storey.id) here.insert(id);
                };
                for (const auto& ref : leg.controls)
                    take(ref.plate);
                std::ranges::for_each(leg.luminaires, take);
                std::ranges::for_each(leg.plates, take);
                INFO(plan->project.name << " " << storey.id << " " << leg.id);
                const auto found =
                    std::ranges::find_if(drawn.legs.legs, [&](const auto& one) { return one.leg == &leg; });
                CHECK((found != drawn.legs.legs.end()) == !here.empty());
                if (found != drawn.legs.legs.end()) CHECK(found->joins == static_cast<int>(here.size()) - 1);
            }
        }
}

TEST_CASE("a leg's mark stands beside every switch and luminaire of it") {
    for (const plan::Plan* plan : test::shippedPlans()) {
        const auto marks = switching::legMarks(*plan);
        for (const auto& storey : plan->storeys) {
            const Drawn drawn = drawnLegs(*plan, storey.id);
            const auto isMarked = [&](const std::string& id, const std::string& mark) {
                return std::ranges::any_of(drawn.symbols.items, [&](const auto& item) {
                    const auto* text = std::get_if<drawing::Text>(&item.primitive);
                    return item.id == id && text != nullptr &&
                           (" " + text->text + " ").find(" " + mark + " ") != std::string::npos;
                });
            };
            for (const SwitchLeg& leg : plan->legs) {
                std::vector<std::string> ids = leg.luminaires;
                ids.insert(ids.end(), leg.plates.begin(), leg.plates.end());
                for (const auto& ref : leg.controls)
                    ids.push_back(ref.plate);
                for (const std::string& id : ids) {
                    const plan::Room* room = plan::findRoom(*plan, roomOf(*plan, id));
                    if (room == nullptr || room->storey != storey.id) continue;
                    INFO(leg.id << " at " << id);
                    CHECK(isMarked(id, marks.at(leg.id)));
                }
            }
        }
    }
}

TEST_CASE("legs that are drawn in one room have different dashes or weights") {
    for (const plan::Plan* plan : test::shippedPlans())
        for (const auto& storey : plan->storeys) {
            const Drawn drawn = drawnLegs(*plan, storey.id);
            for (const auto& a : drawn.legs.legs)
                for (const auto& b : drawn.legs.legs) {
                    if (a.leg->id >= b.leg->id) continue;
                    std::vector<std::string> shared;
                    std::ranges::set_intersection(roomsOf(*plan, *a.leg), roomsOf(*plan, *b.leg),
                                                  std::back_inserter(shared));
                    std::erase_if(shared, [&](const std::string& id) {
                        return plan::findRoom(*plan, id)->storey != storey.id;
                    });
                    if (shared.empty() || linesOf(drawn.legs, a.leg->id).empty() ||
                        linesOf(drawn.legs, b.leg->id).empty())
                        continue;
                    INFO(a.leg->id << " and " << b.leg->id);
                    CHECK((a.pen.type != b.pen.type || a.pen.width_mm != b.pen.width_mm));
                }
        }
}

TEST_CASE("two legs between the same symbols are two lines") {
    // Up and down of the bedroom's curtain motor: the same plate works the same outlet twice. 1 mm apart in
    // their middles is seen as two at arm's length (common practice, no source).
    const Drawn drawn = drawnLegs(demo(), "upper");
    const auto first = linesOf(drawn.legs, "M1");
    const auto second = linesOf(drawn.legs, "M2");
    REQUIRE(first.size() == 1);
    REQUIRE(second.size() == 1);
    const drawing::Pt middle = first.front().points[first.front().points.size() / 2];
    CHECK(drawing::lengthInside(second.front().points,
                                {middle.x - 1, middle.y - 1, middle.x + 1, middle.y + 1}) == 0);
}

TEST_CASE("the dashes of a leg come twice on its shortest line where pens are left") {
    for (const auto& storey : demo().storeys) {
        const Drawn drawn = drawnLegs(demo(), storey.id);
        for (const auto& leg : drawn.legs.legs)
            for (const auto& line : linesOf(drawn.legs, leg.leg->id)) {
                const double length = drawing::length(line.points, false);
                INFO(leg.leg->id << " " << length);
                // Lines of less than 1 cm are told by their marks.
                if (length > 10) CHECK(length > 1.5 * drawing::repeat(leg.pen));
            }
    }
}

TEST_CASE("lines of legs are black unless colours are asked for, and dashed all the same") {
    sheets::LegOptions coloured;
    coloured.coloured = true;
    const Drawn plain = drawnLegs(demo(), "ground");
    const Drawn bright = drawnLegs(demo(), "ground", 50, coloured);
    REQUIRE(plain.legs.legs.size() == bright.legs.legs.size());
    for (std::size_t i = 0; i < plain.legs.legs.size(); ++i) {
        CHECK(plain.legs.legs[i].pen.colour == drawing::kBlack);
        CHECK(bright.legs.legs[i].pen.colour != drawing::kBlack);
        CHECK(plain.legs.legs[i].pen.type == bright.legs.legs[i].pen.type);
        CHECK(plain.legs.legs[i].pen.type != drawing::LineType::Continuous);
    }
}

TEST_CASE("few lines of the demo house run through a text or another symbol") {
    // Counted (8 of 58 at 1:50), and then held.
    int joins = 0;
    int crossings = 0;
    for (const auto& storey : demo().storeys) {
        const Drawn drawn = drawnLegs(demo(), storey.id);
        joins += drawn.legs.joins;
        crossings += drawn.legs.crossings;
    }
    INFO(crossings << " of " << joins);
    CHECK(joins > 40);
    CHECK(crossings * 6 <= joins);
}

TEST_CASE("a leg is drawn as it asks for") {
    const plan::Plan straight = withLine(SwitchLeg::Line::Straight);
    for (const auto& line : linesOf(drawnLegs(straight, "ground").legs, "L1"))
        CHECK(line.points.size() == 2);
    const plan::Plan square = withLine(SwitchLeg::Line::Orthogonal);
    sheets::LegOptions corners;
    corners.corners = sheets::LegOptions::Corners::Square;
    for (const auto& line : linesOf(drawnLegs(square, "ground", 50, corners).legs, "L1"))
        for (std::size_t i = 1; i < line.points.size(); ++i) {
            const double dx = line.points[i].x - line.points[i - 1].x;
            const double dy = line.points[i].y - line.points[i - 1].y;
            CHECK(std::min(std::abs(dx), std::abs(dy)) < 1e-6);
        }
    CHECK(drawnLegs(withLine(SwitchLeg::Line::Letters), "ground").legs.items.empty());
    plan::Plan one = demo();
    one.legs.front().line = SwitchLeg::Line::Letters;
    const Drawn mixed = drawnLegs(one, "ground");
    CHECK(linesOf(mixed.legs, one.legs.front().id).empty());
    CHECK_FALSE(linesOf(mixed.legs, one.legs[1].id).empty());
}

TEST_CASE("legs of a crowded room are told by their marks, unless the scale gives them room") {
    plan::Plan plan = demo();
    const Drawn roomy = drawnLegs(plan, "ground", 50);
    CHECK(roomy.legs.crowded_rooms.empty());
    CHECK(drawnLeg(roomy.legs, "L1").line == SwitchLeg::Line::Arc);
    // The kitchen is 6.4 by 4 m or so; at 1:100 a quarter of its paper is left for the same lines.
    const Drawn crowded = drawnLegs(plan, "ground", 100);
    CHECK(std::ranges::binary_search(crowded.legs.crowded_rooms, std::string("kitchen")));
    CHECK(drawnLeg(crowded.legs, "L1").line == SwitchLeg::Line::Letters);
    std::ranges::find(plan.legs, std::string("L1"), &SwitchLeg::id)->line = SwitchLeg::Line::Arc;
    CHECK_FALSE(linesOf(drawnLegs(plan, "ground", 100).legs, "L1").empty());
}

TEST_CASE("letters that are given out leave out i, l and o and those that are taken") {
    plan::Plan plan = demo();
    plan.legs.resize(3);
    plan.legs[1].letter = "b";
    for (std::size_t i : {0U, 2U})
        plan.legs[i].letter.clear();
    while (plan.legs.size() < 60) {
        plan.legs.push_back(plan.legs.front());
        plan.legs.back().id = "more-" + std::to_string(plan.legs.size());
    }
    const auto marks = switching::legMarks(plan);
    CHECK(marks.at(plan.legs[0].id) == "a");
    CHECK(marks.at(plan.legs[1].id) == "b");
    CHECK(marks.at(plan.legs[2].id) == "c");
    std::set<std::string> different;
    for (const auto& [id, mark] : marks) {
        CHECK(mark.find_first_of("ilo") == std::string::npos);
        different.insert(mark);
    }
    CHECK(different.size() == 60);
    CHECK(different.contains("aa"));
}

TEST_CASE("a leg is found by a click on its line, and chosen it is heavy and coloured") {
    sheets::LegOptions options;
    options.highlighted = "L2";
    const Drawn drawn = drawnLegs(demo(), "ground", 50, options);
    const auto of = std::ranges::find(drawn.legs.hits, std::string("L2"), &sheets::LegHit::leg);
    REQUIRE(of != drawn.legs.hits.end());
    const plan::Vec2 on = of->line_mm[of->line_mm.size() / 2];
    const auto* hit = sheets::legAt(drawn.legs.hits, {on.x + 20, on.y}, 50);
    REQUIRE(hit != nullptr);
    CHECK(hit->leg == "L2");
    CHECK(sheets::legAt(drawn.legs.hits, {on.x + 100000, on.y}, 50) == nullptr);
    CHECK(drawnLeg(drawn.legs, "L2").pen.width_mm == 0.7);
    CHECK(drawnLeg(drawn.legs, "L2").pen.colour == options.accent);
}

TEST_CASE("luminaires as seen from above have their true size at the scale") {
    const plan::Plan& plan = demo();
    sheets::StoreyPlanOptions options;
    options.lamps = sheets::StoreyPlanOptions::Lamps::TopView;
    for (const double scale : {50.0, 20.0}) {
        options.scale = scale;
        for (const auto& storey : plan.storeys) {
            const auto drawn = sheets::storeyPlan(plan, test::shippedCatalogue(), storey.id, options);
            for (const auto& luminaire : plan.luminaires) {
                if (plan::findRoom(plan, luminaire.room)->storey != storey.id || luminaire.size_mm <= 0)
                    continue;
                using Kind = plan::Luminaire::Kind;
                double widest = 0;
                for (const auto& item : drawn.sheet.items) {
                    if (item.id != luminaire.id || item.layer != "symbols") continue;
                    if (const auto* arc = std::get_if<drawing::Arc>(&item.primitive))
                        widest = std::max(widest, 2 * arc->radius_mm);
                    if (const auto* outline = std::get_if<drawing::Polyline>(&item.primitive))
                        widest = std::max({widest, test::widthOf(*outline), test::heightOf(*outline)});
                }
                const bool slanted = luminaire.kind == Kind::Linear && std::fmod(luminaire.turn_deg, 90) != 0;
                if (slanted) continue;
                INFO(luminaire.id << " at 1:" << scale);
                CHECK(widest * scale == Approx(luminaire.size_mm).margin(0.01));
            }
        }
    }
}

TEST_CASE("a luminaire keeps the look it has of its own") {
    plan::Plan plan = demo();
    auto& lamp = *std::ranges::find(plan.luminaires, std::string("kitchen-lamp-17"), &plan::Luminaire::id);
    const auto radius = [&](sheets::StoreyPlanOptions::Lamps lamps) {
        sheets::StoreyPlanOptions options;
        options.lamps = lamps;
        double largest = 0;
        for (const auto& item :
             sheets::storeyPlan(plan, test::shippedCatalogue(), "ground", options).sheet.items)
            if (const auto* arc = std::get_if<drawing::Arc>(&item.primitive); arc && item.id == lamp.id)
                largest = std::max(largest, arc->radius_mm);
        return largest;
    };
    using Lamps = sheets::StoreyPlanOptions::Lamps;
    lamp.plan_look = plan::Luminaire::PlanLook::Symbol;
    CHECK(radius(Lamps::TopView) == radius(Lamps::Symbol));
    lamp.plan_look = plan::Luminaire::PlanLook::TopView;
    CHECK(radius(Lamps::Symbol) == Approx(lamp.size_mm / 50 / 2));
}
