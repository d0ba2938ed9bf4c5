// The drawn plan of the storey: the same drawing as on paper, where the stage is. Plates are placed, slid
// along walls and flipped to the other face here; their symbols can be pulled aside.
#include "app/finding_parts.hpp"
#include "app/lamps.hpp"
#include "app/overlay_parts.hpp"
#include "app/panels.hpp"
#include "app/picture_upload.hpp"
#include "app/placing.hpp"
#include "edit/plate_edits.hpp"
#include "export/export.hpp"
#include "geometry/wall_hit.hpp"
#include "sheets/leg_plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gangway::app {

namespace {
constexpr double kPlanScale = 50;
constexpr float kClickSlack_px = 5;
constexpr double kWallReach_mm = 350; ///< a pointer this near to a wall is on it

/// Between the screen and the house.
struct View {
    const sheets::PlanMapping* mapping = nullptr;
    double height_mm = 0; ///< of the paper
    ImVec2 corner;        ///< of the paper on screen, top left
    float px_per_mm = 1;
    ImVec2 toScreen(plan::Vec2 house_mm) const {
        const drawing::Pt at = mapping->paper(house_mm);
        return {corner.x + static_cast<float>(at.x) * px_per_mm,
                corner.y + static_cast<float>(height_mm - at.y) * px_per_mm};
    }
    plan::Vec2 toHouse(ImVec2 at) const {
        return mapping->house({static_cast<double>((at.x - corner.x) / px_per_mm),
                               height_mm - static_cast<double>((at.y - corner.y) / px_per_mm)});
    }
    double mmFor(double px) const { return px * mapping->scale / static_cast<double>(px_per_mm); }
};

drawing::Colour paperColour(const State& state) {
    const unsigned rgb = kLight.paper;
    return state.tokens == &kLight
               ? drawing::Colour{static_cast<std::uint8_t>(rgb >> 16U), static_cast<std::uint8_t>(rgb >> 8U),
                                 static_cast<std::uint8_t>(rgb)}
               : drawing::Colour{0xE6, 0xE1, 0xD6};
}

sheets::StoreyPlanOptions optionsFor(const State& state) {
    sheets::StoreyPlanOptions options;
    options.scale = kPlanScale;
    options.heights = state.plan_picture.heights;
    options.paper = paperColour(state);
    options.base = state.document.file().parent_path();
    for (const auto& id : chosenPlates(state))
        options.selected.push_back({sheets::PlanThing::Plate, id, {}});
    if (state.thing) options.selected.push_back(*state.thing);
    if (state.legs_on_plan) options.marks = sheets::marksAtSymbols(state.plan());
    return options;
}

/// What was touched since a version is plates only.
bool onlyPlatesSince(const State& state, std::uint64_t version) {
    const auto touched = state.document.touchedSince(version);
    return version != 0 && touched && touched->furniture.empty() && !touched->others;
}

/// The leg whose way is picked.
std::string pickedLeg(State& state) {
    const auto* way = state.tying.way ? netOf(state).way(*state.tying.way) : nullptr;
    return way == nullptr || way->legs.empty() ? std::string() : way->legs.front()->id;
}

/// Switch legs under the symbols.
void addLegs(State& state, PlanPicture& picture) {
    if (!state.legs_on_plan) return;
    sheets::LegOptions options;
    options.highlighted = pickedLeg(state);
    auto legs = sheets::legsOnPlan(netOf(state), picture.base, picture.symbols, options);
    picture.symbols.items.insert(picture.symbols.items.begin(), std::make_move_iterator(legs.items.begin()),
                                 std::make_move_iterator(legs.items.end()));
}

/// Draws building and symbols again, each only when what it shows changed.
void refresh(State& state) {
    PlanPicture& picture = state.plan_picture;
    const auto options = optionsFor(state);
    const auto version = state.document.version();
    const std::string look = state.tokens == &kLight ? "light" : "dark";
    const bool base_due = picture.storey != state.storey || picture.look != look ||
                          (picture.base_version != version && !onlyPlatesSince(state, picture.base_version));
    if (base_due) {
        if (picture.storey != state.storey) picture.px_per_mm = 0;
        picture.base = sheets::storeyBase(state.plan(), state.storey, options);
        picture.storey = state.storey;
        picture.look = look;
        picture.drawn_base.clear();
        picture.symbols_version = 0;
    }
    picture.base_version = version;
    std::string symbols_look = picture.heights ? "h" : "";
    symbols_look += state.legs_on_plan ? "l " + pickedLeg(state) : "";
    for (const auto& ref : options.selected)
        symbols_look += ref.id + ' ';
    if (picture.symbols_version == version && picture.symbols_look == symbols_look) return;
    picture.symbols = sheets::storeySymbols(state.plan(), state.catalogue, picture.base, options);
    addLegs(state, picture);
    picture.symbols_version = version;
    picture.symbols_look = symbols_look;
    picture.drawn_symbols.clear();
}

View viewFor(State& state) {
    PlanPicture& picture = state.plan_picture;
    const auto width = static_cast<float>(std::max(1.0, picture.base.width_mm));
    const auto height = static_cast<float>(std::max(1.0, picture.base.height_mm));
    if (picture.px_per_mm <= 0) {
        // Clear of the storey buttons above and of the card at the right.
        const float above = 52 * state.scale;
        const float beside = state.selected.empty() && !state.thing ? 0 : (kCardWidth + 24) * state.scale;
        picture.px_per_mm =
            std::min((state.stage.width - beside) / width, (state.stage.height - above) / height);
        picture.centre_mm = picture.base.mapping.house(
            {picture.base.width_mm / 2 + static_cast<double>(beside / 2 / picture.px_per_mm),
             picture.base.height_mm / 2 + static_cast<double>(above / 2 / picture.px_per_mm)});
    }
    const drawing::Pt centre = picture.base.mapping.paper(picture.centre_mm);
    View view;
    view.mapping = &picture.base.mapping;
    view.height_mm = picture.base.height_mm;
    view.px_per_mm = picture.px_per_mm;
    view.corner = {state.stage.x + state.stage.width / 2 - static_cast<float>(centre.x) * picture.px_per_mm,
                   state.stage.y + state.stage.height / 2 -
                       (height - static_cast<float>(centre.y)) * picture.px_per_mm};
    return view;
}

/// The part of the paper that is in view, as both pictures show it.
struct Part {
    drawing::Pt lower_left;
    double width_mm = 0;
    double height_mm = 0;
    float px_per_mm = 1;
    bool operator==(const Part&) const = default;
};

Part partInView(const State& state, const View& view) {
    const auto px = static_cast<double>(view.px_per_mm);
    return {{static_cast<double>(state.stage.x - view.corner.x) / px,
             view.height_mm - static_cast<double>(state.stage.y + state.stage.height - view.corner.y) / px},
            static_cast<double>(state.stage.width) / px,
            static_cast<double>(state.stage.height) / px,
            view.px_per_mm};
}

std::string partKey(const Part& part) {
    return fmt::format("{} {} {} {} {}", part.lower_left.x, part.lower_left.y, part.width_mm, part.height_mm,
                       part.px_per_mm);
}

/// Pixels of what is in view: the cost is the window's and not the house's.
void upload(State& state, const View& view) {
    PlanPicture& picture = state.plan_picture;
    const Part part = partInView(state, view);
    const std::string key = partKey(part);
    drawing::Sheet sheet;
    sheet.width_mm = picture.base.width_mm;
    sheet.height_mm = picture.base.height_mm;
    if (picture.drawn_base != key) {
        sheet.items.swap(picture.base.items);
        uploadPicture(picture.base_texture,
                      exporting::rasterise(sheet, part.lower_left, part.width_mm, part.height_mm,
                                           static_cast<double>(part.px_per_mm), paperColour(state)));
        sheet.items.swap(picture.base.items);
        picture.drawn_base = key;
    }
    if (picture.drawn_symbols != key) {
        sheet.items.swap(picture.symbols.items);
        uploadPicture(picture.symbols_texture,
                      straight(exporting::rasterise(sheet, part.lower_left, part.width_mm, part.height_mm,
                                                    static_cast<double>(part.px_per_mm), std::nullopt)));
        sheet.items.swap(picture.symbols.items);
        picture.drawn_symbols = key;
    }
}

void panAndZoom(State& state, const View& view, bool over, bool pan) {
    PlanPicture& picture = state.plan_picture;
    const ImGuiIO& io = ImGui::GetIO();
    if (pan) {
        picture.centre_mm.x -= view.mmFor(static_cast<double>(io.MouseDelta.x));
        picture.centre_mm.y += view.mmFor(static_cast<double>(io.MouseDelta.y));
    }
    if (!over || io.MouseWheel == 0) return;
    const plan::Vec2 under = view.toHouse(io.MousePos);
    const float before = picture.px_per_mm;
    picture.px_per_mm = std::clamp(before * std::pow(1.15F, io.MouseWheel), 0.4F, 40.0F);
    // The point under the pointer stays there.
    picture.centre_mm = under + (picture.centre_mm - under) * static_cast<double>(before / picture.px_per_mm);
    state.frames_wanted = std::max(state.frames_wanted, 2);
}

/// A place on the wall nearest to the pointer, at a height.
std::optional<Spot> spotOnPlan(const State& state, plan::Vec2 house_mm, double height_mm) {
    if (!state.derived.house) return std::nullopt;
    const auto hit = geometry::wallAt(*state.derived.house, state.storey, house_mm, kWallReach_mm);
    const auto* room = hit ? plan::findRoom(state.plan(), hit->room) : nullptr;
    if (room == nullptr) return std::nullopt;
    return Spot{room->id, {plan::Host::Kind::Wall, room->walls[hit->wall].id, "", "", hit->u_mm, height_mm}};
}

Projector planProjector(const State& state, const View& view, const std::string& room_id,
                        const plan::Host& host) {
    const auto frame = geometry::hostFrame(state.plan(), room_id, host);
    if (!frame) return [](double, double) { return std::optional<ImVec2>(); };
    // Heights have no place on plan: a line that lies aside in height is drawn a little into the room.
    return [view, frame = *frame, v = host.v_mm](double u_mm, double v_mm) {
        const plan::Vec3 at = geometry::toHouse(frame, {u_mm, v, 0});
        const double into = std::abs(v_mm - v) > 1 && std::abs(frame.v.z) > 0.5 ? 150 : 0;
        return std::optional(view.toScreen({at.x + frame.w.x * into, at.y + frame.w.y * into}));
    };
}

DragKeys keysFor(const View& view) {
    const ImGuiIO& io = ImGui::GetIO();
    return {io.KeyAlt, true, view.mmFor(8)};
}

/// Alt pulls the symbol aside; the plate stays.
bool dragSymbol(State& state, const View& view) {
    const ImGuiIO& io = ImGui::GetIO();
    const plan::Plate* plate = plan::findPlate(state.plan(), state.drag.plate);
    if (plate == nullptr || !io.KeyAlt) return false;
    const auto point = geometry::hostPoint(state.plan(), plate->room, plate->host);
    if (point)
        state.document.run(edit::moveSymbol(state.plan(), plate->id,
                                            view.toHouse(io.MousePos) - plan::Vec2{point->x, point->y}));
    return true;
}

bool dragOnPlan(State& state, const View& view, const sheets::PlanHit* hit, bool on_number) {
    const ImGuiIO& io = ImGui::GetIO();
    const bool plate_hit = hit != nullptr && hit->kind == sheets::PlanThing::Plate;
    if (plate_hit && !on_number && !io.KeyCtrl && !state.placing &&
        ImGui::IsMouseClicked(ImGuiMouseButton_Left)) {
        const plan::Plate* plate = plan::findPlate(state.plan(), hit->id);
        const auto point = plate ? geometry::hostPoint(state.plan(), plate->room, plate->host)
                                 : std::unexpected(std::string());
        if (point) {
            beginDrag(state, plate->id, Spot{plate->room, plate->host}, Place::Plan);
            state.drag.grab_house_mm = plan::Vec2{point->x, point->y} - view.toHouse(io.MousePos);
        }
    }
    if (state.drag.plate.empty() || state.drag.place != Place::Plan) return false;
    if (!ImGui::IsMouseDown(ImGuiMouseButton_Left)) {
        const bool moved = state.drag.moving;
        endDrag(state);
        return moved;
    }
    state.drag.moving = state.drag.moving || ImGui::IsMouseDragging(ImGuiMouseButton_Left, kClickSlack_px);
    if (!state.drag.moving || (io.MouseDelta.x == 0 && io.MouseDelta.y == 0)) return true;
    if (dragSymbol(state, view)) return true;
    const auto spot =
        spotOnPlan(state, view.toHouse(io.MousePos) + state.drag.grab_house_mm, state.drag.start.host.v_mm);
    if (spot) dragTo(state, *spot, keysFor(view));
    return true;
}

void placeOnPlan(State& state, const View& view, bool over, bool still) {
    if (!state.placing || !over) return;
    const ImGuiIO& io = ImGui::GetIO();
    DragKeys keys = keysFor(view);
    keys.keep_height = false;
    hoverPlacing(
        state, spotOnPlan(state, view.toHouse(io.MousePos), usualHeight(state, state.placing->plate)), keys);
    if (!state.placing->spot) return;
    state.placing->spot->host.v_mm = usualHeight(state, state.placing->plate);
    const Spot spot = *state.placing->spot;
    const auto projector = planProjector(state, view, spot.room, spot.host);
    if (const auto at = projector(spot.host.u_mm, spot.host.v_mm)) {
        ImDrawList& list = *ImGui::GetWindowDrawList();
        const auto half = static_cast<float>(plateSize(state, state.placing->plate).x / 2 /
                                             view.mapping->scale * view.px_per_mm);
        list.AddCircleFilled(*at, std::max(5.0F, half), packed(kLight.accent, 0.35F), 24);
        list.AddCircle(*at, std::max(5.0F, half), packed(kLight.accent), 24, 2);
    }
    if (still && ImGui::IsMouseReleased(ImGuiMouseButton_Left)) putDown(state, io.KeyShift);
}

plan::Vec2 middleOf(const std::vector<plan::Vec2>& outline) {
    plan::Vec2 middle;
    for (const plan::Vec2 corner : outline)
        middle = middle + corner * (1.0 / static_cast<double>(outline.size()));
    return middle;
}

/// A box drawn with Ctrl chooses the plates in it.
bool boxOnPlan(State& state, const View& view, bool active) {
    const ImGuiIO& io = ImGui::GetIO();
    if (active && io.KeyCtrl && !state.box && ImGui::IsMouseDragging(ImGuiMouseButton_Left, kClickSlack_px))
        state.box = Rect{io.MouseClickedPos[0].x, io.MouseClickedPos[0].y, 0, 0};
    if (!state.box) return false;
    const Rect box{std::min(state.box->x, io.MousePos.x), std::min(state.box->y, io.MousePos.y),
                   std::abs(io.MousePos.x - state.box->x), std::abs(io.MousePos.y - state.box->y)};
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled({box.x, box.y}, {box.x + box.width, box.y + box.height}, packed(kLight.accent, 0.12F));
    list.AddRect({box.x, box.y}, {box.x + box.width, box.y + box.height}, packed(kLight.accent));
    if (ImGui::IsMouseDown(ImGuiMouseButton_Left)) return true;
    if (tying(state)) {
        std::vector<std::string> lamps;
        for (const auto& hit : state.plan_picture.symbols.hits) {
            if (hit.kind != sheets::PlanThing::Luminaire || hit.outline_mm.empty()) continue;
            const ImVec2 at = view.toScreen(middleOf(hit.outline_mm));
            if (box.holds(at.x, at.y) && std::ranges::find(lamps, hit.id) == lamps.end())
                lamps.push_back(hit.id);
        }
        state.box.reset();
        takeLamps(state, lamps);
        return true;
    }
    choosePlate(state, {}, false);
    // By the drawn symbol, which may stand off the wall: the box goes round what is seen.
    for (const auto& hit : state.plan_picture.symbols.hits) {
        if (hit.kind != sheets::PlanThing::Plate || hit.outline_mm.empty()) continue;
        const ImVec2 at = view.toScreen(middleOf(hit.outline_mm));
        const auto chosen = chosenPlates(state);
        if (box.holds(at.x, at.y) && std::ranges::find(chosen, hit.id) == chosen.end())
            choosePlate(state, hit.id, true);
    }
    state.box.reset();
    return true;
}

/// New furniture, openings and lamps under the pointer; true when the click was for them.
bool placeThing(State& state, const View& view, bool over, bool still) {
    if (!state.thing_placing) return false;
    const ImGuiIO& io = ImGui::GetIO();
    if (over) hoverThing(state, state.storey, view.toHouse(io.MousePos), io.KeyAlt);
    drawThing(state, *ImGui::GetWindowDrawList(), [&view](plan::Vec2 at) { return view.toScreen(at); });
    if (over && still && ImGui::IsMouseReleased(ImGuiMouseButton_Left)) putThingDown(state, io.KeyShift);
    return true;
}

/// What is chosen beside plates is dragged by itself; anything else moves the paper.
bool dragChosenThing(State& state, const View& view, const sheets::PlanHit* hit, bool over) {
    const ImGuiIO& io = ImGui::GetIO();
    const plan::Vec2 at = view.toHouse(io.MousePos);
    const ThingDragKeys keys{io.KeyAlt, view.mmFor(10)};
    if (state.furnish.drag) {
        const bool down = ImGui::IsMouseDown(ImGuiMouseButton_Left);
        const bool moved = state.furnish.drag->moved;
        dragThing(state, state.storey, at, down ? DragPhase::Move : DragPhase::End, keys);
        return down || moved;
    }
    if (!over || !state.thing || hit == nullptr || !ImGui::IsMouseClicked(ImGuiMouseButton_Left))
        return false;
    const bool itself = hit->kind == state.thing->kind && hit->id == state.thing->id;
    const bool corner =
        state.thing->kind == sheets::PlanThing::Room || state.thing->kind == sheets::PlanThing::Wall;
    if (!itself && !corner) return false;
    // A room is taken hold of only at a corner: dragging its floor moves the paper.
    return dragThing(state, state.storey, at, DragPhase::Begin, keys);
}

/// What was clicked where the card comes to lie is moved out from under it.
void clearOfCard(State& state, const View& view) {
    const float edge =
        state.stage.x + state.stage.width - (kCardWidth + 56) * state.scale - ImGui::GetIO().MousePos.x;
    if (edge < 0) state.plan_picture.centre_mm.x -= view.mmFor(static_cast<double>(edge));
}

void clickOnPlan(State& state, const sheets::PlanHit* hit) {
    if (hit == nullptr) {
        choosePlate(state, {}, false);
        return;
    }
    if (!hit->room.empty()) state.room = hit->room;
    if (hit->kind == sheets::PlanThing::Room) state.room = hit->id;
    if (hit->kind == sheets::PlanThing::Plate) {
        choosePlate(state, hit->id, ImGui::GetIO().KeyCtrl);
        return;
    }
    choosePlate(state, {}, false);
    chooseThing(state,
                {hit->kind, hit->id, hit->kind == sheets::PlanThing::Wall ? hit->room : std::string()});
}

const sheets::PlanHit* hitUnder(const State& state, plan::Vec2 house_mm) {
    const auto* symbol = sheets::hitAt(state.plan_picture.symbols.hits, house_mm);
    return symbol != nullptr ? symbol : sheets::hitAt(state.plan_picture.base.hits, house_mm);
}

void rememberPlaces(State& state, const View& view) {
    for (const auto* hits : {&state.plan_picture.base.hits, &state.plan_picture.symbols.hits})
        for (const auto& hit : *hits) {
            const ImVec2 at = view.toScreen(middleOf(hit.outline_mm));
            const char* kind = hit.kind == sheets::PlanThing::Plate       ? "plan:plate:"
                               : hit.kind == sheets::PlanThing::Furniture ? "plan:furniture:"
                               : hit.kind == sheets::PlanThing::Opening   ? "plan:opening:"
                               : hit.kind == sheets::PlanThing::Luminaire ? "plan:luminaire:"
                               : hit.kind == sheets::PlanThing::Wall      ? "plan:wall:"
                                                                          : "plan:room:";
            const std::string name =
                kind + (hit.kind == sheets::PlanThing::Wall ? hit.room + ":" : std::string()) + hit.id;
            state.places.try_emplace(name, Rect{at.x, at.y, 0, 0});
        }
}
} // namespace

void drawPlanView(State& state) {
    refresh(state);
    centrePlanOnFinding(state);
    const View view = viewFor(state);
    upload(state, view);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 low{state.stage.x, state.stage.y};
    const ImVec2 high{low.x + state.stage.width, low.y + state.stage.height};
    const auto paper = paperColour(state);
    list.AddRectFilled(low, high, IM_COL32(paper.r, paper.g, paper.b, 255));
    list.PushClipRect(low, high, true);
    for (const unsigned texture : {state.plan_picture.base_texture, state.plan_picture.symbols_texture})
        if (texture != 0)
            list.AddImage(reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(texture)), low, high);
    ImGui::SetItemAllowOverlap();
    ImGui::InvisibleButton("plan-mouse", {state.stage.width, state.stage.height},
                           ImGuiButtonFlags_MouseButtonLeft | ImGuiButtonFlags_MouseButtonRight |
                               ImGuiButtonFlags_MouseButtonMiddle);
    ImGui::SetItemAllowOverlap();
    const bool over = ImGui::IsItemHovered();
    const bool active = ImGui::IsItemActive();
    const ImGuiIO& io = ImGui::GetIO();
    const bool still =
        std::hypot(ImGui::GetMouseDragDelta(0, 0).x, ImGui::GetMouseDragDelta(0, 0).y) < kClickSlack_px;
    const sheets::PlanHit* hit = over ? hitUnder(state, view.toHouse(io.MousePos)) : nullptr;
    state.hovered = hit != nullptr && hit->kind == sheets::PlanThing::Plate ? hit->id : std::string();
    rememberPlaces(state, view);
    const auto to_screen = [&view](plan::Vec2 at) { return view.toScreen(at); };
    drawPlanOverlays(state, to_screen);
    const bool on_badge = findingsOnPlan(state, to_screen, over);
    if (on_badge) hit = nullptr;
    bool on_number = false;
    if (const plan::Plate* plate = plan::findPlate(state.plan(), state.selected)) {
        const auto* room = plan::findRoom(state.plan(), plate->room);
        if (room != nullptr && room->storey == state.storey)
            on_number = drawMeasures(state, *plate, planProjector(state, view, plate->room, plate->host),
                                     Place::Plan);
    }
    const bool thing_placed = placeThing(state, view, over, still);
    const bool dragged = thing_placed || dragOnPlan(state, view, hit, on_number) ||
                         dragChosenThing(state, view, hit, over) || boxOnPlan(state, view, active);
    const bool clicked = over && still && ImGui::IsMouseReleased(ImGuiMouseButton_Left);
    const bool placing = state.placing.has_value();
    placeOnPlan(state, view, over, still);
    if (clicked && !dragged && !on_number && !on_badge && !placing && !state.typing) {
        clickOnPlan(state, hit);
        if (hit != nullptr) clearOfCard(state, view);
    }
    const bool pan = active && !dragged && state.drag.plate.empty() && !io.KeyCtrl &&
                     (ImGui::IsMouseDragging(ImGuiMouseButton_Left, kClickSlack_px) ||
                      ImGui::IsMouseDragging(ImGuiMouseButton_Right, kClickSlack_px) ||
                      ImGui::IsMouseDragging(ImGuiMouseButton_Middle, kClickSlack_px));
    panAndZoom(state, view, over, pan);
    list.PopClipRect();
    storeyTabs(state);
}

} // namespace gangway::app
