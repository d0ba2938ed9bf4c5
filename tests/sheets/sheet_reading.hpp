// Reading a sheet as a person does: its texts, its dimensions, the extent of what belongs to an object.
#pragma once

#include "drawing/drawing.hpp"

#include <algorithm>
#include <string>
#include <vector>

namespace gangway::test {

inline std::vector<drawing::Text> textsOf(const drawing::Sheet& sheet) {
    std::vector<drawing::Text> texts;
    for (const auto& item : sheet.items) {
        if (const auto* text = std::get_if<drawing::Text>(&item.primitive)) texts.push_back(*text);
        if (const auto* dimension = std::get_if<drawing::Dimension>(&item.primitive))
            texts.insert(texts.end(), dimension->texts.begin(), dimension->texts.end());
    }
    return texts;
}

inline bool hasText(const drawing::Sheet& sheet, const std::string& part) {
    const auto texts = textsOf(sheet);
    return std::any_of(texts.begin(), texts.end(),
                       [&](const drawing::Text& text) { return text.text.find(part) != std::string::npos; });
}

/// The same for words that may be set in several lines.
inline bool hasWords(const drawing::Sheet& sheet, const std::string& words) {
    std::string all;
    for (const drawing::Text& text : textsOf(sheet))
        all += text.text + " ";
    return all.find(words) != std::string::npos;
}

inline std::vector<drawing::Dimension> dimensionsOf(const drawing::Sheet& sheet,
                                                    drawing::Dimension::Kind kind) {
    std::vector<drawing::Dimension> dimensions;
    for (const auto& item : sheet.items)
        if (const auto* dimension = std::get_if<drawing::Dimension>(&item.primitive))
            if (dimension->kind == kind) dimensions.push_back(*dimension);
    return dimensions;
}

/// The words of texts that touch, for a message; empty when none do.
inline std::string touchingWords(const drawing::Sheet& sheet, double margin_mm) {
    const auto wordsOf = [&](std::size_t item) {
        if (const auto* text = std::get_if<drawing::Text>(&sheet.items[item].primitive)) return text->text;
        return std::string("a dimension of ") + sheet.items[item].id;
    };
    std::string words;
    for (const auto& [a, b] : drawing::touchingTexts(sheet, margin_mm))
        words += "'" + wordsOf(a) + "' and '" + wordsOf(b) + "'; ";
    return words;
}

/// Every pen drawn with.
inline std::vector<drawing::Pen> pensOf(const drawing::Sheet& sheet) {
    std::vector<drawing::Pen> pens;
    for (const auto& item : sheet.items) {
        if (const auto* line = std::get_if<drawing::Line>(&item.primitive)) pens.push_back(line->pen);
        if (const auto* polyline = std::get_if<drawing::Polyline>(&item.primitive))
            pens.push_back(polyline->pen);
        if (const auto* arc = std::get_if<drawing::Arc>(&item.primitive)) pens.push_back(arc->pen);
        if (const auto* dimension = std::get_if<drawing::Dimension>(&item.primitive)) {
            for (const auto& line : dimension->lines)
                pens.push_back(line.pen);
            for (const auto& arc : dimension->arcs)
                pens.push_back(arc.pen);
        }
    }
    return pens;
}

/// Closed outlines drawn for an object on a layer, with their pens.
inline std::vector<drawing::Polyline> outlinesOf(const drawing::Sheet& sheet, const std::string& layer,
                                                 const std::string& id) {
    std::vector<drawing::Polyline> outlines;
    for (const auto& item : sheet.items)
        if (item.layer == layer && item.id == id)
            if (const auto* polyline = std::get_if<drawing::Polyline>(&item.primitive))
                if (polyline->closed) outlines.push_back(*polyline);
    return outlines;
}

inline double widthOf(const drawing::Polyline& polyline) {
    const auto [low, high] = std::minmax_element(polyline.points.begin(), polyline.points.end(),
                                                 [](drawing::Pt a, drawing::Pt b) { return a.x < b.x; });
    return high->x - low->x;
}

inline double heightOf(const drawing::Polyline& polyline) {
    const auto [low, high] = std::minmax_element(polyline.points.begin(), polyline.points.end(),
                                                 [](drawing::Pt a, drawing::Pt b) { return a.y < b.y; });
    return high->y - low->y;
}

/// The widest outline of a plate: its frame.
inline drawing::Polyline plateOutline(const drawing::Sheet& sheet, const std::string& id) {
    const auto outlines = outlinesOf(sheet, "plates", id);
    return *std::max_element(outlines.begin(), outlines.end(), [](const auto& a, const auto& b) {
        return widthOf(a) * heightOf(a) < widthOf(b) * heightOf(b);
    });
}

inline drawing::Pt centreOf(const drawing::Polyline& polyline) {
    drawing::Pt sum;
    for (drawing::Pt p : polyline.points)
        sum = {sum.x + p.x, sum.y + p.y};
    const auto n = static_cast<double>(polyline.points.size());
    return {sum.x / n, sum.y / n};
}

} // namespace gangway::test
