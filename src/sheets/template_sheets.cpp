// Drilling template sheets: how the templates of a room share its pages, and what stands on every page.
#include "sheets/template_sheets.hpp"

#include "sheets/paper.hpp"
#include "sheets/request.hpp"
#include "sheets/sheet_names.hpp"
#include "sheets/site_notes.hpp"
#include "sheets/template_pieces.hpp"
#include "sheets/template_words.hpp"
#include "sheets/title_block.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kMargin = 10;     ///< printers leave no more than this
constexpr double kInk = 0.5;       ///< half a broad line, so that it too stays inside the margin
constexpr double kGap = 2;         ///< between templates
constexpr double kProof = 100;     ///< length of the bars, measured with a ruler
constexpr double kProofColumn = 7; ///< for the upright bar, at the right
constexpr double kProofRow = 11;   ///< for the level one, under the templates
constexpr double kUnderCautions = 0.5;
constexpr const char* kMeasureThis = "Measure this: 100 mm. If not, print again at actual size (100 %).";

enum class Bar { Level, Upright };

/// A bar of 100 mm with a tick every 10, from `from` to the right or upwards; ticks to its left side.
void drawProofBar(std::vector<Item>& items, Pt from, Bar bar) {
    Ink ink(items, "notes", "proof-bar");
    const auto at = [&](double along, double aside) {
        return bar == Bar::Upright ? Pt{from.x - aside, from.y + along} : Pt{from.x + along, from.y + aside};
    };
    ink.line(at(0, 0), at(kProof, 0), kOutline);
    for (int i = 0; i <= 10; ++i)
        ink.line(at(10 * i, 0), at(10 * i, i % 10 == 0 ? 4.0 : i == 5 ? 2.8 : 1.6), kOutline);
}

/// A row of templates that stand side by side.
struct Shelf {
    std::size_t page = 0;
    double top = 0;
    double height = 0;
    double right = 0; ///< where the next one begins
};

struct Page {
    drawing::Sheet sheet;
    const plan::Room* room = nullptr;
    std::vector<std::string> names;
    double bottom = 0; ///< of its lowest shelf
};

class Maker {
public:
    Maker(const House& house, const Paper& paper)
        : house_(house), paper_(paper),
          sheet_{kMargin, kMargin, paper.width_mm - kMargin, paper.height_mm - kMargin} {
        sheet_ = sheet_.grown(-kInk);
    }

    /// Every room is put on sheets, so that those of `only` have their numbers in the whole set.
    drawing::Drawing make(const plan::Room* only) {
        for (const plan::Room& room : house_.plan().rooms)
            place(room);
        return finished(only);
    }

private:
    /// Title strip, cautions, level bar: from the lower edge up; returns the y over them.
    double drawFoot(std::vector<Item>& items, const plan::Room& room) const {
        // Cautions are set downwards, so how high they are is found by setting them once.
        std::vector<Item> cautions;
        const std::string datum = roomDatumInWords(house_, room);
        const double height = -drawCautionLines(cautions, {0, 0}, sheet_.width(), datum);
        const double top = sheet_.bottom + kTitleStripHeight + kUnderCautions + height;
        move(cautions, sheet_.left, top);
        items.insert(items.end(), std::make_move_iterator(cautions.begin()),
                     std::make_move_iterator(cautions.end()));
        const Pt bar{sheet_.left + 1, top + 1.5};
        drawProofBar(items, bar, Bar::Level);
        Ink words(items, "notes");
        const auto lines = wrapped(kMeasureThis, kValueText, sheet_.right - bar.x - kProof - 6);
        words.paragraph({bar.x + kProof + 6, bar.y + 5.6}, lines, kValueText);
        return top + kProofRow;
    }

    void begin(const plan::Room& room) {
        Page page;
        page.room = &room;
        page.sheet.width_mm = paper_.width_mm;
        page.sheet.height_mm = paper_.height_mm;
        page.sheet.scale = 1;
        auto& items = page.sheet.items;
        const double over = drawFoot(items, room);
        const Pt bar{sheet_.right, over};
        drawProofBar(items, bar, Bar::Upright);
        drawing::Text length;
        length.at = {bar.x - 3.4, bar.y + kProof / 2 + 3};
        length.text = "measure: 100 mm";
        length.height_mm = kNoteText;
        length.turn_deg = 90;
        Ink(items, "notes").text(length);
        page.bottom = sheet_.top + kGap;
        place_ = {sheet_.left, over, sheet_.right - kProofColumn, sheet_.top};
        pages_.push_back(std::move(page));
    }

    /// The first shelf that has room for it, else a new one on the first page that has, else a new page.
    Shelf& shelfFor(const plan::Room& room, double width_mm, double height_mm) {
        constexpr double kTouch = 1e-6;
        for (Shelf& shelf : shelves_)
            if (shelf.height + kTouch >= height_mm && shelf.right + width_mm <= place_.right + kTouch)
                return shelf;
        std::size_t page = first_page_;
        while (page < pages_.size() && pages_[page].bottom - kGap - height_mm < place_.bottom - kTouch)
            ++page;
        if (page == pages_.size()) begin(room);
        const double top = pages_[page].bottom - kGap;
        pages_[page].bottom = top - height_mm;
        shelves_.push_back({page, top, height_mm, place_.left});
        return shelves_.back();
    }

    void place(const plan::Room& room) {
        const auto surfaces = surfacesOf(house_, room);
        shelves_.clear();
        first_page_ = pages_.size();
        std::vector<TemplatePiece> pieces;
        for (const Surface& surface : surfaces)
            for (const Mounted& item : surface.mounted) {
                if (item.plate == nullptr) continue;
                if (pages_.size() == first_page_) begin(room); // says how much room there is
                auto made = templatePieces(house_, room, surface, item, place_.width(), place_.height());
                std::ranges::move(made, std::back_inserter(pieces));
            }
        // Shelves hold more when the high ones come first; those of one height keep their order, and a
        // plate's parts stay together.
        std::ranges::stable_sort(pieces, [](const TemplatePiece& a, const TemplatePiece& b) {
            return std::lround(a.tallest_mm * 10) > std::lround(b.tallest_mm * 10);
        });
        for (TemplatePiece& piece : pieces)
            put(room, std::move(piece));
    }

    void put(const plan::Room& room, TemplatePiece piece) {
        Shelf& shelf = shelfFor(room, piece.extent.width(), piece.tallest_mm);
        const Pt origin{shelf.right - piece.extent.left, shelf.top - piece.extent.top};
        shelf.right += piece.extent.width() + kGap;
        Page& page = pages_[shelf.page];
        move(piece.words, origin.x, origin.y);
        for (Item& item : piece.words)
            page.sheet.items.push_back(std::move(item));
        placePicture(page.sheet, std::move(piece.marks), origin, piece.name, 1);
        page.names.push_back(std::move(piece.name));
    }

    static std::string namesOf(const Page& page) {
        std::string list;
        for (const std::string& name : page.names)
            list += (list.empty() ? "" : ", ") + name;
        return list;
    }

    drawing::Drawing finished(const plan::Room* only) {
        const plan::Project& project = house_.plan().project;
        drawing::Drawing drawing = drawingOf(project, "Drilling templates at true size");
        for (std::size_t i = 0; i < pages_.size(); ++i) {
            Page& page = pages_[i];
            if (only != nullptr && page.room != only) continue;
            page.sheet.number = fmt::format("T-{:02}", i + 1);
            page.sheet.title = fmt::format("Drilling templates, {}: {}", page.room->name, namesOf(page));
            page.sheet.file_stem = fileStem(page.sheet.number, "templates " + page.room->name, "");
            TitleFields fields;
            fields.sheet_id = page.sheet.number;
            fields.sheet_of = fmt::format("{} / {}", i + 1, pages_.size());
            fields.title = "Templates, " + page.room->name;
            fields.scale = 1;
            drawTitleStrip(page.sheet.items, {sheet_.right, sheet_.bottom}, sheet_.width(), project, fields);
            drawing.sheets.push_back(std::move(page.sheet));
        }
        return drawing;
    }

    const House& house_;
    Paper paper_;
    Rect sheet_; ///< inside the margins
    Rect place_; ///< for templates, of the room's pages
    std::vector<Page> pages_;
    std::vector<Shelf> shelves_; ///< of the room
    std::size_t first_page_ = 0; ///< of the room
};

} // namespace

std::expected<drawing::Drawing, std::string>
templateSheets(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const Options& options) {
    const auto paper = requestedPaper(plan, options);
    if (!paper) return std::unexpected(paper.error());
    const plan::Room* room = plan::findRoom(plan, options.room);
    const House house(plan, catalogue, options.base);
    return Maker(house, *paper).make(room);
}

} // namespace gangway::sheets
