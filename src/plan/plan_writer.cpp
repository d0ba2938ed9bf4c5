#include "plan/io.hpp"

#include "plan/plan_writer.hpp"

#include <fmt/format.h>

#include <cmath>

namespace gangway::plan {

PlanWriter::PlanWriter(const Plan& plan) {
    std::map<std::string_view, std::string_view> of_storey;
    for (const Storey& storey : plan.storeys)
        of_storey.emplace(storey.id, storey.plate_format);
    for (const Room& room : plan.rooms)
        if (const auto storey = of_storey.find(room.storey); storey != of_storey.end())
            format_of_room_.emplace(room.id, storey->second);
}

std::string_view PlanWriter::storeyFormat(const std::string& room) const {
    const auto entry = format_of_room_.find(room);
    return entry == format_of_room_.end() ? std::string_view{} : entry->second;
}

void PlanWriter::figure(double value) {
    json_.value(numberText(value));
    if (!std::isfinite(value) && lost_number_.empty()) lost_number_ = fmt::format("/{}", last_key_);
}

void PlanWriter::list(std::initializer_list<double> numbers) {
    json_.container('[', Shape::SmallIfItFits, [&] {
        for (const double number : numbers)
            figure(number);
    });
}

void PlanWriter::size(const char* key, const Size3& value, const std::optional<Size3>& fallback) {
    const bool usual = fallback && fallback->width_mm == value.width_mm &&
                       fallback->depth_mm == value.depth_mm && fallback->height_mm == value.height_mm;
    if (!usual) pair(key, [&] { list({value.width_mm, value.depth_mm, value.height_mm}); });
}

void PlanWriter::values(const char* key, const std::vector<std::pair<std::string, double>>& list) {
    if (list.empty()) return;
    pair(key, [&] {
        json_.container('{', Shape::SmallIfItFits, [&] {
            for (const auto& [name, number] : list) {
                json_.key(name);
                figure(number);
            }
        });
    });
}

void PlanWriter::numbers(const char* key, const std::vector<double>& list, const fields::Range&,
                         std::size_t) {
    pair(key, [&] {
        json_.container('[', Shape::SmallIfItFits, [&] {
            for (const double number : list)
                figure(number);
        });
    });
}

void PlanWriter::texts(const char* key, const std::vector<std::string>& list) {
    if (list.empty()) return;
    pair(key, [&] {
        json_.container('[', Shape::SmallIfItFits, [&] {
            for (const std::string& text : list)
                json_.text(text);
        });
    });
}

void PlanWriter::polygon(const char* key, const std::vector<Vec2>& outline) {
    pair(key, [&] {
        json_.container('[', Shape::SmallIfItFits, [&] {
            for (const Vec2 corner : outline)
                list({corner.x, corner.y});
        });
    });
}

void PlanWriter::polygons(const char* key, const std::vector<std::vector<Vec2>>& polygons) {
    if (polygons.empty()) return;
    pair(key, [&] {
        json_.container('[', Shape::Lines, [&] {
            for (const auto& outline : polygons)
                json_.container('[', Shape::SmallIfItFits, [&] {
                    for (const Vec2 corner : outline)
                        list({corner.x, corner.y});
                });
        });
    });
}

void PlanWriter::cornerPairs(const char* key, const std::vector<std::pair<int, int>>& pairs) {
    if (pairs.empty()) return;
    pair(key, [&] {
        json_.container('[', Shape::SmallIfItFits, [&] {
            for (const auto& [from, to] : pairs)
                list({static_cast<double>(from), static_cast<double>(to)});
        });
    });
}

void PlanWriter::framing(const char* key, const std::optional<Framing>& value, fields::FramingUse use) {
    if (!value) return;
    pair(key,
         [&] { json_.container('{', Shape::SmallIfItFits, [&] { fields::describe(*this, *value, use); }); });
}

void PlanWriter::ceiling(const char* key, const Ceiling& value) {
    const bool flat =
        value.heights_mm.size() == 1 && value.creases.empty() && !value.joists && value.unknown.empty();
    if (!flat) return pair(key, [&] { object(value); });
    if (value.heights_mm.front() != Ceiling{}.heights_mm.front())
        pair(key, [&] { figure(value.heights_mm.front()); });
}

void PlanWriter::modules(const char* key, const std::vector<Module>& list) {
    if (list.empty()) return;
    pair(key, [&] {
        json_.container('[', Shape::SmallIfItFits, [&] {
            for (const Module& module : list) {
                const bool plain = module.finish.empty() && module.label.empty() && !module.min_load_w &&
                                   !module.max_load_w && module.unknown.empty();
                if (plain)
                    json_.text(module.type);
                else
                    object(module);
            }
        });
    });
}

void PlanWriter::host(const Host& value) {
    bool upright = true;
    switch (value.kind) {
    case Host::Kind::Wall:
        text("wall", value.wall, std::nullopt);
        break;
    case Host::Kind::Floor:
    case Host::Kind::Ceiling:
        flag(value.kind == Host::Kind::Floor ? "floor" : "ceiling", true);
        upright = false;
        break;
    case Host::Kind::Furniture:
        text("furniture", value.furniture, std::nullopt);
        text("face", value.face, std::nullopt);
        upright = value.face != "top" && value.face != "bottom";
        break;
    }
    number(upright ? "setOut" : "east", value.u_mm, fields::kPlace, std::nullopt);
    number(upright ? "height" : "north", value.v_mm, fields::kPlace, std::nullopt);
}

void PlanWriter::unknown(const UnknownKeys& keys) {
    for (const auto& [key, raw] : keys) {
        json_.key(key);
        json_.value(raw);
    }
}

bool PlanWriter::isDefault(const Project& p) {
    const bool texts_empty = p.name.empty() && p.number.empty() && p.client.empty() && p.address.empty() &&
                             p.designer.empty() && p.company.empty() && p.contact.empty() &&
                             p.approved_by.empty() && p.date.empty() && p.revision.empty() &&
                             p.status.empty() && p.notes.empty();
    return texts_empty && p.unknown.empty();
}

std::string write(const Plan& plan) {
    PlanWriter writer(plan);
    writer.write(plan);
    return std::move(writer).take();
}

std::expected<void, std::string> writeFile(const Plan& plan, const std::filesystem::path& file) {
    PlanWriter writer(plan);
    writer.write(plan);
    if (!writer.lostNumber().empty())
        return std::unexpected(
            fmt::format("'{}' was not written: {} is no finite number; undo the last change", file.string(),
                        writer.lostNumber()));
    return writeBytesAtomically(std::move(writer).take(), file);
}

} // namespace gangway::plan
