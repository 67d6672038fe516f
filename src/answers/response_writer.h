// A response as FHIR R4 JSON: the way back from loadResponse().
#pragma once

#include <string>

#include "answers/response.h"

namespace stile::answers {

enum class Status { InProgress, Completed };

/// Writes `response` in the order of its form. Questions without an entry are left out: they were
/// not asked. A repetition of a group without any entry keeps its place as one question marked
/// not-asked. The same response gives the same bytes.
std::string writeResponse(const Response& response, Status status);

}  // namespace stile::answers
