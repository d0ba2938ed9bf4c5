// Issues of a set of sheets: freezing the plan into one, what the plan was when one was handed over, and what
// has changed since.
#pragma once

#include "plan/plan.hpp"

#include <expected>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gangway::review {

/// The revision letter after this one: A B C D E F G H J K L M N P R T U V W Y, then AA, AB and so on; "A"
/// after what is none of them. Letters and order: drawing-standards 6, row 64.
std::string letterAfter(std::string_view letter);
/// The letter that the next issue of the plan gets. A first issue keeps the letter that the project bears.
std::string nextLetter(const plan::Plan& plan);

/// What stands in the triangle at a change: the letter that the set bears or, after it was changed, gets
/// next; "-" while it has none.
std::string markLetter(const plan::Plan& plan);

/// What is said of an issue when it is made.
struct Particulars {
    std::string date; ///< YYYY-MM-DD
    std::string by;
    std::string note; ///< may be empty
    plan::Issue::Level level = plan::Issue::Level::Ffl;
    plan::Issue::Face face = plan::Issue::Face::Finished;
    std::vector<plan::IssuedSheet> sheets; ///< of the set, in its order
};

/// The plan as its next issue. Refused with a sentence when the date is none or before the last issue's, when
/// nobody issues it, when nothing has changed since the last issue, or when the floor build-up of a room with
/// boxes is not stated: at first fix the electrician counts from the slab.
[[nodiscard]] std::expected<plan::Issue, std::string> freeze(const plan::Plan& plan,
                                                             const Particulars& particulars);

/// Names of rooms with plates, or with luminaires on their walls, whose floor build-up is not stated.
std::vector<std::string> roomsWithoutFloor(const plan::Plan& plan);

/// The issue of this letter; nullptr when the plan has none.
const plan::Issue* findIssue(const plan::Plan& plan, std::string_view letter);
/// The last issue when the plan is exactly as it was issued then (answers aside), else nullptr.
const plan::Issue* issuedAs(const plan::Plan& plan);
/// What sheets of the plan mark changes against: the issue before when the plan is exactly as issued, else
/// the last; nullptr when there is none.
const plan::Issue* comparedWith(const plan::Plan& plan);

/// The plan as it was at an issue, as far as plates, luminaires and floor build-ups go; all else is as in
/// `plan`. Good enough to be compared with, and for clouds.
plan::Plan stateAt(const plan::Plan& plan, const plan::Issue& issue);

/// The plan without what two prints of the same sheet may differ in: revision, date, answers, issues.
plan::Plan unstamped(const plan::Plan& plan);
/// The plan as its sheets are to say it: with "after B" for a revision, and no date, when it is not as
/// issued.
plan::Plan stamped(plan::Plan plan);

/// SHA-256 of all that an issue holds, first 16 hex digits. It stands on the cover, in its QR code too.
std::string fingerprint(const plan::Issue& issue);

/// The letter of the issue in which this sheet last changed, going back from the last; empty when the last
/// issue has no sheet of this number, or one that showed something else.
std::string sheetRevision(const plan::Plan& plan, std::string_view number, std::string_view print);

} // namespace gangway::review
