// Sheets as SVG, written from the display list: one user unit is one mm, y down, text as outlines of the
// drawing face.
#include "export/canvas.hpp"
#include "export/export.hpp"
#include "export/files.hpp"

#include "drawing/face.hpp"

#include <fmt/format.h>

#include <cmath>
#include <iterator>
#include <map>
#include <numbers>

namespace gangway::exporting {

using namespace drawing;

namespace {

std::string decimal(double value) {
    std::string text = fmt::format("{:.4f}", value);
    while (text.back() == '0')
        text.pop_back();
    if (text.back() == '.') text.pop_back();
    return text == "-0" ? "0" : text;
}

std::string escaped(const std::string& text) {
    std::string out;
    for (const char c : cleanUtf8(text)) {
        switch (c) {
        case '&':
            out += "&amp;";
            break;
        case '<':
            out += "&lt;";
            break;
        case '>':
            out += "&gt;";
            break;
        case '"':
            out += "&quot;";
            break;
        default:
            out += c;
        }
    }
    return out;
}

std::string hex(Colour c) {
    return fmt::format("#{:02x}{:02x}{:02x}", c.r, c.g, c.b);
}

class SvgCanvas : public Canvas {
public:
    explicit SvgCanvas(double height_mm) : height_mm_(height_mm) {}

    void beginLayer(const std::string& layer) override { put("<g data-layer=\"{}\">\n", escaped(layer)); }
    void endLayer() override { body_ += "</g>\n"; }
    void object(const std::string& id) override {
        id_ = id.empty() ? std::string() : fmt::format(" data-id=\"{}\"", escaped(id));
    }

    void stroke(const std::vector<Pt>& points, bool closed, const Pen& pen,
                const std::vector<double>& pattern_mm) override {
        put("<path{} d=\"{}\"{}/>\n", id_, path(points, closed), strokeStyle(pen, pattern_mm));
    }

    void arc(const Arc& arc, const std::vector<double>& pattern_mm) override {
        const std::string style = strokeStyle(arc.pen, pattern_mm);
        const double span_deg = arc.end_deg - arc.start_deg;
        if (span_deg >= 360) {
            put("<circle{} cx=\"{}\" cy=\"{}\" r=\"{}\"{}/>\n", id_, decimal(arc.centre.x),
                decimal(down(arc.centre.y)), decimal(arc.radius_mm), style);
            return;
        }
        const auto rim = [&](double deg) {
            const double angle = deg * std::numbers::pi / 180;
            return at({arc.centre.x + arc.radius_mm * std::cos(angle),
                       arc.centre.y + arc.radius_mm * std::sin(angle)});
        };
        // Counter-clockwise on paper is SVG's sweep 0, since y points down there.
        const std::string radius = decimal(arc.radius_mm);
        put("<path{} d=\"M{}A{} {} 0 {} 0 {}\"{}/>\n", id_, rim(arc.start_deg), radius, radius,
            span_deg > 180 ? 1 : 0, rim(arc.end_deg), style);
    }

    void fill(const Fill& fill) override {
        std::string d = path(fill.outline, true);
        for (const auto& hole : fill.holes)
            if (hole.size() > 2) d += path(hole, true);
        put("<path{} d=\"{}\" fill=\"{}\" fill-rule=\"evenodd\"/>\n", id_, d, hex(fill.colour));
    }

    void text(const Text& text) override {
        const Pt start = baselineStart(text);
        const double k = text.height_mm / Face::drawingFace().capHeight();
        std::string transform = fmt::format("translate({} {})", decimal(start.x), decimal(down(start.y)));
        if (text.turn_deg != 0) transform += fmt::format(" rotate({})", decimal(-text.turn_deg));
        transform += fmt::format(" scale({:.8f} {:.8f})", k, -k);
        put("<g{} data-text=\"{}\" fill=\"{}\" transform=\"{}\">", id_, escaped(text.text), hex(text.colour),
            transform);
        for (const PlacedGlyph& placed : setText(text.text, text.height_mm)) {
            if (placed.glyph->outline.empty()) continue;
            used_.emplace(placed.glyph->index, placed.glyph);
            put("<use xlink:href=\"#g{}\" x=\"{}\"/>", placed.glyph->index, decimal(placed.x_mm / k));
        }
        body_ += "</g>\n";
    }

    const std::string& body() const { return body_; }

    // Each glyph once, in font units, in the order of the font.
    std::string glyphs() const {
        std::string out;
        for (const auto& [index, glyph] : used_)
            out += fmt::format("<path id=\"g{}\" d=\"{}\"/>\n", index, glyphPath(*glyph));
        return out;
    }

private:
    template <typename... Values>
    void put(fmt::format_string<Values...> form, Values&&... values) {
        fmt::format_to(std::back_inserter(body_), form, std::forward<Values>(values)...);
    }

    double down(double y) const { return height_mm_ - y; }
    std::string at(Pt p) const { return fmt::format("{} {}", decimal(p.x), decimal(down(p.y))); }

    std::string path(const std::vector<Pt>& points, bool closed) const {
        std::string d;
        for (const Pt& p : points)
            d += fmt::format("{}{}", d.empty() ? 'M' : 'L', at(p));
        if (closed) d += 'Z';
        return d;
    }

    static std::string strokeStyle(const Pen& pen, const std::vector<double>& pattern_mm) {
        std::string style = fmt::format(" fill=\"none\" stroke=\"{}\" stroke-width=\"{}\"", hex(pen.colour),
                                        decimal(pen.width_mm));
        if (pattern_mm.empty()) return style;
        std::string pattern;
        for (const double part : pattern_mm) {
            if (!pattern.empty()) pattern += ' ';
            pattern += decimal(part);
        }
        return style + fmt::format(" stroke-dasharray=\"{}\"", pattern);
    }

    static std::string glyphPath(const Glyph& glyph) {
        std::string d;
        const auto point = [](Pt p) { return fmt::format("{} {}", decimal(p.x), decimal(p.y)); };
        for (const OutlineStep& step : glyph.outline) {
            switch (step.kind) {
            case OutlineStep::Kind::Move:
                d += fmt::format("M{}", point(step.to));
                break;
            case OutlineStep::Kind::Line:
                d += fmt::format("L{}", point(step.to));
                break;
            case OutlineStep::Kind::Curve:
                d += fmt::format("C{} {} {}", point(step.a), point(step.b), point(step.to));
                break;
            case OutlineStep::Kind::Close:
                d += 'Z';
                break;
            }
        }
        return d;
    }

    double height_mm_;
    std::string id_;
    std::string body_;
    std::map<unsigned, const Glyph*> used_;
};

} // namespace

std::string svg(const Sheet& sheet) {
    SvgCanvas canvas(sheet.height_mm);
    walk(sheet, canvas);
    const std::string width = decimal(sheet.width_mm);
    const std::string height = decimal(sheet.height_mm);
    const std::string title =
        sheet.number.empty() ? sheet.title : fmt::format("{} {}", sheet.number, sheet.title);
    return fmt::format(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
        "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" "
        "width=\"{0}mm\" height=\"{1}mm\" viewBox=\"0 0 {0} {1}\" stroke-linecap=\"butt\" "
        "data-scale=\"1:{2}\">\n<title>{3}</title>\n<defs>\n{4}</defs>\n"
        "<rect width=\"{0}\" height=\"{1}\" fill=\"#ffffff\"/>\n{5}</svg>\n",
        width, height, decimal(sheet.scale), escaped(title), canvas.glyphs(), canvas.body());
}

std::expected<std::vector<std::filesystem::path>, std::string>
writeSvgs(const Drawing& drawing, const std::filesystem::path& folder) {
    const auto targets = sheetFiles(drawing, folder, ".svg");
    if (!targets) return targets;
    for (std::size_t i = 0; i < targets->size(); ++i)
        if (auto written = writeFile((*targets)[i], svg(drawing.sheets[i])); !written)
            return std::unexpected(written.error());
    return targets;
}

} // namespace gangway::exporting
