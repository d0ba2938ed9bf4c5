// Dimensions that measure: a DIMENSION whose picture is the display list's own, in its *D block.
#include "export/dxf_entities.hpp"

#include <cmath>
#include <numbers>

namespace gangway::exporting {

using namespace drawing;

namespace {

constexpr int kOwnBlock = 32; // the *D block is this dimension's alone
constexpr int kTextPlaced = 128;
constexpr int kOrdinate = 6;
constexpr int kAlongX = 64;

Pt middleOf(const Text& text) {
    const auto corners = textCorners(text);
    return {(corners[0].x + corners[2].x) / 2, (corners[0].y + corners[2].y) / 2};
}

/// How far left of from -> to the dimension line stands: the longest part that is parallel to it.
double offsetOf(const Dimension& dimension, Pt along) {
    constexpr double kParallel = 1e-6;
    double longest = 0;
    double offset = 0;
    for (const Line& line : dimension.lines) {
        const Pt way{line.to.x - line.from.x, line.to.y - line.from.y};
        const double length = std::hypot(way.x, way.y);
        if (length <= longest || std::abs(way.x * along.y - way.y * along.x) > kParallel * length) continue;
        longest = length;
        const Pt out{line.from.x - dimension.from.x, line.from.y - dimension.from.y};
        offset = along.x * out.y - along.y * out.x;
    }
    return offset;
}

} // namespace

void DxfInk::operator()(const Dimension& dimension) {
    DxfBlock& picture = document_.addDimensionBlock();
    DxfInk parts(document_, picture, frame_);
    parts.layer_ = layer_;
    for (const Line& line : dimension.lines)
        parts(line);
    for (const Arc& arc : dimension.arcs)
        parts(arc);
    for (const Text& text : dimension.texts)
        parts(text);

    const bool linear = dimension.kind == Dimension::Kind::Linear;
    const bool along_x = dimension.kind == Dimension::Kind::Running;
    const Pt from = frame_.at(dimension.from);
    const Pt to = frame_.at(dimension.to);
    const double room = std::hypot(to.x - from.x, to.y - from.y);
    const Pt along = room > 0 ? Pt{(to.x - from.x) / room, (to.y - from.y) / room} : Pt{1, 0};
    // An ordinate counts from a datum, which is off the paper when a row's origin is not called 0. On paper
    // itself nothing measures true.
    Pt datum = from;
    const bool true_size = &block_ != &document_.paper();
    if (true_size && along_x) datum.x = to.x - dimension.measured_mm;
    if (true_size && !linear && !along_x) datum.y = to.y - dimension.measured_mm;
    if (linear) {
        const double off = offsetOf(dimension, along) * frame_.scale;
        datum = {to.x - along.y * off, to.y + along.x * off};
    }
    const bool has_text = !dimension.texts.empty();
    const int type = linear ? 0 : kOrdinate + (along_x ? kAlongX : 0);

    begin("DIMENSION", "AcDbDimension", nullptr, kBlack);
    out_.text(2, picture.name);
    out_.point(10, datum);
    out_.point(11, has_text ? frame_.at(middleOf(dimension.texts.front())) : to);
    out_.integer(70, type + kOwnBlock + kTextPlaced);
    out_.integer(71, 5);
    out_.real(42, dimension.measured_mm);
    if (has_text) out_.text(1, dxfText(dimension.texts.front().text));
    out_.text(3, document_.dimensionStyle(frame_.scale));
    if (linear) {
        out_.text(100, "AcDbAlignedDimension");
        out_.point(13, from);
        out_.point(14, to);
        out_.real(50, std::atan2(along.y, along.x) * 180 / std::numbers::pi);
        out_.text(100, "AcDbRotatedDimension");
    } else {
        out_.text(100, "AcDbOrdinateDimension");
        out_.point(13, to);
        out_.point(14, has_text ? frame_.at(dimension.texts.front().at) : to);
    }
}

} // namespace gangway::exporting
