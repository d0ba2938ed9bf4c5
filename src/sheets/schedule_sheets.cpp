// Schedule sheets: how the tables share the paper.
#include "sheets/schedule_sheets.hpp"

#include "sheets/request.hpp"
#include "sheets/schedules.hpp"
#include "sheets/sheet_layout.hpp"
#include "sheets/sheet_names.hpp"
#include "sheets/site_notes.hpp"
#include "sheets/table_blocks.hpp"
#include "sheets/title_block.hpp"

#include <algorithm>
#include <cctype>
#include <set>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kInset = 5.5;      ///< content from the frame, clear of the centring marks
constexpr double kAfterTable = 6;   ///< before the next one
constexpr double kLeastList = 180;  ///< width of an order list beside another
constexpr double kWorthBegun = 0.5; ///< of a column free: a table that does not fit whole begins there

/// Tables over the whole width with their notes under them beside the title block, or order lists.
enum class Kind { Wide, Order };

struct Page {
    drawing::Sheet sheet;
    Kind kind = Kind::Wide;
    std::vector<std::string> titles; ///< of the tables on it
    bool begins = false;             ///< some table begins on it
    std::vector<std::string> notes;  ///< of those tables, to stand beside the title block
};

class Maker {
public:
    Maker(const plan::Plan& plan, const Paper& paper, const plan::Room* room)
        : plan_(plan), paper_(paper), room_(room), frame_(frameOf(paper)), content_(frame_.grown(-kInset)) {}

    drawing::Drawing make(const std::vector<Table>& tables) {
        const std::set<std::string> wide{"plates", "luminaires", "legs", "circuits"};
        for (const Kind kind : {Kind::Wide, Kind::Order}) {
            columns_.clear();
            for (const Table& table : tables)
                if (!table.rows.empty() && wide.contains(table.key) == (kind == Kind::Wide))
                    place(table, kind);
        }
        return finished();
    }

private:
    double overTitle() const { return frame_.bottom + kTitleHeight + kStripHeight + 3; }
    /// Notes stand at the left of the title block where there is such a place.
    bool notesBeside(Kind kind) const { return kind == Kind::Wide && !paper_.upright; }

    std::size_t columnCount(Kind kind) const {
        if (kind == Kind::Wide) return 1;
        return std::max<std::size_t>(
            1, static_cast<std::size_t>((content_.width() + kGutter) / (kLeastList + kGutter)));
    }
    double columnWidth(Kind kind) const {
        const auto count = static_cast<double>(columnCount(kind));
        return (content_.width() - (count - 1) * kGutter) / count;
    }

    /// A new sheet with the cautions on top, and its columns.
    void begin(Kind kind) {
        Page page;
        page.kind = kind;
        page.sheet.number = fmt::format("Q-{:02}", pages_.size() + 1);
        page.sheet.width_mm = paper_.width_mm;
        page.sheet.height_mm = paper_.height_mm;
        page.sheet.scale = 1;
        page.sheet.items = sheetFrame(paper_);
        const double top =
            drawCautionLines(page.sheet.items, {content_.left, content_.top}, content_.width()) - 2;
        const double width = columnWidth(kind);
        columns_.clear();
        column_ = 0;
        for (std::size_t i = 0; i < columnCount(kind); ++i) {
            const double left = content_.left + static_cast<double>(i) * (width + kGutter);
            const bool beside = left + width <= frame_.right - kTitleWidth - 2 && kind == Kind::Order;
            columns_.push_back({left, beside ? content_.bottom : overTitle(), left + width, top});
        }
        full_mm_ = columns_.front().height();
        pages_.push_back(std::move(page));
    }

    void advance(Kind kind) {
        if (columns_.empty() || ++column_ == columns_.size()) begin(kind);
        fresh_ = true;
    }

    double room() const { return columns_.empty() ? 0 : columns_[column_].height(); }

    void draw(const std::vector<Block>& blocks) {
        flow(pages_.back().sheet.items, blocks, columns_[column_]);
        fresh_ = false;
    }

    /// What must stand with a row: neither a table's first nor its last row is alone, nor are its totals and
    /// the notes under them.
    static double heightWith(const TableBlocks& set, double notes_mm, std::size_t row, bool head) {
        const std::size_t count = set.rows.size();
        double height = heightOf(rowWithHeadings(set, row, head));
        if (row + 1 < count && (row == 0 || row + 2 == count))
            height += heightOf(rowWithHeadings(set, row + 1, false));
        if (row + 2 >= count) height += set.totals.height_mm + notes_mm;
        return height;
    }

    static double tableHeight(const TableBlocks& set) {
        double height = set.totals.height_mm;
        for (std::size_t row = 0; row < set.rows.size(); ++row)
            height += heightOf(rowWithHeadings(set, row, row == 0));
        return height;
    }

    void name(const Table& table, bool begins) {
        Page& page = pages_.back();
        page.begins = page.begins || begins;
        if (std::ranges::find(page.titles, table.title) != page.titles.end()) return;
        page.titles.push_back(table.title);
        if (!notesBeside(page.kind)) return;
        for (const std::string& note : table.notes)
            if (std::ranges::find(page.notes, note) == page.notes.end()) page.notes.push_back(note);
    }

    void place(const Table& table, Kind kind) {
        const TableBlocks set = setTable(table, columnWidth(kind));
        std::vector<Block> notes;
        if (!notesBeside(kind) && !table.notes.empty())
            notes.push_back(notesBlock(table.notes, set.width_mm));
        const double notes_mm = notes.empty() ? 0 : kGutter / 2 + notes.front().height_mm;
        const bool begin_here = tableHeight(set) <= room() || room() >= kWorthBegun * full_mm_;
        if (columns_.empty() || !begin_here) advance(kind);
        for (std::size_t row = 0; row < set.rows.size(); ++row) {
            bool head = row == 0;
            if (!fresh_ && heightWith(set, notes_mm, row, head) > room()) {
                advance(kind);
                head = true;
            }
            name(table, row == 0);
            draw(rowWithHeadings(set, row, head));
        }
        if (set.totals.height_mm > 0) draw({set.totals});
        if (!notes.empty()) {
            columns_[column_].top -= kGutter / 2;
            if (notes.front().height_mm > room()) {
                advance(kind);
                name(table, false); // a sheet with these notes alone is that table's too
            }
            draw(notes);
        }
        columns_[column_].top -= kAfterTable;
    }

    std::string titleOf(const Page& page) const {
        std::string title = "To order";
        if (page.kind == Kind::Wide) {
            title = page.titles.front();
            for (std::size_t i = 1; i < page.titles.size(); ++i) {
                std::string more = page.titles[i];
                more.front() = static_cast<char>(std::tolower(static_cast<unsigned char>(more.front())));
                title += ", " + more;
            }
        }
        return room_ == nullptr ? title : fmt::format("{}: {}", room_->name, title);
    }

    void drawNotes(Page& page) const {
        if (page.notes.empty()) return;
        Rect place{content_.left, content_.bottom, frame_.right - kTitleWidth - kGutter, overTitle() - 3};
        flow(page.sheet.items,
             std::vector<Block>{headingBlock("Notes", place.width()), notesBlock(page.notes, place.width())},
             place);
    }

    void drawTitle(Page& page, std::size_t index) const {
        const Pt corner{frame_.right, frame_.bottom};
        const Pt strip{corner.x, corner.y + kTitleHeight};
        drawRevisions(page.sheet.items, strip, plan_);
        Ink(page.sheet.items, "frame")
            .line({strip.x - kTitleWidth, strip.y + kStripHeight}, {strip.x, strip.y + kStripHeight},
                  kNarrow);
        TitleFields fields;
        fields.sheet_id = page.sheet.number;
        fields.sheet_of = fmt::format("{} / {}", index + 1, pages_.size());
        fields.title = titleOf(page);
        if (!page.begins) fields.supplement = "continued";
        fields.document_type = "schedule";
        fields.paper = paper_.id;
        fields.scale = 0;
        drawTitleBlock(page.sheet.items, corner, plan_.project, fields);
    }

    drawing::Drawing finished() {
        drawing::Drawing drawing = drawingOf(plan_.project, "Schedules");
        for (std::size_t i = 0; i < pages_.size(); ++i) {
            Page& page = pages_[i];
            const std::string title = titleOf(page);
            page.sheet.title = page.begins ? title : title + " (continued)";
            page.sheet.file_stem = fileStem(page.sheet.number, title, "");
            drawNotes(page);
            drawTitle(page, i);
            drawing.sheets.push_back(std::move(page.sheet));
        }
        return drawing;
    }

    const plan::Plan& plan_;
    Paper paper_;
    const plan::Room* room_; ///< nullptr: the whole house
    Rect frame_;
    Rect content_;
    std::vector<Page> pages_;
    std::vector<Rect> columns_; ///< what is left of them on the last page
    std::size_t column_ = 0;
    bool fresh_ = false; ///< nothing stands in the column yet
    double full_mm_ = 0; ///< height of a column at first
};

} // namespace

std::expected<drawing::Drawing, std::string> scheduleSheets(const plan::Plan& plan,
                                                            const catalogue::Catalogue& catalogue,
                                                            const catalogue::CountryPack& pack,
                                                            const Options& options) {
    const auto paper = requestedPaper(plan, options);
    if (!paper) return std::unexpected(paper.error());
    const plan::Room* room = plan::findRoom(plan, options.room);
    return Maker(plan, *paper, room).make(schedules(plan, catalogue, pack, options.room));
}

} // namespace gangway::sheets
