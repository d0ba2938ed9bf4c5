// All elevation sheets from plan to PDF, against cairo drawing the same recorded primitives and nothing else
// (budget: 2 times).
#include "support/generated_house.hpp"

#include "catalogue/catalogue.hpp"
#include "export/export.hpp"
#include "plan/paths.hpp"
#include "sheets/sheets.hpp"

#include <cairo-ft.h>
#include <cairo-pdf.h>
#include <ft2build.h>
#include FT_FREETYPE_H

#include <benchmark/benchmark.h>

#include <cmath>
#include <numbers>

namespace {
using namespace gangway;

const catalogue::Catalogue& shipped() {
    static const catalogue::Catalogue loaded = *catalogue::load(plan::assetsFolder() / "catalogue");
    return loaded;
}

constexpr double kPointsPerMm = 72 / 25.4;

/// The least that can be done with cairo for these primitives: no checks, no layers, no finishing.
class BareCairo {
public:
    BareCairo(double width_mm, double height_mm, cairo_font_face_t* face)
        : surface_(cairo_pdf_surface_create_for_stream(
              [](void*, const unsigned char*, unsigned) { return CAIRO_STATUS_SUCCESS; }, nullptr,
              width_mm * kPointsPerMm, height_mm * kPointsPerMm)),
          cr_(cairo_create(surface_)) {
        cairo_scale(cr_, kPointsPerMm, -kPointsPerMm);
        cairo_translate(cr_, 0, -height_mm);
        cairo_set_font_face(cr_, face);
    }
    BareCairo(const BareCairo&) = delete;
    BareCairo& operator=(const BareCairo&) = delete;
    ~BareCairo() {
        cairo_destroy(cr_);
        cairo_surface_destroy(surface_);
    }
    void page() { cairo_show_page(cr_); }

    void operator()(const drawing::Line& line) {
        cairo_move_to(cr_, line.from.x, line.from.y);
        cairo_line_to(cr_, line.to.x, line.to.y);
        stroke(line.pen, std::hypot(line.to.x - line.from.x, line.to.y - line.from.y));
    }
    void operator()(const drawing::Polyline& line) {
        double length = 0;
        for (std::size_t i = 0; i < line.points.size(); ++i) {
            i == 0 ? cairo_move_to(cr_, line.points[i].x, line.points[i].y)
                   : cairo_line_to(cr_, line.points[i].x, line.points[i].y);
            if (i > 0)
                length += std::hypot(line.points[i].x - line.points[i - 1].x,
                                     line.points[i].y - line.points[i - 1].y);
        }
        if (line.closed) cairo_close_path(cr_);
        stroke(line.pen, length);
    }
    void operator()(const drawing::Arc& arc) {
        cairo_arc(cr_, arc.centre.x, arc.centre.y, arc.radius_mm, arc.start_deg * std::numbers::pi / 180,
                  arc.end_deg * std::numbers::pi / 180);
        stroke(arc.pen, arc.radius_mm * 6);
    }
    void operator()(const drawing::Fill& fill) {
        cairo_new_path(cr_);
        outline(fill.outline);
        for (const auto& hole : fill.holes)
            outline(hole);
        colour(fill.colour);
        cairo_fill(cr_);
    }
    void operator()(const drawing::Text& text) {
        cairo_save(cr_);
        cairo_translate(cr_, text.at.x, text.at.y);
        cairo_rotate(cr_, text.turn_deg * std::numbers::pi / 180);
        cairo_scale(cr_, 1, -1);
        cairo_set_font_size(cr_, drawing::emSize(text.height_mm));
        colour(text.colour);
        cairo_move_to(cr_, 0, 0);
        cairo_show_text(cr_, text.text.c_str());
        cairo_restore(cr_);
    }
    void operator()(const drawing::Dimension& dimension) {
        for (const auto& line : dimension.lines)
            (*this)(line);
        for (const auto& arc : dimension.arcs)
            (*this)(arc);
        for (const auto& text : dimension.texts)
            (*this)(text);
    }

private:
    void colour(drawing::Colour c) { cairo_set_source_rgb(cr_, c.r / 255.0, c.g / 255.0, c.b / 255.0); }
    void outline(const std::vector<drawing::Pt>& points) {
        for (std::size_t i = 0; i < points.size(); ++i)
            i == 0 ? cairo_move_to(cr_, points[i].x, points[i].y)
                   : cairo_line_to(cr_, points[i].x, points[i].y);
        cairo_close_path(cr_);
    }
    void stroke(const drawing::Pen& pen, double length_mm) {
        const auto dashes = drawing::dashPattern(pen, length_mm);
        cairo_set_dash(cr_, dashes.data(), static_cast<int>(dashes.size()), 0);
        cairo_set_line_width(cr_, pen.width_mm);
        colour(pen.colour);
        cairo_stroke(cr_);
    }
    cairo_surface_t* surface_;
    cairo_t* cr_;
};

void cairoAlone(benchmark::State& state) {
    const auto plan = testing::generatedHouse(static_cast<int>(state.range(0)));
    const auto drawing = sheets::elevationSheets(plan, shipped(), {});
    FT_Library library = nullptr;
    FT_Init_FreeType(&library);
    FT_Face face = nullptr;
    FT_New_Face(library, drawing::drawingFacePath().c_str(), 0, &face);
    cairo_font_face_t* cairo_face = cairo_ft_font_face_create_for_ft_face(face, FT_LOAD_NO_HINTING);
    for (auto _ : state) {
        BareCairo cairo(drawing->sheets.front().width_mm, drawing->sheets.front().height_mm, cairo_face);
        for (const auto& sheet : drawing->sheets) {
            for (const auto& item : sheet.items)
                std::visit(cairo, item.primitive);
            cairo.page();
        }
    }
    cairo_font_face_destroy(cairo_face);
    FT_Done_FreeType(library);
    state.counters["sheets"] = static_cast<double>(drawing->sheets.size());
    state.SetComplexityN(state.range(0));
}

void layOutSheets(benchmark::State& state) {
    const auto plan = testing::generatedHouse(static_cast<int>(state.range(0)));
    for (auto _ : state)
        benchmark::DoNotOptimize(sheets::elevationSheets(plan, shipped(), {}));
    state.SetComplexityN(state.range(0));
}

void planToPdf(benchmark::State& state) {
    const auto plan = testing::generatedHouse(static_cast<int>(state.range(0)));
    const std::filesystem::path folder = GANGWAY_BENCH_OUT;
    std::filesystem::create_directories(folder);
    for (auto _ : state) {
        const auto drawing = sheets::elevationSheets(plan, shipped(), {});
        if (!exporting::writePdf(*drawing, folder / "sheets.pdf"))
            return state.SkipWithError("the PDF was not written");
    }
    state.SetComplexityN(state.range(0));
}
} // namespace

BENCHMARK(cairoAlone)->Arg(5)->Arg(50)->Arg(500)->Unit(benchmark::kMillisecond)->Complexity(benchmark::oN);
BENCHMARK(layOutSheets)->Arg(5)->Arg(50)->Arg(500)->Unit(benchmark::kMillisecond)->Complexity(benchmark::oN);
BENCHMARK(planToPdf)->Arg(5)->Arg(50)->Arg(500)->Unit(benchmark::kMillisecond)->Complexity(benchmark::oN);
