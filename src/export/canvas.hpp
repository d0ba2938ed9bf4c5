// The few strokes every writer implements, and the one walk over a sheet that calls them.
#pragma once

#include "drawing/bounds.hpp"
#include "drawing/drawing.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gangway::exporting {

/// What a format must be able to draw; paper mm, y up. Calls come in the order of the display list.
class Canvas {
public:
    virtual ~Canvas() = default;

    /// Everything up to endLayer() is on this drawing layer. A layer may come up again later; never nested.
    virtual void beginLayer(const std::string& layer) = 0;
    virtual void endLayer() = 0;
    /// What comes next shows this object ("" for none).
    virtual void object(const std::string& id) = 0;

    /// Straight strokes through the points; `pattern_mm` empty: continuous. Butt caps.
    virtual void stroke(const std::vector<drawing::Pt>& points, bool closed, const drawing::Pen& pen,
                        const std::vector<double>& pattern_mm) = 0;
    virtual void arc(const drawing::Arc& arc, const std::vector<double>& pattern_mm) = 0;
    virtual void fill(const drawing::Fill& fill) = 0;
    /// Without the knock-out box, which the walk has filled before.
    virtual void text(const drawing::Text& text) = 0;
};

/// Draws a sheet, or only what may show in `window`, on a canvas: opens layers, takes dimensions apart, lays
/// dash patterns, clears the paper behind knock-out texts in `paper` colour.
void walk(const drawing::Sheet& sheet, Canvas& canvas, drawing::Colour paper = drawing::kWhite,
          const std::optional<drawing::Bounds>& window = std::nullopt);

} // namespace gangway::exporting
