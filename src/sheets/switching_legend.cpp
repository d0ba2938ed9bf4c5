#include "sheets/switching_legend.hpp"

#include "drawing/dimensions.hpp"
#include "drawing/symbols.hpp"
#include "sheets/sheet_layout.hpp"
#include "sheets/site_notes.hpp"
#include "switching/group.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kSample = 17; ///< length of a leg's line in its legend
constexpr double kIndent = 5;  ///< of the lines of a way
constexpr double kPicture = 8.2;
constexpr double kSymbolModule = 1.8;

std::string counted(std::size_t count, const char* one, const char* many) {
    return fmt::format("{} {}", count, count == 1 ? one : many);
}

std::string fedBy(const switching::Net& net, const plan::SwitchLeg& leg) {
    std::string text;
    if (!leg.luminaires.empty()) text = counted(leg.luminaires.size(), "luminaire", "luminaires");
    for (const std::string& id : leg.plates) {
        const plan::Plate* plate = net.plate(id);
        text += fmt::format("{}{}", text.empty() ? "" : ", ",
                            plate == nullptr || plate->tag.empty() ? id : plate->tag);
    }
    return text.empty() ? "feeds nothing" : text;
}

/// "two-way with K-03": how a way works a leg together with the other positions.
std::string arrangedWith(const switching::Net& net, const plan::SwitchLeg& leg, const plan::WayRef& self) {
    const switching::Group group = switching::groupOf(net, leg);
    const std::string text = switching::arrangementName(group);
    std::string others;
    for (const plan::WayRef& ref : leg.controls)
        if (!(ref.plate == self.plate && ref.module == self.module && ref.way == self.way))
            others += (others.empty() ? "" : " and ") + switching::wayName(net, ref);
    if (others.empty()) return text;
    return fmt::format("{}{} {}", text,
                       group.arrangement == switching::Arrangement::Mixed ? "; also" : " with", others);
}

std::string nameOf(const std::string& mark, const plan::SwitchLeg& leg) {
    return leg.name.empty() ? mark : fmt::format("{} {}", mark, leg.name);
}

Block linesBlock(const std::vector<std::string>& lines, double x, double least_mm) {
    Block block;
    const double height = paragraphHeight(lines, kNoteText);
    block.height_mm = std::max(least_mm, height + 1.6);
    Ink(block.items, "notes").paragraph({x, -block.height_mm / 2 + height / 2 - kNoteText}, lines, kNoteText);
    return block;
}

Block pictureBlock(std::vector<Item> picture, const std::string& name, double width_mm) {
    const Rect extent = extentOf(picture);
    Block block = linesBlock(wrapped(name, kNoteText, width_mm - kPicture - 1), kPicture + 1,
                             std::max(5.0, extent.height() + 1.4));
    move(picture, kPicture / 2 - extent.centre().x, -block.height_mm / 2 - extent.centre().y);
    block.items.insert(block.items.end(), picture.begin(), picture.end());
    return block;
}

/// Two blocks beside each other, the second `x` to the right, their middles at one height.
Block beside(Block left, Block right, double x) {
    const double height = std::max(left.height_mm, right.height_mm);
    move(left.items, 0, (left.height_mm - height) / 2);
    move(right.items, x, (right.height_mm - height) / 2);
    left.items.insert(left.items.end(), right.items.begin(), right.items.end());
    left.height_mm = height;
    return left;
}

/// Under a heading, in two columns read line by line: they stay together beside the plan.
std::vector<Block> inPairs(std::vector<Block> pictures, double width_mm) {
    std::vector<Block> blocks{headingBlock("Symbols", width_mm)};
    for (std::size_t i = 0; i < pictures.size(); i += 2)
        blocks.push_back(i + 1 < pictures.size() ? beside(std::move(pictures[i]), std::move(pictures[i + 1]),
                                                          (width_mm + kGutter) / 2)
                                                 : std::move(pictures[i]));
    blocks.back().gap_after_mm = 3;
    return blocks;
}

std::string heightOf(const switching::Net& net, const plan::Plate& plate) {
    if (plate.host.kind == plan::Host::Kind::Wall)
        return fmt::format(", {} above FFL", drawing::number(plate.host.v_mm));
    const plan::Room* room = net.room(plate.room);
    return room == nullptr ? "" : ", not on a wall";
}

} // namespace

std::string wayLine(const switching::Net& net, const switching::Way& way, std::size_t number) {
    const std::string start = fmt::format("{} {}", number, way.module->code);
    if (way.legs.empty()) // a thermostat works what the heating's own plan shows
        return start + (way.action == catalogue::WayAction::Heating ? " heating" : " not tied");
    std::string line = start;
    for (const plan::SwitchLeg* leg : way.legs)
        line += fmt::format("{} {}: {}, {}", leg == way.legs.front() ? "" : ";",
                            nameOf(switching::legMark(net, *leg), *leg), fedBy(net, *leg),
                            arrangedWith(net, *leg, way.ref));
    return line;
}

std::vector<Block> legLegend(const switching::Net& net, std::span<const DrawnLeg> legs, double width_mm) {
    std::vector<Block> blocks;
    if (legs.empty()) return blocks;
    blocks.push_back(headingBlock("Legs on this sheet", width_mm));
    for (const DrawnLeg& drawn : legs) {
        const std::string name = fmt::format(
            "{}: {}", nameOf(switching::legMark(net, *drawn.leg), *drawn.leg), fedBy(net, *drawn.leg));
        Block block = linesBlock(wrapped(name, kNoteText, width_mm - kSample - 2), kSample + 2, 4.6);
        const double y = -block.height_mm / 2;
        if (drawn.line == plan::SwitchLeg::Line::Letters || drawn.joins == 0)
            Ink(block.items, "notes").text({0, y - kNoteText / 2}, "by mark", kNoteText);
        else
            Ink(block.items, "symbols").polyline({{0, y}, {kSample, y}}, false, drawn.pen);
        blocks.push_back(std::move(block));
    }
    blocks.back().gap_after_mm = 3;
    return blocks;
}

std::vector<Block> symbolLegend(const switching::Net& net, std::span<const plan::Plate* const> plates,
                                std::span<const plan::Luminaire* const> luminaires,
                                StoreyPlanOptions::Lamps lamps, double width_mm) {
    std::set<std::string> used;
    bool above = false;
    for (const plan::Plate* plate : plates)
        for (const plan::Module& module : plate->modules)
            if (const auto* type = net.catalogue().module(module.type))
                used.insert(type->symbol.empty() ? "blank" : type->symbol);
    for (const plan::Luminaire* luminaire : luminaires) {
        using Look = plan::Luminaire::PlanLook;
        using Kind = plan::Luminaire::Kind;
        const bool top =
            luminaire->size_mm > 0 &&
            (luminaire->plan_look == Look::TopView ||
             (luminaire->plan_look == Look::AsSheet && lamps == StoreyPlanOptions::Lamps::TopView));
        above = above || top;
        if (top) continue;
        const bool line = luminaire->kind == Kind::Linear || luminaire->kind == Kind::UnderUnit;
        const bool wall = luminaire->host.kind == plan::Host::Kind::Wall;
        used.insert(line                                ? "luminaire-linear"
                    : wall                              ? "luminaire-wall"
                    : luminaire->kind == Kind::Recessed ? "luminaire-recessed"
                    : luminaire->kind == Kind::Pendant  ? "luminaire-pendant"
                                                        : "luminaire");
    }
    std::vector<Block> pictures;
    const double width = (width_mm - kGutter) / 2;
    for (const auto& kind : drawing::symbolKinds())
        if (used.contains(std::string(kind.id)))
            pictures.push_back(pictureBlock(drawing::symbol(kind.id, {0, 0}, 0, kSymbolModule, "symbols"),
                                            std::string(kind.name), width));
    if (above) {
        std::vector<Item> picture;
        Ink(picture, "symbols").circle({0, 0}, 2, kOutline);
        pictures.push_back(pictureBlock(std::move(picture), "Luminaire as seen from above, to scale", width));
    }
    return inPairs(std::move(pictures), width_mm);
}

std::vector<Block> plateLegend(const switching::Net& net, std::span<const plan::Plate* const> plates,
                               double width_mm) {
    std::vector<Block> blocks;
    for (const plan::Plate* plate : plates) {
        const auto ways = net.waysOf(plate->id);
        if (ways.empty()) continue;
        if (blocks.empty()) blocks.push_back(headingBlock("Switch plates, way by way", width_mm));
        const plan::Room* room = net.room(plate->room);
        std::vector<std::string> lines =
            wrapped(fmt::format("{}  {}{}", plate->tag.empty() ? plate->id : plate->tag,
                                room == nullptr ? plate->room : room->name, heightOf(net, *plate)),
                    kNoteText, width_mm);
        Block block;
        Ink ink(block.items, "notes", plate->id);
        double y = ink.paragraph({0, -kNoteText * 1.2}, lines, kNoteText);
        std::string last = lines.back();
        for (std::size_t i = 0; i < ways.size(); ++i) {
            lines = wrapped(wayLine(net, ways[i], i + 1), kNoteText, width_mm - kIndent);
            if (lines.empty()) continue;
            y -= lineDrop(last, lines.front(), kNoteText);
            y = ink.paragraph({kIndent, y}, lines, kNoteText);
            last = lines.back();
        }
        block.height_mm = -y + kNoteText * 0.5;
        block.gap_after_mm = 1.2;
        blocks.push_back(std::move(block));
    }
    if (!blocks.empty()) blocks.back().gap_after_mm = 3;
    return blocks;
}

std::vector<Block> switchingNotes(double width_mm, const std::vector<std::string>& more) {
    std::vector<std::string> notes{
        "Lines show control, not cable route.",
        "In a capsule: the mark of the leg, at every switch position and at all it feeds. Lines join what "
        "belongs together, each leg with its own dashes; in crowded rooms the marks alone do.",
        "Ways are counted over the whole plate from the left, or from the top. Heights are to the plate's "
        "centre, above FFL. Drawn from above, nothing mirrored."};
    notes.insert(notes.end(), more.begin(), more.end());
    std::vector<Block> blocks{headingBlock("How to read", width_mm), notesBlock(notes, width_mm)};
    for (Block& block : cautions(width_mm, Wording::Short))
        blocks.push_back(std::move(block));
    return blocks;
}

} // namespace gangway::sheets
