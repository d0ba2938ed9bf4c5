#include "cli/commands.hpp"

#include "plan/paths.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cstdio>

namespace gangway::cli {

int fail(const std::string& message) {
    std::fprintf(stderr, "gangway: %s\n", message.c_str());
    return kBadInput;
}

std::optional<plan::Plan> loadPlan(const std::filesystem::path& file) {
    auto result = plan::readFile(file);
    const plan::Diagnostics& said = result ? result->warnings : result.error();
    for (const auto& diagnostic : said)
        std::fprintf(stderr, "%s\n", plan::toLine(file.string(), diagnostic).c_str());
    if (!result) return std::nullopt;
    return std::move(result->plan);
}

std::optional<catalogue::Catalogue> loadCatalogue(const plan::Plan& plan) {
    auto loaded = catalogue::load(plan::assetsFolder() / "catalogue");
    if (!loaded) {
        fail(loaded.error());
        return std::nullopt;
    }
    for (const auto& problem : loaded->problems)
        std::fprintf(stderr, "gangway: left out of the catalogue: %s\n", problem.c_str());
    return catalogue::withOwn(*loaded, plan);
}

std::optional<catalogue::CountryPacks> loadPacks(const std::filesystem::path& plan_file) {
    auto loaded = catalogue::loadPacks(plan::assetsFolder() / "packs", catalogue::ownPackFolders(plan_file));
    if (!loaded) {
        fail(loaded.error());
        return std::nullopt;
    }
    for (const auto& problem : loaded->problems)
        std::fprintf(stderr, "gangway: left out of the country packs, mend it and run again: %s\n",
                     problem.c_str());
    return std::move(*loaded);
}

const catalogue::CountryPack* packNamed(const catalogue::CountryPacks& packs, const std::string& id,
                                        const std::filesystem::path& plan_file) {
    if (const auto* pack = packs.pack(id)) return pack;
    std::vector<std::string> ids;
    for (const auto& pack : packs.packs)
        ids.push_back(pack.id);
    std::vector<std::string> folders;
    for (const auto& folder : catalogue::ownPackFolders(plan_file))
        folders.push_back(folder.string());
    const std::string nearest = plan::nearestWord(id, ids);
    fail(fmt::format("no country pack '{}'{} There are: {}. Packs of your own are looked for in {}", id,
                     nearest.empty() ? "." : fmt::format("; did you mean '{}'?", nearest),
                     fmt::join(ids, ", "), fmt::join(folders, " and ")));
    return nullptr;
}

std::optional<catalogue::CountryPack> loadPack(const plan::Plan& plan, const std::string& named,
                                               const std::filesystem::path& plan_file) {
    const auto packs = loadPacks(plan_file);
    if (!packs) return std::nullopt;
    const auto* pack = packNamed(*packs, named.empty() ? plan.pack : named, plan_file);
    return pack == nullptr ? std::nullopt : std::optional(*pack);
}

std::string noSuch(const std::string& kind, const std::string& word, const std::vector<std::string>& known) {
    const std::string nearest = plan::nearestWord(word, known);
    return fmt::format("no {} '{}'{} The plan has: {}", kind, word,
                       nearest.empty() ? "." : fmt::format("; did you mean '{}'?", nearest),
                       fmt::join(known, ", "));
}

const plan::Room* roomNamed(const plan::Plan& plan, const std::string& word) {
    for (const auto& room : plan.rooms)
        if (room.id == word || room.letter == word || room.name == word) return &room;
    std::vector<std::string> ids;
    for (const auto& room : plan.rooms)
        ids.push_back(room.id);
    fail(noSuch("room", word, ids));
    return nullptr;
}

std::optional<std::pair<int, int>> parseSize(const std::string& text) {
    const auto cross = text.find('x');
    if (cross == std::string::npos) return std::nullopt;
    int width = 0;
    int height = 0;
    const char* const begin = text.data();
    const auto first = std::from_chars(begin, begin + cross, width);
    const auto second = std::from_chars(begin + cross + 1, begin + text.size(), height);
    const bool whole = first.ptr == begin + cross && second.ptr == begin + text.size();
    const auto good = [](int pixels) { return pixels >= 16 && pixels <= 16384; };
    if (!whole || first.ec != std::errc{} || second.ec != std::errc{} || !good(width) || !good(height))
        return std::nullopt;
    return std::pair{width, height};
}

} // namespace gangway::cli
