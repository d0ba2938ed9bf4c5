// A plate's front drawn in true proportion, from the same shapes that the elevation and the stage use.
#pragma once

#include "app/theme.hpp"
#include "catalogue/catalogue.hpp"

#include <span>

namespace gangway::app {

/// An sRGB colour times a factor, each part kept within 0 to 255.
unsigned shade(unsigned rgb, float factor);
/// A line or recess on a surface: darker by the factor on light surfaces, lighter by it on dark ones.
unsigned onSurface(unsigned rgb, float factor);
/// The finish's colour as 0xRRGGBB; a warm white for one that the catalogue does not have.
unsigned finishColour(const catalogue::Catalogue& catalogue, const std::string& finish);

/// A module's shapes over a face that is drawn already; `centre` in pixels of the screen.
void drawShapes(ImDrawList& list, std::span<const catalogue::FrontShape> front, ImVec2 centre,
                float px_per_mm, unsigned face);
/// One module with its face, width_mm x height_mm; nullptr draws a blank.
void drawModule(ImDrawList& list, const catalogue::ModuleType* module, ImVec2 centre, double width_mm,
                double height_mm, float px_per_mm, unsigned face);
/// The whole plate with its shadow. An unknown module is a dashed box with a question mark.
void drawFront(ImDrawList& list, const Tokens& tokens, const catalogue::Catalogue& catalogue,
               const catalogue::ComposedPlate& plate, ImVec2 centre, float px_per_mm);

/// A line of dashes; lengths in pixels.
void dashedLine(ImDrawList& list, ImVec2 from, ImVec2 to, ImU32 ink, float dash, float gap, float thick = 1);
void dashedRect(ImDrawList& list, ImVec2 low, ImVec2 high, ImU32 ink, float dash, float gap);

} // namespace gangway::app
