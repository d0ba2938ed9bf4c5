#include "plan/io.hpp"

#include <algorithm>
#include <cctype>
#include <numeric>

namespace gangway::plan {

namespace {

/// Letters of any case and without the marks people forget: "Set-Out" and "set_out" are near "setOut".
std::string folded(std::string_view word) {
    std::string result;
    for (const char c : word) {
        if (c == '-' || c == '_' || c == ' ') continue;
        result += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
    return result;
}

/// Edit distance that counts two swapped neighbours as one slip (optimal string alignment;
/// Damerau, Communications of the ACM 7 (1964) 171).
std::size_t distance(const std::string& a, const std::string& b) {
    const std::size_t width = b.size() + 1;
    std::vector<std::size_t> older(width), old(width), now(width);
    std::iota(old.begin(), old.end(), std::size_t{0});
    for (std::size_t i = 1; i <= a.size(); ++i) {
        now[0] = i;
        for (std::size_t j = 1; j < width; ++j) {
            const std::size_t change = old[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            now[j] = std::min({old[j] + 1, now[j - 1] + 1, change});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                now[j] = std::min(now[j], older[j - 2] + 1);
        }
        std::swap(older, old);
        std::swap(old, now);
    }
    return old.back();
}

} // namespace

std::string nearestWord(std::string_view word, const std::vector<std::string>& known) {
    constexpr std::size_t kLongestWord = 64; // longer ones are no slips of the finger
    const std::string wanted = folded(word);
    if (wanted.empty() || wanted.size() > kLongestWord) return {};
    std::string best;
    std::size_t limit = std::max<std::size_t>(1, wanted.size() / 3); // a third of the letters may be wrong
    for (const std::string& candidate : known) {
        const std::string other = folded(candidate);
        // The distance is at least what the lengths differ by.
        if (other.size() > wanted.size() + limit || wanted.size() > other.size() + limit) continue;
        const std::size_t d = distance(wanted, other);
        if (d > limit || d >= wanted.size() || (d == limit && !best.empty())) continue;
        best = candidate;
        limit = d;
    }
    return best;
}

} // namespace gangway::plan
