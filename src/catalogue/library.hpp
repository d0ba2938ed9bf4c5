// The designer's own library: composed plates under a name and a category, in one file of the user's and,
// where they are used, in the plan. The file is a plan that holds nothing else
// (assets/schema/plan.schema.json, keys "library" and "formats"), so any plan can be imported from.
#pragma once

#include "plan/plan.hpp"

#include <expected>
#include <filesystem>
#include <string>
#include <vector>

namespace gangway::catalogue {

struct Library {
    std::vector<plan::LibraryPlate> plates; ///< ids are unique
    std::vector<plan::OwnFormat> formats;   ///< those of the designer's own that its plates use
    plan::UnknownKeys unknown;              ///< top-level keys of the file that this version does not know
};

/// The user's library: gangway/library.json in $XDG_DATA_HOME, or in ~/.local/share when that is not set or
/// no absolute path (XDG Base Directory Specification 0.8). Empty when there is no home either.
std::filesystem::path userLibraryFile();

/// Reads a library or the library of a plan. A missing file is an empty library; a broken one is an error,
/// with a line for every problem: "library.json:12:5: error: /library/0/name: ...".
[[nodiscard]] std::expected<Library, std::string> readLibrary(const std::filesystem::path& file);
/// Writes atomically and makes missing folders. Refuses to write over a file that can't be read as a library
/// or that is a plan with rooms in it, so that nothing is lost; the message says what to do.
[[nodiscard]] std::expected<void, std::string> writeLibrary(const Library& library,
                                                            const std::filesystem::path& file);

/// A plate of the plan as it goes into the library: what it is made of, not where it is. No id yet.
plan::LibraryPlate libraryPlate(const plan::Plate& plate, const std::string& name,
                                const std::string& category);
/// A plate to put into a plan: no id, room or place yet.
plan::Plate fromLibrary(const plan::LibraryPlate& stored);

/// The library with one plate more. A plate without an id gets a free one made from its name; one whose id is
/// there takes that one's place. `formats` are the designer's own formats at hand; the one the plate uses
/// goes along.
Library withPlate(Library library, plan::LibraryPlate plate, const std::vector<plan::OwnFormat>& formats);
/// The library less one plate, and less its format when no other plate uses that.
Library withoutPlate(Library library, const std::string& id);
/// Only the plates of `ids`, with their formats: what is written to export some.
Library selection(const Library& library, const std::vector<std::string>& ids);
/// Both together: import. Equal plates are there once; a plate or format of `other` whose id is taken by
/// another one gets a free id ("desk-2").
Library merged(Library mine, const Library& other);

const plan::LibraryPlate* findPlate(const Library& library, const std::string& id);
/// Categories in use, sorted, without the empty one.
std::vector<std::string> categories(const Library& library);
/// Plates in which every word of `text` occurs (case does not matter), best first: name before category,
/// module types, format and note, starts of words before middles, then by name. Only those of `category`
/// unless it is empty; empty `text`: all by name. Pointers live until the library is changed.
std::vector<const plan::LibraryPlate*> search(const Library& library, const std::string& text,
                                              const std::string& category);

/// What a plan needs in order to hold a plate of the library.
struct Embedding {
    plan::Plate plate;                       ///< to place; its format may have another id than in the library
    std::vector<plan::LibraryPlate> library; ///< to add to Plan::library; empty when it is there already
    std::vector<plan::OwnFormat> formats;    ///< to add to Plan::formats; empty when it is there already
};
/// Embeds by value, nothing is changed. Ids that the plan uses for something else are replaced by free ones.
Embedding embed(const plan::Plan& plan, const plan::LibraryPlate& stored,
                const std::vector<plan::OwnFormat>& formats);

} // namespace gangway::catalogue
