#include "sheets/room_sheets.hpp"

#include "drawing/dimensions.hpp"
#include "sheets/elevation_view.hpp"
#include "sheets/legend.hpp"
#include "sheets/packing.hpp"
#include "sheets/plan_pages.hpp"
#include "sheets/plan_view.hpp"
#include "sheets/request.hpp"
#include "sheets/room_table.hpp"
#include "sheets/switching_legend.hpp"
#include "sheets/wall_markers.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <tuple>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

/// In the order in which they are tried.
constexpr std::array<double, 5> kScales{50, 25, 20, 10, 100};
constexpr double kTitle = 8;  ///< over a picture: what it is
constexpr double kGap = 6;    ///< between pictures
constexpr double kSmall = 50; ///< smaller only where nothing else fits

/// A room with what its sheet shows.
struct RoomWork {
    const plan::Room* room = nullptr;
    std::vector<WallView> walls; ///< that have an elevation
};

/// A storey at one scale.
struct DrawnStorey {
    StoreyBase base;
    StoreySymbols symbols;
};

/// A picture with the words over it.
struct Titled {
    std::string title;
    std::string sheet; ///< of the elevation that it is keyed by; empty: the plan
    PlanPicture picture;
    double width_mm = 0;
};

/// All pictures of a room at one scale and where they stand.
struct Composed {
    double scale = 0;
    std::vector<Titled> pictures;
    std::vector<PackedAt> places;
    std::size_t touching = 0; ///< texts that found no room of their own
    std::size_t sheets() const { return std::ranges::max(places, {}, &PackedAt::sheet).sheet + 1; }
};

class Maker {
public:
    Maker(const House& house, const Options& options, const Paper& paper)
        : house_(house), options_(options), net_(house.plan(), house.catalogue()), numbers_(house),
          looks_(house, options), pages_(house.plan(), paper, PlanPages::Footnote::Cautions) {}

    std::expected<drawing::Drawing, std::string> make() {
        auto walls = wallsWithSomething(house_);
        for (const plan::Room& room : house_.plan().rooms) {
            if (house_.platesIn(room.id).empty() && house_.luminairesIn(room.id).empty()) continue;
            const bool asked_for = options_.room.empty() || room.id == options_.room;
            if (const auto done = add(room, walls); !done && asked_for) return std::unexpected(done.error());
        }
        return pages_.finished("Room sheets");
    }

private:
    std::expected<RoomWork, std::string> workOf(const plan::Room& room, std::vector<WallWork>& walls) const {
        RoomWork work{&room, {}};
        for (WallWork& wall : walls) {
            if (wall.room != &room) continue;
            auto view = looks_.at(std::move(wall));
            if (!view) return std::unexpected(std::move(view.error()));
            work.walls.push_back(std::move(*view));
        }
        return work;
    }

    /// Drawn once for all its rooms.
    const DrawnStorey& storeyAt(const std::string& id, double scale) {
        const auto known = storeys_.find({id, scale});
        if (known != storeys_.end()) return known->second;
        StoreyPlanOptions look;
        look.scale = scale;
        look.luminaire_tags = true;
        look.tags_only_with_room = true;
        look.base = options_.base;
        StoreyBase base = storeyBase(house_.plan(), id, look);
        StoreySymbols symbols = storeySymbols(house_.plan(), house_.catalogue(), base, look);
        return storeys_.emplace(std::pair(id, scale), DrawnStorey{std::move(base), std::move(symbols)})
            .first->second;
    }

    Titled planOf(const plan::Room& room, double scale) {
        const DrawnStorey& storey = storeyAt(room.storey, scale);
        const StoreyBase& base = storey.base;
        StoreySymbols symbols = storey.symbols;
        keepOnly(symbols, thingsIn(house_.plan(), room));
        std::vector<Item> around = base.items;
        around.insert(around.end(), symbols.items.begin(), symbols.items.end());
        const std::size_t others = around.size();
        drawWallMarkers(around, base.mapping, base.keep_clear, allWallsOf(room, numbers_));
        std::move(around.begin() + static_cast<std::ptrdiff_t>(others), around.end(),
                  std::back_inserter(symbols.items));
        return {fmt::format("Plan, 1:{:g}", scale), {}, planPicture(base, {}, symbols, &room), 0};
    }

    Titled elevationOf(const WallView& view, double scale) const {
        OnPaper paper{scale};
        paper.compact = true;
        Titled made;
        made.sheet = numbers_.of(*view.room, view.wall);
        made.title = fmt::format("Wall {}  {}", view.data().id, made.sheet);
        made.picture.scale = scale;
        made.picture.items = drawElevation(view, paper);
        made.picture.extent = extentOf(made.picture.items);
        for (const Mounted& item : view.mounted) {
            const Pt at{item.at_mm.x, item.at_mm.y};
            made.picture.placed.push_back({"plates", item.id, item.tag, at, at.y, at.x, {}, 0});
            for (Vec2 box : item.box_centres_mm)
                made.picture.placed.back().boxes_mm.push_back({box.x, box.y});
        }
        return made;
    }

    std::optional<Composed> composed(const RoomWork& work, double scale) {
        Composed made;
        made.scale = scale;
        for (const WallView& view : work.walls)
            made.pictures.push_back(elevationOf(view, scale));
        // The plan comes second, so that it stands among its elevations.
        const auto second = std::min<std::ptrdiff_t>(1, static_cast<std::ptrdiff_t>(made.pictures.size()));
        made.pictures.insert(made.pictures.begin() + second, planOf(*work.room, scale));
        std::vector<Rect> sizes;
        for (Titled& picture : made.pictures) {
            drawing::Sheet alone;
            alone.items = picture.picture.items;
            made.touching += drawing::touchingTexts(alone).size();
            picture.width_mm = std::max(picture.picture.extent.width(),
                                        drawing::measure(picture.title, kValueText).width_mm);
            sizes.push_back({0, 0, picture.width_mm, picture.picture.extent.height() + kTitle});
        }
        auto places = packed(sizes, pages_.packRoom(), kGap);
        if (!places) return std::nullopt;
        made.places = std::move(*places);
        return made;
    }

    /// The page of the scale that is read best: without texts on each other, at least 1:50, on few sheets,
    /// large.
    std::expected<PlanPage, std::string> best(const RoomWork& work) {
        std::optional<PlanPage> found;
        std::tuple<bool, bool, std::size_t, double> rank;
        bool larger_is_worse = false;
        // From 1:50 on larger ones only as long as they take no more sheets.
        for (const double scale : kScales) {
            if (options_.scale && *options_.scale != scale) continue;
            if (found && scale > kSmall && !std::get<0>(rank)) break;
            if (scale < kSmall && larger_is_worse) continue;
            auto made = composed(work, scale);
            if (!made) {
                larger_is_worse = larger_is_worse || scale < kSmall;
                continue;
            }
            const std::size_t touching = made->touching;
            PlanPage page = pageOf(work, std::move(*made));
            const std::tuple next(touching > 0, scale > kSmall, pages_.sheetsTaken(page), scale);
            if (found && next > rank) {
                larger_is_worse = larger_is_worse || scale < kSmall;
                continue;
            }
            found = std::move(page);
            rank = next;
        }
        if (found) return std::move(*found);
        return std::unexpected(fmt::format(
            "room '{}' does not fit on {} at {} with its elevations; take a smaller scale or larger paper",
            work.room->name, pages_.layout().paper.id,
            options_.scale ? fmt::format("1:{:g}", *options_.scale) : "1:100"));
    }

    std::expected<void, std::string> add(const plan::Room& room, std::vector<WallWork>& walls) {
        ++rooms_;
        const auto work = workOf(room, walls);
        if (!work) return std::unexpected(work.error());
        auto page = best(*work);
        if (!page) return std::unexpected(page.error());
        pages_.add(std::move(*page));
        return {};
    }

    PlanPage pageOf(const RoomWork& work, Composed made) const {
        const plan::Room& room = *work.room;
        PlanPage page;
        page.number = fmt::format("R-{:02}", rooms_);
        page.title = room.name + ", room";
        page.under = fmt::format("plan from above, walls as seen from inside the room, 1:{:g}", made.scale);
        page.document_type = "room sheet, plan and elevations";
        page.scale = made.scale;
        page.asked_for = options_.room.empty() || room.id == options_.room;
        page.parts = partsFor(work);
        page.sheets.resize(made.sheets(), {{}, pages_.pictureRoom().top});
        for (std::size_t i = 0; i < made.pictures.size(); ++i)
            place(page.sheets[made.places[i].sheet], room, std::move(made.pictures[i]),
                  made.places[i].corner);
        return page;
    }

    void place(PictureSheet& sheet, const plan::Room& room, Titled titled, Pt corner) const {
        PlanPicture& picture = titled.picture;
        const double spare = (titled.width_mm - picture.extent.width()) / 2;
        const Pt origin{corner.x + spare - picture.extent.left, corner.y - kTitle - picture.extent.top};
        const std::string id = titled.sheet.empty() ? room.id : "sheet:" + titled.sheet;
        Ink(picture.items, "notes", id)
            .text({picture.extent.left - spare, picture.extent.top + kTitle - kValueText - 1}, titled.title,
                  kValueText);
        sheet.bottom = std::min(sheet.bottom, origin.y + picture.extent.bottom);
        sheet.pictures.push_back({room.name + ", " + titled.title, picture.scale, std::move(picture.items),
                                  origin, std::move(picture.placed)});
    }

    std::vector<SheetPart> partsFor(const RoomWork& work) const {
        const double width = pages_.layout().note_width_mm;
        std::vector<RoomTableGroup> groups;
        for (const WallView& view : work.walls)
            std::ranges::move(wallGroups(view, numbers_.of(*view.room, view.wall)),
                              std::back_inserter(groups));
        const RoomPoints points = pointsOf(house_, *work.room, numbers_);
        std::ranges::move(otherGroups(house_, points), std::back_inserter(groups));
        return {{"Centres", roomTable(groups, width)},
                {"How to measure", measuring(work, points, width)},
                {"Legend", legendOf(work, width)},
                {"Symbols", symbolsOf(work, width)}};
    }

    std::vector<Block> measuring(const RoomWork& work, const RoomPoints& points, double width_mm) const {
        const bool bare = options_.datum.face == Face::Structural;
        std::vector<std::string> notes{
            fmt::format("Walls: u from the {} face at the left corner, v above {}, to the centre of the box, "
                        "in mm. Drawn as seen from inside the room, nothing mirrored.",
                        bare ? "BARE" : "finished", levelWords(options_.datum.level)),
            "A box's numbers stand in the rows at its wall and, by its tag, in the table. Edges, levels and "
            "build-ups of a wall: on the elevation that its title names."};
        if (!points.plugged.empty()) {
            std::string tags;
            for (const std::string& tag : points.plugged)
                tags += (tags.empty() ? "" : ", ") + tag;
            notes.push_back("Plugged in, no point to set out: " + tags + ".");
        }
        std::string without;
        for (std::size_t wall = 0; wall < work.room->walls.size(); ++wall)
            if (numbers_.of(*work.room, wall).empty())
                without += (without.empty() ? "" : ", ") + work.room->walls[wall].id;
        if (!without.empty()) notes.push_back("Nothing on wall " + without + ".");
        return {headingBlock("How to measure", width_mm), notesBlock(notes, width_mm)};
    }

    /// Modules of all walls in one.
    std::vector<Block> legendOf(const RoomWork& work, double width_mm) const {
        if (work.walls.empty()) return {};
        WallView all = work.walls.front();
        for (std::size_t i = 1; i < work.walls.size(); ++i)
            all.mounted.insert(all.mounted.end(), work.walls[i].mounted.begin(), work.walls[i].mounted.end());
        return legend(all, width_mm);
    }

    /// What the plan shows and no wall does: luminaires, and plates in ceiling and floor.
    std::vector<Block> symbolsOf(const RoomWork& work, double width_mm) const {
        const auto& luminaires = house_.luminairesIn(work.room->id);
        std::vector<const plan::Plate*> flat;
        for (const plan::Plate* plate : house_.platesIn(work.room->id))
            if (!spotOf(house_, *work.room, plate->host)) flat.push_back(plate);
        if (luminaires.empty() && flat.empty()) return {};
        return symbolLegend(net_, flat, luminaires, StoreyPlanOptions::Lamps::Symbol, width_mm);
    }

    const House& house_;
    const Options& options_;
    switching::Net net_;
    ElevationNumbers numbers_;
    WallLooks looks_;
    PlanPages pages_;
    std::map<std::pair<std::string, double>, DrawnStorey> storeys_;
    int rooms_ = 0;
};

} // namespace

std::expected<drawing::Drawing, std::string>
roomSheets(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const Options& options) {
    const auto paper = requestedPaper(plan, options, "room sheets", kScales);
    if (!paper) return std::unexpected(paper.error());
    const House house(plan, catalogue, options.base);
    return Maker(house, options, *paper).make();
}

} // namespace gangway::sheets
