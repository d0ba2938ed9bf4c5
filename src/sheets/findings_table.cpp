#include "sheets/findings_table.hpp"

#include "checks/accepted.hpp"
#include "drawing/dimensions.hpp"
#include "plan/furniture_kinds.hpp"
#include "sheets/agreement_booklet.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <functional>
#include <span>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

using plan::Severity;

constexpr double kPad = 1.4;
constexpr double kRoomHeight = 7;
constexpr double kSignRadius = 2;
constexpr double kLegendLine = 5;
constexpr std::size_t kMostLines = 28; ///< of a row on one sheet

struct Column {
    const char* title;
    double fixed_mm; ///< width, and
    double share;    ///< of what those leave
    bool number = false;
};
constexpr Column kOpen[] = {{"no.", 23, 0},
                            {"about, and where", 0, 0.25},
                            {"what was found, and why", 0, 0.3},
                            {"measured", 19.5, 0, true},
                            {"limit", 15, 0, true},
                            {"what would settle it", 0, 0.23},
                            {"source", 0, 0.22}};
constexpr Column kAccepted[] = {{"no.", 23, 0},
                                {"about, and where", 0, 0.25},
                                {"what was found, and why", 0, 0.34},
                                {"accepted because", 0, 0.27},
                                {"by", 0, 0.14},
                                {"on", 24, 0}};

/// On narrow paper remedy and source stand under what was found.
constexpr Column kOpenNarrow[] = {{"no.", 23, 0},
                                  {"about, and where", 0, 0.3},
                                  {"what was found, and why; what would settle it; source", 0, 0.7},
                                  {"measured, limit", 19.5, 0, true}};
constexpr double kNarrowMm = 250;

using Columns = std::span<const Column>;

Columns columnsOf(FindingTable table, double width_mm) {
    if (table == FindingTable::Accepted) return kAccepted;
    if (width_mm < kNarrowMm) return kOpenNarrow;
    return kOpen;
}

std::vector<double> edgesOf(Columns columns, double width_mm) {
    double shared = width_mm;
    for (const Column& column : columns)
        shared -= column.fixed_mm;
    std::vector<double> edges{0};
    for (const Column& column : columns)
        edges.push_back(edges.back() + column.fixed_mm + column.share * shared);
    return edges;
}

void drawRules(Ink& ink, const std::vector<double>& edges, double height_mm, const Pen& foot) {
    for (const double x : edges)
        ink.line({x, 0}, {x, -height_mm}, kThin);
    ink.line({0, -height_mm}, {edges.back(), -height_mm}, foot);
}

std::string pieceName(const plan::Furniture& piece) {
    if (!piece.name.empty()) return piece.name;
    const plan::FurnitureKind* kind = plan::findFurnitureKind(piece.kind);
    return kind == nullptr ? piece.id : std::string(kind->name);
}

/// "W-L03, mirror light"
std::string lampName(const plan::Luminaire& lamp) {
    const std::string& tag = lamp.tag.empty() ? lamp.id : lamp.tag;
    return lamp.name.empty() ? tag : fmt::format("{}, {}", tag, lamp.name);
}

/// Shorter than placeInWords() for what is most often said.
std::string platePlace(const House& house, const plan::Plate& plate) {
    if (plate.host.kind != plan::Host::Kind::Wall) return placeInWords(house, plate);
    return fmt::format("wall {}, {} from the left, {} above FFL", plate.host.wall,
                       drawing::number(plate.host.u_mm), drawing::number(plate.host.v_mm));
}

using Lines = std::vector<std::string>;

void append(Lines& lines, const std::string& text, double width_mm) {
    for (std::string& line : wrapped(text, kNoteText, width_mm))
        lines.push_back(std::move(line));
}

Lines about(const FindingWords& words, const plan::Finding& finding, double width_mm) {
    Lines lines;
    const std::string names = words.namesOf(finding);
    append(lines, names.empty() ? "the house" : names, width_mm);
    append(lines, words.placeOf(finding), width_mm);
    return lines;
}

std::string numberText(const std::optional<double>& value) {
    return value ? drawing::number(std::round(*value * 10) / 10) : std::string();
}

/// The cells behind what was found.
void addMeasures(std::vector<Lines>& cells, const plan::Finding& finding,
                 const std::function<double(std::size_t)>& room) {
    cells[3].push_back(numberText(finding.value_mm));
    if (cells.size() > 4) {
        cells[4].push_back(numberText(finding.limit_mm));
        append(cells[5], finding.remedy, room(5));
        append(cells[6], finding.source, room(6));
        return;
    }
    cells[3].push_back(numberText(finding.limit_mm));
    append(cells[2], "To settle it: " + finding.remedy, room(2));
    append(cells[2], "Source: " + finding.source, room(2));
}

std::vector<Lines> cellsOf(FindingTable table, const FindingWords& words, const plan::Finding& finding,
                           std::size_t number, double width_mm) {
    const Columns columns = columnsOf(table, width_mm);
    const auto edges = edgesOf(columns, width_mm);
    const auto room = [&](std::size_t column) { return edges[column + 1] - edges[column] - 2 * kPad; };
    std::vector<Lines> cells(columns.size());
    cells[0] = {std::to_string(number), severityWord(finding.severity)};
    cells[1] = about(words, finding, room(1));
    append(cells[2], finding.message, room(2));
    if (table == FindingTable::Open) {
        addMeasures(cells, finding, room);
        return cells;
    }
    append(cells[3], finding.accepted.value_or(""), room(3));
    const plan::Acceptance* given = words.acceptanceOf(finding);
    if (given == nullptr) return cells;
    append(cells[4], given->by, room(4));
    append(cells[5], given->at.substr(0, 10), room(5));
    return cells;
}

/// Takes as many lines as a row may have on one sheet.
std::vector<Lines> takePiece(std::vector<Lines>& cells) {
    std::vector<Lines> piece;
    for (Lines& lines : cells) {
        const auto end = lines.begin() + static_cast<std::ptrdiff_t>(std::min(lines.size(), kMostLines));
        piece.emplace_back(lines.begin(), end);
        lines.erase(lines.begin(), end);
    }
    return piece;
}

Block rowBlock(Columns columns, const std::vector<Lines>& cells, const std::vector<double>& edges,
               const plan::Finding& finding, bool first) {
    const std::string id = finding.objects.empty() ? std::string() : finding.objects.front();
    Block row;
    for (const Lines& lines : cells)
        row.height_mm = std::max(row.height_mm, paragraphHeight(lines, kNoteText) + 2 * kPad + 0.6);
    Ink texts(row.items, "text", id);
    const double top = -kPad - kNoteText;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        if (cells[i].empty()) continue;
        if (i == 0) {
            Ink signs(row.items, "symbols", id);
            drawSeverity(signs, {edges[0] + kPad + kSignRadius, top - 0.6}, finding.severity);
            texts.paragraph({edges[0] + 2 * kPad + 2 * kSignRadius, top}, cells[i], kNoteText);
        } else if (columns[i].number) {
            texts.paragraph({edges[i + 1] - kPad, top}, cells[i], kNoteText, drawing::Align::Right);
        } else {
            texts.paragraph({edges[i] + kPad, top}, cells[i], kNoteText);
        }
    }
    if (first) row.height_mm = std::max(row.height_mm, 2 * kSignRadius + 2 * kPad);
    Ink rules(row.items, "notes", id);
    drawRules(rules, edges, row.height_mm, kThin);
    return row;
}

} // namespace

FindingWords::FindingWords(const House& house) : house_(&house) {
    const plan::Plan& plan = house.plan();
    const auto named = [](const std::string& name, const std::string& id) {
        return name.empty() ? id : name;
    };
    for (const auto& room : plan.rooms)
        objects_.emplace(room.id, Object{named(room.name, room.id), &room, nullptr});
    const auto add = [&](const auto& list, const auto& name) {
        for (const auto& one : list)
            objects_.emplace(one.id, Object{name(one), house.index().room(one.room), nullptr});
    };
    for (const auto& plate : plan.plates)
        objects_.emplace(plate.id,
                         Object{named(plate.tag, plate.id), house.index().room(plate.room), &plate});
    add(plan.luminaires, lampName);
    add(plan.furniture, pieceName);
    add(plan.openings, [&](const plan::Opening& opening) { return named(opening.name, opening.id); });
    add(plan.devices, [&](const plan::Device& device) { return named(device.name, device.id); });
    for (const auto& leg : plan.legs)
        objects_.emplace(leg.id, Object{"leg " + named(leg.letter, leg.id), nullptr, nullptr});
    for (const auto& circuit : plan.circuits)
        objects_.emplace(circuit.id, Object{named(circuit.name, circuit.id), nullptr, nullptr});
    for (const auto& acceptance : plan.accepted)
        accepted_.emplace(acceptance.id, &acceptance);
}

const FindingWords::Object* FindingWords::find(const std::string& id) const {
    const auto found = objects_.find(id);
    return found == objects_.end() ? nullptr : &found->second;
}

const plan::Room* FindingWords::roomOf(const plan::Finding& finding) const {
    for (const std::string& id : finding.objects)
        if (const Object* object = find(id); object != nullptr && object->room != nullptr)
            return object->room;
    return nullptr;
}

std::string FindingWords::namesOf(const plan::Finding& finding) const {
    std::string names;
    for (const std::string& id : finding.objects) {
        const Object* object = find(id);
        names += (names.empty() ? "" : "; ") + (object == nullptr ? id : object->name);
    }
    return names;
}

std::string FindingWords::placeOf(const plan::Finding& finding) const {
    if (finding.objects.empty()) return {};
    const Object* first = find(finding.objects.front());
    if (first != nullptr && first->plate != nullptr) return platePlace(*house_, *first->plate);
    const plan::Room* room = roomOf(finding);
    if (!finding.place_mm || room == nullptr) return {};
    const geometry::Frame floor = geometry::floorFrame(*room);
    return fmt::format("{} east, {} north, {} above FFL",
                       drawing::number(std::round(finding.place_mm->x - floor.origin_mm.x)),
                       drawing::number(std::round(finding.place_mm->y - floor.origin_mm.y)),
                       drawing::number(std::round(finding.place_mm->z)));
}

const plan::Acceptance* FindingWords::acceptanceOf(const plan::Finding& finding) const {
    const auto found = accepted_.find(checks::findingId(finding));
    return found == accepted_.end() ? nullptr : found->second;
}

std::string severityWord(Severity severity) {
    switch (severity) {
    case Severity::Fault:
        return "fault";
    case Severity::Warn:
        return "warning";
    case Severity::Hint:
        break;
    }
    return "hint";
}

void drawSeverity(Ink& ink, Pt centre, Severity severity) {
    const auto by = [&](double dx, double dy) {
        return Pt{centre.x + dx * kSignRadius, centre.y + dy * kSignRadius};
    };
    switch (severity) {
    case Severity::Fault:
        ink.fill({by(-0.95, -0.85), by(0.95, -0.85), by(0, 0.95)}, drawing::kBlack);
        return;
    case Severity::Warn:
        ink.polyline({by(0, -0.95), by(0.95, 0), by(0, 0.95), by(-0.95, 0)}, true, kOutline);
        return;
    case Severity::Hint:
        break;
    }
    ink.circle(centre, kSignRadius * 0.75, kNarrow);
}

Block findingsHead(FindingTable table, double width_mm) {
    const Columns columns = columnsOf(table, width_mm);
    const auto edges = edgesOf(columns, width_mm);
    std::vector<Lines> titles;
    double height = 0;
    for (std::size_t i = 0; i < columns.size(); ++i) {
        titles.push_back(wrapped(columns[i].title, kNoteText, edges[i + 1] - edges[i] - 2 * kPad));
        height = std::max(height, paragraphHeight(titles.back(), kNoteText));
    }
    Block head;
    head.keep_with_next = true;
    head.height_mm = height + 2 * kPad + 0.6;
    Ink ink(head.items, "notes");
    ink.line({0, 0}, {width_mm, 0}, kThin);
    for (std::size_t i = 0; i < columns.size(); ++i) {
        const bool right = columns[i].number;
        ink.paragraph({right ? edges[i + 1] - kPad : edges[i] + kPad, -kPad - kNoteText}, titles[i],
                      kNoteText, right ? drawing::Align::Right : drawing::Align::Left);
    }
    drawRules(ink, edges, head.height_mm, kOutline);
    return head;
}

std::vector<Block> findingRows(FindingTable table, const FindingWords& words, const plan::Finding& finding,
                               std::size_t number, double width_mm) {
    const Columns columns = columnsOf(table, width_mm);
    const auto edges = edgesOf(columns, width_mm);
    auto cells = cellsOf(table, words, finding, number, width_mm);
    std::vector<Block> rows;
    do
        rows.push_back(rowBlock(columns, takePiece(cells), edges, finding, rows.empty()));
    while (std::ranges::any_of(cells, [](const Lines& lines) { return !lines.empty(); }));
    return rows;
}

Block roomHeading(const std::string& name, double width_mm, bool continued) {
    Block block;
    Ink ink(block.items, "notes");
    ink.text({kPad, -kRoomHeight + 2}, name + (continued ? " (continued)" : ""), kValueText);
    for (const double x : {0.0, width_mm})
        ink.line({x, 0}, {x, -kRoomHeight}, kThin);
    ink.line({0, -kRoomHeight}, {width_mm, -kRoomHeight}, kOutline);
    block.height_mm = kRoomHeight;
    block.keep_with_next = true;
    return block;
}

Block severityLegend(const std::vector<plan::Finding>& findings, double width_mm) {
    struct Meaning {
        Severity severity;
        const char* words;
    };
    constexpr Meaning kMeanings[] = {{Severity::Fault, "can't work, or is against the source named"},
                                     {Severity::Warn, "likely to be regretted"},
                                     {Severity::Hint, "for the designer to judge"}};
    constexpr double kBetween = 10;
    Block block;
    Ink words(block.items, "notes");
    Ink signs(block.items, "symbols");
    Pt at{0, -kNoteText - 0.9};
    for (const auto& [severity, meaning] : kMeanings) {
        const auto open = std::ranges::count_if(findings, [&, severity = severity](const auto& finding) {
            return finding.severity == severity && !finding.accepted;
        });
        const std::string text = fmt::format("{}: {}; {} open", severityWord(severity), meaning, open);
        const double wide = 3 * kSignRadius + drawing::measure(text, kNoteText).width_mm;
        if (at.x > 0 && at.x + wide > width_mm) at = {0, at.y - kLegendLine};
        drawSeverity(signs, {at.x + kSignRadius, at.y + kNoteText / 2}, severity);
        words.text({at.x + 3 * kSignRadius, at.y}, text, kNoteText);
        at.x += wide + kBetween;
    }
    const std::string frame = "east and north: from the south-west corner of the room's extent; mm";
    if (at.x + drawing::measure(frame, kNoteText).width_mm > width_mm) at = {0, at.y - kLegendLine};
    words.text(at, frame, kNoteText);
    block.height_mm = -at.y + 1.5;
    block.gap_after_mm = 2.5;
    return block;
}

} // namespace gangway::sheets
