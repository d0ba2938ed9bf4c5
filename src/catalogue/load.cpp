#include "catalogue/catalogue.hpp"
#include "catalogue/read_front.hpp"
#include "catalogue/read_object.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <fstream>
#include <functional>
#include <iterator>
#include <set>
#include <system_error>

namespace gangway::catalogue {
namespace {

using detail::Json;
using detail::Mistakes;
using detail::ObjectReader;
using Presence = ObjectReader::Presence;

constexpr detail::Range kSize{1, 1000};
constexpr detail::Range kSmall{0, 200};
constexpr detail::Range kGangs{1, 20};

struct File {
    std::string name;
    Json content;
};

std::expected<Json, std::string> parse(const std::filesystem::path& path) {
    std::ifstream stream(path, std::ios::binary);
    if (!stream) return std::unexpected(path.filename().string() + ": the file can't be read");
    const std::string text{std::istreambuf_iterator<char>(stream), {}};
    try {
        return Json::parse(text);
    } catch (const Json::parse_error& error) {
        const auto end = text.begin() + static_cast<std::ptrdiff_t>(std::min(error.byte, text.size()));
        const auto line = 1 + std::count(text.begin(), end, '\n');
        return std::unexpected(
            fmt::format("{}:{}: not JSON ({})", path.filename().string(), line, error.what()));
    }
}

std::expected<std::vector<File>, std::string> readFiles(const std::filesystem::path& folder) {
    std::error_code failure;
    std::vector<std::filesystem::path> paths;
    for (std::filesystem::directory_iterator entry(folder, failure), end; !failure && entry != end;
         entry.increment(failure))
        if (entry->path().extension() == ".json") paths.push_back(entry->path());
    if (failure)
        return std::unexpected(fmt::format("catalogue folder '{}': {}", folder.string(), failure.message()));
    if (paths.empty())
        return std::unexpected(fmt::format("catalogue folder '{}': no *.json file in it", folder.string()));
    std::ranges::sort(paths);
    std::vector<File> files;
    for (const auto& path : paths) {
        auto content = parse(path);
        if (!content) return std::unexpected(content.error());
        files.push_back({path.filename().string(), std::move(*content)});
    }
    return files;
}

BoxSpec readBox(const Json& object, const std::string& where, Mistakes& mistakes) {
    ObjectReader reader(object, where, mistakes);
    BoxSpec box;
    box.shape = static_cast<BoxSpec::Shape>(reader.word("shape", {"round", "rect"}));
    const Vec2 size = reader.lengths2("size", kSize);
    box.width_mm = size.x;
    box.height_mm = size.y;
    box.depth_mm = reader.length("depth", {1, 200});
    box.drill_mm = reader.length("drill", kSmall, 0);
    box.fixing_mm = reader.length("fixing", kSmall);
    reader.finish();
    return box;
}

PlateFormat readFormat(const Json& object, const std::string& where, Mistakes& mistakes) {
    ObjectReader reader(object, where, mistakes);
    PlateFormat format;
    format.id = reader.text("id");
    format.name = reader.text("name");
    format.pitch_mm = reader.length("pitch", kSize);
    const Vec2 single = reader.lengths2("single", kSize);
    format.single_width_mm = single.x;
    format.single_height_mm = single.y;
    format.widths_mm = reader.lengthList("widths", kSize);
    format.corner_mm = reader.length("corner", kSmall);
    format.relief_mm = reader.length("relief", kSmall);
    const Vec2 aperture = reader.lengths2("aperture", kSize);
    format.aperture_width_mm = aperture.x;
    format.aperture_height_mm = aperture.y;
    format.min_gangs = reader.whole("minGangs", kGangs, 1);
    format.max_gangs = reader.whole("maxGangs", kGangs, 1);
    format.switches_per_gang = reader.whole("switchesPerGang", {1, 4}, 1);
    format.vertical = reader.flag("vertical", true);
    format.shared_box = reader.flag("sharedBox", false);
    if (const Json* boxes = reader.array("boxes", Presence::Required)) {
        for (std::size_t i = 0; i < boxes->size(); ++i)
            format.boxes.push_back(
                readBox((*boxes)[i], fmt::format("{}/{}", reader.at("boxes"), i), mistakes));
        const std::size_t needed = format.shared_box ? static_cast<std::size_t>(format.max_gangs) : 1;
        if (boxes->size() != needed)
            reader.note("boxes", fmt::format("expected {} (one {}), found {}", needed,
                                             format.shared_box ? "for each gang count" : "for every gang",
                                             boxes->size()));
    }
    format.height_habit = reader.text("heightHabit");
    format.source = reader.sources({"pitch", "single", "widths", "corner", "relief", "aperture", "minGangs",
                                    "maxGangs", "switchesPerGang", "vertical", "boxes", "heightHabit"});
    reader.finish();
    return format;
}

/// What a module and each of its variants may say; a variant starts from the module's own values.
void readMake(ObjectReader& reader, ModuleType& module, const detail::Fronts& fronts, Mistakes& mistakes) {
    module.gangs = reader.whole("gangs", {1, 4}, module.gangs);
    module.depth_mm = reader.length("depth", kSmall, module.depth_mm);
    if (const Json* front = reader.array("front", Presence::Optional)) {
        std::string front_source;
        module.front = detail::readFront(*front, reader.at("front"), fronts, mistakes, front_source);
        if (!front_source.empty()) module.source += (module.source.empty() ? "" : "; ") + front_source;
    }
}

std::vector<ModuleType> readVariants(const Json& list, const std::string& where, const ModuleType& module,
                                     const detail::Fronts& fronts, Mistakes& mistakes) {
    std::vector<ModuleType> variants;
    for (std::size_t i = 0; i < list.size(); ++i) {
        ObjectReader reader(list[i], fmt::format("{}/{}", where, i), mistakes);
        ModuleType variant = module;
        variant.format = reader.text("format");
        variant.source = reader.text("source", module.source);
        readMake(reader, variant, fronts, mistakes);
        reader.finish();
        variants.push_back(std::move(variant));
    }
    return variants;
}

ModuleType readModule(const Json& object, const std::string& where, const detail::Fronts& fronts,
                      Mistakes& mistakes) {
    ObjectReader reader(object, where, mistakes);
    ModuleType module;
    module.id = reader.text("id");
    module.name = reader.text("name");
    module.code = reader.text("code");
    module.kind =
        static_cast<ModuleKind>(reader.word("kind", {"socket", "switch", "dimmer", "data", "tv", "telephone",
                                                     "usb", "blank", "cord-outlet", "sensor", "control"}));
    module.symbol = reader.text("symbol");
    module.ways = reader.whole("ways", {0, 8}, 0);
    module.outlets = reader.whole("outlets", {0, 8}, 0);
    module.extra_low_voltage = reader.flag("extraLowVoltage", false);
    module.source = reader.text("source");
    readMake(reader, module, fronts, mistakes);
    if (!reader.has("front")) reader.note("front", "missing; a list is needed, [] for a plain face");
    if (const Json* variants = reader.array("variants", Presence::Optional))
        module.variants = readVariants(*variants, reader.at("variants"), module, fronts, mistakes);
    reader.finish();
    return module;
}

bool isColour(const std::string& text) {
    return text.size() == 7 && text[0] == '#' &&
           text.find_first_not_of("0123456789ABCDEFabcdef", 1) == std::string::npos;
}

Finish readFinish(const Json& object, const std::string& where, Mistakes& mistakes) {
    ObjectReader reader(object, where, mistakes);
    Finish finish;
    finish.id = reader.text("id");
    finish.name = reader.text("name");
    finish.srgb = reader.text("colour");
    if (!finish.srgb.empty() && !isColour(finish.srgb))
        reader.note("colour", "expected \"#RRGGBB\", found '" + finish.srgb + "'");
    finish.gloss =
        static_cast<Finish::Gloss>(reader.word("gloss", {"matt", "satin", "gloss", "metal", "glass"}));
    finish.source = reader.text("source");
    reader.finish();
    return finish;
}

/// Calls `take` with each object of the list `key` of every file, and with where it stands.
void eachEntry(const std::vector<File>& files, const std::string& key, Mistakes& mistakes,
               const std::function<void(const Json&, const std::string&)>& take) {
    for (const File& file : files) {
        if (!file.content.is_object()) continue;
        ObjectReader reader(file.content, file.name + ": ", mistakes);
        const Json* list = reader.array(key, Presence::Optional);
        for (std::size_t i = 0; list && i < list->size(); ++i)
            take((*list)[i], fmt::format("{}: /{}/{}", file.name, key, i));
    }
}

void checkTopLevel(const std::vector<File>& files, Mistakes& mistakes) {
    for (const File& file : files) {
        if (!file.content.is_object()) {
            mistakes.push_back(file.name + ": expected an object, found " + detail::kindOf(file.content));
            continue;
        }
        for (const auto& item : file.content.items()) {
            const std::set<std::string> known = {"note", "formats", "fronts", "modules", "finishes"};
            if (!known.contains(item.key()))
                mistakes.push_back(fmt::format("{}: /{}: unknown key; known are {}", file.name, item.key(),
                                               fmt::join(known, ", ")));
        }
    }
}

template <typename Entry>
void checkUnique(const std::vector<Entry>& entries, const std::string& what, Mistakes& mistakes) {
    std::set<std::string> seen;
    for (const Entry& entry : entries)
        if (!seen.insert(entry.id).second)
            mistakes.push_back(fmt::format("{} '{}' is defined twice", what, entry.id));
}

void checkVariants(const Catalogue& catalogue, Mistakes& mistakes) {
    for (const ModuleType& module : catalogue.modules)
        for (const ModuleType& variant : module.variants)
            if (!catalogue.format(variant.format))
                mistakes.push_back(
                    fmt::format("module '{}' has a variant for the plate format '{}', which no file "
                                "defines",
                                module.id, variant.format));
}

} // namespace

std::expected<Catalogue, std::string> load(const std::filesystem::path& folder) {
    const auto files = readFiles(folder);
    if (!files) return std::unexpected(files.error());

    Mistakes mistakes;
    Catalogue catalogue;
    detail::Fronts fronts;
    checkTopLevel(*files, mistakes);
    eachEntry(*files, "fronts", mistakes, [&](const Json& object, const std::string& where) {
        detail::readNamedFront(object, where, fronts, mistakes);
    });
    eachEntry(*files, "formats", mistakes, [&](const Json& object, const std::string& where) {
        catalogue.formats.push_back(readFormat(object, where, mistakes));
    });
    eachEntry(*files, "modules", mistakes, [&](const Json& object, const std::string& where) {
        catalogue.modules.push_back(readModule(object, where, fronts, mistakes));
    });
    eachEntry(*files, "finishes", mistakes, [&](const Json& object, const std::string& where) {
        catalogue.finishes.push_back(readFinish(object, where, mistakes));
    });
    checkUnique(catalogue.formats, "plate format", mistakes);
    checkUnique(catalogue.modules, "module", mistakes);
    checkUnique(catalogue.finishes, "finish", mistakes);
    checkVariants(catalogue, mistakes);
    if (!mistakes.empty()) return std::unexpected(fmt::format("{}", fmt::join(mistakes, "\n")));
    return catalogue;
}

} // namespace gangway::catalogue
