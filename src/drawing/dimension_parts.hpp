// What every kind of dimension on a sheet is drawn with: one pen, one terminator. Private to drawing/.
#pragma once

#include "drawing/dimensions.hpp"

namespace gangway::drawing {

inline constexpr Pen kThinPen{0.18, LineType::Continuous, kBlack};
inline constexpr Pen kStrokePen{0.35, LineType::Continuous, kBlack};
inline constexpr double kStrokeLength_mm = 3.5;
inline constexpr double kExtensionPast_mm = 2; ///< past the dimension line (ISO 129-1, extract)
inline constexpr double kOriginRadius_mm =
    1.5; ///< open circle of about 3 at a running origin (ISO 129-1, extract)

/// The 45 degree stroke where an extension line crosses a dimension line that is read at `reading_deg`.
Line dimensionStroke(Pt crossing, double reading_deg);

} // namespace gangway::drawing
