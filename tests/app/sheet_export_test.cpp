// Sheets written as files in the background: the whole set or nothing. Real plans, real files.
#include "app/sheet_export.hpp"

#include "export/export.hpp"
#include "plan/io.hpp"
#include "support/run_command.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>

using namespace gangway;
using namespace gangway::app;
using namespace gangway::testing;
namespace fs = std::filesystem;

namespace {
const fs::path kAssets = GANGWAY_ASSETS_DIR;

std::shared_ptr<SheetSource> sourceOf(const fs::path& file) {
    const auto read = plan::readFile(file);
    const auto catalogue = catalogue::load(kAssets / "catalogue");
    const auto packs = catalogue::loadPacks(kAssets / "packs");
    REQUIRE((read && catalogue && packs));
    return std::make_shared<SheetSource>(sheetSource(read->plan, *catalogue, *packs, file.parent_path()));
}

ExportOrder orderOf(const fs::path& folder, std::vector<std::string> kinds) {
    ExportOrder order;
    order.source = sourceOf(fs::path(GANGWAY_TESTS_DIR) / "fixtures" / "one-room.plan.json");
    order.kinds = std::move(kinds);
    order.folder = folder;
    order.stem = "house";
    return order;
}

Exported exported(const ExportOrder& order, const std::stop_token& stop = {}) {
    ExportProgress progress({});
    return exportSheets(order, progress, stop);
}

std::vector<std::string> namesIn(const fs::path& folder) {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator(folder))
        names.push_back(entry.path().filename().string());
    std::ranges::sort(names);
    return names;
}
} // namespace

TEST_CASE("a set is written in every format, and nothing else is left in the folder") {
    const fs::path folder = freshFolder("export-set") / "made" / "for it";
    ExportOrder order = orderOf(folder, {"elevations", "schedule"});
    order.formats = {true, true, true, true, true};
    order.dpi = 40;
    const Exported done = exported(order);
    INFO(done.problem);
    CHECK(done.problem.empty());
    CHECK_FALSE(done.cancelled);
    const auto names = namesIn(folder);
    CHECK(names.size() == done.files.size());
    CHECK(std::ranges::find(names, "house-elevations.pdf") != names.end());
    CHECK(std::ranges::find(names, "house-schedule.xlsx") != names.end());
    // Two PDF, a workbook, and three files a sheet.
    CHECK(done.files.size() == 3 + 3 * done.sheets);
    for (const fs::path& file : done.files) {
        CHECK(file.parent_path() == folder);
        CHECK(fs::file_size(file) > 500);
    }
}

TEST_CASE("what is written away from the window is byte for byte what is written at once") {
    const fs::path folder = freshFolder("export-same");
    const ExportOrder order = orderOf(folder / "a", {"elevations"});
    REQUIRE(exported(order).files.size() == 1);
    const auto drawn = drawnFrom(*order.source, *sheets::findSheetKind("elevations"));
    REQUIRE(drawn.has_value());
    fs::create_directories(folder / "b");
    REQUIRE(exporting::writePdf(*drawn, folder / "b" / "house-elevations.pdf").has_value());
    CHECK(slurp(folder / "a" / "house-elevations.pdf") == slurp(folder / "b" / "house-elevations.pdf"));
}

TEST_CASE("progress goes from nothing to nearly all and names what is written") {
    const fs::path folder = freshFolder("export-progress");
    ExportOrder order = orderOf(folder, {"elevations"});
    order.formats.svg = true;
    std::vector<std::pair<std::string, float>> told;
    std::unique_ptr<ExportProgress> progress;
    progress = std::make_unique<ExportProgress>([&] { told.push_back(progress->now()); });
    const Exported done = exportSheets(order, *progress, {});
    REQUIRE(done.problem.empty());
    REQUIRE(told.size() == 1 + 2 * done.sheets); // the kind is drawn, each sheet is written twice
    CHECK(told.front().first == "Drawing: Wall elevations, dimensioned");
    CHECK(told.front().second == 0);
    CHECK(std::ranges::is_sorted(told, {}, &std::pair<std::string, float>::second));
    CHECK(told.back().second < 1);
    CHECK(told.back().first.find(".svg") != std::string::npos);
}

TEST_CASE("cancelled at any sheet, the folder is as it was: the older files whole, nothing new") {
    const fs::path folder = freshFolder("export-cancel");
    std::ofstream(folder / "house-elevations.pdf") << "the older one";
    ExportOrder order = orderOf(folder, {"elevations"});
    order.formats = {true, true, true, true, false};
    order.dpi = 40;
    std::size_t tells = 0;
    {
        ExportProgress count([&] { ++tells; });
        ExportOrder elsewhere = order;
        elsewhere.folder = freshFolder("export-cancel-count");
        REQUIRE(exportSheets(elsewhere, count, {}).problem.empty());
    }
    for (std::size_t at = 1; at <= tells; ++at) {
        std::stop_source stop;
        std::size_t told = 0;
        ExportProgress progress([&] {
            if (++told == at) stop.request_stop();
        });
        const Exported done = exportSheets(order, progress, stop.get_token());
        INFO("cancelled at " << at << " of " << tells);
        CHECK(done.cancelled);
        CHECK(done.files.empty());
        CHECK(done.problem.empty());
        REQUIRE(namesIn(folder) == std::vector<std::string>{"house-elevations.pdf"});
        REQUIRE(slurp(folder / "house-elevations.pdf") == "the older one");
    }
}

TEST_CASE("a folder that was made for a cancelled export is gone again") {
    const fs::path parent = freshFolder("export-made");
    ExportOrder order = orderOf(parent / "a" / "b", {"elevations"});
    std::stop_source stop;
    stop.request_stop();
    CHECK(exported(order, stop.get_token()).cancelled);
    CHECK(namesIn(parent).empty());
}

TEST_CASE("what can't be written is said with the folder that was asked for, and nothing stays") {
    const fs::path folder = freshFolder("export-fails");
    std::ofstream(folder / "in the way") << "a file";
    const Exported in_file = exported(orderOf(folder / "in the way", {"elevations"}));
    CHECK(in_file.problem.find((folder / "in the way").string()) != std::string::npos);
    // A folder where a file belongs.
    fs::create_directories(folder / "out" / "house-elevations.pdf" / "x");
    const Exported blocked = exported(orderOf(folder / "out", {"elevations"}));
    CHECK(blocked.problem.find((folder / "out" / "house-elevations.pdf").string()) != std::string::npos);
    CHECK(namesIn(folder / "out") == std::vector<std::string>{"house-elevations.pdf"});
}

TEST_CASE("kinds that the house has nothing for are left out in words; nothing at all is a problem") {
    const fs::path folder = freshFolder("export-nothing");
    ExportOrder order = orderOf(folder, {"elevations", "schedule"});
    auto bare = std::make_shared<SheetSource>(*order.source);
    bare->plan.plates.clear();
    bare->plan.luminaires.clear();
    bare->plan.legs.clear();
    bare->plan.devices.clear();
    order.source = bare;
    order.kinds = {"schedule"};
    const Exported none = exported(order);
    REQUIRE(none.left_out.size() == 1);
    CHECK(none.left_out[0] == "Schedules: there is no plate and no luminaire, so no schedule is drawn");
    CHECK(none.problem == "there is nothing to draw of what was chosen");
    CHECK(namesIn(folder).empty());
}

TEST_CASE("a cover has in its index what is written beside it") {
    const fs::path folder = freshFolder("export-cover");
    ExportOrder order = orderOf(folder, {"cover", "elevations"});
    order.formats = {false, true, false, false, false};
    const Exported done = exported(order);
    INFO(done.problem);
    REQUIRE(done.files.size() > 1);
    const std::string index = slurp(done.files.front());
    CHECK(done.files.front().filename().string().starts_with("C"));
    CHECK(index.find("data-text=\"E-01") != std::string::npos);
    CHECK(index.find("data-text=\"Q-01") == std::string::npos); // no schedule was asked for
}

TEST_CASE("sheets under a cover are one PDF, templates one of their own, as on the command line") {
    const fs::path folder = freshFolder("export-set");
    ExportOrder order = orderOf(folder, {"cover", "elevations", "wallcheck", "templates"});
    order.formats = {true, false, false, false, false};
    const Exported done = exported(order);
    INFO(done.problem);
    CHECK(namesIn(folder) == std::vector<std::string>{"house-set.pdf", "house-templates.pdf"});
}

TEST_CASE("what is drawn already is not drawn again") {
    const fs::path folder = freshFolder("export-drawn");
    ExportOrder order = orderOf(folder, {"elevations"});
    auto one = drawnFrom(*order.source, *sheets::findSheetKind("elevations"));
    REQUIRE(one.has_value());
    REQUIRE(one->sheets.size() > 1);
    one->sheets.resize(1);
    order.drawn["elevations"] = std::make_shared<drawing::Drawing>(*one);
    CHECK(exported(order).sheets == 1);
}

TEST_CASE("a plan whose country pack is missing says so for what goes by it") {
    ExportOrder order = orderOf(freshFolder("export-pack"), {"schedule"});
    auto without = std::make_shared<SheetSource>(*order.source);
    without->pack.reset();
    without->plan.pack = "nowhere";
    order.source = without;
    CHECK(exported(order).problem == "Schedules: no country pack 'nowhere'");
}
