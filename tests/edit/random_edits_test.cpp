#include "edit/clipboard.hpp"
#include "edit/furniture_edits.hpp"
#include "edit/head_edits.hpp"
#include "edit/luminaire_edits.hpp"
#include "edit/opening_edits.hpp"
#include "edit/plate_edits.hpp"
#include "plan/furniture_kinds.hpp"
#include "small_rooms.hpp"

#include <array>
#include <functional>
#include <random>

using namespace gangway;
using edit::Refusable;

namespace {

/// Random edits of a plan, most of them sensible, some of them out of bounds.
class Editor {
public:
    explicit Editor(std::uint32_t seed) : random_(seed) {}

    static constexpr std::size_t kKinds = 30;
    Refusable edit(const plan::Plan& plan, std::size_t kind) {
        const plan::Room& room = pick(plan.rooms);
        const std::size_t wall = below(room.walls.size());
        switch (kind) {
        case 0:
            return edit::setWallLength(plan, room.id, wall, between(300, 7000), end());
        case 1:
            return edit::moveWall(plan, room.id, wall, between(-300, 300), beyond());
        case 2:
            return edit::moveCorner(plan, room.id, wall, room.outline[wall % room.outline.size()] + way(400));
        case 3:
            return edit::moveCorner(plan, room.id, wall, room.outline[wall % room.outline.size()] + way(200),
                                    edit::Angles::Free);
        case 4:
            return edit::splitWall(plan, room.id, wall, between(100, 4000));
        case 5:
            return edit::removeCorner(plan, room.id, wall);
        case 6:
            return edit::setCeilingHeight(plan, room.id, between(1800, 3200));
        case 7:
            return edit::setWallThickness(plan, room.id, wall, between(-20, 400));
        case 8:
            return edit::renameRoom(plan, room.id, room.name + "x");
        case 9:
            return addRoom(plan);
        case 10:
            return below(12) == 0 ? edit::removeRooms(plan, {room.id})
                                  : Refusable(std::unexpected("too many rooms would go"));
        case 11:
            return renameWall(plan, room, wall);
        case 12:
            return addOpening(plan, room, wall);
        case 13:
            return edit::moveOpening(plan, pick(plan.openings).id, between(-500, 6000));
        case 14:
            return resizeOpening(plan);
        case 15:
            return edit::changeOpeningKind(plan, pick(plan.openings).id, openingKind());
        case 16:
            return edit::removeOpenings(plan, {pick(plan.openings).id});
        case 17:
            return addPiece(plan);
        case 18:
            return movePiece(plan);
        case 19:
            return resizePiece(plan);
        case 20:
            return edit::removeFurniture(plan, {pick(plan.furniture).id});
        case 21:
            return edit::duplicateFurniture(plan, {pick(plan.furniture).id}, way(1000));
        case 22:
            return edit::gridLuminaires(plan, {room.id, 1 + int(below(3)), 1 + int(below(3)), lamp(), {}});
        case 23:
            return moveLamp(plan);
        case 24:
            return edit::removeLuminaires(plan, {pick(plan.luminaires).id});
        case 25:
            return edit::duplicate(
                plan, {{pick(plan.plates).id}, {pick(plan.furniture).id}, {pick(plan.luminaires).id}},
                way(300));
        case 26:
            return edit::setUnits(static_cast<plan::DisplayUnits>(below(4)));
        case 27:
            return movePlate(plan);
        case 28:
            return edit::removePlates(plan, {pick(plan.plates).id});
        default:
            return value(plan);
        }
    }
    std::size_t below(std::size_t count) {
        return std::uniform_int_distribution<std::size_t>(0, count - 1)(random_);
    }

private:
    double between(double low, double high) {
        return std::round(std::uniform_real_distribution<>(low, high)(random_) * 10) / 10;
    }
    plan::Vec2 way(double most) { return {between(-most, most), between(-most, most)}; }
    edit::End end() { return below(2) == 0 ? edit::End::Left : edit::End::Right; }
    edit::Beyond beyond() { return below(2) == 0 ? edit::Beyond::Stays : edit::Beyond::Together; }
    plan::Opening::Kind openingKind() { return static_cast<plan::Opening::Kind>(below(7)); }
    template <class T>
    const T& pick(const std::vector<T>& list) {
        static const T none{};
        return list.empty() ? none : list[below(list.size())];
    }
    plan::Luminaire lamp() {
        plan::Luminaire made;
        made.host.kind = below(4) == 0 ? plan::Host::Kind::Floor : plan::Host::Kind::Ceiling;
        return made;
    }
    Refusable addRoom(const plan::Plan& plan) {
        constexpr std::size_t kEnough = 20; // the demo house has 13, and it is the one to be edited
        if (plan.rooms.size() > kEnough) return std::unexpected("there are enough rooms");
        plan::Room room;
        room.name = "Extra";
        const plan::Vec2 at = way(20000);
        room.outline = edit::rectangleOutline(at, at + plan::Vec2{between(10, 5000), between(-4000, 4000)});
        return edit::addRoom(plan, room);
    }
    Refusable renameWall(const plan::Plan& plan, const plan::Room& room, std::size_t wall) {
        plan::Wall changed = room.walls[wall];
        changed.id += "'";
        return edit::changeWall(plan, room.id, wall, changed, "Rename wall");
    }
    Refusable addOpening(const plan::Plan& plan, const plan::Room& room, std::size_t wall) {
        plan::Opening opening = edit::usualOpening(openingKind());
        opening.room = room.id;
        opening.wall = room.walls[wall].id;
        opening.left_mm = between(0, 5000);
        return edit::addOpening(plan, opening);
    }
    Refusable resizeOpening(const plan::Plan& plan) {
        const plan::Opening& opening = pick(plan.openings);
        return edit::resizeOpening(plan, opening.id,
                                   {opening.left_mm + between(-50, 50), opening.width_mm + between(-200, 200),
                                    opening.sill_mm, opening.height_mm + between(-200, 200)});
    }
    Refusable addPiece(const plan::Plan& plan) {
        const auto& kinds = plan::furnitureKinds();
        plan::Furniture piece = *edit::usualPiece(std::string(kinds[below(kinds.size())].key));
        piece.at_mm = pick(plan.furniture).at_mm + way(800);
        return edit::addFurniture(plan, piece, pick(plan.storeys).id);
    }
    Refusable movePiece(const plan::Plan& plan) {
        const plan::Furniture& piece = pick(plan.furniture);
        edit::Stand stand{piece.at_mm + way(1500), between(-720, 720)};
        if (const auto snapped = edit::snapToWall(plan, piece)) stand = *snapped;
        return edit::moveFurniture(plan, piece.id, stand);
    }
    Refusable resizePiece(const plan::Plan& plan) {
        const plan::Furniture& piece = pick(plan.furniture);
        return edit::resizeFurniture(plan, piece.id,
                                     {piece.size.width_mm + between(-300, 300),
                                      piece.size.depth_mm + between(-100, 100),
                                      piece.size.height_mm + between(-100, 100)});
    }
    Refusable moveLamp(const plan::Plan& plan) {
        const plan::Luminaire& luminaire = pick(plan.luminaires);
        plan::Host host = luminaire.host;
        host.u_mm += between(-500, 500);
        host.v_mm += between(-500, 500);
        return edit::moveLuminaires(plan, {{luminaire.id, host, ""}});
    }
    Refusable movePlate(const plan::Plan& plan) {
        const plan::Plate& plate = pick(plan.plates);
        if (plate.host.kind != plan::Host::Kind::Wall) return std::unexpected("not on a wall");
        return edit::movePlate(plan, plate.id, between(-200, 7000), between(-200, 3000));
    }
    Refusable value(const plan::Plan& plan) {
        const plan::Furniture& piece = pick(plan.furniture);
        const plan::FurnitureKind* kind = plan::findFurnitureKind(piece.kind);
        if (kind == nullptr || kind->values.empty()) return std::unexpected("takes no values");
        const plan::FurnitureValue& known = kind->values[below(kind->values.size())];
        return edit::setFurnitureValue(plan, piece.id, std::string(known.key), between(known.min, known.max));
    }

    std::mt19937 random_;
};

std::string textOf(const plan::Plan& plan) {
    return plan::write(plan);
}

} // namespace

TEST_CASE("after thousands of random edits the plan can be read, and undoing all gives the same bytes") {
    const auto demo = plan::readFile(GANGWAY_ASSETS_DIR "/demo/terrace.plan.json");
    REQUIRE(demo);
    edit::Document document(demo->plan);
    const std::string before = textOf(document.plan());
    const auto seed = GENERATE(1U, 20260301U);
    Editor editor(seed);
    std::array<int, Editor::kKinds> done{};
    std::array<std::string, Editor::kKinds> refused{};
    int total = 0;
    for (int attempt = 0; total < 2000 && attempt < 20000; ++attempt) {
        const std::size_t kind = editor.below(Editor::kKinds);
        const auto command = editor.edit(document.plan(), kind);
        if (!command) {
            CHECK_FALSE(command.error().empty());
            refused[kind] = command.error();
            continue;
        }
        document.run(*command);
        ++done[kind];
        if (++total % 50 != 0) continue;
        const auto read = plan::read(textOf(document.plan()));
        if (!read)
            FAIL("seed " << seed << ", after " << total << ", last " << document.undoName() << ": "
                         << plan::toLine("plan", read.error().front()));
    }
    CHECK(total == 2000);
    for (std::size_t kind = 0; kind < done.size(); ++kind) {
        CAPTURE(kind, refused[kind]);
        CHECK(done[kind] > 0);
    }
    const std::string after = textOf(document.plan());
    while (document.canUndo())
        document.undo();
    CHECK(textOf(document.plan()) == before);
    while (document.canRedo())
        document.redo();
    CHECK(textOf(document.plan()) == after);
}
