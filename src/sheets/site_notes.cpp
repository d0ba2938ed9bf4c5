#include "sheets/site_notes.hpp"

#include "drawing/dimensions.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gangway::sheets {

namespace {

/// The cautions where paper is short.
const std::vector<std::string> kShort{
    "Isolate the supply, lock it off, prove dead. Detect pipes and cables before drilling.",
    "A placing proposal, not an electrical design: the licensed electrician decides, and the local code "
    "prevails.",
    "Confirm FFL and build-up on site. Ask before chasing load-bearing, separating, fire or waterproofed "
    "walls."};

std::string structureWord(plan::WallStructure structure) {
    switch (structure) {
    case plan::WallStructure::Unknown:
        return "structure not stated";
    case plan::WallStructure::Masonry:
        return "masonry";
    case plan::WallStructure::Stud:
        return "stud wall";
    case plan::WallStructure::Concrete:
        return "concrete";
    case plan::WallStructure::Timber:
        return "timber";
    case plan::WallStructure::None:
        return "no wall behind";
    }
    return {};
}

std::string wallNote(const WallView& view) {
    const plan::Wall& wall = view.data();
    std::string note = fmt::format("Wall {}: {}, {:g} thick between bare faces.", wall.id,
                                   structureWord(wall.structure), wall.thickness_mm);
    if (wall.build_up.empty()) return note + " Finish on this face not stated: take it as unknown.";
    return note +
           fmt::format(
               " On this face: {} = {:g}. Box fronts flush with the finished face, {:g} before the bare one.",
               inWords(wall.build_up), thicknessOf(wall.build_up), thicknessOf(wall.build_up));
}

std::string cornerNote(const WallView& view) {
    const Neighbour left = neighbourOf(*view.room, view.wall, End::Left);
    const std::string& letter = view.room->walls[left.wall].id;
    if (view.datum.face == Face::Structural && view.u_datum_mm == 0)
        return fmt::format(
            "u: from the edge at the left corner, wall {}, as it stands, to the centre of the box.", letter);
    if (view.datum.face == Face::Structural)
        return fmt::format(
            "u: from the BARE face of wall {} at the left corner to the centre of the box. From its "
            "finished face {} {:g}.",
            letter, view.u_datum_mm < 0 ? "take off" : "add", std::abs(view.u_datum_mm));
    std::string note =
        fmt::format("u: from the finished left corner, wall {}, to the centre of the box.", letter);
    if (left.build_up_mm > 0 && left.towards_viewer)
        note += fmt::format(" From the bare face of wall {} add {:g}.", letter, left.build_up_mm);
    return note;
}

std::string heightNote(const WallView& view) {
    switch (view.datum.level) {
    case Level::Slab:
        return fmt::format(
            "v: heights to the centre of the box, above the SLAB (structural floor); FFL is {} above "
            "it.",
            drawing::number(-view.v_datum_mm));
    case Level::Site:
        return fmt::format(
            "v: heights to the centre of the box, from the SITE LINE, which is {} above FFL; less "
            "than 0 is below it.",
            drawing::number(view.v_datum_mm));
    case Level::Ffl:
        break;
    }
    return "v: heights to the centre of the box, above finished floor level (FFL).";
}

std::string floorNote(const WallView& view) {
    if (view.slab_mm() >= 0) return "Floor build-up not stated: agree FFL on site before marking heights.";
    return fmt::format("Floor: FFL is {:g} above the slab: {}.", -view.slab_mm(),
                       inWords(view.room->floor_build_up));
}

std::string siteLineNote(const WallView& view) {
    const plan::Storey* storey = view.storey();
    if (storey == nullptr || !storey->site_line_mm) return "No site level line stated.";
    std::string note = fmt::format("Site level line: {} above FFL", drawing::number(*storey->site_line_mm));
    if (view.slab_mm() < 0)
        note += fmt::format(", {} above the slab", drawing::number(*storey->site_line_mm - view.slab_mm()));
    return note + ".";
}

} // namespace

std::vector<Block> datumNotes(const WallView& view, double width_mm) {
    std::vector<std::string> notes{"Drawn as seen from inside the room, nothing mirrored.",
                                   heightNote(view),
                                   cornerNote(view),
                                   view.datum.face == Face::Structural
                                       ? "Distances start from the bare face, as at first fix."
                                       : "All positions are to finished faces.",
                                   wallNote(view),
                                   floorNote(view),
                                   siteLineNote(view)};
    std::vector<Block> blocks{headingBlock("How to measure", width_mm), notesBlock(notes, width_mm)};
    if (std::ranges::any_of(view.mounted, [](const Mounted& item) { return item.margin_mm.has_value(); })) {
        blocks.push_back(
            notesBlock({"Play: wrong by more than this, a check of the plan fails. Ask first."}, width_mm));
        blocks.back().optional = true;
    }
    return blocks;
}

std::vector<Block> cautions(double width_mm, Wording wording) {
    if (wording == Wording::Short) return {headingBlock("Cautions", width_mm), notesBlock(kShort, width_mm)};
    return {
        headingBlock("Cautions", width_mm),
        notesBlock(
            {"Isolate the supply, lock it off and prove dead before touching any wiring.",
             "A placing proposal, not an electrical design: the licensed electrician decides, and the local "
             "code prevails.",
             "Detect pipes and cables before drilling.",
             "Heights hold only if FFL and the build-up above are right: confirm the datum on site.",
             "Ask before chasing load-bearing, separating, fire or waterproofed walls."},
            width_mm)};
}

double drawCautionLines(std::vector<Item>& items, Pt upper_left, double width_mm, const std::string& first) {
    std::string words;
    for (const std::string& caution : kShort)
        words += (words.empty() ? "" : " ") + caution;
    std::vector<std::string> lines = wrapped(first, kNoteText, width_mm);
    for (std::string& line : wrapped(words, kNoteText, width_mm))
        lines.push_back(std::move(line));
    return Ink(items, "notes").paragraph({upper_left.x, upper_left.y - kNoteText}, lines, kNoteText) - 1.5;
}

} // namespace gangway::sheets
