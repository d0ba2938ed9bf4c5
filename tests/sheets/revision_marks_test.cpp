// What is not as it was in an older state of the plan is marked on its wall's sheet, and nowhere else.
#include "sheet_reading.hpp"
#include "two_rooms.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace gangway;

namespace {
drawing::Sheet wallSince(const plan::Plan& plan, const plan::Plan& before, const std::string& wall) {
    sheets::Options options = test::oneWall("kitchen", wall);
    options.since = &before;
    return test::sheetsOf(plan, options).sheets.front();
}

/// Ink of the marks.
std::size_t marks(const drawing::Sheet& sheet) {
    return static_cast<std::size_t>(std::ranges::count_if(
        sheet.items, [](const drawing::Item& item) { return item.layer == "revision"; }));
}

plan::Plate& onWall(plan::Plan& plan, const std::string& wall) {
    return *std::ranges::find_if(plan.plates, [&](const plan::Plate& plate) {
        return plate.room == "kitchen" && plate.host.kind == plan::Host::Kind::Wall &&
               plate.host.wall == wall;
    });
}
} // namespace

TEST_CASE("a moved plate stands in a cloud with the revision's letter, and the sheet says how it moved") {
    const plan::Plan& before = test::twoRooms();
    plan::Plan after = before;
    after.project.revision = "C";
    plan::Plate& moved = onWall(after, "A");
    moved.host.u_mm += 40;
    const auto sheet = wallSince(after, before, "A");
    CHECK(marks(sheet) > 8);
    // Each arc bulges away from the plate (common practice, no source): its middle is further off than its
    // centre.
    const drawing::Pt plate{sheet.views.front().origin.x + moved.host.u_mm / sheet.scale,
                            sheet.views.front().origin.y + moved.host.v_mm / sheet.scale};
    for (const drawing::Item& item : sheet.items) {
        const auto* arc = std::get_if<drawing::Arc>(&item.primitive);
        if (item.layer != "revision" || arc == nullptr) continue;
        const double middle = (arc->start_deg + arc->end_deg) / 2 * std::numbers::pi / 180;
        const double out =
            std::cos(middle) * (arc->centre.x - plate.x) + std::sin(middle) * (arc->centre.y - plate.y);
        CHECK(out > 0);
    }
    CHECK(test::hasWords(sheet, moved.tag + " moved 40 right"));
    CHECK(test::hasText(sheet, "Changed"));
    CHECK(std::ranges::any_of(test::textsOf(sheet), [](const auto& text) { return text.text == "C"; }));
    CHECK(test::touchingWords(sheet, 0) == "");
    const auto other = wallSince(after, before, "C");
    CHECK(marks(other) == 0);
    CHECK(test::hasWords(other, "No change on this wall since"));
    // Compared with nothing, nothing is said.
    const auto alone = test::sheetOf(after, "kitchen", "A");
    CHECK(marks(alone) == 0);
    CHECK_FALSE(test::hasWords(alone, "since"));
}

TEST_CASE("a plate that is gone is crossed through where it was") {
    const plan::Plan& before = test::twoRooms();
    plan::Plan after = before;
    const plan::Plate gone = onWall(after, "A");
    std::erase_if(after.plates, [&](const plan::Plate& plate) { return plate.id == gone.id; });
    const auto sheet = wallSince(after, before, "A");
    CHECK(test::hasWords(sheet, gone.tag + " is gone from wall A"));
    const drawing::Pt at{sheet.views.front().origin.x + gone.host.u_mm / sheet.scale,
                         sheet.views.front().origin.y + gone.host.v_mm / sheet.scale};
    // Two strokes cross at its old centre.
    const auto crosses = [&](const drawing::Item& item) {
        const auto* line = std::get_if<drawing::Line>(&item.primitive);
        return item.layer == "revision" && line != nullptr &&
               std::abs((line->from.x + line->to.x) / 2 - at.x) < 0.01 &&
               std::abs((line->from.y + line->to.y) / 2 - at.y) < 0.01;
    };
    CHECK(std::ranges::count_if(sheet.items, crosses) == 2);
    CHECK(test::touchingWords(sheet, 0) == "");
}
