#include "review/relations.hpp"
#include "review/review.hpp"

#include <unordered_map>
#include <utility>

namespace gangway::review {
namespace {

State stateBy(const plan::Agreement* latest, const std::string& fingerprint_now) {
    if (!latest) return State::Open;
    if (latest->fingerprint != fingerprint_now) return State::Reopened;
    return latest->answer == plan::Agreement::Answer::Agree ? State::Agreed : State::Queried;
}

} // namespace

std::string_view word(State state) {
    switch (state) {
    case State::Open:
        return "open";
    case State::Agreed:
        return "agreed";
    case State::Queried:
        return "queried";
    case State::Reopened:
        return "reopened";
    }
    return "open";
}

State stateOf(const plan::Plan& plan, const plan::Plate& plate) {
    const plan::Agreement* latest = plan::latestAgreement(plan, plate.id);
    return stateBy(latest, latest ? fingerprint(plan, plate) : std::string());
}

std::vector<State> states(const plan::Plan& plan) {
    // Later answers overwrite earlier ones, so that each plate is left with its latest.
    std::unordered_map<std::string_view, const plan::Agreement*> latest;
    for (const plan::Agreement& agreement : plan.agreements)
        latest[agreement.plate] = &agreement;
    const detail::Relations relations(plan);
    std::vector<State> states;
    states.reserve(plan.plates.size());
    for (const plan::Plate& plate : plan.plates) {
        const auto found = latest.find(plate.id);
        states.push_back(
            found == latest.end()
                ? State::Open
                : stateBy(found->second, detail::digest(detail::canonicalText(relations, plate))));
    }
    return states;
}

std::vector<std::string> fingerprints(const plan::Plan& plan) {
    const detail::Relations relations(plan);
    std::vector<std::string> prints;
    prints.reserve(plan.plates.size());
    for (const plan::Plate& plate : plan.plates)
        prints.push_back(detail::digest(detail::canonicalText(relations, plate)));
    return prints;
}

plan::Agreement answer(const plan::Plan& plan, const plan::Plate& plate, plan::Agreement::Answer answer,
                       std::string by, std::string at, std::string note) {
    plan::Agreement agreement;
    agreement.plate = plate.id;
    agreement.answer = answer;
    agreement.by = std::move(by);
    agreement.at = std::move(at);
    agreement.note = std::move(note);
    agreement.fingerprint = fingerprint(plan, plate);
    return agreement;
}

Count count(const plan::Plan& plan) {
    Count count;
    for (const State state : states(plan)) {
        switch (state) {
        case State::Open:
            ++count.open;
            break;
        case State::Agreed:
            ++count.agreed;
            break;
        case State::Queried:
            ++count.queried;
            break;
        case State::Reopened:
            ++count.reopened;
            break;
        }
    }
    return count;
}

} // namespace gangway::review
