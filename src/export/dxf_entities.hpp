// Primitives of the display list as DXF entities of one block: the model, the paper, a plate, a dimension.
// Private to export/.
#pragma once

#include "export/dxf_document.hpp"

namespace gangway::exporting {

/// From paper mm to where entities stand: (p - origin) * scale + shift. Heights of text and lengths of
/// dashes take the scale too, line weights stay those of the paper.
struct DxfFrame {
    drawing::Pt origin;
    double scale = 1;
    drawing::Pt shift;
    drawing::Pt at(drawing::Pt p) const {
        return {(p.x - origin.x) * scale + shift.x, (p.y - origin.y) * scale + shift.y};
    }
};

/// The index of group 62 nearest to a colour, for readers without true colours. Only 1 to 9 and the greys from
/// 250 to 255 of the format's table, from memory.
int nearestIndex(drawing::Colour colour);

/// A line weight of group 370: the nearest that the format has, in hundredths of a mm (DXF reference, common
/// group codes).
int lineWeight(double width_mm);

/// Tags of attributes with their values or prompts, in the order they are written.
using DxfAttributes = std::vector<std::pair<std::string, std::string>>;

/// Writes into one block of a document, both of which must outlive it.
class DxfInk {
public:
    DxfInk(DxfDocument& document, DxfBlock& block, const DxfFrame& frame)
        : document_(document), block_(block), out_(block.entities), frame_(frame) {}

    /// Everything from the next call on belongs to this display-list layer.
    void setLayer(const std::string& layer) { layer_ = document_.layer(layer); }

    void operator()(const drawing::Line& line);
    void operator()(const drawing::Polyline& line);
    void operator()(const drawing::Arc& arc);
    void operator()(const drawing::Fill& fill);
    void operator()(const drawing::Text& text);
    /// A DIMENSION with its parts in a *D block: linear, or an ordinate from the row's datum.
    void operator()(const drawing::Dimension& dimension);

    /// A block at a point that is already in the block's own mm; its values, by tag, are attributes that
    /// don't show.
    void insert(const DxfBlock& inserted, drawing::Pt at, const DxfAttributes& values);
    /// What a block's inserts are asked for: tags with their prompts.
    void attributeDefinitions(const DxfAttributes& prompts);
    /// A window on the model: the paper rectangle and the model's point in its middle, `number` from 1.
    DxfHandle viewport(int number, const drawing::Bounds& on_paper, drawing::Pt model_middle, double scale);

private:
    DxfHandle begin(const char* type, const char* subclass, const drawing::Pen* pen, drawing::Colour colour);
    DxfHandle begin(const char* type, const char* subclass, const drawing::Pen& pen);
    void polyline(const std::vector<drawing::Pt>& points, bool closed, const drawing::Pen& pen,
                  bool dashes_run_on);
    void mask(const std::vector<drawing::Pt>& outline);
    void hatch(const drawing::Fill& fill);
    void attributeText(drawing::Pt at, const std::string& words);

    DxfDocument& document_;
    DxfBlock& block_;
    DxfPairs& out_;
    DxfFrame frame_;
    std::string layer_ = "0";
};

} // namespace gangway::exporting
