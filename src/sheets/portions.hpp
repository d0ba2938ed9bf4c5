// What a picture shows of a wall that is too long or too crowded for one: parts between match lines, and
// details drawn apart at a larger scale.
#pragma once

#include "sheets/elevation_view.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gangway::sheets {

/// The wall in `parts` stretches of about one length, each with what is mounted on it. No cut goes through a
/// plate or close by one, nor through an opening, as far as the wall has such places.
std::vector<WallView> parted(const WallView& view, std::size_t parts);

/// The wall with what is crowded on it (ids) and its close neighbours left to details: their numbers and tags
/// stand there. nullopt when a detail would be larger than `most_width_mm` x `most_height_mm` of the wall.
std::optional<WallView> withDetails(const WallView& view, const std::vector<std::string>& crowded,
                                    double most_width_mm, double most_height_mm);
/// One of its details alone, to be drawn like a wall of its own.
WallView detailView(const WallView& view, const Portion& detail);

/// Where the picture of a portion ends, on paper; ends of the wall itself are far outside.
Rect windowOf(const WallView& view, OnPaper paper);
/// Match lines at a part's cuts with where the wall goes on; the edge of a detail.
void drawPortionEdges(std::vector<Item>& items, std::vector<Label>& labels, const WallView& view,
                      OnPaper paper);
/// The frames of what is drawn apart, each with its name; names keep off what is taken.
void drawDetailFrames(std::vector<Item>& items, Occupancy& occupancy, const WallView& view, OnPaper paper);

/// "part 2 of 3, u 3400 to 6800"; empty for a whole wall.
std::string portionWords(const WallView& view);

} // namespace gangway::sheets
