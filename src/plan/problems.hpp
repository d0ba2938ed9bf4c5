// Collects what is wrong while a tape is read. Private to src/plan.
#pragma once

#include "plan/diagnostic.hpp"
#include "plan/json_positions.hpp"

#include <string>
#include <utility>
#include <vector>

namespace gangway::plan {

struct Problem {
    Level level = Level::Error;
    json::NodeIndex node = 0;
    std::string pointer; ///< when it is more exact than the node's; the node is then an ancestor
    std::string message;
    std::size_t line = 0; ///< filled in by located()
    std::size_t column = 0;
};

class Problems {
public:
    void error(json::NodeIndex node, std::string message) {
        list_.push_back({Level::Error, node, {}, std::move(message)});
    }
    void warning(json::NodeIndex node, std::string message) {
        list_.push_back({Level::Warning, node, {}, std::move(message)});
    }
    void add(Problem problem) { list_.push_back(std::move(problem)); }
    const std::vector<Problem>& list() const { return list_; }
    bool empty() const { return list_.empty(); }

    /// With pointers, lines and columns, in the order of the text; past kMost a last line says how many more.
    Diagnostics located(const json::Tape& tape, json::Positions& positions) const;

    static constexpr std::size_t kMost = 1000;

private:
    std::vector<Problem> list_;
};

/// "plate 'kitchen-04'", "room 'hall', wall 'A'": what an object of the file is, by the lists it is in;
/// empty for the document itself.
std::string subjectOf(const json::Tape& tape, json::NodeIndex node);

} // namespace gangway::plan
