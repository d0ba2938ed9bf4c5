// Ids must be unique within their kind, tags among plates and among luminaires.
#include "plan/validation.hpp"

namespace gangway::plan {

namespace {

template <class T, class Name>
void unique(Validation& v, const std::vector<T>& list, std::string_view list_name, const char* key,
            std::string_view what, Name name) {
    std::unordered_map<std::string_view, std::size_t> seen;
    seen.reserve(list.size());
    for (std::size_t i = 0; i < list.size(); ++i) {
        const std::string& text = name(list[i]);
        if (text.empty()) continue;
        const auto [entry, is_new] = seen.emplace(text, i);
        if (!is_new)
            v.error(fmt::format("/{}/{}/{}", list_name, i, key),
                    fmt::format("{} '{}' is already used by /{}/{}; give this one another", what, text,
                                list_name, entry->second));
    }
}

template <class T>
void uniqueIds(Validation& v, const std::vector<T>& list, std::string_view list_name, std::string_view what) {
    unique(v, list, list_name, "id", what, [](const T& element) -> const std::string& { return element.id; });
}

template <class T>
void uniqueTags(Validation& v, const std::vector<T>& list, std::string_view list_name,
                std::string_view what) {
    unique(v, list, list_name, "tag", what,
           [](const T& element) -> const std::string& { return element.tag; });
}

} // namespace

void validateIds(Validation& v) {
    const Plan& plan = v.plan();
    uniqueIds(v, plan.layers, "layers", "layer id");
    uniqueIds(v, plan.storeys, "storeys", "storey id");
    uniqueIds(v, plan.rooms, "rooms", "room id");
    uniqueIds(v, plan.openings, "openings", "opening id");
    uniqueIds(v, plan.furniture, "furniture", "furniture id");
    uniqueIds(v, plan.plates, "plates", "plate id");
    uniqueIds(v, plan.devices, "devices", "device id");
    uniqueIds(v, plan.luminaires, "luminaires", "luminaire id");
    uniqueIds(v, plan.legs, "legs", "leg id");
    uniqueIds(v, plan.circuits, "circuits", "circuit id");
    uniqueIds(v, plan.scenes, "scenes", "scene id");
    uniqueIds(v, plan.accepted, "accepted", "accepted finding");
    uniqueIds(v, plan.formats, "formats", "format id");
    uniqueIds(v, plan.library, "library", "library plate id");
    uniqueTags(v, plan.plates, "plates", "tag");
    uniqueTags(v, plan.luminaires, "luminaires", "tag");
    unique(v, plan.issues, "issues", "letter", "issue letter",
           [](const Issue& issue) -> const std::string& { return issue.letter; });
    for (std::size_t i = 0; i < plan.rooms.size(); ++i)
        uniqueIds(v, plan.rooms[i].walls, fmt::format("rooms/{}/walls", i),
                  fmt::format("room '{}': wall id", plan.rooms[i].id));
}

} // namespace gangway::plan
