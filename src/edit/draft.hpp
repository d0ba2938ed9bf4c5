// A plan while it is being changed: every change goes through the draft, which remembers what was, so that
// undo costs what was touched and not what is in the house.
#pragma once

#include "plan/plan.hpp"

#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <tuple>
#include <utility>
#include <variant>
#include <vector>

namespace gangway::edit {

/// What stands at the head of a plan: everything that is not in one of its lists.
struct PlanHead {
    plan::Project project;
    std::string pack;
    plan::DisplayUnits units = plan::DisplayUnits::Millimetres;
    bool accessible = false;
};

/// The lists a plan is made of. `List<T>::of` is the list that holds T.
template <class T>
struct List;
#define GANGWAY_EDIT_LIST(TYPE, MEMBER)                                                                      \
    template <>                                                                                              \
    struct List<plan::TYPE> {                                                                                \
        static std::vector<plan::TYPE>& of(plan::Plan& plan) {                                               \
            return plan.MEMBER;                                                                              \
        }                                                                                                    \
        static const std::vector<plan::TYPE>& of(const plan::Plan& plan) {                                   \
            return plan.MEMBER;                                                                              \
        }                                                                                                    \
    }
GANGWAY_EDIT_LIST(Layer, layers);
GANGWAY_EDIT_LIST(Storey, storeys);
GANGWAY_EDIT_LIST(Room, rooms);
GANGWAY_EDIT_LIST(Opening, openings);
GANGWAY_EDIT_LIST(Furniture, furniture);
GANGWAY_EDIT_LIST(Plate, plates);
GANGWAY_EDIT_LIST(Device, devices);
GANGWAY_EDIT_LIST(Luminaire, luminaires);
GANGWAY_EDIT_LIST(SwitchLeg, legs);
GANGWAY_EDIT_LIST(Circuit, circuits);
GANGWAY_EDIT_LIST(LightScene, scenes);
GANGWAY_EDIT_LIST(Agreement, agreements);
GANGWAY_EDIT_LIST(Acceptance, accepted);
GANGWAY_EDIT_LIST(OwnFormat, formats);
GANGWAY_EDIT_LIST(LibraryPlate, library);
GANGWAY_EDIT_LIST(Issue, issues);
#undef GANGWAY_EDIT_LIST

/// One remembered change of a list: enough to take it back and to do it again.
template <class T>
struct Change {
    enum class Kind { Changed, Added, Removed };
    Kind kind = Kind::Changed;
    std::size_t index = 0;
    std::optional<T>
        other; ///< what is not in the plan at the moment: the old value, or the new one once undone
};

/// What a command did, taken back by undo() and done again by redo(), in turn.
class Delta {
public:
    bool empty() const { return changes_.empty(); }
    void undo(plan::Plan& plan);
    void redo(plan::Plan& plan);
    /// The element as it was before the change, while the change is done; nullptr when it was not changed or
    /// was added or removed.
    template <class T>
    const T* before(const std::string& id) const {
        for (const Any& any : changes_)
            if (const auto* change = std::get_if<Change<T>>(&any))
                if (change->kind == Change<T>::Kind::Changed && change->other && change->other->id == id)
                    return &*change->other;
        return nullptr;
    }

private:
    friend class Draft;
    using Any = std::variant<Change<PlanHead>, Change<plan::Layer>, Change<plan::Storey>, Change<plan::Room>,
                             Change<plan::Opening>, Change<plan::Furniture>, Change<plan::Plate>,
                             Change<plan::Device>, Change<plan::Luminaire>, Change<plan::SwitchLeg>,
                             Change<plan::Circuit>, Change<plan::LightScene>, Change<plan::Agreement>,
                             Change<plan::Acceptance>, Change<plan::OwnFormat>,
                             Change<plan::LibraryPlate>, Change<plan::Issue>>;
    std::vector<Any> changes_;
    /// (list, index) of elements whose old value is already kept; emptied for a list when its places shift.
    std::set<std::pair<std::size_t, std::size_t>> kept_;
};

/// What was touched, for views that redo only what they must.
struct Touched {
    bool others = false;          ///< rooms, openings, storeys, layers, head, formats or library
    bool answers = false;         ///< agreements or acceptances were added or removed
    std::set<std::string> plates; ///< ids of plates changed, added or removed
    std::set<std::string> furniture;
    std::set<std::string> luminaires;
    std::set<std::string> devices;
    std::set<std::string> legs;
    bool lighting = false; ///< circuits or light scenes
    void add(const Touched& more);
    bool onlyPlates() const {
        return !others && !answers && furniture.empty() && luminaires.empty() && devices.empty() &&
               legs.empty() && !lighting;
    }
};

class Draft {
public:
    /// Changes `plan` in place and adds to `delta` what must be known to take it back.
    Draft(plan::Plan& plan, Delta& delta) : plan_(plan), delta_(delta) {}
    Draft(const Draft&) = delete;
    Draft& operator=(const Draft&) = delete;

    const plan::Plan& plan() const { return plan_; }
    const Touched& touched() const { return touched_; }
    /// Something was added or removed, or a room, opening or piece of furniture changed: references and
    /// places on hosts may need settling.
    bool structureTouched() const { return structure_; }

    plan::Project& changeProject() {
        keepHead();
        return plan_.project;
    }
    void setUnits(plan::DisplayUnits units) { keepHead(), plan_.units = units; }
    void setPack(std::string pack) { keepHead(), plan_.pack = std::move(pack); }

    /// The element to change, by its place in its list or by its id; nullptr when there is none. The
    /// reference holds until something is added to or removed from its list.
    template <class T>
    T& change(std::size_t index) {
        T& element = List<T>::of(plan_)[index];
        if (delta_.kept_.insert({listNumber<T>(), index}).second)
            delta_.changes_.push_back(Change<T>{Change<T>::Kind::Changed, index, element});
        touch(element, false);
        return element;
    }
    template <class T>
    T* change(const std::string& id) {
        const auto index = indexOf<T>(id);
        return index ? &change<T>(*index) : nullptr;
    }
    template <class T>
    T& add(T value) {
        return insert(List<T>::of(plan_).size(), std::move(value));
    }
    template <class T>
    T& insert(std::size_t index, T value) {
        auto& list = List<T>::of(plan_);
        shift<T>();
        delta_.changes_.push_back(Change<T>{Change<T>::Kind::Added, index, std::nullopt});
        const auto at = list.insert(list.begin() + static_cast<std::ptrdiff_t>(index), std::move(value));
        touch(*at, true);
        return *at;
    }
    template <class T>
    void remove(std::size_t index) {
        auto& list = List<T>::of(plan_);
        touch(list[index], true);
        shift<T>();
        delta_.changes_.push_back(Change<T>{Change<T>::Kind::Removed, index, std::move(list[index])});
        list.erase(list.begin() + static_cast<std::ptrdiff_t>(index));
    }
    /// False when there is no such element.
    template <class T>
    bool remove(const std::string& id) {
        const auto index = indexOf<T>(id);
        if (index) remove<T>(*index);
        return index.has_value();
    }
    template <class T>
    std::optional<std::size_t> indexOf(const std::string& id) const {
        const auto& list = List<T>::of(std::as_const(plan_));
        for (std::size_t i = 0; i < list.size(); ++i)
            if (list[i].id == id) return i;
        return std::nullopt;
    }

private:
    template <class T>
    static constexpr std::size_t listNumber() {
        return Delta::Any(Change<T>{}).index();
    }
    template <class T>
    void shift() {
        std::erase_if(delta_.kept_, [](const auto& kept) { return kept.first == listNumber<T>(); });
    }
    void keepHead();
    void touch(const plan::Plate& plate, bool structure);
    void touch(const plan::Furniture& piece, bool structure);
    void touch(const plan::Luminaire& luminaire, bool structure);
    void touch(const plan::Device& device, bool structure);
    void touch(const plan::SwitchLeg& leg, bool structure);
    void touch(const plan::Circuit& circuit, bool structure);
    void touch(const plan::LightScene& scene, bool structure);
    void touch(const plan::Agreement& agreement, bool structure);
    void touch(const plan::Acceptance& acceptance, bool structure);
    void touch(const plan::Room& room, bool structure);
    void touch(const plan::Opening& opening, bool structure);
    template <class T>
    void touch(const T&, bool) {
        touched_.others = true;
    }

    plan::Plan& plan_;
    Delta& delta_;
    Touched touched_;
    bool structure_ = false;
};

} // namespace gangway::edit
