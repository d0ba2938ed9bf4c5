#include "export/dxf_document.hpp"

#include "drawing/lines.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>

namespace gangway::exporting {

using drawing::Bounds;
using drawing::Pt;

namespace {

constexpr int kMillimetres = 4; // $INSUNITS

std::string lowerCase(std::string text) {
    std::ranges::transform(text, text.begin(),
                           [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
}

const char* wordFor(drawing::LineType type) {
    using enum drawing::LineType;
    switch (type) {
    case Continuous:
        return "continuous";
    case Dashed:
        return "dashed";
    case DashedSpaced:
        return "dashed spaced";
    case LongDashDot:
        return "long-dashed dotted";
    case LongDashDoubleDot:
        return "long-dashed double-dotted";
    case Dotted:
        return "dotted";
    case DashDot:
        return "dashed dotted";
    case DashDoubleDot:
        return "dashed double-dotted";
    }
    return "";
}

struct ClassRow {
    const char* record;
    const char* cpp;
    const char* application;
    int proxy_flags;
    int entity;
};
// What is not in every program by itself (DXF reference, CLASSES; values as ezdxf 0.18 writes them).
constexpr ClassRow kClasses[] = {
    {"ACDBDICTIONARYWDFLT", "AcDbDictionaryWithDefault", "ObjectDBX Classes", 0, 0},
    {"ACDBPLACEHOLDER", "AcDbPlaceHolder", "ObjectDBX Classes", 0, 0},
    {"LAYOUT", "AcDbLayout", "ObjectDBX Classes", 0, 0},
    {"WIPEOUTVARIABLES", "AcDbWipeoutVariables", "WipeOut", 0, 0},
    {"WIPEOUT", "AcDbWipeout", "WipeOut", 127, 1},
};

void section(DxfPairs& file, const char* name, const DxfPairs& body) {
    file.text(0, "SECTION");
    file.text(2, name);
    file.append(body);
    file.text(0, "ENDSEC");
}

} // namespace

DxfDocument::DxfDocument(const std::string& layout_name, double width_mm, double height_mm)
    : layout_name_(dxfName(layout_name)), width_mm_(width_mm), height_mm_(height_mm) {
    // The model has a layout of its own, and names differ by more than case.
    if (lowerCase(layout_name_) == "model") layout_name_ += " sheet";
    for (DxfHandle* handle : {&anchors_.root, &anchors_.layouts, &anchors_.plot_styles, &anchors_.plot_style,
                              &anchors_.text_style, &anchors_.model_layout, &anchors_.paper_layout})
        *handle = newHandle();
    for (const auto& [name, layout] :
         {std::pair{"*Model_Space", anchors_.model_layout}, std::pair{"*Paper_Space", anchors_.paper_layout}})
        blocks_.push_back({name, 0, newHandle(), newHandle(), newHandle(), layout, {}});
    layer("0");
    layer(kDxfViewportLayer);
}

DxfBlock& DxfDocument::addBlock(const std::string& name, int flags) {
    const std::string wanted = dxfName(name);
    std::string free = wanted;
    for (int i = 2; !block_names_.insert(lowerCase(free)).second; ++i)
        free = fmt::format("{} {}", wanted, i);
    return blocks_.emplace_back(DxfBlock{free, flags, newHandle(), newHandle(), newHandle(), 0, {}});
}

DxfBlock& DxfDocument::addDimensionBlock() {
    constexpr int kAnonymous = 1;
    return blocks_.emplace_back(DxfBlock{
        fmt::format("*D{}", ++dimensions_), kAnonymous, newHandle(), newHandle(), newHandle(), 0, {}});
}

std::string DxfDocument::layer(const std::string& name) {
    const std::string fit = dxfName(name);
    return layers_.emplace(lowerCase(fit), fit).first->second;
}

std::string DxfDocument::lineType(const drawing::Pen& pen) {
    const std::vector<double> dashes = drawing::dashes(pen);
    if (dashes.empty()) return "Continuous";
    const std::string name =
        fmt::format("ISO{:02}-{:03.0f}", static_cast<int>(pen.type), std::round(pen.width_mm * 100));
    line_types_.emplace(
        name, LineTypeRow{fmt::format("{}, for lines {:g} wide", wordFor(pen.type), pen.width_mm), dashes});
    return name;
}

std::string DxfDocument::dimensionStyle(double scale) {
    const std::string name = dxfName(fmt::format("GANGWAY-{:g}", scale));
    dimension_styles_.emplace(name, scale);
    return name;
}

std::string DxfDocument::finished(const Bounds& shown, DxfHandle main_viewport) {
    // Tables and objects take handles too: the header, which says the next free one, comes last.
    const DxfPairs table_section = tables(shown);
    const DxfPairs object_section = objects(main_viewport);
    DxfPairs entities;
    entities.append(blocks_[0].entities);
    entities.append(blocks_[1].entities);
    DxfPairs file;
    section(file, "HEADER", header(shown));
    section(file, "CLASSES", classes());
    section(file, "TABLES", table_section);
    section(file, "BLOCKS", blocks());
    section(file, "ENTITIES", entities);
    section(file, "OBJECTS", object_section);
    file.text(0, "EOF");
    return file.bytes();
}

DxfPairs DxfDocument::header(const Bounds& shown) const {
    const bool empty = shown.low.x > shown.high.x;
    DxfPairs out;
    const auto name = [&](const char* variable) { out.text(9, variable); };
    const auto whole = [&](const char* variable, int value, int code = 70) {
        name(variable);
        out.integer(code, value);
    };
    const auto real = [&](const char* variable, double value) {
        name(variable);
        out.real(40, value);
    };
    const auto words = [&](const char* variable, int code, const char* value) {
        name(variable);
        out.text(code, value);
    };
    words("$ACADVER", 1, "AC1015");
    words("$DWGCODEPAGE", 3, "ANSI_1252");
    name("$INSBASE");
    out.point(10, {});
    name("$EXTMIN");
    out.point(10, empty ? Pt{} : shown.low);
    name("$EXTMAX");
    out.point(10, empty ? Pt{} : shown.high);
    whole("$FILLMODE", 1);
    whole("$MIRRTEXT", 0);
    // Dashes in the model carry the view's scale themselves (dxf_entities.cpp), so no viewport may scale
    // them again.
    real("$LTSCALE", 1);
    whole("$PSLTSCALE", 0);
    whole("$ATTMODE", 1);
    words("$TEXTSTYLE", 7, kDxfTextStyle);
    words("$CLAYER", 8, "0");
    words("$CELTYPE", 6, "ByLayer");
    whole("$CECOLOR", 256, 62);
    real("$CELTSCALE", 1);
    whole("$LUNITS", 2);
    whole("$LUPREC", 1);
    whole("$TILEMODE", empty ? 0 : 1);
    name("$PINSBASE");
    out.point(10, {});
    name("$PEXTMIN");
    out.point(10, {});
    name("$PEXTMAX");
    out.point(10, {width_mm_, height_mm_});
    name("$PLIMMIN");
    out.flat(10, {});
    name("$PLIMMAX");
    out.flat(10, {width_mm_, height_mm_});
    whole("$MEASUREMENT", 1);
    whole("$LWDISPLAY", 1, 290);
    whole("$INSUNITS", kMillimetres);
    whole("$PSTYLEMODE", 1, 290);
    name("$HANDSEED");
    out.handle(5, last_handle_ + 1);
    return out;
}

DxfPairs DxfDocument::classes() {
    DxfPairs out;
    for (const ClassRow& row : kClasses) {
        out.text(0, "CLASS");
        out.text(1, row.record);
        out.text(2, row.cpp);
        out.text(3, row.application);
        out.integer(90, row.proxy_flags);
        out.integer(280, 0);
        out.integer(281, row.entity);
    }
    return out;
}

DxfPairs DxfDocument::blocks() const {
    DxfPairs out;
    for (const DxfBlock& block : blocks_) {
        const bool space = block.layout != 0;
        const auto head = [&](const char* type, DxfHandle handle, const char* subclass) {
            out.text(0, type);
            out.handle(5, handle);
            out.handle(330, block.record);
            out.text(100, "AcDbEntity");
            out.text(8, "0");
            out.text(100, subclass);
        };
        head("BLOCK", block.begin, "AcDbBlockBegin");
        out.text(2, block.name);
        out.integer(70, block.flags);
        out.point(10, {});
        out.text(3, block.name);
        out.text(1, "");
        if (!space) out.append(block.entities); // those of the two spaces are in ENTITIES
        head("ENDBLK", block.end, "AcDbBlockEnd");
    }
    return out;
}

DxfPairs DxfDocument::objects(DxfHandle main_viewport) {
    DxfPairs out;
    const auto begin = [&](const char* type, DxfHandle handle, DxfHandle owner) {
        out.text(0, type);
        out.handle(5, handle);
        out.handle(330, owner);
    };
    const auto entry = [&](const std::string& name, DxfHandle handle) {
        out.text(3, name);
        out.handle(350, handle);
    };
    const DxfHandle groups = newHandle();
    const DxfHandle masks = newHandle();
    begin("DICTIONARY", anchors_.root, 0);
    out.text(100, "AcDbDictionary");
    out.integer(281, 1);
    entry("ACAD_GROUP", groups);
    entry("ACAD_LAYOUT", anchors_.layouts);
    entry("ACAD_PLOTSTYLENAME", anchors_.plot_styles);
    entry("ACAD_WIPEOUT_VARS", masks);
    begin("DICTIONARY", groups, anchors_.root);
    out.text(100, "AcDbDictionary");
    out.integer(281, 1);
    begin("DICTIONARY", anchors_.layouts, anchors_.root);
    out.text(100, "AcDbDictionary");
    out.integer(281, 1);
    entry("Model", anchors_.model_layout);
    entry(layout_name_, anchors_.paper_layout);
    begin("ACDBDICTIONARYWDFLT", anchors_.plot_styles, anchors_.root);
    out.text(100, "AcDbDictionary");
    out.integer(281, 1);
    entry("Normal", anchors_.plot_style);
    out.text(100, "AcDbDictionaryWithDefault");
    out.handle(340, anchors_.plot_style);
    begin("ACDBPLACEHOLDER", anchors_.plot_style, anchors_.plot_styles);
    begin("WIPEOUTVARIABLES", masks, anchors_.root);
    out.text(100, "AcDbWipeoutVariables");
    out.integer(70, 0); // no frame round what is masked
    layoutObject(out, "Model", true, 0);
    layoutObject(out, layout_name_, false, main_viewport);
    return out;
}

void DxfDocument::layoutObject(DxfPairs& out, const std::string& name, bool model,
                               DxfHandle main_viewport) const {
    constexpr int kModelType = 1024;
    constexpr int kPaper = 128 + 32 + 512; // line widths on, standard scale, viewports below what is on paper
    out.text(0, "LAYOUT");
    out.handle(5, model ? anchors_.model_layout : anchors_.paper_layout);
    out.handle(330, anchors_.layouts);
    out.text(100, "AcDbPlotSettings");
    out.text(1, "");
    out.text(2, "none_device");
    out.text(4, model ? "" : fmt::format("({:.2f}_x_{:.2f}_MM)", width_mm_, height_mm_));
    out.text(6, "");
    for (const int margin : {40, 41, 42, 43})
        out.real(margin, 0);
    out.real(44, width_mm_);
    out.real(45, height_mm_);
    for (const int offset : {46, 47, 48, 49, 140, 141})
        out.real(offset, 0);
    out.real(142, 1);
    out.real(143, 1);
    out.integer(70, model ? kModelType : kPaper);
    out.integer(72, 1); // mm
    out.integer(73, 0);
    out.integer(74, model ? 0 : 5); // what is displayed; the layout
    out.text(7, "");
    out.integer(75, 16); // 1:1
    out.real(147, 1);
    out.real(148, 0);
    out.real(149, 0);
    out.text(100, "AcDbLayout");
    out.text(1, name);
    out.integer(70, 0);
    out.integer(71, model ? 0 : 1);
    out.flat(10, {});
    out.flat(11, {width_mm_, height_mm_});
    out.point(12, {});
    out.point(14, {});
    out.point(15, {width_mm_, height_mm_});
    out.real(146, 0);
    out.point(13, {});
    out.point(16, {1, 0});
    out.point(17, {0, 1});
    out.integer(76, 0);
    out.handle(330, model ? blocks_[0].record : blocks_[1].record);
    if (main_viewport != 0) out.handle(331, main_viewport);
}

} // namespace gangway::exporting
