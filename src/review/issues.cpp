#include "review/issues.hpp"

#include "plan/io.hpp"
#include "review/review.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <chrono>
#include <map>
#include <ranges>

namespace gangway::review {

namespace {
/// Drawing-standards 6, row 64; letters that read like figures or like each other are left out.
constexpr std::string_view kLetters = "ABCDEFGHJKLMNPRTUVWY";
constexpr std::size_t kPrintDigits = 16;

/// Place of a revision letter in their order, from 0; nullopt for what is none.
std::optional<std::size_t> placeOf(std::string_view letter) {
    if (letter.empty() || letter.size() > 2) return std::nullopt;
    std::size_t place = 0;
    for (const char one : letter) {
        const std::size_t at = kLetters.find(one);
        if (at == std::string_view::npos) return std::nullopt;
        place = place * kLetters.size() + at + 1;
    }
    return place - 1;
}

/// A calendar date; nullopt for anything else.
std::optional<std::chrono::year_month_day> dateFrom(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
    const auto figure = [&](std::size_t at, std::size_t length) -> std::optional<int> {
        int value = 0;
        const char* const end = text.data() + at + length;
        const auto read = std::from_chars(text.data() + at, end, value);
        return read.ec == std::errc{} && read.ptr == end && value > 0 ? std::optional(value) : std::nullopt;
    };
    const auto year = figure(0, 4);
    const auto month = figure(5, 2);
    const auto day = figure(8, 2);
    if (!year || !month || !day) return std::nullopt;
    const std::chrono::year_month_day date{std::chrono::year(*year),
                                           std::chrono::month(static_cast<unsigned>(*month)),
                                           std::chrono::day(static_cast<unsigned>(*day))};
    return date.ok() ? std::optional(date) : std::nullopt;
}

std::string contentOf(const plan::Plan& plan) {
    return sha256(plan::write(unstamped(plan))).substr(0, kPrintDigits);
}

double thicknessOf(const std::vector<plan::Course>& courses) {
    double sum = 0;
    for (const plan::Course& course : courses)
        sum += course.thickness_mm;
    return sum;
}

std::string usualFormat(const std::vector<const plan::Plate*>& plates) {
    std::map<std::string, int> count;
    std::string usual;
    for (const plan::Plate* plate : plates)
        if (++count[plate->format] > count[usual] || usual.empty()) usual = plate->format;
    return usual;
}

plan::IssuedPlate frozen(const plan::Plate& plate, const std::string& usual_format) {
    plan::IssuedPlate issued{plate};
    plan::Plate& kept = issued.plate;
    kept.room.clear();
    if (kept.format == usual_format) kept.format.clear();
    kept.anchor.clear();
    kept.use = plan::UseRate::Daily;
    kept.sight = plan::Sight::Any;
    kept.kept_along.reset();
    kept.kept_height.reset();
    kept.symbol_offset_mm.reset();
    kept.note.clear();
    kept.unknown.clear();
    return issued;
}

std::vector<plan::IssuedRoom> frozenRooms(const plan::Plan& plan) {
    std::map<std::string_view, std::vector<const plan::Plate*>> plates;
    for (const plan::Plate& plate : plan.plates)
        plates[plate.room].push_back(&plate);
    std::map<std::string_view, std::vector<const plan::Luminaire*>> luminaires;
    for (const plan::Luminaire& luminaire : plan.luminaires)
        luminaires[luminaire.room].push_back(&luminaire);
    std::vector<plan::IssuedRoom> rooms;
    for (const plan::Room& room : plan.rooms) {
        const auto& in_room = plates[room.id];
        const auto& lamps = luminaires[room.id];
        if (in_room.empty() && lamps.empty()) continue;
        plan::IssuedRoom issued;
        issued.id = room.id;
        if (!room.floor_build_up.empty()) issued.floor_mm = thicknessOf(room.floor_build_up);
        issued.plate_format = usualFormat(in_room);
        for (const plan::Plate* plate : in_room)
            issued.plates.push_back(frozen(*plate, issued.plate_format));
        for (const plan::Luminaire* lamp : lamps)
            issued.luminaires.push_back({lamp->id, lamp->tag, lamp->host, lamp->drop_mm, {}});
        rooms.push_back(std::move(issued));
    }
    return rooms;
}

std::string listed(const std::vector<std::string>& names) {
    std::string list;
    for (std::size_t i = 0; i < names.size(); ++i)
        list += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
    return list;
}

/// Why these particulars can't stand over an issue; empty when they can.
std::string problemWith(const plan::Plan& plan, const Particulars& particulars) {
    const auto date = dateFrom(particulars.date);
    if (!date)
        return fmt::format("'{}' is no date; give the date of issue as YYYY-MM-DD, such as 2026-05-02",
                           particulars.date);
    if (particulars.by.empty()) return "an issue needs the name of who issues it";
    if (!plan.issues.empty()) {
        const plan::Issue& last = plan.issues.back();
        const auto before = dateFrom(last.date);
        if (before && *date < *before)
            return fmt::format("issue {} is of {}, so the next can't be of {}; give a later date",
                               last.letter, last.date, particulars.date);
    }
    const auto unstated = roomsWithoutFloor(plan);
    if (!unstated.empty())
        return fmt::format(
            "the floor build-up of {} is not stated, and at first fix heights are counted from "
            "the slab; give {} \"floorBuildUp\", then issue the set",
            listed(unstated), unstated.size() == 1 ? "its" : "their");
    if (const plan::Issue* same = issuedAs(plan);
        same != nullptr && same->level == particulars.level && same->face == particulars.face)
        return fmt::format("nothing has changed since issue {} of {}: its sheets still hold", same->letter,
                           same->date);
    return {};
}
} // namespace

std::string letterAfter(std::string_view letter) {
    std::size_t place = placeOf(letter).value_or(std::size_t(-1)) + 1;
    std::string next;
    for (++place; place > 0; place = (place - 1) / kLetters.size())
        next.insert(next.begin(), kLetters[(place - 1) % kLetters.size()]);
    return next;
}

std::string nextLetter(const plan::Plan& plan) {
    if (!plan.issues.empty()) return letterAfter(plan.issues.back().letter);
    return placeOf(plan.project.revision) ? plan.project.revision : letterAfter("");
}

std::string markLetter(const plan::Plan& plan) {
    const std::string& revision = plan.project.revision;
    if (plan.issues.empty()) return revision.empty() ? "-" : revision;
    return revision == plan.issues.back().letter ? revision : nextLetter(plan);
}

std::vector<std::string> roomsWithoutFloor(const plan::Plan& plan) {
    std::vector<std::string> names;
    for (const plan::Room& room : plan.rooms) {
        if (!room.floor_build_up.empty()) continue;
        const bool boxes =
            std::ranges::any_of(plan.plates,
                                [&](const plan::Plate& plate) { return plate.room == room.id; }) ||
            std::ranges::any_of(plan.luminaires, [&](const plan::Luminaire& lamp) {
                return lamp.room == room.id && lamp.host.kind == plan::Host::Kind::Wall;
            });
        if (boxes) names.push_back(room.name.empty() ? room.id : room.name);
    }
    return names;
}

std::expected<plan::Issue, std::string> freeze(const plan::Plan& plan, const Particulars& particulars) {
    if (std::string problem = problemWith(plan, particulars); !problem.empty())
        return std::unexpected(std::move(problem));
    plan::Issue issue;
    issue.letter = nextLetter(plan);
    issue.date = particulars.date;
    issue.by = particulars.by;
    issue.note = particulars.note;
    issue.level = particulars.level;
    issue.face = particulars.face;
    issue.content = contentOf(plan);
    issue.rooms = frozenRooms(plan);
    issue.sheets = particulars.sheets;
    return issue;
}

const plan::Issue* findIssue(const plan::Plan& plan, std::string_view letter) {
    const auto found = std::ranges::find(plan.issues, letter, &plan::Issue::letter);
    return found == plan.issues.end() ? nullptr : &*found;
}

const plan::Issue* issuedAs(const plan::Plan& plan) {
    if (plan.issues.empty() || plan.issues.back().content != contentOf(plan)) return nullptr;
    return &plan.issues.back();
}

const plan::Issue* comparedWith(const plan::Plan& plan) {
    const std::size_t count = plan.issues.size();
    if (count == 0) return nullptr;
    if (issuedAs(plan) == nullptr) return &plan.issues.back();
    return count > 1 ? &plan.issues[count - 2] : nullptr;
}

plan::Plan stateAt(const plan::Plan& plan, const plan::Issue& issue) {
    plan::Plan before = plan;
    before.project.revision = issue.letter;
    before.project.date = issue.date;
    before.plates.clear();
    before.issues.clear();
    std::map<std::string_view, const plan::Luminaire*> known;
    for (const plan::Luminaire& luminaire : plan.luminaires)
        known.emplace(luminaire.id, &luminaire);
    before.luminaires.clear();
    for (const plan::IssuedRoom& issued : issue.rooms) {
        const auto room = std::ranges::find(before.rooms, issued.id, &plan::Room::id);
        if (room != before.rooms.end() &&
            (!issued.floor_mm || thicknessOf(room->floor_build_up) != *issued.floor_mm)) {
            room->floor_build_up.clear();
            if (issued.floor_mm) room->floor_build_up = {{"as issued", *issued.floor_mm, {}}};
        }
        for (const plan::IssuedPlate& one : issued.plates) {
            plan::Plate& plate = before.plates.emplace_back(one.plate);
            plate.room = issued.id;
            if (plate.format.empty()) plate.format = issued.plate_format;
        }
        for (const plan::IssuedLuminaire& one : issued.luminaires) {
            const auto now = known.find(one.id);
            plan::Luminaire& lamp =
                before.luminaires.emplace_back(now == known.end() ? plan::Luminaire{} : *now->second);
            lamp.id = one.id;
            lamp.tag = one.tag;
            lamp.room = issued.id;
            lamp.host = one.host;
            lamp.drop_mm = one.drop_mm;
        }
    }
    return before;
}

plan::Plan unstamped(const plan::Plan& plan) {
    plan::Plan bare = plan;
    bare.project.revision.clear();
    bare.project.date.clear();
    bare.agreements.clear();
    bare.library.clear();
    bare.issues.clear();
    return bare;
}

plan::Plan stamped(plan::Plan plan) {
    if (plan.issues.empty() || issuedAs(plan) != nullptr) return plan;
    plan.project.revision = "after " + plan.issues.back().letter;
    plan.project.date.clear();
    return plan;
}

std::string fingerprint(const plan::Issue& issue) {
    plan::Plan alone;
    alone.issues.push_back(issue);
    return sha256(plan::write(alone)).substr(0, kPrintDigits);
}

std::string sheetRevision(const plan::Plan& plan, std::string_view number, std::string_view print) {
    std::string letter;
    for (const plan::Issue& issue : std::views::reverse(plan.issues)) {
        const auto sheet = std::ranges::find(issue.sheets, number, &plan::IssuedSheet::number);
        if (sheet == issue.sheets.end() || sheet->print != print) break;
        letter = issue.letter;
    }
    return letter;
}

} // namespace gangway::review
