// Clearance replies as a physician would send them, for whole people and their tests.
#pragma once

#include <stdexcept>
#include <string>
#include <vector>

#include "application/screen_client.h"
#include "case_file.h"
#include "json/document.h"

namespace stile::test {

/// What a physician writes on the slip.
struct Slip {
  std::string answer = "noKnownReason", bay = "both", intensity = "moderate", from = "2026-11-20", until = {};
  int heartRate = 0;
};

inline std::string replyTo(const rules::Finding& finding, const Slip& slip) {
  json::Writer writer;
  const auto item = [&](const char* linkId, const char* key, const std::string& value) {
    writer.beginObject().member("linkId", linkId).key("answer").beginArray().beginObject();
    if (std::string(key) == "valueCoding")
      writer.key(key)
          .beginObject()
          .member("system", "https://stile.example/option")
          .member("code", value)
          .endObject();
    else
      writer.member(key, value);
    writer.endObject().endArray().endObject();
  };
  writer.beginObject().member("resourceType", "QuestionnaireResponse");
  writer.member("questionnaire", "https://stile.example/questionnaire/clearance-reply|2026.11");
  writer.member("status", "completed").member("authored", "2026-11-20").key("item").beginArray();
  item("replyBy", "valueString", "A. Physician");
  item("replyDate", "valueDate", "2026-11-20");
  writer.beginObject().member("linkId", "replyFinding").key("item").beginArray();
  item("replyRule", "valueString", finding.rule->id);
  item("replyBasis", "valueString", finding.basis);
  item("replyAnswer", "valueCoding", slip.answer);
  if (!slip.bay.empty()) item("replyBay", "valueCoding", slip.bay);
  if (!slip.intensity.empty()) item("replyIntensity", "valueCoding", slip.intensity);
  item("replyFrom", "valueDate", slip.from);
  if (!slip.until.empty()) item("replyUntil", "valueDate", slip.until);
  if (slip.heartRate > 0) {
    writer.beginObject().member("linkId", "replyHeartRateLimit").key("answer").beginArray().beginObject();
    writer.key("valueQuantity").beginObject().member("value", slip.heartRate).member("unit", "/min");
    writer.member("system", "http://unitsofmeasure.org").member("code", "/min").endObject();
    writer.endObject().endArray().endObject();
  }
  writer.endArray().endObject().endArray().endObject();
  return writer.text();
}

/// The inputs of a case together with its `replies`, each answering a finding of the case as it was
/// when the letter went out: with the facts of the file, or with `factsWhenAsked` in their place.
inline std::vector<application::Input> inputsWithReplies(const CaseFile& file) {
  std::vector<application::Input> inputs = file.inputs();
  const auto replies = file.root().find("replies");
  if (!replies) return inputs;
  const auto changes = file.root().find("factsWhenAsked");
  base::Issues issues;
  const auto asked = application::screenClient(
      content(), {{"when asked", file.facts(changes ? &*changes : nullptr)}}, file.date(), issues);
  if (!asked.ok()) throw std::runtime_error(file.name() + ": the facts when asked are refused");
  for (std::size_t i = 0; i < replies->size(); ++i) {
    const json::Node reply = replies->at(i);
    Slip slip;
    const auto word = [&](const char* key, std::string& into) {
      if (const auto node = reply.find(key)) into = node->string();
    };
    word("answer", slip.answer);
    word("bay", slip.bay);
    word("intensity", slip.intensity);
    word("from", slip.from);
    word("until", slip.until);
    bool found = false;
    for (const auto& finding : asked.value().findings) {
      if (finding.rule->id != reply.find("rule")->string()) continue;
      inputs.push_back({"reply " + std::to_string(i), replyTo(finding, slip)});
      found = true;
      break;
    }
    if (!found)
      throw std::runtime_error(file.name() + ": no finding " + reply.find("rule")->string() + " to reply to");
  }
  return inputs;
}

}  // namespace stile::test
