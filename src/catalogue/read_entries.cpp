#include "catalogue/read_entries.hpp"

#include <fmt/format.h>

namespace gangway::catalogue::detail {
namespace {

using Presence = ObjectReader::Presence;

constexpr Range kSize{1, 1000};
constexpr Range kSmall{0, 200};
constexpr Range kDepth{1, 200};
constexpr Range kGangs{1, 20};
constexpr Range kCurrent{0.1, 125};
constexpr Range kLoad{0, 10000};

BoxSpec readBox(const Json& object, const std::string& pointer, Mistakes& mistakes) {
    ObjectReader reader(object, pointer, mistakes);
    BoxSpec box;
    box.shape = static_cast<BoxSpec::Shape>(reader.word("shape", {"round", "rect"}));
    const Vec2 size = reader.lengths2("size", kSize);
    box.width_mm = size.x;
    box.height_mm = size.y;
    box.depth_mm = reader.length("depth", kDepth);
    box.drill_mm = reader.length("drill", kSmall, 0);
    box.fixing_mm = reader.length("fixing", kSmall);
    box.fixing = static_cast<BoxSpec::Fixing>(reader.word("fixingAxis", {"lying", "upright"}, 0));
    reader.finish();
    return box;
}

GridLayout readGrid(const Json& object, const std::string& pointer, Mistakes& mistakes) {
    ObjectReader reader(object, pointer, mistakes);
    GridLayout grid;
    grid.columns = reader.whole("columns", kGangs, 1);
    grid.rows = reader.whole("rows", kGangs, 1);
    const Vec2 size = reader.lengths2("size", kSize);
    grid.width_mm = size.x;
    grid.height_mm = size.y;
    reader.finish();
    return grid;
}

/// One box for every gang, or one for each size of plate.
void readBoxes(ObjectReader& reader, PlateFormat& format, Mistakes& mistakes) {
    const Json* boxes = reader.array("boxes", Presence::Required);
    if (!boxes) return;
    for (std::size_t i = 0; i < boxes->size(); ++i)
        format.boxes.push_back(readBox((*boxes)[i], fmt::format("{}/{}", reader.at("boxes"), i), mistakes));
    const std::size_t sizes =
        format.grid.empty() ? static_cast<std::size_t>(format.max_gangs) : format.grid.size();
    const std::size_t needed = format.shared_box ? sizes : 1;
    if (boxes->size() != needed)
        reader.note("boxes",
                    fmt::format("expected {} (one {}), found {}", needed,
                                format.shared_box ? "for each gang count" : "for every gang", boxes->size()));
}

void readGrids(ObjectReader& reader, PlateFormat& format, Mistakes& mistakes) {
    const Json* grid = reader.array("grid", Presence::Optional);
    for (std::size_t i = 0; grid && i < grid->size(); ++i)
        format.grid.push_back(readGrid((*grid)[i], fmt::format("{}/{}", reader.at("grid"), i), mistakes));
    if (grid) format.row_pitch_mm = reader.length("rowPitch", kSize);
}

/// What a module and each of its variants may say; a variant starts from the module's own values.
void readMake(ObjectReader& reader, ModuleType& module, const Fronts& fronts, Mistakes& mistakes) {
    module.gangs = reader.whole("gangs", {1, 4}, module.gangs);
    module.depth_mm = reader.length("depth", kSmall, module.depth_mm);
    module.outlets = reader.whole("outlets", {0, 8}, module.outlets);
    if (reader.has("rated")) {
        module.rated_current_a = reader.length("rated", kCurrent);
        module.source += fmt::format("; rated current: {}", reader.text("ratedSource"));
    }
    if (reader.has("minLoad") || reader.has("maxLoad")) {
        module.min_load_w = reader.length("minLoad", kLoad, module.min_load_w);
        module.max_load_w = reader.length("maxLoad", kLoad, module.max_load_w);
        module.source += fmt::format("; load: {}", reader.text("loadSource"));
    }
    if (const Json* front = reader.array("front", Presence::Optional)) {
        std::string front_source;
        module.front = readFront(*front, reader.at("front"), fronts, mistakes, front_source);
        if (!front_source.empty()) module.source += (module.source.empty() ? "" : "; ") + front_source;
    }
}

std::vector<ModuleType> readVariants(const Json& list, const std::string& pointer, const ModuleType& module,
                                     const Fronts& fronts, Mistakes& mistakes) {
    std::vector<ModuleType> variants;
    for (std::size_t i = 0; i < list.size(); ++i) {
        ObjectReader reader(list[i], fmt::format("{}/{}", pointer, i), mistakes);
        ModuleType variant = module;
        variant.format = reader.text("format");
        variant.name = reader.text("name", module.name);
        variant.source = reader.text("source", module.source);
        readMake(reader, variant, fronts, mistakes);
        reader.finish();
        variants.push_back(std::move(variant));
    }
    return variants;
}

bool isColour(const std::string& text) {
    return text.size() == 7 && text[0] == '#' &&
           text.find_first_not_of("0123456789ABCDEFabcdef", 1) == std::string::npos;
}

} // namespace

const std::vector<std::string>& moduleKindWords() {
    static const std::vector<std::string> kWords = {"socket",      "switch",    "dimmer", "data",
                                                    "tv",          "telephone", "usb",    "blank",
                                                    "cord-outlet", "sensor",    "control"};
    return kWords;
}

PlateFormat readFormat(const Json& object, const std::string& pointer, Mistakes& mistakes) {
    ObjectReader reader(object, pointer, mistakes);
    PlateFormat format;
    format.id = reader.text("id");
    format.name = reader.text("name");
    format.family = reader.text("family", "");
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
    readGrids(reader, format, mistakes);
    readBoxes(reader, format, mistakes);
    format.depths_mm = reader.lengthList("depths", kDepth);
    format.height_habit = reader.text("heightHabit");
    format.height_reference =
        static_cast<HeightReference>(reader.word("heightReference", {"centre", "top-gang"}, 0));
    format.source =
        reader.sources({"pitch", "single", "widths", "corner", "relief", "aperture", "minGangs", "maxGangs",
                        "switchesPerGang", "vertical", "grid", "rowPitch", "boxes", "depths", "heightHabit"});
    reader.finish();
    return format;
}

ModuleType readModule(const Json& object, const std::string& pointer, const Fronts& fronts,
                      Mistakes& mistakes) {
    ObjectReader reader(object, pointer, mistakes);
    ModuleType module;
    module.id = reader.text("id");
    module.name = reader.text("name");
    module.code = reader.text("code");
    module.kind = static_cast<ModuleKind>(reader.word("kind", moduleKindWords()));
    module.symbol = reader.text("symbol");
    module.ways = reader.whole("ways", {0, 8}, 0);
    static const std::vector<std::string> kActions = {"none",   "one-way", "two-way", "intermediate", "push",
                                                      "sensor", "timer",   "motor",   "heating"};
    module.action = static_cast<WayAction>(reader.word("action", kActions, 0));
    if (module.ways > 0 && !reader.has("action"))
        reader.note("action", "missing; a module with ways needs what they do");
    module.extra_low_voltage = reader.flag("extraLowVoltage", false);
    module.switched = reader.flag("switched", false);
    module.usb = reader.flag("usb", false);
    module.families = reader.textList("families");
    module.source = reader.text("source");
    readMake(reader, module, fronts, mistakes);
    if (!reader.has("front")) reader.note("front", "missing; a list is needed, [] for a plain face");
    if (const Json* variants = reader.array("variants", Presence::Optional))
        module.variants = readVariants(*variants, reader.at("variants"), module, fronts, mistakes);
    reader.finish();
    return module;
}

Finish readFinish(const Json& object, const std::string& pointer, Mistakes& mistakes) {
    ObjectReader reader(object, pointer, mistakes);
    Finish finish;
    finish.id = reader.text("id");
    finish.name = reader.text("name");
    finish.srgb = reader.text("colour");
    if (!finish.srgb.empty() && !isColour(finish.srgb))
        reader.note("colour", fmt::format("expected \"#RRGGBB\", found '{}'", finish.srgb));
    finish.gloss =
        static_cast<Finish::Gloss>(reader.word("gloss", {"matt", "satin", "gloss", "metal", "glass"}));
    finish.source = reader.text("source");
    reader.finish();
    return finish;
}

} // namespace gangway::catalogue::detail
