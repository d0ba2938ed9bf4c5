#include "sheets/storey_plan_sheets.hpp"

#include "sheets/plan_pages.hpp"
#include "sheets/plan_view.hpp"
#include "sheets/request.hpp"
#include "sheets/switching_legend.hpp"
#include "sheets/wall_markers.hpp"

#include <algorithm>
#include <array>
#include <set>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr std::array<double, 6> kScales{10, 20, 25, 50, 100, 200};

/// A plan with its markers, and what it has no room for.
struct MarkedPicture : PlanPicture {
    std::vector<std::string> untagged;
    std::vector<WallMarker> unmarked;
};

class Maker {
public:
    Maker(const House& house, const Options& options, const Paper& paper)
        : house_(house), plan_(house.plan()), options_(options), net_(plan_, house.catalogue()),
          numbers_(house), pages_(plan_, paper, PlanPages::Footnote::Cautions) {}

    /// Every storey is put on sheets, so that those of one room have their numbers in the whole set.
    std::expected<drawing::Drawing, std::string> make() {
        for (const plan::Storey& storey : plan_.storeys) {
            if (roomsOf({&storey, nullptr}).empty()) continue;
            if (const auto done = add({&storey, nullptr}); !done) return std::unexpected(done.error());
        }
        return pages_.finished("Storey plans");
    }

private:
    std::vector<const plan::Room*> roomsOf(const PlanSubject& subject) const {
        std::vector<const plan::Room*> rooms;
        for (const plan::Room& room : plan_.rooms)
            if (room.storey == subject.storey->id && (subject.room == nullptr || subject.room == &room))
                rooms.push_back(&room);
        return rooms;
    }

    MarkedPicture drawn(const PlanSubject& subject, double scale) const {
        StoreyPlanOptions look;
        look.scale = scale;
        look.heights = true;
        look.height_units = StoreyPlanOptions::Heights::Millimetres;
        look.luminaire_tags = true;
        look.tags_only_with_room = true;
        look.base = options_.base;
        const StoreyBase base = storeyBase(plan_, subject.storey->id, look);
        StoreySymbols symbols = storeySymbols(plan_, house_.catalogue(), base, look);
        if (subject.room != nullptr) keepOnly(symbols, thingsIn(plan_, *subject.room));
        std::vector<WallMarker> markers;
        for (const plan::Room* room : roomsOf(subject))
            std::ranges::move(wallMarkersOf(*room, numbers_), std::back_inserter(markers));
        std::vector<Item> taken = base.items;
        taken.insert(taken.end(), symbols.items.begin(), symbols.items.end());
        const std::size_t others = taken.size();
        MarkedPicture picture;
        picture.unmarked = drawWallMarkers(taken, base.mapping, base.keep_clear, markers);
        std::move(taken.begin() + static_cast<std::ptrdiff_t>(others), taken.end(),
                  std::back_inserter(symbols.items));
        picture.untagged = symbols.untagged;
        static_cast<PlanPicture&>(picture) = planPicture(base, {}, symbols, subject.room);
        return picture;
    }

    std::expected<MarkedPicture, std::string> fitting(const PlanSubject& subject) const {
        std::vector<double> scales(kScales.begin() + 1, kScales.end());
        if (options_.scale && subject.room == nullptr) scales = {*options_.scale};
        const Rect room = pages_.pictureRoom();
        MarkedPicture picture;
        for (const double scale : scales) {
            picture = drawn(subject, scale);
            if (picture.extent.width() <= room.width() && picture.extent.height() <= room.height())
                return picture;
        }
        return std::unexpected(
            fmt::format("{} takes {:.0f} x {:.0f} mm of paper at 1:{:g}, and {} has {:.0f} x "
                        "{:.0f}; take a smaller scale or larger paper",
                        subject.title(), picture.extent.width(), picture.extent.height(), picture.scale,
                        pages_.layout().paper.id, room.width(), room.height()));
    }

    const plan::Room* roomOfThing(const std::string& id) const {
        const plan::Plate* plate = plan::findPlate(plan_, id);
        if (plate != nullptr) return plan::findRoom(plan_, plate->room);
        const plan::Luminaire* luminaire = plan::findLuminaire(plan_, id);
        return luminaire == nullptr ? nullptr : plan::findRoom(plan_, luminaire->room);
    }

    /// Rooms with something that has no room for its tag or marker, in the plan's order.
    std::vector<const plan::Room*> crowdedRooms(const MarkedPicture& picture) const {
        std::set<const plan::Room*> crowded;
        for (const WallMarker& marker : picture.unmarked)
            crowded.insert(marker.room);
        for (const std::string& id : picture.untagged)
            crowded.insert(roomOfThing(id));
        std::vector<const plan::Room*> rooms;
        for (const plan::Room& room : plan_.rooms)
            if (crowded.contains(&room)) rooms.push_back(&room);
        return rooms;
    }

    std::expected<void, std::string> add(const PlanSubject& storey) {
        auto picture = fitting(storey);
        if (!picture) return std::unexpected(picture.error());
        ++plans_;
        std::vector<std::pair<const plan::Room*, MarkedPicture>> larger;
        std::vector<std::string> notes;
        for (const plan::Room* room : crowdedRooms(*picture)) {
            auto one = fitting({storey.storey, room});
            if (!one || one->scale >= picture->scale) {
                notes.push_back(leftOut(*picture, room));
                continue;
            }
            larger.emplace_back(room, std::move(*one));
            notes.push_back(fmt::format("{}: too crowded here for every tag; larger, with all of them, on "
                                        "sheet P-{:02}.",
                                        room->name, plans_ + static_cast<int>(larger.size())));
        }
        addPage(storey, std::move(*picture), notes);
        for (auto& [room, one] : larger) {
            ++plans_;
            const std::string left_out = leftOut(one, room);
            addPage({storey.storey, room}, std::move(one),
                    left_out.empty() ? std::vector<std::string>{} : std::vector{left_out});
        }
        return {};
    }

    /// What has no tag or marker in a room, by name.
    std::string leftOut(const MarkedPicture& picture, const plan::Room* room) const {
        std::string words;
        const auto also = [&](const std::string& name) { words += (words.empty() ? "" : ", ") + name; };
        for (const std::string& id : picture.untagged) {
            if (roomOfThing(id) != room) continue;
            const plan::Plate* plate = plan::findPlate(plan_, id);
            const plan::Luminaire* lamp = plan::findLuminaire(plan_, id);
            const std::string tag = plate != nullptr ? plate->tag : lamp->tag;
            also(tag.empty() ? id : tag);
        }
        for (const WallMarker& marker : picture.unmarked)
            if (marker.room == room) also("wall " + room->walls[marker.wall].id);
        return words.empty()
                   ? words
                   : fmt::format("{}: no room on this plan for {}; their places are on the elevations "
                                 "and room sheets.",
                                 room->name, words);
    }

    std::vector<Block> notesFor(const std::vector<std::string>& more, double width_mm) const {
        std::vector<std::string> notes{
            "Seen from above, cut 1200 above FFL; nothing mirrored.",
            "Under a tag: the height of the centre above finished floor level (FFL), in mm. Luminaires "
            "without "
            "one hang on or sit in the ceiling.",
            "A circle with a pointer: stand in the room and look at that wall; beside it the sheet with its "
            "elevation. For setting out take that sheet: along a wall this plan gives no number.",
            "Symbols that would lie on each other stand further from their wall; a line leads to the true "
            "place."};
        notes.insert(notes.end(), more.begin(), more.end());
        return {headingBlock("How to read", width_mm), notesBlock(notes, width_mm)};
    }

    /// Every wall that has an elevation, by room, so that a sheet is found without searching the plan.
    std::vector<Block> elevationList(const PlanSubject& subject, double width_mm) const {
        std::vector<std::string> lines;
        for (const plan::Room* room : roomsOf(subject)) {
            std::string line;
            for (const WallMarker& marker : wallMarkersOf(*room, numbers_))
                line += fmt::format("{}{} {}", line.empty() ? "" : ", ", room->walls[marker.wall].id,
                                    marker.sheet);
            if (!line.empty()) lines.push_back(room->name + ": " + line);
        }
        if (lines.empty()) return {};
        return {headingBlock("Elevations of walls", width_mm), notesBlock(lines, width_mm)};
    }

    std::vector<Block> symbolsFor(const PlanSubject& subject, double width_mm) const {
        std::vector<const plan::Plate*> plates;
        std::vector<const plan::Luminaire*> luminaires;
        for (const plan::Room* room : roomsOf(subject)) {
            std::ranges::copy(house_.platesIn(room->id), std::back_inserter(plates));
            std::ranges::copy(house_.luminairesIn(room->id), std::back_inserter(luminaires));
        }
        auto blocks =
            plates.empty() && luminaires.empty()
                ? std::vector<Block>{headingBlock("Symbols", width_mm)}
                : symbolLegend(net_, plates, luminaires, StoreyPlanOptions::Lamps::Symbol, width_mm);
        blocks.back().gap_after_mm = 0;
        blocks.push_back(wallMarkerSign(width_mm));
        return blocks;
    }

    void addPage(const PlanSubject& subject, MarkedPicture picture, const std::vector<std::string>& notes) {
        const double width = pages_.layout().note_width_mm;
        PlanPage page;
        page.number = fmt::format("P-{:02}", plans_);
        page.title = subject.title() + ", plan";
        page.under = fmt::format("seen from above, 1:{:g}; heights above FFL in mm", picture.scale);
        page.document_type = subject.room == nullptr ? "storey plan" : "plan of a room";
        page.scale = picture.scale;
        page.parts = {{"How to read", notesFor(notes, width)},
                      {"Symbols", symbolsFor(subject, width)},
                      {"Elevations of walls", elevationList(subject, width)}};
        page.sheets.push_back(pages_.centred(
            {page.title, picture.scale, std::move(picture.items), {}, std::move(picture.placed)},
            picture.extent));
        page.asked_for =
            options_.room.empty() || plan::findRoom(plan_, options_.room)->storey == subject.storey->id;
        pages_.add(std::move(page));
    }

    const House& house_;
    const plan::Plan& plan_;
    const Options& options_;
    switching::Net net_;
    ElevationNumbers numbers_;
    PlanPages pages_;
    int plans_ = 0;
};

} // namespace

std::expected<drawing::Drawing, std::string>
storeyPlanSheets(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const Options& options) {
    const auto paper = requestedPaper(plan, options, "storey plans", kScales);
    if (!paper) return std::unexpected(paper.error());
    const House house(plan, catalogue, options.base);
    return Maker(house, options, *paper).make();
}

} // namespace gangway::sheets
