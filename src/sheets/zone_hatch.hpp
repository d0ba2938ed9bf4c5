// Wet zones and cable zones on plans and elevations: a frame and strokes along its inside edge, with the
// zone's number. Quiet, because other things are read over it.
#pragma once

#include "sheets/block.hpp"
#include "sheets/elevation_view.hpp"
#include "sheets/site_notes.hpp"
#include "sheets/storey_plan_parts.hpp"

#include <functional>

namespace gangway::sheets {

/// How an area on paper is marked. Of a large area only a strip along its edge is hatched (ISO 128-50, from
/// memory).
struct ZoneLook {
    Pen frame;
    double pitch_mm = 3;  ///< between strokes, square to them
    double stroke_mm = 3; ///< how far they reach in from the edge; 0: no strokes
};

/// Frame and strokes at 45 degrees of an area on paper (any winding), along those of its edges that `is_free`
/// says, asked for the middle of each: not where a wall bounds it.
void drawZone(Ink& ink, const std::vector<Pt>& outline, const ZoneLook& look,
              const std::function<bool(Pt)>& is_free);

/// Wet zones of a storey's rooms, to lie under symbols; part of the base.
void drawPlanZones(StoreyDrawing& storey);
/// Their numbers, clear of what stands there, where there is room for them; after the rooms' names.
void drawPlanZoneNumbers(StoreyDrawing& storey);

/// Wet zones and cable zones of a wall, behind what is mounted, with numbers and names.
void drawWallZones(std::vector<Item>& items, std::vector<Label>& labels, const WallView& view, OnPaper paper);
/// Near the top of their zone, or else anywhere in it; left out where there is no room.
void placeZoneLabels(std::vector<Item>& items, Occupancy& occupancy, const std::vector<Label>& labels);
/// What the zones on an elevation are, how far they reach, by whom, and that they are measured again, a
/// sentence or two a kind of zone; empty where there are none.
struct ZoneNotes {
    std::string wet;
    std::string cable;
};
ZoneNotes zoneNotes(const WallView& view, Wording wording);
/// As notes on the sheet; short ones without a heading.
std::vector<Block> zoneBlocks(const ZoneNotes& notes, double width_mm, Wording wording);

} // namespace gangway::sheets
