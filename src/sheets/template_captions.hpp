// What stands over and under a drilling template's marks, and where its arrow has room. Private to sheets/.
#pragma once

#include "sheets/canvas.hpp"

#include <string>
#include <vector>

namespace gangway::sheets {

/// Captions from the cutting line, on all sides.
inline constexpr double kTemplatePad = 1.5;

/// Captions in words: over the marks all but the notes, which stand under them.
struct CaptionTexts {
    std::string tag;
    std::string place; ///< "Kitchen, wall B"
    std::string boxes; ///< "1 box Ø68, 47 deep; plate 81 × 81"
    std::string part;  ///< "part 1 of 2, join at the mark A"; empty: the template is in one piece
    std::string notes;
};

/// Captions set for a width: the tag at the left, as large as it may be, the other lines beside it.
class TemplateCaptions {
public:
    TemplateCaptions() = default;
    /// `part` of `texts` is the longest that will be drawn; `width_mm` is between the cutting lines.
    TemplateCaptions(const CaptionTexts& texts, double width_mm);

    double above_mm() const { return above_mm_; } ///< from the cutting line to the marks
    double below_mm() const { return below_mm_; }
    /// On a template with this cutting line; `part` is this piece's.
    void draw(std::vector<Item>& items, const std::string& id, const Rect& cell,
              const std::string& part) const;

private:
    struct Line {
        std::string words;
        double text_mm = 0;
        double baseline_mm = 0; ///< under the top of the captions
    };
    std::vector<Line> beside(const std::string& part) const;

    CaptionTexts texts_;
    std::vector<std::string> tag_;
    std::vector<std::string> notes_;
    double tag_mm_ = 0;
    double beside_mm_ = 0; ///< from the left of the captions to what stands beside the tag
    double room_mm_ = 0;   ///< for it
    double above_mm_ = 0;
    double below_mm_ = 0;
};

/// True when no mark comes nearer to the place than words should stand to a line.
bool isFree(const std::vector<Item>& marks, const Rect& place);
/// The lower left corner of a place of this size in the window that no mark touches, as near to its upper
/// right corner as there is one; that corner where all is full.
Pt freePlace(const std::vector<Item>& marks, const Rect& window, double width_mm, double height_mm);

} // namespace gangway::sheets
