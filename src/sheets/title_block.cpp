#include "sheets/title_block.hpp"

#include "review/review.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kRow = 9.5;
constexpr double kTallRow = 12.7; ///< its values may take two lines
static_assert(2 * kRow + 2 * kTallRow == kTitleHeight);
constexpr double kPad = 1.2;
constexpr double kRevisionWidth = 95;

struct Cell {
    const char* label;
    std::string value;
    double width_mm;
    double text_mm = kValueText;
};

/// The largest lettering of the series that fits, else the smallest with the end cut and marked.
drawing::Text fitted(const std::string& value, double width_mm, double largest_mm) {
    drawing::Text text;
    text.text = value;
    for (double height : {kNumberText, kTitleText, kValueText, kNoteText}) {
        if (height > largest_mm) continue;
        text.height_mm = height;
        if (drawing::measure(value, height).width_mm <= width_mm) return text;
    }
    // One long word breaks where it must, so this keeps as many characters as there is room for.
    std::string unbroken = value;
    std::replace(unbroken.begin(), unbroken.end(), ' ', '_');
    const double room = width_mm - drawing::measure("...", kNoteText).width_mm;
    const auto lines = wrapped(unbroken, kNoteText, room);
    text.text = value.substr(0, lines.empty() ? 0 : lines.front().size()) + "...";
    return text;
}

/// A value on one line as large as it fits, else on two lines of the least lettering.
std::vector<drawing::Text> valueLines(const std::string& value, double width_mm, bool two_lines) {
    const auto lines = wrapped(value, kNoteText, width_mm);
    if (!two_lines || lines.size() < 2) return {fitted(value, width_mm, kValueText)};
    std::string rest;
    for (std::size_t i = 1; i < lines.size(); ++i)
        rest += (rest.empty() ? "" : " ") + lines[i];
    return {fitted(lines.front(), width_mm, kNoteText), fitted(rest, width_mm, kNoteText)};
}

void drawRow(std::vector<Item>& items, Pt upper_left, double height_mm, const std::vector<Cell>& cells) {
    Ink lines(items, "frame");
    Ink texts(items, "notes");
    double x = upper_left.x;
    for (const Cell& cell : cells) {
        const Rect rect{x, upper_left.y - height_mm, x + cell.width_mm, upper_left.y};
        lines.rect(rect, kThin);
        texts.text({x + kPad, rect.top - kPad - kNoteText}, cell.label, kNoteText);
        // Tall values stand at the right of their label, so that the row keeps its height, and clear of the
        // frame's broad line.
        const double beside = cell.width_mm - 4 * kPad - drawing::measure(cell.label, kNoteText).width_mm;
        drawing::Text tall = fitted(cell.value, beside, cell.text_mm);
        if (tall.height_mm > kValueText) {
            tall.at = {rect.right - 2 * kPad, rect.bottom + (height_mm - tall.height_mm) / 2};
            tall.align = drawing::Align::Right;
            texts.text(tall);
        } else {
            double y = rect.bottom + 1.1;
            auto value = valueLines(cell.value, cell.width_mm - 2 * kPad, height_mm >= kTallRow);
            for (auto line = value.rbegin(); line != value.rend(); ++line) {
                line->at = {x + kPad, y};
                texts.text(*line);
                y += 4.1;
            }
        }
        x += cell.width_mm;
    }
}

std::string orDash(const std::string& value) {
    return value.empty() ? "-" : value;
}

std::string scaleText(double scale) {
    return scale > 0 ? fmt::format("1:{:g}", scale) : "-";
}

std::string fullTitle(const TitleFields& fields) {
    return fields.title + (fields.supplement.empty() ? "" : ", " + fields.supplement);
}

/// The sheet's number behind the project's (ISO 7200: identification number).
std::string fullNumber(const plan::Project& project, const TitleFields& fields) {
    return project.number.empty() ? fields.sheet_id : project.number + "-" + fields.sheet_id;
}

using RevisionRow = std::array<std::string, 4>; ///< revision, date, change, by

/// The last two issues, the older first; of a plan that has changed since, the last one and that.
std::vector<RevisionRow> revisionRows(const plan::Plan& plan) {
    const plan::Project& project = plan.project;
    if (plan.issues.empty())
        return {{orDash(project.revision), orDash(project.date),
                 project.revision.empty() ? "before first issue" : orDash(project.status),
                 orDash(project.designer)}};
    std::vector<RevisionRow> rows;
    for (const plan::Issue& issue : plan.issues)
        rows.push_back({issue.letter, issue.date, issue.note.empty() ? "issued" : issue.note, issue.by});
    if (project.revision != plan.issues.back().letter) rows.push_back({"-", "-", "changed, not issued", "-"});
    if (rows.size() > 2) rows.erase(rows.begin(), rows.end() - 2);
    return rows;
}

} // namespace

void drawTitleBlock(std::vector<Item>& items, Pt corner, const plan::Project& project,
                    const TitleFields& fields) {
    const Pt start{corner.x - kTitleWidth, corner.y + kTitleHeight};
    const std::string title = fullTitle(fields);
    const std::string id = fullNumber(project, fields);
    drawRow(
        items, start, kTallRow,
        {{"Legal owner", orDash(project.company), 50}, {"Title", title, 72}, {"Sheet", id, 58, kNumberText}});
    drawRow(items, {start.x, start.y - kTallRow}, kRow,
            {{"Project", orDash(project.name), 60},
             {"Client", orDash(project.client), 50},
             {"Address", orDash(project.address), 70}});
    drawRow(items, {start.x, start.y - kTallRow - kRow}, kTallRow,
            {{"Document type", fields.document_type, 56},
             {"Created by", orDash(project.designer), 38},
             {"Technical reference", orDash(project.contact), 48},
             {"Approved by", orDash(project.approved_by), 38}});
    drawRow(items, {start.x, start.y - 2 * kTallRow - kRow}, kRow,
            {{"Date of issue", orDash(project.date), 30},
             {"Revision", orDash(project.revision), 18},
             {"Status", orDash(project.status), 50},
             {"Scale", scaleText(fields.scale), 20},
             {"Paper", fields.paper, 16},
             {"Language", "en", 20},
             {"Sheet no.", fields.sheet_of, 26}});
    Ink(items, "frame").rect({start.x, corner.y, corner.x, corner.y + kTitleHeight}, kHeavy);
}

void drawTitleStrip(std::vector<Item>& items, Pt corner, double width_mm, const plan::Project& project,
                    const TitleFields& fields) {
    static_assert(kTitleStripHeight == kRow);
    const double wider = std::max(0.0, width_mm - kLeastStrip);
    drawRow(items, {corner.x - kLeastStrip - wider, corner.y + kRow}, kRow,
            {{"Title", fullTitle(fields), 43 + wider},
             {"Project", orDash(project.name), 38},
             {"Date of issue", orDash(project.date), 25.5},
             {"Revision", orDash(project.revision), 17.5},
             {"Scale", scaleText(fields.scale), 12},
             {"Sheet no.", fields.sheet_of, 18.5},
             {"Sheet", fullNumber(project, fields), 27.5}});
    Ink(items, "frame").rect({corner.x - kLeastStrip - wider, corner.y, corner.x, corner.y + kRow}, kOutline);
}

void drawRevisions(std::vector<Item>& items, Pt corner, const plan::Plan& plan) {
    Ink lines(items, "frame");
    Ink texts(items, "notes");
    const double left = corner.x - kTitleWidth;
    const double right = left + kRevisionWidth;
    const auto rows = revisionRows(plan);
    // One row has two lines, and short words for what it is; several have a line each, and the words of
    // issues.
    const std::array<double, 5> edges = rows.size() == 1
                                            ? std::array{left, left + 10, left + 31, left + 59, right}
                                            : std::array{left, left + 9, left + 31.5, left + 69, right};
    const double pitch = kStripHeight / 3;
    const auto heads = RevisionRow{"Rev.", "Date", "Change", "By"};
    bool two_lines = false;
    for (std::size_t i = 0; i < heads.size(); ++i) {
        const double x = edges[i] + kPad;
        texts.text({x, corner.y + 2 * pitch + 1.4}, heads[i], kNoteText);
        for (std::size_t row = 0; row < rows.size(); ++row) {
            double y = corner.y + (1 - static_cast<double>(row)) * pitch + 1.4;
            for (drawing::Text& line :
                 valueLines(rows[row][i], edges[i + 1] - edges[i] - 2 * kPad, rows.size() == 1)) {
                two_lines = two_lines || (rows.size() == 1 && y < corner.y + pitch);
                line.height_mm = kNoteText;
                line.at = {x, y};
                texts.text(line);
                y -= pitch;
            }
        }
    }
    for (double x : edges)
        lines.line({x, corner.y}, {x, corner.y + kStripHeight}, kThin);
    for (int i = two_lines ? 2 : 1; i <= 3; ++i)
        lines.line({left, corner.y + i * pitch}, {right, corner.y + i * pitch}, kThin);
}

void drawAgreement(std::vector<Item>& items, Pt corner, const WallView& view) {
    Ink lines(items, "frame");
    Ink texts(items, "notes");
    const Rect box{corner.x - kTitleWidth + kRevisionWidth, corner.y, corner.x, corner.y + kStripHeight};
    review::Count count;
    std::string prints;
    int plates = 0;
    for (const Mounted& item : view.mounted) {
        if (item.plate == nullptr) continue;
        ++plates;
        prints += item.fingerprint + "\n";
        switch (item.state) {
        case review::State::Open:
            ++count.open;
            break;
        case review::State::Agreed:
            ++count.agreed;
            break;
        case review::State::Queried:
            ++count.queried;
            break;
        case review::State::Reopened:
            ++count.reopened;
            break;
        }
    }
    const double pitch = kStripHeight / 3;
    const double x = box.left + kPad;
    texts.text({x, box.top - pitch + 1.4},
               fmt::format("Agreed {} of {}, queried {}, open {}, reopened {}", count.agreed, plates,
                           count.queried, count.open, count.reopened),
               kNoteText);
    texts.text({x, box.top - 2 * pitch + 1.4},
               "Fingerprint of this wall: " + review::sha256(prints).substr(0, 8), kNoteText);
    texts.text({x, box.bottom + 1.4}, "Name, date, signature:", kNoteText);
    lines.line({x + 36, box.bottom + 1.4}, {box.right - 2, box.bottom + 1.4}, kThin);
    lines.rect(box, kThin);
}

} // namespace gangway::sheets
