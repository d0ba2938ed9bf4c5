// Remedies of findings as edits: a device into another plate, a door at its other side.
#include "edit/finding_edits.hpp"

#include "small_rooms.hpp"

#include <algorithm>

using namespace gangway;

namespace {
const plan::Device& computer(const plan::Plan& plan) {
    REQUIRE(plan.devices.size() == 1);
    return plan.devices.front();
}

const plan::Opening& door(const plan::Plan& plan) {
    return *std::ranges::find(plan.openings, "door", &plan::Opening::id);
}
} // namespace

TEST_CASE("a device is plugged into a plate, and undo pulls it out again") {
    edit::Document document(twoRooms());
    REQUIRE(computer(document.plan()).plate.empty());
    run(document, edit::plugDevice(document.plan(), "computer", "k3"));
    CHECK(computer(document.plan()).plate == "k3");
    CHECK(document.undoName() == "Plug computer into K-03");
    checkReadable(document.plan());
    run(document, edit::plugDevice(document.plan(), "computer", "k1"));
    CHECK(computer(document.plan()).plate == "k1");
    document.undo();
    CHECK(computer(document.plan()).plate == "k3");
    document.undo();
    CHECK(computer(document.plan()).plate.empty());
    document.redo();
    CHECK(computer(document.plan()).plate == "k3");
}

TEST_CASE("a device is unplugged, and undo plugs it in again") {
    edit::Document document(twoRooms());
    run(document, edit::plugDevice(document.plan(), "computer", "k3"));
    run(document, edit::unplugDevice(document.plan(), "computer"));
    CHECK(computer(document.plan()).plate.empty());
    CHECK(document.undoName() == "Unplug computer");
    checkReadable(document.plan());
    document.undo();
    CHECK(computer(document.plan()).plate == "k3");
    CHECK(sentence(edit::unplugDevice(document.plan(), "kettle")) == "there is no device 'kettle'");
}

TEST_CASE("only what is in the plan is plugged in") {
    const plan::Plan plan = twoRooms();
    CHECK(sentence(edit::plugDevice(plan, "kettle", "k1")) == "there is no device 'kettle'");
    CHECK(sentence(edit::plugDevice(plan, "computer", "k9")) == "there is no plate 'k9'");
}

TEST_CASE("plugging in touches the device and no plate") {
    edit::Document document(twoRooms());
    const auto before = document.version();
    run(document, edit::plugDevice(document.plan(), "computer", "k3"));
    const auto touched = document.touchedSince(before);
    REQUIRE(touched);
    CHECK(touched->devices == std::set<std::string>{"computer"});
    CHECK(touched->plates.empty());
    CHECK_FALSE(touched->others);
}

TEST_CASE("a door is hung at its other side and back; a window is not") {
    edit::Document document(twoRooms());
    REQUIRE(door(document.plan()).hinge == plan::Side::Left);
    run(document, edit::rehangDoor(document.plan(), "door"));
    CHECK(door(document.plan()).hinge == plan::Side::Right);
    checkReadable(document.plan());
    document.undo();
    CHECK(door(document.plan()).hinge == plan::Side::Left);
    CHECK_FALSE(edit::rehangDoor(document.plan(), "window"));
    CHECK_FALSE(edit::rehangDoor(document.plan(), "nothing"));
}
