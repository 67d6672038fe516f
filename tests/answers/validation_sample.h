// Strangers' forms and responses written inline, and what validation says of them.
#pragma once

#include <catch2/catch.hpp>

#include <memory>
#include <string>

#include "../questionnaire/sample_form.h"
#include "answers/validate_response.h"

namespace stile::sample {

inline std::string responseTo(const std::string& items, const std::string& status = "completed") {
  return R"({"resourceType": "QuestionnaireResponse", "questionnaire": "https://stile.example/questionnaire/t", )"
         "\"status\": \"" +
         status + "\"" + (items.empty() ? "" : ", \"item\": [" + items + "]") + "}";
}

/// An item with answers: `answers` is JSON such as {"valueInteger": 3}.
inline std::string answered(const std::string& linkId, const std::string& answers) {
  return R"({"linkId": ")" + linkId + R"(", "answer": [)" + answers + "]}";
}

inline std::string group(const std::string& linkId, const std::string& items) {
  return R"({"linkId": ")" + linkId + R"(", "item": [)" + items + "]}";
}

/// Errors and notes, one a line: `error QuestionnaireResponse.item[0]: message`.
inline std::string problemsOf(const questionnaire::FormSet& forms, const std::string& text) {
  base::Issues issues;
  const auto document = json::Document::parse(text, "response.json", issues);
  for (const auto& issue : issues.all()) UNSCOPED_INFO(base::toText(issue));
  REQUIRE(document);
  const auto validation = answers::validateResponse(document->root(), forms, {"2026-11-25T10:00:00Z"});
  std::string list;
  for (const auto& problem : validation.problems) {
    CHECK(problem.issue.place.line > 0);
    list += std::string(problem.issue.severity == base::Severity::Error ? "error " : "note ") + problem.path +
            ": " + problem.issue.message + "\n";
  }
  return list;
}

/// Of a completed response to a form with these items.
inline std::string problems(const std::string& formItems, const std::string& responseItems,
                            const std::string& status = "completed") {
  return problemsOf(loadedAny(formItems), responseTo(responseItems, status));
}

/// Of one question with one answer, or several.
inline std::string ofAnswer(const std::string& question, const std::string& answers) {
  return problems(question, answered("a", answers));
}

}  // namespace stile::sample
