#include "switching/suggest.hpp"

#include "switching/group.hpp"
#include "switching/proof.hpp"
#include "switching/suggest_places.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <set>

namespace gangway::switching {

using catalogue::WayAction;

namespace {

constexpr const char* kPositions = "n positions need two two-way switches and n - 2 intermediates "
                                   "(electrician's handbook, trade facts 6.2)";

/// A switch of a proposed group: one that is there, or a plate to be put up.
struct Position {
    const Way* existing = nullptr;
    std::optional<Place> place;
    std::string where; ///< "kitchen door", "bedside left"
};

const char* typeFor(std::size_t index, std::size_t count) {
    if (count == 1) return "switch-1way";
    return index == 0 || index + 1 == count ? "switch-2way" : "switch-intermediate";
}

WayAction actionFor(std::size_t index, std::size_t count) {
    if (count == 1) return WayAction::OneWay;
    return index == 0 || index + 1 == count ? WayAction::TwoWay : WayAction::Intermediate;
}

bool isHandSwitch(const Way& way) {
    return way.action == WayAction::OneWay || way.action == WayAction::TwoWay ||
           way.action == WayAction::Intermediate;
}

class Suggester {
public:
    Suggester(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
              const catalogue::CountryPack& pack, const plan::Room& room)
        : proof_(house, catalogue, pack), room_(&room), format_(formatOf(room)) {
        plan::Plate plate;
        plate.format = format_;
        plate.modules.emplace_back().type = "switch-1way";
        const auto made = catalogue::compose(catalogue, plate);
        size_ = {made.width_mm, made.height_mm};
        for (const plan::Plate& known : proof_.plan().plates)
            taken_.insert({known.id, known.tag});
        for (const plan::SwitchLeg& leg : proof_.plan().legs)
            taken_legs_.insert({leg.id, leg.letter});
        for (const Entrance& entrance : proof_.doorways().all())
            if (entrance.into == room.id) entrances_.push_back(&entrance);
        keepWaysIn();
    }

    std::vector<Suggestion> all() {
        suggestForCeiling();
        suggestForOthers();
        for (const Group& group : proof_.groups)
            suggestForLeg(group);
        // What is proposed has to change something: a module of several ways can't be exchanged for one of
        // them.
        std::erase_if(suggestions_, [&](const Suggestion& one) { return changesNothing(one); });
        return std::move(suggestions_);
    }

private:
    bool changesNothing(const Suggestion& suggestion) const {
        if (!suggestion.plates.empty() || !suggestion.changes.empty()) return false;
        const auto now = std::ranges::find(proof_.plan().legs, suggestion.leg.id, &plan::SwitchLeg::id);
        return now != proof_.plan().legs.end() && now->controls == suggestion.leg.controls &&
               now->luminaires == suggestion.leg.luminaires && now->plates == suggestion.leg.plates;
    }

    std::string formatOf(const plan::Room& room) const {
        const plan::Storey* storey = plan::findStorey(proof_.plan(), room.storey);
        return storey == nullptr || storey->plate_format.empty() ? proof_.pack.plate_format
                                                                 : storey->plate_format;
    }

    /// From a room that is reached only through this one people come back: the light is on by then. Such
    /// entrances don't count where there are others.
    void keepWaysIn() {
        const auto is_way_back = [&](const Entrance* entrance) {
            return std::ranges::count(proof_.doorways().all(), entrance->from, &Entrance::into) == 1;
        };
        if (!std::ranges::all_of(entrances_, is_way_back)) std::erase_if(entrances_, is_way_back);
    }

    bool isUnworked(const plan::Luminaire& lamp) const {
        if (lamp.room != room_->id || hasOwnSwitch(lamp)) return false;
        return std::ranges::none_of(proof_.net.legsOfLuminaire(lamp.id), [&](const plan::SwitchLeg* leg) {
            return !proof_.groupOf(*leg).positions.empty();
        });
    }

    std::vector<std::string> unworked(bool on_ceiling) const {
        std::vector<std::string> lamps;
        for (const plan::Luminaire& lamp : proof_.plan().luminaires)
            if (isUnworked(lamp) && (lamp.host.kind == plan::Host::Kind::Ceiling) == on_ceiling)
                lamps.push_back(lamp.id);
        return lamps;
    }

    /// A switch beside an entrance that nothing is tied to yet.
    const Way* freeWayAt(const Entrance& entrance) const {
        for (const Way& way : proof_.net.ways()) {
            const bool here = way.plate->room == entrance.into || way.plate->room == entrance.from;
            if (!here || !way.legs.empty() || !isHandSwitch(way) || way.dimmer || way.module->ways != 1)
                continue;
            if (used_.contains(&way)) continue;
            const auto at = proof_.placeOf(*way.plate);
            if (at && reachOf(entrance, {at->x, at->y}) <= proof_.pack.entrance_reach_mm.value) return &way;
        }
        return nullptr;
    }

    void addEntrance(const Entrance& entrance, std::vector<Position>& positions) {
        const std::string where = openingName(*entrance.opening);
        if (const Way* way = freeWayAt(entrance)) {
            used_.insert(way);
            positions.push_back({way, std::nullopt, where});
        } else if (const auto place = placeAtEntrance(proof_.house, proof_.pack, entrance, size_)) {
            positions.push_back({nullptr, place, where});
        }
    }

    void addBeds(std::vector<Position>& positions) const {
        for (const plan::Furniture* piece : proof_.house.furnitureIn(room_->id)) {
            if (piece->kind != "bed") continue;
            for (const Place& place : placesAtBed(proof_.house, proof_.pack, *piece, size_))
                positions.push_back({nullptr, place, "bedside"});
            return;
        }
    }

    void suggestForCeiling() {
        const auto lamps = unworked(true);
        if (lamps.empty()) return;
        std::vector<Position> positions;
        for (const Entrance* entrance : entrances_)
            addEntrance(*entrance, positions);
        addBeds(positions);
        propose(lamps, positions, "ceiling lamp");
    }

    void suggestForOthers() {
        const auto lamps = unworked(false);
        if (lamps.empty() || entrances_.empty()) return;
        std::vector<Position> positions;
        addEntrance(*entrances_.front(), positions);
        propose(lamps, positions, "other lamp");
    }

    void propose(const std::vector<std::string>& lamps, const std::vector<Position>& positions,
                 const char* noun) {
        if (positions.empty()) return;
        Suggestion suggestion;
        suggestion.leg.id = freeLeg();
        suggestion.leg.letter = suggestion.leg.id;
        suggestion.leg.name = fmt::format("{} {}s", roomName(proof_.net, room_->id), noun);
        suggestion.leg.luminaires = lamps;
        suggestion.title = fmt::format("{} for {} {}{} of {}", arrangementWords(positions), lamps.size(),
                                       noun, lamps.size() == 1 ? "" : "s", roomName(proof_.net, room_->id));
        fill(suggestion, positions);
    }

    static std::string arrangementWords(const std::vector<Position>& positions) {
        std::string where;
        for (const Position& position : positions)
            where += fmt::format("{}{}", where.empty() ? "" : ", ", position.where);
        const std::size_t count = positions.size();
        if (count == 1) return fmt::format("A switch at {}", where);
        if (count == 2) return fmt::format("Two-way at {}", where);
        return fmt::format("Two-way with {} intermediate at {}", count - 2, where);
    }

    /// Entrances of the room from which a leg can't be worked.
    std::vector<const Entrance*> darkFor(const Group& group) const {
        std::vector<const Entrance*> dark;
        for (const Entrance* entrance : entrances_) {
            const bool lit = std::ranges::any_of(proof_.switchesOf(room_->id), [&](const RoomSwitch& one) {
                const std::string& room = one.way->plate->room;
                return (room == entrance->into || room == entrance->from) &&
                       reachOf(*entrance, one.at_mm) <= proof_.pack.entrance_reach_mm.value;
            });
            if (!lit && !group.positions.empty()) dark.push_back(entrance);
        }
        return dark;
    }

    /// A leg of the room with hand switches only: entrances it can't be worked from, and switches of a kind
    /// that doesn't suit their place in the run.
    void suggestForLeg(const Group& group) {
        const auto& lamps = group.leg->luminaires;
        const plan::Luminaire* first = lamps.empty() ? nullptr : proof_.net.luminaire(lamps.front());
        if (first == nullptr || first->room != room_->id || group.leg->relay || group.positions.empty())
            return;
        if (!std::ranges::all_of(group.positions, [](const Way* way) { return isHandSwitch(*way); })) return;
        std::vector<Position> positions;
        for (const Way* way : group.positions)
            positions.push_back({way, std::nullopt, plateTag(*way->plate)});
        std::vector<Position> more;
        if (first->host.kind == plan::Host::Kind::Ceiling && !helped_)
            for (const Entrance* entrance : darkFor(group))
                addEntrance(*entrance, more);
        // Between the two ends that are there, so that those stay as they are.
        const auto before = positions.size() > 1 ? positions.end() - 1 : positions.end();
        positions.insert(before, more.begin(), more.end());
        const bool several = positions.size() > 1;
        if (several && std::ranges::any_of(group.positions, [](const Way* way) { return way->dimmer; }))
            return;
        if (more.empty() && suits(positions)) return;
        helped_ = helped_ || !more.empty();
        Suggestion suggestion;
        suggestion.new_leg = false;
        suggestion.leg = *group.leg;
        suggestion.leg.controls.clear();
        suggestion.title = fmt::format("{} for {}", arrangementWords(positions), legName(*group.leg));
        fill(suggestion, positions);
    }

    static bool suits(const std::vector<Position>& positions) {
        for (std::size_t i = 0; i < positions.size(); ++i)
            if (positions[i].existing->action != actionFor(i, positions.size())) return false;
        return true;
    }

    void fill(Suggestion& suggestion, const std::vector<Position>& positions) {
        suggestion.room = room_->id;
        suggestion.why =
            positions.size() == 1
                ? std::string("Beside a door on its latch side, at the pack's height (trade facts "
                              "2.35; common practice).")
                : fmt::format("So that it is worked from {} places; {}.", positions.size(), kPositions);
        for (std::size_t i = 0; i < positions.size(); ++i) {
            const char* type = typeFor(i, positions.size());
            if (positions[i].existing != nullptr)
                useWay(suggestion, *positions[i].existing, type, actionFor(i, positions.size()));
            else
                addPlate(suggestion, positions[i], type);
        }
        suggestions_.push_back(std::move(suggestion));
    }

    static void useWay(Suggestion& suggestion, const Way& way, const char* type, WayAction action) {
        suggestion.leg.controls.push_back(way.ref);
        if (way.action == action) return;
        if (way.module->ways == 1)
            suggestion.changes.push_back({way.ref.plate, way.ref.module, type});
        else
            suggestion.why +=
                fmt::format(" {} holds several ways in one module: choose one with {} ways there.",
                            plateTag(*way.plate), action == WayAction::TwoWay ? "two-way" : "other");
    }

    void addPlate(Suggestion& suggestion, const Position& position, const char* type) {
        plan::Plate plate;
        int number = 1;
        const auto tag_of = [&](int n) { return fmt::format("{}-{:02}", room_->letter, n); };
        while (taken_.contains(fmt::format("{}-{:02}", room_->id, number)) ||
               (!room_->letter.empty() && taken_.contains(tag_of(number))))
            ++number;
        plate.id = fmt::format("{}-{:02}", room_->id, number);
        if (!room_->letter.empty()) plate.tag = tag_of(number);
        taken_.insert({plate.id, plate.tag});
        plate.room = room_->id;
        plate.host = position.place->host;
        plate.format = format_;
        plate.modules.emplace_back().type = type;
        plate.purpose = fmt::format("light, {}", position.where);
        plan::WayRef ref;
        ref.plate = plate.id;
        suggestion.leg.controls.push_back(ref);
        if (!position.place->is_free)
            suggestion.why +=
                fmt::format(" The place of {} at {} is not free: something stands there or before "
                            "it.",
                            plateTag(plate), position.where);
        suggestion.plates.push_back(std::move(plate));
    }

    std::string freeLeg() {
        int number = 1;
        while (taken_legs_.contains(fmt::format("L{}", number)))
            ++number;
        const std::string id = fmt::format("L{}", number);
        taken_legs_.insert(id);
        return id;
    }

    Proof proof_;
    const plan::Room* room_;
    std::string format_;
    PlateSize size_;
    std::vector<const Entrance*> entrances_;
    std::set<std::string> taken_, taken_legs_; ///< ids, tags and letters
    std::set<const Way*> used_;
    bool helped_ = false; ///< a leg of the room was already proposed at the dark entrances
    std::vector<Suggestion> suggestions_;
};

} // namespace

std::vector<Suggestion> suggest(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
                                const catalogue::CountryPack& pack, const std::string& room_id) {
    const plan::Room* room = house.room(room_id);
    if (room == nullptr) return {};
    return Suggester(house, catalogue, pack, *room).all();
}

} // namespace gangway::switching
