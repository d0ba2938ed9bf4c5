// What the files of the plate bench share. Inside app only.
#pragma once

#include "app/panels.hpp"
#include "app/plate_bench.hpp"

namespace gangway::app::bench {

// plate_bench_edits.cpp: changes of the plate on the bench. Each composes it anew.
void recompose(State& state);
void chooseFormat(State& state, const std::string& format_id);
/// To the next count that the format has, up or down; modules beyond the last gang go.
void stepGangs(State& state, int direction);
/// Puts a module into the chosen gang; gangs to its left that are empty become blanks.
void putModule(State& state, const std::string& type);
void emptyGang(State& state);
/// The chosen gang's module in every gang.
void fillAll(State& state);
/// A second switch in the chosen gang, where the format lets switches share one.
void addBeside(State& state);
bool canShare(const State& state);
/// Starts a format of one's own with the sizes of the one in use.
void newOwnFormat(State& state);
plan::OwnFormat* ownFormat(State& state);
/// The module of the plate in the chosen gang; nullptr for an empty one.
plan::Module* chosenModule(State& state);
std::vector<const catalogue::ModuleType*> modulesToChoose(const State& state);

/// Columns and rows of gangs, and the distances between their centres.
struct Lattice {
    int columns = 1;
    int rows = 1;
    plan::Vec2 pitch_mm;
};
Lattice latticeOf(const State& state);

// plate_bench_dimensions.cpp: drawing to scale.
inline constexpr float kTight = 260; ///< a view lower than this, pixels at scale 1, has smaller margins
/// A drawing on the screen: mm from the plate's centre, x right and y up, to pixels.
struct Sheet {
    const State& state;
    ImDrawList& list;
    ImVec2 origin;
    float px_per_mm = 1;
    ImVec2 at(double x_mm, double y_mm) const {
        return {origin.x + static_cast<float>(x_mm) * px_per_mm,
                origin.y - static_cast<float>(y_mm) * px_per_mm};
    }
};
/// A dimension between two x with its line at a height of the screen; extension lines come from `from_y_mm`.
void dimensionAcross(const Sheet& sheet, double x0_mm, double x1_mm, double from_y_mm, float line_y_px,
                     const std::string& words = {});
/// Between two y, its line at `line_x_px`; the number stands left of the line, or right of it.
enum class Beside { Left, Right };
void dimensionUp(const Sheet& sheet, double y0_mm, double y1_mm, double from_x_mm, float line_x_px,
                 Beside beside, const std::string& words = {});
/// Long and short dashes in turn, as centre lines are drawn.
void centreLine(const Sheet& sheet, ImVec2 from, ImVec2 to);
/// Small text on a piece of paper, `align` 0 its left, 0.5 its middle, 1 its right at `at`.
void smallText(const Sheet& sheet, ImVec2 at, float align, const std::string& words, unsigned rgb);
std::string shown(const State& state, double length_mm);

// One view each; `low` and `high` are its corners, pixels.
void drawFrontView(State& state, ImVec2 low, ImVec2 high);
void drawSideView(State& state, ImVec2 low, ImVec2 high);
void drawBoxView(State& state, ImVec2 low, ImVec2 high);
void drawTurnView(State& state, ImVec2 size);

// The columns and the foot.
void drawFormatColumn(State& state, float height);
void drawSizes(State& state);
float sizesHeight(const State& state);
void drawModuleColumn(State& state, float height);
void drawFoot(State& state, float height);
void heading(const State& state, const char* words);
bool choiceButton(const State& state, const char* label, bool chosen, ImVec2 size = {0, 0});
void hint(const char* words);

// plate_bench_finish.cpp: handing over.
void finishBench(State& state);
void saveToLibrary(State& state);
const char* finishWords(BenchPurpose purpose);

} // namespace gangway::app::bench
