#include "edit/edit.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace gangway::edit {
namespace {

std::string_view verb(plan::Visibility visibility) {
    switch (visibility) {
    case plan::Visibility::Shown:
        return "Show";
    case plan::Visibility::Ghosted:
        return "Ghost";
    case plan::Visibility::Hidden:
        return "Hide";
    }
    return "Show";
}

} // namespace

Command setLayerVisibility(const std::string& layer_id, plan::Visibility visibility) {
    return {fmt::format("{} layer '{}'", verb(visibility), layer_id), "",
            [layer_id, visibility](plan::Plan& plan) {
                const auto found = std::ranges::find(plan.layers, layer_id, &plan::Layer::id);
                if (found != plan.layers.end())
                    found->visibility = visibility;
                else
                    plan.layers.push_back({layer_id, layer_id, visibility, {}});
            }};
}

} // namespace gangway::edit
