#include "edit/clipboard.hpp"

#include "small_rooms.hpp"

using namespace gangway;
using plan::Vec2;

namespace {

plan::OwnFormat format(double pitch_mm) {
    plan::OwnFormat own;
    own.id = "old-house";
    own.name = "Plates of the old house";
    own.module_width_mm = own.module_height_mm = 50;
    own.plate_width_mm = own.plate_height_mm = 80;
    own.pitch_mm = pitch_mm;
    own.box_width_mm = 68;
    own.box_depth_mm = 45;
    return own;
}

} // namespace

TEST_CASE("a copied desk with its plate is pasted into another plan with ids and tags of its own") {
    plan::Plan source = twoRooms();
    source.formats.push_back(format(71));
    source.plates[2].format = "old-house";
    const auto text = edit::copyToText(source, {{"k3"}, {"desk"}, {}});
    REQUIRE(text);
    CHECK(edit::isClip(*text));

    edit::Document document(twoRooms());
    run(document, edit::paste(document.plan(), *text, {"hall", std::nullopt, {}}));
    CHECK(document.undoName() == "Paste 1 plate and 1 piece of furniture");
    const plan::Plate& plate = document.plan().plates.back();
    const plan::Furniture& piece = document.plan().furniture.back();
    CHECK(piece.id == "desk-2");
    CHECK(piece.room == "hall");
    CHECK(piece.at_mm ==
          Vec2{400, 1500}); // as far from the hall's south-west corner as it was from the kitchen's
    CHECK(plate.tag == "H-01");
    CHECK(plate.host.furniture == "desk-2");
    CHECK(plate.host.u_mm == 200);
    CHECK(document.plan().formats.size() == 1);
    checkReadable(document.plan());
    document.undo();
    CHECK(document.plan().formats.empty());
}

TEST_CASE("a format of the same name and other lengths comes under another name") {
    plan::Plan source = twoRooms();
    source.formats.push_back(format(71));
    source.plates[0].format = "old-house";
    const auto text = edit::copyToText(source, {{"k1"}, {}, {}});
    plan::Plan target = twoRooms();
    target.formats.push_back(format(60));
    edit::Document document(target);
    run(document, edit::paste(document.plan(), *text, {}));
    CHECK(document.plan().plates.back().format == "old-house-2");
    CHECK(document.plan().formats.back().pitch_mm == 71);
}

TEST_CASE("pasted plates keep their distance from the first one, on the host that was chosen") {
    edit::Document document(twoRooms());
    const auto text =
        edit::copyToText(document.plan(), {{"k2", "k1"}, {}, {}}); // k1 3500 right and 800 above
    const plan::Host host{plan::Host::Kind::Wall, "C", "", "", 400, 500};
    run(document, edit::paste(document.plan(), *text, {"kitchen", host, {}}));
    const auto& plates = document.plan().plates;
    CHECK(plates[3].host.u_mm == 400);
    CHECK(plates[4].host.u_mm == 3900);
    CHECK(plates[4].host.v_mm == 1300);
    CHECK(plates[4].host.wall == "C");
}

TEST_CASE("a new plate does not inherit the answer given to one that is gone") {
    plan::Plan plan = twoRooms();
    plan.agreements.push_back(
        {"k-04", plan::Agreement::Answer::Agree, "Ada", "2026-03-01T19:30:00Z", "", "x", {}});
    edit::Document document(plan);
    run(document, edit::duplicate(document.plan(), {{"k1"}, {}, {}}, {-200, 0}));
    CHECK(document.undoName() == "Duplicate K-01");
    CHECK(document.plan().plates.back().tag == "K-04");
    CHECK(document.plan().plates.back().id == "k-04-2");
    CHECK(document.plan().plates.back().host.u_mm == 3600);
}

TEST_CASE("a link to what was copied leads to the copy, others are cut") {
    using From = plan::KeptDistance::From;
    plan::Plan plan = twoRooms();
    plan.plates[0].kept_along = plan::KeptDistance{From::LeftCorner, "", {}, 3800, {}};
    plan.plates[0].kept_height =
        plan::KeptDistance{From::Plate, "k2", plan::KeptDistance::Edge::Centre, 800, {}};
    plan.plates[0].anchor = "computer";
    edit::Document document(plan);
    run(document, edit::duplicate(document.plan(), {{"k1", "k2"}, {}, {}}, {-100, 0}));
    CHECK(document.plan().plates[3].host.u_mm == 3700); // not drawn back to where it was copied from
    CHECK(document.plan().plates[3].kept_along->distance_mm == 3700);
    CHECK(document.plan().plates[3].kept_height->id == document.plan().plates[4].id);
    CHECK(document.plan().plates[3].anchor.empty());
    document.undo();
    run(document, edit::duplicate(document.plan(), {{"k1"}, {}, {}}, {-100, 0}));
    CHECK_FALSE(document.plan().plates[3].kept_height);
    checkReadable(document.plan());
}

TEST_CASE("a text that is not ours and a host that is missing are refused in words") {
    const plan::Plan plan = twoRooms();
    for (const std::string& text :
         {std::string("milk, eggs"), std::string("{\"gangway\": 1}"), plan::write(plan)})
        CHECK(sentence(edit::paste(plan, text, {})) == "the clipboard holds nothing copied from a plan");
    const auto text = edit::copyToText(plan, {{"k1"}, {}, {}});
    plan::Plan other = plan;
    other.rooms.clear(), other.openings.clear(), other.plates.clear();
    other.furniture.clear(), other.devices.clear(), other.luminaires.clear();
    CHECK(sentence(edit::paste(other, *text, {})) ==
          "this plan has no room 'kitchen'; choose the room to paste into");
    CHECK_FALSE(edit::copyToText(plan, {}));
    CHECK(sentence(edit::copyToText(plan, {{"k9"}, {}, {}})) == "'k9' is not in the plan");
}
