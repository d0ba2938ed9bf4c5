#include "scene/grid_distance.hpp"

#include <algorithm>
#include <cstddef>

namespace gangway::scene::detail {
namespace {

constexpr double kFar = 1e15;

// Lower envelope of the parabolas (x - i)^2 + f(i), read off at the whole numbers.
class LineTransform {
public:
    explicit LineTransform(std::size_t longest) : value_(longest), place_(longest), bound_(longest + 1) {}

    void run(float* data, std::size_t count, std::size_t stride) {
        for (std::size_t i = 0; i < count; ++i)
            value_[i] = data[i * stride];
        std::size_t top = 0;
        place_[0] = 0;
        bound_[0] = -kFar;
        bound_[1] = kFar;
        for (std::size_t q = 1; q < count; ++q) {
            double meet = meeting(place_[top], q);
            while (top > 0 && meet <= bound_[top])
                meet = meeting(place_[--top], q);
            if (meet <= bound_[top]) {
                place_[top] = q;
                continue;
            }
            place_[++top] = q;
            bound_[top] = meet;
            bound_[top + 1] = kFar;
        }
        top = 0;
        for (std::size_t q = 0; q < count; ++q) {
            while (bound_[top + 1] < static_cast<double>(q))
                ++top;
            const double away = static_cast<double>(q) - static_cast<double>(place_[top]);
            data[q * stride] = static_cast<float>(away * away + value_[place_[top]]);
        }
    }

private:
    double meeting(std::size_t a, std::size_t b) const {
        const auto x = static_cast<double>(a);
        const auto y = static_cast<double>(b);
        return ((value_[b] + y * y) - (value_[a] + x * x)) / (2 * y - 2 * x);
    }

    std::vector<double> value_;
    std::vector<std::size_t> place_;
    std::vector<double> bound_;
};

} // namespace

void inflate(std::vector<std::uint8_t>& blocked, int columns, int rows, double radius_cells) {
    const auto width = static_cast<std::size_t>(columns);
    const auto height = static_cast<std::size_t>(rows);
    // Nothing further than the radius matters: a cap keeps squared distances small.
    const float cap = static_cast<float>(4 * radius_cells * radius_cells + 16);
    std::vector<float> squared(blocked.size());
    for (std::size_t i = 0; i < blocked.size(); ++i)
        squared[i] = blocked[i] != 0 ? 0.0f : cap;
    LineTransform line(std::max(width, height));
    for (std::size_t row = 0; row < height; ++row)
        line.run(squared.data() + row * width, width, 1);
    for (std::size_t column = 0; column < width; ++column)
        line.run(squared.data() + column, height, width);
    const float limit = static_cast<float>(radius_cells * radius_cells) - 0.01f;
    for (std::size_t i = 0; i < blocked.size(); ++i) {
        if (squared[i] < limit) blocked[i] = 1;
    }
}

} // namespace gangway::scene::detail
