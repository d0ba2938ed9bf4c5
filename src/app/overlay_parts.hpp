// How areas are laid over walls and plans, for overlays.cpp and plan_overlays.cpp.
#pragma once

#include "app/placing.hpp"
#include "app/theme.hpp"

#include <string>
#include <vector>

namespace gangway::app {

struct State;

inline constexpr unsigned kWater = 0x2F6F8F; ///< of zones of baths and showers

/// Tint, edge and hatch lines that rise to the right or fall; `project` takes the area's own two numbers.
void hatched(ImDrawList& list, const std::vector<plan::Vec2>& area, const Projector& project, unsigned ink,
             bool rising, float scale);
/// In words, on its own ground, at the area's upper left, where there is room for it.
void areaName(const State& state, const std::vector<plan::Vec2>& area, const Projector& project,
              const std::string& words, unsigned ink);

/// Over the drawn plan, under the symbols' marks: zones of baths and showers, and ways at night.
void drawPlanOverlays(State& state, const std::function<ImVec2(plan::Vec2)>& to_screen);

/// Areas that meet are drawn with hard edges: soft ones of neighbours would show as lines.
class HardEdges {
public:
    explicit HardEdges(ImDrawList& list) : list_(list), flags_(list.Flags) {
        list_.Flags &= ~ImDrawListFlags_AntiAliasedFill;
    }
    HardEdges(const HardEdges&) = delete;
    HardEdges& operator=(const HardEdges&) = delete;
    ~HardEdges() { list_.Flags = flags_; }

private:
    ImDrawList& list_;
    ImDrawListFlags flags_;
};

} // namespace gangway::app
