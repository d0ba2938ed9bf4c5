#include "sheets/switching_sheets.hpp"

#include "sheets/plan_pages.hpp"
#include "sheets/plan_view.hpp"
#include "sheets/switching_legend.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

/// A plan with its legs.
struct LegPicture : PlanPicture {
    StoreyLegs legs;
};

class Maker {
public:
    Maker(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const SwitchingOptions& options,
          const Paper& paper)
        : plan_(plan), catalogue_(catalogue), options_(options), net_(plan, catalogue),
          pages_(plan, paper), marks_(marksAtSymbols(plan)), plates_(platesOfSwitching(net_)) {}

    /// An error for a plan that does not fit.
    std::expected<drawing::Drawing, std::string> make() {
        for (const plan::Storey& storey : plan_.storeys) {
            if (!options_.room.empty()) break;
            if (!isWorthASheet({&storey, nullptr})) continue;
            const auto crowded = add({&storey, nullptr}, {});
            if (!crowded) return std::unexpected(crowded.error());
        }
        if (const plan::Room* room = net_.room(options_.room))
            if (const auto done = add({plan::findStorey(plan_, room->storey), room}, {}); !done)
                return std::unexpected(done.error());
        return pages_.finished("Switching plans");
    }

private:
    bool isIn(const PlanSubject& subject, const std::string& room_id) const {
        const plan::Room* room = net_.room(room_id);
        if (room == nullptr || room->storey != subject.storey->id) return false;
        return subject.room == nullptr || subject.room == room;
    }
    std::vector<const plan::Plate*> platesOf(const PlanSubject& subject) const {
        std::vector<const plan::Plate*> plates;
        for (const plan::Plate& plate : plan_.plates)
            if (std::ranges::binary_search(plates_, plate.id) && isIn(subject, plate.room))
                plates.push_back(&plate);
        return plates;
    }
    std::vector<const plan::Luminaire*> luminairesOf(const PlanSubject& subject) const {
        std::vector<const plan::Luminaire*> luminaires;
        for (const plan::Luminaire& luminaire : plan_.luminaires)
            if (isIn(subject, luminaire.room)) luminaires.push_back(&luminaire);
        return luminaires;
    }
    bool isWorthASheet(const PlanSubject& subject) const {
        return !platesOf(subject).empty() || !luminairesOf(subject).empty();
    }

    LegPicture drawn(const PlanSubject& subject, double scale) const {
        StoreyPlanOptions look;
        look.scale = scale;
        look.luminaire_tags = true;
        look.lamps = options_.lamps;
        look.only_plates = plates_;
        look.marks = marks_;
        look.base = options_.base;
        look.wet_zones = options_.wet_zones;
        const StoreyBase base = storeyBase(plan_, subject.storey->id, look);
        const StoreySymbols symbols = storeySymbols(plan_, catalogue_, base, look);
        LegOptions legs;
        legs.corners = options_.corners;
        legs.coloured = options_.coloured;
        if (subject.room != nullptr) legs.room = subject.room->id;
        StoreyLegs drawn_legs = legsOnPlan(net_, base, symbols, legs);
        return {planPicture(base, drawn_legs.items, symbols, subject.room), std::move(drawn_legs)};
    }

    std::expected<LegPicture, std::string> fitting(const PlanSubject& subject) const {
        std::vector<double> scales{50, 100, 200};
        if (subject.room != nullptr) scales.insert(scales.begin(), {20, 25});
        if (options_.scale) scales = {*options_.scale};
        const Rect room = pages_.pictureRoom();
        LegPicture picture;
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

    std::vector<SheetPart> partsFor(const PlanSubject& subject, const LegPicture& picture,
                                    std::vector<std::string> notes) const {
        const double width = pages_.layout().note_width_mm;
        if (options_.wet_zones != nullptr)
            notes.push_back(fmt::format("Zones of baths and showers: {}. Measure again on site.",
                                        options_.wet_zones->limit("wetZone1Top").source));
        const auto plates = platesOf(subject);
        return {{"How to read", switchingNotes(width, notes)},
                {"Legs on this sheet", legLegend(net_, picture.legs.legs, width)},
                {"Symbols", symbolLegend(net_, plates, luminairesOf(subject), options_.lamps, width)},
                {"Switch plates", plateLegend(net_, plates, width)}};
    }

    /// Rooms too crowded for lines get larger sheets of their own, which the storey's sheet names.
    std::vector<std::string> crowdedNotes(const std::vector<const plan::Room*>& crowded) const {
        std::vector<std::string> notes;
        for (std::size_t i = 0; i < crowded.size(); ++i)
            notes.push_back(fmt::format("{}: told by marks here, larger with lines on sheet S-{:02}.",
                                        crowded[i]->name, plans_ + static_cast<int>(i) + 1));
        return notes;
    }

    std::expected<void, std::string> add(const PlanSubject& subject, const std::vector<std::string>& more) {
        auto picture = fitting(subject);
        if (!picture) return std::unexpected(picture.error());
        ++plans_;
        std::vector<const plan::Room*> crowded;
        if (subject.room == nullptr)
            for (const std::string& id : picture->legs.crowded_rooms)
                crowded.push_back(net_.room(id));
        auto notes = crowdedNotes(crowded);
        notes.insert(notes.end(), more.begin(), more.end());
        addPages(subject, std::move(*picture), notes);
        for (const plan::Room* room : crowded)
            if (const auto done = add({subject.storey, room}, {}); !done)
                return std::unexpected(done.error());
        return {};
    }

    void addPages(const PlanSubject& subject, LegPicture picture, const std::vector<std::string>& notes) {
        PlanPage page;
        page.number = fmt::format("S-{:02}", plans_);
        page.title = subject.title() + ", switching";
        page.under =
            fmt::format("seen from above, 1:{:g}; lines show control, not cable route", picture.scale);
        page.document_type = "switching plan";
        page.scale = picture.scale;
        page.parts = partsFor(subject, picture, notes);
        page.sheets.push_back(pages_.centred(
            {page.title, picture.scale, std::move(picture.items), {}, std::move(picture.placed)},
            picture.extent));
        pages_.add(std::move(page));
    }

    const plan::Plan& plan_;
    const catalogue::Catalogue& catalogue_;
    const SwitchingOptions& options_;
    switching::Net net_;
    PlanPages pages_;
    std::map<std::string, std::string> marks_;
    std::vector<std::string> plates_; ///< ids of those that switch or are switched, sorted
    int plans_ = 0;
};

} // namespace

std::expected<drawing::Drawing, std::string> switchingSheets(const plan::Plan& plan,
                                                             const catalogue::Catalogue& catalogue,
                                                             const SwitchingOptions& options) {
    const auto paper = findPaper(options.paper);
    if (!paper)
        return std::unexpected(
            fmt::format("there is no paper '{}'; give one of {}", options.paper, paperNames()));
    constexpr std::array<double, 6> kScales{10, 20, 25, 50, 100, 200};
    if (options.scale && std::ranges::find(kScales, *options.scale) == kScales.end())
        return std::unexpected(fmt::format(
            "1:{:g} is not a scale of switching plans; give 10, 20, 25, 50, 100 or 200", *options.scale));
    if (!options.room.empty() && plan::findRoom(plan, options.room) == nullptr)
        return std::unexpected(fmt::format("there is no room '{}'", options.room));
    return Maker(plan, catalogue, options, *paper).make();
}

} // namespace gangway::sheets
