#include "edit/draft.hpp"

#include <algorithm>
#include <ranges>

namespace gangway::edit {
namespace {

PlanHead headOf(const plan::Plan& plan) {
    return {plan.project, plan.pack, plan.units, plan.accessible};
}

/// Changes the plan's element for the one that was kept, and keeps the other.
void exchange(plan::Plan& plan, Change<PlanHead>& change) {
    PlanHead now = headOf(plan);
    plan.project = std::move(change.other->project);
    plan.pack = std::move(change.other->pack);
    plan.units = change.other->units;
    plan.accessible = change.other->accessible;
    change.other = std::move(now);
}
template <class T>
void exchange(plan::Plan& plan, Change<T>& change) {
    std::swap(List<T>::of(plan)[change.index], *change.other);
}

template <class T>
void takeOut(plan::Plan& plan, Change<T>& change) {
    auto& list = List<T>::of(plan);
    change.other = std::move(list[change.index]);
    list.erase(list.begin() + static_cast<std::ptrdiff_t>(change.index));
}
template <class T>
void putIn(plan::Plan& plan, Change<T>& change) {
    auto& list = List<T>::of(plan);
    list.insert(list.begin() + static_cast<std::ptrdiff_t>(change.index), std::move(*change.other));
    change.other.reset();
}

enum class Way { Back, Again };
template <class T>
void turn(plan::Plan& plan, Change<T>& change, Way way) {
    using Kind = typename Change<T>::Kind;
    if constexpr (std::is_same_v<T, PlanHead>) {
        exchange(plan, change);
    } else if (change.kind == Kind::Changed) {
        exchange(plan, change);
    } else if ((change.kind == Kind::Added) == (way == Way::Back)) {
        takeOut(plan, change);
    } else {
        putIn(plan, change);
    }
}

} // namespace

void Delta::undo(plan::Plan& plan) {
    for (Any& any : std::views::reverse(changes_))
        std::visit([&](auto& change) { turn(plan, change, Way::Back); }, any);
}

void Delta::redo(plan::Plan& plan) {
    for (Any& any : changes_)
        std::visit([&](auto& change) { turn(plan, change, Way::Again); }, any);
}

void Touched::add(const Touched& more) {
    others = others || more.others;
    answers = answers || more.answers;
    lighting = lighting || more.lighting;
    plates.insert(more.plates.begin(), more.plates.end());
    furniture.insert(more.furniture.begin(), more.furniture.end());
    luminaires.insert(more.luminaires.begin(), more.luminaires.end());
    devices.insert(more.devices.begin(), more.devices.end());
    legs.insert(more.legs.begin(), more.legs.end());
}

void Draft::keepHead() {
    constexpr std::size_t kHead = 0;
    if (delta_.kept_.insert({kHead, 0}).second)
        delta_.changes_.push_back(Change<PlanHead>{Change<PlanHead>::Kind::Changed, 0, headOf(plan_)});
    touched_.others = true;
}

void Draft::touch(const plan::Plate& plate, bool structure) {
    touched_.plates.insert(plate.id);
    structure_ = structure_ || structure;
}
void Draft::touch(const plan::Furniture& piece, bool) {
    touched_.furniture.insert(piece.id);
    structure_ = true;
}
void Draft::touch(const plan::Luminaire& luminaire, bool structure) {
    touched_.luminaires.insert(luminaire.id);
    structure_ = structure_ || structure;
}
void Draft::touch(const plan::Device& device, bool structure) {
    touched_.devices.insert(device.id);
    structure_ = structure_ || structure;
}
void Draft::touch(const plan::SwitchLeg& leg, bool) {
    touched_.legs.insert(leg.id);
}
void Draft::touch(const plan::Circuit&, bool) {
    touched_.lighting = true;
}
void Draft::touch(const plan::LightScene&, bool) {
    touched_.lighting = true;
}
void Draft::touch(const plan::Agreement&, bool) {
    touched_.answers = true;
}
void Draft::touch(const plan::Acceptance&, bool) {
    touched_.answers = true;
}
void Draft::touch(const plan::Room&, bool) {
    touched_.others = structure_ = true;
}
void Draft::touch(const plan::Opening&, bool) {
    touched_.others = structure_ = true;
}

} // namespace gangway::edit
