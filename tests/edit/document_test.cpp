#include "plan_on_disk.hpp"

#include <utility>

using namespace gangway;
using edit::Command;
using edit::Document;

namespace {

Command renamed(const std::string& name, const std::string& merge_key = "") {
    return {"Rename to " + name, merge_key,
            [name](edit::Draft& draft) { draft.changeProject().name = name; }};
}

} // namespace

TEST_CASE("a command is undone and redone by its name") {
    Document document;
    CHECK_FALSE(document.canUndo());
    CHECK(document.undoName().empty());
    document.run(renamed("one"));
    document.run(renamed("two"));
    CHECK(document.undoName() == "Rename to two");
    document.undo();
    CHECK(document.plan().project.name == "one");
    CHECK(document.redoName() == "Rename to two");
    document.undo();
    CHECK(document.plan().project.name.empty());
    CHECK_FALSE(document.canUndo());
    document.redo();
    document.redo();
    CHECK(document.plan().project.name == "two");
    CHECK_FALSE(document.canRedo());
}

TEST_CASE("undo with nothing to undo and redo with nothing to redo do nothing") {
    Document document;
    const auto version = document.version();
    document.undo();
    document.redo();
    CHECK(document.version() == version);
    CHECK_FALSE(document.changed());
}

TEST_CASE("a new command forgets what was undone") {
    Document document;
    document.run(renamed("one"));
    document.undo();
    document.run(renamed("two"));
    CHECK_FALSE(document.canRedo());
    document.redo();
    CHECK(document.plan().project.name == "two");
}

TEST_CASE("commands in a row with one merge key are one step") {
    Document document;
    document.run(renamed("start"));
    for (const char* name : {"a", "b", "c"})
        document.run(renamed(name, "typing"));
    CHECK(document.undoName() == "Rename to c");
    document.undo();
    CHECK(document.plan().project.name == "start");
    document.redo();
    CHECK(document.plan().project.name == "c");
}

TEST_CASE("commands do not merge across another key, an undo, a redo or a closed step") {
    Document document;
    const auto steps = [&] {
        int count = 0;
        for (; document.canUndo(); ++count)
            document.undo();
        return count;
    };
    SECTION("another key") {
        document.run(renamed("a", "one"));
        document.run(renamed("b", "two"));
        document.run(renamed("c", "one"));
        CHECK(steps() == 3);
    }
    SECTION("no key") {
        document.run(renamed("a"));
        document.run(renamed("b"));
        CHECK(steps() == 2);
    }
    SECTION("undo") {
        document.run(renamed("a", "one"));
        document.closeStep();
        document.run(renamed("b", "one"));
        document.undo();
        document.run(renamed("c", "one"));
        CHECK(steps() == 2);
    }
    SECTION("redo") {
        document.run(renamed("a", "one"));
        document.undo();
        document.redo();
        document.run(renamed("b", "one"));
        CHECK(steps() == 2);
    }
    SECTION("closed step") {
        document.run(renamed("a", "one"));
        document.closeStep();
        document.run(renamed("b", "one"));
        CHECK(steps() == 2);
    }
}

TEST_CASE("the version rises with every change, also when undoing") {
    Document document;
    auto last = document.version();
    const auto rises = [&] { return document.version() > std::exchange(last, document.version()); };
    document.run(renamed("one"));
    CHECK(rises());
    document.undo();
    CHECK(rises());
    document.redo();
    CHECK(rises());
    document.run(renamed("two", "key"));
    CHECK(rises());
    document.run(renamed("three", "key"));
    CHECK(rises());
}

TEST_CASE("a document is unchanged again when undo or redo leads back to what was saved") {
    const Workplace here("unchanged");
    Document document = openDocument(here.file);
    CHECK_FALSE(document.changed());
    document.run(renamed("one"));
    CHECK(document.changed());
    document.undo();
    CHECK_FALSE(document.changed());
    document.redo();
    CHECK(document.changed());
    REQUIRE(document.save());
    CHECK_FALSE(document.changed());
    document.run(renamed("two"));
    document.undo();
    CHECK_FALSE(document.changed()); // back at what was saved
    document.undo();
    CHECK(document.changed()); // back at what was opened, which the file no longer holds
    document.redo();
    CHECK_FALSE(document.changed());
}

TEST_CASE("what was saved can't be reached again on another branch") {
    const Workplace here("branch");
    Document document = openDocument(here.file);
    document.run(renamed("one"));
    REQUIRE(document.save());
    document.undo();
    document.run(renamed("other"));
    CHECK(document.changed());
    document.undo();
    CHECK(document.changed());
}

TEST_CASE("typing on after a save is a step of its own") {
    const Workplace here("typing");
    Document document = openDocument(here.file);
    document.run(renamed("a", "typing"));
    REQUIRE(document.save());
    document.run(renamed("b", "typing"));
    CHECK(document.changed());
    document.undo();
    CHECK(document.plan().project.name == "a");
    CHECK_FALSE(document.changed());
}

TEST_CASE("undo goes back to the beginning of the session") {
    Document document;
    for (int i = 1; i <= 2500; ++i)
        document.run(renamed(std::to_string(i)));
    int undone = 0;
    for (; document.canUndo(); ++undone)
        document.undo();
    CHECK(undone == 2500);
    CHECK(document.plan().project.name.empty());
    CHECK_FALSE(document.changed());
}

TEST_CASE("a command that touches nothing leaves no step and no unsaved change") {
    Document document;
    document.run({"Nothing", "", [](edit::Draft&) {}});
    CHECK_FALSE(document.canUndo());
    CHECK_FALSE(document.changed());
}

TEST_CASE("saving writes what is seen, under the name that is given") {
    const Workplace here("save");
    Document document = openDocument(here.file);
    document.run(renamed("The narrow terrace"));
    REQUIRE(document.save());
    CHECK(readPlan(here.file).project.name == "The narrow terrace");

    const auto other = here.folder / "copy.plan.json";
    document.run(renamed("Copy"));
    REQUIRE(document.save(other));
    CHECK(document.file() == other);
    CHECK(readPlan(other).project.name == "Copy");
    CHECK(readPlan(here.file).project.name == "The narrow terrace");
}

TEST_CASE("a save that fails loses nothing and says so") {
    const Workplace here("failing");
    Document document = openDocument(here.file);
    document.run(renamed("kept"));
    const auto failed = document.save(here.folder / "no-such-folder" / "house.plan.json");
    REQUIRE_FALSE(failed);
    CHECK_FALSE(failed.error().empty());
    CHECK(document.file() == here.file);
    CHECK(document.changed());
    CHECK(bytesOf(here.file) == kHouse);
    CHECK(document.plan().project.name == "kept");
}

TEST_CASE("a document without a file asks for a name") {
    Document document;
    const auto failed = document.save();
    REQUIRE_FALSE(failed);
    CHECK(failed.error() == "the plan has no file yet; choose a name to save it under");
}
