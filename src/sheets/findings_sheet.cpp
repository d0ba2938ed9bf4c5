#include "sheets/findings_sheet.hpp"

#include "checks/scope.hpp"
#include "sheets/findings_table.hpp"
#include "sheets/request.hpp"
#include "sheets/sheet_layout.hpp"
#include "sheets/sheet_names.hpp"
#include "sheets/site_notes.hpp"
#include "sheets/title_block.hpp"

#include <algorithm>
#include <unordered_map>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kInset = 5.5; ///< content from the frame, clear of the centring marks
constexpr double kAfterTable = 6;
constexpr double kCheckedPart = 0.64; ///< of the width of notes side by side

struct Page {
    drawing::Sheet sheet;
    std::vector<std::string> rooms; ///< with findings that are open
    bool accepted = false;          ///< some that are accepted are on it
    bool begins = false;            ///< a table begins on it
};

class Maker {
public:
    Maker(const House& house, const Paper& paper, const catalogue::CountryPack& pack,
          const std::vector<plan::Finding>& findings, const plan::Room* only)
        : house_(house), words_(house), paper_(paper), pack_(pack), only_(only), frame_(frameOf(paper)),
          content_(frame_.grown(-kInset)) {
        for (const plan::Finding& finding : findings)
            if (only == nullptr || words_.roomOf(finding) == only) findings_.push_back(finding);
        for (const plan::Finding& finding : findings_)
            by_room_[words_.roomOf(finding)].push_back(&finding);
    }

    drawing::Drawing make() {
        begin();
        place(FindingTable::Open, "Findings", false);
        if (!begun_)
            flowed({headingBlock("Findings", content_.width()),
                    notesBlock({"These checks found nothing that is open."}, content_.width())});
        place(FindingTable::Accepted, "Accepted as it is", true);
        placeNotes();
        return finished();
    }

private:
    double overTitle() const { return frame_.bottom + kTitleHeight + kStripHeight + 3; }

    /// A new sheet with the cautions on top.
    void begin() {
        Page page;
        page.sheet.number = fmt::format("F-{:02}", pages_.size() + 1);
        page.sheet.width_mm = paper_.width_mm;
        page.sheet.height_mm = paper_.height_mm;
        page.sheet.scale = 1;
        page.sheet.items = sheetFrame(paper_);
        const double top =
            drawCautionLines(page.sheet.items, {content_.left, content_.top}, content_.width()) - 2;
        column_ = {content_.left, overTitle(), content_.right, top};
        flow(page.sheet.items, std::vector{severityLegend(findings_, width())}, column_);
        pages_.push_back(std::move(page));
        fresh_ = true;
    }

    void flowed(const std::vector<Block>& blocks) {
        flow(pages_.back().sheet.items, blocks, column_);
        fresh_ = false;
    }

    void place(FindingTable table, const std::string& title, bool accepted) {
        table_begun_ = false;
        if (begun_) column_.top -= kAfterTable;
        std::vector<const plan::Room*> rooms;
        for (const plan::Room& room : house_.plan().rooms)
            if (only_ == nullptr || only_ == &room) rooms.push_back(&room);
        if (only_ == nullptr) rooms.push_back(nullptr);
        for (const plan::Room* room : rooms) {
            const std::string name = room == nullptr ? "The house" : room->name;
            bool room_begun = false;
            for (const plan::Finding* finding : by_room_[room]) {
                if (finding->accepted.has_value() != accepted) continue;
                for (const Block& row : findingRows(table, words_, *finding, ++count_, width())) {
                    placeRow(table, title, name, room_begun, row);
                    room_begun = true;
                }
            }
        }
    }

    double width() const { return content_.width(); }

    void placeRow(FindingTable table, const std::string& title, const std::string& room, bool room_begun,
                  const Block& row) {
        auto blocks = heads(table, title, room, room_begun);
        blocks.push_back(row);
        if (!fresh_ && heightOf(blocks) > column_.height()) {
            begin();
            blocks = heads(table, title, room, room_begun);
            blocks.push_back(row);
        }
        Page& page = pages_.back();
        page.begins = page.begins || !table_begun_;
        page.accepted = page.accepted || table == FindingTable::Accepted;
        if (table == FindingTable::Open && std::ranges::find(page.rooms, room) == page.rooms.end())
            page.rooms.push_back(room);
        table_begun_ = begun_ = true;
        flowed(blocks);
    }

    /// What must stand over a row that is placed next.
    std::vector<Block> heads(FindingTable table, const std::string& title, const std::string& room,
                             bool room_begun) const {
        std::vector<Block> blocks;
        const bool top = fresh_ || !table_begun_;
        if (top) {
            Block heading = headingBlock(title + (table_begun_ ? " (continued)" : ""), width());
            heading.gap_after_mm = 0.4;
            blocks = {heading, findingsHead(table, width())};
        }
        if (top || !room_begun) blocks.push_back(roomHeading(room, width(), room_begun));
        return blocks;
    }

    /// What was looked at and what was not: beside the title block of the first sheet, or under the last
    /// table where the paper stands upright; a sheet of its own only when it has no room there.
    void placeNotes() {
        Page* page = &pages_.front();
        Rect place{content_.left, content_.bottom, frame_.right - kTitleWidth - kGutter, overTitle() - 3};
        auto columns = noteColumnsIn(place, true);
        if (paper_.upright || !holds(columns)) {
            for (const bool again : {false, true}) {
                if (again) begin();
                page = &pages_.back();
                columns = noteColumnsIn(column_, !paper_.upright);
                if (holds(columns)) break;
            }
        }
        for (auto& [blocks, column] : columns)
            flow(page->sheet.items, blocks, column);
    }

    struct NoteColumn {
        std::vector<Block> blocks;
        Rect column;
    };

    static bool holds(const std::vector<NoteColumn>& columns) {
        return std::ranges::all_of(columns, [](const NoteColumn& one) {
            return heightOf(one.blocks) - one.blocks.back().gap_after_mm <= one.column.height();
        });
    }

    std::vector<NoteColumn> noteColumnsIn(const Rect& place, bool side_by_side) const {
        const double middle = place.left + kCheckedPart * place.width();
        Rect left = place;
        Rect right = place;
        if (side_by_side) {
            left.right = middle - kGutter;
            right.left = middle;
        }
        auto checked = checkedBlocks(left.width());
        auto others = uncheckedBlocks(right.width());
        if (side_by_side) return {{std::move(checked), left}, {std::move(others), right}};
        std::ranges::move(others, std::back_inserter(checked));
        return {{std::move(checked), left}};
    }

    std::vector<Block> checkedBlocks(double wide) const {
        std::vector<std::string> checked = checks::scopeOf(pack_).checked;
        checked.insert(checked.begin(), fmt::format("by the country pack '{}'{}", pack_.name,
                                                    pack_.edition.empty() ? "" : ", " + pack_.edition));
        return {headingBlock("What was checked", wide), notesBlock(checked, wide)};
    }

    std::vector<Block> uncheckedBlocks(double wide) const {
        return {headingBlock("What was not checked", wide),
                notesBlock(checks::scopeOf(pack_).not_checked, wide)};
    }

    std::string titleOf(const Page& page) const {
        const auto& rooms = page.rooms;
        std::string title = only_ == nullptr ? "Findings" : "Findings: " + only_->name;
        if (rooms.size() == 1) title = "Findings: " + rooms.front();
        if (rooms.size() > 1)
            title = fmt::format("Findings: {} {} {}", rooms.front(), rooms.size() == 2 ? "and" : "to",
                                rooms.back());
        return title + (!page.accepted ? "" : rooms.empty() ? ", accepted" : "; accepted ones");
    }

    void drawTitle(Page& page, std::size_t index) const {
        const Pt corner{frame_.right, frame_.bottom};
        const Pt strip{corner.x, corner.y + kTitleHeight};
        drawRevisions(page.sheet.items, strip, house_.plan());
        Ink(page.sheet.items, "frame")
            .line({strip.x - kTitleWidth, strip.y + kStripHeight}, {strip.x, strip.y + kStripHeight},
                  kNarrow);
        TitleFields fields;
        fields.sheet_id = page.sheet.number;
        fields.sheet_of = fmt::format("{} / {}", index + 1, pages_.size());
        fields.title = titleOf(page);
        if (index > 0 && !page.begins) fields.supplement = "continued";
        fields.document_type = "findings of the checks";
        fields.paper = paper_.id;
        fields.scale = 0;
        drawTitleBlock(page.sheet.items, corner, house_.plan().project, fields);
    }

    drawing::Drawing finished() {
        const plan::Project& project = house_.plan().project;
        drawing::Drawing drawing = drawingOf(project, "Findings");
        for (std::size_t i = 0; i < pages_.size(); ++i) {
            Page& page = pages_[i];
            page.sheet.title = titleOf(page);
            page.sheet.file_stem = fileStem(page.sheet.number, "findings", "");
            drawTitle(page, i);
            drawing.sheets.push_back(std::move(page.sheet));
        }
        return drawing;
    }

    const House& house_;
    FindingWords words_;
    Paper paper_;
    const catalogue::CountryPack& pack_;
    const plan::Room* only_; ///< nullptr: the whole house
    Rect frame_;
    Rect content_;
    std::vector<plan::Finding> findings_;
    std::unordered_map<const plan::Room*, std::vector<const plan::Finding*>> by_room_; ///< nullptr: the house
    std::vector<Page> pages_;
    Rect column_;              ///< what is left of the last page
    bool fresh_ = true;        ///< nothing stands on it yet
    bool begun_ = false;       ///< some row has been placed
    bool table_begun_ = false; ///< of this table
    std::size_t count_ = 0;    ///< rows numbered, in the order in which they stand on the sheets
};

} // namespace

std::expected<drawing::Drawing, std::string> findingsSheets(const plan::Plan& plan,
                                                            const catalogue::Catalogue& catalogue,
                                                            const catalogue::CountryPack& pack,
                                                            const std::vector<plan::Finding>& findings,
                                                            const Options& options) {
    const auto paper = requestedPaper(plan, options);
    if (!paper) return std::unexpected(paper.error());
    const plan::Room* room = plan::findRoom(plan, options.room);
    const House house(plan, catalogue, options.base);
    return Maker(house, *paper, pack, findings, room).make();
}

} // namespace gangway::sheets
