// Work that falls into independent pieces, done on all cores, with results in the order of the pieces.
#pragma once

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <optional>
#include <thread>
#include <type_traits>
#include <vector>

namespace gangway::sheets {

/// make(0) ... make(count - 1) on up to `threads` threads (0: as many as the machine runs at once), each
/// piece on one of them. `make` must not throw and must be safe to call at the same time.
template <class Make>
auto inParallel(std::size_t count, unsigned threads, const Make& make) {
    using Result = std::invoke_result_t<Make, std::size_t>;
    std::vector<std::optional<Result>> made(count);
    std::atomic<std::size_t> next{0};
    const auto work = [&] {
        for (std::size_t i = next++; i < count; i = next++)
            made[i].emplace(make(i));
    };
    if (threads == 0) threads = std::max(1U, std::thread::hardware_concurrency());
    {
        std::vector<std::jthread> others;
        for (std::size_t i = 1; i < std::min<std::size_t>(threads, count); ++i)
            others.emplace_back(work);
        work();
    }
    std::vector<Result> results;
    results.reserve(count);
    for (std::optional<Result>& one : made)
        results.push_back(std::move(*one));
    return results;
}

} // namespace gangway::sheets
