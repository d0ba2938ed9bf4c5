// A sheet as a DXF file: what its views show stands in model space at true size, the rest on a layout of the
// paper's size with a window on each view.
#include "export/dxf_entities.hpp"
#include "export/export.hpp"
#include "export/files.hpp"

#include "drawing/dimensions.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace gangway::exporting {

using namespace drawing;

namespace {

constexpr double kBetweenViews_mm = 2000; // in model space, real
constexpr double kWindowMargin_mm = 2;    // on paper, around a view's ink
constexpr double kBoxMark_mm = 10;        // half a cross at a box centre, real
constexpr int kHasAttributes = 2;

const DxfAttributes kPlatePrompts{{"TAG", "Tag"},
                                  {"HEIGHT", "Height of its centre above FFL, mm"},
                                  {"SETOUT", "Set-out of its centre along the wall, mm"}};
const DxfAttributes kBoxPrompts{{"TAG", "Tag of its plate"},
                                {"HEIGHT", "Height of the box centre above FFL, mm"},
                                {"SETOUT", "Set-out of the box centre along the wall, mm"}};

constexpr Bounds kNothing{{1, 1}, {0, 0}};

Bounds united(const Bounds& a, const Bounds& b) {
    if (a.low.x > a.high.x) return b;
    if (b.low.x > b.high.x) return a;
    return {{std::min(a.low.x, b.low.x), std::min(a.low.y, b.low.y)},
            {std::max(a.high.x, b.high.x), std::max(a.high.y, b.high.y)}};
}

/// A view's ink on paper and where it goes in model space.
struct ViewPlace {
    Bounds ink = kNothing;
    DxfFrame frame;
};

class SheetWriter {
public:
    explicit SheetWriter(const Sheet& sheet)
        : sheet_(sheet),
          document_(sheet.number.empty() ? "Sheet" : sheet.number, sheet.width_mm, sheet.height_mm),
          paper_(document_, document_.paper(), DxfFrame{}), places_(sheet.views.size()),
          blocks_(sheet.placed.size(), false) {}

    std::string written() {
        // The paper's own window comes first in its layout: readers take it by its place.
        const Pt middle{sheet_.width_mm / 2, sheet_.height_mm / 2};
        const DxfHandle main = paper_.viewport(1, {{0, 0}, {sheet_.width_mm, sheet_.height_mm}}, middle, 1);
        placeViews();
        for (const Item& item : sheet_.items)
            write(item);
        for (const PlacedObject& object : sheet_.placed)
            if (inView(object.view)) markBoxes(object);
        Bounds shown = kNothing;
        for (std::size_t i = 0; i < places_.size(); ++i) {
            if (places_[i].ink.low.x > places_[i].ink.high.x) continue;
            addWindow(static_cast<int>(i) + 2, places_[i], sheet_.views[i].scale);
            shown = united(shown, inModel(places_[i]));
        }
        return document_.finished(shown, main);
    }

private:
    bool inView(std::size_t view) const { return view > 0 && view <= places_.size(); }

    static Bounds inModel(const ViewPlace& place) {
        return {place.frame.at(place.ink.low), place.frame.at(place.ink.high)};
    }

    /// The first view keeps its own zero point; others stand in a row right of it.
    void placeViews() {
        for (const Item& item : sheet_.items)
            if (inView(item.view)) {
                Bounds& ink = places_[item.view - 1].ink;
                ink = united(ink, bounds(item.primitive));
            }
        bool first = true;
        double right = 0;
        for (std::size_t i = 0; i < places_.size(); ++i) {
            ViewPlace& place = places_[i];
            place.frame = {sheet_.views[i].origin, sheet_.views[i].scale, {}};
            if (place.ink.low.x > place.ink.high.x) continue;
            if (!first) place.frame.shift.x = std::ceil(right + kBetweenViews_mm - inModel(place).low.x);
            first = false;
            right = inModel(place).high.x;
        }
    }

    void write(const Item& item) {
        if (!inView(item.view)) {
            paper_.setLayer(item.layer);
            std::visit(paper_, item.primitive);
            return;
        }
        const DxfFrame& frame = places_[item.view - 1].frame;
        DxfInk model(document_, document_.model(), frame);
        model.setLayer(item.layer);
        const std::size_t object = objectOf(item);
        if (object == sheet_.placed.size())
            std::visit(model, item.primitive);
        else if (!blocks_[object])
            insertObject(model, object, frame);
    }

    std::size_t objectOf(const Item& item) const {
        const auto found = std::ranges::find_if(sheet_.placed, [&](const PlacedObject& object) {
            return object.id == item.id && object.layer == item.layer && object.view == item.view;
        });
        return static_cast<std::size_t>(found - sheet_.placed.begin());
    }

    /// All that draws an object becomes a block around its middle, where its first item was.
    void insertObject(DxfInk& model, std::size_t index, const DxfFrame& frame) {
        blocks_[index] = true;
        const PlacedObject& object = sheet_.placed[index];
        const Pt at = inModelMm(object.at_mm, frame);
        DxfBlock& block = document_.addBlock(object.layer + " " + object.id, kHasAttributes);
        DxfInk ink(document_, block,
                   {frame.origin, frame.scale, {frame.shift.x - at.x, frame.shift.y - at.y}});
        ink.setLayer(object.layer);
        for (const Item& item : sheet_.items)
            if (item.id == object.id && item.layer == object.layer && item.view == object.view)
                std::visit(ink, item.primitive);
        ink.attributeDefinitions(kPlatePrompts);
        model.insert(block, at, valuesOf(object.tag, object.height_mm, object.set_out_mm));
    }

    static Pt inModelMm(Pt mm, const DxfFrame& frame) { return {mm.x + frame.shift.x, mm.y + frame.shift.y}; }

    /// What is printed for these lengths, always in mm: the file's unit.
    static DxfAttributes valuesOf(const std::string& tag, double height_mm,
                                  std::optional<double> set_out_mm) {
        return {{"TAG", tag},
                {"HEIGHT", number(height_mm)},
                {"SETOUT", set_out_mm ? number(*set_out_mm) : std::string()}};
    }

    void markBoxes(const PlacedObject& object) {
        if (object.boxes_mm.empty()) return;
        if (box_block_ == nullptr) {
            constexpr Pen kMark{0.18, LineType::Continuous, kBlack};
            box_block_ = &document_.addBlock("box centre", kHasAttributes);
            DxfInk ink(document_, *box_block_, {});
            ink.setLayer(kDxfBoxLayer);
            ink(Line{{-kBoxMark_mm, 0}, {kBoxMark_mm, 0}, kMark});
            ink(Line{{0, -kBoxMark_mm}, {0, kBoxMark_mm}, kMark});
            ink.attributeDefinitions(kBoxPrompts);
        }
        const DxfFrame& frame = places_[object.view - 1].frame;
        DxfInk model(document_, document_.model(), frame);
        model.setLayer(kDxfBoxLayer);
        for (const Pt box : object.boxes_mm)
            model.insert(*box_block_, inModelMm(box, frame), valuesOf(object.tag, box.y, box.x));
    }

    void addWindow(int number, const ViewPlace& place, double scale) {
        const Bounds window{{std::max(place.ink.low.x - kWindowMargin_mm, 0.0),
                             std::max(place.ink.low.y - kWindowMargin_mm, 0.0)},
                            {std::min(place.ink.high.x + kWindowMargin_mm, sheet_.width_mm),
                             std::min(place.ink.high.y + kWindowMargin_mm, sheet_.height_mm)}};
        const Pt middle{(window.low.x + window.high.x) / 2, (window.low.y + window.high.y) / 2};
        paper_.viewport(number, window, place.frame.at(middle), scale);
    }

    const Sheet& sheet_;
    DxfDocument document_;
    DxfInk paper_;
    std::vector<ViewPlace> places_;
    std::vector<bool> blocks_; ///< which objects have been inserted
    DxfBlock* box_block_ = nullptr;
};

} // namespace

std::string dxf(const Sheet& sheet) {
    return SheetWriter(sheet).written();
}

std::expected<std::vector<std::filesystem::path>, std::string>
writeDxfs(const Drawing& drawing, const std::filesystem::path& folder) {
    const auto targets = sheetFiles(drawing, folder, ".dxf");
    if (!targets) return targets;
    for (std::size_t i = 0; i < targets->size(); ++i)
        if (auto written = writeFile((*targets)[i], dxf(drawing.sheets[i])); !written)
            return std::unexpected(written.error());
    return targets;
}

} // namespace gangway::exporting
