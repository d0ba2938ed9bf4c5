// Commands on switch legs, circuits and light scenes. Each command is made for the plan given and is to be
// run on that plan; what can't be done comes back as a sentence.
#pragma once

#include "edit/luminaire_edits.hpp"

#include <string>
#include <vector>

namespace gangway::edit {

/// The mark of the next leg: the next number where the plan's marks are a letter and a number ("L26"),
/// else the next small letter, without i, l and o, which read as figures (common practice, no source).
std::string nextLegMark(const plan::Plan& plan);

/// What a way is to feed.
struct Fed {
    std::vector<std::string> luminaires;
    std::vector<std::string> plates; ///< switched socket outlets, motors
    bool empty() const { return luminaires.empty() && plates.empty(); }
};

/// Ties a way to what it feeds: into the leg it works already, else into a new one. A luminaire hangs on one
/// leg, so it leaves the one it was on; a plate may stay on others too (open and close of a motor).
Refusable tieWay(const plan::Plan& plan, const plan::WayRef& way, const Fed& fed);
/// Ties more to a leg.
Refusable tieToLeg(const plan::Plan& plan, const std::string& leg_id, const Fed& fed);
/// What the leg feeds no longer.
Refusable untie(const plan::Plan& plan, const std::string& leg_id, const Fed& fed);

/// Makes a way one more position of a leg; it leaves any leg it worked before. A leg left without both
/// positions and anything to feed is removed.
Refusable joinWay(const plan::Plan& plan, const std::string& leg_id, const plan::WayRef& way);
/// Takes a position off a leg.
Refusable partWay(const plan::Plan& plan, const std::string& leg_id, const plan::WayRef& way);

/// Replaces a leg of the same id. Refused when another leg is marked the same or it names what isn't there.
Refusable changeLeg(const plan::Plan& plan, plan::SwitchLeg leg, const std::string& what,
                    const std::string& merge_key = {});
/// Light scenes forget them.
Refusable removeLegs(const plan::Plan& plan, const std::vector<std::string>& leg_ids);

/// A proposal that was accepted: new plates, modules of other types, and a leg, as one step.
struct Switching {
    struct ModuleType {
        std::string plate;
        int module = 1; ///< from 1
        std::string type;
    };
    std::vector<plan::Plate> plates;
    std::vector<ModuleType> modules;
    plan::SwitchLeg leg; ///< of the plan by its id, else a new one
};
/// Luminaires leave the legs they were on, ways the legs they worked.
Refusable applySwitching(const plan::Plan& plan, const Switching& switching, const std::string& what);

/// An id that is empty or taken is replaced by a free one; an empty name is refused.
Refusable addCircuit(const plan::Plan& plan, plan::Circuit circuit);
Refusable changeCircuit(const plan::Plan& plan, plan::Circuit circuit, const std::string& what,
                        const std::string& merge_key = {});
/// Plates and legs keep the name as one that is not described.
Refusable removeCircuit(const plan::Plan& plan, const std::string& circuit_id);

/// An id that is empty or taken is replaced by a free one; an empty name, or one in use, is refused.
Refusable addScene(const plan::Plan& plan, plan::LightScene scene);
Refusable changeScene(const plan::Plan& plan, plan::LightScene scene, const std::string& what,
                      const std::string& merge_key = {});
Refusable removeScene(const plan::Plan& plan, const std::string& scene_id);

} // namespace gangway::edit
