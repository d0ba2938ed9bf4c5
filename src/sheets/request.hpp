// What a kind of sheets is asked for, looked at once for all kinds: paper, room, scale; and the drawing that
// its sheets go into.
#pragma once

#include "sheets/paper.hpp"
#include "sheets/sheets.hpp"

#include <expected>
#include <span>
#include <string>
#include <string_view>

namespace gangway::sheets {

/// The paper asked for. The error is a sentence: it is unknown, or there is no such room, or the scale asked
/// for is none of `scales` (empty: no scale is looked at) of what `name` says ("room sheets").
[[nodiscard]] std::expected<Paper, std::string> requestedPaper(const plan::Plan& plan, const Options& options,
                                                               std::string_view name = {},
                                                               std::span<const double> scales = {});

/// A drawing without sheets, with what the project says of it.
drawing::Drawing drawingOf(const plan::Project& project, std::string subject);

} // namespace gangway::sheets
