// What changed on a wall since an older state of the plan: clouds with triangles in the view, crosses where
// something is gone, and a list in words.
#pragma once

#include "review/changes.hpp"
#include "sheets/block.hpp"
#include "sheets/wall_view.hpp"

#include <map>
#include <utility>

namespace gangway::sheets {

class Occupancy;
struct OnPaper;

/// Changes of a plan since an older one, by room id and wall, as marks and words.
using RevisionMarks = std::map<std::pair<std::string, std::size_t>, std::vector<RevisionMark>>;
RevisionMarks revisionMarks(const House& before, const House& after);

/// Clouds and triangles (with the revision's letter) round what changed; what is gone dashed and crossed
/// through. Tags are kept off them.
void drawRevisionMarks(std::vector<Item>& items, Occupancy& occupancy, const WallView& view,
                       const OnPaper& paper);

/// What changed and since when, a line each; "No change on this wall since ..." when there is none; empty when
/// nothing is compared.
std::vector<Block> revisionNotes(const WallView& view, double width_mm);

} // namespace gangway::sheets
