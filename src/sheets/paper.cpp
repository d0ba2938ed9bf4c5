#include "sheets/paper.hpp"

#include <array>
#include <cmath>

namespace gangway::sheets {

namespace {

constexpr std::array<Paper, 4> kPapers{{
    {"A4", 210, 297, 4, 6, true},
    {"A3", 420, 297, 8, 6, false},
    {"A2", 594, 420, 12, 8, false},
    {"A1", 841, 594, 16, 12, false},
}};

constexpr double kFilingEdge = 20;
constexpr double kBorder = 10;
constexpr double kGridStrip = 5;  ///< width of the strip with letters, outside the frame
constexpr double kGridField = 50; ///< counted from the sheet's axes of symmetry
constexpr double kMarkInside = 5; ///< centring mark inside the frame; 10 long with the strip

/// Letters down the side, without I and O, which read as figures.
std::string gridLetter(int index) {
    static constexpr std::string_view kLetters = "ABCDEFGHJKLMNPQRSTUVWXYZ";
    return std::string(1, kLetters[static_cast<std::size_t>(index) % kLetters.size()]);
}

void centringMarks(Ink& ink, const Paper& paper, const Rect& frame) {
    const double x = paper.width_mm / 2;
    const double y = paper.height_mm / 2;
    ink.line({x, frame.bottom - kGridStrip}, {x, frame.bottom + kMarkInside}, kHeavy);
    ink.line({x, frame.top - kMarkInside}, {x, frame.top + kGridStrip}, kHeavy);
    ink.line({frame.left - kGridStrip, y}, {frame.left + kMarkInside, y}, kHeavy);
    ink.line({frame.right - kMarkInside, y}, {frame.right + kGridStrip, y}, kHeavy);
}

/// Middle of grid field `index` of `count` along an axis, clipped to the frame.
double fieldMiddle(int index, int count, double axis, double low, double high) {
    const double from = std::max(low, axis + (index - count / 2.0) * kGridField);
    const double to = std::min(high, axis + (index + 1 - count / 2.0) * kGridField);
    return (from + to) / 2;
}

void gridReferences(Ink& ink, const Paper& paper, const Rect& frame) {
    const Rect strip = frame.grown(kGridStrip);
    const double half = kValueText / 2;
    for (int i = 0; i < paper.fields_across; ++i) {
        const double x = fieldMiddle(i, paper.fields_across, paper.width_mm / 2, frame.left, frame.right);
        const double tick = paper.width_mm / 2 + (i + 1 - paper.fields_across / 2.0) * kGridField;
        const std::string figure = std::to_string(i + 1);
        ink.text({x, frame.top + kGridStrip / 2 - half}, figure, kValueText, drawing::Align::Centre);
        const bool has_tick = i + 1 < paper.fields_across && std::abs(tick - paper.width_mm / 2) > 1;
        if (has_tick) ink.line({tick, frame.top}, {tick, strip.top}, kOutline);
        if (paper.upright) continue;
        ink.text({x, strip.bottom + kGridStrip / 2 - half}, figure, kValueText, drawing::Align::Centre);
        if (has_tick) ink.line({tick, strip.bottom}, {tick, frame.bottom}, kOutline);
    }
    for (int i = 0; i < paper.fields_up; ++i) {
        const double y = fieldMiddle(i, paper.fields_up, paper.height_mm / 2, frame.bottom, frame.top);
        const double tick = paper.height_mm / 2 + (i + 1 - paper.fields_up / 2.0) * kGridField;
        const std::string letter = gridLetter(paper.fields_up - 1 - i);
        ink.text({frame.right + kGridStrip / 2, y - half}, letter, kValueText, drawing::Align::Centre);
        const bool has_tick = i + 1 < paper.fields_up && std::abs(tick - paper.height_mm / 2) > 1;
        if (has_tick) ink.line({frame.right, tick}, {strip.right, tick}, kOutline);
        if (paper.upright) continue;
        ink.text({frame.left - kGridStrip / 2, y - half}, letter, kValueText, drawing::Align::Centre);
        if (has_tick) ink.line({strip.left, tick}, {frame.left, tick}, kOutline);
    }
}

} // namespace

std::optional<Paper> findPaper(std::string_view id) {
    for (const Paper& paper : kPapers)
        if (paper.id == id) return paper;
    return std::nullopt;
}

std::string paperNames() {
    std::string names;
    for (const Paper& paper : kPapers)
        names += (names.empty() ? "" : ", ") + std::string(paper.id);
    return names;
}

Rect frameOf(const Paper& paper) {
    return {kFilingEdge, kBorder, paper.width_mm - kBorder, paper.height_mm - kBorder};
}

std::vector<Item> sheetFrame(const Paper& paper) {
    std::vector<Item> items;
    Ink ink(items, "frame");
    const Rect frame = frameOf(paper);
    ink.rect(frame, kHeavy);
    ink.rect(frame.grown(kGridStrip), kThin);
    centringMarks(ink, paper, frame);
    gridReferences(ink, paper, frame);
    return items;
}

} // namespace gangway::sheets
