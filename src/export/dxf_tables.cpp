// The TABLES section: layers, line types, text and dimension styles, and what every file of this version has.
#include "drawing/drawing.hpp"
#include "export/dxf_document.hpp"

#include <algorithm>
#include <cmath>
#include <filesystem>

namespace gangway::exporting {

using drawing::Bounds;
using drawing::Pt;

namespace {

constexpr double kScreenAspect = 1.6;
constexpr int kNoPlot = 0;
constexpr int kDefaultWeight = -3;

void endTable(DxfPairs& out) {
    out.text(0, "ENDTAB");
}

bool plotted(const std::string& layer) {
    return layer != kDxfViewportLayer && layer != kDxfBoxLayer;
}

} // namespace

DxfPairs DxfDocument::tables(const Bounds& shown) {
    DxfPairs out;
    viewTable(out, shown);
    lineTypeTable(out);
    layerTable(out);
    styleTable(out);
    for (const char* empty : {"VIEW", "UCS"}) {
        tableHead(out, empty, 0);
        endTable(out);
    }
    const DxfHandle applications = tableHead(out, "APPID", 1);
    row(out, "APPID", applications, "AcDbRegAppTableRecord", "ACAD");
    endTable(out);
    dimensionStyleTable(out);
    blockRecords(out);
    return out;
}

DxfHandle DxfDocument::tableHead(DxfPairs& out, const char* name, std::size_t rows) {
    const DxfHandle handle = newHandle();
    out.text(0, "TABLE");
    out.text(2, name);
    out.handle(5, handle);
    out.handle(330, 0);
    out.text(100, "AcDbSymbolTable");
    out.integer(70, static_cast<long long>(rows));
    return handle;
}

void DxfDocument::row(DxfPairs& out, const char* type, DxfHandle table, const char* subclass,
                      const std::string& name, DxfHandle handle, int handle_code) {
    out.text(0, type);
    out.handle(handle_code, handle != 0 ? handle : newHandle());
    out.handle(330, table);
    out.text(100, "AcDbSymbolTableRecord");
    out.text(100, subclass);
    out.text(2, name);
    if (std::string_view(subclass) != "AcDbBlockTableRecord") out.integer(70, 0);
}

void DxfDocument::viewTable(DxfPairs& out, const Bounds& shown) {
    const bool empty = shown.low.x > shown.high.x;
    const double width = empty ? width_mm_ : shown.high.x - shown.low.x;
    const double height = empty ? height_mm_ : shown.high.y - shown.low.y;
    const Pt middle = empty ? Pt{} : Pt{(shown.low.x + shown.high.x) / 2, (shown.low.y + shown.high.y) / 2};
    const DxfHandle table = tableHead(out, "VPORT", 1);
    row(out, "VPORT", table, "AcDbViewportTableRecord", "*Active");
    out.flat(10, {0, 0});
    out.flat(11, {1, 1});
    out.flat(12, middle);
    out.flat(13, {0, 0});
    out.flat(14, {10, 10});
    out.flat(15, {10, 10});
    out.point(16, {0, 0}, 1);
    out.point(17, {0, 0});
    out.real(40, std::max({height, width / kScreenAspect, 1.0}) * 1.05);
    out.real(41, kScreenAspect);
    out.real(42, 50);
    for (const int zero : {43, 44, 50, 51})
        out.real(zero, 0);
    out.integer(71, 0);
    out.integer(72, 1000);
    out.integer(73, 1);
    out.integer(74, 3);
    for (const int zero : {75, 76, 77, 78})
        out.integer(zero, 0);
    endTable(out);
}

void DxfDocument::lineTypeTable(DxfPairs& out) {
    const DxfHandle table = tableHead(out, "LTYPE", line_types_.size() + 3);
    const auto add = [&](const std::string& name, const LineTypeRow& type) {
        row(out, "LTYPE", table, "AcDbLinetypeTableRecord", name);
        out.text(3, type.words);
        out.integer(72, 65);
        out.integer(73, static_cast<long long>(type.dashes_mm.size()));
        double length = 0;
        for (const double dash : type.dashes_mm)
            length += dash;
        out.real(40, length);
        for (std::size_t i = 0; i < type.dashes_mm.size(); ++i) {
            out.real(49, i % 2 == 0 ? type.dashes_mm[i] : -type.dashes_mm[i]);
            out.integer(74, 0);
        }
    };
    for (const char* always : {"ByBlock", "ByLayer", "Continuous"})
        add(always, {});
    for (const auto& [name, type] : line_types_)
        add(name, type);
    endTable(out);
}

void DxfDocument::layerTable(DxfPairs& out) {
    const DxfHandle table = tableHead(out, "LAYER", layers_.size());
    for (const auto& [key, name] : layers_) {
        row(out, "LAYER", table, "AcDbLayerTableRecord", name);
        out.integer(62, 7);
        out.text(6, "Continuous");
        if (!plotted(name)) out.integer(290, kNoPlot);
        out.integer(370, kDefaultWeight);
        out.handle(390, anchors_.plot_style);
    }
    endTable(out);
}

void DxfDocument::styleTable(DxfPairs& out) {
    const DxfHandle table = tableHead(out, "STYLE", 2);
    const auto add = [&](const char* name, DxfHandle handle, const std::string& font, double last_height) {
        row(out, "STYLE", table, "AcDbTextStyleTableRecord", name, handle);
        out.real(40, 0);
        out.real(41, 1);
        out.real(50, 0);
        out.integer(71, 0);
        out.real(42, last_height);
        out.text(3, font);
        out.text(4, "");
    };
    add("Standard", newHandle(), "txt", 2.5);
    add(kDxfTextStyle, anchors_.text_style,
        dxfText(std::filesystem::path(drawing::drawingFacePath()).filename().string()), 3.5);
    endTable(out);
}

void DxfDocument::dimensionStyleTable(DxfPairs& out) {
    constexpr int kThin = 18; // hundredths of a mm
    const DxfHandle table = tableHead(out, "DIMSTYLE", dimension_styles_.size() + 1);
    out.text(100, "AcDbDimStyleTable");
    const auto add = [&](const std::string& name, double scale) {
        row(out, "DIMSTYLE", table, "AcDbDimStyleTableRecord", name, 0, 105);
        out.text(3, "");
        out.text(4, "");
        out.real(40, scale); // all sizes below are mm on paper
        out.real(41, 2.5);
        out.real(42, 1);    // gap to the feature
        out.real(43, 7);    // from row to row
        out.real(44, 2);    // extension line past the row
        out.real(45, 0.5);  // values are rounded to
        out.real(140, 3.5); // text
        out.real(142, 1.5); // oblique strokes instead of arrows
        out.real(147, 1);
        out.integer(73, 0); // text turns with its line,
        out.integer(74, 0);
        out.integer(77, 1);   // above it
        out.integer(78, 8);   // without trailing zeros
        out.integer(172, 1);  // line between the extension lines always
        out.integer(271, 1);  // decimals
        out.integer(277, 2);  // decimal numbers
        out.integer(278, 46); // with a point
        out.handle(340, anchors_.text_style);
        out.integer(371, kThin);
        out.integer(372, kThin);
    };
    add("Standard", 1);
    for (const auto& [name, scale] : dimension_styles_)
        add(name, scale);
    endTable(out);
}

void DxfDocument::blockRecords(DxfPairs& out) {
    const DxfHandle table = tableHead(out, "BLOCK_RECORD", blocks_.size());
    for (const DxfBlock& block : blocks_) {
        row(out, "BLOCK_RECORD", table, "AcDbBlockTableRecord", block.name, block.record);
        out.handle(340, block.layout);
    }
    endTable(out);
}

} // namespace gangway::exporting
