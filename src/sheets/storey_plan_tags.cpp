// Tags beside the symbols of a storey's plan: on the room's side beyond the symbol, nudged where that is
// taken.
#include "sheets/storey_plan_parts.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <unordered_map>

namespace gangway::sheets {

namespace {

constexpr double kClear = 0.7;      ///< paper between a symbol and its tag
constexpr double kApart = 0.3;      ///< around every tag
constexpr double kFromWall = 0.8;   ///< between a tag and a wall, whose line the tag's white must not eat
constexpr double kLineGap = 1.3;    ///< between the lines of a tag
constexpr double kMarkHeight = 3.8; ///< of the capsule around a mark
constexpr double kMarkGap = 1.1;    ///< between a tag's last line and the capsule
constexpr double kLeaderFrom = 2.5; ///< a tag further than this from its symbol is joined to it

/// Rectangles sorted into square cells, so that a question costs what lies around it.
class Taken {
public:
    void add(const Rect& rect) {
        const auto number = static_cast<std::uint32_t>(rects_.size());
        rects_.push_back(rect);
        overCells(rect, [&](std::int64_t key) { cells_[key].push_back(number); });
    }
    bool isFree(const Rect& rect) const {
        bool free = true;
        overCells(rect, [&](std::int64_t key) {
            const auto cell = cells_.find(key);
            if (!free || cell == cells_.end()) return;
            free = std::ranges::none_of(cell->second,
                                        [&](std::uint32_t number) { return overlaps(rects_[number], rect); });
        });
        return free;
    }

private:
    template <typename Visit>
    static void overCells(const Rect& rect, Visit visit) {
        constexpr double kCell = 8;
        const auto cell = [](double mm) { return static_cast<std::int64_t>(std::floor(mm / kCell)); };
        for (std::int64_t x = cell(rect.left); x <= cell(rect.right); ++x)
            for (std::int64_t y = cell(rect.bottom); y <= cell(rect.top); ++y)
                visit(x * 1'000'003 + y);
    }
    std::vector<Rect> rects_;
    std::unordered_map<std::int64_t, std::vector<std::uint32_t>> cells_; // looked up, never walked
};

struct Size {
    double width = 0, height = 0;
};

double markWidth(const std::string& mark) {
    return drawing::measure(mark, kNoteText).width_mm + kMarkHeight - kNoteText + 1.2;
}

Size sizeOf(const PlanTag& tag) {
    Size size;
    for (const std::string& line : tag.lines)
        size.width = std::max(size.width, drawing::measure(line, kNoteText).width_mm);
    const auto lines = static_cast<double>(tag.lines.size());
    size.height = lines * kNoteText + (lines - 1) * kLineGap;
    if (tag.mark.empty()) return size;
    size.width = std::max(size.width, markWidth(tag.mark));
    size.height += kMarkHeight + (tag.lines.empty() ? kLineGap : kMarkGap);
    return size;
}

Rect around(Pt centre, Size size) {
    return {centre.x - size.width / 2, centre.y - size.height / 2, centre.x + size.width / 2,
            centre.y + size.height / 2};
}

/// How far a box of this size reaches along a direction.
double reach(Pt direction, Size size) {
    return std::abs(direction.x) * size.width / 2 + std::abs(direction.y) * size.height / 2;
}

/// Places for a tag, the best first: beyond the symbol, beside it, and further out.
std::vector<Pt> candidates(const PlanTag& tag, Size size) {
    const Pt n = tag.normal;
    const Pt a{n.y, -n.x};
    const double out = tag.half_out_mm + kClear + reach(n, size);
    const double side = tag.half_along_mm + kClear + reach(a, size);
    const double step_a = reach(a, size);
    const double step_n = 2 * reach(n, size) + 2 * kApart;
    std::vector<Pt> places;
    places.reserve(80);
    const auto add = [&](double along, double outwards) {
        places.push_back(
            {tag.middle.x + a.x * along + n.x * outwards, tag.middle.y + a.y * along + n.y * outwards});
    };
    for (const double part : {0.0, 0.5, -0.5, 1.0, -1.0})
        add(part * step_a, out);
    const double low = -tag.half_out_mm + reach(n, size) + kApart;
    for (const double at : {tag.half_out_mm - reach(n, size), 0.0, low})
        for (const double sign : {1.0, -1.0})
            add(sign * side, std::max(at, low));
    for (const double row : {0.5, 1.0, 1.5, 2.0, 3.0, 4.0})
        for (const double part : {0.0, 0.7, -0.7, 1.4, -1.4, 2.2, -2.2})
            add(part * step_a, out + row * step_n);
    for (const double far : {0.7, 1.4, 2.1, 2.8})
        for (const double at : {0.0, out, -out})
            for (const double sign : {1.0, -1.0})
                add(sign * (side + far * step_a), at);
    return places;
}

/// The tag's box lies in the room, clear of its walls.
bool insideRoom(const PlanTag& tag, const PlanMapping& mapping, const Rect& rect) {
    if (tag.room == nullptr) return true;
    const Rect box = rect.grown(kFromWall);
    const std::array<Pt, 4> corners = {
        {{box.left, box.bottom}, {box.right, box.bottom}, {box.right, box.top}, {box.left, box.top}}};
    return std::ranges::all_of(corners,
                               [&](Pt p) { return geometry::insideRoom(*tag.room, mapping.house(p)); });
}

std::optional<Rect> place(const PlanTag& tag, const PlanMapping& mapping, const Taken& taken,
                          NoRoom no_room) {
    const Size size = sizeOf(tag);
    const auto places = candidates(tag, size);
    const Rect* least_bad = nullptr;
    Rect free_but_outside;
    for (const Pt& at : places) {
        const Rect rect = around(at, size);
        if (!taken.isFree(rect.grown(kApart))) continue;
        if (insideRoom(tag, mapping, rect)) return rect;
        if (least_bad != nullptr) continue;
        free_but_outside = rect;
        least_bad = &free_but_outside;
    }
    if (least_bad != nullptr) return *least_bad;
    if (no_room == NoRoom::LeftOut) return std::nullopt;
    return around(places.front(), size);
}

/// A thin line from the symbol to a tag that had to go further away.
void drawLeader(Ink& ink, const PlanTag& tag, const Rect& rect) {
    const Pt nearest{std::clamp(tag.middle.x, rect.left, rect.right),
                     std::clamp(tag.middle.y, rect.bottom, rect.top)};
    const Pt way{nearest.x - tag.middle.x, nearest.y - tag.middle.y};
    const double size = std::hypot(way.x, way.y);
    const double symbol = std::max(tag.half_along_mm, tag.half_out_mm);
    if (size - symbol < kLeaderFrom) return;
    const auto at = [&](double mm) {
        return Pt{tag.middle.x + way.x / size * mm, tag.middle.y + way.y / size * mm};
    };
    ink.line(at(symbol + 0.3), at(size - 0.4), kGhostPen);
}

/// A mark in a capsule, which tells it from the tags.
void drawMark(Ink& ink, Pt centre, const std::string& mark) {
    const double half = markWidth(mark) / 2;
    const double low = centre.y - kMarkHeight / 2;
    const double high = centre.y + kMarkHeight / 2;
    const double round = kMarkHeight / 3;
    const double left = centre.x - half;
    const double right = centre.x + half;
    const std::vector<Pt> outline{{left + round, low},   {right - round, low},  {right, low + round},
                                  {right, high - round}, {right - round, high}, {left + round, high},
                                  {left, high - round},  {left, low + round}};
    ink.fill(outline, drawing::kWhite);
    ink.polyline(outline, true, kThin);
    ink.text({centre.x, centre.y - kNoteText / 2}, mark, kNoteText, drawing::Align::Centre);
}

void drawTag(std::vector<Item>& items, const PlanTag& tag, const Rect& rect) {
    Ink ink(items, "text", tag.id);
    drawLeader(ink, tag, rect);
    double y = rect.top - kNoteText;
    for (const std::string& line : tag.lines) {
        drawing::Text text;
        text.at = {rect.centre().x, y};
        text.text = line;
        text.height_mm = kNoteText;
        text.align = drawing::Align::Centre;
        text.knock_out = true;
        ink.text(std::move(text));
        y -= kNoteText + kLineGap;
    }
    if (!tag.mark.empty()) drawMark(ink, {rect.centre().x, rect.bottom + kMarkHeight / 2}, tag.mark);
}

} // namespace

std::vector<std::optional<Rect>> placePlanTags(std::vector<Item>& items, const PlanMapping& mapping,
                                               const std::vector<Rect>& taken_boxes,
                                               const std::vector<PlanTag>& tags, NoRoom no_room) {
    Taken taken;
    for (const Rect& rect : taken_boxes)
        taken.add(rect);
    std::vector<std::optional<Rect>> rects;
    for (const PlanTag& tag : tags) {
        const auto rect = place(tag, mapping, taken, no_room);
        rects.push_back(rect);
        if (!rect) continue;
        taken.add(*rect);
        drawTag(items, tag, *rect);
    }
    return rects;
}

} // namespace gangway::sheets
