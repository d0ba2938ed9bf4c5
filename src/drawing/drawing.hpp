// A paper-space display list: everything a sheet shows, in mm on paper, x right and y up from the
// sheet's lower left corner, complete before any writer sees it.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace gangway::drawing {

/// A point on paper, in mm. (Not plan::Vec2: paper and house must not mix.)
struct Pt {
    double x = 0;
    double y = 0;
    bool operator==(const Pt&) const = default;
};

struct Colour {
    std::uint8_t r = 0, g = 0, b = 0;
    bool operator==(const Colour&) const = default;
};
inline constexpr Colour kBlack{0, 0, 0};
inline constexpr Colour kGhost{0x76, 0x76, 0x76}; ///< 4.54:1 on white, the lightest for text
inline constexpr Colour kWhite{255, 255, 255};

/// Line types by their ISO 128-2 number; dash lengths are multiples of the line's own width.
enum class LineType {
    Continuous = 1,
    Dashed = 2,
    DashedSpaced = 3,
    LongDashDot = 4,
    LongDashDoubleDot = 5,
    Dotted = 7,
    DashDot = 10,
    DashDoubleDot = 12
};

/// Widths are from the ISO 128-2 series 0.13 0.18 0.25 0.35 0.5 0.7 1.0 only.
struct Pen {
    double width_mm = 0.25;
    LineType type = LineType::Continuous;
    Colour colour = kBlack;
    bool operator==(const Pen&) const = default;
};

struct Line {
    Pt from, to;
    Pen pen;
};
struct Polyline {
    std::vector<Pt> points;
    bool closed = false;
    Pen pen;
};
/// Counter-clockwise from start to end, degrees from +x. A full circle is 0 to 360.
struct Arc {
    Pt centre;
    double radius_mm = 0;
    double start_deg = 0;
    double end_deg = 360;
    Pen pen;
};
/// Filled outline, even-odd with its holes; no stroke.
struct Fill {
    std::vector<Pt> outline;
    std::vector<std::vector<Pt>> holes;
    Colour colour;
};

enum class Align { Left, Centre, Right };
/// One line of text on its baseline. `height_mm` is the height of a capital H (ISO 3098-1).
struct Text {
    Pt at;
    std::string text; ///< UTF-8
    double height_mm = 3.5;
    Align align = Align::Left;
    double turn_deg = 0; ///< counter-clockwise; vertical dimensions are +90
    Colour colour = kBlack;
    /// White box under the text, so that it stays readable over lines.
    bool knock_out = false;
};
inline constexpr double kKnockOutMargin_mm = 0.5; ///< the white box reaches this far past the text's own

/// A dimension laid out completely, keeping what it measures: writers that know dimensions use
/// `measured_mm`, the others draw the parts.
struct Dimension {
    enum class Kind { Linear, Running, Height };
    Kind kind = Kind::Linear;
    double measured_mm = 0; ///< real mm, as printed
    std::string id;         ///< what it belongs to: plate or opening id
    Pt from, to;            ///< the measured points on paper
    std::vector<Line> lines;
    std::vector<Arc> arcs;
    std::vector<Text> texts;
};

using Primitive = std::variant<Line, Polyline, Arc, Fill, Text, Dimension>;

/// What the id of an item begins with that leads to another sheet: "sheet:E-07" (links in a PDF, clicks).
inline constexpr std::string_view kLeadsTo = "sheet:";

/// A primitive with the layer it is on and the object it shows (for SVG data-id and clicks).
struct Item {
    std::string layer; ///< "frame", "building", "openings", "furniture", "plates", "dimensions", "text",
                       ///< "symbols", "notes"
    std::string id;
    Primitive primitive;
    std::size_t view = 0; ///< 0: of the paper; else it shows what views[view - 1] of its sheet does
};

/// A picture of real things on a sheet, at 1:scale around its own (0, 0): what writers with a model space
/// bring back to true size.
struct View {
    std::string name; ///< "Kitchen, wall A"
    double scale = 20;
    Pt origin; ///< where its (0, 0) is on paper: a wall's left corner at FFL, or the house's zero point
};

/// A plate or luminaire that items of a view draw, for writers that make objects with data of it.
struct PlacedObject {
    std::string layer;                ///< of those items
    std::string id;                   ///< of those items
    std::string tag;                  ///< as printed
    Pt at_mm;                         ///< its middle: real mm around the view's (0, 0)
    double height_mm = 0;             ///< of its middle above FFL
    std::optional<double> set_out_mm; ///< of its middle along its wall; not set: it is on no wall
    std::vector<Pt> boxes_mm;         ///< where is drilled, as `at_mm`; only in views of walls
    std::size_t view = 0;             ///< as an item's
};

struct Sheet {
    std::string number;    ///< "E-07"
    std::string title;     ///< bookmark: "Kitchen, wall A"
    std::string group;     ///< what bookmarks of one kind stand under: "Wall elevations"; empty: nothing
    std::string file_stem; ///< "E-07-kitchen-A"
    double width_mm = 420;
    double height_mm = 297;
    double scale = 20; ///< 1:scale
    std::vector<View> views;
    std::vector<Item> items;
    std::vector<PlacedObject> placed;
};

struct Drawing {
    std::string title;
    std::string subject;
    std::string author;
    std::string date; ///< YYYY-MM-DD; the PDF's creation date, never the clock
    std::vector<Sheet> sheets;
};

/// Width and extent of text in the drawing face, from its own metrics, in mm.
struct TextBox {
    double width_mm = 0;
    double ascent_mm = 0;
    double descent_mm = 0;
};
TextBox measure(const std::string& text, double height_mm);

/// Corners of a text's box on paper, turned with it, with `margin_mm` around.
std::vector<Pt> textCorners(const Text& text, double margin_mm = 0);

/// Path of the drawing face (osifont) and of the screen face (Inter Regular), searched in assets/fonts and
/// the system's font folders.
std::string drawingFacePath();
std::string screenFacePath();

/// font size (em) in mm for a capital height in mm: height / (capHeight / unitsPerEm) of the drawing face.
double emSize(double height_mm);

/// Dash pattern in mm for a line of this pen and length, stretched so that both ends carry a dash
/// (ISO 128-2; drawing-standards section 1.1: n = max(2, round((L+3d)/15d))). Empty: continuous.
std::vector<double> dashPattern(const Pen& pen, double length_mm);

/// Every item as one line of text, for exact golden tests.
std::string dump(const Sheet& sheet);

/// Pairs of texts whose boxes overlap, as indexes into sheet.items (Dimension texts count); empty on a good
/// sheet.
std::vector<std::pair<std::size_t, std::size_t>> touchingTexts(const Sheet& sheet, double margin_mm = 0);

} // namespace gangway::drawing
