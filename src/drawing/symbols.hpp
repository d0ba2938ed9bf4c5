// Plan and legend symbols of electrical points. Their topology follows what is remembered of IEC 60617-11
// (the standard itself was not at hand); proportions are ours. Every sheet that uses them prints a legend.
#pragma once

#include "drawing/drawing.hpp"

#include <span>
#include <string_view>
#include <vector>

namespace gangway::drawing {

struct SymbolKind {
    std::string_view id;   ///< "socket-earth"
    std::string_view name; ///< what a legend prints beside it
};

/// Every symbol, in the order of a legend.
std::span<const SymbolKind> symbolKinds();

/// A symbol's strokes. `at`: where the box centre meets the finished wall line, or a luminaire's centre; with
/// `turn_deg` 0 the room is towards +y; turned counter-clockwise, never mirrored; letters stay upright.
/// `module_mm` is the grid module M, 2.5 at full size, not under 1.8 (common practice, no source); letters
/// are one module high, at least 2.5. Items carry no object id. Empty for an unknown id.
std::vector<Item> symbol(std::string_view id, Pt at, double turn_deg, double module_mm,
                         const std::string& layer);

} // namespace gangway::drawing
