// The cover: what is in the set, what changed, where things are, whom to ask; on every paper.
#include "catalogue/pack.hpp"
#include "review/issues.hpp"
#include "review/review.hpp"
#include "sheet_reading.hpp"
#include "sheets/cover_parts.hpp"
#include "sheets/paper.hpp"
#include "sheets/qr_code.hpp"
#include "sheets/sheet_prints.hpp"
#include "shipped_plans.hpp"

#include <catch2/catch.hpp>

#include <set>

using namespace gangway;

namespace {

const catalogue::CountryPack& pack() {
    static const auto packs = [] {
        auto loaded = catalogue::loadPacks(std::string(GANGWAY_ASSETS_DIR) + "/packs", {});
        if (!loaded) throw std::runtime_error(loaded.error());
        return *loaded;
    }();
    return *packs.pack("international");
}

/// Elevations and wall checks: enough of a set for an index.
const std::vector<drawing::Drawing>& setOf(const plan::Plan& plan) {
    static std::map<const plan::Plan*, std::vector<drawing::Drawing>> sets;
    const auto known = sets.find(&plan);
    if (known != sets.end()) return known->second;
    std::vector<drawing::Drawing> set{test::sheetsOf(plan)};
    sheets::SetInput input;
    input.plan = &plan;
    input.catalogue = &test::shippedCatalogue();
    set.push_back(*sheets::drawKind(*sheets::findSheetKind("wallcheck"), input));
    return sets.emplace(&plan, std::move(set)).first->second;
}

drawing::Drawing coverOf(const plan::Plan& plan, const std::vector<drawing::Drawing>& set,
                         const std::string& paper = "A3",
                         const std::vector<plan::IssuedSheet>* prints = nullptr) {
    sheets::CoverContent content;
    content.set = &set;
    content.prints = prints;
    content.pack = &pack();
    sheets::Options options;
    options.paper = paper;
    auto cover = sheets::coverSheets(plan, test::shippedCatalogue(), content, options);
    if (!cover) throw std::runtime_error(cover.error());
    return *cover;
}

/// All words of a cover, on all its sheets.
std::string wordsOf(const drawing::Drawing& cover) {
    std::string all;
    for (const auto& sheet : cover.sheets)
        for (const drawing::Text& text : test::textsOf(sheet))
            all += text.text + " ";
    return all;
}

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

plan::Plan withFloors(plan::Plan plan) {
    for (plan::Room& room : plan.rooms)
        if (room.floor_build_up.empty()) room.floor_build_up = {{"screed", 70, {}}};
    return plan;
}

plan::Plan issued(plan::Plan plan, const std::string& date, std::vector<plan::IssuedSheet> prints) {
    review::Particulars particulars;
    particulars.date = date;
    particulars.by = "R. Fern";
    particulars.note = "for first fix";
    particulars.sheets = std::move(prints);
    auto issue = review::freeze(plan, particulars);
    if (!issue) throw std::runtime_error(issue.error());
    plan.project.revision = issue->letter;
    plan.project.date = issue->date;
    plan.issues.push_back(*issue);
    return plan;
}

std::vector<plan::IssuedSheet> printsOf(const plan::Plan& plan) {
    return sheets::printsOf({test::sheetsOf(review::unstamped(plan))});
}

} // namespace

TEST_CASE("on the cover no two texts touch, none is small, and all is inside the frame, on every paper") {
    for (const plan::Plan* shipped : test::shippedPlans()) {
        const plan::Plan once = issued(withFloors(*shipped), "2026-05-02", printsOf(*shipped));
        plan::Plan moved = once;
        for (plan::Plate& plate : moved.plates)
            if (plate.host.kind == plan::Host::Kind::Wall) plate.host.v_mm += 5;
        for (const plan::Plan* plan : {shipped, &once, static_cast<const plan::Plan*>(&moved)})
            for (const char* paper : {"A4", "A3", "A2", "A1"})
                for (const auto& sheet : coverOf(*plan, setOf(*shipped), paper).sheets) {
                    INFO(plan->project.name << " " << plan->issues.size() << " " << paper << " "
                                            << sheet.number);
                    CHECK(test::touchingWords(sheet, 0.3) == "");
                    const sheets::Rect frame = sheets::frameOf(*sheets::findPaper(paper));
                    for (const drawing::Item& item : sheet.items) {
                        if (item.layer == "frame") continue;
                        const sheets::Rect extent = sheets::extentOf(item.primitive);
                        const bool within = sheets::inside(extent, frame);
                        if (!within) CHECK(drawing::dump(sheet) == item.layer + " outside the frame");
                    }
                    for (const drawing::Text& text : test::textsOf(sheet)) {
                        INFO(text.text);
                        CHECK(text.height_mm >= 2.5); // ISO 3098-1, from memory
                        CHECK_FALSE(text.text.ends_with("..."));
                    }
                }
    }
}

TEST_CASE("every sheet of the set stands in the index by number, title and scale") {
    const plan::Plan& plan = *test::shippedPlans().front();
    const sheets::CoverContent content{&setOf(plan), nullptr, nullptr};
    const sheets::Table index = sheets::sheetIndex(plan, content);
    std::set<std::string> first_numbers;
    for (const sheets::Row& row : index.rows)
        first_numbers.insert(
            std::get<std::string>(row[1]).substr(0, std::get<std::string>(row[1]).find(" to ")));
    std::string title;
    for (const drawing::Drawing& drawing : setOf(plan)) {
        for (const drawing::Sheet& sheet : drawing.sheets) {
            INFO(sheet.number);
            // A sheet that goes on from another shares its line.
            if (!sheet.title.ends_with("(continued)") && sheet.title != title)
                CHECK(first_numbers.contains(sheet.number));
            title = sheet.title;
        }
    }
    const std::string words = wordsOf(coverOf(plan, setOf(plan)));
    for (const sheets::Row& row : index.rows)
        CHECK(has(words, std::get<std::string>(row[1])));
    CHECK(has(words, "Kitchen-diner, wall A"));
}

TEST_CASE("a set that was never issued says so and has no code") {
    const plan::Plan& plan = *test::shippedPlans().front();
    const auto cover = coverOf(plan, setOf(plan));
    CHECK(has(wordsOf(cover), "Not issued"));
    CHECK_FALSE(has(wordsOf(cover), "fingerprint"));
    const auto& items = cover.sheets.front().items;
    CHECK(std::ranges::count_if(items, [](const drawing::Item& item) { return item.layer == "symbols"; }) ==
          0);
}

TEST_CASE("unchanged sheets are named so, with the issue since which they hold") {
    const plan::Plan plan = withFloors(test::twoRooms());
    const auto prints = printsOf(plan);
    const plan::Plan first = issued(plan, "2026-05-02", prints);
    plan::Plan moved = first;
    for (plan::Plate& plate : moved.plates)
        if (plate.room == "kitchen" && plate.host.kind == plan::Host::Kind::Wall && plate.host.wall == "A") {
            plate.host.u_mm += 40;
            break;
        }
    const auto later = printsOf(moved);
    const std::vector<drawing::Drawing> set{test::sheetsOf(moved)};
    const auto states = [&](const plan::Plan& of, const std::vector<plan::IssuedSheet>* now) {
        std::map<std::string, std::string> by_sheet;
        for (const sheets::Row& row : sheets::sheetIndex(of, {&set, now, nullptr}).rows)
            by_sheet[std::get<std::string>(row[1])] = std::get<std::string>(row[5]);
        return by_sheet;
    };
    const std::string wall_a = set.front().sheets.front().number;
    REQUIRE(set.front().sheets.front().title == "Kitchen, wall A");
    // Changed after the issue, and then issued again.
    const auto working = states(moved, &later);
    const auto again = states(issued(moved, "2026-06-09", later), nullptr);
    for (const auto& found : {working, again}) {
        CHECK(found.at(wall_a) == "changed since A");
        std::size_t unchanged = 0;
        for (const auto& [number, state] : found)
            unchanged += state == "unchanged since A" ? 1 : 0;
        CHECK(unchanged == found.size() - 1);
    }
    for (const auto& [number, state] : states(first, nullptr))
        CHECK(state == "first issue");
}

TEST_CASE("a sheet's print stays when only its date, revision, answers or page counts do not") {
    plan::Plan plan = test::twoRooms();
    const auto prints = printsOf(plan);
    plan.project.date = "2031-01-01";
    plan.project.revision = "K";
    plan.agreements.push_back(review::answer(plan, plan.plates.front(), plan::Agreement::Answer::Agree,
                                             "R. Fern", "2026-05-03T10:00:00Z", ""));
    const auto stamped = printsOf(plan);
    REQUIRE(stamped.size() == prints.size());
    for (std::size_t i = 0; i < prints.size(); ++i)
        CHECK(stamped[i].print == prints[i].print);
    plan.project.status = "for construction"; // that is read on every sheet
    CHECK(printsOf(plan).front().print != prints.front().print);
}

TEST_CASE("the revisions say of each issue what moved, the newest first") {
    const plan::Plan plan = withFloors(test::twoRooms());
    plan::Plan moved = issued(plan, "2026-05-02", {});
    const std::string tag = moved.plates.front().tag;
    moved.plates.front().host.u_mm += 120;
    moved.plates.front().host.v_mm += 50;
    moved = issued(moved, "2026-06-09", {});
    const sheets::Table table = sheets::revisionTable(moved);
    REQUIRE(table.rows.size() == 3);
    CHECK(std::get<std::string>(table.rows[0][0]) == "B");
    CHECK(std::get<std::string>(table.rows[1][2]) == tag + " moved 120 right, 50 up");
    CHECK(std::get<std::string>(table.rows[2][0]) == "A");
    CHECK(has(wordsOf(coverOf(moved, {test::sheetsOf(moved)})), tag + " moved 120 right, 50 up"));
}

TEST_CASE("the five boxes with least play are named with how far, which way and what then fails") {
    const plan::Plan& plan = *test::shippedPlans().front();
    const sheets::Table table = sheets::fragileTable(plan, test::shippedCatalogue(), pack(), {});
    CHECK(table.rows.size() == 5);
    double before = 0;
    for (const sheets::Row& row : table.rows) {
        const std::string play = std::get<std::string>(row[2]);
        INFO(std::get<std::string>(row[0]) << ": " << play << ": " << std::get<std::string>(row[3]));
        CHECK(std::stod(play) >= before);
        before = std::stod(play);
        CHECK((has(play, "left") || has(play, "right") || has(play, "up") || has(play, "down")));
        CHECK(std::get<std::string>(row[3]).size() > 20);
    }
}

TEST_CASE("a box 12 mm from a bar at its right has 12 mm of play to the right") {
    // Worked out by hand: the plate's edge, the leaf's casing and the pack's gap stand on one line.
    plan::Plan plan = test::twoRooms();
    const sheets::Table table = sheets::fragileTable(plan, test::shippedCatalogue(), pack(), {});
    REQUIRE_FALSE(table.rows.empty());
    const std::string tag = std::get<std::string>(table.rows[0][0]);
    const std::string play = std::get<std::string>(table.rows[0][2]);
    plan::Plate& plate =
        *std::ranges::find_if(plan.plates, [&](const plan::Plate& one) { return one.tag == tag; });
    // One step that way leaves that much less, and a step away from it leaves more.
    const double step = has(play, "right") ? 1 : has(play, "left") ? -1 : 0;
    const double up = has(play, "up") ? 1 : has(play, "down") ? -1 : 0;
    REQUIRE(std::stod(play) > 1);
    plate.host.u_mm += step;
    plate.host.v_mm += up;
    const sheets::Table nearer = sheets::fragileTable(plan, test::shippedCatalogue(), pack(), {});
    CHECK(std::get<std::string>(nearer.rows[0][0]) == tag);
    CHECK(std::stod(std::get<std::string>(nearer.rows[0][2])) == Approx(std::stod(play) - 1).margin(0.51));
}

TEST_CASE("key plans have the letter of every room and of its walls, on every paper") {
    for (const plan::Plan* plan : test::shippedPlans())
        for (const char* paper : {"A4", "A3", "A2", "A1"}) {
            INFO(plan->project.name << " " << paper);
            const auto cover = coverOf(*plan, setOf(*plan), paper);
            std::multiset<std::string> texts;
            for (const drawing::Text& text : test::textsOf(cover.sheets.front()))
                texts.insert(text.text);
            std::map<std::string, std::size_t> letters;
            std::size_t walls = 0;
            for (const plan::Room& room : plan->rooms) {
                ++letters[room.letter];
                for (const plan::Wall& wall : room.walls) {
                    ++letters[wall.id];
                    ++walls;
                }
            }
            std::size_t found = 0;
            for (const auto& [letter, count] : letters)
                found += std::min(texts.count(letter), count);
            // A wall too short for its letter goes without; there are few.
            CHECK(found + 3 >= walls + plan->rooms.size());
        }
}

TEST_CASE("the code of an issue is as large as it must be, with its quiet zone clear") {
    const plan::Plan plan = issued(withFloors(test::twoRooms()), "2026-05-02", printsOf(test::twoRooms()));
    const auto cover = coverOf(plan, {test::sheetsOf(plan)});
    const std::string text = sheets::qrText(plan.issues.back());
    CHECK(text == "gangway issue " + plan.issues.back().letter + " 2026-05-02 " +
                      review::fingerprint(plan.issues.back()));
    sheets::Rect code{1e9, 1e9, -1e9, -1e9};
    for (const drawing::Item& item : cover.sheets.front().items)
        if (item.layer == "symbols" && std::holds_alternative<drawing::Fill>(item.primitive))
            code = sheets::united(code, sheets::extentOf(item.primitive));
    const int modules = sheets::qrModules(text);
    CHECK(code.width() == Approx(modules * sheets::kQrModule).margin(0.05));
    CHECK(sheets::kQrModule >= 0.5);
    const sheets::Rect quiet = code.grown(4 * sheets::kQrModule - 0.05); // ISO/IEC 18004, from memory
    for (const drawing::Item& item : cover.sheets.front().items) {
        if (item.layer == "symbols") continue;
        if (sheets::overlaps(sheets::extentOf(item.primitive), quiet))
            CHECK((item.layer == "frame" || std::holds_alternative<drawing::Line>(item.primitive)));
    }
}

TEST_CASE("the cover says whom to ask, what heights refer to and the cautions") {
    const plan::Plan& plan = *test::shippedPlans().front();
    const std::string words = wordsOf(coverOf(plan, setOf(plan)));
    CHECK(has(words, "Whom to ask before you drill"));
    CHECK(has(words, plan.project.contact));
    CHECK(has(words, "Heights are from finished floor level (FFL)"));
    CHECK(has(words, "prove dead"));
    CHECK(has(words, "A placing proposal, not an electrical design"));
}
