#include "sheets/cover_sheet.hpp"

#include "review/issues.hpp"
#include "sheets/cover_parts.hpp"
#include "sheets/paper.hpp"
#include "sheets/qr_code.hpp"
#include "sheets/request.hpp"
#include "sheets/sheet_layout.hpp"
#include "sheets/sheet_names.hpp"
#include "sheets/site_notes.hpp"
#include "sheets/table_blocks.hpp"
#include "sheets/title_block.hpp"

#include <algorithm>
#include <cmath>
#include <span>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kInset = 5.5;         ///< content from the frame, clear of the centring marks
constexpr double kColumn = 186;        ///< about the width of a column
constexpr double kBetween = 8;         ///< columns
constexpr double kAfterPart = 5;       ///< before the next part
constexpr double kHugeText = 10;       ///< the next of the series after kNumberText (ISO 3098)
constexpr double kPlansAlone = 0.9;    ///< the same of the only column
constexpr double kHeadings = 7;        ///< of a part
constexpr double kPlansPart = 0.52;    ///< of a first column's height, at most, is key plans
constexpr double kRevisionsPart = 0.5; ///< at most, of what the key plans leave of their column
constexpr double kCaption = 62;        ///< beside the QR code: what issue this is

/// A table or a run of blocks, to be placed row by row.
struct Part {
    std::optional<TableBlocks> table;
    std::vector<Block> blocks;
};

class Maker {
public:
    Maker(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const CoverContent& content,
          const Options& options, const Paper& paper)
        : plan_(plan), catalogue_(catalogue), content_(content), options_(options), paper_(paper),
          frame_(frameOf(paper)), inside_(frame_.grown(-kInset)), state_(issueStateOf(plan)) {}

    drawing::Drawing make() {
        begin(drawMasthead());
        const double width = columns_.front().width();
        Part plans;
        plans.blocks = storeyKeyPlans(
            plan_, width,
            (columns_.size() == 1 ? kPlansAlone : kPlansPart) * columns_.front().height() - kHeadings,
            options_.base);
        const Part index{setTable(sheetIndex(plan_, content_), width), {}};
        const Part revisions{setTable(revisionTable(plan_), width), {}};
        const std::vector<Part> others = partsBesideIndex(width);
        place(plans);
        if (columns_.size() == 1) {
            for (const Part& part : others)
                place(part);
            place(revisions);
            place(index);
            return finished();
        }
        // The last column is for what everyone must read; index and revisions go on where there is room.
        const std::size_t for_index = column_;
        column_ = columns_.size() - 1;
        std::size_t placed = 0;
        while (placed < others.size() && holds(others[placed], room()))
            place(others[placed++]);
        column_ = for_index;
        // The newest revisions first; many leave room for the index to begin.
        const double kept = (1 - kRevisionsPart) * room();
        columns_[column_].bottom += kept;
        const std::size_t rows = placeAsFits(revisions);
        columns_[column_].bottom -= kept;
        columns_[column_].top -= kAfterPart;
        place(index);
        for (; placed < others.size(); ++placed)
            place(others[placed]);
        if (rows < revisions.table->rows.size()) placeRows(*revisions.table, rows);
        return finished();
    }

private:
    std::vector<Part> partsBesideIndex(double width) const {
        std::vector<Part> parts;
        parts.push_back({std::nullopt, whomToAsk(plan_.project, width)});
        parts.push_back({std::nullopt, conventions(plan_, options_.datum, width)});
        if (content_.pack != nullptr) {
            const Table fragile = fragileTable(plan_, catalogue_, *content_.pack, options_.base);
            if (!fragile.rows.empty()) parts.push_back({setTable(fragile, width), {}});
        }
        return parts;
    }

    double overTitle() const { return frame_.bottom + kTitleHeight + kStripHeight + 4; }

    /// A sheet with its columns under `top`.
    void begin(double top) {
        const auto count = std::max<std::size_t>(
            1, static_cast<std::size_t>(std::lround((inside_.width() + kBetween) / (kColumn + kBetween))));
        const double width =
            (inside_.width() - static_cast<double>(count - 1) * kBetween) / static_cast<double>(count);
        columns_.clear();
        for (std::size_t i = 0; i < count; ++i) {
            const double left = inside_.left + static_cast<double>(i) * (width + kBetween);
            const bool beside = left + width <= frame_.right - kTitleWidth - 2;
            columns_.push_back({left, beside ? inside_.bottom : overTitle(), left + width, top});
        }
        column_ = 0;
        top_ = top;
        if (pages_.empty()) pages_.push_back(newSheet());
    }

    drawing::Sheet newSheet() const {
        drawing::Sheet sheet;
        sheet.number = fmt::format("C-{:02}", pages_.size() + 1);
        sheet.width_mm = paper_.width_mm;
        sheet.height_mm = paper_.height_mm;
        sheet.scale = 1;
        sheet.items = sheetFrame(paper_);
        return sheet;
    }

    void next() {
        if (++column_ < columns_.size()) return;
        pages_.push_back(newSheet());
        begin(drawCautionLines(pages_.back().items, {inside_.left, inside_.top}, inside_.width()) - 3);
    }

    /// Nothing stands in this column yet.
    bool fresh() const { return columns_[column_].top > top_ - 0.01; }
    double room() const { return columns_[column_].height(); }

    static bool holds(const Part& part, double room_mm) {
        double height = heightOf(part.blocks) - (part.blocks.empty() ? 0 : part.blocks.back().gap_after_mm);
        if (part.table)
            for (std::size_t row = 0; row < part.table->rows.size(); ++row)
                height += heightOf(rowWithHeadings(*part.table, row, row == 0));
        return height <= room_mm;
    }

    void draw(const std::vector<Block>& blocks) { flow(pages_.back().items, blocks, columns_[column_]); }

    void place(const Part& part) {
        // In one piece where a column holds it.
        const double height =
            part.blocks.empty() ? 0 : heightOf(part.blocks) - part.blocks.back().gap_after_mm;
        while (!fresh() && height > room())
            next();
        for (std::size_t done = 0; done < part.blocks.size();) {
            const std::size_t placed =
                flow(pages_.back().items, std::span(part.blocks).subspan(done), columns_[column_]);
            if (placed == 0 && fresh()) break; // higher than a sheet: nothing of ours is
            done += placed;
            if (done < part.blocks.size()) next();
        }
        if (part.table) placeRows(*part.table, 0);
        columns_[column_].top -= kAfterPart;
    }

    /// Rows from `row` on, over columns and sheets as they need.
    void placeRows(const TableBlocks& table, std::size_t row) {
        bool head = true;
        for (; row < table.rows.size(); ++row, head = false) {
            for (;;) {
                double needed = heightOf(rowWithHeadings(table, row, head));
                if (head && row + 1 < table.rows.size())
                    needed += heightOf(rowWithHeadings(table, row + 1, false));
                if (needed <= room() || fresh()) break;
                next();
                head = true;
            }
            draw(rowWithHeadings(table, row, head));
        }
    }

    /// As many rows as this column holds, if at least two; returns how many.
    std::size_t placeAsFits(const Part& part) {
        const TableBlocks& table = *part.table;
        if (!holds(part, room()) && table.rows.size() > 1 &&
            heightOf(rowWithHeadings(table, 0, true)) + heightOf(rowWithHeadings(table, 1, false)) > room())
            return 0;
        std::size_t row = 0;
        for (; row < table.rows.size(); ++row) {
            const auto blocks = rowWithHeadings(table, row, row == 0);
            if (heightOf(blocks) > room()) break;
            draw(blocks);
        }
        return row;
    }

    /// Title and issue over the whole width; returns the y under them.
    double drawMasthead() {
        pages_.push_back(newSheet());
        std::vector<Item>& items = pages_.front().items;
        const double right = drawIssue(items);
        Ink ink(items, "notes");
        const double width = right - inside_.left - 6;
        const plan::Project& project = plan_.project;
        double y = inside_.top;
        y = paragraph(ink, y, project.name.empty() ? "A house" : project.name, kHugeText, width) - 3;
        y = paragraph(ink, y, "Sockets, switches, data outlets and lamps: drawings for setting out",
                      kTitleText, width) -
            3.5;
        std::string who = project.client.empty() ? "" : "For " + project.client;
        if (!project.address.empty()) who += (who.empty() ? "" : ".  ") + project.address;
        if (!who.empty()) y = paragraph(ink, y, who, kValueText, width) - 2.5;
        if (!project.status.empty())
            y = paragraph(ink, y, "Status: " + project.status, kValueText, width) - 2.5;
        const double bottom = std::min(y, issue_bottom_) - 1.5;
        ink.line({inside_.left, bottom}, {inside_.right, bottom}, kOutline);
        return drawCautionLines(items, {inside_.left, bottom - 2.2}, inside_.width()) - 3;
    }

    /// Lines under `top` in the largest lettering of the series, at most `most_mm`, in which no more than two
    /// are needed; returns the y under their last.
    double paragraph(Ink& ink, double top, const std::string& text, double most_mm, double width) const {
        for (const double height : {kHugeText, kNumberText, kTitleText, kValueText, kNoteText}) {
            if (height > most_mm) continue;
            const auto lines = wrapped(text, height, width);
            if (lines.size() > 2 && height > kNoteText) continue;
            if (lines.size() > 1 && height > kTitleText) continue;
            return ink.paragraph({inside_.left, top - height}, lines, height) - height * 0.35;
        }
        return top;
    }

    /// QR code and what issue this is, at the right; returns the left end of it.
    double drawIssue(std::vector<Item>& items) {
        double right = inside_.right;
        issue_bottom_ = inside_.top;
        if (state_.issue != nullptr) {
            const std::string text = qrText(*state_.issue);
            const double side = (qrModules(text) + 2 * kQrQuiet) * kQrModule;
            // The quiet zone reaches into the inset, where nothing else is.
            Ink code(items, "symbols");
            drawQr(code, {right - side, inside_.top - side}, text, kQrModule);
            issue_bottom_ = inside_.top - side;
            right -= side + 1;
        }
        Ink ink(items, "notes");
        double y = inside_.top - kNumberText;
        const auto line = [&](const std::string& text, double height) {
            ink.text({right, y}, text, height, drawing::Align::Right);
            y -= height * 0.4;
        };
        line(state_.headline, kNumberText);
        if (!state_.date.empty()) {
            y -= kTitleText + 1;
            line(state_.date, kTitleText);
        }
        for (const std::string& words : wrapped(state_.note, kValueText, kCaption)) {
            y -= kValueText + 1;
            line(words, kValueText);
        }
        if (state_.issue != nullptr) {
            y -= kNoteText + 3.5;
            line("fingerprint, as in the code", kNoteText);
            const std::string print = review::fingerprint(*state_.issue);
            y -= kValueText + 1;
            std::string grouped;
            for (std::size_t i = 0; i < print.size(); i += 4)
                grouped += fmt::format("{}{}", i == 0 ? "" : " ", print.substr(i, 4));
            line(grouped, kValueText);
        }
        issue_bottom_ = std::min(issue_bottom_, y);
        return right - kCaption;
    }

    void drawTitle(drawing::Sheet& sheet, std::size_t index) const {
        const Pt corner{frame_.right, frame_.bottom};
        const Pt strip{corner.x, corner.y + kTitleHeight};
        drawRevisions(sheet.items, strip, plan_);
        Ink(sheet.items, "frame")
            .line({strip.x - kTitleWidth, strip.y + kStripHeight}, {strip.x, strip.y + kStripHeight},
                  kNarrow);
        TitleFields fields;
        fields.sheet_id = sheet.number;
        fields.sheet_of = fmt::format("{} / {}", index + 1, pages_.size());
        fields.title = "Cover";
        if (index > 0) fields.supplement = "continued";
        fields.document_type = "cover and index of a set";
        fields.paper = paper_.id;
        fields.scale = 0;
        drawTitleBlock(sheet.items, corner, plan_.project, fields);
    }

    drawing::Drawing finished() {
        drawing::Drawing drawing = drawingOf(plan_.project, "Cover");
        for (std::size_t i = 0; i < pages_.size(); ++i) {
            drawing::Sheet& sheet = pages_[i];
            sheet.title = i == 0 ? "Cover" : "Cover (continued)";
            sheet.file_stem = fileStem(sheet.number, "cover", "");
            drawTitle(sheet, i);
        }
        drawing.sheets = std::move(pages_);
        return drawing;
    }

    const plan::Plan& plan_;
    const catalogue::Catalogue& catalogue_;
    const CoverContent& content_;
    const Options& options_;
    Paper paper_;
    Rect frame_;
    Rect inside_;
    IssueState state_;
    std::vector<drawing::Sheet> pages_;
    std::vector<Rect> columns_; ///< what is left of them on the last page
    std::size_t column_ = 0;
    double top_ = 0; ///< of its columns, as they were
    double issue_bottom_ = 0;
};

} // namespace

std::expected<drawing::Drawing, std::string> coverSheets(const plan::Plan& plan,
                                                         const catalogue::Catalogue& catalogue,
                                                         const CoverContent& content,
                                                         const Options& options) {
    const auto paper = requestedPaper(plan, options);
    if (!paper) return std::unexpected(paper.error());
    return Maker(plan, catalogue, content, options, *paper).make();
}

} // namespace gangway::sheets
