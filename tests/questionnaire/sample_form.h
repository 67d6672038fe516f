// Small forms written inline, and what loading says of them.
#pragma once

#include <catch2/catch.hpp>

#include <map>
#include <string>

#include "questionnaire/form.h"

namespace stile::sample {

/// A Questionnaire with these items (JSON, separated by commas) and more members of its own.
inline std::string formText(const std::string& items, const std::string& name = "t",
                            const std::string& more = {}) {
  return R"({"resourceType": "Questionnaire", "url": "https://stile.example/questionnaire/)" + name +
         R"(", "version": "2026.11", "status": "draft", "title": "T", )" + (more.empty() ? "" : more + ", ") +
         "\"item\": [" + items + "]}";
}

inline std::string moduleText(const std::string& items, const std::string& name) {
  return formText(items, name,
                  R"("extension": [{"url": "http://hl7.org/fhir/uv/sdc/StructureDefinition/)"
                  R"(sdc-questionnaire-assemble-expectation", "valueCode": "assemble-child"}])");
}

/// A display item that takes a module in.
inline std::string placeOf(const std::string& module) {
  return R"({"linkId": ")" + module +
         R"(Note", "type": "display", "extension": [{"url": )"
         R"("http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-subQuestionnaire", )"
         R"("valueCanonical": "https://stile.example/questionnaire/)" +
         module + R"("}]})";
}

/// An item of a type, with more members.
inline std::string item(const std::string& linkId, const std::string& type, const std::string& more = {}) {
  return R"({"linkId": ")" + linkId + R"(", "text": "Words", "type": ")" + type + "\"" +
         (more.empty() ? "" : ", " + more) + "}";
}

inline std::string when(const std::string& question, const std::string& op, const std::string& answer) {
  return R"({"question": ")" + question + R"(", "operator": ")" + op + R"(", )" + answer + "}";
}

inline std::string enableWhen(const std::string& conditions) {
  return "\"enableWhen\": [" + conditions + "]";
}

/// Shown while `question` is answered yes.
inline std::string ifYes(const std::string& question) {
  return enableWhen(when(question, "=", R"("answerBoolean": true)"));
}

inline std::string option(const std::string& code, bool isExclusive = false) {
  return std::string("{") +
         (isExclusive ? R"("extension": [{"url": "http://hl7.org/fhir/StructureDefinition/)"
                        R"(questionnaire-optionExclusive", "valueBoolean": true}], )"
                      : "") +
         R"("valueCoding": {"system": "https://stile.example/option", "code": ")" + code +
         R"(", "display": "D"}})";
}

inline std::string units(const std::string& first, const std::string& second = {}) {
  const auto one = [](const std::string& code) {
    return R"({"url": "http://hl7.org/fhir/StructureDefinition/questionnaire-unitOption", "valueCoding": )"
           R"({"system": "http://unitsofmeasure.org", "code": ")" +
           code + "\"}}";
  };
  return "\"extension\": [" + one(first) + (second.empty() ? "" : ", " + one(second)) + "]";
}

inline std::string quantity(const std::string& value, const std::string& unit) {
  return R"({"value": )" + value + R"(, "system": "http://unitsofmeasure.org", "code": ")" + unit + "\"}";
}

using Files = std::map<std::string, std::string>;

/// Loads without any issue.
inline questionnaire::FormSet loaded(const Files& files) {
  base::Issues issues;
  auto forms = questionnaire::FormSet::load(files, issues);
  for (const auto& issue : issues.all()) UNSCOPED_INFO(base::toText(issue));
  REQUIRE(issues.empty());
  return forms;
}

inline questionnaire::FormSet loaded(const std::string& items) {
  return loaded(Files{{"t.json", formText(items)}});
}

/// Loads as a stranger's form; nothing but notes.
inline questionnaire::FormSet loadedAny(const std::string& items, const std::string& more = {}) {
  base::Issues issues;
  auto forms = questionnaire::FormSet::loadAny({{"t.json", formText(items, "t", more)}}, issues);
  for (const auto& issue : issues.all()) UNSCOPED_INFO(base::toText(issue));
  REQUIRE_FALSE(issues.hasErrors());
  return forms;
}

/// Every issue of a stranger's form that must be refused.
inline std::string issuesOfAny(const std::string& items, const std::string& more = {}) {
  base::Issues issues;
  questionnaire::FormSet::loadAny({{"t.json", formText(items, "t", more)}}, issues);
  CHECK(issues.hasErrors());
  std::string text;
  for (const auto& issue : issues.all()) text += base::toText(issue) + "\n";
  return text;
}

/// An extension of the core standard with one member.
inline std::string extension(const std::string& name, const std::string& member) {
  return R"({"url": "http://hl7.org/fhir/StructureDefinition/)" + name + "\", " + member + "}";
}

/// An extension of the guide for Structured Data Capture.
inline std::string sdcExtension(const std::string& name, const std::string& member) {
  return R"({"url": "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-)" + name + "\", " + member +
         "}";
}

inline std::string extensions(const std::string& list) {
  return "\"extension\": [" + list + "]";
}

/// A FHIRPath expression as the value of an extension. `text` is put into JSON as it stands.
inline std::string fhirPath(const std::string& text, const std::string& name = {}) {
  return "\"valueExpression\": {" + (name.empty() ? std::string() : "\"name\": \"" + name + "\", ") +
         R"("language": "text/fhirpath", "expression": ")" + text + "\"}";
}

/// Every issue of files that must be refused, one after the other.
inline std::string issuesOf(const Files& files) {
  base::Issues issues;
  questionnaire::FormSet::load(files, issues);
  CHECK(issues.hasErrors());
  std::string text;
  for (const auto& issue : issues.all()) text += base::toText(issue) + "\n";
  return text;
}

inline std::string issuesOf(const std::string& items) {
  return issuesOf(Files{{"t.json", formText(items)}});
}

}  // namespace stile::sample
