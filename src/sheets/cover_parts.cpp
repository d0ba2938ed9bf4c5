#include "sheets/cover_parts.hpp"

#include "checks/checks.hpp"
#include "checks/margins.hpp"
#include "drawing/dimensions.hpp"
#include "geometry/house_index.hpp"
#include "review/changes.hpp"
#include "review/issues.hpp"
#include "sheets/datum.hpp"
#include "sheets/wall_view.hpp"

#include <algorithm>
#include <map>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

Column textColumn(std::string key, std::string title) {
    Column column;
    column.key = std::move(key);
    column.title = std::move(title);
    return column;
}

std::string orDash(const std::string& text) {
    return text.empty() ? "-" : text;
}

std::string nameOf(const plan::Room& room) {
    return room.name.empty() ? room.id : room.name;
}

/// What the index says of one sheet.
struct IndexLine {
    std::string first, last; ///< numbers
    std::size_t sheets = 1;
    std::string title;
    std::string scale;
    std::string state;
};

/// Whether a sheet changed, in the words of the index.
class SheetStates {
public:
    SheetStates(const plan::Plan& plan, const CoverContent& content)
        : plan_(plan), as_issued_(review::issuedAs(plan) != nullptr) {
        const auto* prints = content.prints;
        if (prints == nullptr && as_issued_) prints = &plan.issues.back().sheets;
        known_ = prints != nullptr && !plan.issues.empty();
        if (known_)
            for (const plan::IssuedSheet& sheet : *prints)
                prints_.emplace(sheet.number, sheet.print);
    }

    std::string of(const std::string& number) const {
        if (!known_) return {};
        const std::size_t count = plan_.issues.size();
        const std::string last = plan_.issues.back().letter;
        const auto print = prints_.find(number);
        if (print == prints_.end()) return {}; // none of the set that is issued
        const std::string revision = review::sheetRevision(plan_, number, print->second);
        if (!as_issued_) {
            if (!revision.empty()) return "unchanged since " + revision;
            return (inIssue(count - 1, number) ? "changed since " : "new since ") + last;
        }
        if (count == 1) return "first issue";
        if (revision != last) return "unchanged since " + revision;
        return (inIssue(count - 2, number) ? "changed since " : "new since ") +
               plan_.issues[count - 2].letter;
    }

private:
    bool inIssue(std::size_t issue, const std::string& number) const {
        const auto& sheets = plan_.issues[issue].sheets;
        return std::ranges::find(sheets, number, &plan::IssuedSheet::number) != sheets.end();
    }

    const plan::Plan& plan_;
    bool as_issued_ = false;
    bool known_ = false;
    std::map<std::string, std::string> prints_;
};

std::string withoutContinued(const std::string& title) {
    constexpr std::string_view kContinued = " (continued)";
    return title.ends_with(kContinued) ? title.substr(0, title.size() - kContinued.size()) : title;
}

/// The sheets of one kind, those in a row that read alike in one line.
std::vector<IndexLine> linesOf(const drawing::Drawing& drawing, const SheetStates& states) {
    std::vector<IndexLine> lines;
    for (const drawing::Sheet& sheet : drawing.sheets) {
        IndexLine line{sheet.number,
                       sheet.number,
                       1,
                       withoutContinued(sheet.title),
                       sheet.scale > 1 ? fmt::format("1:{:g}", sheet.scale) : "-",
                       states.of(sheet.number)};
        if (!lines.empty() && lines.back().title == line.title && lines.back().scale == line.scale &&
            lines.back().state == line.state) {
            lines.back().last = line.first;
            ++lines.back().sheets;
        } else {
            lines.push_back(std::move(line));
        }
    }
    return lines;
}

std::string wayWords(checks::PlaceMargin::Way way) {
    using Way = checks::PlaceMargin::Way;
    switch (way) {
    case Way::Left:
        return "to the left";
    case Way::Right:
        return "to the right";
    case Way::Up:
        return "up";
    case Way::Down:
        return "down";
    }
    return {};
}

/// What a rule asks for, in its own words.
std::string ruleWords(const checks::PlaceMargin& margin) {
    if (margin.rule.empty()) return "It would stand over the end of its wall.";
    const auto rules = checks::rules();
    const auto rule =
        std::ranges::find(rules, margin.rule, [](const auto& one) { return std::string(one.id); });
    std::string words = rule == rules.end() ? margin.rule : std::string(rule->what);
    if (!margin.name.empty()) words += fmt::format(" Here: {}.", margin.name);
    return words;
}

/// "75 in Kitchen and Hall; 40 in Landing": rooms with one floor build-up together.
std::string floorsInWords(const plan::Plan& plan) {
    std::vector<std::pair<std::string, std::string>> groups;
    for (const plan::Room& room : plan.rooms) {
        const std::string thick =
            room.floor_build_up.empty() ? "not stated" : drawing::number(thicknessOf(room.floor_build_up));
        const auto group = std::ranges::find(groups, thick, &std::pair<std::string, std::string>::first);
        if (group == groups.end())
            groups.emplace_back(thick, nameOf(room));
        else
            group->second += ", " + nameOf(room);
    }
    std::string words;
    for (const auto& [thick, rooms] : groups)
        words += fmt::format("{}{} in {}", words.empty() ? "" : "; ", thick, rooms);
    return words;
}

std::string siteLines(const plan::Plan& plan) {
    std::string words;
    for (const plan::Storey& storey : plan.storeys)
        if (storey.site_line_mm)
            words += fmt::format("{}{} above FFL on the {}", words.empty() ? "" : ", ",
                                 drawing::number(*storey.site_line_mm), storey.name);
    return words;
}

std::string levelNote(Level level) {
    switch (level) {
    case Level::Ffl:
        return "Heights are from finished floor level (FFL) to the centre of the box.";
    case Level::Slab:
        return "Heights are from the SLAB (structural floor) to the centre of the box.";
    case Level::Site:
        return "Heights are from the SITE LINE to the centre of the box; less than 0 is below it.";
    }
    return {};
}

} // namespace

IssueState issueStateOf(const plan::Plan& plan) {
    if (plan.issues.empty()) return {nullptr, "Not issued", "a working copy: not to be built from"};
    const plan::Issue& last = plan.issues.back();
    if (review::issuedAs(plan) == nullptr)
        return {nullptr, "Not issued", fmt::format("changed after issue {} of {}", last.letter, last.date)};
    return {&last, "Issue " + last.letter,
            last.note.empty() ? last.date : fmt::format("{}, {}", last.date, last.note)};
}

std::string qrText(const plan::Issue& issue) {
    return fmt::format("gangway issue {} {} {}", issue.letter, issue.date, review::fingerprint(issue));
}

Table sheetIndex(const plan::Plan& plan, const CoverContent& content) {
    Table table;
    table.key = "index";
    table.title = "Sheets of this set";
    table.columns = {textColumn("kind", "kind"),     textColumn("sheet", "sheet"),
                     textColumn("title", "title"),   textColumn("scale", "scale"),
                     textColumn("revision", "rev."), textColumn("state", "since the last issue")};
    table.columns[1].lead = true;
    table.group_by = 0;
    const SheetStates states(plan, content);
    if (content.set == nullptr) return table;
    for (const drawing::Drawing& drawing : *content.set)
        for (const IndexLine& line : linesOf(drawing, states))
            table.rows.push_back(
                {drawing.subject,
                 line.sheets == 1 ? line.first : fmt::format("{} to {}", line.first, line.last), line.title,
                 line.scale, orDash(plan.project.revision), line.state});
    return table;
}

Table revisionTable(const plan::Plan& plan) {
    Table table;
    table.key = "revisions";
    table.title = "Revisions";
    table.columns = {textColumn("revision", "rev."), textColumn("date", "date"),
                     textColumn("change", "what for, and what changed"), textColumn("by", "by")};
    table.columns[0].lead = true;
    if (plan.issues.empty()) {
        table.rows.push_back({orDash(plan.project.revision), orDash(plan.project.date),
                              std::string("before the first issue"), orDash(plan.project.designer)});
        return table;
    }
    const auto add = [&](const std::string& letter, const std::string& date, const std::string& what,
                         const std::string& by, const std::vector<std::string>& changes) {
        table.rows.push_back({letter, date, what, by});
        for (const std::string& words : changes)
            table.rows.push_back({std::monostate{}, std::monostate{}, words, std::monostate{}});
    };
    const plan::Issue& last = plan.issues.back();
    if (review::issuedAs(plan) == nullptr)
        add("-", "-", fmt::format("not issued; changed since {}:", last.letter), "-",
            review::changesInWords(review::stateAt(plan, last), plan));
    for (std::size_t i = plan.issues.size(); i-- > 0;) {
        const plan::Issue& issue = plan.issues[i];
        const std::string what = issue.note.empty() ? (i == 0 ? "first issue" : "issued again") : issue.note;
        std::vector<std::string> changes;
        if (i > 0)
            changes = review::changesInWords(review::stateAt(plan, plan.issues[i - 1]),
                                             review::stateAt(plan, issue));
        add(issue.letter, issue.date, what, issue.by, changes);
    }
    return table;
}

Table fragileTable(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                   const catalogue::CountryPack& pack, const std::filesystem::path& base) {
    constexpr std::size_t kMost = 5;
    constexpr double kNone_mm = 0.25; ///< less than what is printed: it fails as it stands
    const geometry::HouseIndex house(plan);
    const checks::Facts facts(house, catalogue, pack, base);
    auto margins = checks::margins(facts);
    std::erase_if(margins, [](const checks::PlaceMargin& margin) { return margin.mm < kNone_mm; });
    std::ranges::stable_sort(margins, {}, &checks::PlaceMargin::mm);
    if (margins.size() > kMost) margins.resize(kMost);
    Table table;
    table.key = "fragile";
    table.title = "The five most fragile boxes: hold these to the mm";
    table.columns = {textColumn("box", "box"), textColumn("where", "where"), textColumn("play", "play, mm"),
                     textColumn("fails", "past that, this no longer holds")};
    table.columns[0].lead = true;
    for (const checks::PlaceMargin& margin : margins) {
        const plan::Plate* plate = plan::findPlate(plan, margin.plate);
        const plan::Room* room = plate == nullptr ? nullptr : house.room(plate->room);
        if (room == nullptr) continue;
        table.rows.push_back({plate->tag.empty() ? plate->id : plate->tag,
                              fmt::format("{}, wall {}", nameOf(*room), plate->host.wall),
                              fmt::format("{} {}", drawing::number(margin.mm), wayWords(margin.way)),
                              ruleWords(margin)});
    }
    return table;
}

std::vector<Block> conventions(const plan::Plan& plan, const Datum& datum, double width_mm) {
    std::vector<std::string> notes{
        levelNote(datum.level),
        fmt::format("FFL above the slab: {}. Confirm it on site before marking a height.",
                    floorsInWords(plan))};
    if (const std::string lines = siteLines(plan); !lines.empty())
        notes.push_back(fmt::format("Site level line: {}.", lines));
    notes.push_back(
        datum.face == Face::Structural
            ? "Distances along a wall start from the BARE face at its left corner, as at first fix."
            : "Distances along a wall start from the FINISHED face at its left corner. Each elevation "
              "says what to add from the bare one.");
    notes.emplace_back(
        "Left and right are as seen from inside the room, facing the wall. Nothing is mirrored; "
        "ceilings are drawn as seen from above, through the ceiling.");
    notes.emplace_back("All lengths are in mm. Written numbers count, not what is measured off the paper.");
    notes.emplace_back(
        "Tags: the letter of the room, then a number. Walls have the letters of the key plans, "
        "clockwise.");
    notes.emplace_back(
        "Dashed: hidden by what its tag names. On plans a symbol may stand aside for want of room: "
        "the dot at the end of its line is its true place. Elevations and schedules count.");
    notes.emplace_back(
        "In a cloud: changed since the issue before; the triangle has the letter of the new one. "
        "Crossed out: no longer there.");
    return {headingBlock("How to read this set", width_mm), notesBlock(notes, width_mm)};
}

std::vector<Block> whomToAsk(const plan::Project& project, double width_mm) {
    constexpr double kLabel = 24;
    Block block;
    Ink ink(block.items, "notes");
    double y = -kValueText - 0.6;
    const auto row = [&](const char* label, const std::string& value) {
        if (value.empty()) return;
        ink.text({0, y}, label, kNoteText);
        const auto lines = wrapped(value, kValueText, width_mm - kLabel);
        y = ink.paragraph({kLabel, y}, lines, kValueText) - 5.8;
    };
    row("Ring", project.contact);
    row("Designer", project.designer);
    row("Company", project.company == project.designer ? "" : project.company);
    row("Approved by", project.approved_by);
    if (block.items.empty()) {
        ink.text({0, y}, "No one is named in this plan. Ask who gave you this set.", kNoteText);
        y -= 5.8;
    }
    block.height_mm = -y - kValueText;
    block.gap_after_mm = 4;
    return {headingBlock("Whom to ask before you drill", width_mm), block};
}

} // namespace gangway::sheets
