#include "catalogue/catalogue.hpp"
#include "catalogue/json_files.hpp"
#include "catalogue/read_entries.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <set>

namespace gangway::catalogue {
namespace {

using detail::Json;
using detail::JsonFile;
using detail::Mistakes;
using detail::ObjectReader;

/// What one file holds, and what is wrong with it.
struct FilePart {
    const JsonFile* file = nullptr;
    Catalogue holds;
    Mistakes mistakes;
};

/// Calls `take` with each object of the file's list `key` and with its JSON pointer.
template <typename Take>
void eachEntry(FilePart& part, const std::string& key, Take take) {
    if (!part.file->content.is_object()) return;
    ObjectReader reader(part.file->content, "", part.mistakes);
    const Json* list = reader.array(key, ObjectReader::Presence::Optional);
    for (std::size_t i = 0; list && i < list->size(); ++i)
        take((*list)[i], fmt::format("/{}/{}", key, i));
}

void checkTopLevel(FilePart& part) {
    const Json& content = part.file->content;
    if (!content.is_object()) {
        part.mistakes.push_back({"", fmt::format("expected an object, found {}", detail::kindOf(content))});
        return;
    }
    const std::set<std::string> known = {"note", "formats", "fronts", "modules", "finishes"};
    for (const auto& item : content.items())
        if (!known.contains(item.key()))
            part.mistakes.push_back({fmt::format("/{}", item.key()),
                                     fmt::format("unknown key; known are {}", fmt::join(known, ", "))});
}

void readEntries(FilePart& part, const detail::Fronts& fronts) {
    eachEntry(part, "formats", [&](const Json& object, const std::string& pointer) {
        part.holds.formats.push_back(detail::readFormat(object, pointer, part.mistakes));
    });
    eachEntry(part, "modules", [&](const Json& object, const std::string& pointer) {
        part.holds.modules.push_back(detail::readModule(object, pointer, fronts, part.mistakes));
    });
    eachEntry(part, "finishes", [&](const Json& object, const std::string& pointer) {
        part.holds.finishes.push_back(detail::readFinish(object, pointer, part.mistakes));
    });
}

std::vector<FilePart> readParts(const std::vector<JsonFile>& files) {
    std::vector<FilePart> parts;
    detail::Fronts fronts;
    for (const JsonFile& file : files) {
        FilePart& part = parts.emplace_back();
        part.file = &file;
        checkTopLevel(part);
        eachEntry(part, "fronts", [&](const Json& object, const std::string& pointer) {
            detail::readNamedFront(object, pointer, fronts, part.mistakes);
        });
    }
    for (FilePart& part : parts)
        readEntries(part, fronts);
    return parts;
}

/// Notes entries whose id is taken by an earlier file or an earlier entry of the same one.
template <typename Entry>
void checkUnique(FilePart& part, const std::vector<Entry>& entries, const std::string& list,
                 const std::string& what, std::set<std::string>& seen) {
    for (std::size_t i = 0; i < entries.size(); ++i)
        if (!seen.insert(fmt::format("{}/{}", list, entries[i].id)).second)
            part.mistakes.push_back({fmt::format("/{}/{}/id", list, i),
                                     fmt::format("{} '{}' is defined twice", what, entries[i].id)});
}

void checkIds(std::vector<FilePart>& parts) {
    std::set<std::string> seen;
    for (FilePart& part : parts) {
        std::set<std::string> with = seen;
        checkUnique(part, part.holds.formats, "formats", "plate format", with);
        checkUnique(part, part.holds.modules, "modules", "module", with);
        checkUnique(part, part.holds.finishes, "finishes", "finish", with);
        if (part.mistakes.empty()) seen = std::move(with);
    }
}

/// Formats and families that modules may name.
std::set<std::string> formatWords(const std::vector<FilePart>& parts) {
    std::set<std::string> words;
    for (const FilePart& part : parts)
        for (const PlateFormat& format : part.holds.formats) {
            words.insert(format.id);
            words.insert(format.family);
        }
    return words;
}

void checkFormatWords(FilePart& part, const std::set<std::string>& words) {
    for (std::size_t i = 0; i < part.holds.modules.size(); ++i) {
        const ModuleType& module = part.holds.modules[i];
        for (std::size_t j = 0; j < module.variants.size(); ++j)
            if (!words.contains(module.variants[j].format))
                part.mistakes.push_back(
                    {fmt::format("/modules/{}/variants/{}/format", i, j),
                     fmt::format("module '{}' has a variant for the plate format or family "
                                 "'{}', which no file defines",
                                 module.id, module.variants[j].format)});
        for (std::size_t j = 0; j < module.families.size(); ++j)
            if (!words.contains(module.families[j]))
                part.mistakes.push_back(
                    {fmt::format("/modules/{}/families/{}", i, j),
                     fmt::format("no file defines plate formats of the family '{}'", module.families[j])});
    }
}

template <typename Entry>
void append(std::vector<Entry>& all, std::vector<Entry>& more) {
    std::ranges::move(more, std::back_inserter(all));
}

Catalogue merge(std::vector<FilePart>& parts, std::vector<std::string> problems) {
    Catalogue catalogue;
    for (FilePart& part : parts) {
        if (!part.mistakes.empty()) {
            std::ranges::move(detail::lines(*part.file, part.mistakes), std::back_inserter(problems));
            continue;
        }
        append(catalogue.formats, part.holds.formats);
        append(catalogue.modules, part.holds.modules);
        append(catalogue.finishes, part.holds.finishes);
    }
    catalogue.problems = std::move(problems);
    return catalogue;
}

} // namespace

std::expected<Catalogue, std::string> load(const std::filesystem::path& folder) {
    std::vector<std::string> problems;
    const auto files = detail::readJsonFiles(folder, "catalogue", problems);
    if (!files) return std::unexpected(files.error());

    std::vector<FilePart> parts = readParts(*files);
    checkIds(parts);
    // Once a file is left out its formats are missing through no fault of the modules that name them.
    const bool whole = problems.empty() &&
                       std::ranges::all_of(parts, [](const FilePart& part) { return part.mistakes.empty(); });
    const std::set<std::string> words = formatWords(parts);
    if (whole)
        for (FilePart& part : parts)
            checkFormatWords(part, words);
    Catalogue catalogue = merge(parts, std::move(problems));
    if (!catalogue.formats.empty()) return catalogue;
    return std::unexpected(fmt::format("catalogue folder '{}': no plate format could be read\n{}",
                                       folder.string(), fmt::join(catalogue.problems, "\n")));
}

} // namespace gangway::catalogue
