// New plates, changed plates, plates taken away.
#include "edit/plate_edits.hpp"
#include "edit/plate_name.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <set>

namespace gangway::edit {
namespace {

bool tagTaken(const plan::Plan& plan, const std::string& tag) {
    return std::ranges::find(plan.plates, tag, &plan::Plate::tag) != plan.plates.end();
}

} // namespace

std::string nextTag(const plan::Plan& plan, const std::string& room_id) {
    const plan::Room* room = plan::findRoom(plan, room_id);
    const std::string letter = room && !room->letter.empty() ? room->letter : "P";
    std::set<std::string> taken;
    for (const plan::Plate& plate : plan.plates)
        taken.insert(plate.tag);
    int number = 1;
    std::string tag;
    do
        tag = fmt::format("{}-{:02}", letter, number++);
    while (taken.contains(tag));
    return tag;
}

std::string freePlateId(const plan::Plan& plan, const std::string& wanted) {
    std::string id = wanted.empty() ? "plate" : wanted;
    // An id that an answer was given for stays that plate's, even when the plate is gone: else a new plate
    // would be agreed before anyone saw it.
    const auto answered = [&](const std::string& name) {
        return std::ranges::find(plan.agreements, name, &plan::Agreement::plate) != plan.agreements.end();
    };
    for (int number = 2; plan::findPlate(plan, id) != nullptr || answered(id); ++number)
        id = fmt::format("{}-{}", wanted.empty() ? "plate" : wanted, number);
    return id;
}

Command addPlate(const plan::Plan& plan, plan::Plate plate) {
    if (plate.tag.empty() || tagTaken(plan, plate.tag)) plate.tag = nextTag(plan, plate.room);
    std::string wanted = plate.id.empty() ? plate.tag : plate.id;
    std::ranges::transform(wanted, wanted.begin(),
                           [](unsigned char c) { return static_cast<char>(c < 128 ? std::tolower(c) : c); });
    plate.id = freePlateId(plan, wanted);
    std::string name = fmt::format("Add {}", plate.tag);
    return {std::move(name), "", [plate = std::move(plate)](Draft& draft) { draft.add(plate); }};
}

Command removePlates(const plan::Plan& plan, const std::vector<std::string>& plate_ids) {
    const std::string what = plate_ids.size() == 1 ? detail::plateName(plan, plate_ids.front())
                                                   : fmt::format("{} plates", plate_ids.size());
    return {fmt::format("Remove {}", what), "", [plate_ids](Draft& draft) {
                for (const std::string& id : plate_ids)
                    draft.remove<plan::Plate>(id);
            }};
}

Command recomposePlate(const plan::Plan& plan, const std::string& plate_id, const plan::Plate& contents) {
    return {fmt::format("Compose {}", detail::plateName(plan, plate_id)), "",
            [plate_id, contents](Draft& draft) {
                plan::Plate* plate = draft.change<plan::Plate>(plate_id);
                if (plate == nullptr) return;
                plate->format = contents.format;
                plate->direction = contents.direction;
                plate->gangs = contents.gangs;
                plate->modules = contents.modules;
                plate->finish = contents.finish;
                plate->box_depth_mm = contents.box_depth_mm;
                plate->barrier = contents.barrier;
            }};
}

Command changePlate(const plan::Plan&, plan::Plate plate, const std::string& what,
                    const std::string& merge_key) {
    return {what, merge_key, [plate = std::move(plate)](Draft& draft) {
                if (plan::Plate* changed = draft.change<plan::Plate>(plate.id)) *changed = plate;
            }};
}

} // namespace gangway::edit
