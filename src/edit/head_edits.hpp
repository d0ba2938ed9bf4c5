// Commands on what stands at the head of a plan: its project, units and storeys.
#pragma once

#include "edit/edit.hpp"

#include <expected>
#include <string>

namespace gangway::edit {

using Refusable = std::expected<Command, std::string>;

/// What lengths are shown in; none of them changes.
Command setUnits(plan::DisplayUnits units);
/// Replaces the project's texts; keystrokes in one field merge by `field`, its name in the form ("client").
/// Refused for a text too long to be read again.
Refusable changeProject(const plan::Project& project, const std::string& field = {});

/// Adds a storey; an id that is empty or taken is replaced by a free one.
Refusable addStorey(const plan::Plan& plan, plan::Storey storey);
/// Replaces a storey of the same id. Plates that were written with the storey's format keep their own.
Refusable changeStorey(const plan::Plan& plan, plan::Storey storey, const std::string& what);
/// Refused while rooms are on it.
Refusable removeStorey(const plan::Plan& plan, const std::string& storey_id);

} // namespace gangway::edit
