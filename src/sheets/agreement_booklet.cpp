// The sign-off booklet's pages: first what is signed and by whom, then each room's plates.
#include "sheets/agreement_booklet.hpp"

#include "sheets/paper.hpp"
#include "sheets/request.hpp"
#include "sheets/sheet_names.hpp"
#include "sheets/sheets.hpp"
#include "sheets/site_notes.hpp"
#include "sheets/title_block.hpp"

#include <algorithm>
#include <array>
#include <map>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr std::array<review::State, 4> kStates{review::State::Open, review::State::Agreed,
                                               review::State::Queried, review::State::Reopened};
constexpr double kRowHeight = 3.9;
constexpr double kInset = 5.5;

std::string orDash(const std::string& value) {
    return value.empty() ? "-" : value;
}

using Counts = std::map<review::State, int>;

Counts countsOf(const House& house, const Answers& answers, const plan::Room& room) {
    Counts counts;
    for (const plan::Plate* plate : house.platesIn(room.id))
        ++counts[answers.stateOf(*plate)];
    return counts;
}

/// One row of the table of counts.
void drawCounts(Ink& ink, double y, const std::string& name, const Counts& counts, double width_mm) {
    constexpr double kColumn = 21;
    const double first = width_mm - 5 * kColumn;
    const auto lines = wrapped(name, kNoteText, first - 2);
    if (!lines.empty()) ink.text({0, y}, lines.front(), kNoteText);
    int all = 0;
    for (std::size_t i = 0; i < kStates.size(); ++i) {
        const auto found = counts.find(kStates[i]);
        const int count = found == counts.end() ? 0 : found->second;
        all += count;
        ink.text({first + kColumn * (static_cast<double>(i) + 1) - 4, y}, std::to_string(count), kNoteText,
                 drawing::Align::Right);
    }
    ink.text({width_mm - 4, y}, std::to_string(all), kNoteText, drawing::Align::Right);
}

/// Counts by state and room; the rooms with a row are the rooms covered.
Block countsBlock(const House& house, const Answers& answers, const std::vector<const plan::Room*>& rooms,
                  double width_mm) {
    Block block;
    Ink ink(block.items, "text");
    constexpr double kColumn = 21;
    constexpr double kUnderRule = 1.2; ///< more than a row's pitch after a rule
    double y = -kNoteText - 0.6;
    ink.text({0, y}, "rooms covered", kNoteText);
    for (std::size_t i = 0; i < kStates.size(); ++i) {
        const double x = width_mm - 5 * kColumn + kColumn * static_cast<double>(i) + 1.6;
        drawState(ink, {x, y + kNoteText / 2}, kStates[i]);
        ink.text({x + 2.4, y}, std::string(review::word(kStates[i])), kNoteText);
    }
    ink.text({width_mm - 4, y}, "all", kNoteText, drawing::Align::Right);
    ink.line({0, y - 1.4}, {width_mm, y - 1.4}, kThin);
    Counts sum;
    y -= kUnderRule;
    for (const plan::Room* room : rooms) {
        y -= kRowHeight;
        const Counts counts = countsOf(house, answers, *room);
        for (const auto& [state, count] : counts)
            sum[state] += count;
        drawCounts(ink, y, room->name, counts, width_mm);
    }
    ink.line({0, y - 1.4}, {width_mm, y - 1.4}, kThin);
    y -= kRowHeight + kUnderRule;
    drawCounts(ink, y, "together", sum, width_mm);
    block.height_mm = -y + 1;
    block.gap_after_mm = 2;
    return block;
}

Block projectBlock(const plan::Project& project, double width_mm) {
    Block block;
    Ink ink(block.items, "text");
    ink.text({0, -kTitleText}, "Agreement of plates", kTitleText);
    const auto lines =
        wrapped(fmt::format("{}; revision {}, {}; {}", orDash(project.name), orDash(project.revision),
                            orDash(project.date), orDash(project.status)),
                kValueText, width_mm);
    block.height_mm = -ink.paragraph({0, -kTitleText - 6.5}, lines, kValueText) + 1.5;
    block.gap_after_mm = 3;
    return block;
}

/// A line to write on, with what belongs there under it.
void writingLine(Ink& ink, double left, double right, double y, const std::string& what) {
    ink.line({left, y}, {right, y}, kThin);
    ink.text({left, y - kNoteText - 1}, what, kNoteText);
}

Block signatureBlock(double width_mm) {
    Block block;
    Ink ink(block.items, "notes");
    double y = -kNoteText - 0.6;
    for (const char* who : {"Homeowner", "Designer"}) {
        ink.text({0, y}, who, kNoteText);
        writingLine(ink, 24, 84, y - 1, "name");
        writingLine(ink, 88, 112, y - 1, "date");
        writingLine(ink, 116, width_mm, y - 1, "signature");
        y -= 10.5;
    }
    block.height_mm = -y - 3;
    block.gap_after_mm = 2;
    return block;
}

Block talkBlock(double width_mm) {
    constexpr int kLines = 3;
    constexpr double kPitch = 6.5; ///< handwriting
    Block block;
    Ink ink(block.items, "notes");
    for (int i = 1; i <= kLines; ++i)
        ink.line({0, -i * kPitch}, {width_mm, -i * kPitch}, kThin);
    block.height_mm = kLines * kPitch + 1;
    block.gap_after_mm = 2;
    return block;
}

Block cautionBlock(double width_mm) {
    Block block;
    block.height_mm = -drawCautionLines(block.items, {0, 0}, width_mm) + 0.5;
    return block;
}

Rect contentOf(const Paper& paper) {
    Rect content = frameOf(paper).grown(-kInset);
    content.bottom = frameOf(paper).bottom + kTitleHeight + 1.5;
    return content;
}

/// A page still without frame and title block, because how many there are is known last.
struct Page {
    std::vector<Item> items;
    std::string title;
    std::string room;
};

/// Fills pages with blocks; each page begins with what `heading` gives for it.
template <typename Heading>
void fillPages(std::vector<Page>& pages, const Paper& paper, const std::string& title,
               const std::string& room, const std::vector<Block>& blocks, Heading heading) {
    std::size_t placed = 0;
    for (bool first = true; first || placed < blocks.size(); first = false) {
        Page page;
        page.title = title + (first ? "" : ", continued");
        page.room = room;
        Rect column = contentOf(paper);
        std::vector<Block> all = heading(page.title);
        const std::size_t head = all.size();
        all.insert(all.end(), blocks.begin() + static_cast<std::ptrdiff_t>(placed), blocks.end());
        const std::size_t on_page = flow(page.items, all, column);
        pages.push_back(std::move(page));
        if (on_page <= head) return; // a block taller than a page
        placed += on_page - head;
    }
}

drawing::Sheet sheetOf(Page page, const Paper& paper, const plan::Project& project, std::size_t number,
                       std::size_t count) {
    drawing::Sheet sheet;
    sheet.number = fmt::format("A-{:02}", number);
    sheet.title = page.title;
    sheet.file_stem = fileStem(sheet.number, "agreements", page.room);
    sheet.width_mm = paper.width_mm;
    sheet.height_mm = paper.height_mm;
    sheet.scale = 1;
    sheet.items = sheetFrame(paper);
    sheet.items.insert(sheet.items.end(), std::make_move_iterator(page.items.begin()),
                       std::make_move_iterator(page.items.end()));
    TitleFields fields;
    fields.sheet_id = sheet.number;
    fields.sheet_of = fmt::format("{} / {}", number, count);
    fields.title = page.title;
    fields.document_type = "sign-off booklet";
    fields.paper = std::string(paper.id);
    fields.scale = 0;
    const Rect frame = frameOf(paper);
    drawTitleBlock(sheet.items, {frame.right, frame.bottom}, project, fields);
    return sheet;
}

} // namespace

std::vector<Block> signingBlocks(const House& house, const Answers& answers,
                                 const std::vector<const plan::Room*>& rooms, double width_mm) {
    std::vector<Block> blocks{projectBlock(house.plan().project, width_mm)};
    const auto add = [&](const std::string& heading, const Block& block) {
        blocks.push_back(headingBlock(heading, width_mm));
        blocks.push_back(block);
    };
    add("State of the plates", countsBlock(house, answers, rooms, width_mm));
    add("What signing means",
        notesBlock(
            {"Agreed are the plates marked so in this booklet, at the positions given there to the centre of "
             "the plate, with the modules, finish and purpose named.",
             "A plate is reopened by itself, and nothing else is, when its room, wall, position, height, "
             "modules, finish or purpose changes, or what it relied on: the piece or device it belongs to, a "
             "door of its wall, the build-up under it. Its fingerprint is then another one.",
             "Changes after signing are priced and signed before work on them begins.",
             "This is agreement to the design. What is built is looked at again, box by box, before "
             "plastering.",
             "Rooms not listed above are not covered."},
            width_mm));
    add("Accepted warnings", notesBlock({"None recorded."}, width_mm));
    add("Signatures", signatureBlock(width_mm));
    add("For talking about", talkBlock(width_mm));
    blocks.push_back(cautionBlock(width_mm));
    return blocks;
}

drawing::Drawing agreementBooklet(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                                  const Options& options) {
    drawing::Drawing drawing = drawingOf(plan.project, "Agreement of plates");
    const Paper paper = *findPaper("A4");
    const double width = contentOf(paper).width();
    const House house(plan, catalogue, options.base);
    const Answers answers(plan);
    std::vector<const plan::Room*> rooms;
    for (const plan::Room& room : plan.rooms)
        if (!house.platesIn(room.id).empty() && (options.room.empty() || room.id == options.room))
            rooms.push_back(&room);
    std::vector<Page> pages;
    fillPages(pages, paper, "Agreement of plates", {}, signingBlocks(house, answers, rooms, width),
              [](const std::string&) { return std::vector<Block>{}; });
    for (const plan::Room* room : rooms)
        fillPages(pages, paper, room->name, room->name, agreementRows(house, answers, *room, width),
                  [&](const std::string& title) {
                      return std::vector<Block>{headingBlock(title, width), agreementHead(width)};
                  });
    for (std::size_t i = 0; i < pages.size(); ++i)
        drawing.sheets.push_back(sheetOf(std::move(pages[i]), paper, plan.project, i + 1, pages.size()));
    return drawing;
}

} // namespace gangway::sheets
