// Recovery of unsaved work, with real files: a crash is a Document that goes away without saving.
#include "plan_on_disk.hpp"

using namespace gangway;
namespace fs = std::filesystem;

namespace {

/// A session that changed the plan, kept its journal and ended without saving.
void crash(const fs::path& file, double u_mm) {
    edit::Document document = openDocument(file);
    document.run(edit::movePlate(document.plan(), "k4", u_mm, 1150));
    REQUIRE(document.writeJournal());
}

} // namespace

TEST_CASE("after a crash the journal holds what the file does not, and becomes a changed document") {
    const Workplace here("crash");
    CHECK(edit::journalFor(here.file).empty());
    crash(here.file, 1777);
    CHECK(bytesOf(here.file) == kHouse);

    const fs::path journal = edit::journalFor(here.file);
    REQUIRE_FALSE(journal.empty());
    edit::Document document = edit::Document::recovered(readPlan(journal), here.file);
    CHECK(document.changed());
    CHECK(document.file() == here.file);
    CHECK(plan::findPlate(document.plan(), "k4")->host.u_mm == 1777);

    REQUIRE(document.save());
    CHECK(plan::findPlate(readPlan(here.file), "k4")->host.u_mm == 1777);
    CHECK(edit::journalFor(here.file).empty());
    CHECK_FALSE(fs::exists(journal));
}

TEST_CASE("a recovered document stays changed however far it is undone") {
    const Workplace here("recovered");
    edit::Document document = edit::Document::recovered(readPlan(here.file), here.file);
    document.run(edit::movePlate(document.plan(), "k4", 1, 1));
    document.undo();
    CHECK(document.changed());
}

TEST_CASE("a refused journal is gone and the file as it was") {
    const Workplace here("refused");
    crash(here.file, 1777);
    edit::discardJournal(here.file);
    CHECK(edit::journalFor(here.file).empty());
    CHECK(bytesOf(here.file) == kHouse);
    edit::discardJournal(here.file); // twice does no harm
}

TEST_CASE("a journal is found by whatever path leads to the file") {
    const Workplace here("paths");
    crash(here.file, 1777);
    const fs::path journal = edit::journalFor(here.file);
    CHECK(edit::journalFor(here.folder / "." / "x" / ".." / "house.plan.json") == journal);
    fs::create_symlink(here.file, here.folder / "link.plan.json");
    CHECK(fs::relative(here.file, fs::current_path()).is_relative());
    CHECK(edit::journalFor(fs::relative(here.file, fs::current_path())) == journal);
}

TEST_CASE("files of one name in two folders have journals of their own") {
    const Workplace here("twins");
    const fs::path twin = here.folder / "other" / "house.plan.json";
    fs::create_directories(twin.parent_path());
    fs::copy_file(here.file, twin);
    crash(here.file, 1777);
    CHECK(edit::journalFor(twin).empty());
    crash(twin, 1888);
    CHECK(edit::journalFor(twin) != edit::journalFor(here.file));
    CHECK(edit::journalFor(twin).filename().string().starts_with("house-"));
}

TEST_CASE("a journal that says the same as the file is nothing to recover") {
    const Workplace here("same");
    crash(here.file, 1777);
    // Saved elsewhere in the meantime: same plan in the file, whatever the bytes.
    REQUIRE(plan::writeFile(readPlan(edit::journalFor(here.file)), here.file));
    CHECK(edit::journalFor(here.file).empty());
}

TEST_CASE("a journal outlives its file") {
    const Workplace here("deleted");
    crash(here.file, 1777);
    fs::remove(here.file);
    const fs::path journal = edit::journalFor(here.file);
    REQUIRE_FALSE(journal.empty());
    CHECK(plan::findPlate(readPlan(journal), "k4")->host.u_mm == 1777);
}

TEST_CASE("undoing everything leaves no journal behind") {
    const Workplace here("undone");
    edit::Document document = openDocument(here.file);
    document.run(edit::movePlate(document.plan(), "k4", 1777, 1150));
    REQUIRE(document.writeJournal());
    CHECK_FALSE(edit::journalFor(here.file).empty());
    document.undo();
    REQUIRE(document.writeJournal());
    CHECK_FALSE(fs::exists(*edit::journalPath(here.file)));
}

TEST_CASE("a journal that can't be read is not offered") {
    const Workplace here("broken");
    crash(here.file, 1777);
    const fs::path journal = edit::journalFor(here.file);
    fs::resize_file(journal, fs::file_size(journal) / 2);
    CHECK(edit::journalFor(here.file).empty());
}

TEST_CASE("a plan that was never saved has a journal, gone once it is saved") {
    const Workplace here("unsaved");
    edit::Document document(readPlan(here.file));
    document.run(edit::movePlate(document.plan(), "k4", 1777, 1150));
    REQUIRE(document.writeJournal());
    CHECK_FALSE(edit::journalFor({}).empty());
    REQUIRE(document.save(here.folder / "new.plan.json"));
    CHECK(edit::journalFor({}).empty());
}

TEST_CASE("saving under another name leaves neither name with a journal") {
    const Workplace here("save-as");
    edit::Document document = openDocument(here.file);
    document.run(edit::movePlate(document.plan(), "k4", 1777, 1150));
    REQUIRE(document.writeJournal());
    REQUIRE(document.save(here.folder / "new.plan.json"));
    CHECK(edit::journalFor(here.file).empty());
    CHECK(edit::journalFor(here.folder / "new.plan.json").empty());
}

TEST_CASE("the journal is in the state folder, which must be absolute, or in the home folder") {
    const Workplace here("folders");
    CHECK(edit::journalPath(here.file)->parent_path() == here.folder / "state" / "gangway" / "journal");
    setenv("XDG_STATE_HOME", "relative/state", 1); // XDG Base Directory Specification: to be ignored
    const std::string home = std::getenv("HOME") ? std::getenv("HOME") : "";
    setenv("HOME", here.folder.c_str(), 1);
    CHECK(edit::journalPath(here.file)->parent_path() ==
          here.folder / ".local" / "state" / "gangway" / "journal");
    unsetenv("HOME");
    edit::Document document = openDocument(here.file);
    document.run(edit::movePlate(document.plan(), "k4", 1777, 1150));
    const auto kept = document.writeJournal();
    REQUIRE_FALSE(kept);
    CHECK(kept.error() == "unsaved work can't be kept: neither XDG_STATE_HOME nor HOME names a folder");
    CHECK(edit::journalFor(here.file).empty());
    if (!home.empty()) setenv("HOME", home.c_str(), 1);
}

TEST_CASE("a state folder that can't be made is said") {
    const Workplace here("blocked");
    std::ofstream(here.folder / "state") << "a file where a folder should be";
    edit::Document document = openDocument(here.file);
    document.run(edit::movePlate(document.plan(), "k4", 1777, 1150));
    const auto kept = document.writeJournal();
    REQUIRE_FALSE(kept);
    CHECK_THAT(kept.error(), Catch::StartsWith("the folder for unsaved work, '"));
}

TEST_CASE("a plan with a very long name has a journal too") {
    const Workplace here("long");
    const fs::path file = here.folder / (std::string(240, 'n') + ".plan.json");
    fs::copy_file(here.file, file);
    crash(file, 1777);
    CHECK_FALSE(edit::journalFor(file).empty());
}
