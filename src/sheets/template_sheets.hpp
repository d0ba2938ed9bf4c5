// Drilling templates: every plate's boxes at true size on paper, to be cut out and held to the wall.
#pragma once

#include "sheets/sheets.hpp"

namespace gangway::sheets {

/// Sheets T-01, T-02...: room by room the templates of all plates, several a page; one that is larger than a
/// page is cut into parts that overlap and have marks to lay on each other. Every page has two bars of 100 mm
/// to prove that it was printed at true size, and keeps 10 mm clear at every edge. Meant for A4. Of
/// `options`, paper, room and base count; a room's sheets have the numbers that they have in the whole set.
/// The error is a sentence: an unknown paper or room.
[[nodiscard]] std::expected<drawing::Drawing, std::string>
templateSheets(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const Options& options);

} // namespace gangway::sheets
