// Reading the drawn fronts of modules: named fronts, and lists that mix their names with single shapes.
#pragma once

#include "catalogue/catalogue.hpp"
#include "catalogue/read_object.hpp"

#include <map>

namespace gangway::catalogue::detail {

struct NamedFront {
    std::vector<FrontShape> shapes;
    std::string source;
};
using Fronts = std::map<std::string, NamedFront>;

/// Adds an object { "id", "shapes": [...], "source" } to `fronts`.
void readNamedFront(const Json& object, const std::string& where, Fronts& fronts, Mistakes& mistakes);

/// A front: a list of shapes, of names of fronts, and of { "use": name, "at": [x, y] }
/// for a named one that is moved. Names must be defined before they are used, in file order.
/// `source` gets the sources of the fronts used.
std::vector<FrontShape> readFront(const Json& list, const std::string& where, const Fronts& fronts,
                                  Mistakes& mistakes, std::string& source);

} // namespace gangway::catalogue::detail
