// Dimension layout by ISO 129-1: running rows along one datum, height columns, and single linear ones.
#pragma once

#include "drawing/drawing.hpp"

#include <expected>
#include <string_view>

namespace gangway::drawing {

/// One mark of a running row: where its extension line starts on paper, its position along the row, and the
/// real value printed.
struct RunningMark {
    Pt from;             ///< the feature
    double at_mm = 0;    ///< paper x (horizontal rows) or y (vertical columns)
    double value_mm = 0; ///< real mm from the datum, printed
    std::string id;
};

/// The one place numbers become text: real mm as the plan's units say. Millimetres: nearest 0.5, no
/// trailing zero ("1073", "801.5"). Centimetres and metres: the same step in those units ("107.3", "1.073";
/// metres keep three decimals). FeetInches: nearest 1/16, drawing-standards section 1.9. Halves round away
/// from zero.
enum class Units { Millimetres, Centimetres, Metres, FeetInches };
std::string number(double value_mm, Units units = Units::Millimetres);

/// Reads what `number` prints, and feet-inches as people write them (`5' 6 7/16"`, `66 7/16"`): real mm.
/// A bare number is in `bare` (inches for FeetInches). The error is a sentence saying what could not be read.
std::expected<double, std::string> parseNumber(std::string_view text, Units bare = Units::Millimetres);

struct RunningStyle {
    double text_height_mm = 3.5;
    double past_mm = 2;      ///< extension line past the row
    double min_pitch_mm = 0; ///< room a value needs; 0: from the text height
    Units units = Units::Millimetres;
    double origin_value_mm = 0; ///< what stands at the origin circle, where it isn't 0
    /// False: the datum is out of the picture. The row runs in from its origin without circle or value.
    bool origin_shown = true;
};

/// A horizontal running row at paper y, origin circle at `origin_x`: values are written turned by 90 degrees
/// in line with the extension lines, spread sideways (with kinked extension lines) where they would touch.
/// The values stand on the side of the row that the features are not on (below it, with features above).
/// Marks at one place with one value become one, from the farthest feature, their ids joined by spaces; a
/// mark at the origin gives the origin its extension line. Returns the items, the row first and then a
/// Dimension a value from left to right, and sets `bottom_y` to the outermost ink on the values' side.
std::vector<Item> runningRow(double origin_x, double row_y, std::vector<RunningMark> marks,
                             const RunningStyle& style, const std::string& layer, double* bottom_y = nullptr);

/// A vertical column of heights at paper x left of the drawing, origin at `origin_y`; values are horizontal,
/// on the side the features are not on (left of the column, with features at its right), spread upwards and
/// downwards as in a row. Sets `left_x` to the outermost ink on the values' side.
std::vector<Item> runningColumn(double column_x, double origin_y, std::vector<RunningMark> marks,
                                const RunningStyle& style, const std::string& layer,
                                double* left_x = nullptr);

/// A single linear dimension between two points, the line at `offset_mm` to the left of from->to
/// (negative: right). Text inside when it fits, else beyond the end (ISO 129-1; 10 mm rule). Text reads from
/// the bottom or, on vertical lines, from the right.
Dimension linear(Pt from, Pt to, double offset_mm, double measured_mm, double text_height_mm,
                 const std::string& id, bool auxiliary_in_brackets = false, Units units = Units::Millimetres);

} // namespace gangway::drawing
