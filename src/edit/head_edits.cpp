#include "edit/head_edits.hpp"

#include "edit/part_check.hpp"
#include "edit/wording.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace gangway::edit {
namespace {

std::string_view unitWord(plan::DisplayUnits units) {
    switch (units) {
    case plan::DisplayUnits::Millimetres:
        return "millimetres";
    case plan::DisplayUnits::Centimetres:
        return "centimetres";
    case plan::DisplayUnits::Metres:
        return "metres";
    case plan::DisplayUnits::FeetInches:
        return "feet and inches";
    }
    return "millimetres";
}

std::string problemWith(const plan::Storey& storey) {
    plan::Plan part;
    part.storeys.push_back(storey);
    return detail::problemOf(part).value_or("");
}

} // namespace

Command setUnits(plan::DisplayUnits units) {
    return {fmt::format("Show lengths in {}", unitWord(units)), "", [units](Draft& draft) {
                if (draft.plan().units != units) draft.setUnits(units);
            }};
}

Refusable changeProject(const plan::Project& project, const std::string& field) {
    plan::Plan part;
    part.project = project;
    if (const auto problem = detail::problemOf(part)) return std::unexpected(*problem);
    return Command{field.empty() ? std::string("Change the project")
                                 : fmt::format("Change the project's {}", field),
                   field.empty() ? std::string() : fmt::format("project {}", field),
                   [project](Draft& draft) { draft.changeProject() = project; }};
}

Refusable addStorey(const plan::Plan& plan, plan::Storey storey) {
    storey.id = detail::freeId(storey.id, "storey",
                               [&](const std::string& id) { return plan::findStorey(plan, id) != nullptr; });
    if (std::string problem = problemWith(storey); !problem.empty()) return std::unexpected(problem);
    std::string name = fmt::format("Add storey '{}'", storey.name);
    return Command{std::move(name), "", [storey = std::move(storey)](Draft& draft) { draft.add(storey); }};
}

Refusable changeStorey(const plan::Plan& plan, plan::Storey storey, const std::string& what) {
    if (plan::findStorey(plan, storey.id) == nullptr)
        return std::unexpected(fmt::format("there is no storey '{}'", storey.id));
    if (std::string problem = problemWith(storey); !problem.empty()) return std::unexpected(problem);
    return Command{what, "", [storey = std::move(storey)](Draft& draft) {
                       if (plan::Storey* changed = draft.change<plan::Storey>(storey.id)) *changed = storey;
                   }};
}

Refusable removeStorey(const plan::Plan& plan, const std::string& storey_id) {
    const plan::Storey* storey = plan::findStorey(plan, storey_id);
    if (storey == nullptr) return std::unexpected(fmt::format("there is no storey '{}'", storey_id));
    const auto rooms =
        static_cast<std::size_t>(std::ranges::count(plan.rooms, storey_id, &plan::Room::storey));
    if (rooms > 0)
        return std::unexpected(fmt::format("storey '{}' has {}; remove them or put them on another first",
                                           storey->name, detail::counted(rooms, "room", "rooms")));
    return Command{fmt::format("Remove storey '{}'", storey->name), "",
                   [storey_id](Draft& draft) { draft.remove<plan::Storey>(storey_id); }};
}

} // namespace gangway::edit
