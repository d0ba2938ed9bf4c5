#include "switching/proof.hpp"

#include <algorithm>
#include <unordered_set>

namespace gangway::switching {

using catalogue::WayAction;

Proof::Proof(const geometry::HouseIndex& index, const catalogue::Catalogue& catalogue,
             const catalogue::CountryPack& country)
    : house(index), pack(country), net(index.plan(), catalogue),
      own_doorways_(std::make_unique<const Doorways>(index)), doorways_(own_doorways_.get()) {
    tie();
}

Proof::Proof(const geometry::HouseIndex& index, const plan::Plan& part, const Doorways& doorways,
             const catalogue::Catalogue& catalogue, const catalogue::CountryPack& country)
    : house(index), pack(country), net(part, catalogue), doorways_(&doorways) {
    tie();
}

void Proof::tie() {
    groups.reserve(plan().legs.size());
    for (const plan::SwitchLeg& leg : plan().legs)
        groups.push_back(switching::groupOf(net, leg));
    for (const Group& group : groups) {
        std::unordered_set<std::string_view> rooms;
        for (const std::string& id : group.leg->luminaires)
            if (const plan::Luminaire* lamp = net.luminaire(id)) rooms.insert(lamp->room);
        for (const Way* way : group.positions) {
            const auto at = isForLight(*way) ? placeOf(*way->plate) : std::nullopt;
            if (!at) continue;
            for (const std::string_view room : rooms)
                switches_[room].push_back({way, {at->x, at->y}});
        }
    }
}

const Group& Proof::groupOf(const plan::SwitchLeg& leg) const {
    return groups[static_cast<std::size_t>(&leg - plan().legs.data())];
}

const std::vector<RoomSwitch>& Proof::switchesOf(const std::string& room_id) const {
    static const std::vector<RoomSwitch> none;
    const auto at = switches_.find(room_id);
    return at == switches_.end() ? none : at->second;
}

namespace {

template <class Hosted>
std::optional<plan::Vec3> hostedAt(const geometry::HouseIndex& house, const Hosted& hosted) {
    const auto at = geometry::hostPoint(house, hosted.room, hosted.host);
    return at ? std::optional(*at) : std::nullopt;
}

} // namespace

std::optional<plan::Vec3> Proof::placeOf(const plan::Plate& plate) const {
    return hostedAt(house, plate);
}

std::optional<plan::Vec3> Proof::placeOf(const plan::Luminaire& lamp) const {
    return hostedAt(house, lamp);
}

bool isForLight(const Way& way) {
    return way.action != WayAction::None && way.action != WayAction::Motor &&
           way.action != WayAction::Heating;
}

std::string roomName(const Net& net, const std::string& room_id) {
    const plan::Room* room = net.room(room_id);
    return room == nullptr || room->name.empty() ? room_id : room->name;
}

const std::string& plateTag(const plan::Plate& plate) {
    return plate.tag.empty() ? plate.id : plate.tag;
}

const std::string& lampTag(const plan::Luminaire& lamp) {
    if (!lamp.tag.empty()) return lamp.tag;
    return lamp.id;
}

plan::Finding aboutPlate(const Proof& proof, std::string_view rule, plan::Severity severity,
                         const plan::Plate& plate) {
    plan::Finding finding;
    finding.rule = rule;
    finding.severity = severity;
    finding.objects = {plate.id};
    finding.place_mm = proof.placeOf(plate);
    return finding;
}

plan::Finding aboutLeg(const Proof& proof, std::string_view rule, plan::Severity severity,
                       const Group& group) {
    plan::Finding finding;
    finding.rule = rule;
    finding.severity = severity;
    for (const Way* way : group.positions)
        if (std::ranges::find(finding.objects, way->plate->id) == finding.objects.end())
            finding.objects.push_back(way->plate->id);
    finding.objects.push_back(group.leg->id);
    if (!group.positions.empty()) {
        finding.place_mm = proof.placeOf(*group.positions.front()->plate);
        return finding;
    }
    for (const std::string& id : group.leg->luminaires)
        if (const plan::Luminaire* lamp = proof.net.luminaire(id)) {
            finding.place_mm = proof.placeOf(*lamp);
            break;
        }
    return finding;
}

} // namespace gangway::switching
