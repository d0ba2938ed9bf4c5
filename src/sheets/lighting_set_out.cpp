#include "sheets/lighting_set_out.hpp"

#include "sheets/ceiling_view.hpp"
#include "sheets/packing.hpp"
#include "sheets/plan_pages.hpp"
#include "sheets/request.hpp"
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
    std::vector<const RoomPoints*> rooms;
    std::vector<PlanPicture> pictures;
    std::vector<PackedAt> places;
    std::vector<const RoomPoints*> too_large; ///< for a sheet at this scale
    std::size_t sheets() const {
        return places.empty() ? 0 : std::ranges::max(places, {}, &PackedAt::sheet).sheet + 1;
    }
};

class Maker {
public:
    Maker(const House& house, const Options& options, const Paper& paper)
        : house_(house), options_(options), net_(house.plan(), house.catalogue()), numbers_(house),
          pages_(house.plan(), paper, PlanPages::Footnote::Cautions) {}

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

    RoomsPacked packed(const plan::Storey& storey, const std::vector<const RoomPoints*>& rooms,
                       double scale) const {
        const CeilingStorey drawn = ceilingStorey(house_, storey, scale, options_.base);
        RoomsPacked made;
        made.scale = scale;
        std::vector<Rect> sizes;
        const PackRoom paper = pages_.packRoom();
        for (const RoomPoints* points : rooms) {
            PlanPicture picture = ceilingPicture(drawn, house_, *points, numbers_);
            const double name = drawing::measure(points->room->name, kValueText).width_mm;
            const Rect size{0, 0, std::max(picture.extent.width(), name), picture.extent.height() + kTitle};
            if (!sheets::packed({&size, 1}, paper, kGap)) {
                made.too_large.push_back(points);
                continue;
            }
            made.rooms.push_back(points);
            made.pictures.push_back(std::move(picture));
            sizes.push_back(size);
        }
        if (auto places = sheets::packed(sizes, paper, kGap)) made.places = std::move(*places);
        return made;
    }

    /// The rooms at the largest scale at which they take no more sheets than at 1:50; those that do not fit
    /// then on sheets of their own, smaller.
    std::expected<std::vector<RoomsPacked>, std::string> bestPacked(const plan::Storey& storey) const {
        std::vector<const RoomPoints*> rooms;
        for (const RoomPoints& points : rooms_)
            rooms.push_back(&points);
        std::vector<RoomsPacked> groups;
        const std::vector<double> scales =
            options_.scale ? std::vector{*options_.scale} : std::vector{50.0, 100.0, 200.0};
        for (std::size_t i = 0; i < scales.size() && !rooms.empty(); ++i) {
            RoomsPacked made = packed(storey, rooms, scales[i]);
            rooms = made.too_large;
            if (made.rooms.empty()) continue;
            groups.push_back(i == 0 && !options_.scale ? larger(storey, std::move(made)) : std::move(made));
        }
        if (rooms.empty()) return groups;
        return std::unexpected(fmt::format("room '{}' does not fit on {} at 1:{:g} with its dimensions; take "
                                           "a smaller scale or larger paper",
                                           rooms.front()->room->name, pages_.layout().paper.id,
                                           scales.back()));
    }

    /// Larger as long as that takes no more sheets.
    RoomsPacked larger(const plan::Storey& storey, RoomsPacked best) const {
        for (const double scale : {25.0, 20.0}) {
            RoomsPacked next = packed(storey, best.rooms, scale);
            if (!next.too_large.empty() || sheetsTaken(storey, next) > sheetsTaken(storey, best)) break;
            best = std::move(next);
        }
        return best;
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
        auto groups = bestPacked(storey);
        if (!groups) return std::unexpected(groups.error());
        if (rooms_.size() > 1) {
            auto plan = overview(storey);
            if (!plan) return std::unexpected(plan.error());
            addOverview(storey, std::move(*plan), *groups);
        }
        for (const RoomsPacked& group : *groups)
            for (std::size_t sheet = 0; sheet < group.sheets(); ++sheet) {
                pages_.add(roomsPage(storey, group, sheet));
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

    /// `groups`: what is on the sheets that follow.
    void addOverview(const plan::Storey& storey, PlanPicture picture,
                     const std::vector<RoomsPacked>& groups) {
        const double width = pages_.layout().note_width_mm;
        std::vector<std::string> where;
        std::size_t first = 1;
        for (const RoomsPacked& group : groups) {
            for (std::size_t i = 0; i < group.rooms.size(); ++i)
                where.push_back(
                    fmt::format("{}: {}", group.rooms[i]->room->name, number(first + group.places[i].sheet)));
            first += group.sheets();
        }
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
        return {headingBlock("How to read", width), notesBlock(notes, width)};
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
        for (std::size_t i = 0; i < rooms.rooms.size(); ++i) {
            if (rooms.places[i].sheet != sheet) continue;
            const RoomPoints& points = *rooms.rooms[i];
            page.asked_for = page.asked_for || isAskedFor(*points.room);
            names += (names.empty() ? "" : ", ") + points.room->name;
            page.parts.push_back({points.room->name, ceilingTable(points, width)});
            placeRoom(page.sheets.back(), points, rooms.pictures[i], rooms.places[i].corner);
        }
        constexpr double kLongTitle = 130;
        page.title = names + ", lighting set-out";
        if (drawing::measure(page.title, kTitleText).width_mm > kLongTitle)
            page.title = storey.name + ", lighting set-out";
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
    const auto paper = requestedPaper(plan, options, "lighting sheets", kScales);
    if (!paper) return std::unexpected(paper.error());
    const House house(plan, catalogue, options.base);
    return Maker(house, options, *paper).make();
}

} // namespace gangway::sheets
