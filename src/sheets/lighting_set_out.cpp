#include "sheets/lighting_set_out.hpp"

#include "sheets/ceiling_view.hpp"
#include "sheets/packing.hpp"
#include "sheets/plan_pages.hpp"
#include "sheets/site_notes.hpp"
#include "sheets/switching_legend.hpp"
#include "sheets/wall_markers.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr std::array<double, 5> kScales{20, 25, 50, 100, 200};
constexpr double kTitle = 8; ///< over a room: its name
constexpr double kGap = 7;   ///< between rooms

/// Rooms of a storey at one scale, on as many sheets as they take.
struct RoomsPacked {
    double scale = 0;
    std::vector<PlanPicture> pictures;
    std::vector<PackedAt> places;
    std::size_t sheets() const { return std::ranges::max(places, {}, &PackedAt::sheet).sheet + 1; }
};

class Maker {
public:
    Maker(const House& house, const Options& options, const Paper& paper)
        : house_(house), options_(options), net_(house.plan(), house.catalogue()), numbers_(house),
          pages_(house.plan().project, paper) {}

    std::expected<drawing::Drawing, std::string> make() {
        for (const plan::Storey& storey : house_.plan().storeys) {
            rooms_.clear();
            for (const plan::Room& room : house_.plan().rooms) {
                if (room.storey != storey.id) continue;
                RoomPoints points = pointsOf(house_, room, numbers_);
                if (!points.empty()) rooms_.push_back(std::move(points));
            }
            if (rooms_.empty()) continue;
            if (const auto done = add(storey); !done) return std::unexpected(done.error());
        }
        return pages_.finished("Lighting set-out");
    }

private:
    bool isAskedFor(const plan::Room& room) const {
        return options_.room.empty() || room.id == options_.room;
    }

    /// Pictures of the storey's rooms and their places; nullopt when one is larger than a sheet.
    std::optional<RoomsPacked> packed(const plan::Storey& storey, double scale) const {
        const CeilingStorey drawn = ceilingStorey(house_, storey, scale, options_.base);
        RoomsPacked rooms;
        rooms.scale = scale;
        std::vector<Rect> sizes;
        for (const RoomPoints& points : rooms_) {
            rooms.pictures.push_back(ceilingPicture(drawn, house_, points, numbers_));
            const Rect& extent = rooms.pictures.back().extent;
            const double name = drawing::measure(points.room->name, kValueText).width_mm;
            sizes.push_back({0, 0, std::max(extent.width(), name), extent.height() + kTitle});
        }
        auto places = packedInRows(sizes, pages_.packRoom(), kGap);
        if (!places) return std::nullopt;
        rooms.places = std::move(*places);
        return rooms;
    }

    /// The largest scale at which the rooms take no more sheets than at 1:50, or the first that fits.
    std::expected<RoomsPacked, std::string> bestPacked(const plan::Storey& storey) const {
        if (options_.scale) {
            auto rooms = packed(storey, *options_.scale);
            if (rooms) return std::move(*rooms);
        } else {
            std::optional<RoomsPacked> best;
            std::size_t fewest = 0;
            for (const double scale : {50.0, 25.0, 20.0}) {
                auto rooms = packed(storey, scale);
                const std::size_t taken = rooms ? sheetsTaken(storey, *rooms) : 0;
                if (!rooms || (best && taken > fewest)) break;
                best = std::move(rooms);
                fewest = taken;
            }
            for (const double scale : {100.0, 200.0})
                if (!best) best = packed(storey, scale);
            if (best) return std::move(*best);
        }
        return std::unexpected(fmt::format(
            "a room of storey '{}' does not fit on {} at {} with its dimensions; take a smaller scale or "
            "larger paper",
            storey.name, pages_.layout().paper.id,
            options_.scale ? fmt::format("1:{:g}", *options_.scale) : "1:200"));
    }

    std::expected<PlanPicture, std::string> overview(const plan::Storey& storey) const {
        const Rect room = pages_.pictureRoom();
        for (const double scale : kScales) {
            const CeilingStorey drawn = ceilingStorey(house_, storey, scale, options_.base);
            PlanPicture picture = planPicture(drawn.base, {}, drawn.symbols, nullptr);
            if (picture.extent.width() <= room.width() && picture.extent.height() <= room.height())
                return picture;
        }
        return std::unexpected(fmt::format("storey '{}' does not fit on {} at 1:200; take larger paper",
                                           storey.name, pages_.layout().paper.id));
    }

    std::size_t sheetsTaken(const plan::Storey& storey, const RoomsPacked& rooms) const {
        std::size_t taken = 0;
        for (std::size_t sheet = 0; sheet < rooms.sheets(); ++sheet)
            taken += pages_.sheetsTaken(roomsPage(storey, rooms, sheet));
        return taken;
    }

    std::string number(std::size_t further = 0) const { return fmt::format("L-{:02}", drawn_ + 1 + further); }

    std::expected<void, std::string> add(const plan::Storey& storey) {
        auto rooms = bestPacked(storey);
        if (!rooms) return std::unexpected(rooms.error());
        if (rooms_.size() > 1) {
            auto plan = overview(storey);
            if (!plan) return std::unexpected(plan.error());
            addOverview(storey, std::move(*plan), *rooms);
        }
        for (std::size_t sheet = 0; sheet < rooms->sheets(); ++sheet) {
            pages_.add(roomsPage(storey, *rooms, sheet));
            ++drawn_;
        }
        return {};
    }

    std::vector<Block> symbols() const {
        std::vector<const plan::Plate*> plates;
        std::vector<const plan::Luminaire*> luminaires;
        for (const RoomPoints& points : rooms_) {
            for (const plan::Plate* plate : house_.platesIn(points.room->id))
                if (std::ranges::find(points.points, plate->id, &CeilingPoint::id) != points.points.end())
                    plates.push_back(plate);
            std::ranges::copy(house_.luminairesIn(points.room->id), std::back_inserter(luminaires));
        }
        const double width = pages_.layout().note_width_mm;
        auto blocks = symbolLegend(net_, plates, luminaires, StoreyPlanOptions::Lamps::Symbol, width);
        blocks.back().gap_after_mm = 0;
        blocks.push_back(wallMarkerSign(width));
        return blocks;
    }

    /// `sheets`: of the rooms' sheets to come, where each room is.
    void addOverview(const plan::Storey& storey, PlanPicture picture, const RoomsPacked& rooms) {
        const double width = pages_.layout().note_width_mm;
        std::vector<std::string> where;
        for (std::size_t i = 0; i < rooms_.size(); ++i)
            where.push_back(fmt::format("{}: {}", rooms_[i].room->name, number(1 + rooms.places[i].sheet)));
        PlanPage page;
        page.number = number();
        page.title = storey.name + ", lighting";
        page.under = fmt::format("ceilings from above, nothing mirrored, 1:{:g}", picture.scale);
        page.document_type = "lighting set-out, overview";
        page.scale = picture.scale;
        page.parts = {{"Dimensions",
                       {headingBlock("Dimensions of each room on sheet", width), notesBlock(where, width)}},
                      {"How to read", howToRead(false)},
                      {"Symbols", symbols()}};
        page.sheets.push_back(pages_.centred(
            {page.title, picture.scale, std::move(picture.items), {}, std::move(picture.placed)},
            picture.extent));
        const plan::Room* asked = plan::findRoom(house_.plan(), options_.room);
        page.asked_for = asked == nullptr || asked->storey == storey.id;
        pages_.add(std::move(page));
        ++drawn_;
    }

    std::vector<Block> howToRead(bool with_numbers) const {
        const double width = pages_.layout().note_width_mm;
        std::vector<std::string> notes{
            "Ceiling and floor as seen from above, as the plan is drawn: nothing is "
            "mirrored. Looking up, left and right change places."};
        if (with_numbers) {
            notes.emplace_back("x and y: to the centre, from the FINISHED faces of the two walls that are "
                               "named, square to them, in mm.");
            notes.emplace_back("Under a sloped ceiling too they are measured level, as on the floor, and "
                               "plumbed up; the height is that of the ceiling there.");
            notes.emplace_back("In brackets: equal spacing, to check by.");
        }
        notes.emplace_back("In a capsule: the mark of the switch leg.");
        std::vector<Block> blocks{headingBlock("How to read", width), notesBlock(notes, width)};
        for (Block& block : cautions(width, Wording::Short))
            blocks.push_back(std::move(block));
        return blocks;
    }

    PlanPage roomsPage(const plan::Storey& storey, const RoomsPacked& rooms, std::size_t sheet) const {
        const double width = pages_.layout().note_width_mm;
        PlanPage page;
        page.number = number();
        page.scale = rooms.scale;
        page.under = fmt::format("ceilings from above, nothing mirrored, 1:{:g}", rooms.scale);
        page.document_type = "lighting set-out, rooms";
        page.asked_for = false;
        page.sheets.push_back({{}, pages_.pictureRoom().top});
        std::string names;
        for (std::size_t i = 0; i < rooms_.size(); ++i) {
            if (rooms.places[i].sheet != sheet) continue;
            const RoomPoints& points = rooms_[i];
            page.asked_for = page.asked_for || isAskedFor(*points.room);
            names += (names.empty() ? "" : ", ") + points.room->name;
            page.parts.push_back({points.room->name, ceilingTable(points, width)});
            placeRoom(page.sheets.back(), points, rooms.pictures[i], rooms.places[i].corner);
        }
        page.title = storey.name + ", lighting set-out";
        if (rooms.sheets() > 1 || rooms_.size() == 1) page.title = names + ", lighting set-out";
        if (drawing::measure(page.title, kTitleText).width_mm > pages_.layout().view.width() - 70)
            page.title = fmt::format("{}, lighting set-out {}", storey.name, sheet + 1);
        page.parts.push_back({"How to read", howToRead(true)});
        page.parts.push_back({"Symbols", symbols()});
        return page;
    }

    /// The room's name over its picture.
    void placeRoom(PictureSheet& sheet, const RoomPoints& points, PlanPicture picture, Pt corner) const {
        const Pt origin{corner.x - picture.extent.left, corner.y - kTitle - picture.extent.top};
        // The name is part of the picture, so that it goes with it.
        Ink(picture.items, "notes", points.room->id)
            .text({picture.extent.left, picture.extent.top + kTitle - kValueText - 1}, points.room->name,
                  kValueText);
        sheet.bottom = std::min(sheet.bottom, origin.y + picture.extent.bottom);
        sheet.pictures.push_back({points.room->name + ", ceiling", picture.scale, std::move(picture.items),
                                  origin, std::move(picture.placed)});
    }

    const House& house_;
    const Options& options_;
    switching::Net net_;
    ElevationNumbers numbers_;
    PlanPages pages_;
    std::vector<RoomPoints> rooms_; ///< of the storey that is being drawn
    std::size_t drawn_ = 0;
};

} // namespace

std::expected<drawing::Drawing, std::string>
lightingSetOutSheets(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const Options& options) {
    const auto paper = findPaper(options.paper);
    if (!paper)
        return std::unexpected(
            fmt::format("there is no paper '{}'; give one of {}", options.paper, paperNames()));
    if (options.scale && std::ranges::find(kScales, *options.scale) == kScales.end())
        return std::unexpected(fmt::format(
            "1:{:g} is not a scale of lighting sheets; give 20, 25, 50, 100 or 200", *options.scale));
    if (!options.room.empty() && plan::findRoom(plan, options.room) == nullptr)
        return std::unexpected(fmt::format("there is no room '{}'", options.room));
    const House house(plan, catalogue, options.base);
    return Maker(house, options, *paper).make();
}

} // namespace gangway::sheets
