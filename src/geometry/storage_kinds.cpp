// Wardrobes, chests, shelves and cabinets.
#include "geometry/furniture_maker.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gangway::geometry {
namespace {

using Surface = Maker::Surface;

/// The piece's block with its front edge moved back behind doors and handles.
Block behindFronts(const Maker& maker, double bottom, double top) {
    return {{maker.left(), maker.front() + kFrontDepthMm, bottom}, {maker.right(), maker.back(), top}};
}

/// The room inside a case of boards.
Block inside(Block block) {
    return {{block.low.x + kBoardMm, block.low.y + 10, block.low.z + kBoardMm},
            {block.high.x - kBoardMm, block.high.y - kBoardMm / 2, block.high.z - kBoardMm}};
}

/// Doors that run one behind the other on two tracks, overlapping a little.
void addSlidingDoors(Maker& maker, Block block, int doors, const std::string& colour) {
    const double lap = 40;
    const double width = (block.high.x - block.low.x + lap * (doors - 1)) / doors;
    for (int i = 0; i < doors; ++i) {
        const double left = block.low.x + (width - lap) * i;
        const double face = block.low.y - kDoorMm - (i % 2 == 0 ? kDoorMm + 2 : 0);
        const std::string name = fmt::format("door {}", i + 1);
        maker.board(name, colour, Surface::Matt,
                    {{left, face, block.low.z + 5}, {left + width, face + kDoorMm, block.high.z - 5}});
        for (const double x : {left, left + width - 22})
            maker.board(name + " edge", tone::kSteel, Surface::Metal,
                        {{x, face - 1.5, block.low.z + 5}, {x + 22, face, block.high.z - 5}}, 0.5);
    }
}

void wardrobe(Maker& m) {
    const std::string colour = m.main(tone::kWhite);
    const double plinth = m.value("plinthHeight");
    const Block body = behindFronts(m, plinth, m.height());
    addPlinth(m, {{m.left(), m.front() + kFrontDepthMm + 10, 0}, {m.right(), m.back(), plinth}},
              tone::kPanel);
    addCase(m, body, colour);
    const int doors = m.count("doors");
    const Block inner = inside(body);
    const int bays = std::max(1, doors / 2);
    for (int i = 1; i < bays; ++i) {
        const double x = inner.low.x + (inner.high.x - inner.low.x) * i / bays;
        m.board(
            fmt::format("partition {}", i), colour, Surface::Matt,
            {{x - kBoardMm / 2, inner.low.y, inner.low.z}, {x + kBoardMm / 2, inner.high.y, inner.high.z}},
            1);
    }
    const double rail = inner.high.z - 280;
    m.board("hat shelf", colour, Surface::Matt,
            {{inner.low.x, inner.low.y, rail + 60}, {inner.high.x, inner.high.y, rail + 78}}, 1);
    const double middle = (inner.low.y + inner.high.y) / 2;
    m.rod("clothes rail", tone::kSteel, Surface::Metal, {inner.low.x, middle, rail},
          {inner.high.x, middle, rail}, 12);
    const Block fronts{{body.low.x, body.low.y, plinth}, {body.high.x, body.low.y, m.height()}};
    if (doors == 0) return;
    if (m.flag("sliding"))
        addSlidingDoors(m, fronts, std::max(doors, 2), colour);
    else
        addDoors(m, fronts, doors, colour);
}

void chest(Maker& m) {
    const std::string colour = m.main(tone::kOak);
    const double legs = m.value("legHeight");
    const Block body = behindFronts(m, legs, m.height() - 22);
    addLegs(m, {{m.left() + 20, m.front() + kFrontDepthMm + 10, 0}, {m.right() - 20, m.back() - 20, legs}},
            36, colour, Surface::Wood);
    m.board("top", colour, Surface::Wood,
            {{m.left(), m.front() + 10, m.height() - 22}, {m.right(), m.back(), m.height()}}, 3);
    addCase(m, body, colour);
    const int drawers = m.count("drawers");
    if (drawers > 0)
        addDrawers(m, {{body.low.x, body.low.y, legs}, {body.high.x, body.high.y, m.height() - 24}}, drawers,
                   colour, body.high.y - body.low.y - 40);
}

void shoeCabinet(Maker& m) {
    const std::string colour = m.main(tone::kWhite);
    const double plinth = m.value("plinthHeight");
    const Block body = behindFronts(m, plinth, m.height() - 20);
    addPlinth(m, {{m.left() + 10, body.low.y + 10, 0}, {m.right() - 10, m.back(), plinth}}, tone::kPanel);
    addCase(m, body, colour);
    m.board("top", m.main(tone::kOak), Surface::Wood,
            {{m.left(), m.front() + 10, m.height() - 20}, {m.right(), m.back(), m.height()}}, 3);
    addDrawers(m, {{body.low.x, body.low.y, plinth}, {body.high.x, body.high.y, m.height() - 22}},
               m.count("flaps"), colour, 0);
}

/// A row of books of unlike sizes on one shelf, always the same ones, with some of the shelf left free.
void addBooks(Maker& m, int bay, int row, double left, double right, double shelf, double clear) {
    constexpr const char* kSpines[] = {"#8C5A48", "#4F6470", "#B9A98C", "#6E7B62",
                                       "#D8D0C0", "#7C6A78", "#A88B5C"};
    constexpr int kMostBooks = 40;
    auto number = static_cast<unsigned>(bay * 31 + row * 17 + 7);
    const double row_end = left + (right - left) * (0.45 + 0.08 * (number % 6));
    double x = left + 6;
    for (int book = 0; x < row_end && book < kMostBooks; ++book) {
        number = number * 1103515245U + 12345U; // a plain linear congruential step: variety, not chance
        const double thick = 18 + (number >> 16) % 26;
        const double tall = std::min(clear - 25, 190.0 + (number >> 20) % 70);
        if (x + thick > right || tall < 40) break;
        const double front = m.front() + 20 + (number >> 22) % 25;
        m.board(fmt::format("book {}.{}.{}", bay + 1, row + 1, book + 1), kSpines[(number >> 18) % 7],
                Surface::Matt,
                {{x, front, shelf}, {x + thick - 1, std::min(m.front() + 210, m.back() - 8), shelf + tall}},
                1);
        x += thick;
    }
}

void bookcase(Maker& m) {
    const std::string colour = m.main(tone::kOak);
    const double t = kBoardMm + 4;
    const int bays = std::max(1, m.count("columns"));
    const int shelves = m.count("shelves");
    const double foot = 60;
    for (int i = 0; i <= bays; ++i) {
        const double x = m.left() + (m.width() - t) * i / bays;
        m.board(fmt::format("upright {}", i + 1), colour, Surface::Wood,
                {{x, m.front(), 0}, {x + t, m.back(), m.height()}});
    }
    if (m.flag("back"))
        m.board("back", colour, Surface::Wood,
                {{m.left() + t, m.back() - 6, foot}, {m.right() - t, m.back(), m.height()}}, 0.5);
    m.board("foot", colour, Surface::Wood,
            {{m.left() + t, m.front() + 20, 0}, {m.right() - t, m.front() + 38, foot}}, 1);
    const double pitch = (m.height() - foot - t) / (shelves + 1);
    for (int bay = 0; bay < bays; ++bay) {
        const double left = m.left() + (m.width() - t) * bay / bays + t;
        const double right = m.left() + (m.width() - t) * (bay + 1) / bays;
        for (int i = 0; i <= shelves + 1; ++i) {
            const double z = foot + pitch * i;
            m.board(fmt::format("shelf {}.{}", bay + 1, i), colour, Surface::Wood,
                    {{left, m.front() + 4, z}, {right, m.back() - 6, z + t}}, 1);
        }
        for (int i = 0; m.flag("books") && i <= shelves; ++i)
            addBooks(m, bay, i, left, right, foot + pitch * i + t, pitch - t);
    }
}

void shelf(Maker& m) {
    const std::string colour = m.main(tone::kOak);
    const double t = std::min(m.value("thickness"), m.height());
    const int boards = std::max(1, m.count("boards"));
    const bool sides = m.flag("sides");
    const double inset = sides ? t : 0;
    for (int i = 0; i < boards; ++i) {
        const double z = boards == 1 ? (sides ? 0 : m.height() - t) : (m.height() - t) * i / (boards - 1);
        m.board(fmt::format("board {}", i + 1), colour, Surface::Wood,
                {{m.left() + inset, m.front(), z}, {m.right() - inset, m.back(), z + t}});
    }
    if (!sides) return;
    m.board("side left", colour, Surface::Wood,
            {{m.left(), m.front(), 0}, {m.left() + t, m.back(), m.height()}});
    m.board("side right", colour, Surface::Wood,
            {{m.right() - t, m.front(), 0}, {m.right(), m.back(), m.height()}});
    if (boards == 1) // a box has a top as well
        m.board("top", colour, Surface::Wood,
                {{m.left() + t, m.front(), m.height() - t}, {m.right() - t, m.back(), m.height()}});
}

void mirrorCabinet(Maker& m) {
    const Block body{{m.left(), m.front() + kDoorMm, 0}, {m.right(), m.back(), m.height()}};
    addCase(m, body, m.main(tone::kWhite));
    const Block inner = inside(body);
    for (int i = 1; i <= 2; ++i) {
        const double z = inner.low.z + (inner.high.z - inner.low.z) * i / 3;
        m.board(fmt::format("glass shelf {}", i), tone::kGlass, Surface::Glass,
                {{inner.low.x, inner.low.y, z - 4}, {inner.high.x, inner.high.y, z + 4}}, 1);
    }
    const int doors = std::max(1, m.count("doors"));
    const double width = m.width() / doors;
    for (int i = 0; i < doors; ++i) {
        const double left = m.left() + width * i + 1.5;
        m.board(fmt::format("mirror door {}", i + 1), "#DDE3E4", Surface::Mirror,
                {{left, m.front(), 1}, {left + width - 3, m.front() + kDoorMm, m.height() - 1}}, 3);
    }
}

void tvStand(Maker& m) {
    const std::string colour = m.main(tone::kOak);
    const double top = std::min(m.value("cabinetHeight"), m.height());
    if (top > 100) {
        addLegs(m, {{m.left() + 40, m.front() + 60, 0}, {m.right() - 40, m.back() - 40, 120}}, 36,
                tone::kDarkOak, Surface::Wood);
        const Block body = behindFronts(m, 120, top);
        addCase(m, body, colour);
        addDoors(m, {{body.low.x, body.low.y, 120}, {body.high.x, body.low.y, top}}, 3, colour,
                 Handles::None);
    }
    const double width = std::min(m.value("screenWidth"), m.width());
    if (width <= 0) return;
    const double tall = std::min(m.value("screenHeight"), std::max(m.height() - top - 60, 200.0));
    const double y = m.back() - m.depth() * 0.4;
    m.board("screen foot", tone::kBlack, Surface::Metal,
            {{-width * 0.2, y - 90, top}, {width * 0.2, y + 90, top + 10}}, 3);
    m.board("screen neck", tone::kBlack, Surface::Metal, {{-45, y + 2, top + 10}, {45, y + 22, top + 130}},
            2);
    m.board("screen back", tone::kBlack, Surface::Matt,
            {{-width / 2, y - 18, top + 60}, {width / 2, y + 18, top + 60 + tall}}, 4);
    m.board("screen", "#17191B", Surface::Screen,
            {{-width / 2 + 8, y - 20, top + 72}, {width / 2 - 8, y - 17, top + 52 + tall}}, 0.5);
}

constexpr KindEntry kTable[] = {
    {"wardrobe", wardrobe},
    {"chest", chest},
    {"bedside-table", chest},
    {"shoe-cabinet", shoeCabinet},
    {"bookcase", bookcase},
    {"shelf", shelf},
    {"mirror-cabinet", mirrorCabinet},
    {"tv-stand", tvStand},
};

} // namespace

MakeKind storageKind(std::string_view kind) {
    return findKind(kTable, kind);
}

} // namespace gangway::geometry
