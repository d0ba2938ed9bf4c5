#include "catalogue/library.hpp"

#include "plan/io.hpp"

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <fmt/format.h>
#include <set>
#include <system_error>

namespace gangway::catalogue {
namespace {

plan::Plan planOf(const Library& library) {
    plan::Plan plan;
    plan.library = library.plates;
    plan.formats = library.formats;
    plan.unknown = library.unknown;
    return plan;
}

/// Equal in everything that is written, the id apart.
bool isSame(plan::LibraryPlate a, const plan::LibraryPlate& b) {
    a.id = b.id;
    return plan::write(planOf({{std::move(a)}, {}, {}})) == plan::write(planOf({{b}, {}, {}}));
}
bool isSame(plan::OwnFormat a, const plan::OwnFormat& b) {
    a.id = b.id;
    return plan::write(planOf({{}, {std::move(a)}, {}})) == plan::write(planOf({{}, {b}, {}}));
}

template <typename Entry>
const Entry* find(const std::vector<Entry>& entries, const std::string& id) {
    const auto found = std::ranges::find(entries, id, &Entry::id);
    return found == entries.end() ? nullptr : &*found;
}

/// `wanted`, or `wanted`-2, -3 ... when that is taken.
template <typename Entry>
std::string freeId(const std::vector<Entry>& entries, const std::string& wanted) {
    if (!find(entries, wanted)) return wanted;
    for (int number = 2;; ++number)
        if (const std::string id = fmt::format("{}-{}", wanted, number); !find(entries, id)) return id;
}

/// "Desk, left of bed" as "desk-left-of-bed"; letters that are not ASCII are left out.
std::string idFrom(const std::string& name) {
    std::string id;
    for (const char letter : name) {
        const auto code = static_cast<unsigned char>(letter);
        if (code < 0x80 && std::isalnum(code) != 0)
            id += static_cast<char>(std::tolower(code));
        else if (code < 0x80 && !id.empty() && id.back() != '-')
            id += '-';
    }
    while (!id.empty() && id.back() == '-')
        id.pop_back();
    if (id.empty()) return "plate";
    return id;
}

/// Whether a plan holds something that a library has no place for.
bool isHouse(const plan::Plan& plan) {
    return !plan.rooms.empty() || !plan.storeys.empty() || !plan.plates.empty() || !plan.furniture.empty();
}

std::string linesOf(const std::string& file, const plan::Diagnostics& problems) {
    std::string lines;
    for (const plan::Diagnostic& problem : problems)
        lines += fmt::format("{}{}", lines.empty() ? "" : "\n", plan::toLine(file, problem));
    return lines;
}

std::expected<plan::Plan, std::string> readPlan(const std::filesystem::path& file) {
    auto read = plan::readFile(file);
    if (!read) return std::unexpected(linesOf(file.string(), read.error()));
    return std::move(read->plan);
}

/// Takes over a format under an id that is free among `formats`; returns that id. An equal one is used as it
/// is.
std::string takeFormat(std::vector<plan::OwnFormat>& formats, const plan::OwnFormat& wanted) {
    const auto same =
        std::ranges::find_if(formats, [&](const plan::OwnFormat& own) { return isSame(own, wanted); });
    if (same != formats.end() && (same->id == wanted.id || find(formats, wanted.id))) return same->id;
    plan::OwnFormat taken = wanted;
    taken.id = freeId(formats, wanted.id);
    formats.push_back(taken);
    return taken.id;
}

} // namespace

std::filesystem::path userLibraryFile() {
    const auto variable = [](const char* name) {
        const char* value = std::getenv(name);
        return std::filesystem::path(value != nullptr ? value : "");
    };
    std::filesystem::path data = variable("XDG_DATA_HOME");
    if (!data.is_absolute()) {
        const std::filesystem::path home = variable("HOME");
        if (!home.is_absolute()) return {};
        data = home / ".local" / "share";
    }
    return data / "gangway" / "library.json";
}

std::expected<Library, std::string> readLibrary(const std::filesystem::path& file) {
    std::error_code failure;
    if (!std::filesystem::exists(file, failure) && !failure) return Library{};
    auto plan = readPlan(file);
    if (!plan) return std::unexpected(plan.error());
    Library library{std::move(plan->library), std::move(plan->formats), {}};
    if (!isHouse(*plan)) library.unknown = std::move(plan->unknown);
    return library;
}

std::expected<void, std::string> writeLibrary(const Library& library, const std::filesystem::path& file) {
    std::error_code failure;
    if (std::filesystem::exists(file, failure)) {
        const auto there = readPlan(file);
        if (!there)
            return std::unexpected(fmt::format(
                "'{}' is not written: what is there can't be read and would be lost; mend or move it\n{}",
                file.string(), there.error()));
        if (isHouse(*there))
            return std::unexpected(fmt::format(
                "'{}' is not written: a plan with rooms is there; choose another name", file.string()));
    }
    if (file.has_parent_path()) std::filesystem::create_directories(file.parent_path(), failure);
    return plan::writeFile(planOf(library), file);
}

plan::LibraryPlate libraryPlate(const plan::Plate& plate, const std::string& name,
                                const std::string& category) {
    plan::LibraryPlate stored;
    stored.name = name;
    stored.category = category;
    stored.format = plate.format;
    stored.direction = plate.direction;
    stored.gangs = plate.gangs;
    stored.modules = plate.modules;
    stored.finish = plate.finish;
    stored.box_depth_mm = plate.box_depth_mm;
    stored.barrier = plate.barrier;
    return stored;
}

plan::Plate fromLibrary(const plan::LibraryPlate& stored) {
    plan::Plate plate;
    plate.format = stored.format;
    plate.direction = stored.direction;
    plate.gangs = stored.gangs;
    plate.modules = stored.modules;
    plate.finish = stored.finish;
    plate.box_depth_mm = stored.box_depth_mm;
    plate.barrier = stored.barrier;
    return plate;
}

Library withPlate(Library library, plan::LibraryPlate plate, const std::vector<plan::OwnFormat>& formats) {
    if (plate.id.empty()) plate.id = freeId(library.plates, idFrom(plate.name));
    if (const plan::OwnFormat* own = find(formats, plate.format))
        plate.format = takeFormat(library.formats, *own);
    const auto there = std::ranges::find(library.plates, plate.id, &plan::LibraryPlate::id);
    if (there == library.plates.end())
        library.plates.push_back(std::move(plate));
    else
        *there = std::move(plate);
    return library;
}

Library withoutPlate(Library library, const std::string& id) {
    const plan::LibraryPlate* plate = findPlate(library, id);
    if (!plate) return library;
    const std::string format = plate->format;
    std::erase_if(library.plates, [&](const plan::LibraryPlate& other) { return other.id == id; });
    if (std::ranges::find(library.plates, format, &plan::LibraryPlate::format) == library.plates.end())
        std::erase_if(library.formats, [&](const plan::OwnFormat& own) { return own.id == format; });
    return library;
}

Library selection(const Library& library, const std::vector<std::string>& ids) {
    Library selected;
    for (const plan::LibraryPlate& plate : library.plates)
        if (std::ranges::find(ids, plate.id) != ids.end())
            selected = withPlate(std::move(selected), plate, library.formats);
    return selected;
}

Library merged(Library mine, const Library& other) {
    for (plan::LibraryPlate plate : other.plates) {
        if (const plan::OwnFormat* own = find(other.formats, plate.format))
            plate.format = takeFormat(mine.formats, *own);
        const bool there = std::ranges::any_of(
            mine.plates, [&](const plan::LibraryPlate& known) { return isSame(known, plate); });
        if (there) continue;
        plate.id = freeId(mine.plates, plate.id);
        mine.plates.push_back(std::move(plate));
    }
    return mine;
}

const plan::LibraryPlate* findPlate(const Library& library, const std::string& id) {
    return find(library.plates, id);
}

std::vector<std::string> categories(const Library& library) {
    std::set<std::string> used;
    for (const plan::LibraryPlate& plate : library.plates)
        if (!plate.category.empty()) used.insert(plate.category);
    return {used.begin(), used.end()};
}

Embedding embed(const plan::Plan& plan, const plan::LibraryPlate& stored,
                const std::vector<plan::OwnFormat>& formats) {
    Embedding embedding;
    plan::LibraryPlate plate = stored;
    if (const plan::OwnFormat* own = find(formats, stored.format)) {
        std::vector<plan::OwnFormat> together = plan.formats;
        plate.format = takeFormat(together, *own);
        embedding.formats.assign(together.begin() + static_cast<std::ptrdiff_t>(plan.formats.size()),
                                 together.end());
    }
    embedding.plate = fromLibrary(plate);
    const bool there = std::ranges::any_of(
        plan.library, [&](const plan::LibraryPlate& known) { return isSame(known, plate); });
    if (there) return embedding;
    plate.id = freeId(plan.library, plate.id.empty() ? idFrom(plate.name) : plate.id);
    embedding.library.push_back(std::move(plate));
    return embedding;
}

} // namespace gangway::catalogue
