// How commands call rooms, openings, furniture and lamps, and free names for new ones. Private to src/edit.
#pragma once

#include "plan/plan.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace gangway::edit::detail {

/// "3600 mm", "12.5 mm": to a tenth, which is finer than anybody sets out.
std::string shownMm(double value_mm);
/// "1 plate", "3 plates", "2 pieces of furniture".
std::string counted(std::size_t count, std::string_view one, std::string_view many);
/// "a", "a and b", "a, b and c".
std::string listed(const std::vector<std::string>& parts);

/// "the kitchen" for a plain word, else the name in quotes: "'Bedroom 2'"; its id when it has none.
std::string roomName(const plan::Room& room);
/// "wall A of the kitchen"
std::string wallName(const plan::Room& room, std::size_t wall);
/// "door 'hall'", "window 'over the sink'"
std::string openingName(const plan::Opening& opening);
/// "door", "window", "opening" or "hatch"
std::string_view openingWord(plan::Opening::Kind kind);
/// The piece's name, else its kind.
std::string pieceName(const plan::Furniture& piece);
/// The lamp's tag, else its name, else its id.
std::string lampName(const plan::Luminaire& lamp);

const plan::Opening* findOpening(const plan::Plan& plan, const std::string& id);

/// "sofa" for "sofa" and for "sofa-3".
std::string withoutNumber(const std::string& id);

/// `wanted` when it is given and not taken, else the first of wanted-2, wanted-3 ... that is
/// free. An empty wish is "stem-1", "stem-2" ...
template <class Taken>
std::string freeId(const std::string& wanted, std::string_view stem, Taken taken) {
    if (!wanted.empty() && !taken(wanted)) return wanted;
    const std::string base = wanted.empty() ? std::string(stem) : withoutNumber(wanted);
    for (int number = wanted.empty() ? 1 : 2;; ++number) {
        std::string id = base + "-" + std::to_string(number);
        if (!taken(id)) return id;
    }
}
} // namespace gangway::edit::detail
