// Agreements: fingerprints of what was agreed, the state they give each plate, and the answers themselves.
#pragma once

#include "plan/plan.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace gangway::review {

enum class State { Open, Agreed, Queried, Reopened };
std::string_view word(State state); ///< "open", "agreed", "queried", "reopened"

/// What a fingerprint covers, as canonical text, one `key=value` a line: room, host, position and height
/// (to 0.1 mm), orientation, modules, finish, what it feeds or is for, and the context it relied on: the
/// furniture or device it belongs to, doors in its wall and which way they open, the build-up under it.
/// Independent of the order of lists in the plan, of tags, notes and circuits.
std::string fingerprintText(const plan::Plan& plan, const plan::Plate& plate);
/// SHA-256 (FIPS 180-4) of that text, first 16 hex digits. What was moved and moved back has its old
/// fingerprint again, so its old answer counts again.
std::string fingerprint(const plan::Plan& plan, const plan::Plate& plate);

/// Open: no answer yet. Agreed or queried: by the latest answer while the fingerprint holds; reopened after.
State stateOf(const plan::Plan& plan, const plan::Plate& plate);
/// The state of every plate, in the order of plan.plates; in time linear in the plan, where asking for one
/// after the other would not be.
std::vector<State> states(const plan::Plan& plan);
/// The fingerprint of every plate, likewise.
std::vector<std::string> fingerprints(const plan::Plan& plan);

/// The agreement to append for an answer given now; `at` is ISO 8601 UTC.
plan::Agreement answer(const plan::Plan& plan, const plan::Plate& plate, plan::Agreement::Answer answer,
                       std::string by, std::string at, std::string note);

struct Count {
    int open = 0, agreed = 0, queried = 0, reopened = 0;
};
Count count(const plan::Plan& plan);

/// SHA-256 as 64 lower-case hex digits.
std::string sha256(std::string_view bytes);

} // namespace gangway::review
