// The walls that elevation sheets are drawn of, each looked at with all that its sheet says: answers, covers,
// zones, changes, play and the datum its numbers count from.
#pragma once

#include "sheets/revision_marks.hpp"
#include "sheets/sheets.hpp"
#include "sheets/wall_view.hpp"

#include <expected>
#include <map>
#include <string>
#include <vector>

namespace gangway::sheets {

/// What is wrong with the options, as a sentence; empty when nothing is.
std::string problemWith(const plan::Plan& plan, const Options& options);

/// A wall that has something on it.
struct WallWork {
    const plan::Room* room = nullptr;
    std::size_t wall = 0;
    std::vector<Mounted> mounted;
};
/// In room and wall order.
std::vector<WallWork> wallsWithSomething(const House& house);

/// The numbers that elevation sheets have in the whole set, for every sheet that sends one to them.
class ElevationNumbers {
public:
    explicit ElevationNumbers(const House& house) : ElevationNumbers(wallsWithSomething(house)) {}
    explicit ElevationNumbers(const std::vector<WallWork>& walls);
    /// "E-07", the first sheet with the wall's elevation; empty for a wall that has none.
    std::string of(const plan::Room& room, std::size_t wall) const;

private:
    std::map<std::pair<std::string, std::size_t>, std::size_t> numbers_; ///< by room id and wall
};

/// Looks at walls; what holds for the whole house is worked out once. House and options must outlive it.
class WallLooks {
public:
    WallLooks(const House& house, const Options& options);
    /// The error is a sentence: what the datum needs is not stated.
    [[nodiscard]] std::expected<WallView, std::string> at(WallWork wall) const;

private:
    const House* house_;
    const Options* options_;
    Answers answers_;
    std::map<std::string, double> margins_;
    RevisionMarks changes_;
};

} // namespace gangway::sheets
