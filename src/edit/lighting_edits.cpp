#include "edit/leg_edits.hpp"

#include "edit/wording.hpp"

#include <algorithm>
#include <cctype>
#include <fmt/format.h>

namespace gangway::edit {
namespace {

template <class T>
const T* find(const std::vector<T>& list, const std::string& id) {
    const auto at = std::ranges::find(list, id, &T::id);
    return at == list.end() ? nullptr : &*at;
}

/// An id out of a name: small letters, hyphens for spaces.
std::string idFrom(const std::string& name) {
    std::string id;
    for (const char c : name)
        id += c == ' ' ? '-' : static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    return id;
}

template <class T>
std::string freeIdIn(const std::vector<T>& list, const T& element, std::string_view stem) {
    const std::string wanted = element.id.empty() ? idFrom(element.name) : element.id;
    return detail::freeId(wanted, stem, [&](const std::string& id) { return find(list, id) != nullptr; });
}

std::string problemWith(const plan::Plan& plan, const plan::LightScene& scene) {
    if (scene.name.empty()) return "give the scene a name";
    for (const plan::LightScene& other : plan.scenes)
        if (other.id != scene.id && other.name == scene.name)
            return fmt::format("another scene is called '{}'", scene.name);
    for (const plan::LightScene::Level& level : scene.levels)
        if (find(plan.legs, level.leg) == nullptr) return fmt::format("there is no leg '{}'", level.leg);
    return {};
}

} // namespace

Refusable addCircuit(const plan::Plan& plan, plan::Circuit circuit) {
    if (circuit.name.empty()) return std::unexpected("give the circuit a name");
    circuit.id = freeIdIn(plan.circuits, circuit, "circuit");
    std::string name = fmt::format("Add circuit {}", circuit.name);
    return Command{std::move(name), "", [circuit = std::move(circuit)](Draft& draft) { draft.add(circuit); }};
}

Refusable changeCircuit(const plan::Plan& plan, plan::Circuit circuit, const std::string& what,
                        const std::string& merge_key) {
    if (find(plan.circuits, circuit.id) == nullptr)
        return std::unexpected(fmt::format("there is no circuit '{}'", circuit.id));
    if (circuit.name.empty()) return std::unexpected("give the circuit a name");
    return Command{what, merge_key, [circuit = std::move(circuit)](Draft& draft) {
                       if (plan::Circuit* changed = draft.change<plan::Circuit>(circuit.id))
                           *changed = circuit;
                   }};
}

Refusable removeCircuit(const plan::Plan& plan, const std::string& circuit_id) {
    const plan::Circuit* circuit = find(plan.circuits, circuit_id);
    if (circuit == nullptr) return std::unexpected(fmt::format("there is no circuit '{}'", circuit_id));
    const std::string& word = circuit->name.empty() ? circuit->id : circuit->name;
    return Command{fmt::format("Remove circuit {}", word), "",
                   [circuit_id](Draft& draft) { draft.remove<plan::Circuit>(circuit_id); }};
}

Refusable addScene(const plan::Plan& plan, plan::LightScene scene) {
    scene.id = freeIdIn(plan.scenes, scene, "scene");
    if (std::string problem = problemWith(plan, scene); !problem.empty()) return std::unexpected(problem);
    std::string name = fmt::format("Keep scene {}", scene.name);
    return Command{std::move(name), "", [scene = std::move(scene)](Draft& draft) { draft.add(scene); }};
}

Refusable changeScene(const plan::Plan& plan, plan::LightScene scene, const std::string& what,
                      const std::string& merge_key) {
    if (find(plan.scenes, scene.id) == nullptr)
        return std::unexpected(fmt::format("there is no scene '{}'", scene.id));
    if (std::string problem = problemWith(plan, scene); !problem.empty()) return std::unexpected(problem);
    return Command{what, merge_key, [scene = std::move(scene)](Draft& draft) {
                       if (plan::LightScene* changed = draft.change<plan::LightScene>(scene.id))
                           *changed = scene;
                   }};
}

Refusable removeScene(const plan::Plan& plan, const std::string& scene_id) {
    const plan::LightScene* scene = find(plan.scenes, scene_id);
    if (scene == nullptr) return std::unexpected(fmt::format("there is no scene '{}'", scene_id));
    return Command{fmt::format("Remove scene {}", scene->name), "",
                   [scene_id](Draft& draft) { draft.remove<plan::LightScene>(scene_id); }};
}

} // namespace gangway::edit
