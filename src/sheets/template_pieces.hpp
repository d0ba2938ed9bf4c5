// A drilling template: one plate's boxes at true size, in as many pieces as the paper needs, each to be cut
// out. Private to sheets/.
#pragma once

#include "sheets/canvas.hpp"
#include "sheets/surfaces.hpp"

namespace gangway::sheets {

/// Neighbouring pieces of a template show this much of it both.
inline constexpr double kTemplateOverlap = 15;
/// Narrowest piece; two stand side by side on A4.
inline constexpr double kLeastPiece = 90;

struct TemplatePiece {
    std::vector<Item> marks; ///< at true size, the plate's centre at (0, 0)
    std::vector<Item> words; ///< cutting line and captions around them
    Rect extent;             ///< of the cutting line
    std::string name;        ///< "K-04", "K-04, part 1 of 2"
    double tallest_mm = 0;   ///< of the plate's pieces, so that they stand in one row
};

/// The template of a plate on one of a room's surfaces for a place of this size: drawn as seen from the room,
/// turned by a quarter where it needs fewer pieces so, cut between boxes where it is larger than the place.
std::vector<TemplatePiece> templatePieces(const House& house, const plan::Room& room, const Surface& surface,
                                          const Mounted& item, double width_mm, double height_mm);

/// How far the words at a centre reach to its left or below it, and to its right or above it.
struct JoinRoom {
    double before_mm = 26;
    double behind_mm = 26;
};
/// Where pieces of a length from `low` to `high` meet when none may be longer than `most`, which is over
/// twice the overlap: in as few pieces as there can be, midway between neighbours of `centres` where that is
/// possible, else where no words at a centre are cut, else where a piece is full.
std::vector<double> joinsOf(double low, double high, double most, std::vector<double> centres,
                            JoinRoom words = {});

} // namespace gangway::sheets
