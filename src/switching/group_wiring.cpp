// How many conductors run where: the three conventions, and what each arrangement needs in them.
#include "switching/group.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace gangway::switching {

using Between = Run::Between;
using Convention = catalogue::WiringConvention;
using catalogue::WayAction;

namespace {

constexpr const char* kBox = "joint box";
constexpr const char* kSupply = "supply";
constexpr const char* kRelay = "relay";

/// Words of a cable, and the conductors that the words name.
struct Cable {
    int conductors;
    const char* what;
};
constexpr Cable kSwitchDrop{2, "permanent line, switched line"};
constexpr Cable kFeed{2, "line, neutral"};
constexpr Cable kLampFeed{2, "switched line, neutral"};
constexpr Cable kStrappersAndCommon{3, "two strappers, one between the commons"};
constexpr Cable kStrappersAndNeutral{3, "two strappers, neutral"};
constexpr Cable kFirstToBox{3, "permanent line, two strappers"};
constexpr Cable kLastToBox{3, "switched line, two strappers"};
constexpr Cable kMiddleToBox{4, "two strappers in, two strappers out"};
constexpr Cable kSensorDrop{3, "permanent line, neutral, switched line"};
constexpr Cable kPulse{2, "line, pulse line"};
constexpr Cable kBeside{2, "permanent line, switched line"};
constexpr Cable kMotorFeed{2, "line for this direction, neutral (shared with the other direction)"};
constexpr Cable kHeatingFeed{2, "switched line, neutral"};

std::string plateName(const plan::Plate& plate) {
    return plate.tag.empty() ? plate.id : plate.tag;
}

bool isSensor(const Way& way) {
    return way.action == WayAction::Sensor || way.action == WayAction::Timer;
}

bool isChangeover(const Way& way) {
    return way.action == WayAction::TwoWay || way.action == WayAction::Intermediate;
}

/// Positions in the order of the run: sensors first, where the neutral is; of the switches, where there are
/// changeovers, one at each end.
std::vector<const Way*> inOrder(const Group& group) {
    std::vector<const Way*> sensors, switches;
    for (const Way* way : group.positions)
        (isSensor(*way) ? sensors : switches).push_back(way);
    const auto is_end = [](const Way* way) { return way->action == WayAction::TwoWay; };
    const auto first = std::ranges::find_if(switches, is_end);
    if (first != switches.end()) {
        std::rotate(switches.begin(), first, first + 1);
        const auto last = std::find_if(switches.begin() + 1, switches.end(), is_end);
        if (last != switches.end()) std::rotate(last, last + 1, switches.end());
    }
    sensors.insert(sensors.end(), switches.begin(), switches.end());
    return sensors;
}

std::vector<std::string> plateNames(const std::vector<const Way*>& ways) {
    std::vector<std::string> names;
    names.reserve(ways.size());
    for (const Way* way : ways)
        names.push_back(plateName(*way->plate));
    return names;
}

/// What the leg feeds, by what is printed beside it.
std::vector<std::string> loadNames(const Net& net, const plan::SwitchLeg& leg) {
    std::vector<std::string> names;
    for (const std::string& id : leg.luminaires)
        if (const plan::Luminaire* lamp = net.luminaire(id))
            names.push_back(lamp->tag.empty() ? lamp->id : lamp->tag);
    for (const std::string& id : leg.plates)
        if (const plan::Plate* plate = net.plate(id)) names.push_back(plateName(*plate));
    return names;
}

class Runs {
public:
    Runs(const Net& net, const Group& group, Convention convention)
        : group_(&group), convention_(convention), ways_(inOrder(group)), switches_(plateNames(ways_)),
          loads_(loadNames(net, *group.leg)) {}

    std::vector<Run> made() {
        switch (group_->arrangement) {
        case Arrangement::OneWay:
        case Arrangement::TwoWay:
        case Arrangement::Intermediate:
            switchRuns();
            break;
        case Arrangement::Relay:
            chain(kPulse);
            add(Between::SwitchToBox, switches_.back(), kRelay, kPulse);
            toLoads(Between::BoxToLamp, kRelay, kLampFeed);
            break;
        case Arrangement::Sensor:
            sensorRuns();
            break;
        case Arrangement::Motor:
            directRuns(kMotorFeed);
            break;
        case Arrangement::Heating:
            directRuns(kHeatingFeed);
            break;
        case Arrangement::None:
        case Arrangement::Mixed:
            break;
        }
        return std::move(runs_);
    }

private:
    void add(Between between, const std::string& from, const std::string& to, Cable cable) {
        runs_.push_back({between, from, to, cable.conductors, cable.what});
    }

    void chain(Cable cable) {
        for (std::size_t i = 1; i < switches_.size(); ++i)
            if (switches_[i - 1] != switches_[i]) // two positions on one plate need no cable
                add(Between::SwitchToSwitch, switches_[i - 1], switches_[i], cable);
    }

    /// From the switch, box or relay to the first load, and on from load to load.
    void toLoads(Between between, const std::string& from, Cable first) {
        if (loads_.empty()) return;
        add(between, from, loads_.front(), first);
        for (std::size_t i = 1; i < loads_.size(); ++i)
            add(Between::LampToLamp, loads_[i - 1], loads_[i], kLampFeed);
    }

    void switchRuns() {
        switch (convention_) {
        case Convention::LoopInAtLamp:
            chain(kStrappersAndCommon);
            toLoads(Between::SwitchToLamp, switches_.front(), kSwitchDrop);
            break;
        case Convention::NeutralAtSwitch:
            add(Between::SupplyToSwitch, kSupply, switches_.front(), kFeed);
            chain(kStrappersAndNeutral);
            toLoads(Between::SwitchToLamp, switches_.back(), kLampFeed);
            break;
        case Convention::JunctionBox:
            for (std::size_t i = 0; i < switches_.size(); ++i)
                add(Between::SwitchToBox, switches_[i], kBox, toBox(i));
            toLoads(Between::BoxToLamp, kBox, kLampFeed);
            break;
        }
    }

    Cable toBox(std::size_t position) const {
        if (switches_.size() == 1) return kSwitchDrop;
        if (position == 0) return kFirstToBox;
        return position + 1 == switches_.size() ? kLastToBox : kMiddleToBox;
    }

    /// A sensor needs a neutral; switches beside it are in parallel, as a group of their own where they are
    /// changeovers.
    void sensorRuns() {
        for (std::size_t i = 1; i < switches_.size(); ++i) {
            if (switches_[i - 1] == switches_[i]) continue;
            const bool grouped = isChangeover(*ways_[i - 1]) && isChangeover(*ways_[i]);
            add(Between::SwitchToSwitch, switches_[i - 1], switches_[i],
                isSensor(*ways_[i]) ? kSensorDrop
                : grouped           ? kStrappersAndCommon
                                    : kBeside);
        }
        switch (convention_) {
        case Convention::LoopInAtLamp:
            toLoads(Between::SwitchToLamp, switches_.front(), kSensorDrop);
            break;
        case Convention::NeutralAtSwitch:
            add(Between::SupplyToSwitch, kSupply, switches_.front(), kFeed);
            toLoads(Between::SwitchToLamp, switches_.front(), kLampFeed);
            break;
        case Convention::JunctionBox:
            add(Between::SwitchToBox, switches_.front(), kBox, kSensorDrop);
            toLoads(Between::BoxToLamp, kBox, kLampFeed);
            break;
        }
    }

    void directRuns(Cable feed) {
        add(Between::SupplyToSwitch, kSupply, switches_.front(), kFeed);
        chain(kBeside);
        toLoads(Between::SwitchToLamp, switches_.front(), feed);
    }

    const Group* group_;
    Convention convention_;
    std::vector<const Way*> ways_;
    std::vector<std::string> switches_; ///< tags of the plates of ways_
    std::vector<std::string> loads_;
    std::vector<Run> runs_;
};

constexpr const char* kCounted = "counted beside the protective conductor";

std::string sensorText(Convention convention) {
    constexpr const char* kParallel = "switches beside it in parallel";
    switch (convention) {
    case Convention::LoopInAtLamp:
        return fmt::format("Supply loops in at the lamp; a drop with neutral to the sensor, {}; {}.",
                           kParallel, kCounted);
    case Convention::NeutralAtSwitch:
        return fmt::format("Supply with neutral at the sensor, which feeds the lamp, {}; {}.", kParallel,
                           kCounted);
    case Convention::JunctionBox:
        return fmt::format("The sensor and the first lamp run to a joint box, {}, further lamps from lamp to "
                           "lamp; {}.",
                           kParallel, kCounted);
    }
    return {};
}

std::string conventionText(const Group& group, Convention convention) {
    switch (group.arrangement) {
    case Arrangement::None:
        return "No switch works it: nothing to count.";
    case Arrangement::Mixed:
        return "The positions don't make a working arrangement: count after the findings are settled.";
    case Arrangement::Relay:
        return fmt::format("Push-buttons in parallel to an impulse relay, which feeds the lamps; {}.",
                           kCounted);
    case Arrangement::Motor:
    case Arrangement::Heating:
        return fmt::format("Supply at the control, then straight to what it works; {}.", kCounted);
    case Arrangement::Sensor:
        return sensorText(convention);
    default:
        break;
    }
    switch (convention) {
    case Convention::LoopInAtLamp:
        return fmt::format("Supply loops in at the lamp; a drop without neutral to the first switch, from "
                           "there from switch to switch; {}.",
                           kCounted);
    case Convention::NeutralAtSwitch:
        return fmt::format("Supply with neutral at the first switch box, from switch to switch, from the "
                           "last to the lamp; {}.",
                           kCounted);
    case Convention::JunctionBox:
        return fmt::format("Every switch and the first lamp run to a joint box, further lamps from lamp to "
                           "lamp; {}.",
                           kCounted);
    }
    return {};
}

} // namespace

GroupWiring groupWiring(const Net& net, const Group& group, const catalogue::Wiring& wiring) {
    return {.runs = Runs(net, group, wiring.convention).made(),
            .convention = conventionText(group, wiring.convention),
            .source = fmt::format("convention: {}; conductors: trade facts 6.4, electrician's handbook, and "
                                  "common practice, no source, for joint boxes, relays and sensors",
                                  wiring.source)};
}

} // namespace gangway::switching
