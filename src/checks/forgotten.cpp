#include "checks/forgotten.hpp"

#include <algorithm>
#include <set>
#include <string_view>

namespace gangway::checks {

namespace {
bool isLetter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

std::string lower(std::string_view text) {
    std::string small(text);
    for (char& c : small)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return small;
}

/// Whether some word of a text begins like this; several words are taken together.
bool says(std::string_view text, std::string_view word) {
    for (auto at = text.find(word); at != std::string_view::npos; at = text.find(word, at + 1))
        if (at == 0 || !isLetter(text[at - 1])) return true;
    return false;
}

bool saysAny(std::string_view text, std::string_view words) {
    while (!words.empty()) {
        const auto bar = words.find('|');
        const auto word = words.substr(0, bar);
        if (!word.empty() && says(text, lower(word))) return true;
        words = bar == std::string_view::npos ? std::string_view() : words.substr(bar + 1);
    }
    return false;
}

/// All that is said in each room, one line each.
class RoomTexts {
public:
    explicit RoomTexts(const plan::Plan& plan) {
        for (const plan::Device& device : plan.devices)
            add(device.room, {device.name, device.id});
        for (const plan::Plate& plate : plan.plates) {
            add(plate.room, {plate.purpose});
            for (const plan::Module& module : plate.modules)
                add(plate.room, {module.label});
        }
        for (const plan::Furniture& piece : plan.furniture)
            add(piece.room, {piece.name, piece.kind});
        for (const plan::Luminaire& lamp : plan.luminaires)
            add(lamp.room, {lamp.name});
    }

    bool anySays(std::string_view words) const {
        return std::ranges::any_of(texts_, [&](const auto& text) { return saysAny(text.second, words); });
    }

    std::string_view of(const std::string& room_id) const {
        const auto found = texts_.find(room_id);
        return found == texts_.end() ? std::string_view() : std::string_view(found->second);
    }

private:
    void add(const std::string& room_id, std::initializer_list<std::string_view> said) {
        for (const std::string_view one : said)
            if (!one.empty()) texts_[room_id] += lower(one) + '\n';
    }

    std::unordered_map<std::string, std::string> texts_;
};
} // namespace

std::vector<Forgotten> forgottenThings(const Facts& facts) {
    const RoomTexts texts(facts.plan());
    std::vector<Forgotten> forgotten;
    std::set<std::string_view> had; // of those that a house has once: there, or offered already
    for (const catalogue::RoomThing& thing : facts.pack().things)
        if (thing.once && texts.anySays(thing.words)) had.insert(thing.name);
    for (const plan::Room& room : facts.plan().rooms) {
        if (room.use == plan::RoomUse::Unstated) continue;
        for (const catalogue::RoomThing& thing : facts.pack().things)
            if (thing.use == room.use && !saysAny(texts.of(room.id), thing.words) &&
                (!thing.once || had.insert(thing.name).second))
                forgotten.push_back({&room, &thing});
    }
    return forgotten;
}

} // namespace gangway::checks
