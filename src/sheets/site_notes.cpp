#include "sheets/site_notes.hpp"

#include "drawing/dimensions.hpp"

#include <fmt/format.h>

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
    std::string note =
        fmt::format("u: from the finished left corner, wall {}, to the centre of the box.", letter);
    if (left.build_up_mm > 0 && left.towards_viewer)
        note += fmt::format(" From the bare face of wall {} add {:g}.", letter, left.build_up_mm);
    return note;
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
    return {headingBlock("How to measure", width_mm),
            notesBlock({"Drawn as seen from inside the room, nothing mirrored.",
                        "v: heights to the centre of the box, above finished floor level (FFL).",
                        cornerNote(view), "All positions are to finished faces.", wallNote(view),
                        floorNote(view), siteLineNote(view)},
                       width_mm)};
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

double drawCautionLines(std::vector<Item>& items, Pt upper_left, double width_mm) {
    std::string words;
    for (const std::string& caution : kShort)
        words += (words.empty() ? "" : " ") + caution;
    std::vector<std::string> lines = {kDoNotScale};
    for (std::string& line : wrapped(words, kNoteText, width_mm))
        lines.push_back(std::move(line));
    return Ink(items, "notes").paragraph({upper_left.x, upper_left.y - kNoteText}, lines, kNoteText) - 1.5;
}

} // namespace gangway::sheets
