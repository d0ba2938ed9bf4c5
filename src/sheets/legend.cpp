#include "sheets/legend.hpp"

#include "drawing/symbols.hpp"
#include "sheets/elevation_view.hpp"

#include <algorithm>
#include <map>

namespace gangway::sheets {

namespace {

constexpr double kFrontScale = 8;     ///< modules are pictured at 1:8
constexpr double kPicture = 9;        ///< width of the picture's column
constexpr double kSymbol = 14;        ///< width of the plan symbol's column
constexpr double kSymbolModule = 1.8; ///< grid module of the symbols, the least allowed
constexpr double kEntry = 8.6;        ///< least height of an entry
constexpr double kSign = 4.8;
constexpr double kSmallest = 0.5;

/// Modules used on the wall by code, each once.
std::map<std::string, const catalogue::ModuleType*> modulesUsed(const WallView& view) {
    std::map<std::string, const catalogue::ModuleType*> used;
    for (const Mounted& item : view.mounted)
        for (const auto& gang : item.face.gangs)
            if (gang.module != nullptr) used.emplace(gang.module->code, gang.module);
    return used;
}

/// Visible size of a module on the first plate that has it.
Rect apertureOf(const WallView& view, const catalogue::ModuleType& module) {
    for (const Mounted& item : view.mounted)
        for (const auto& gang : item.face.gangs)
            if (gang.module == &module)
                return {-gang.width_mm / 2, -gang.height_mm / 2, gang.width_mm / 2, gang.height_mm / 2};
    return {};
}

void drawName(Block& block, double x, const std::string& name, double width_mm) {
    Ink ink(block.items, "notes");
    const auto lines = wrapped(name, kNoteText, width_mm - x);
    const double height = paragraphHeight(lines, kNoteText);
    ink.paragraph({x, -block.height_mm / 2 + height / 2 - kNoteText}, lines, kNoteText);
}

/// The module's plan symbol, centred in its column.
void drawPlanSymbol(Block& block, const catalogue::ModuleType& module) {
    auto items = drawing::symbol(module.symbol, {0, 0}, 0, kSymbolModule, "symbols");
    if (items.empty()) return;
    const Rect extent = extentOf(items);
    move(items, kPicture + 2 + kSymbol / 2 - extent.centre().x, -block.height_mm / 2 - extent.centre().y);
    block.items.insert(block.items.end(), items.begin(), items.end());
}

double symbolHeight(const catalogue::ModuleType& module) {
    return extentOf(drawing::symbol(module.symbol, {0, 0}, 0, kSymbolModule, "symbols")).height();
}

Block moduleEntry(const WallView& view, const catalogue::ModuleType& module, double code_width_mm,
                  double width_mm) {
    Block block;
    block.height_mm = std::max(kEntry, symbolHeight(module) + 1.2);
    Ink pictures(block.items, "symbols");
    const Pt centre{kPicture / 2, -block.height_mm / 2};
    const Rect aperture = apertureOf(view, module);
    // A wide front (two outlets in one) is pictured smaller, so that it stays in its column.
    const double scale =
        std::max(kFrontScale, std::max(aperture.width(), aperture.height()) / (kPicture - 1));
    pictures.rect(
        Rect{aperture.left / scale, aperture.bottom / scale, aperture.right / scale, aperture.top / scale}
            .moved(centre.x, centre.y),
        kNarrow);
    drawFront(pictures, module, centre, scale, kThin, kSmallest);
    drawPlanSymbol(block, module);
    Ink texts(block.items, "notes");
    const double code_x = kPicture + kSymbol + 3;
    texts.text({code_x, -block.height_mm / 2 - kNoteText / 2}, module.code, kNoteText);
    drawName(block, code_x + code_width_mm, module.name, width_mm);
    return block;
}

Block sign(const std::string& name, double width_mm, void (*draw)(Ink&, Pt)) {
    Block block;
    block.height_mm = kSign;
    Ink ink(block.items, "symbols");
    draw(ink, {kPicture / 2, -kSign / 2});
    drawName(block, kPicture + 2, name, width_mm);
    return block;
}

void hiddenSign(Ink& ink, Pt at) {
    ink.rect({at.x - 4, at.y - 2, at.x + 4, at.y + 2}, kHidden);
}
void ghostSign(Ink& ink, Pt at) {
    ink.rect({at.x - 4, at.y - 2, at.x + 4, at.y + 2}, kGhostPen);
}
void crossSign(Ink& ink, Pt at) {
    ink.line({at.x - 4, at.y}, {at.x + 4, at.y}, kCentre);
    ink.line({at.x, at.y - 2.4}, {at.x, at.y + 2.4}, kCentre);
}
void boxSign(Ink& ink, Pt at) {
    ink.circle(at, 1.6, kOutline);
    ink.circle(at, 2.3, kThin);
}
void lampSign(Ink& ink, Pt at) {
    ink.circle(at, 2, kOutline);
    ink.line({at.x - 1.41, at.y - 1.41}, {at.x + 1.41, at.y + 1.41}, kNarrow);
    ink.line({at.x - 1.41, at.y + 1.41}, {at.x + 1.41, at.y - 1.41}, kNarrow);
}

} // namespace

std::vector<Block> legend(const WallView& view, double width_mm) {
    std::vector<Block> blocks{headingBlock("Legend", width_mm)};
    const auto used = modulesUsed(view);
    double code_width = 0;
    for (const auto& [code, module] : used)
        code_width = std::max(code_width, drawing::measure(code, kNoteText).width_mm + 3);
    for (const auto& [code, module] : used)
        blocks.push_back(moduleEntry(view, *module, code_width, width_mm));
    const auto any = [&](auto test) { return std::any_of(view.mounted.begin(), view.mounted.end(), test); };
    blocks.push_back(sign("centre of a box: drill here", width_mm, crossSign));
    blocks.back().optional = true;
    if (any([](const Mounted& m) { return !m.behind.empty(); }))
        blocks.push_back(sign("dashed: behind what its tag names", width_mm, hiddenSign));
    if (any([](const Mounted& m) { return m.luminaire != nullptr; }))
        blocks.push_back(sign("wall luminaire", width_mm, lampSign));
    if (view.fix == Fix::First) {
        blocks.push_back(sign("a box; a larger circle: what is drilled", width_mm, boxSign));
    } else {
        blocks.push_back(sign("furniture, for orientation", width_mm, ghostSign));
        blocks.back().optional = true;
    }
    blocks.back().gap_after_mm = 3;
    return blocks;
}

} // namespace gangway::sheets
