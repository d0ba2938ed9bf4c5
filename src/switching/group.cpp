#include "switching/group.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace gangway::switching {

using catalogue::WayAction;

namespace {

bool anyOf(const std::vector<const Way*>& ways, WayAction action) {
    return std::ranges::any_of(ways, [&](const Way* way) { return way->action == action; });
}

std::size_t count(const std::vector<const Way*>& ways, WayAction action) {
    return static_cast<std::size_t>(
        std::ranges::count_if(ways, [&](const Way* way) { return way->action == action; }));
}

Arrangement ofSwitches(const std::vector<const Way*>& ways) {
    const std::size_t ends = count(ways, WayAction::TwoWay);
    const std::size_t between = count(ways, WayAction::Intermediate);
    // A changeover that stands alone works as a one-way switch; the findings ask what became of the other.
    if (ways.size() == 1) return between == 1 ? Arrangement::Mixed : Arrangement::OneWay;
    if (ends != 2 || ends + between != ways.size()) return Arrangement::Mixed;
    return between == 0 ? Arrangement::TwoWay : Arrangement::Intermediate;
}

Arrangement arrangementOf(const std::vector<const Way*>& ways, bool relay) {
    if (ways.empty()) return Arrangement::None;
    const auto all = [&](WayAction action) { return count(ways, action) == ways.size(); };
    if (all(WayAction::Motor)) return Arrangement::Motor;
    if (all(WayAction::Heating)) return Arrangement::Heating;
    if (anyOf(ways, WayAction::Motor) || anyOf(ways, WayAction::Heating)) return Arrangement::Mixed;
    if (relay) return all(WayAction::Push) ? Arrangement::Relay : Arrangement::Mixed;
    if (anyOf(ways, WayAction::Push)) return Arrangement::Mixed;
    if (anyOf(ways, WayAction::Sensor) || anyOf(ways, WayAction::Timer)) return Arrangement::Sensor;
    return ofSwitches(ways);
}

/// What is joined to what: nodes and the contacts that are closed, followed from one node to another.
class Contacts {
public:
    explicit Contacts(std::size_t nodes) : joined_(nodes) {}
    void close(std::size_t a, std::size_t b) {
        joined_[a].push_back(b);
        joined_[b].push_back(a);
    }
    bool reach(std::size_t from, std::size_t to) const {
        std::vector<bool> live(joined_.size(), false);
        std::vector<std::size_t> open{from};
        live[from] = true;
        while (!open.empty()) {
            const std::size_t node = open.back();
            open.pop_back();
            for (const std::size_t next : joined_[node])
                if (!live[next]) {
                    live[next] = true;
                    open.push_back(next);
                }
        }
        return live[to];
    }

private:
    std::vector<std::vector<std::size_t>> joined_;
};

/// Node of one of the two wires of the cable behind position `cable`, on which changeovers throw.
std::size_t wire(std::size_t cable, bool second) {
    return 2 * cable + (second ? 1 : 0);
}

} // namespace

Group groupOf(const Net& net, const plan::SwitchLeg& leg) {
    Group group;
    group.leg = &leg;
    for (const plan::WayRef& ref : leg.controls) {
        const Way* way = net.way(ref);
        if (way != nullptr && std::ranges::find(group.positions, way) == group.positions.end())
            group.positions.push_back(way);
    }
    group.arrangement = arrangementOf(group.positions, leg.relay);
    return group;
}

std::string arrangementName(const Group& group) {
    switch (group.arrangement) {
    case Arrangement::None:
        return "no switch";
    case Arrangement::OneWay:
        return group.positions.front()->dimmer ? "dimmer" : "one-way";
    case Arrangement::TwoWay:
        return "two-way";
    case Arrangement::Intermediate:
        return fmt::format("two-way with {} intermediate", group.positions.size() - 2);
    case Arrangement::Relay:
        return fmt::format("relay with {} push-button{}", group.positions.size(),
                           group.positions.size() == 1 ? "" : "s");
    case Arrangement::Sensor:
        return anyOf(group.positions, WayAction::Sensor) ? "sensor" : "timer";
    case Arrangement::Motor:
        return "motor";
    case Arrangement::Heating:
        return "heating";
    case Arrangement::Mixed:
        break;
    }
    return "positions that don't match";
}

// The network of trade facts 6.4: two wires and one between all commons run from switch to switch. The
// supply comes in on the first wire, the lamp hangs on the second. A changeover joins the commons to one of
// the wires; an intermediate passes the commons and cuts the wires, straight or crossed.
bool passes(Arrangement arrangement, const std::vector<bool>& thrown) {
    const std::size_t positions = thrown.size();
    if (arrangement == Arrangement::OneWay) return positions == 1 && thrown[0];
    const bool group = (arrangement == Arrangement::TwoWay && positions == 2) ||
                       (arrangement == Arrangement::Intermediate && positions >= 3);
    if (!group) return false;
    const std::size_t cables = positions - 1;
    const std::size_t commons = 2 * cables;
    Contacts contacts(commons + 1);
    contacts.close(commons, wire(0, thrown.front()));
    for (std::size_t i = 1; i + 1 < positions; ++i)
        for (const bool second : {false, true})
            contacts.close(wire(i - 1, second), wire(i, second != thrown[i]));
    contacts.close(commons, wire(cables - 1, thrown.back()));
    return contacts.reach(wire(0, false), wire(0, true));
}

} // namespace gangway::switching
