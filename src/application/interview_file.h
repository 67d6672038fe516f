// The response file an interview writes and goes on from.
#pragma once

#include <optional>
#include <string>

#include "answers/response.h"
#include "base/issue.h"
#include "base/result.h"
#include "screening/content.h"

namespace stile::application {

/// The response in `path`, or nullopt when there is no such file yet. Refused when it is no response
/// to one of the content's forms.
base::Result<std::optional<answers::Response>> readDraft(const screening::Content& content, const std::string& path,
                                                         base::Issues& issues);

/// Writes the response at once and safely; see saveFile().
std::optional<base::Failure> saveDraft(const std::string& path, const answers::Response& response, bool isComplete);

}  // namespace stile::application
