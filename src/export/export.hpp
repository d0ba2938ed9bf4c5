// Drawings out: PDF (cairo, finished by qpdf), SVG and DXF (written from the display list), PNG. Same drawing
// in, same bytes out.
#pragma once

#include "drawing/drawing.hpp"

#include <cstdint>
#include <expected>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace gangway::exporting {

/// All sheets as one PDF with a bookmark a sheet, one optional-content layer a drawing layer, fonts
/// embedded, PrintScaling none. Written atomically. `go_on` is asked before each sheet, with how many are
/// drawn; when it says no, nothing is written and the error says so.
[[nodiscard]] std::expected<void, std::string>
writePdf(const drawing::Drawing& drawing, const std::filesystem::path& file,
         const std::function<bool(std::size_t drawn)>& go_on = {});

/// One SVG a sheet in the folder, named by its file stem; text as outlines of the drawing face with the
/// words kept in data-text. Returns the files written.
[[nodiscard]] std::expected<std::vector<std::filesystem::path>, std::string>
writeSvgs(const drawing::Drawing& drawing, const std::filesystem::path& folder);

/// One PNG a sheet.
[[nodiscard]] std::expected<std::vector<std::filesystem::path>, std::string>
writePngs(const drawing::Drawing& drawing, const std::filesystem::path& folder, double dpi);

std::string svg(const drawing::Sheet& sheet);

/// One DXF (AC1015, mm) a sheet: model space holds what its views show at true size, with plates as blocks
/// that carry TAG, HEIGHT and SETOUT and a mark at each box centre that is not plotted; a layout of the
/// paper's size holds the rest and looks at the views at their scales.
[[nodiscard]] std::expected<std::vector<std::filesystem::path>, std::string>
writeDxfs(const drawing::Drawing& drawing, const std::filesystem::path& folder);

std::string dxf(const drawing::Sheet& sheet);

/// 32-bit pixels of a sheet or part of one, for the wall strip on screen: RGBA, premultiplied, row 0 on top.
struct Bitmap {
    int width = 0;
    int height = 0;
    std::vector<std::uint8_t> rgba;
};
/// Draws the part of the sheet from `lower_left` of size width x height mm at px_per_mm; without paper on
/// nothing, to be laid over another picture.
Bitmap rasterise(const drawing::Sheet& sheet, drawing::Pt lower_left, double width_mm, double height_mm,
                 double px_per_mm, std::optional<drawing::Colour> paper = drawing::kWhite);

/// A picture as PNG, written atomically (RGBA, row 0 on top, not premultiplied).
[[nodiscard]] std::expected<void, std::string> writePng(const Bitmap& picture,
                                                        const std::filesystem::path& file);

} // namespace gangway::exporting
