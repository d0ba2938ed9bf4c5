#include "catalogue/read_front.hpp"

#include "plan/io.hpp"

#include <fmt/format.h>

namespace gangway::catalogue::detail {
namespace {

constexpr Range kPlace{-200, 200};
constexpr Range kSize{0.1, 200};
constexpr Range kRelief{-60, 60};

FrontShape readShape(const Json& object, const std::string& where, Mistakes& mistakes) {
    ObjectReader reader(object, where, mistakes);
    FrontShape shape;
    shape.kind = static_cast<FrontShape::Kind>(reader.word("shape", {"rect", "circle", "line"}));
    shape.role = static_cast<FrontShape::Role>(
        reader.word("role", {"cap", "rocker", "well", "pin", "contact", "shutter", "knob", "mark", "hinge"}));
    shape.relief_mm = reader.length("relief", kRelief, 0);
    if (shape.kind == FrontShape::Kind::Polyline) {
        shape.points_mm = reader.points("points", kPlace);
    } else {
        shape.centre_mm = reader.lengths2("at", kPlace, {});
        if (shape.kind == FrontShape::Kind::Circle) {
            shape.width_mm = shape.height_mm = reader.length("diameter", kSize);
        } else {
            const Vec2 size = reader.lengths2("size", kSize);
            shape.width_mm = size.x;
            shape.height_mm = size.y;
            shape.corner_mm = reader.length("corner", {0, 50}, 0);
            shape.turn_deg = reader.length("turn", {-360, 360}, 0);
        }
    }
    reader.finish();
    return shape;
}

void appendNamed(const std::string& name, Vec2 offset, const std::string& where, const Fronts& fronts,
                 Mistakes& mistakes, std::vector<FrontShape>& shapes, std::string& source) {
    const auto found = fronts.find(name);
    if (found == fronts.end()) {
        std::vector<std::string> known;
        for (const auto& [id, front] : fronts)
            known.push_back(id);
        const std::string nearest = plan::nearestWord(name, known);
        mistakes.push_back(
            {where, fmt::format("no front is called '{}'{}", name,
                                nearest.empty() ? "" : fmt::format("; the nearest is '{}'", nearest))});
        return;
    }
    for (FrontShape shape : found->second.shapes) {
        shape.centre_mm = shape.centre_mm + offset;
        for (Vec2& point : shape.points_mm)
            point = point + offset;
        shapes.push_back(std::move(shape));
    }
    if (source.find(found->second.source) == std::string::npos)
        source += (source.empty() ? "" : "; ") + found->second.source;
}

} // namespace

std::vector<FrontShape> readFront(const Json& list, const std::string& where, const Fronts& fronts,
                                  Mistakes& mistakes, std::string& source) {
    std::vector<FrontShape> shapes;
    for (std::size_t i = 0; i < list.size(); ++i) {
        const std::string place = fmt::format("{}/{}", where, i);
        const Json& item = list[i];
        if (item.is_string()) {
            appendNamed(item.get<std::string>(), {}, place, fronts, mistakes, shapes, source);
        } else if (item.is_object() && item.contains("use")) {
            ObjectReader reader(item, place, mistakes);
            const std::string name = reader.text("use");
            const Vec2 offset = reader.lengths2("at", kPlace, {});
            reader.finish();
            appendNamed(name, offset, place, fronts, mistakes, shapes, source);
        } else {
            shapes.push_back(readShape(item, place, mistakes));
        }
    }
    return shapes;
}

void readNamedFront(const Json& object, const std::string& where, Fronts& fronts, Mistakes& mistakes) {
    ObjectReader reader(object, where, mistakes);
    const std::string id = reader.text("id");
    NamedFront front;
    front.source = reader.text("source");
    if (const Json* shapes = reader.array("shapes", ObjectReader::Presence::Required)) {
        std::string borrowed;
        front.shapes = readFront(*shapes, reader.at("shapes"), fronts, mistakes, borrowed);
    }
    reader.finish();
    if (!fronts.emplace(id, std::move(front)).second)
        mistakes.push_back({where, fmt::format("the front '{}' is defined twice", id)});
}

} // namespace gangway::catalogue::detail
