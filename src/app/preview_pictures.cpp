// Pages of the preview as pixels: whole ones to turn over at once, and the part in view at its zoom.
#include "app/panels.hpp"
#include "app/picture_upload.hpp"
#include "app/sheet_preview.hpp"

#include <algorithm>

namespace gangway::app {

namespace {

constexpr int kLargestSide = 4096;      ///< of a picture, pixels; more than any window shows
constexpr int kLargestWhole = 2048;     ///< of a whole page
constexpr int kAround_px = 160;         ///< more than is in view, for moving the page a little
constexpr std::size_t kMostWholes = 12; ///< of A3 at a usual window's size about 3 MB each

void request(State& state, const PageOf& page, const PagePart& part) {
    state.preview->picturing.start(
        [page, part, copier = state.preview->copier](const std::stop_token&) {
            const drawing::Sheet& sheet = page.get();
            const PageSize size{sheet.width_mm, sheet.height_mm};
            auto bitmap = exporting::rasterise(copier ? copied(sheet) : sheet, part.lowerLeft(size),
                                               part.width_px / part.px_per_mm,
                                               part.height_px / part.px_per_mm, part.px_per_mm);
            return MadePicture{page, copier, part, std::move(bitmap)};
        },
        state.wake);
}

bool isWhole(const PagePart& part, const PageOf& page) {
    PageView view;
    view.px_per_mm = part.px_per_mm;
    return part == wholePage(view, {page.get().width_mm, page.get().height_mm}, kLargestSide);
}

PagePicture& placeFor(SheetPreview& preview, const MadePicture& made) {
    if (!isWhole(made.part, made.page)) return preview.sharp;
    const auto same = std::ranges::find_if(preview.wholes, [&](const PagePicture& picture) {
        return picture.page == made.page && picture.copier == made.copier;
    });
    if (same != preview.wholes.end()) return *same;
    if (preview.wholes.size() < kMostWholes) return preview.wholes.emplace_back();
    return *std::ranges::min_element(preview.wholes, {}, &PagePicture::used);
}

void takePicture(State& state, const MadePicture& made) {
    if (made.bitmap.rgba.empty()) return;
    PagePicture& picture = placeFor(state.preview, made);
    uploadPicture(picture.texture, made.bitmap);
    picture.page = made.page;
    picture.copier = made.copier;
    picture.part = made.part;
    picture.used = state.frames;
}

const PagePicture* wholeOf(const SheetPreview& preview, const PageOf& page) {
    const auto found = std::ranges::find_if(preview.wholes, [&](const PagePicture& picture) {
        return picture.page == page && picture.copier == preview.copier;
    });
    return found == preview.wholes.end() ? nullptr : &*found;
}

bool sharpIsOf(const SheetPreview& preview, const PageOf& page) {
    return preview.sharp.texture != 0 && preview.sharp.page == page && preview.sharp.copier == preview.copier;
}

PagePart wholePart(const PageOf& page, const TableArea& table, double margin_px) {
    const PageSize size{page.get().width_mm, page.get().height_mm};
    PageView fitted;
    fitted.px_per_mm = fitZoom(PageFit::Page, size, table, margin_px);
    return wholePage(fitted, size, kLargestWhole);
}

} // namespace

void tendPictures(State& state, const TableArea& table) {
    SheetPreview& preview = *state.preview;
    if (const auto made = preview.picturing.take()) takePicture(state, *made);
    const PageOf page = pageOf(state);
    if (!page.drawing || preview.picturing.busy()) return;
    const float margin = kTableMargin * state.scale;
    const PagePicture* whole = wholeOf(preview, page);
    if (whole == nullptr) {
        request(state, page, wholePart(page, table, static_cast<double>(margin)));
        return;
    }
    const PageSize size{page.get().width_mm, page.get().height_mm};
    const bool is_sharp = shows(whole->part, preview.view, size, table) ||
                          (sharpIsOf(preview, page) && shows(preview.sharp.part, preview.view, size, table));
    if (!is_sharp) {
        request(state, page, visiblePart(preview.view, size, table, kAround_px, kLargestSide));
        return;
    }
    for (const std::size_t next : {page.sheet + 1, page.sheet - 1}) {
        const PageOf other{page.drawing, next};
        if (next >= page.drawing->sheets.size() || wholeOf(preview, other) != nullptr) continue;
        request(state, other, wholePart(other, table, static_cast<double>(margin)));
        return;
    }
}

std::vector<const PagePicture*> picturesOf(State& state) {
    SheetPreview& preview = *state.preview;
    const PageOf page = pageOf(state);
    std::vector<const PagePicture*> pictures;
    if (!page.drawing) return pictures;
    const PagePicture* whole = wholeOf(preview, page);
    if (whole == nullptr) {
        // Until it is there, the same page as it was before the plan or the look changed.
        const auto before = std::ranges::find_if(preview.wholes, [&](const PagePicture& picture) {
            return picture.texture != 0 && picture.page.get().file_stem == page.get().file_stem;
        });
        if (before != preview.wholes.end()) whole = &*before;
    }
    if (whole != nullptr) {
        preview.wholes[static_cast<std::size_t>(whole - preview.wholes.data())].used = state.frames;
        pictures.push_back(whole);
    }
    // One of a much larger zoom would be ragged; what one zooms into is better than the whole page.
    constexpr double kStillGood = 0.8;
    const double zoom = preview.view.pagePxPerMm();
    const bool whole_is_sharp = whole != nullptr && whole->page == page && whole->part.px_per_mm == zoom;
    if (!whole_is_sharp && sharpIsOf(preview, page) && zoom >= kStillGood * preview.sharp.part.px_per_mm)
        pictures.push_back(&preview.sharp);
    return pictures;
}

} // namespace gangway::app
