// What the sheet parts draw with: rectangles on paper, an ink that appends to a display list, wrapped text.
#pragma once

#include "drawing/drawing.hpp"

#include <string>
#include <vector>

namespace gangway::sheets {

using drawing::Item;
using drawing::Pen;
using drawing::Pt;

/// Text heights of this folder's sheets (drawing-standards 1.3): values, notes, titles and sheet numbers.
inline constexpr double kValueText = 3.5;
inline constexpr double kNoteText = 2.5;
inline constexpr double kTitleText = 5.0;
inline constexpr double kNumberText = 7.0;

/// Pens of one line group, 0.18 / 0.35 / 0.7 with 0.5 for cut outlines (ISO 128-2 series).
inline constexpr Pen kThin{0.18, drawing::LineType::Continuous, drawing::kBlack};
inline constexpr Pen kNarrow{0.25, drawing::LineType::Continuous, drawing::kBlack};
inline constexpr Pen kOutline{0.35, drawing::LineType::Continuous, drawing::kBlack};
inline constexpr Pen kCut{0.5, drawing::LineType::Continuous, drawing::kBlack};
inline constexpr Pen kHeavy{0.7, drawing::LineType::Continuous, drawing::kBlack};
inline constexpr Pen kHidden{0.25, drawing::LineType::Dashed, drawing::kBlack};
inline constexpr Pen kCentre{0.18, drawing::LineType::LongDashDot, drawing::kBlack};
inline constexpr Pen kGhostPen{0.18, drawing::LineType::Continuous, drawing::kGhost};

/// An upright rectangle on paper, mm.
struct Rect {
    double left = 0;
    double bottom = 0;
    double right = 0;
    double top = 0;
    double width() const { return right - left; }
    double height() const { return top - bottom; }
    Pt centre() const { return {(left + right) / 2, (bottom + top) / 2}; }
    Rect grown(double margin_mm) const {
        return {left - margin_mm, bottom - margin_mm, right + margin_mm, top + margin_mm};
    }
    Rect moved(double dx, double dy) const { return {left + dx, bottom + dy, right + dx, top + dy}; }
};

bool overlaps(const Rect& a, const Rect& b);
bool inside(const Rect& inner, const Rect& outer);
Rect united(const Rect& a, const Rect& b);
/// True when the segment a-b has a point in common with the rectangle.
bool crosses(const Rect& rect, Pt a, Pt b);

/// Extent of a text, of one primitive's ink without its line width, and of a list; an empty list is at the
/// origin.
Rect extentOf(const drawing::Text& text);
Rect extentOf(const drawing::Primitive& primitive);
Rect extentOf(const std::vector<Item>& items);

/// Moves every item by (dx, dy) on paper.
void move(std::vector<Item>& items, double dx, double dy);

/// Turns every item by 90 degrees counter-clockwise about (0, 0).
void turnQuarter(std::vector<Item>& items);

/// Puts a picture on a sheet, its own (0, 0) at `origin`, as one of the sheet's views; `placed` is what it
/// draws that has data.
void placePicture(drawing::Sheet& sheet, std::vector<Item> picture, Pt origin, std::string name, double scale,
                  std::vector<drawing::PlacedObject> placed = {});

/// Breaks a text at spaces so that each line is at most `width_mm` wide at this height; a single longer word
/// is broken inside. Empty text gives no line.
std::vector<std::string> wrapped(const std::string& text, double height_mm, double width_mm);

/// From one baseline down to the next: 1.5 heights (ISO 3098-1, b2), more where accents or brackets need it.
double lineDrop(const std::string& upper, const std::string& lower, double height_mm);
/// Height of a paragraph from the top of its first capitals to its last baseline; 0 without lines.
double paragraphHeight(const std::vector<std::string>& lines, double height_mm);

/// Appends primitives to a display list under one layer and id.
class Ink {
public:
    Ink(std::vector<Item>& items, std::string layer, std::string id = {})
        : items_(&items), layer_(std::move(layer)), id_(std::move(id)) {}

    void line(Pt from, Pt to, const Pen& pen);
    void polyline(std::vector<Pt> points, bool closed, const Pen& pen);
    void rect(const Rect& rect, const Pen& pen);
    void circle(Pt centre, double radius_mm, const Pen& pen);
    void arc(Pt centre, double radius_mm, double start_deg, double end_deg, const Pen& pen);
    void fill(std::vector<Pt> outline, drawing::Colour colour);
    void fill(const Rect& rect, drawing::Colour colour);
    void text(drawing::Text text);
    void text(Pt at, const std::string& text, double height_mm, drawing::Align align = drawing::Align::Left);
    /// Lines of a paragraph downwards from the first baseline; returns the y of the last baseline.
    double paragraph(Pt first_baseline, const std::vector<std::string>& lines, double height_mm,
                     drawing::Align align = drawing::Align::Left);

private:
    void add(drawing::Primitive primitive);
    std::vector<Item>* items_;
    std::string layer_;
    std::string id_;
};

/// Corners of a rectangle, counter-clockwise from the lower left.
std::vector<Pt> cornersOf(const Rect& rect);
/// A full circle as a polygon of 32 corners, for fills.
std::vector<Pt> disc(Pt centre, double radius_mm);

} // namespace gangway::sheets
