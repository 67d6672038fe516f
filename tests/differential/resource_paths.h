// The paths there are in the invented resources, by what they lead to.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "expression_maker.h"

namespace stile::differential {

using TypedPaths = std::map<Wanted, std::vector<std::string>>;

const TypedPaths& typedPathsOf(ResourceKind kind);
/// Paths to objects, to choices, and to nothing.
const std::vector<std::string>& anyPathsOf(ResourceKind kind);

}  // namespace stile::differential
