// Findings as rows of a table: how bad, about what, where, what was measured, why, and what would settle it.
// Private to sheets/.
#pragma once

#include "plan/finding.hpp"
#include "sheets/block.hpp"
#include "sheets/wall_view.hpp"

#include <string_view>
#include <unordered_map>

namespace gangway::sheets {

/// The sign of a severity, told from the others by its shape and weight alone and the same as on screen: a
/// fault a full triangle, a warning a lozenge, a hint a ring. 4 mm high around `centre`.
void drawSeverity(Ink& ink, Pt centre, plan::Severity severity);
std::string severityWord(plan::Severity severity);

/// What the objects of findings are called and where they are, looked up once for a house, which must outlive
/// it.
class FindingWords {
public:
    explicit FindingWords(const House& house);
    /// The room a finding is listed under: its first object's that is in one; nullptr for the house.
    const plan::Room* roomOf(const plan::Finding& finding) const;
    /// "K-04; dishwasher", empty for the house.
    std::string namesOf(const plan::Finding& finding) const;
    /// Plates as the sheets with their set-out say it, others in the room's own coordinates; may be empty.
    std::string placeOf(const plan::Finding& finding) const;
    /// Who accepted it and when; nullptr when nobody did.
    const plan::Acceptance* acceptanceOf(const plan::Finding& finding) const;

private:
    struct Object {
        std::string name;
        const plan::Room* room = nullptr;
        const plan::Plate* plate = nullptr;
    };
    const Object* find(const std::string& id) const;

    const House* house_;
    std::unordered_map<std::string_view, Object> objects_;
    std::unordered_map<std::string_view, const plan::Acceptance*> accepted_;
};

/// Which table: findings that are open, or those that the designer takes as they are.
enum class FindingTable { Open, Accepted };

/// Column titles.
Block findingsHead(FindingTable table, double width_mm);
/// A finding as one row, or several where its words are too many for one. `number` counts over all sheets.
std::vector<Block> findingRows(FindingTable table, const FindingWords& words, const plan::Finding& finding,
                               std::size_t number, double width_mm);
/// The heading over the rows of a room.
Block roomHeading(const std::string& name, double width_mm, bool continued);
/// The signs with their words and how many there are of each.
Block severityLegend(const std::vector<plan::Finding>& findings, double width_mm);

} // namespace gangway::sheets
