#include "edit/edit.hpp"

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
            [layer_id, visibility](Draft& draft) {
                if (const plan::Layer* layer = plan::findLayer(draft.plan(), layer_id)) {
                    if (layer->visibility != visibility)
                        draft.change<plan::Layer>(layer_id)->visibility = visibility;
                } else {
                    draft.add(plan::Layer{layer_id, layer_id, visibility, {}});
                }
            }};
}

} // namespace gangway::edit
