// The parts of the window. Each draws itself from the state and changes the state or the document by
// commands; app.cpp calls them in order once a frame.
#pragma once

#include "app/placing.hpp"
#include "app/state.hpp"

#include <functional>

namespace gangway::app {

// files.cpp: opening, saving, what happens to unsaved work.
bool openPlan(State& state, const std::filesystem::path& file);
bool savePlan(State& state, const std::filesystem::path& file = {});
void requestOpen(State& state, const std::filesystem::path& file);
void requestClose(State& state);
void loadRecent(State& state);
/// Answers the pending question: go on with what was asked for.
void goOn(State& state);

// moves.cpp: standing, walking, looking.
void enterRoom(State& state, const std::string& room_id);
void faceWall(State& state, std::size_t wall);
void faceNearestWall(State& state);
void showPlate(State& state, const std::string& plate_id);
void setStance(State& state, Stance stance);
/// From above to one's feet: on the free place nearest to a point of the room, looking where it is open.
void stepInto(State& state, const plan::Room& room, plan::Vec2 at_mm);
void flyTo(State& state, const scene::Camera& camera);
/// Moves the eye for this frame's time; true while something is still moving.
bool advance(State& state, float seconds);
void lookBy(State& state, float dx_px, float dy_px);
void zoomBy(State& state, float notches);
void panBy(State& state, float dx_px, float dy_px);
const plan::Room* standingRoom(const State& state);
plan::Vec2 standingAt(const State& state);

// walking.cpp
/// True while a message, question or box must be answered first.
bool asked(const State& state);
double elevationOf(const State& state, const std::string& storey_id);
const scene::WalkMap* walkMap(const State& state, const std::string& storey_id);
/// The angle nearest to `from` that points as `to` does, radians.
float turnedTo(float from, float to);
bool walkingKeys(State& state, float seconds);
bool followWay(State& state, float seconds);
void walkTo(State& state, plan::Vec2 at_mm, const std::string& storey_id);
/// Goes to a stair and up or down it.
void takeStair(State& state, const std::string& furniture_id);

// derive.cpp
/// State of a plate, from what was derived; a plate of the present plan only.
review::State stateOf(const State& state, const plan::Plate& plate);
/// Brings what is derived up to the document's version and uploads the scene when it changed.
void derive(State& state, render::Renderer& renderer);
/// Pieces that stand solid in front of a plate: shown layers only, not faded ones.
std::vector<geometry::Cover> solidCovers(const State& state, const std::string& plate_id);
/// The same with the faded ones: all of the shown layers that one would have to see past.
std::vector<geometry::Cover> frontCovers(const State& state, const std::string& plate_id);
/// True when every one of the covers is faded.
bool seenPast(const State& state, const std::vector<geometry::Cover>& covers);
/// Fades the covers, or puts them back.
void seePast(State& state, const std::vector<geometry::Cover>& covers, bool past);
render::View viewOf(const State& state);

// stage_pointer.cpp
/// What a plate could be mounted on under a pixel of the stage, and where. With `stay_on` only a host of the
/// same kind takes over from it; else the place is where the pixel's ray meets it.
std::optional<Spot> spotUnder(const State& state, const render::View& view, const render::Pick& hit,
                              ImVec2 at_px, const Spot* stay_on);
Projector stageProjector(const State& state, const render::View& view, const std::string& room_id,
                         const plan::Host& host);

// plan_view.cpp: the drawn plan of the storey, where the stage is.
void drawPlanView(State& state);
/// plan_tabs.cpp: the storeys to choose from, over the plan.
void storeyTabs(State& state);

// Panels.
void drawStage(State& state, render::Renderer& renderer);
void drawMarks(State& state, const render::Renderer& renderer, const render::View& view);
/// finding_marks.cpp: the open finding where it is in the room.
void drawFindingOnStage(State& state, const render::View& view);
void drawTopBar(State& state);
void drawRail(State& state);
void drawSidePanel(State& state);
void drawStrip(State& state);
void drawDocket(State& state);
void drawCard(State& state);
void drawHomeownerBar(State& state);
void drawDialogs(State& state);
void drawSearch(State& state);

// The sheets as they will print, where stage, strip and docket are: sheet_preview.cpp, preview_*.cpp.
void openSheets(State& state);
void closeSheets(State& state);
/// Another plan was opened: nothing that is drawn counts any more.
void forgetSheets(State& state);
/// Once a frame: takes what other threads have finished, and gives them what comes next.
void tendSheets(State& state);
/// Ends all work on other threads.
void endSheets(State& state);
void drawSheetPreview(State& state, float width, float height);
void previewKeys(State& state);

// answers.cpp: what the homeowner says, shared by card, bar and keys.
void agree(State& state, const std::string& plate_id);
/// Saves the plate's draft as a query; without words or a name it says so and keeps the draft.
void query(State& state, const std::string& plate_id);
/// True when the plate's draft has words in it.
bool draftHasWords(const State& state, const std::string& plate_id);
/// Opens the selected plate's note and puts the cursor into it.
void askNote(State& state);
bool askingNote(const State& state);
/// Ends asking when another plate, or none, is selected.
void keepNoteWithItsPlate(State& state);
/// The next plate after `from` still to be answered, room by room; empty when all are.
std::string nextToAnswer(const State& state, const std::string& from);

// keys.cpp: everything reachable from the keyboard, and the list for the search box.
struct Action {
    std::string name;
    std::string key; ///< as printed, empty when none
    std::function<void(State&)> run;
};
std::vector<Action> actions(const State& state);
void handleKeys(State& state);
/// preview_keys.cpp: those of the sheets.
void addSheetActions(std::vector<Action>& list, const State& state);
/// Between the light and the dark theme.
void otherTheme(State& state);
void cycleLayer(State& state, const std::string& layer_id);

// app.cpp: a part of the window without decoration, with its place.
void beginBand(const char* name, Rect area, ImVec2 padding);
void endBand();

// stage.cpp: what was last done, in words, at the lower edge of an area.
void drawToast(const State& state, Rect area);

// widgets.cpp
void stateShape(const State& state, ImDrawList& list, ImVec2 centre, float radius, review::State plate_state);
unsigned stateColour(const State& state, review::State plate_state);
bool largeButton(const State& state, const char* label, unsigned rgb, ImVec2 size, bool filled);
void wrapped(const std::string& text);
/// The text broken between words into at most `lines` lines of `width_px`, at least one; the last one ends in
/// three points when something had to be left out.
std::vector<std::string> linesWithin(const ImFont& font, const std::string& text, float width_px,
                                     std::size_t lines);
std::string plateTitle(const State& state, const plan::Plate& plate);
std::string hostSentence(const State& state, const plan::Plate& plate);
std::string modulesSentence(const State& state, const plan::Plate& plate);
void plateFront(const State& state, ImDrawList& list, const plan::Plate& plate, ImVec2 centre,
                float px_per_mm);

} // namespace gangway::app
