// Plan files in and out: *.plan.json, described by assets/schema/plan.schema.json.
#pragma once

#include "plan/diagnostic.hpp"
#include "plan/plan.hpp"

#include <expected>
#include <filesystem>
#include <string>
#include <string_view>

namespace gangway::plan {

/// A plan that could be read, with warnings (unknown keys, an older format) if there were any.
struct ReadResult {
    Plan plan;
    Diagnostics warnings;
};

/// Reads a plan from text. On failure all problems found come back, each with line, column, JSON pointer
/// and what to do. Never throws.
[[nodiscard]] std::expected<ReadResult, Diagnostics> read(std::string_view text);

/// Reads a plan file; also fails for a missing or unreadable file, a directory, and one over 256 MiB.
[[nodiscard]] std::expected<ReadResult, Diagnostics> readFile(const std::filesystem::path& file);

/// The plan as text: fixed key order, shortest exact numbers, LF, a final newline. Reading it gives the
/// same plan; writing that gives the same bytes.
[[nodiscard]] std::string write(const Plan& plan);

/// Writes atomically: a temporary file beside the target, flushed, then renamed over it. On failure the
/// old file is untouched and the message says why and what to do.
[[nodiscard]] std::expected<void, std::string> writeFile(const Plan& plan, const std::filesystem::path& file);

/// Atomic write of any text or bytes, as writeFile does it; used by every exporter.
[[nodiscard]] std::expected<void, std::string> writeBytesAtomically(std::string_view bytes,
                                                                   const std::filesystem::path& file);

/// Checks of meaning that need no geometry library: dangling references, duplicate ids, self-crossing
/// rooms, openings and plates off their wall, unknown furniture kinds. `read` runs it; an edit may too.
/// Diagnostics carry pointers but no lines.
[[nodiscard]] Diagnostics validate(const Plan& plan);

/// The known word nearest to `word` by edit distance, or empty when none is near.
std::string nearestWord(std::string_view word, const std::vector<std::string>& known);

} // namespace gangway::plan
