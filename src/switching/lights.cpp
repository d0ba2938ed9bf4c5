#include "switching/lights.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace gangway::switching {

using catalogue::WayAction;

namespace {

std::string keyOf(const plan::WayRef& ref) {
    return fmt::format("{}/{}/{}", ref.plate, ref.module, ref.way);
}

bool lights(const Way& way) {
    return way.action != WayAction::Motor && way.action != WayAction::Heating &&
           way.action != WayAction::None;
}

bool liesOver(const Way& way) {
    return !way.dimmer && (way.action == WayAction::OneWay || way.action == WayAction::TwoWay ||
                           way.action == WayAction::Intermediate);
}

} // namespace

void Lights::flip(const Net& net, const plan::WayRef& ref) {
    const Way* way = net.way(ref);
    if (way == nullptr || !lights(*way)) return;
    for (const plan::SwitchLeg* leg : way->legs)
        legs_[leg->id].on = !legs_[leg->id].on;
    if (liesOver(*way)) {
        bool& over = over_[keyOf(ref)];
        over = !over;
    }
    ++version_;
}

void Lights::dim(const Net& net, const plan::WayRef& ref, double percent) {
    const Way* way = net.way(ref);
    if (way == nullptr || !way->dimmer) return;
    for (const plan::SwitchLeg* leg : way->legs) {
        Leg& state = legs_[leg->id];
        state.on = percent > 0;
        if (state.on) state.percent = std::clamp(percent, 1.0, 100.0);
    }
    ++version_;
}

double Lights::dimmedTo(const Net& net, const plan::WayRef& ref) const {
    const Way* way = net.way(ref);
    if (way == nullptr || way->legs.empty()) return 100;
    const auto at = legs_.find(way->legs.front()->id);
    return at == legs_.end() ? 100 : at->second.percent;
}

bool Lights::over(const plan::WayRef& ref) const {
    const auto at = over_.find(keyOf(ref));
    return at != over_.end() && at->second;
}

double Lights::percent(const std::string& leg_id) const {
    const auto at = legs_.find(leg_id);
    return at == legs_.end() || !at->second.on ? 0 : at->second.percent;
}

void Lights::set(const Net& net, const std::string& leg_id, double percent) {
    const plan::SwitchLeg* leg = net.leg(leg_id);
    if (leg == nullptr) return;
    Leg& state = legs_[leg_id];
    state.on = percent > 0;
    if (state.on) state.percent = net.dimmed(*leg) ? std::clamp(percent, 1.0, 100.0) : 100;
    ++version_;
}

void Lights::setAll(const Net& net, bool on) {
    for (const plan::SwitchLeg& leg : net.plan().legs)
        legs_[leg.id].on = on;
    for (const plan::Luminaire& lamp : net.plan().luminaires)
        if (hasOwnSwitch(lamp)) own_[lamp.id] = on;
    ++version_;
}

void Lights::show(const Net& net, const plan::LightScene& scene) {
    setAll(net, false);
    for (const plan::LightScene::Level& level : scene.levels)
        set(net, level.leg, level.percent);
}

std::vector<plan::LightScene::Level> Lights::levels(const Net& net) const {
    std::vector<plan::LightScene::Level> levels;
    for (const plan::SwitchLeg& leg : net.plan().legs)
        if (const double on = percent(leg.id); on > 0) levels.push_back({leg.id, on});
    return levels;
}

std::map<std::string, float> Lights::luminaires(const Net& net) const {
    std::map<std::string, float> levels;
    for (const plan::Luminaire& lamp : net.plan().luminaires) {
        double most = 0;
        const auto legs = net.legsOfLuminaire(lamp.id);
        for (const plan::SwitchLeg* leg : legs)
            most = std::max(most, percent(leg->id));
        const auto own = own_.find(lamp.id);
        if (legs.empty() && own != own_.end() && own->second) most = 100;
        levels[lamp.id] = static_cast<float>(most / 100);
    }
    return levels;
}

void Lights::flipOwn(const std::string& luminaire_id) {
    bool& on = own_[luminaire_id];
    on = !on;
    ++version_;
}

} // namespace gangway::switching
