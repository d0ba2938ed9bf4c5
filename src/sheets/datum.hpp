// From where a sheet's numbers count: which face distances start from, which level heights do.
#pragma once

#include "plan/plan.hpp"

#include <string>

namespace gangway::sheets {

struct WallView;

enum class Face {
    Finished,  ///< the finished face of the wall at the left corner
    Structural ///< its bare face, as it stands at first fix
};
enum class Level {
    Ffl,  ///< finished floor level
    Slab, ///< structural floor level: the slab under the floor's build-up
    Site  ///< the level line marked on site
};

/// What an elevation shows of the two stages of the electrician's work.
enum class Fix {
    First, ///< boxes and what is drilled, on the bare wall
    Second ///< plates and their modules, with the furniture before them
};

struct Datum {
    Face face = Face::Finished;
    Level level = Level::Ffl;
};

/// The datum of an issue's sheets.
Datum datumOf(const plan::Issue& issue);

/// Gives a wall's view its datum. A sentence when the plan does not state what it needs: the build-up of the
/// wall at the left corner, that of the floor, or a site line; empty when all went well.
[[nodiscard]] std::string countFrom(WallView& view, const Datum& datum);

/// "the slab", "FFL", "the site line".
std::string levelWords(Level level);

} // namespace gangway::sheets
