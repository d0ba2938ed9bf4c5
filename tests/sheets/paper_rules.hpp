// What every sheet keeps to, whatever is on it.
#pragma once

#include "drawing/bounds.hpp"
#include "sheet_reading.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <fmt/format.h>

namespace gangway::test {

/// What a sheet does wrong as paper, in words; empty: nothing. No texts touch; no text is under 2.5 mm (the
/// least of ISO 3098-1 for A1 to A4, from memory); what belongs to a picture or is said in words is within
/// the frame, 20 mm from the filing edge and 10 from the others (ISO 5457, from memory).
inline std::string brokenRules(const drawing::Sheet& sheet) {
    std::string broken = touchingWords(sheet, 0);
    for (const drawing::Text& text : textsOf(sheet))
        if (text.height_mm < 2.5) broken += "'" + text.text + "' is too small; ";
    for (const auto& item : sheet.items) {
        if (item.layer == "frame") continue;
        const auto ink = drawing::bounds(item.primitive);
        if (ink.low.x > ink.high.x) continue;
        if (ink.low.x < 20 || ink.low.y < 10 || ink.high.x > sheet.width_mm - 10 ||
            ink.high.y > sheet.height_mm - 10)
            broken += fmt::format("{} '{}' leaves the frame at {:.1f}, {:.1f}; ", item.layer, item.id,
                                  ink.low.x, ink.low.y);
    }
    return broken;
}

/// Texts that stand in tables and notes, not in pictures.
struct TableText {
    std::string words;
    std::string layer;
    double left = 0;
    double y = 0;
    double height_mm = 0;
};
inline std::vector<TableText> tableTexts(const drawing::Sheet& sheet) {
    std::vector<TableText> texts;
    for (const auto& item : sheet.items) {
        const auto* text = std::get_if<drawing::Text>(&item.primitive);
        if (text == nullptr || item.view != 0) continue;
        const double width = drawing::measure(text->text, text->height_mm).width_mm;
        const double left = text->align == drawing::Align::Right    ? text->at.x - width
                            : text->align == drawing::Align::Centre ? text->at.x - width / 2
                                                                    : text->at.x;
        texts.push_back({text->text, item.layer, left, text->at.y, text->height_mm});
    }
    return texts;
}

/// A line of a table: what stands at one height within some width, left to right, under its heading.
struct TableLine {
    std::string heading; ///< the nearest words above that `isHeading` takes
    std::vector<std::string> cells;
};

/// Lines of large letters (3.5 mm: tags and numbers) in columns as wide as notes are, top to bottom. A
/// heading holds for what stands under it in its column.
template <typename IsHeading>
std::vector<TableLine> tableLines(const drawing::Sheet& sheet, double column_mm, IsHeading isHeading) {
    const auto texts = tableTexts(sheet);
    std::vector<TableLine> lines;
    std::vector<const TableText*> done;
    for (const TableText& first : texts) {
        if (first.layer != "text") continue;
        if (std::ranges::find(done, &first) != done.end()) continue;
        const TableText* heading = nullptr;
        for (const TableText& above : texts)
            if (above.y > first.y && above.left <= first.left + 0.5 && first.left < above.left + column_mm &&
                isHeading(above.words) && (heading == nullptr || above.y < heading->y))
                heading = &above;
        if (heading == nullptr) continue;
        std::vector<const TableText*> line;
        for (const TableText& other : texts)
            if (other.layer == "text" && std::abs(other.y - first.y) < 2.2 &&
                other.left >= heading->left - 0.5 && other.left < heading->left + column_mm)
                line.push_back(&other);
        std::ranges::sort(line, {}, &TableText::left);
        TableLine made{heading->words, {}};
        for (const TableText* text : line) {
            made.cells.push_back(text->words);
            done.push_back(text);
        }
        lines.push_back(std::move(made));
    }
    return lines;
}

} // namespace gangway::test
