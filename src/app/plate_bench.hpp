// The plate bench: where a plate is composed, looked at from all sides and handed on; and the library of
// composed plates beside it. Nothing of the plan changes before "Place it", "Apply" or "Save".
#pragma once

#include "catalogue/catalogue.hpp"
#include "catalogue/library.hpp"
#include "render/renderer.hpp"

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace gangway::app {

struct State;

/// What becomes of the plate on the bench.
enum class BenchPurpose {
    New,    ///< placed on the stage afterwards
    Change, ///< applied to the plate of the plan that has its id
    Library ///< saved back into the user's library
};

/// The panel of the library: the user's file as it was last read, and how the list is narrowed.
struct LibraryShelf {
    std::optional<catalogue::Library> library; ///< not set: not read yet
    std::string problem;                       ///< why the file can't be read; it is not written over then
    std::string search;
    std::string category; ///< empty: all
    std::string path;     ///< to import from and export to
    bool path_open = false;
    /// Ids of the plan's plates that the library does not hold, and the document's version they were found
    /// at; 0: to be found anew.
    std::vector<std::string> only_in_plan;
    std::uint64_t found_at = 0;
};

struct PlateBench {
    enum class View { Front, Side, Box };

    bool open = false;
    bool appearing = false;
    BenchPurpose purpose = BenchPurpose::New;
    plan::Plate plate;
    std::string title;                    ///< tag or name of what is changed
    std::vector<plan::OwnFormat> formats; ///< formats of the designer's own at hand, with what is typed here
    catalogue::Catalogue catalogue;       ///< with those formats
    catalogue::ComposedPlate composed;    ///< gangs in reading order
    std::uint64_t revision = 0;           ///< rises with every change of the plate or its format

    View view = View::Front;
    std::size_t gang = 0; ///< chosen one, in composed.gangs
    std::string search;
    bool search_focus = false;
    std::string focus;                           ///< number box to put the cursor into
    std::map<std::string, std::string> typed;    ///< number boxes being typed into, by name
    std::map<std::string, std::string> mistakes; ///< what is wrong with them, in words

    std::string name; ///< in the library
    std::string category;
    std::string library_id; ///< of the plate in the library, once it is there

    float yaw = 0.5F;
    float pitch = 0.3F;
    std::optional<render::Renderer> renderer;
    std::string renderer_problem;
    std::uint64_t drawn_revision = 0;
    std::string drawn_key;
    unsigned texture = 0;
    bool refining = false;

    LibraryShelf shelf;
};

/// Puts a plate on the bench. An empty plate gets the storey's or the country pack's format and one gang.
void openBench(State& state, const plan::Plate& plate, BenchPurpose purpose);
/// Puts a plate of a library on the bench under its name; `formats` are that library's. A copy has no id yet.
void openBench(State& state, const plan::LibraryPlate& stored, const std::vector<plan::OwnFormat>& formats);
/// Closes without changing anything.
void closeBench(State& state);
/// Gives the bench's GL objects back, while the window's context is still there.
void endBench(State& state);
/// Over stage, strip and docket; `width` and `height` of the window, pixels.
void drawPlateBench(State& state, float width, float height);
/// Keys while the bench is open.
void benchKeys(State& state);

/// The library's panel beside the rail.
void drawLibraryPanel(State& state);
/// Reads the user's library unless it was read before; what is wrong with it is in LibraryShelf::problem.
const catalogue::Library& shelfLibrary(State& state);
/// Writes the user's library and keeps it; a message says why when it can't be written.
bool keepLibrary(State& state, catalogue::Library library);
/// Embeds a library's plate in the plan and hands it to the mouse to be placed.
void placeFromLibrary(State& state, const plan::LibraryPlate& stored,
                      const std::vector<plan::OwnFormat>& formats);

} // namespace gangway::app
