#include "catalogue/catalogue.hpp"

#include <algorithm>

namespace gangway::catalogue {
namespace {

template <typename Entry>
const Entry* findById(const std::vector<Entry>& entries, const std::string& id) {
    const auto found = std::ranges::find(entries, id, &Entry::id);
    return found == entries.end() ? nullptr : &*found;
}

template <typename Entry>
std::vector<std::string> idsOf(const std::vector<Entry>& entries) {
    std::vector<std::string> ids;
    ids.reserve(entries.size());
    for (const Entry& entry : entries)
        ids.push_back(entry.id);
    return ids;
}

} // namespace

const PlateFormat* Catalogue::format(const std::string& id) const {
    return findById(formats, id);
}
const ModuleType* Catalogue::module(const std::string& id) const {
    return findById(modules, id);
}
const Finish* Catalogue::finish(const std::string& id) const {
    return findById(finishes, id);
}

std::vector<std::string> formatIds(const Catalogue& catalogue) {
    return idsOf(catalogue.formats);
}
std::vector<std::string> moduleIds(const Catalogue& catalogue) {
    return idsOf(catalogue.modules);
}
std::vector<std::string> finishIds(const Catalogue& catalogue) {
    return idsOf(catalogue.finishes);
}

const ModuleType& moduleFor(const ModuleType& module, const PlateFormat& format) {
    const auto variant = std::ranges::find(module.variants, format.id, &ModuleType::format);
    if (variant != module.variants.end()) return *variant;
    if (format.family.empty()) return module;
    const auto of_family = std::ranges::find(module.variants, format.family, &ModuleType::format);
    return of_family == module.variants.end() ? module : *of_family;
}

bool isMadeFor(const ModuleType& module, const PlateFormat& format) {
    return module.families.empty() || format.family.empty() ||
           std::ranges::find(module.families, format.family) != module.families.end();
}

} // namespace gangway::catalogue
