// A DXF file of version AC1015 (2000) while it is put together: its tables fill themselves with what the
// entities ask for. Private to export/.
#pragma once

#include "drawing/bounds.hpp"
#include "export/dxf_pairs.hpp"

#include <deque>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace gangway::exporting {

/// Layers beside those of the display list; none of them is plotted.
inline constexpr const char* kDxfViewportLayer = "viewports";
inline constexpr const char* kDxfBoxLayer = "box-centres";
/// The text style of everything, in the drawing face.
inline constexpr const char* kDxfTextStyle = "GANGWAY";

/// A block while its entities are written: *D1, a plate, the model or the paper.
struct DxfBlock {
    std::string name;
    int flags = 0; ///< 1: anonymous, 2: has attributes
    DxfHandle record = 0;
    DxfHandle begin = 0;
    DxfHandle end = 0;
    DxfHandle layout = 0;
    DxfPairs entities;
};

class DxfDocument {
public:
    /// The paper space is a layout of this name and size.
    DxfDocument(const std::string& layout_name, double width_mm, double height_mm);

    DxfHandle newHandle() { return ++last_handle_; }

    DxfBlock& model() { return blocks_[0]; }
    DxfBlock& paper() { return blocks_[1]; }
    /// A further block; its name is made fit and told apart from those already there. The reference stays
    /// good.
    DxfBlock& addBlock(const std::string& name, int flags);
    /// The next *D block.
    DxfBlock& addDimensionBlock();

    const std::string& layoutName() const { return layout_name_; }

    /// These put what is asked for into the tables and return its name there.
    std::string layer(const std::string& name);
    std::string lineType(const drawing::Pen& pen);
    std::string dimensionStyle(double scale);

    /// The file. `shown` is what is in the model, in its mm (low above high: nothing, and the file opens on
    /// the paper); `main_viewport` is the paper's own.
    std::string finished(const drawing::Bounds& shown, DxfHandle main_viewport);

private:
    struct LineTypeRow {
        std::string words;
        std::vector<double> dashes_mm;
    };
    /// The heads of tables and the rows others point at.
    struct Anchors {
        DxfHandle layouts = 0, root = 0, plot_styles = 0, plot_style = 0, text_style = 0;
        DxfHandle model_layout = 0, paper_layout = 0;
    };

    DxfPairs header(const drawing::Bounds& shown) const;
    static DxfPairs classes();
    DxfPairs tables(const drawing::Bounds& shown);
    DxfPairs blocks() const;
    DxfPairs objects(DxfHandle main_viewport);

    DxfHandle tableHead(DxfPairs& out, const char* name, std::size_t rows);
    /// Begins a table's row; 105 is what dimension styles have their handle under.
    void row(DxfPairs& out, const char* type, DxfHandle table, const char* subclass, const std::string& name,
             DxfHandle handle = 0, int handle_code = 5);
    void viewTable(DxfPairs& out, const drawing::Bounds& shown);
    void lineTypeTable(DxfPairs& out);
    void layerTable(DxfPairs& out);
    void styleTable(DxfPairs& out);
    void dimensionStyleTable(DxfPairs& out);
    void blockRecords(DxfPairs& out);
    void layoutObject(DxfPairs& out, const std::string& name, bool model, DxfHandle main_viewport) const;

    std::string layout_name_;
    double width_mm_;
    double height_mm_;
    DxfHandle last_handle_ = 0;
    Anchors anchors_;
    std::deque<DxfBlock> blocks_;
    std::set<std::string> block_names_; ///< lower case: names differ by more than case
    int dimensions_ = 0;
    std::map<std::string, std::string> layers_; ///< lower case to the name as first asked for
    std::map<std::string, LineTypeRow> line_types_;
    std::map<std::string, double> dimension_styles_; ///< name to scale
};

} // namespace gangway::exporting
