// A clinic's choice among the alternatives of the policies, put into the content it is used with.
#pragma once

#include <map>
#include <string>

#include "base/issue.h"

namespace stile::application {

/// Replaces the values in rules/policy.json. A policy or an alternative that does not exist is an
/// error in `issues`, and the content must then not be used.
void choosePolicies(std::map<std::string, std::string>& contentFiles, const std::map<std::string, std::string>& choices, base::Issues& issues);

}  // namespace stile::application
