#include "export/dxf_entities.hpp"

#include "drawing/face.hpp"
#include "drawing/lines.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <limits>

namespace gangway::exporting {

using namespace drawing;

namespace {

constexpr double kAttributeHeight_mm = 2.5; // on paper, for whoever makes attributes show
constexpr int kInvisible = 1;

struct Indexed {
    int index;
    Colour colour;
};
constexpr std::array<Indexed, 14> kIndexed{{{1, {255, 0, 0}},
                                            {2, {255, 255, 0}},
                                            {3, {0, 255, 0}},
                                            {4, {0, 255, 255}},
                                            {5, {0, 0, 255}},
                                            {6, {255, 0, 255}},
                                            {8, {128, 128, 128}},
                                            {9, {192, 192, 192}},
                                            {250, {51, 51, 51}},
                                            {251, {80, 80, 80}},
                                            {252, {105, 105, 105}},
                                            {253, {130, 130, 130}},
                                            {254, {190, 190, 190}},
                                            {255, {255, 255, 255}}}};

double whole(double deg) {
    const double rest = std::fmod(deg, 360);
    return rest < 0 ? rest + 360 : rest;
}

} // namespace

int nearestIndex(Colour colour) {
    int best = 7;
    int least = std::numeric_limits<int>::max();
    for (const Indexed& one : kIndexed) {
        const int r = one.colour.r - colour.r;
        const int g = one.colour.g - colour.g;
        const int b = one.colour.b - colour.b;
        const int distance = r * r + g * g + b * b;
        if (distance < least) {
            least = distance;
            best = one.index;
        }
    }
    return best;
}

int lineWeight(double width_mm) {
    constexpr std::array<int, 24> kWeights{0,  5,  9,  13, 15, 18,  20,  25,  30,  35,  40,  50,
                                           53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211};
    const int wanted = static_cast<int>(std::lround(width_mm * 100));
    return *std::ranges::min_element(kWeights, {}, [&](int weight) { return std::abs(weight - wanted); });
}

DxfHandle DxfInk::begin(const char* type, const char* subclass, const Pen* pen, Colour colour) {
    const DxfHandle handle = document_.newHandle();
    const bool on_paper = &block_ == &document_.paper();
    out_.text(0, type);
    out_.handle(5, handle);
    out_.handle(330, block_.record);
    out_.text(100, "AcDbEntity");
    if (on_paper) {
        out_.integer(67, 1);
        out_.text(410, document_.layoutName());
    }
    out_.text(8, layer_);
    const bool dashed = pen != nullptr && pen->type != LineType::Continuous;
    if (dashed) out_.text(6, document_.lineType(*pen));
    // Black is left to the layer, whose colour 7 is black on white paper and white on a dark screen.
    if (colour != kBlack) out_.integer(62, nearestIndex(colour));
    if (pen != nullptr) out_.integer(370, lineWeight(pen->width_mm));
    if (dashed && frame_.scale != 1) out_.real(48, frame_.scale);
    if (colour != kBlack) out_.integer(420, colour.r << 16 | colour.g << 8 | colour.b);
    out_.text(100, subclass);
    return handle;
}

DxfHandle DxfInk::begin(const char* type, const char* subclass, const Pen& pen) {
    return begin(type, subclass, &pen, pen.colour);
}

void DxfInk::operator()(const Line& line) {
    if (line.from == line.to) return;
    begin("LINE", "AcDbLine", line.pen);
    out_.point(10, frame_.at(line.from));
    out_.point(11, frame_.at(line.to));
}

void DxfInk::polyline(const std::vector<Pt>& points, bool closed, const Pen& pen, bool dashes_run_on) {
    constexpr int kClosed = 1;
    constexpr int kRunOn = 128;
    begin("LWPOLYLINE", "AcDbPolyline", pen);
    out_.integer(90, static_cast<long long>(points.size()));
    out_.integer(70, (closed ? kClosed : 0) + (dashes_run_on ? kRunOn : 0));
    out_.real(43, 0);
    for (const Pt p : points)
        out_.flat(10, frame_.at(p));
}

void DxfInk::operator()(const Polyline& line) {
    if (line.points.size() < 2) return;
    if (line.points.size() == 2) {
        (*this)(Line{line.points[0], line.points[1], line.pen});
        return;
    }
    // Readers lay dashes anew at each vertex or through all of them: between corners ours run through.
    const auto runs = dashRuns(line.points, line.closed, line.pen);
    const bool straight =
        std::ranges::all_of(runs, [](const DashRun& run) { return run.points.size() == 2; });
    if (line.pen.type == LineType::Continuous || straight) {
        polyline(line.points, line.closed, line.pen, false);
        return;
    }
    for (const DashRun& run : runs)
        polyline(run.points, run.closed, line.pen, true);
}

void DxfInk::operator()(const Arc& arc) {
    if (!(arc.radius_mm > 0)) return;
    const bool circle = std::abs(arc.end_deg - arc.start_deg) >= 360;
    begin(circle ? "CIRCLE" : "ARC", "AcDbCircle", arc.pen);
    out_.point(10, frame_.at(arc.centre));
    out_.real(40, arc.radius_mm * frame_.scale);
    if (circle) return;
    out_.text(100, "AcDbArc");
    out_.real(50, whole(arc.start_deg));
    out_.real(51, whole(arc.end_deg));
}

void DxfInk::operator()(const Fill& fill) {
    if (fill.outline.size() < 3) return;
    if (fill.colour == kWhite && fill.holes.empty())
        mask(fill.outline);
    else
        hatch(fill);
}

// Paper white only hides what is below. As a WIPEOUT it does so on any background; white ink would hide
// the black lines over it on a dark screen, where they show white.
void DxfInk::mask(const std::vector<Pt>& outline) {
    Pt low = frame_.at(outline.front());
    Pt high = low;
    for (const Pt corner : outline) {
        const Pt p = frame_.at(corner);
        low = {std::min(low.x, p.x), std::min(low.y, p.y)};
        high = {std::max(high.x, p.x), std::max(high.y, p.y)};
    }
    const double width = high.x - low.x;
    const double height = high.y - low.y;
    if (!(width > 0 && height > 0)) return;
    constexpr int kShownAlways = 7;
    constexpr int kPolygon = 2;
    begin("WIPEOUT", "AcDbWipeout", nullptr, kBlack);
    out_.integer(90, 0);
    out_.point(10, low);
    out_.point(11, {width, 0});
    out_.point(12, {0, height});
    out_.flat(13, {1, 1});
    out_.handle(340, 0);
    out_.integer(70, kShownAlways);
    out_.integer(280, 1);
    out_.integer(281, 50);
    out_.integer(282, 50);
    out_.integer(283, 0);
    out_.handle(360, 0);
    out_.integer(71, kPolygon);
    // Corners count from the middle of a picture of one pixel, y down; the first comes again.
    out_.integer(91, static_cast<long long>(outline.size() + 1));
    for (std::size_t i = 0; i <= outline.size(); ++i) {
        const Pt p = frame_.at(outline[i % outline.size()]);
        out_.flat(14, {(p.x - low.x) / width - 0.5, 0.5 - (p.y - low.y) / height});
    }
}

void DxfInk::hatch(const Fill& fill) {
    constexpr int kOuter = 1 + 2; // external, a polyline
    constexpr int kHole = 16 + 2; // outermost of what is inside
    begin("HATCH", "AcDbHatch", nullptr, fill.colour);
    out_.point(10, {});
    out_.real(210, 0);
    out_.real(220, 0);
    out_.real(230, 1);
    out_.text(2, "SOLID");
    out_.integer(70, 1);
    out_.integer(71, 0);
    std::vector<const std::vector<Pt>*> paths{&fill.outline};
    for (const auto& hole : fill.holes)
        if (hole.size() > 2) paths.push_back(&hole);
    out_.integer(91, static_cast<long long>(paths.size()));
    for (const auto* path : paths) {
        out_.integer(92, path == paths.front() ? kOuter : kHole);
        out_.integer(72, 0);
        out_.integer(73, 1);
        out_.integer(93, static_cast<long long>(path->size()));
        for (const Pt p : *path)
            out_.flat(10, frame_.at(p));
        out_.integer(97, 0);
    }
    out_.integer(75, 0); // odd parity
    out_.integer(76, 1);
    out_.integer(98, 0);
}

void DxfInk::operator()(const Text& text) {
    if (text.text.empty()) return;
    if (text.knock_out) mask(textCorners(text, kKnockOutMargin_mm));
    const int across = text.align == Align::Centre ? 1 : text.align == Align::Right ? 2 : 0;
    begin("TEXT", "AcDbText", nullptr, text.colour);
    out_.point(10, frame_.at(baselineStart(text)));
    out_.real(40, text.height_mm * frame_.scale);
    out_.text(1, dxfText(text.text));
    if (text.turn_deg != 0) out_.real(50, whole(text.turn_deg));
    out_.text(7, kDxfTextStyle);
    if (across != 0) {
        out_.integer(72, across);
        out_.point(11, frame_.at(text.at));
    }
    out_.text(100, "AcDbText");
}

void DxfInk::attributeText(Pt at, const std::string& words) {
    out_.point(10, at);
    out_.real(40, kAttributeHeight_mm * frame_.scale);
    out_.text(1, words);
    out_.text(7, kDxfTextStyle);
}

void DxfInk::attributeDefinitions(const DxfAttributes& prompts) {
    for (const auto& [tag, prompt] : prompts) {
        begin("ATTDEF", "AcDbText", nullptr, kBlack);
        attributeText({}, "");
        out_.text(100, "AcDbAttributeDefinition");
        out_.text(3, prompt);
        out_.text(2, tag);
        out_.integer(70, kInvisible);
    }
}

void DxfInk::insert(const DxfBlock& inserted, Pt at, const DxfAttributes& values) {
    const DxfHandle handle = begin("INSERT", "AcDbBlockReference", nullptr, kBlack);
    if (!values.empty()) out_.integer(66, 1);
    out_.text(2, inserted.name);
    out_.point(10, at);
    if (values.empty()) return;
    const auto owned = [&](const char* type) {
        out_.text(0, type);
        out_.handle(5, document_.newHandle());
        out_.handle(330, handle);
        out_.text(100, "AcDbEntity");
        out_.text(8, layer_);
    };
    for (const auto& [tag, value] : values) {
        owned("ATTRIB");
        out_.text(100, "AcDbText");
        attributeText(at, dxfText(value));
        out_.text(100, "AcDbAttribute");
        out_.text(2, tag);
        out_.integer(70, kInvisible);
    }
    owned("SEQEND");
}

DxfHandle DxfInk::viewport(int number, const Bounds& on_paper, Pt model_middle, double scale) {
    constexpr int kOn = 0x8000;
    constexpr int kScaleLocked = 0x4000;
    const double width = on_paper.high.x - on_paper.low.x;
    const double height = on_paper.high.y - on_paper.low.y;
    setLayer(kDxfViewportLayer);
    const DxfHandle handle = begin("VIEWPORT", "AcDbViewport", nullptr, kBlack);
    out_.point(10, {on_paper.low.x + width / 2, on_paper.low.y + height / 2});
    out_.real(40, width);
    out_.real(41, height);
    out_.integer(68, number);
    out_.integer(69, number);
    out_.flat(12, model_middle);
    out_.flat(13, {});
    out_.flat(14, {10, 10});
    out_.flat(15, {10, 10});
    out_.point(16, {}, 1); // looking down
    out_.point(17, {});
    out_.real(42, 50);
    out_.real(43, 0);
    out_.real(44, 0);
    out_.real(45, height * scale);
    out_.real(50, 0);
    out_.real(51, 0);
    out_.integer(72, 100);
    out_.integer(90, number == 1 ? kOn : kOn + kScaleLocked);
    out_.text(1, "");
    out_.integer(281, 0);
    out_.integer(71, 0);
    out_.integer(74, 0);
    out_.point(110, {});
    out_.point(111, {1, 0});
    out_.point(112, {0, 1});
    out_.integer(79, 0);
    out_.real(146, 0);
    return handle;
}

} // namespace gangway::exporting
