// One given answer, read from JSON and held against its question. For src/answers only.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "answers/response.h"

namespace stile::answers {

/// One element of `item.answer`.
struct ReadAnswer {
  std::optional<Answer> answer;      ///< nullopt when it was refused
  std::vector<json::Node> children;  ///< items nested in the answer
};

ReadAnswer readAnswer(json::Node node, const questionnaire::Item& question, base::Issues& issues);

/// What is wrong with the answers together: the same option twice, or "none of these" beside others.
void checkTogether(const std::vector<Answer>& answers, const questionnaire::Item& question,
                   base::Issues& issues);

/// A date as written, whole or in part; an issue when the calendar has no such date.
std::optional<base::PartialDate> readDate(json::Node node, const std::string& subject, base::Issues& issues);

/// The day of a dateTime such as 2026-11-25T09:30:00+01:00 in its own zone, or a date as above.
std::optional<base::PartialDate> readDateTime(json::Node node, const std::string& subject,
                                              base::Issues& issues);

/// `hh:mm:ss`, with parts of a second if need be.
bool isTimeOfDay(std::string_view text);

}  // namespace stile::answers
