// Beds and bunk beds.
#include "geometry/furniture_maker.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gangway::geometry {
namespace {

using Surface = Maker::Surface;

constexpr double kWidePillowMm = 1200; // wider beds get two pillows

/// Mattress, cover and pillows; the head is at the back.
void addBedding(Maker& m, const std::string& label, Block mattress, int pillows, const std::string& cover) {
    m.pad(label + "mattress", tone::kLinen, mattress, 40);
    const double width = mattress.high.x - mattress.low.x;
    const double length = mattress.high.y - mattress.low.y;
    const double top = mattress.high.z;
    m.pad(label + "cover", cover,
          {{mattress.low.x - 8, mattress.low.y - 8, top - 130},
           {mattress.high.x + 8, mattress.high.y - length * 0.3, top + 22}},
          30);
    m.pad(label + "cover turned back", tone::kLinen,
          {{mattress.low.x - 6, mattress.high.y - length * 0.37, top - 90},
           {mattress.high.x + 6, mattress.high.y - length * 0.27, top + 34}},
          30);
    const double each = width / std::max(pillows, 1);
    for (int i = 0; i < pillows; ++i) {
        const double left = mattress.low.x + each * i + 40;
        m.pad(fmt::format("{}pillow {}", label, i + 1), "#FBF9F4",
              {{left, mattress.high.y - 440, top - 10}, {left + each - 80, mattress.high.y - 40, top + 105}},
              55);
    }
}

/// Two side rails and two ends round a mattress, open beneath.
void addRails(Maker& m, const std::string& label, Block outer, double thick, const std::string& colour) {
    const Vec3 l = outer.low;
    const Vec3 h = outer.high;
    m.board(label + "rail left", colour, Surface::Wood, {l, {l.x + thick, h.y, h.z}}, 4);
    m.board(label + "rail right", colour, Surface::Wood, {{h.x - thick, l.y, l.z}, h}, 4);
    m.board(label + "rail foot", colour, Surface::Wood,
            {{l.x + thick, l.y, l.z}, {h.x - thick, l.y + thick, h.z}}, 4);
    m.board(label + "rail head", colour, Surface::Wood,
            {{l.x + thick, h.y - thick, l.z}, {h.x - thick, h.y, h.z}}, 4);
    m.board(label + "slats", tone::kOak, Surface::Wood,
            {{l.x + thick, l.y + thick, h.z - 90}, {h.x - thick, h.y - thick, h.z - 70}}, 1);
}

void bed(Maker& m) {
    const std::string wood = m.main(tone::kOak);
    const double headboard = m.value("headboardHeight");
    const double head_depth = headboard > 0 ? m.value("headboardDepth") : 0;
    const double head_width = m.value("headboardWidth") > 0 ? m.value("headboardWidth") : m.width();
    const double top = m.value("mattressTop") > 0 ? m.value("mattressTop") : m.height();
    const double bottom = std::max(top - m.value("mattressHeight"), 60.0);
    const double frame = std::min(m.value("frameWidth"), m.width() / 4);
    const double back = m.back() - head_depth;
    const double rail_top = std::min(bottom + 70, top - 20);
    const double rail_bottom = std::max(rail_top - 180, 40.0);
    const double thick = std::max(frame, 18.0);
    addRails(m, "", {{m.left(), m.front(), rail_bottom}, {m.right(), back, rail_top}}, thick, wood);
    addLegs(m, {{m.left() + 10, m.front() + 10, 0}, {m.right() - 10, back - 10, rail_bottom}}, 60, wood,
            Surface::Wood);
    const int given = m.count("pillows");
    const double width = m.width() - 2 * frame;
    addBedding(m, "", {{m.left() + frame, m.front() + frame, bottom}, {m.right() - frame, back, top}},
               given > 0 ? given : (width > kWidePillowMm ? 2 : 1), tone::kFabricDark);
    if (head_depth > 0) // upright padding in front of a board
        m.pad("headboard", m.main("#B7A48C"),
              {{-head_width / 2, back, 0}, {head_width / 2, m.back(), headboard}},
              std::min(18.0, head_depth * 0.3));
}

void addLadder(Maker& m, double side, double y, double top, const std::string& colour) {
    const double x = side * (m.width() / 2 - 20);
    for (const double end : {-200.0, 200.0})
        m.board("ladder post", colour, Surface::Wood,
                {{x - 20, y + end - 18, 0}, {x + 20, y + end + 18, top}}, 4);
    for (double z = 250; z < top - 150; z += 270)
        m.board("ladder rung", colour, Surface::Wood, {{x - 16, y - 182, z}, {x + 16, y + 182, z + 32}}, 6);
}

void bunkBed(Maker& m) {
    const std::string wood = m.main(tone::kOak);
    const double post = 70;
    constexpr double kRailMm = 25;
    const double thick = m.value("mattressHeight");
    constexpr const char* kNames[] = {"post front left", "post front right", "post back left",
                                      "post back right"};
    for (int i = 0; i < 4; ++i) {
        const double x = i % 2 == 0 ? m.left() : m.right() - post;
        const double y = i < 2 ? m.front() : m.back() - post;
        m.board(kNames[i], wood, Surface::Wood, {{x, y, 0}, {x + post, y + post, m.height()}}, 6);
    }
    constexpr const char* kCovers[] = {tone::kFabricDark, "#9AA88C"};
    int level = 0;
    for (const char* key : {"lowerTop", "upperTop"}) {
        const double top = std::min(m.value(key), m.height() - 60);
        const std::string label = level == 0 ? "lower " : "upper ";
        const double rail_top = top - thick + 70;
        addRails(m, label,
                 {{m.left() + 15, m.front() + 15, rail_top - 150}, {m.right() - 15, m.back() - 15, rail_top}},
                 kRailMm, wood);
        addBedding(m, label,
                   {{m.left() + 42, m.front() + 42, top - thick}, {m.right() - 42, m.back() - 42, top}}, 1,
                   kCovers[level]);
        ++level;
    }
    // Guard rails round the upper bunk; on the open side they leave a gap for the ladder.
    const double open = m.flag("openSide") ? 1 : -1;
    const int ladder = m.count("ladder");
    const double guard = m.height() - 20;
    const double ladder_y = ladder == 2 ? m.back() - 320 : m.front() + 320;
    for (const double z : {guard - 160, guard - 60}) {
        const double closed_x = -open * (m.width() / 2 - 27);
        m.board("guard rail", wood, Surface::Wood,
                {{closed_x - 12, m.front() + post, z}, {closed_x + 12, m.back() - post, z + 60}}, 4);
        const double open_x = open * (m.width() / 2 - 27);
        const double from = ladder == 1 ? ladder_y + 240 : m.front() + post;
        const double to = ladder == 2 ? ladder_y - 240 : m.back() - post;
        m.board("guard rail", wood, Surface::Wood, {{open_x - 12, from, z}, {open_x + 12, to, z + 60}}, 4);
        for (const double y : {m.front() + 27, m.back() - 27})
            m.board("end rail", wood, Surface::Wood,
                    {{m.left() + post, y - 12, z}, {m.right() - post, y + 12, z + 60}}, 4);
    }
    if (ladder > 0) addLadder(m, open, ladder_y, m.height() - 30, wood);
}

constexpr KindEntry kTable[] = {{"bed", bed}, {"bunk-bed", bunkBed}};

} // namespace

MakeKind bedKind(std::string_view kind) {
    return findKind(kTable, kind);
}

} // namespace gangway::geometry
