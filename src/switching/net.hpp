// The switching of a plan made ready for questions: every way of every switch, every leg, and which belongs
// to which.
#pragma once

#include "catalogue/catalogue.hpp"
#include "plan/plan.hpp"

#include <cstddef>
#include <map>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace gangway::switching {

/// One switched output of one module.
struct Way {
    plan::WayRef ref;
    const plan::Plate* plate = nullptr;
    const catalogue::ModuleType* module = nullptr; ///< as it is made for the plate's format
    catalogue::WayAction action = catalogue::WayAction::None;
    bool dimmer = false;
    std::vector<const plan::SwitchLeg*> legs; ///< legs it works, in the plan's order
};

/// What a module carries: the chosen product's values where the plan states them, else the catalogue's. W; 0:
/// not stated.
struct LoadWindow {
    double min_w = 0;
    double max_w = 0; ///< filament lamps
};

/// Made in time linear in the plan. Plan and catalogue must outlive it and stay unchanged. Ways come in the
/// order of plates, modules and ways; ways that only a leg names (a module that has fewer, or is unknown) are
/// not among them.
class Net {
public:
    Net(const plan::Plan& plan, const catalogue::Catalogue& catalogue);
    Net(plan::Plan&&, const catalogue::Catalogue&) = delete;

    const plan::Plan& plan() const { return *plan_; }
    const catalogue::Catalogue& catalogue() const { return *catalogue_; }
    std::span<const Way> ways() const { return ways_; }
    std::span<const Way> waysOf(std::string_view plate_id) const;
    /// nullptr when the module offers no such way.
    const Way* way(const plan::WayRef& ref) const;
    /// By id; nullptr when there is none.
    const plan::SwitchLeg* leg(std::string_view id) const;
    const plan::Plate* plate(std::string_view id) const;
    const plan::Luminaire* luminaire(std::string_view id) const;
    const plan::Room* room(std::string_view id) const;
    /// Legs that feed a luminaire, or a switched socket plate, in the plan's order.
    std::span<const plan::SwitchLeg* const> legsOfLuminaire(std::string_view id) const;
    std::span<const plan::SwitchLeg* const> legsOfPlate(std::string_view id) const;
    /// Whether some way that works the leg is a dimmer's.
    bool dimmed(const plan::SwitchLeg& leg) const;
    LoadWindow loadWindow(const Way& way) const;
    /// Of every leg, by id: `legMarks`.
    const std::map<std::string, std::string>& marks() const { return marks_; }

private:
    template <class T>
    using ById = std::unordered_map<std::string_view, T>;
    const plan::Plan* plan_;
    const catalogue::Catalogue* catalogue_;
    std::vector<Way> ways_;
    ById<std::pair<std::size_t, std::size_t>> plate_ways_; ///< first and count
    ById<const plan::SwitchLeg*> legs_;
    ById<const plan::Plate*> plates_;
    ById<const plan::Luminaire*> luminaires_;
    ById<const plan::Room*> rooms_;
    ById<std::vector<const plan::SwitchLeg*>> lamp_legs_, plate_legs_;
    std::map<std::string, std::string> marks_;
};

/// A luminaire with a switch on itself or its lead needs no way.
bool hasOwnSwitch(const plan::Luminaire& luminaire);

/// "K-01" or the plate's id where it has no tag; with more than one way "K-01, way 2", counted over the whole
/// plate from the left (or from the top).
std::string wayName(const Net& net, const plan::WayRef& ref);
/// What a leg is called in words: "L1 kitchen downlights"; its id where it has neither letter nor name.
std::string legName(const plan::SwitchLeg& leg);
/// What is printed for each leg, by id, beside switches and lamps and in every list: its letter, else the
/// next small letter that no leg has, without i, l and o, which read as figures; after z come aa, ab and so
/// on.
std::map<std::string, std::string> legMarks(const plan::Plan& plan);
/// The same for one leg of the net's plan; its id when it is not of that plan.
const std::string& legMark(const Net& net, const plan::SwitchLeg& leg);

} // namespace gangway::switching
