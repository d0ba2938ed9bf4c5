// The preview of the sheets: pages as they will print, drawn and written on other threads so that the window
// stays live. What the rest of the window calls of it is in panels.hpp.
#pragma once

#include "app/background.hpp"
#include "app/page_look.hpp"
#include "app/page_view.hpp"
#include "app/sheet_export.hpp"
#include "export/export.hpp"

#include <cstdint>
#include <functional>
#include <memory>
#include <set>
#include <string>
#include <vector>

namespace gangway::app {

struct State;

inline constexpr float kTableMargin = 36; ///< round a page that is fitted, pixels at scale 1
inline constexpr double kZoomStep = 1.25; ///< of buttons and keys

using SharedDrawing = std::shared_ptr<const drawing::Drawing>;

/// A page of a drawing; the drawing is kept as long as it is named.
struct PageOf {
    SharedDrawing drawing;
    std::size_t sheet = 0;
    bool operator==(const PageOf&) const = default;
    const drawing::Sheet& get() const { return drawing->sheets[sheet]; }
};

/// The sheets of one kind as they were last drawn.
struct KindPages {
    const sheets::SheetKind* kind = nullptr;
    bool open = false;         ///< its pages are listed, and drawn anew when the plan changed
    std::uint64_t version = 0; ///< of the document it was drawn from; 0: not drawn yet
    SharedDrawing drawing;
    std::vector<bool> changed; ///< by sheet: something on it is marked as changed
    std::string problem;       ///< why it could not be drawn
};

/// What drawing a kind on another thread gives.
struct MadeSheets {
    std::size_t kind = 0;
    std::uint64_t generation = 0, version = 0;
    SharedDrawing drawing;
    std::string problem;
};

/// Pixels of a part of a page.
struct MadePicture {
    PageOf page;
    bool copier = false;
    PagePart part;
    exporting::Bitmap bitmap;
};

/// The same on the graphics card.
struct PagePicture {
    PageOf page;
    bool copier = false;
    PagePart part;
    unsigned texture = 0;
    std::uint64_t used = 0; ///< frame it was last drawn in
};

/// What lies on the page one looks at, found once for each page.
struct PageObjects {
    PageOf page;
    std::set<std::string> plates, luminaires;
    std::vector<std::string> in_order; ///< both, in reading order
    SmallTexts on_a4;
};

/// What came of opening a file in the system's viewer.
struct Printed {
    std::filesystem::path file;
    std::string problem;
    bool written = false;
};

struct SheetPreview {
    std::vector<KindPages> kinds; ///< in the order of a set; empty until the preview is first opened
    std::size_t kind = 0;         ///< the page one looks at
    std::size_t sheet = 0;
    enum class Landing { Stay, First, Last } landing = Landing::Stay; ///< where one comes once it is drawn
    std::string stem;             ///< of the page one looks at, to find it again after a change
    std::uint64_t generation = 1; ///< rises when another plan is opened
    bool show_row = false;        ///< the list is to be scrolled to the page's row

    PageView view;
    bool copier = false;
    bool on_a4 = false;
    bool output_open = false;
    std::string pointed; ///< object under the pointer
    std::string chosen;  ///< object chosen with the keyboard
    PageObjects objects;

    Background<MadeSheets> making;
    Background<MadePicture> picturing;
    std::vector<PagePicture> wholes; ///< whole pages, for turning them over at once
    PagePicture sharp;               ///< what is in view, at its zoom

    ExportFormats formats;
    std::set<std::string> wanted{"elevations"}; ///< kinds to be written
    std::string folder;
    std::shared_ptr<ExportProgress> progress;
    Background<Exported> writing;
    bool cancelling = false;          ///< it was asked to end
    std::vector<std::string> outcome; ///< of the last export, in words
    Background<Printed> printing;

    bool busy() const { return making.busy() || picturing.busy() || writing.busy() || printing.busy(); }
};

/// The kind's name up to where it begins to explain itself.
std::string shortName(const sheets::SheetKind& kind);

// sheet_preview.cpp: pages.
/// What sheets are drawn from, as it is now.
std::shared_ptr<const SheetSource> sheetSource(const State& state);
/// Opens the preview at a kind's first page.
void showKind(State& state, std::size_t kind);
void showPage(State& state, std::size_t kind, std::size_t sheet);
enum class Step { First, Before, Next, Last };
/// Through the pages of all kinds; a kind that is not drawn yet is drawn when one comes to it.
void stepPage(State& state, Step step);
/// The page one looks at; no drawing when there is none yet.
PageOf pageOf(const State& state);
/// Goes to a plate's or luminaire's place on the stage.
void goToObject(State& state, const std::string& id);

// preview_pictures.cpp: pages as pixels.
/// Takes a finished picture to the graphics card and asks for the next one that is missing.
void tendPictures(State& state, const TableArea& table);
/// The pictures to be drawn one over the other, coarse first; may be none.
std::vector<const PagePicture*> picturesOf(State& state);

// preview_bars.cpp, preview_table.cpp, preview_list.cpp, preview_output.cpp: its parts on screen.
/// Zoom at which the page is as large as on paper, as far as the screen's size is known.
double trueZoom(const State& state);
void previewTable(State& state, const TableArea& table);
void pageList(State& state);
void outputColumn(State& state);
/// Writes what is ticked, on another thread.
void startExport(State& state);
enum class PrintWhat { Sheet, Kind };
/// Writes a PDF of the page, or of its kind, and opens it in the system's viewer.
void startPrint(State& state, PrintWhat what);
/// Takes the results of both.
void tendOutput(State& state);

} // namespace gangway::app
