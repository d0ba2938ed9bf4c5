// Title block by ISO 7200 with revision table and agreement box above it.
#pragma once

#include "sheets/canvas.hpp"
#include "sheets/wall_view.hpp"

namespace gangway::sheets {

/// ISO 7200 clause 6 (from memory): at most 180 wide, which is the whole drawing space of an upright A4.
inline constexpr double kTitleWidth = 180;
inline constexpr double kTitleHeight = 44.4;
inline constexpr double kStripHeight = 15.6; ///< revision table and agreement box above the title block

struct TitleFields {
    std::string sheet_id;   ///< "E-07"
    std::string sheet_of;   ///< "7 / 12", continuation sheets counted
    std::string title;      ///< "Kitchen, wall A"
    std::string supplement; ///< "continued"
    std::string document_type = "wall elevation, plate set-out";
    std::string paper; ///< "A3"
    double scale = 20; ///< 0: nothing is drawn to scale
};

/// Title block with its lower right corner at `corner`.
void drawTitleBlock(std::vector<Item>& items, Pt corner, const plan::Project& project,
                    const TitleFields& fields);

/// What a page that is cut up needs of it in one row of `width_mm`, at least kLeastStrip, lower right corner
/// at `corner`.
inline constexpr double kLeastStrip = 182;
inline constexpr double kTitleStripHeight = 9.5;
void drawTitleStrip(std::vector<Item>& items, Pt corner, double width_mm, const plan::Project& project,
                    const TitleFields& fields);

/// Revision table (the last two issues; all of them stand on the cover) and agreement box, `corner` being the
/// strip's lower right corner.
void drawRevisions(std::vector<Item>& items, Pt corner, const plan::Plan& plan);
void drawAgreement(std::vector<Item>& items, Pt corner, const WallView& view);

} // namespace gangway::sheets
