// Wall check sheets: how the rows of each room share its pages.
#include "sheets/wall_check_sheets.hpp"

#include "sheets/request.hpp"
#include "sheets/sheet_layout.hpp"
#include "sheets/sheet_names.hpp"
#include "sheets/site_notes.hpp"
#include "sheets/title_block.hpp"
#include "sheets/wall_check_rows.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kInset = 5.5;      ///< content from the frame, clear of the centring marks
constexpr std::size_t kShort = 6;   ///< rows of a short surface
constexpr double kWritingPitch = 7; ///< of lines to write on
constexpr double kTightPitch = 6;
constexpr std::size_t kTogether = 3; ///< first rows of a wall that stay with its heading

struct Page {
    drawing::Sheet sheet;
    const plan::Room* room = nullptr;
    bool first = true; ///< of its room
};

class Maker {
public:
    Maker(const House& house, const Paper& paper)
        : house_(house), paper_(paper), frame_(frameOf(paper)), content_(frame_.grown(-kInset)) {
        const double pitch = kLeastCheck + kGutter;
        count_ = std::max<std::size_t>(1, static_cast<std::size_t>((content_.width() + kGutter) / pitch));
        const auto count = static_cast<double>(count_);
        width_ = (content_.width() - (count - 1) * kGutter) / count;
    }

    /// Every room is put on sheets, so that those of `only` have their numbers in the whole set.
    drawing::Drawing make(const plan::Room* only) {
        for (const plan::Room& room : house_.plan().rooms)
            place(room, surfacesOf(house_, room));
        return finished(only);
    }

private:
    void begin(const plan::Room& room, bool first) {
        Page page;
        page.room = &room;
        page.first = first;
        page.sheet.width_mm = paper_.width_mm;
        page.sheet.height_mm = paper_.height_mm;
        page.sheet.scale = 1;
        page.sheet.items = sheetFrame(paper_);
        double top =
            drawCautionLines(page.sheet.items, {content_.left, content_.top}, content_.width(), "") - 2;
        pages_.push_back(std::move(page));
        if (first) {
            Rect head{content_.left, content_.bottom, content_.right, top};
            flow(pages_.back().sheet.items, checkIntroduction(house_.plan(), room, content_.width()), head);
            top = head.top;
        }
        const double bottom = frame_.bottom + kTitleHeight + 1.5;
        columns_.clear();
        for (std::size_t i = 0; i < count_; ++i) {
            const double left = content_.left + static_cast<double>(i) * (width_ + kGutter);
            columns_.push_back({left, bottom, left + width_, top});
        }
        column_ = 0;
        fresh_ = true;
    }

    void advance(const plan::Room& room) {
        if (column_ + 1 < columns_.size()) {
            ++column_;
            fresh_ = true;
        } else {
            begin(room, false);
        }
    }

    double room() const { return columns_[column_].height(); }

    void draw(const std::vector<Block>& blocks) {
        flow(pages_.back().sheet.items, blocks, columns_[column_]);
        fresh_ = false;
    }

    /// A row with what must stand over it.
    std::vector<Block> withHeadings(const plan::Room& room, const Surface& surface, const Block& row,
                                    bool begun) const {
        std::vector<Block> blocks;
        if (fresh_) blocks.push_back(checkHead(house_.plan().units, width_));
        if (fresh_ || !begun) blocks.push_back(surfaceHeading(room, surface, width_, begun));
        blocks.push_back(row);
        return blocks;
    }

    /// Rows of a surface, in the order of its boxes.
    std::vector<Block> rowsOf(const Surface& surface) const {
        std::vector<Block> rows;
        for (const Mounted& item : surface.mounted)
            for (Block& row : checkRows(item, house_.plan().units, width_))
                rows.push_back(std::move(row));
        return rows;
    }

    /// A wall begins where its first rows stand with it, so that nobody takes one row for all of it.
    bool beginsHere(const std::vector<Block>& first, const std::vector<Block>& rows) const {
        double height = heightOf(first);
        for (std::size_t i = 1; i < std::min(rows.size(), kTogether); ++i)
            height += rows[i].height_mm;
        return height <= this->room();
    }

    /// Counts and signatures do not stand on a sheet alone where a short last surface can go with them.
    bool leavesTotalsAlone(const std::vector<Block>& first, const std::vector<Block>& rows,
                           const Block& totals) const {
        double height = heightOf(first) + totals.height_mm;
        for (std::size_t i = 1; i < rows.size(); ++i)
            height += rows[i].height_mm;
        return rows.size() <= kShort && height > this->room();
    }

    void place(const plan::Room& room, const std::vector<Surface>& surfaces) {
        if (surfaces.empty()) return;
        begin(room, true);
        const Block roomy = checkTotals(room, surfaces, width_, kWritingPitch);
        const Block tight = checkTotals(room, surfaces, width_, kTightPitch);
        for (const Surface& surface : surfaces) {
            const auto rows = rowsOf(surface);
            for (std::size_t i = 0; i < rows.size(); ++i) {
                auto blocks = withHeadings(room, surface, rows[i], i > 0);
                bool fits = i == 0 ? beginsHere(blocks, rows) : heightOf(blocks) <= this->room();
                if (i == 0 && &surface == &surfaces.back() && leavesTotalsAlone(blocks, rows, tight))
                    fits = false;
                if (!fresh_ && !fits) {
                    advance(room);
                    blocks = withHeadings(room, surface, rows[i], i > 0);
                }
                draw(blocks);
            }
        }
        if (tight.height_mm > this->room()) advance(room);
        draw({roomy.height_mm > this->room() ? tight : roomy});
    }

    void drawTitle(Page& page, std::size_t index) const {
        TitleFields fields;
        fields.sheet_id = page.sheet.number;
        fields.sheet_of = fmt::format("{} / {}", index + 1, pages_.size());
        fields.title = page.room->name + ", wall check";
        if (!page.first) fields.supplement = "continued";
        fields.document_type = "wall check, boxes by wall";
        fields.paper = paper_.id;
        fields.scale = 0;
        drawTitleBlock(page.sheet.items, {frame_.right, frame_.bottom}, house_.plan().project, fields);
    }

    drawing::Drawing finished(const plan::Room* only) {
        const plan::Project& project = house_.plan().project;
        drawing::Drawing drawing = drawingOf(project, "Wall check, boxes by wall");
        for (std::size_t i = 0; i < pages_.size(); ++i) {
            Page& page = pages_[i];
            if (only != nullptr && page.room != only) continue;
            page.sheet.number = fmt::format("W-{:02}", i + 1);
            page.sheet.title = page.room->name + ", wall check" + (page.first ? "" : " (continued)");
            page.sheet.file_stem = fileStem(page.sheet.number, "wall check " + page.room->name, "");
            drawTitle(page, i);
            drawing.sheets.push_back(std::move(page.sheet));
        }
        return drawing;
    }

    const House& house_;
    Paper paper_;
    Rect frame_;
    Rect content_;
    std::size_t count_ = 1; ///< of columns
    double width_ = 0;      ///< of one
    std::vector<Page> pages_;
    std::vector<Rect> columns_; ///< what is left of them on the last page
    std::size_t column_ = 0;
    bool fresh_ = true; ///< nothing stands in the column yet
};

} // namespace

std::expected<drawing::Drawing, std::string>
wallCheckSheets(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const Options& options) {
    const auto paper = requestedPaper(plan, options);
    if (!paper) return std::unexpected(paper.error());
    const plan::Room* room = plan::findRoom(plan, options.room);
    const House house(plan, catalogue, options.base);
    return Maker(house, *paper).make(room);
}

} // namespace gangway::sheets
