#include "sheets/storey_plan_words.hpp"

#include <algorithm>
#include <array>

namespace gangway::sheets {

namespace {

constexpr double kClear = 0.4;
constexpr double kNudge = 1.5;
constexpr std::array<Pt, 9> kAside{{{0, 0},
                                    {0, -kNudge},
                                    {0, kNudge},
                                    {-kNudge, 0},
                                    {kNudge, 0},
                                    {0, -2 * kNudge},
                                    {0, 2 * kNudge},
                                    {-2 * kNudge, 0},
                                    {2 * kNudge, 0}}};

bool overLines(const Rect& rect, const std::vector<Item>& base) {
    return std::ranges::any_of(base, [&](const Item& item) {
        if (const auto* line = std::get_if<drawing::Line>(&item.primitive))
            return crosses(rect, line->from, line->to);
        const auto* polyline = std::get_if<drawing::Polyline>(&item.primitive);
        if (polyline == nullptr) return false;
        const auto& points = polyline->points;
        for (std::size_t i = 1; i < points.size(); ++i)
            if (crosses(rect, points[i - 1], points[i])) return true;
        return polyline->closed && points.size() > 2 && crosses(rect, points.back(), points.front());
    });
}

bool isFree(const Rect& place, std::size_t word, const std::vector<Rect>& symbols,
            const std::vector<SymbolWord>& words, const std::vector<Item>& base) {
    const Rect wide = place.grown(kClear);
    for (std::size_t i = 0; i < symbols.size(); ++i)
        if (i != words[word].symbol && overlaps(symbols[i], wide)) return false;
    for (std::size_t i = 0; i < words.size(); ++i)
        if (i != word && overlaps(words[i].place, wide)) return false;
    return !overLines(place, base);
}

} // namespace

std::vector<Pt> movesAside(const std::vector<Rect>& symbols, std::vector<SymbolWord> words,
                           const std::vector<Item>& base) {
    std::vector<Pt> moves(words.size());
    for (std::size_t i = 0; i < words.size(); ++i) {
        const Rect now = words[i].place;
        const Pt middle = symbols[words[i].symbol].centre();
        const Pt over{2 * (middle.x - now.centre().x), 2 * (middle.y - now.centre().y)};
        std::vector<Pt> tries;
        for (const Pt aside : kAside)
            for (const Pt corner : {Pt{0, 0}, Pt{over.x, 0}, Pt{0, over.y}, over})
                tries.push_back({corner.x + aside.x, corner.y + aside.y});
        const auto found = std::ranges::find_if(
            tries, [&](Pt by) { return isFree(now.moved(by.x, by.y), i, symbols, words, base); });
        if (found == tries.end()) continue;
        moves[i] = *found;
        words[i].place = now.moved(found->x, found->y);
    }
    return moves;
}

} // namespace gangway::sheets
