#include "plan/known_keys.hpp"

namespace gangway::plan {

void KeyLister::host(Host&) {
    for (const char* key : {"wall", "floor", "ceiling", "furniture"})
        add(key, false);
    add("face", false);
    keys.back().words.assign(words::kFace.begin(), words::kFace.end());
    for (const char* key : {"setOut", "height", "east", "north"})
        add(key, false);
}

std::vector<KnownKey> knownFramingKeys(fields::FramingUse use) {
    KeyLister lister;
    Framing framing;
    fields::describe(lister, framing, use);
    return lister.keys;
}

std::vector<std::pair<std::string, std::vector<KnownKey>>> allKnownKeys() {
    return {{"plan", knownKeys<Plan>()},
            {"project", knownKeys<Project>()},
            {"layer", knownKeys<Layer>()},
            {"course", knownKeys<Course>()},
            {"storey", knownKeys<Storey>()},
            {"wallLine", knownKeys<WallLine>()},
            {"studs", knownFramingKeys(fields::FramingUse::Studs)},
            {"joists", knownFramingKeys(fields::FramingUse::Joists)},
            {"wall", knownKeys<Wall>()},
            {"ceiling", knownKeys<Ceiling>()},
            {"room", knownKeys<Room>()},
            {"opening", knownKeys<Opening>()},
            {"furniture", knownKeys<Furniture>()},
            {"module", knownKeys<Module>()},
            {"siteTolerance", knownKeys<SiteTolerance>()},
            {"keptDistance", knownKeys<KeptDistance>()},
            {"plate", knownKeys<Plate>()},
            {"ownFormat", knownKeys<OwnFormat>()},
            {"libraryPlate", knownKeys<LibraryPlate>()},
            {"device", knownKeys<Device>()},
            {"luminaire", knownKeys<Luminaire>()},
            {"way", knownKeys<WayRef>()},
            {"leg", knownKeys<SwitchLeg>()},
            {"circuit", knownKeys<Circuit>()},
            {"level", knownKeys<LightScene::Level>()},
            {"scene", knownKeys<LightScene>()},
            {"agreement", knownKeys<Agreement>()},
            {"acceptance", knownKeys<Acceptance>()},
            {"issuedPlate", knownKeys<IssuedPlate>()},
            {"issuedLuminaire", knownKeys<IssuedLuminaire>()},
            {"issuedRoom", knownKeys<IssuedRoom>()},
            {"issuedSheet", knownKeys<IssuedSheet>()},
            {"issue", knownKeys<Issue>()}};
}

} // namespace gangway::plan
