// Small responses written inline, and what loading says of them.
#pragma once

#include "../questionnaire/sample_form.h"
#include "answers/response.h"

namespace stile::sample {

inline std::string responseText(const std::string& items, const std::string& more = {}) {
  return R"({"resourceType": "QuestionnaireResponse", "questionnaire": "https://stile.example/questionnaire/t", )" +
         (more.empty() ? std::string("\"status\": \"completed\"") : more) +
         (items.empty() ? "" : ", \"item\": [" + items + "]") + "}";
}

/// An answered item; `answers` are values such as `"valueInteger": 2`, each in its own braces.
inline std::string answer(const std::string& linkId, const std::string& answers,
                          const std::string& more = {}) {
  return R"({"linkId": ")" + linkId + "\"" + (answers.empty() ? "" : ", \"answer\": [" + answers + "]") +
         (more.empty() ? "" : ", " + more) + "}";
}

inline std::string group(const std::string& linkId, const std::string& items) {
  return R"({"linkId": ")" + linkId + R"(", "item": [)" + items + "]}";
}

inline std::string absent(const std::string& code) {
  return R"("extension": [{"url": "http://hl7.org/fhir/StructureDefinition/data-absent-reason", "valueCode": ")" +
         code + "\"}]";
}

inline std::string coding(const std::string& code) {
  return R"({"valueCoding": {"system": "https://stile.example/option", "code": ")" + code + "\"}}";
}

inline std::optional<answers::Response> read(const std::string& text, const questionnaire::FormSet& forms,
                                             base::Issues& issues) {
  const auto document = json::Document::parse(text, "r.json", issues);
  if (!document) return std::nullopt;
  return answers::loadResponse(document->root(), forms, issues);
}

/// A response that must be accepted without an issue.
inline answers::Response accepted(const std::string& text, const questionnaire::FormSet& forms) {
  base::Issues issues;
  auto response = read(text, forms, issues);
  for (const auto& issue : issues.all()) UNSCOPED_INFO(base::toText(issue));
  REQUIRE(issues.empty());
  REQUIRE(response);
  return *response;
}

/// The issues of a response that must be refused.
inline std::string refused(const std::string& text, const questionnaire::FormSet& forms) {
  base::Issues issues;
  CHECK_FALSE(read(text, forms, issues));
  CHECK(issues.hasErrors());
  std::string result;
  for (const auto& issue : issues.all()) result += base::toText(issue) + "\n";
  return result;
}

}  // namespace stile::sample
