// What of a response that was begun earlier still counts today, and under the form as it is now.
//
// A draft may have been begun on another day, or under an older version of its form. What cannot be
// carried over is asked again; nothing is guessed.
#pragma once

#include <map>
#include <optional>
#include <string>

#include "answers/response.h"
#include "screening/content.h"

namespace stile::application {

/// linkId -> what could be answered to it: its type, options and units.
using Shapes = std::map<std::string, std::string>;

/// The shapes of every question that `response` answers.
Shapes shapesOf(const answers::Response& response);

/// `stored` as a response to `form` as it is now. Questions that are gone are left out, and so are those
/// that could be answered otherwise when `asked` was written down (an option added since was never
/// offered). nullopt when the rest cannot be read as this form either.
std::optional<answers::Response> carriedInto(const questionnaire::Form& form, json::Node stored, const Shapes& asked, const screening::Content& content);

/// The response as it goes on today: answers keep the day they were given, and those that are too old
/// for today fall away.
answers::Response goneOnWith(answers::Response response, const screening::Content& content, base::Date today);

}  // namespace stile::application
