// The booklet's table: a row a plate, with where it is, what it is and what was answered.
#include "sheets/agreement_booklet.hpp"

#include "drawing/dimensions.hpp"

#include <algorithm>
#include <array>
#include <tuple>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kPad = 1.2;
constexpr double kStateSign = 5; ///< width kept for the sign before its word

enum ColumnId { kTag, kWhat, kWhere, kAnswer, kNote, kColumns };
constexpr std::array<const char*, kColumns> kTitles{"tag", "what for, modules, finish",
                                                    "where, to its centre", "answer, fingerprint", "note"};
constexpr std::array<double, kColumns> kShares{0.085, 0.285, 0.235, 0.225, 0.17};

std::array<double, kColumns + 1> edgesOf(double width_mm) {
    std::array<double, kColumns + 1> edges{};
    for (std::size_t i = 0; i < kColumns; ++i)
        edges[i + 1] = edges[i] + kShares[i] * width_mm;
    return edges;
}

std::string modulesInWords(const catalogue::Catalogue& catalogue, const plan::Plate& plate) {
    std::string words;
    for (const plan::Module& module : plate.modules) {
        const auto* type = catalogue.module(module.type);
        words += (words.empty() ? "" : ", ") + (type != nullptr ? type->name : module.type);
        if (!module.label.empty()) words += " '" + module.label + "'";
    }
    const auto* finish = catalogue.finish(plate.finish);
    if (!plate.finish.empty()) words += "; " + (finish != nullptr ? finish->name : plate.finish);
    return words;
}

void append(std::vector<std::string>& lines, const std::string& text, double width_mm) {
    for (std::string& line : wrapped(text, kNoteText, width_mm))
        lines.push_back(std::move(line));
}

void drawRules(Ink& ink, const std::array<double, kColumns + 1>& edges, double height_mm, const Pen& foot) {
    for (double x : edges)
        ink.line({x, 0}, {x, -height_mm}, kThin);
    ink.line({0, -height_mm}, {edges.back(), -height_mm}, foot);
}

Block rowOf(const House& house, const Answers& answers, const plan::Plate& plate, double width_mm) {
    const auto edges = edgesOf(width_mm);
    const auto room = [&](ColumnId id) { return edges[id + 1U] - edges[id] - 2 * kPad; };
    const review::State state = answers.stateOf(plate);
    const plan::Agreement* last = plan::latestAgreement(house.plan(), plate.id);
    std::array<std::vector<std::string>, kColumns> cells;
    cells[kTag] = wrapped(plate.tag.empty() ? plate.id : plate.tag, kNoteText, room(kTag));
    append(cells[kWhat], plate.purpose.empty() ? "-" : plate.purpose, room(kWhat));
    append(cells[kWhat], modulesInWords(house.catalogue(), plate), room(kWhat));
    append(cells[kWhere], placeInWords(house, plate), room(kWhere));
    cells[kAnswer].push_back(std::string(review::word(state)));
    if (last != nullptr) append(cells[kAnswer], last->by + ", " + last->at.substr(0, 10), room(kAnswer));
    append(cells[kAnswer], answers.fingerprintOf(plate), room(kAnswer));
    if (last != nullptr) append(cells[kNote], last->note, room(kNote));

    Block row;
    for (const auto& lines : cells)
        row.height_mm = std::max(row.height_mm, paragraphHeight(lines, kNoteText) + 2 * kPad + 0.6);
    Ink texts(row.items, "text", plate.id);
    const double top = -kPad - kNoteText;
    for (std::size_t column = 0; column < kColumns; ++column) {
        const double x = edges[column] + kPad;
        if (column != kAnswer) {
            texts.paragraph({x, top}, cells[column], kNoteText);
            continue;
        }
        // The word stands after its sign, the rest under it.
        Ink signs(row.items, "symbols", plate.id);
        drawState(signs, {x + 1.6, top + kNoteText / 2}, state);
        texts.text({x + kStateSign, top}, cells[column].front(), kNoteText);
        const std::vector<std::string> rest(cells[column].begin() + 1, cells[column].end());
        if (!rest.empty())
            texts.paragraph({x, top - lineDrop(cells[column].front(), rest.front(), kNoteText)}, rest,
                            kNoteText);
    }
    Ink rules(row.items, "notes", plate.id);
    drawRules(rules, edges, row.height_mm, kThin);
    return row;
}

} // namespace

void drawState(Ink& ink, Pt centre, review::State state) {
    constexpr double kRadius = 1.4;
    const auto by = [&](double dx, double dy) {
        return Pt{centre.x + dx * kRadius, centre.y + dy * kRadius};
    };
    switch (state) {
    case review::State::Open:
        ink.circle(centre, kRadius, kNarrow);
        return;
    case review::State::Agreed:
        ink.fill(disc(centre, kRadius), drawing::kBlack);
        ink.polyline({by(-0.45, 0), by(-0.12, -0.36), by(0.48, 0.36)}, false,
                     {0.35, drawing::LineType::Continuous, drawing::kWhite});
        return;
    case review::State::Queried:
        ink.fill({by(0, -1.2), by(1.2, 0), by(0, 1.2), by(-1.2, 0)}, drawing::kBlack);
        return;
    case review::State::Reopened: {
        const auto all = disc({0, 0}, 1);
        std::vector<Pt> right;
        for (Pt p : all)
            if (p.x >= -1e-9) right.push_back(by(p.x, p.y));
        // The disc begins at +x: the half is its last quarter followed by its first.
        std::rotate(right.begin(), right.begin() + static_cast<std::ptrdiff_t>(all.size() / 4 + 1),
                    right.end());
        ink.fill(right, drawing::kBlack);
        ink.circle(centre, kRadius, kNarrow);
        return;
    }
    }
}

std::string placeInWords(const House& house, const plan::Plate& plate) {
    const plan::Host& host = plate.host;
    const std::string u = drawing::number(host.u_mm);
    const std::string v = drawing::number(host.v_mm);
    const std::string from_corner =
        u + " east and " + v + " north of the south-west corner of the room's extent";
    switch (host.kind) {
    case plan::Host::Kind::Wall:
        return fmt::format("wall {}, {} from its left corner, {} above FFL", host.wall, u, v);
    case plan::Host::Kind::Floor:
        return "floor, " + from_corner;
    case plan::Host::Kind::Ceiling:
        return "ceiling, " + from_corner;
    case plan::Host::Kind::Furniture:
        break;
    }
    const plan::Furniture* piece = house.index().furniture(host.furniture);
    const std::string name = piece != nullptr ? piece->name : host.furniture;
    if (host.face == "top" || host.face == "bottom")
        return fmt::format("{} ({}), {} from its left edge, {} towards its back", name, host.face, u, v);
    return fmt::format("{} ({}), {} from its left edge, {} above FFL", name, host.face, u, v);
}

Block agreementHead(double width_mm) {
    const auto edges = edgesOf(width_mm);
    Block head;
    head.keep_with_next = true;
    head.height_mm = kNoteText + 2 * kPad + 0.6;
    Ink ink(head.items, "notes");
    ink.line({0, 0}, {width_mm, 0}, kThin);
    for (std::size_t column = 0; column < kColumns; ++column)
        ink.text({edges[column] + kPad, -kPad - kNoteText}, kTitles[column], kNoteText);
    drawRules(ink, edges, head.height_mm, kOutline);
    return head;
}

std::vector<Block> agreementRows(const House& house, const Answers& answers, const plan::Room& room,
                                 double width_mm) {
    std::vector<const plan::Plate*> plates = house.platesIn(room.id);
    std::ranges::sort(plates, {}, [](const plan::Plate* plate) { return std::tie(plate->tag, plate->id); });
    std::vector<Block> rows;
    for (const plan::Plate* plate : plates)
        rows.push_back(rowOf(house, answers, *plate, width_mm));
    return rows;
}

} // namespace gangway::sheets
