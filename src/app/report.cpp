#include "app/report.hpp"

#include "app/sheet_preview.hpp"

#include "plan/io.hpp"
#include "review/review.hpp"

#include <nlohmann/json.hpp>

namespace gangway::app {

namespace {
/// Percent by leg, of those that are on.
nlohmann::ordered_json lightsOf(const State& state) {
    auto lights = nlohmann::ordered_json::object();
    for (const plan::SwitchLeg& leg : state.plan().legs)
        if (const double percent = state.lamps.lights.percent(leg.id); percent > 0) lights[leg.id] = percent;
    return lights;
}
} // namespace

void writeReport(const State& state, const render::Statistics& statistics, bool resting,
                 const std::filesystem::path& file) {
    using Json = nlohmann::ordered_json;
    const review::Count count = state.derived.count;
    const PageOf page = state.panel == Panel::Sheets ? pageOf(state) : PageOf{};
    Json report = {{"resting", resting},
                   {"file", state.document.file().string()},
                   {"changed", state.document.changed()},
                   {"room", state.room},
                   {"storey", state.storey},
                   {"selected", state.selected},
                   {"stance", state.stance == Stance::Walk ? "walk"
                                                           : (state.stance == Stance::Orbit    ? "turn"
                                                              : state.stance == Stance::LidOff ? "lid-off"
                                                                                               : "plan")},
                   {"seat", state.seat == Seat::Designer ? "designer" : "homeowner"},
                   {"eye", {state.camera.eye.x, state.camera.eye.y, state.camera.eye.z}},
                   {"yaw", state.camera.yaw},
                   {"pitch", state.camera.pitch},
                   {"faded", state.faded},
                   {"finding", state.findings.open},
                   {"findings", state.findings.ids},
                   {"chosen", chosenPlates(state)},
                   {"undo", state.document.undoName()},
                   {"redo", state.document.redoName()},
                   {"frames", state.frames},
                   {"uploads", statistics.uploads},
                   {"lights", lightsOf(state)},
                   {"evening", state.lamps.evening},
                   {"scene", state.lamps.scene},
                   {"page", page.drawing ? page.get().number : ""},
                   {"zoom", state.preview->view.pagePxPerMm()},
                   {"pointed", state.preview->pointed},
                   {"agreed", count.agreed},
                   {"queried", count.queried},
                   {"message", state.message ? state.message->title : ""},
                   {"asking", state.ask_unsaved ? "unsaved" : (state.ask_recover ? "recover" : "")}};
    Json places = Json::object();
    for (const auto& [name, rect] : state.places)
        places[name] = {rect.x, rect.y, rect.width, rect.height};
    report["places"] = std::move(places);
    // A report is for looking on; where it can't be written the window goes on all the same.
    static_cast<void>(plan::writeBytesAtomically(report.dump(1) + "\n", file));
}

} // namespace gangway::app
