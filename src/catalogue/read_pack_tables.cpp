#include "catalogue/read_pack_tables.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <fmt/ranges.h>

namespace gangway::catalogue::detail {

namespace {
constexpr Range kReach{0, 10000};
constexpr Range kArea{0, 10000};

const std::vector<std::string>& useWords() {
    static const std::vector<std::string> kUses = {"unstated", "living",  "dining",   "kitchen", "bedroom",
                                                   "child",    "study",   "bathroom", "toilet",  "hall",
                                                   "stair",    "utility", "store"};
    return kUses;
}

/// Each object of a list under a key, read by `read`.
template <class T, class Read>
std::vector<T> readList(ObjectReader& pack, const char* key, Mistakes& mistakes, Read read) {
    std::vector<T> entries;
    const Json* list = pack.array(key, ObjectReader::Presence::Required);
    for (std::size_t i = 0; list != nullptr && i < list->size(); ++i) {
        ObjectReader reader((*list)[i], fmt::format("{}/{}", pack.at(key), i), mistakes);
        entries.push_back(read(reader));
        entries.back().source = reader.text("source");
        entries.back().grade = readGrade(reader);
        reader.finish();
    }
    return entries;
}

std::vector<plan::RoomUse> readUses(ObjectReader& reader) {
    std::vector<plan::RoomUse> uses;
    const std::vector<std::string> named = reader.textList("uses");
    for (std::size_t i = 0; i < named.size(); ++i) {
        const auto found = std::ranges::find(useWords(), named[i]);
        if (found == useWords().end())
            reader.note(fmt::format("uses/{}", i),
                        fmt::format("expected one of {}, found '{}'", fmt::join(useWords(), ", "), named[i]));
        else
            uses.push_back(static_cast<plan::RoomUse>(found - useWords().begin()));
    }
    return uses;
}
} // namespace

Grade readGrade(ObjectReader& reader) {
    return static_cast<Grade>(reader.word("grade", {"official", "trade", "secondary", "memory", "practice"}));
}

plan::RoomUse readUse(ObjectReader& reader, const char* key) {
    return static_cast<plan::RoomUse>(reader.word(key, useWords()));
}

std::vector<CableZone> readCableZones(ObjectReader& pack, Mistakes& mistakes) {
    return readList<CableZone>(pack, "cableZones", mistakes, [](ObjectReader& reader) {
        CableZone zone;
        zone.id = reader.text("id");
        zone.name = reader.text("name");
        zone.from = static_cast<CableZone::From>(reader.word(
            "from", {"ceiling", "floor", "corner", "door-latch", "door-both", "window", "point"}));
        zone.low_mm = reader.length("low", kReach, 0);
        zone.high_mm = reader.length("high", kReach, 0);
        zone.preferred_mm = reader.length("preferred", kReach, 0);
        zone.uses = readUses(reader);
        if (zone.from != CableZone::From::Point && zone.high_mm <= zone.low_mm)
            reader.note("high", "must be more than 'low'");
        return zone;
    });
}

std::vector<OutletCount> readOutletCounts(ObjectReader& pack, Mistakes& mistakes) {
    return readList<OutletCount>(pack, "outlets", mistakes, [](ObjectReader& reader) {
        OutletCount count;
        count.use = readUse(reader);
        if (reader.hasOptional("main")) count.main = reader.flag("main", false);
        count.which = static_cast<OutletCount::Which>(
            reader.word("which", {"any", "above-worktop", "not-above-worktop", "lighting"}, 0));
        count.least = reader.whole("least", {0, 100}, 0);
        count.per_m2 = reader.length("perArea", kArea, 0);
        count.area_from_m2 = reader.length("areaFrom", kArea, 0);
        count.area_to_m2 = reader.length("areaTo", kArea, 1e9);
        count.length_from_mm = reader.length("lengthFrom", {0, 100000}, 0);
        count.double_is_one = reader.flag("doubleIsOne", false);
        count.beyond_appliances = reader.flag("beyondAppliances", false);
        if (reader.hasOptional("unless")) count.unless = readUse(reader, "unless");
        return count;
    });
}

std::vector<RoomThing> readRoomThings(ObjectReader& pack, Mistakes& mistakes) {
    return readList<RoomThing>(pack, "things", mistakes, [](ObjectReader& reader) {
        RoomThing thing;
        thing.use = readUse(reader);
        thing.name = reader.text("name");
        thing.words = reader.text("words", thing.name);
        thing.watts = reader.length("watts", {0, 20000}, 0);
        thing.lead_mm = reader.length("lead", {0, 20000}, 1500);
        thing.data = reader.flag("data", false);
        thing.once = reader.flag("once", false);
        return thing;
    });
}

std::vector<Body> readBodies(ObjectReader& pack, Mistakes& mistakes) {
    return readList<Body>(pack, "bodies", mistakes, [](ObjectReader& reader) {
        Body body;
        body.id = reader.text("id");
        body.name = reader.text("name");
        body.eye_mm = reader.length("eye", {0, 3000});
        body.shoulder_mm = reader.length("shoulder", {0, 3000});
        body.arm_mm = reader.length("arm", {100, 1500});
        body.low_mm = reader.length("low", {0, 3000});
        body.high_mm = reader.length("high", {0, 3000});
        return body;
    });
}

} // namespace gangway::catalogue::detail
