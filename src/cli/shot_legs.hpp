// Which lamps are on in the pictures of `gangway shot --legs`, and the lines to what works them.
#pragma once

#include "catalogue/catalogue.hpp"
#include "plan/plan.hpp"
#include "render/renderer.hpp"

#include <expected>
#include <map>
#include <string>
#include <vector>

namespace gangway::cli {

struct LegShot {
    std::string mark; ///< for the file's name; empty when there is only one picture
    std::map<std::string, float> light_levels;
    std::vector<render::Line> lines;
};

/// What is looked at: the legs of `each` are those with a lamp, outlet or switch there. Empty: everywhere.
struct LegPlace {
    std::string room;
    std::string storey;
};

/// The pictures that `--legs WORD` means: on (or nothing), off, each, or a list of marks or ids. The error
/// names the nearest leg.
std::expected<std::vector<LegShot>, std::string> legShots(const plan::Plan& plan,
                                                          const catalogue::Catalogue& catalogue,
                                                          const std::string& word, const LegPlace& place);

} // namespace gangway::cli
