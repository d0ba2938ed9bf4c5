// Sheets with pictures seen from above and what belongs to them: heading, footnote, parts of the legend in
// the columns that are left, continuation sheets, title blocks. Private to sheets/.
#pragma once

#include "sheets/block.hpp"
#include "sheets/packing.hpp"
#include "sheets/sheet_layout.hpp"
#include "sheets/title_block.hpp"

#include <string>
#include <vector>

namespace gangway::sheets {

/// A heading with what stands under it.
struct SheetPart {
    std::string title;
    std::vector<Block> blocks;
};

/// A picture at its place on the sheet: its (0, 0) at `origin`.
struct PlacedPicture {
    std::string name;
    double scale = 50;
    std::vector<Item> items;
    Pt origin;
    std::vector<drawing::PlacedObject> placed;
};

/// Pictures that share a sheet.
struct PictureSheet {
    std::vector<PlacedPicture> pictures;
    double bottom = 0; ///< their lowest ink; the footnote stands under it
};

/// A subject on its sheet, or several: further pictures and what its parts have no room for follow.
struct PlanPage {
    std::string number; ///< "S-01"; further sheets are "S-01-2"
    std::string title;  ///< "Ground floor, switching"
    std::string under;  ///< the line under the heading
    std::string document_type;
    double scale = 50;
    enum class Marks { ScaleAndNorth, None } marks = Marks::ScaleAndNorth; ///< at the right of the heading
    std::vector<PictureSheet> sheets;                                      ///< one at least
    std::vector<SheetPart> parts;
    bool asked_for = true; ///< false: only its sheets are counted
};

class PlanPages {
public:
    PlanPages(const plan::Plan& plan, const Paper& paper)
        : plan_(plan), layout_(layoutOn(paper, Arrangement::SideColumn)) {}

    const Layout& layout() const { return layout_; }
    /// The view's place under its heading and over its footnote.
    Rect pictureRoom() const;
    /// The same with the place beside the title block, for several pictures.
    PackRoom packRoom() const;
    /// A picture in the middle of the view's width, right under the heading; `extent` is that of its items.
    PictureSheet centred(PlacedPicture picture, const Rect& extent) const;

    void add(PlanPage page);
    /// How many sheets it takes, with all its parts.
    std::size_t sheetsTaken(const PlanPage& page) const;
    /// The sheets in the order they were added, each with its number of all. Empties this.
    drawing::Drawing finished(std::string subject);

private:
    struct Page {
        drawing::Sheet sheet;
        TitleFields fields;
        bool asked_for = true;
    };

    std::vector<Page> drawn(PlanPage subject) const;
    void drawPictures(Page& page, const PlanPage& subject, PictureSheet sheet,
                      std::vector<SheetPart>& parts) const;
    Page emptyPage(const PlanPage& page, int part) const;
    void drawHeading(std::vector<Item>& items, const PlanPage& page) const;
    void drawStrip(std::vector<Item>& items) const;
    std::vector<Rect> columnsBeside(double bottom) const;
    std::vector<Rect> widthColumns(double top) const;
    void place(std::vector<Item>& items, std::vector<SheetPart>& parts, std::vector<Rect> columns) const;

    const plan::Plan& plan_;
    Layout layout_;
    std::vector<Page> pages_;
};

/// A bar of five metres, or of two or one where `width_mm` has no room for them or the scale is large, its
/// upper right corner given; and an arrow to the north.
void drawPlanScaleBar(std::vector<Item>& items, Pt upper_right, double scale, double width_mm);
void drawNorthArrow(Ink& ink, Pt foot);

} // namespace gangway::sheets
