// Letters and figures of plan symbols: where they stand when the symbol's own place for them is taken.
// Private to sheets/.
#pragma once

#include "sheets/canvas.hpp"

#include <cstddef>
#include <vector>

namespace gangway::sheets {

/// A word of a symbol, on paper.
struct SymbolWord {
    std::size_t symbol = 0; ///< index of its symbol
    Rect place;
};

/// By how much each word moves so that it stands on no other symbol, no other word and no line of `base`
/// (walls and furniture): to another corner of its symbol, or a little aside; not at all where it is free
/// already or nothing better is near.
std::vector<Pt> movesAside(const std::vector<Rect>& symbols, std::vector<SymbolWord> words,
                           const std::vector<Item>& base);

} // namespace gangway::sheets
