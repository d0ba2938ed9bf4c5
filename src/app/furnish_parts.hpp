// The pages of the panel "Furnish" and what they are made of.
#pragma once

#include "app/furnish.hpp"

namespace gangway::app::form {

inline constexpr float kPanelWidth = 372; ///< of the pages' contents, pixels at scale 1

/// A square of the palette: the picture is drawn into the middle of it, the name below. `place` is the name
/// for the report.
bool tile(State& state, const std::string& place, const std::string& name, const std::string& help,
          bool chosen, const std::function<void(ImDrawList& list, ImVec2 centre, float half_px)>& picture);
/// Between tiles: the next one stands beside it, or in the next row.
void nextTile(const State& state, std::size_t index);

void piecePicture(State& state, ImDrawList& list, const std::string& kind, ImVec2 centre, float half_px);
void openingPicture(const State& state, ImDrawList& list, plan::Opening::Kind kind, ImVec2 centre,
                    float half_px);
void lampPicture(const State& state, ImDrawList& list, plan::Luminaire::Kind kind, ImVec2 centre,
                 float half_px);

/// A luminaire of a kind as it is usually bought.
plan::Luminaire usualLuminaire(plan::Luminaire::Kind kind);

void openingsPage(State& state);
void luminairesPage(State& state);
void roomPage(State& state);
void herePage(State& state);
/// What was asked for in the panel and could not be done.
void panelProblem(const State& state);

} // namespace gangway::app::form
