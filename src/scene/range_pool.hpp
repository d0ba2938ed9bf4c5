// Places in an array that grows: runs of elements are taken and given back. Inside scene only.
#pragma once

#include <cstdint>
#include <map>

namespace gangway::scene::detail {

struct Range {
    std::uint32_t first = 0;
    std::uint32_t count = 0;
    std::uint32_t end() const { return first + count; }
    bool operator==(const Range&) const = default;
};

/// Runs never overlap; neighbours that are given back grow together again.
class RangePool {
public:
    RangePool() = default;
    /// All below `end` is taken.
    explicit RangePool(std::uint32_t end) : end_(end) {}
    /// The smallest free run that holds `count` elements, else a new one behind the last. An empty range for
    /// 0.
    Range take(std::uint32_t count);
    void release(Range range);
    std::uint32_t end() const { return end_; }   ///< one past the last element ever taken
    std::uint32_t free() const { return free_; } ///< elements below end() that nobody has

private:
    std::map<std::uint32_t, std::uint32_t> gaps_; ///< first element and count
    std::uint32_t end_ = 0;
    std::uint32_t free_ = 0;
};

} // namespace gangway::scene::detail
