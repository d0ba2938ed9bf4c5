// What changed between two states of a plan, plate by plate: for revision tables, clouds on sheets, and
// people.
#pragma once

#include "plan/plan.hpp"

#include <string>
#include <vector>

namespace gangway::review {

struct PlateChange {
    enum class Kind { Added, Removed, Changed };
    Kind kind = Kind::Changed;
    const plan::Plate* before = nullptr; ///< of the older plan; null for an added one
    const plan::Plate* after = nullptr;  ///< of the newer plan; null for a removed one
    bool moved = false;                  ///< its box is to be set out elsewhere
    std::string words;                   ///< "K-04 moved 120 right, 50 up; finish now brass"
};

/// Plates of either plan whose place or make is not the same in both, matched by id, in the newer plan's
/// order with removed ones last. Places that differ by less than what is printed (0.5 mm) are one. Answers,
/// notes and symbols on plan do not count: nobody drills by them. Both plans must outlive the result; linear.
std::vector<PlateChange> platesChanged(const plan::Plan& before, const plan::Plan& after);

/// A line for each luminaire whose place is not the same in both: "K-L02 moved 40 east". As with plates.
std::vector<std::string> luminairesChanged(const plan::Plan& before, const plan::Plan& after);

/// A line for each room of both plans whose floor build-up is not as thick as it was: "Kitchen: floor
/// build-up 75 -> 90: heights above the slab change by +15".
std::vector<std::string> floorsChanged(const plan::Plan& before, const plan::Plan& after);

/// All of these, floors first: what an issue says to have changed.
std::vector<std::string> changesInWords(const plan::Plan& before, const plan::Plan& after);

} // namespace gangway::review
