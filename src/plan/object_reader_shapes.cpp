// The parts of the object reader for values that are lists or come in several shapes.
#include "plan/object_reader.hpp"

#include "plan/number_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gangway::plan {

using json::Kind;
using json::NodeIndex;

bool ObjectReader::numbersAt(NodeIndex node, std::string_view key, const fields::Range& range,
                             std::initializer_list<double*> values, std::string_view shape) {
    if (tape_.nodes[node].kind != Kind::Array || tape_.nodes[node].length != values.size()) {
        const std::string what = tape_.nodes[node].kind == Kind::Array
                                     ? fmt::format("a list of {}", tape_.nodes[node].length)
                                     : std::string(json::kindWord(tape_.nodes[node].kind));
        context_.problems.error(node, fmt::format("'{}' holds {} where {} is wanted", key, what, shape));
        return false;
    }
    bool good = true;
    NodeIndex at = node + 1;
    for (double* value : values) {
        good = numberAt(at, key, range, *value) && good;
        at = tape_.nodes[at].end;
    }
    return good;
}

void ObjectReader::pair(const char* key, double& first, double& second, const fields::Range& range) {
    if (const NodeIndex node = find(key))
        numbersAt(node, key, range, {&first, &second}, "a pair [a, b] of mm");
}

void ObjectReader::point(const char* key, Vec2& value) {
    constexpr const char* kShape = "a point [x, y] in mm";
    if (const NodeIndex node = findRequired(key, kShape))
        numbersAt(node, key, fields::kPlace, {&value.x, &value.y}, kShape);
}

void ObjectReader::maybePoint(const char* key, std::optional<Vec2>& value) {
    const NodeIndex node = find(key);
    if (node == 0) return;
    Vec2 point;
    if (numbersAt(node, key, fields::kPlace, {&point.x, &point.y}, "a point [x, y] in mm")) value = point;
}

void ObjectReader::point3(const char* key, Vec3& value) {
    constexpr const char* kShape = "a point [x, y, z] in mm";
    if (const NodeIndex node = findRequired(key, kShape))
        numbersAt(node, key, fields::kPlace, {&value.x, &value.y, &value.z}, kShape);
}

void ObjectReader::size(const char* key, Size3& value, const std::optional<Size3>& fallback) {
    constexpr const char* kShape = "a size [width, depth, height] in mm";
    if (fallback) value = *fallback;
    // Of an unknown kind nobody can say a size; the kind itself is reported, once.
    const NodeIndex node = find(key);
    if (node != 0)
        numbersAt(node, key, fields::kSize, {&value.width_mm, &value.depth_mm, &value.height_mm}, kShape);
}

void ObjectReader::values(const char* key, std::vector<std::pair<std::string, double>>& list) {
    const NodeIndex node = find(key);
    if (node == 0 || !isObject(context_, node)) return;
    for (NodeIndex at = node + 1; at < tape_.nodes[node].end; at = tape_.nodes[at + 1].end) {
        double number = 0;
        const std::string name(tape_.text(at));
        if (numberAt(at + 1, name, fields::kPlace, number)) list.emplace_back(name, number);
    }
}

void ObjectReader::numbers(const char* key, std::vector<double>& list, const fields::Range& range,
                           std::size_t most) {
    const NodeIndex node = listOf(key, most, true);
    if (node == 0) return;
    list.clear();
    for (NodeIndex at = node + 1; at < tape_.nodes[node].end; at = tape_.nodes[at].end)
        numberAt(at, key, range, list.emplace_back());
}

void ObjectReader::texts(const char* key, std::vector<std::string>& list) {
    const NodeIndex node = listOf(key, fields::kMaxList);
    if (node == 0) return;
    for (NodeIndex at = node + 1; at < tape_.nodes[node].end; at = tape_.nodes[at].end)
        textAt(at, key, list.emplace_back());
}

void ObjectReader::outlineAt(NodeIndex list, std::string_view key, std::vector<Vec2>& outline) {
    outline.reserve(tape_.nodes[list].length);
    for (NodeIndex at = list + 1; at < tape_.nodes[list].end; at = tape_.nodes[at].end) {
        Vec2& corner = outline.emplace_back();
        numbersAt(at, key, fields::kPlace, {&corner.x, &corner.y}, "a corner [x, y] in mm");
    }
}

void ObjectReader::polygon(const char* key, std::vector<Vec2>& outline) {
    if (const NodeIndex node = listOf(key, fields::kMaxCorners, true)) outlineAt(node, key, outline);
}

void ObjectReader::polygons(const char* key, std::vector<std::vector<Vec2>>& list) {
    const NodeIndex node = listOf(key, fields::kMaxCorners);
    if (node == 0) return;
    for (NodeIndex at = node + 1; at < tape_.nodes[node].end; at = tape_.nodes[at].end) {
        std::vector<Vec2>& outline = list.emplace_back();
        const json::Node& n = tape_.nodes[at];
        if (n.kind != Kind::Array || n.length > fields::kMaxCorners)
            context_.problems.error(at,
                                    fmt::format("'{}' holds {} where a list of at most {} corners is wanted",
                                                key, json::kindWord(n.kind), fields::kMaxCorners));
        else
            outlineAt(at, key, outline);
    }
}

void ObjectReader::cornerPairs(const char* key, std::vector<std::pair<int, int>>& list) {
    const NodeIndex node = listOf(key, fields::kMaxCorners);
    if (node == 0) return;
    for (NodeIndex at = node + 1; at < tape_.nodes[node].end; at = tape_.nodes[at].end) {
        double from = 0;
        double to = 0;
        if (!numbersAt(at, key, fields::kCorner, {&from, &to}, "a pair of corner numbers, counted from 0,"))
            continue;
        if (from != std::floor(from) || to != std::floor(to))
            context_.problems.error(at, fmt::format("'{}' counts corners from 0; give whole numbers", key));
        else
            list.emplace_back(static_cast<int>(from), static_cast<int>(to));
    }
}

void ObjectReader::framing(const char* key, std::optional<Framing>& value, fields::FramingUse use) {
    const NodeIndex node = find(key);
    if (node == 0 || !isObject(context_, node)) return;
    ObjectReader reader(context_, node);
    fields::describe(reader, value.emplace(), use);
    if (reader.hasUnused()) reader.keepUnused(knownFramingKeys(use));
}

void ObjectReader::ceiling(const char* key, Ceiling& value) {
    const NodeIndex node = find(key);
    if (node == 0) return;
    if (tape_.nodes[node].kind == Kind::Number)
        numberAt(node, key, fields::kSize, value.heights_mm.front());
    else if (tape_.nodes[node].kind == Kind::Object)
        readObject(context_, node, value);
    else
        context_.problems.error(node,
                                fmt::format("'{}' is {}; give a height in mm, or an object with 'heights'",
                                            key, json::kindWord(tape_.nodes[node].kind)));
}

void ObjectReader::modules(const char* key, std::vector<Module>& list) {
    const NodeIndex node = listOf(key, fields::kMaxList);
    if (node == 0) return;
    list.reserve(tape_.nodes[node].length);
    for (NodeIndex at = node + 1; at < tape_.nodes[node].end; at = tape_.nodes[at].end) {
        Module& module = list.emplace_back();
        if (tape_.nodes[at].kind == Kind::Object) {
            readObject(context_, at, module);
        } else if (tape_.nodes[at].kind != Kind::Text) {
            context_.problems.error(
                at, fmt::format("'{}' holds {}; give the module's type as a text, or an object "
                                "with 'type'",
                                key, json::kindWord(tape_.nodes[at].kind)));
        } else if (textAt(at, key, module.type) && module.type.empty()) {
            context_.problems.error(at, "a module's type is empty; name a module of the catalogue");
        }
    }
}

std::size_t ObjectReader::hostKind(Host& value, std::span<const NodeIndex, 4> given) {
    constexpr std::array<Host::Kind, 4> kKinds{Host::Kind::Wall, Host::Kind::Floor, Host::Kind::Ceiling,
                                               Host::Kind::Furniture};
    constexpr const char* kAdvice = "give exactly one of 'wall', 'floor', 'ceiling', 'furniture'";
    std::size_t kind = given.size();
    for (std::size_t i = 0; i < given.size(); ++i) {
        if (given[i] == 0) continue;
        if (kind != given.size()) {
            context_.problems.error(given[i], fmt::format("it is mounted on two things; {}", kAdvice));
            return given.size();
        }
        kind = i;
    }
    if (kind == given.size())
        context_.problems.error(object_, fmt::format("it is not said what it is mounted on; {}", kAdvice));
    else
        value.kind = kKinds[kind];
    return kind;
}

void ObjectReader::host(Host& value) {
    const std::array<NodeIndex, 4> given{find("wall"), find("floor"), find("ceiling"), find("furniture")};
    const NodeIndex face = given[3] != 0 ? 0 : find("face");
    std::string face_word;
    if (given[3] != 0) {
        if (const auto index = wordIndex("face", words::kFace, Absence::Never))
            face_word = words::kFace[*index];
    }
    const HostKeys keys{find("setOut"), find("height"), find("east"), find("north")};
    if (hostKind(value, given) == given.size()) return;
    if (face != 0) context_.problems.error(face, "'face' belongs to furniture only; remove it");
    switch (value.kind) {
    case Host::Kind::Wall:
        if (textAt(given[0], "wall", value.wall) && value.wall.empty())
            context_.problems.error(given[0], "'wall' is empty; name a wall of the room, such as \"A\"");
        return coordinates(value, keys, true, "a wall");
    case Host::Kind::Floor:
    case Host::Kind::Ceiling: {
        const bool floor = value.kind == Host::Kind::Floor;
        const NodeIndex node = given[floor ? 1 : 2];
        if (tape_.nodes[node].kind != Kind::True)
            context_.problems.error(
                node, fmt::format("'{0}' can only be true; remove it where the {0} is not meant",
                                  floor ? "floor" : "ceiling"));
        return coordinates(value, keys, false, floor ? "a floor" : "a ceiling");
    }
    case Host::Kind::Furniture:
        if (textAt(given[3], "furniture", value.furniture) && value.furniture.empty())
            context_.problems.error(given[3], "'furniture' is empty; name a piece of furniture");
        value.face = face_word;
        if (face_word.empty()) return;
        const bool upright = face_word != "top" && face_word != "bottom";
        return coordinates(value, keys, upright, fmt::format("the {} of furniture", face_word));
    }
}

void ObjectReader::coordinates(Host& value, const HostKeys& keys, bool upright, std::string_view host_name) {
    const char* u_key = upright ? "setOut" : "east";
    const char* v_key = upright ? "height" : "north";
    const auto read = [&](NodeIndex node, const char* key, double& number) {
        if (node != 0)
            numberAt(node, key, fields::kPlace, number);
        else
            context_.problems.error(object_,
                                    fmt::format("'{}' is missing; on {} the place is '{}' and '{}', in mm",
                                                key, host_name, u_key, v_key));
    };
    read(upright ? keys.set_out : keys.east, u_key, value.u_mm);
    read(upright ? keys.height : keys.north, v_key, value.v_mm);
    const std::array<std::pair<NodeIndex, const char*>, 2> foreign =
        upright
            ? std::array<std::pair<NodeIndex, const char*>, 2>{{{keys.east, "east"}, {keys.north, "north"}}}
            : std::array<std::pair<NodeIndex, const char*>, 2>{
                  {{keys.set_out, "setOut"}, {keys.height, "height"}}};
    for (const auto& [node, key] : foreign)
        if (node != 0)
            context_.problems.error(node,
                                    fmt::format("'{}' does not go with {}; there the place is '{}' and '{}'",
                                                key, host_name, u_key, v_key));
}

void ObjectReader::format(const char* key, int& value) {
    find(key); // judged before anything else is read
    value = kFormatNumber;
}

std::string_view ObjectReader::storeyFormat(const std::string& room) {
    auto& formats = context_.format_of_room;
    if (formats.empty()) {
        std::unordered_map<std::string_view, std::string_view> of_storey;
        for (const Storey& storey : context_.plan->storeys)
            of_storey.emplace(storey.id, storey.plate_format);
        for (const Room& r : context_.plan->rooms)
            if (const auto storey = of_storey.find(r.storey); storey != of_storey.end())
                formats.emplace(r.id, storey->second);
    }
    const auto entry = formats.find(room);
    return entry == formats.end() ? std::string_view{} : entry->second;
}

} // namespace gangway::plan
