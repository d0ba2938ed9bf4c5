// The numbers that checks hold a plan against: what each is called in a country pack, and its range.
#pragma once

#include <span>
#include <string_view>

namespace gangway::catalogue {

struct LimitKind {
    std::string_view id;   ///< key in a pack's "limits": "sideGap"
    double low = 0;        ///< least value a file may give
    double high = 0;       ///< greatest
    std::string_view what; ///< a sentence with its unit
};

/// Every limit there is, in the order they are documented; lengths in mm. A pack that leaves one out uses the
/// international one. 0 turns those off whose sentence says so.
std::span<const LimitKind> limitKinds();
/// nullptr for an id that is no limit.
const LimitKind* limitKind(std::string_view id);

} // namespace gangway::catalogue
