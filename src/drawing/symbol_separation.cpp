#include "drawing/symbol_separation.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <numeric>
#include <string_view>
#include <tuple>
#include <unordered_map>

namespace gangway::drawing {

namespace {

/// Boxes that overlap by less than this only touch.
constexpr double kTouch_mm = 1e-6;
constexpr double kCreep_mm = 1e-8;
/// Symbols nearer than this to their place at the wall need no leader.
constexpr double kAtWall_mm = 1e-3;

double dot(Pt a, Pt b) {
    return a.x * b.x + a.y * b.y;
}
/// To the right of someone who looks along the normal.
Pt alongOf(Pt normal) {
    return {normal.y, -normal.x};
}

/// A turned box by its centre and half sizes.
struct Box {
    Pt centre;
    Pt normal;
    double half_along = 0;
    double half_out = 0;

    double reach(Pt axis) const {
        return std::abs(dot(alongOf(normal), axis)) * half_along + std::abs(dot(normal, axis)) * half_out;
    }
    Box moved(double out) const {
        Box box = *this;
        box.centre = {centre.x + normal.x * out, centre.y + normal.y * out};
        return box;
    }
};

Box boxOf(const SymbolBox& symbol, double margin_mm) {
    const Pt along = alongOf(symbol.normal);
    const double middle = (symbol.from_mm + symbol.to_mm) / 2;
    const double out = symbol.depth_mm / 2;
    const Pt drag = symbol.drag.value_or(Pt{});
    return {{symbol.anchor.x + along.x * middle + symbol.normal.x * out + drag.x,
             symbol.anchor.y + along.y * middle + symbol.normal.y * out + drag.y},
            symbol.normal,
            (symbol.to_mm - symbol.from_mm) / 2 + margin_mm,
            symbol.depth_mm / 2 + margin_mm};
}

/// How far a box must go along its normal from where it is to leave another one behind; 0 when they do not
/// overlap. Separating axes: Ericson, Real-Time Collision Detection (2005), 5.5.8 (moving boxes), from
/// memory.
double wayOut(const Box& box, const Box& other) {
    double enter = -std::numeric_limits<double>::infinity();
    double leave = std::numeric_limits<double>::infinity();
    const Pt apart{box.centre.x - other.centre.x, box.centre.y - other.centre.y};
    for (const Pt axis : {box.normal, alongOf(box.normal), other.normal, alongOf(other.normal)}) {
        const double reach = box.reach(axis) + other.reach(axis) - kTouch_mm;
        const double at = dot(apart, axis);
        const double speed = dot(box.normal, axis);
        if (std::abs(at) >= reach && std::abs(speed) < 1e-12) return 0;
        if (std::abs(speed) < 1e-12) continue;
        enter = std::max(enter, std::min((-reach - at) / speed, (reach - at) / speed));
        leave = std::min(leave, std::max((-reach - at) / speed, (reach - at) / speed));
    }
    // A box that has just left another must not creep on by rounding errors.
    return enter < -kCreep_mm && leave > kCreep_mm ? leave : 0;
}

/// Boxes sorted into square cells, so that a question costs what lies around it.
class Field {
public:
    explicit Field(double cell_mm) : cell_mm_(cell_mm) {}

    void add(const Box& box) {
        const auto number = static_cast<std::uint32_t>(boxes_.size());
        boxes_.push_back(box);
        overCells(box, [&](std::int64_t key) { cells_[key].push_back(number); });
    }
    /// The furthest way out of any box that this one overlaps; 0 when it overlaps none.
    double wayOutOfAll(const Box& box) const {
        double way = 0;
        overCells(box, [&](std::int64_t key) {
            const auto cell = cells_.find(key);
            if (cell == cells_.end()) return;
            for (const std::uint32_t number : cell->second)
                way = std::max(way, wayOut(box, boxes_[number]));
        });
        return way;
    }
    /// How many boxes this one overlaps, those in several cells counted again.
    int countOver(const Box& box) const {
        int count = 0;
        overCells(box, [&](std::int64_t key) {
            const auto cell = cells_.find(key);
            if (cell == cells_.end()) return;
            for (const std::uint32_t number : cell->second)
                count += wayOut(box, boxes_[number]) > 0 ? 1 : 0;
        });
        return count;
    }
    /// Cells a box lies in.
    int cellsOf(const Box& box) const {
        int count = 0;
        overCells(box, [&](std::int64_t) { ++count; });
        return count;
    }

private:
    template <typename Visit>
    void overCells(const Box& box, Visit visit) const {
        const double wide = box.reach({1, 0});
        const double high = box.reach({0, 1});
        const auto cell = [&](double mm) { return static_cast<std::int64_t>(std::floor(mm / cell_mm_)); };
        for (std::int64_t x = cell(box.centre.x - wide); x <= cell(box.centre.x + wide); ++x)
            for (std::int64_t y = cell(box.centre.y - high); y <= cell(box.centre.y + high); ++y)
                visit(x * 1'000'003 + y); // two cells under one number cost time, not truth
    }

    double cell_mm_;
    std::vector<Box> boxes_;
    std::unordered_map<std::int64_t, std::vector<std::uint32_t>> cells_; // looked up, never walked
};

double cellSize(const std::vector<Box>& boxes) {
    double sum = 0;
    for (const Box& box : boxes)
        sum += 2 * std::max(box.half_along, box.half_out);
    return boxes.empty() ? 1 : std::max(sum / static_cast<double>(boxes.size()), 0.1);
}

/// Numbers of the symbols from the one that goes first.
std::vector<std::size_t> inOrder(const std::vector<SymbolBox>& symbols) {
    std::vector<std::size_t> order(symbols.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::sort(order, {}, [&](std::size_t i) {
        const SymbolBox& s = symbols[i];
        return std::tuple(s.rank, std::string_view(s.id), s.anchor.x, s.anchor.y);
    });
    return order;
}

/// The nearest free place along the normal; the way to it.
double freeWay(const Field& field, const Box& box) {
    double out = 0;
    for (double more = field.wayOutOfAll(box); more > 0; more = field.wayOutOfAll(box.moved(out)))
        out += more;
    return out;
}

} // namespace

std::vector<SymbolSpot> separateSymbols(const std::vector<SymbolBox>& symbols, double gap_mm) {
    std::vector<Box> boxes;
    for (const SymbolBox& symbol : symbols)
        boxes.push_back(boxOf(symbol, gap_mm / 2));
    Field at_rest(cellSize(boxes));
    for (const Box& box : boxes)
        at_rest.add(box);
    std::vector<SymbolSpot> spots(symbols.size());
    Field placed(cellSize(boxes));
    std::vector<std::size_t> colliding;
    for (const std::size_t i : inOrder(symbols)) {
        if (symbols[i].drag) spots[i].shift = *symbols[i].drag;
        // A box overlaps itself once in each of its cells.
        const bool alone = at_rest.countOver(boxes[i]) == at_rest.cellsOf(boxes[i]);
        if (symbols[i].drag || alone)
            placed.add(boxes[i]);
        else
            colliding.push_back(i);
    }
    std::vector<std::size_t> pulled;
    for (const std::size_t i : colliding) {
        if (placed.wayOutOfAll(boxes[i]) > 0)
            pulled.push_back(i);
        else
            placed.add(boxes[i]);
    }
    for (const std::size_t i : pulled) {
        const double out = freeWay(placed, boxes[i]);
        spots[i].shift = {symbols[i].normal.x * out, symbols[i].normal.y * out};
        placed.add(boxes[i].moved(out));
    }
    for (SymbolSpot& spot : spots)
        spot.leader = std::hypot(spot.shift.x, spot.shift.y) > kAtWall_mm;
    return spots;
}

std::vector<Pt> cornersOf(const SymbolBox& symbol, const SymbolSpot& spot, double margin_mm) {
    const Pt along = alongOf(symbol.normal);
    const auto at = [&](double a, double out) {
        return Pt{symbol.anchor.x + spot.shift.x + along.x * a + symbol.normal.x * out,
                  symbol.anchor.y + spot.shift.y + along.y * a + symbol.normal.y * out};
    };
    const double low = symbol.from_mm - margin_mm;
    const double high = symbol.to_mm + margin_mm;
    return {at(low, -margin_mm), at(high, -margin_mm), at(high, symbol.depth_mm + margin_mm),
            at(low, symbol.depth_mm + margin_mm)};
}

} // namespace gangway::drawing
