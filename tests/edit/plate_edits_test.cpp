#include "edit/plate_edits.hpp"
#include "plan/plan.hpp"
#include "plan_on_disk.hpp"

#include <random>

using namespace gangway;

TEST_CASE("a new plate gets the next free tag of its room and an id of its own") {
    const Workplace here("add");
    edit::Document document = openDocument(here.file);
    plan::Plate plate = *plan::findPlate(document.plan(), "k4");
    CHECK(edit::nextTag(document.plan(), "kitchen") == "K-01");
    document.run(edit::addPlate(document.plan(), plate));
    CHECK(document.undoName() == "Add K-01");
    const plan::Plate& added = document.plan().plates.back();
    CHECK(added.tag == "K-01");
    CHECK(added.id == "k4-2");
    document.undo();
    CHECK(document.plan().plates.size() == 3);
}

TEST_CASE("a removed plate leaves no leg, device or link behind, and undo brings all of it back") {
    const Workplace here("remove");
    edit::Document document = openDocument(here.file);
    document.run({"Tie", "", [](edit::Draft& draft) {
                      draft.add(plan::Luminaire{});
                      auto& lamp = draft.change<plan::Luminaire>(0);
                      lamp.id = "lamp";
                      lamp.room = "kitchen";
                      lamp.host.kind = plan::Host::Kind::Ceiling;
                      plan::SwitchLeg leg;
                      leg.id = "leg";
                      leg.controls = {{"k4", 1, 1, {}}};
                      leg.luminaires = {"lamp"};
                      draft.add(leg);
                      plan::Device device;
                      device.id = "kettle";
                      device.name = "kettle";
                      device.room = "kitchen";
                      device.plate = "k4";
                      draft.add(device);
                  }});
    const std::string before = plan::write(document.plan());
    document.run(edit::removePlates(document.plan(), {"k4"}));
    CHECK(document.plan().legs.front().controls.empty());
    CHECK(document.plan().devices.front().plate.empty());
    REQUIRE(plan::read(plan::write(document.plan())));
    document.run({"Remove lamp", "", [](edit::Draft& draft) { draft.remove<plan::Luminaire>("lamp"); }});
    CHECK(document.plan().legs.empty());
    document.undo();
    document.undo();
    CHECK(plan::write(document.plan()) == before);
}

TEST_CASE("removing a room takes what is in it, and undo brings back the same bytes") {
    const Workplace here("room");
    edit::Document document = openDocument(here.file);
    const std::string before = plan::write(document.plan());
    document.run({"Remove room", "", [](edit::Draft& draft) { draft.remove<plan::Room>("kitchen"); }});
    CHECK(document.plan().plates.empty());
    document.undo();
    CHECK(plan::write(document.plan()) == before);
}

TEST_CASE("a step of undo keeps what it touched and not the whole plan") {
    const Workplace here("touched");
    edit::Document document = openDocument(here.file);
    const auto version = document.version();
    document.run(edit::movePlate(document.plan(), "k4", 1600, 1100));
    const auto touched = document.touchedSince(version);
    REQUIRE(touched);
    CHECK(touched->onlyPlates());
    CHECK(touched->plates == std::set<std::string>{"k4"});
    document.undo();
    CHECK(document.touchedSince(version + 1)->plates == std::set<std::string>{"k4"});
    CHECK(document.touchedSince(document.version())->plates.empty());
}

TEST_CASE("nudging with the arrow keys is one step named by the whole way, until something else is done") {
    const Workplace here("nudge");
    edit::Document document = openDocument(here.file);
    for (int i = 0; i < 3; ++i)
        document.run(edit::nudgePlates(document.plan(), {"k4"}, 71, 0));
    CHECK(document.undoName() == "Move K-04 by 213 mm");
    document.closeStep();
    document.run(edit::nudgePlates(document.plan(), {"k4"}, -1, 0));
    CHECK(document.undoName() == "Move K-04 by 1 mm");
    document.undo();
    document.undo();
    CHECK(plan::findPlate(document.plan(), "k4")->host.u_mm == 1500);
    CHECK_FALSE(document.canUndo());
}

TEST_CASE("a plate pushed past the end of its wall stops at the corner") {
    const Workplace here("clamp");
    edit::Document document = openDocument(here.file);
    document.run(edit::movePlate(document.plan(), "k4", 9000, -50));
    CHECK(plan::findPlate(document.plan(), "k4")->host.u_mm == 6200);
    CHECK(plan::findPlate(document.plan(), "k4")->host.v_mm == 0);
}

TEST_CASE("ten thousand random edits and undos bring back the same bytes") {
    const Workplace here("random");
    edit::Document document = openDocument(here.file);
    const std::string first = plan::write(document.plan());
    std::mt19937 random(20260301);
    const auto below = [&](std::size_t n) { return static_cast<std::size_t>(random() % n); };
    const auto length = [&](int most) { return static_cast<double>(random() % (most * 10)) / 10; };
    for (int i = 0; i < 10'000; ++i) {
        const plan::Plan& plan = document.plan();
        const std::size_t choice = plan.plates.size() < 2 ? 0 : below(8);
        const std::string id = plan.plates.empty() ? "" : plan.plates[below(plan.plates.size())].id;
        if (choice == 0) {
            plan::Plate plate;
            plate.room = "kitchen";
            plate.host = {
                plan::Host::Kind::Wall, random() % 2 ? "A" : "B", "", "", length(4000), length(2000)};
            plate.format = "round-71";
            plate.modules = {{"socket-f", "", "", {}}};
            document.run(edit::addPlate(plan, plate));
        } else if (choice == 1 && plan.plates.size() > 12) {
            document.run(edit::removePlates(plan, {id}));
        } else if (choice <= 3) {
            document.run(edit::movePlate(plan, id, length(6200), length(2400)));
        } else if (choice == 4) {
            document.run(edit::moveSymbol(plan, id, plan::Vec2{length(500), length(500)}));
        } else if (choice == 5) {
            document.run(edit::agreePlate(plan, id, "Ada", "2026-03-01T19:30:00Z"));
        } else if (document.canUndo() && choice == 6) {
            document.undo();
            if (i % 500 == 0) CHECK(plan::read(plan::write(document.plan())));
        } else if (document.canRedo()) {
            document.redo();
        }
        document.closeStep();
    }
    const std::string last = plan::write(document.plan());
    std::size_t steps = 0;
    while (document.canUndo()) {
        document.undo();
        ++steps;
    }
    CHECK(steps > 1000);
    CHECK(plan::write(document.plan()) == first);
    while (document.canRedo())
        document.redo();
    CHECK(plan::write(document.plan()) == last);
}

TEST_CASE("a floor box pushed out of its room stops at the wall, and the plan can still be read") {
    const Workplace here("floor");
    edit::Document document = openDocument(here.file);
    plan::Plate plate = *plan::findPlate(document.plan(), "k4");
    plate.host = {plan::Host::Kind::Floor, "", "", "", 3000, 2000};
    document.run(edit::addPlate(document.plan(), plate));
    const std::string id = document.plan().plates.back().id;
    document.run(edit::movePlate(document.plan(), id, 9000, 2000));
    CHECK(plan::findPlate(document.plan(), id)->host.u_mm == Approx(6200));
    CHECK(plan::read(plan::write(document.plan())));
}

TEST_CASE("a new plate does not take the id, and with it the answer, of one that was removed") {
    const Workplace here("inherit");
    edit::Document document = openDocument(here.file);
    document.run(edit::agreePlate(document.plan(), "k4", "Ada", "2026-03-01T19:30:00Z"));
    const plan::Plate removed = *plan::findPlate(document.plan(), "k4");
    document.run(edit::removePlates(document.plan(), {"k4"}));
    document.run(edit::addPlate(document.plan(), removed));
    CHECK(document.plan().plates.back().id == "k4-2");
}
