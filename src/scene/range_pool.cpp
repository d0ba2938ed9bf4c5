#include "scene/range_pool.hpp"

#include <iterator>

namespace gangway::scene::detail {

Range RangePool::take(std::uint32_t count) {
    if (count == 0) return {};
    auto best = gaps_.end();
    for (auto gap = gaps_.begin(); gap != gaps_.end(); ++gap) {
        if (gap->second >= count && (best == gaps_.end() || gap->second < best->second)) best = gap;
    }
    if (best == gaps_.end()) {
        const Range fresh{end_, count};
        end_ += count;
        return fresh;
    }
    const Range taken{best->first, count};
    const Range rest{best->first + count, best->second - count};
    gaps_.erase(best);
    if (rest.count > 0) gaps_.emplace(rest.first, rest.count);
    free_ -= count;
    return taken;
}

void RangePool::release(Range range) {
    if (range.count == 0) return;
    free_ += range.count;
    const auto next = gaps_.lower_bound(range.first);
    if (next != gaps_.begin()) {
        const auto before = std::prev(next);
        if (before->first + before->second == range.first) {
            range = {before->first, before->second + range.count};
            gaps_.erase(before);
        }
    }
    if (next != gaps_.end() && next->first == range.end()) {
        range.count += next->second;
        gaps_.erase(next);
    }
    gaps_.emplace(range.first, range.count);
}

} // namespace gangway::scene::detail
