#include "catalogue/pack.hpp"

#include "catalogue/json_files.hpp"
#include "catalogue/limits.hpp"
#include "catalogue/read_entries.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <set>

namespace gangway::catalogue {
namespace {

using detail::Json;
using detail::Mistakes;
using detail::ObjectReader;

constexpr detail::Range kHeight{0, 3000};

std::vector<ModuleKind> readKinds(ObjectReader& reader) {
    std::vector<ModuleKind> kinds;
    const std::vector<std::string>& words = detail::moduleKindWords();
    const std::vector<std::string> named = reader.textList("kinds");
    for (std::size_t i = 0; i < named.size(); ++i) {
        const auto found = std::ranges::find(words, named[i]);
        if (found == words.end())
            reader.note(fmt::format("kinds/{}", i),
                        fmt::format("expected one of {}, found '{}'", fmt::join(words, ", "), named[i]));
        else
            kinds.push_back(static_cast<ModuleKind>(found - words.begin()));
    }
    return kinds;
}

MountingHeight readHeight(const Json& object, const std::string& pointer, Mistakes& mistakes) {
    ObjectReader reader(object, pointer, mistakes);
    MountingHeight height;
    height.id = reader.text("id");
    height.name = reader.text("name");
    height.height_mm = reader.length("height", kHeight);
    height.from = static_cast<MountingHeight::From>(reader.word("from", {"floor", "worktop"}, 0));
    height.kinds = readKinds(reader);
    height.where = reader.text("where", "");
    height.source = reader.text("source");
    height.grade =
        static_cast<Grade>(reader.word("grade", {"official", "trade", "secondary", "memory", "practice"}));
    reader.finish();
    return height;
}

void readHeights(ObjectReader& reader, CountryPack& pack, Mistakes& mistakes) {
    const Json* heights = reader.array("heights", ObjectReader::Presence::Required);
    std::set<std::string> seen;
    for (std::size_t i = 0; heights && i < heights->size(); ++i) {
        const std::string pointer = fmt::format("{}/{}", reader.at("heights"), i);
        pack.heights.push_back(readHeight((*heights)[i], pointer, mistakes));
        const std::string& id = pack.heights.back().id;
        if (!seen.insert(id).second)
            mistakes.push_back(
                {fmt::format("{}/id", pointer), fmt::format("height '{}' is defined twice", id)});
    }
}

Grade readGrade(ObjectReader& reader) {
    return static_cast<Grade>(reader.word("grade", {"official", "trade", "secondary", "memory", "practice"}));
}

Sourced readSourced(ObjectReader& numbers, const std::string& key, detail::Range range, Mistakes& mistakes) {
    ObjectReader reader(numbers.object(key), numbers.at(key), mistakes);
    Sourced number;
    number.value = reader.length("value", range);
    number.source = reader.text("source");
    number.grade = readGrade(reader);
    reader.finish();
    return number;
}

void readNumbers(ObjectReader& parent, CountryPack& pack, Mistakes& mistakes) {
    ObjectReader numbers(parent.object("numbers"), parent.at("numbers"), mistakes);
    pack.volts = readSourced(numbers, "volts", {1, 1000}, mistakes);
    pack.lighting_rated_a = readSourced(numbers, "lightingRated", {1, 100}, mistakes);
    pack.circuit_part = readSourced(numbers, "circuitPart", {0.1, 1}, mistakes);
    pack.dimmer_led_part = readSourced(numbers, "dimmerLedPart", {0.01, 1}, mistakes);
    pack.entrance_reach_mm = readSourced(numbers, "entranceReach", {100, 5000}, mistakes);
    pack.maintenance = readSourced(numbers, "maintenance", {0.1, 1}, mistakes);
    pack.utilisation = readSourced(numbers, "utilisation", {0.1, 1}, mistakes);
    pack.work_plane_mm = readSourced(numbers, "workPlane", {0, 2000}, mistakes);
    numbers.finish();
}

void readLimits(ObjectReader& parent, CountryPack& pack, Mistakes& mistakes) {
    if (!parent.has("limits")) return;
    ObjectReader limits(parent.object("limits"), parent.at("limits"), mistakes);
    for (const LimitKind& kind : limitKinds()) {
        const std::string id(kind.id);
        if (limits.has(id)) pack.limits[id] = readSourced(limits, id, {kind.low, kind.high}, mistakes);
    }
    limits.finish();
}

Wiring readWiring(ObjectReader& parent, Mistakes& mistakes) {
    ObjectReader reader(parent.object("wiring"), parent.at("wiring"), mistakes);
    Wiring wiring;
    wiring.convention = static_cast<WiringConvention>(
        reader.word("convention", {"loop-in-at-lamp", "neutral-at-switch", "junction-box"}));
    wiring.source = reader.text("source");
    wiring.grade = readGrade(reader);
    reader.finish();
    return wiring;
}

void readLight(ObjectReader& parent, CountryPack& pack, Mistakes& mistakes) {
    static const std::vector<std::string> kUses = {"unstated", "living",  "dining",   "kitchen", "bedroom",
                                                   "child",    "study",   "bathroom", "toilet",  "hall",
                                                   "stair",    "utility", "store"};
    const Json* list = parent.array("light", ObjectReader::Presence::Required);
    for (std::size_t i = 0; list && i < list->size(); ++i) {
        ObjectReader reader((*list)[i], fmt::format("/light/{}", i), mistakes);
        LightTarget target;
        target.use = static_cast<plan::RoomUse>(reader.word("use", kUses));
        target.task = reader.text("task", "");
        target.low_lx = reader.length("low", {1, 5000});
        target.high_lx = reader.length("high", {1, 5000});
        target.source = reader.text("source");
        target.grade = readGrade(reader);
        reader.finish();
        pack.light.push_back(std::move(target));
    }
}

/// What a pack does not say is as the international one says.
void takeLimits(CountryPacks& loaded) {
    const CountryPack* international = loaded.pack("international");
    if (international == nullptr) return;
    for (CountryPack& pack : loaded.packs)
        for (const auto& [id, number] : international->limits)
            pack.limits.try_emplace(id, number);
}

CountryPack readPack(const Json& object, Mistakes& mistakes) {
    ObjectReader reader(object, "", mistakes);
    CountryPack pack;
    pack.id = reader.text("id");
    pack.name = reader.text("name");
    pack.units = static_cast<plan::DisplayUnits>(reader.word("units", {"mm", "cm", "m", "ft-in"}));
    pack.paper = reader.text("paper");
    pack.plate_format = reader.text("plateFormat");
    pack.height_habit = reader.text("heightHabit");
    pack.habit_source = reader.text("habitSource");
    reader.text("note", "");
    readHeights(reader, pack, mistakes);
    readNumbers(reader, pack, mistakes);
    readLimits(reader, pack, mistakes);
    pack.wiring = readWiring(reader, mistakes);
    readLight(reader, pack, mistakes);
    reader.finish();
    return pack;
}

} // namespace

const MountingHeight* CountryPack::usualHeight(ModuleKind kind) const {
    const auto found = std::ranges::find_if(heights, [&](const MountingHeight& height) {
        return height.from == MountingHeight::From::Floor &&
               (height.kinds.empty() || std::ranges::find(height.kinds, kind) != height.kinds.end());
    });
    return found == heights.end() ? nullptr : &*found;
}

const Sourced& CountryPack::limit(std::string_view key) const {
    static const Sourced kNone;
    const auto found = limits.find(key);
    return found == limits.end() ? kNone : found->second;
}

const CountryPack* CountryPacks::pack(const std::string& id) const {
    const auto found = std::ranges::find(packs, id, &CountryPack::id);
    return found == packs.end() ? nullptr : &*found;
}

std::expected<CountryPacks, std::string> loadPacks(const std::filesystem::path& folder) {
    CountryPacks loaded;
    const auto files = detail::readJsonFiles(folder, "country pack", loaded.problems);
    if (!files) return std::unexpected(files.error());
    for (const detail::JsonFile& file : *files) {
        Mistakes mistakes;
        CountryPack pack = readPack(file.content, mistakes);
        if (mistakes.empty() && loaded.pack(pack.id))
            mistakes.push_back({"/id", fmt::format("pack '{}' is defined twice", pack.id)});
        if (mistakes.empty())
            loaded.packs.push_back(std::move(pack));
        else
            std::ranges::move(detail::lines(file, mistakes), std::back_inserter(loaded.problems));
    }
    takeLimits(loaded);
    if (!loaded.packs.empty()) return loaded;
    return std::unexpected(fmt::format("country pack folder '{}': no pack could be read\n{}", folder.string(),
                                       fmt::join(loaded.problems, "\n")));
}

std::string gradeText(Grade grade) {
    switch (grade) {
    case Grade::Official:
        return "official text";
    case Grade::Trade:
        return "trade body or textbook";
    case Grade::Secondary:
        return "secondary page";
    case Grade::Memory:
        return "from memory";
    case Grade::Practice:
        break;
    }
    return "common practice, no source";
}

} // namespace gangway::catalogue
