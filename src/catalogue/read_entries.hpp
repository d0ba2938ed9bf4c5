// The entries of a catalogue file: plate formats, modules, finishes. Private to src/catalogue.
#pragma once

#include "catalogue/read_front.hpp"

namespace gangway::catalogue::detail {

PlateFormat readFormat(const Json& object, const std::string& pointer, Mistakes& mistakes);
ModuleType readModule(const Json& object, const std::string& pointer, const Fronts& fronts,
                      Mistakes& mistakes);
Finish readFinish(const Json& object, const std::string& pointer, Mistakes& mistakes);

/// The words of ModuleKind, in its order.
const std::vector<std::string>& moduleKindWords();

} // namespace gangway::catalogue::detail
