// What the window knows beside the plan: where one stands, what is shown, selected and typed. Panels read
// it and the document, and change it; nothing here would be worth a test of its own.
#pragma once

#include "app/app.hpp"
#include "app/findings.hpp"
#include "app/furnish.hpp"
#include "app/inventory.hpp"
#include "app/lamps.hpp"
#include "app/overlays.hpp"
#include "app/placing.hpp"
#include "app/plate_bench.hpp"
#include "app/theme.hpp"
#include "app/tying.hpp"
#include "catalogue/catalogue.hpp"
#include "catalogue/pack.hpp"
#include "edit/edit.hpp"
#include "geometry/coverage.hpp"
#include "geometry/house_index.hpp"
#include "render/renderer.hpp"
#include "review/review.hpp"
#include "scene/house_way.hpp"
#include "scene/scene.hpp"
#include "sheets/storey_plan.hpp"
#include "sheets/wall_strip.hpp"

#include <atomic>
#include <chrono>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace gangway::app {

struct SheetPreview;

inline constexpr float kCardWidth = 340; ///< of the selected plate's card, pixels at scale 1

enum class Stance { Walk, Orbit, LidOff, Plan };
enum class Seat { Designer, Homeowner };
enum class DocketTab { Plates, Findings, Devices };
enum class Panel { None, Rooms, Furnish, Plates, Switching, Layers, Sheets, Keys };

/// A rectangle on screen, pixels.
struct Rect {
    float x = 0, y = 0, width = 0, height = 0;
    bool holds(float px, float py) const { return px >= x && py >= y && px < x + width && py < y + height; }
};

/// Moving the eye from one camera to another.
struct Flight {
    scene::Camera from;
    scene::Camera to;
    float done = 1; ///< 0 to 1; 1: standing still
};

/// Turning about a point, for orbit and lid-off.
struct OrbitEye {
    glm::vec3 target{0};
    float distance = 6;
    float yaw = 0;
    float pitch = -0.9F;
};

/// What is derived of the plan for the screen; redone only when the document's version rises.
struct Derived {
    std::uint64_t version = 0;
    std::map<std::string, std::vector<geometry::Cover>> covers; ///< by plate id
    std::map<std::string, scene::WalkMap> walk_maps;            ///< by storey
    std::vector<scene::StairLink> stairs;
    std::map<std::string, catalogue::ComposedPlate> plates;
    std::vector<review::State> states; ///< one a plate, in the plan's order
    review::Count count;
    std::optional<geometry::HouseIndex> house; ///< of the document's plan; new when more than plates changed
    bool walk_due =
        false; ///< furniture was moved in a step that is still open: ways and covers wait for its end
};

/// The wall strip's picture.
struct StripPicture {
    sheets::Strip strip;
    std::string room;
    std::string shown_plate; ///< the chosen plate that was last brought into view
    std::uint64_t version = 0;
    unsigned texture = 0;
    int texture_width = 0;
    int texture_height = 0;
    float zoom = 1; ///< on top of fitting the height
    float pan_px = 0;
    float px_per_mm = 1; ///< of strip paper
    float drawn_px_per_mm = 0;
};

/// The drawn plan's picture: the building, kept while only plates change, and the symbols over it.
struct PlanPicture {
    sheets::StoreyBase base;
    sheets::StoreySymbols symbols;
    std::string storey;
    std::string look; ///< options the base was drawn for, as text
    std::uint64_t base_version = 0;
    std::uint64_t symbols_version = 0;
    std::string symbols_look;
    unsigned base_texture = 0;
    unsigned symbols_texture = 0;
    std::string drawn_base; ///< part of the paper that the textures show, as text
    std::string drawn_symbols;
    float px_per_mm = 0;  ///< of plan paper; 0: fit
    plan::Vec2 centre_mm; ///< house point in the middle of the view
    bool heights = false;
};

struct Message {
    std::string title;
    std::vector<std::string> lines;
};

/// A key let go in the frame it was pressed in, told to ImGui one frame later.
struct LateRelease {
    int key = 0;
    int scancode = 0;
    int mods = 0;
};

/// What to do once the question about unsaved changes is answered.
struct Pending {
    enum class What { None, Close, Open };
    What what = What::None;
    std::filesystem::path file;
};

struct State {
    Options options;
    const Tokens* tokens = &kLight;
    Fonts fonts;
    float scale = 1;

    edit::Document document;
    catalogue::Catalogue catalogue; ///< with the plan's own formats
    catalogue::Catalogue shipped;   ///< as read from the catalogue folder
    catalogue::CountryPacks packs;
    Derived derived;

    Stance stance = Stance::Walk;
    Seat seat = Seat::Designer;
    Panel panel = Panel::None;
    std::string storey;
    std::string room; ///< room one stands in
    scene::Camera camera;
    OrbitEye orbit;
    Flight flight;
    std::vector<scene::WayPoint> walk_way; ///< click-to-walk, points still ahead

    std::string selected;       ///< plate id
    std::set<std::string> also; ///< plates chosen together with it
    std::optional<sheets::PlanRef>
        thing; ///< something else that is chosen: furniture, opening, luminaire, room, wall
    Drag drag;
    std::optional<Placing> placing;
    std::optional<Typing> typing;
    std::optional<ThingPlacing> thing_placing; ///< new furniture, opening or luminaire on the pointer
    Furnish furnish;                           ///< its panel, and the card of `thing`
    std::optional<plan::KeptDistance> measured_along, measured_height; ///< what the card's numbers start from
    std::optional<Rect> box; ///< being drawn to choose what is in it
    std::string hovered;
    std::set<std::string> faded; ///< objects made see-through by "show it"
    std::set<std::string> hidden_rooms;
    bool this_room_only = true; ///< docket
    bool open_only = false;

    std::string answering;                     ///< name beside answers
    std::string note_for;                      ///< plate whose query note is being typed; empty: none
    std::map<std::string, std::string> drafts; ///< notes typed and not saved yet, by plate id
    int note_frame = 0;                        ///< frame the note was asked for, to put the cursor there once
    std::string set_out_text, height_text;
    std::string set_out_problem, height_problem; ///< what is wrong with the two texts, in words
    std::string number_plate;                    ///< plate the two texts belong to, with version
    std::uint64_t number_version = 0;

    std::string search;
    bool search_open = false;
    bool search_focus = false;
    std::optional<Message> message;
    Pending pending;
    bool ask_unsaved = false;
    bool ask_recover = false;
    bool browse_open = false;
    bool browse_save = false;
    std::string browse_path;
    std::string browse_folder;
    std::vector<std::filesystem::path> recent;
    std::string toast; ///< last thing done, in words
    double toast_until = 0;

    Rect stage;
    std::string stage_key; ///< what the stage's picture was drawn for
    unsigned stage_texture = 0;
    bool refining = false; ///< the picture at rest is still being made finer
    StripPicture strip;
    PlanPicture plan_picture;
    PlateBench bench;
    std::unique_ptr<SheetPreview> preview; ///< always there: of the sheets
    Tying tying;
    Lamps lamps;
    Findings findings;
    Overlays overlays;
    Inventory inventory;
    DocketTab docket = DocketTab::Plates;
    Leeway leeway;
    bool legs_on_plan = true;
    std::map<std::string, Rect> places; ///< where things are on screen this frame, by name
    std::uint64_t frames = 0;
    int frames_wanted = 3;
    std::string show_at_start; ///< plate to go to once the stage's size is known
    std::set<int> keys_of_frame;
    std::vector<LateRelease> late_releases;
    bool close = false;
    std::atomic<bool> woken = false; ///< another thread has something for the next frame
    std::function<void()> wake;      ///< says so, from any thread

    const plan::Plan& plan() const { return document.plan(); }
    unsigned agreedColour() const { return tokens->agreed; }
};

/// Remembers where something clickable is, for the report.
void place(State& state, const std::string& name);
void say(State& state, std::string words);
std::string nowUtc();

} // namespace gangway::app
