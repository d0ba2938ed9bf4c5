#include "catalogue/pack.hpp"

#include "catalogue/json_files.hpp"
#include "catalogue/limits.hpp"
#include "catalogue/read_entries.hpp"
#include "catalogue/read_pack_tables.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
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
    height.grade = detail::readGrade(reader);
    reader.finish();
    return height;
}

void readHeights(ObjectReader& reader, CountryPack& pack, Mistakes& mistakes) {
    const Json* heights = reader.array("heights", ObjectReader::Presence::Required);
    pack.heights.clear();
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

Sourced readSourced(ObjectReader& numbers, const std::string& key, detail::Range range, Mistakes& mistakes) {
    ObjectReader reader(numbers.object(key), numbers.at(key), mistakes);
    Sourced number;
    number.value = reader.length("value", range);
    number.source = reader.text("source");
    number.grade = detail::readGrade(reader);
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
    if (!parent.hasOptional("limits")) return;
    ObjectReader limits(parent.object("limits"), parent.at("limits"), mistakes);
    for (const LimitKind& kind : limitKinds()) {
        const std::string id(kind.id);
        if (limits.hasOptional(id))
            pack.limits[id] = readSourced(limits, id, {kind.low, kind.high}, mistakes);
    }
    limits.finish();
}

Wiring readWiring(ObjectReader& parent, Mistakes& mistakes) {
    ObjectReader reader(parent.object("wiring"), parent.at("wiring"), mistakes);
    Wiring wiring;
    wiring.convention = static_cast<WiringConvention>(
        reader.word("convention", {"loop-in-at-lamp", "neutral-at-switch", "junction-box"}));
    wiring.source = reader.text("source");
    wiring.grade = detail::readGrade(reader);
    reader.finish();
    return wiring;
}

void readLight(ObjectReader& parent, CountryPack& pack, Mistakes& mistakes) {
    const Json* list = parent.array("light", ObjectReader::Presence::Required);
    pack.light.clear();
    for (std::size_t i = 0; list && i < list->size(); ++i) {
        ObjectReader reader((*list)[i], fmt::format("/light/{}", i), mistakes);
        LightTarget target;
        target.use = detail::readUse(reader);
        target.task = reader.text("task", "");
        target.low_lx = reader.length("low", {1, 5000});
        target.high_lx = reader.length("high", {1, 5000});
        target.source = reader.text("source");
        target.grade = detail::readGrade(reader);
        reader.finish();
        pack.light.push_back(std::move(target));
    }
}

/// What a pack does not say is as the international one says.
void takeInternational(CountryPacks& loaded) {
    const CountryPack* international = loaded.pack("international");
    if (international == nullptr) return;
    for (CountryPack& pack : loaded.packs) {
        for (const auto& [id, number] : international->limits)
            pack.limits.try_emplace(id, number);
        if (pack.things.empty()) pack.things = international->things;
        if (pack.bodies.empty()) pack.bodies = international->bodies;
    }
}

/// Over `pack`, which is empty or the one that is extended: then a key may be left out.
void readOver(ObjectReader& reader, CountryPack& pack, Mistakes& mistakes) {
    const bool whole = pack.id.empty();
    const auto says = [&](const char* key) { return reader.hasOptional(key) || whole; };
    pack.extends = reader.text("extends", "");
    pack.id = reader.text("id");
    pack.name = reader.text("name");
    pack.edition = reader.text("edition", pack.edition);
    reader.text("note", "");
    if (says("units"))
        pack.units = static_cast<plan::DisplayUnits>(reader.word("units", {"mm", "cm", "m", "ft-in"}));
    if (says("paper")) pack.paper = reader.text("paper");
    if (says("plateFormat")) pack.plate_format = reader.text("plateFormat");
    if (says("heightHabit")) pack.height_habit = reader.text("heightHabit");
    if (says("habitSource")) pack.habit_source = reader.text("habitSource");
    if (says("heights")) readHeights(reader, pack, mistakes);
    if (says("numbers")) readNumbers(reader, pack, mistakes);
    readLimits(reader, pack, mistakes);
    if (says("wiring")) pack.wiring = readWiring(reader, mistakes);
    if (says("light")) readLight(reader, pack, mistakes);
    if (reader.hasOptional("cableZones")) pack.zones = detail::readCableZones(reader, mistakes);
    if (reader.hasOptional("outlets")) pack.outlets = detail::readOutletCounts(reader, mistakes);
    if (reader.hasOptional("things")) pack.things = detail::readRoomThings(reader, mistakes);
    if (reader.hasOptional("bodies")) pack.bodies = detail::readBodies(reader, mistakes);
    reader.finish();
}

/// Files whose packs are still to be read.
using Waiting = std::vector<const detail::JsonFile*>;

std::string extendedBy(const detail::JsonFile& file) {
    const auto found = file.content.find("extends");
    return found != file.content.end() && found->is_string() ? found->get<std::string>() : std::string();
}

void keep(CountryPack pack, const std::set<std::string>& replaceable, const detail::JsonFile& file,
          Mistakes& mistakes, CountryPacks& loaded) {
    const auto known = std::ranges::find(loaded.packs, pack.id, &CountryPack::id);
    const bool replaces = known != loaded.packs.end() && replaceable.contains(pack.id);
    if (mistakes.empty() && known != loaded.packs.end() && !replaces)
        mistakes.push_back({"/id", fmt::format("pack '{}' is defined twice", pack.id)});
    if (!mistakes.empty())
        std::ranges::move(detail::lines(file, mistakes), std::back_inserter(loaded.problems));
    else if (replaces)
        *known = std::move(pack);
    else
        loaded.packs.push_back(std::move(pack));
}

/// Packs in the files' order; those that extend one wait until that is read.
void readFiles(const std::vector<detail::JsonFile>& files, const std::set<std::string>& replaceable,
               CountryPacks& loaded) {
    Waiting waiting;
    for (const detail::JsonFile& file : files)
        waiting.push_back(&file);
    for (bool progress = true; progress && !waiting.empty();) {
        progress = false;
        Waiting later;
        for (const detail::JsonFile* file : waiting) {
            const std::string base = extendedBy(*file);
            const CountryPack* extended = loaded.pack(base);
            if (!base.empty() && extended == nullptr) {
                later.push_back(file);
                continue;
            }
            progress = true;
            Mistakes mistakes;
            ObjectReader reader(file->content, "", mistakes);
            CountryPack pack = extended == nullptr ? CountryPack{} : *extended;
            readOver(reader, pack, mistakes);
            keep(std::move(pack), replaceable, *file, mistakes, loaded);
        }
        waiting = std::move(later);
    }
    for (const detail::JsonFile* file : waiting)
        std::ranges::move(
            detail::lines(*file, {{"/extends", fmt::format("there is no pack '{}' that could be extended",
                                                           extendedBy(*file))}}),
            std::back_inserter(loaded.problems));
}

/// A folder of the designer's own may be missing or empty; its problems are said with its path, because a
/// file of that name may be among the shipped ones too.
void readOwn(const std::filesystem::path& folder, const std::set<std::string>& replaceable,
             CountryPacks& loaded) {
    std::error_code failure;
    const std::filesystem::directory_iterator entries(folder, failure);
    const bool any = !failure && std::any_of(begin(entries), end(entries), [](const auto& entry) {
        return entry.path().extension() == ".json";
    });
    if (!any) return;
    const std::size_t before = loaded.problems.size();
    if (const auto files = detail::readJsonFiles(folder, "country pack", loaded.problems))
        readFiles(*files, replaceable, loaded);
    for (std::size_t i = before; i < loaded.problems.size(); ++i)
        loaded.problems[i] = (folder / loaded.problems[i]).string();
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
    return loadPacks(folder, {});
}

std::expected<CountryPacks, std::string> loadPacks(const std::filesystem::path& shipped,
                                                   const std::vector<std::filesystem::path>& own) {
    CountryPacks loaded;
    const auto files = detail::readJsonFiles(shipped, "country pack", loaded.problems);
    if (!files) return std::unexpected(files.error());
    readFiles(*files, {}, loaded);
    std::set<std::string> replaceable;
    for (const CountryPack& pack : loaded.packs)
        replaceable.insert(pack.id);
    for (const std::filesystem::path& folder : own)
        readOwn(folder, replaceable, loaded);
    takeInternational(loaded);
    if (!loaded.packs.empty()) return loaded;
    return std::unexpected(fmt::format("country pack folder '{}': no pack could be read\n{}",
                                       shipped.string(), fmt::join(loaded.problems, "\n")));
}

std::vector<std::filesystem::path> ownPackFolders(const std::filesystem::path& plan_file) {
    std::vector<std::filesystem::path> folders;
    const char* config = std::getenv("XDG_CONFIG_HOME");
    const char* home = std::getenv("HOME");
    if (config != nullptr && *config != '\0')
        folders.push_back(std::filesystem::path(config) / "gangway" / "packs");
    else if (home != nullptr && *home != '\0')
        folders.push_back(std::filesystem::path(home) / ".config" / "gangway" / "packs");
    if (!plan_file.empty()) folders.push_back(plan_file.parent_path() / "packs");
    return folders;
}

std::string packCopy(const CountryPack& base, const std::string& id, const std::string& name) {
    static constexpr auto kGrades =
        std::to_array<const char*>({"official", "trade", "secondary", "memory", "practice"});
    nlohmann::ordered_json copy = {{"extends", base.id}, {"id", id}, {"name", name}};
    if (!base.edition.empty()) copy["edition"] = base.edition;
    for (const LimitKind& kind : limitKinds()) {
        const Sourced& limit = base.limit(kind.id);
        if (limit.source.empty()) continue;
        copy["limits"][std::string(kind.id)] = {{"value", limit.value},
                                                {"source", limit.source},
                                                {"grade", kGrades[static_cast<std::size_t>(limit.grade)]}};
    }
    return copy.dump(2) + "\n";
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
