#include "sheets/request.hpp"

#include <algorithm>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace gangway::sheets {

namespace {
/// "10, 20, 25 or 50".
std::string listOf(std::span<const double> scales) {
    std::vector<double> sorted(scales.begin(), scales.end());
    std::ranges::sort(sorted);
    const double last = sorted.back();
    sorted.pop_back();
    return fmt::format("{:g} or {:g}", fmt::join(sorted, ", "), last);
}
} // namespace

std::expected<Paper, std::string> requestedPaper(const plan::Plan& plan, const Options& options,
                                                 std::string_view name, std::span<const double> scales) {
    const auto paper = findPaper(options.paper);
    if (!paper)
        return std::unexpected(
            fmt::format("there is no paper '{}'; give one of {}", options.paper, paperNames()));
    if (options.scale && !scales.empty() && std::ranges::find(scales, *options.scale) == scales.end())
        return std::unexpected(
            fmt::format("1:{:g} is not a scale of {}; give {}", *options.scale, name, listOf(scales)));
    if (!options.room.empty() && plan::findRoom(plan, options.room) == nullptr)
        return std::unexpected(fmt::format("there is no room '{}'", options.room));
    return *paper;
}

drawing::Drawing drawingOf(const plan::Project& project, std::string subject) {
    return {project.name, std::move(subject), project.designer, project.date, {}};
}

} // namespace gangway::sheets
