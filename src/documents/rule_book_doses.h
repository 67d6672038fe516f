// The rule book beside its rules: doses, wishes, exercises, norms and checks as tables.
#pragma once

#include <vector>

#include "documents/document.h"
#include "documents/source_list.h"
#include "screening/content.h"

namespace stile::documents {

/// Effort, starting levels, growth, purposes, wishes and the sentences of a plan; the exercise library.
std::vector<Section> doseSectionsOf(const screening::Content& content, SourceList& sources);
/// Norms by sex and age, and the checks that rules name.
std::vector<Section> measureSectionsOf(const screening::Content& content, SourceList& sources);

}  // namespace stile::documents
