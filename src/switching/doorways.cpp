#include "switching/doorways.hpp"

namespace gangway::switching {

Doorways::Doorways(const geometry::HouseIndex& house) : all_(entrances(house)) {
    openings_.reserve(all_.size());
    for (const Entrance& entrance : all_) {
        openings_.push_back(static_cast<std::size_t>(entrance.opening - house.plan().openings.data()));
        into_[entrance.into].push_back(&entrance);
    }
}

void Doorways::pointTo(const plan::Plan& plan) {
    for (std::size_t i = 0; i < all_.size(); ++i)
        all_[i].opening = &plan.openings[openings_[i]];
}

const std::vector<const Entrance*>& Doorways::into(const std::string& room_id) const {
    static const std::vector<const Entrance*> none;
    const auto found = into_.find(room_id);
    return found == into_.end() ? none : found->second;
}

} // namespace gangway::switching
