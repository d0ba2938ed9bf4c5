// JSON text as one flat list of nodes in the order of the text: quick to fill, keeps the order of keys,
// and its node numbers are what json_positions.hpp counts to find a line and column again.
// Private to src/plan.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace gangway::plan::json {

enum class Kind : std::uint8_t { Object, Array, Text, Number, True, False, Null };

using NodeIndex = std::uint32_t;

/// One value or key. Children of a container follow it; in an object each value follows its key.
struct Node {
    double number = 0;
    std::uint32_t offset = 0; ///< Text: where it is in Tape::letters
    std::uint32_t length = 0; ///< Text: bytes; containers: elements or members
    NodeIndex end = 0;        ///< first node behind this one and all it holds
    Kind kind = Kind::Null;
};

struct Tape {
    std::vector<Node> nodes;
    std::string letters; ///< all texts, one behind the other, escapes resolved

    std::string_view text(NodeIndex node) const {
        return std::string_view(letters).substr(nodes[node].offset, nodes[node].length);
    }
    /// The value of a key of an object, 0 (the root is never a member) when it has none.
    NodeIndex member(NodeIndex object, std::string_view key) const;
};

/// Why a text did not become a tape, or what is wrong although it did.
struct ParseOutcome {
    enum class Stop { None, Syntax, TooDeep, TooMuch };
    Stop stop = Stop::None;
    std::size_t offset = 0;               ///< Syntax: byte after what could not be read
    std::vector<NodeIndex> repeated_keys; ///< keys that stand twice in one object, the later ones
    std::vector<NodeIndex> overflowing;   ///< numbers too large for double; read as 0
    Tape tape;
};

inline constexpr std::size_t kMaxDepth = 64;
inline constexpr std::size_t kMaxNodes = 24'000'000; ///< 576 MB of nodes; a 256 MiB plan has fewer

ParseOutcome parse(std::string_view text);

/// A node as people say it: "a number", "a list".
std::string_view kindWord(Kind kind);

} // namespace gangway::plan::json
