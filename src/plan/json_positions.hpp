// Where the nodes of a tape are in the text. Walks the text once, and only when somebody asks.
// Private to src/plan.
#pragma once

#include "plan/json_tape.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace gangway::plan::json {

struct LineColumn {
    std::size_t line = 1;   ///< from 1
    std::size_t column = 1; ///< from 1, in bytes
};

class Positions {
public:
    explicit Positions(std::string_view text) : text_(text) {}

    LineColumn ofNode(NodeIndex node);
    LineColumn ofOffset(std::size_t offset);
    /// A value as it stands in the text, on one line, with single spaces after commas and colons.
    std::string rawValue(NodeIndex node);

private:
    void scan();

    std::string_view text_;
    std::vector<std::uint32_t> offsets_; ///< of every node; empty until asked for
    std::vector<std::uint32_t> line_starts_;
};

/// A key as a part of a JSON pointer: ~ and / are escaped.
std::string pointerPart(std::string_view key);

/// JSON pointer (RFC 6901) of a node; for a key that of its value.
std::string pointerOf(const Tape& tape, NodeIndex node);

/// The node a pointer leads to, or the last one on the way when it leads nowhere.
NodeIndex nodeAt(const Tape& tape, std::string_view pointer);

} // namespace gangway::plan::json
