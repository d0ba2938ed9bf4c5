// Which lamps are on: what happens when a switch is worked, as a value.
#pragma once

#include "switching/net.hpp"

#include <map>
#include <string>
#include <vector>

namespace gangway::switching {

/// The state of a house's switches and lamps. It knows legs and ways by their ids, so it lives on when the
/// plan changes; legs that are not known are off. A leg is on or off as a whole: what several positions do to
/// it is that working any one of them turns it over, which is what two-way and intermediate switches do when
/// they are wired as the schedule says (switching/group.hpp proves it contact by contact).
class Lights {
public:
    /// Works a way: every leg it works turns over, and the rocker lies the other way. A push-button and a
    /// sensor turn their legs over without lying anywhere; ways of motors and heating light nothing.
    void flip(const Net& net, const plan::WayRef& ref);
    /// Sets a dimmer of 1 to 100 %; its legs are on at that level. Held to that range. 0 turns them off and
    /// keeps the level they come back with.
    void dim(const Net& net, const plan::WayRef& ref, double percent);
    /// The level a dimmer stands at, on or off, %.
    double dimmedTo(const Net& net, const plan::WayRef& ref) const;
    /// Whether the rocker lies over from where it lay at first; a push-button never does.
    bool over(const plan::WayRef& ref) const;
    /// 0: off; without a dimmer 100.
    double percent(const std::string& leg_id) const;
    void set(const Net& net, const std::string& leg_id, double percent);
    void setAll(const Net& net, bool on);
    /// Turns on what the scene lists, and everything else off.
    void show(const Net& net, const plan::LightScene& scene);
    /// What is on now, in the plan's order of legs, for a scene to keep.
    std::vector<plan::LightScene::Level> levels(const Net& net) const;
    /// Level of every luminaire of the plan that a leg feeds, 0 to 1: the highest of its legs. Luminaires
    /// with their own switch and no leg are as flipOwn left them; the others without a leg are always off.
    std::map<std::string, float> luminaires(const Net& net) const;
    /// Turns a lamp with its own switch over.
    void flipOwn(const std::string& luminaire_id);
    /// Rises with every change.
    unsigned long version() const { return version_; }

private:
    struct Leg {
        bool on = false;
        double percent = 100;
    };
    std::map<std::string, Leg> legs_;
    std::map<std::string, bool> own_;
    std::map<std::string, bool> over_; ///< by way, as text
    unsigned long version_ = 0;
};

} // namespace gangway::switching
