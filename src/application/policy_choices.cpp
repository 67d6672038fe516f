#include "application/policy_choices.h"

#include <set>

#include "json/document.h"

namespace stile::application {
namespace {

constexpr const char* kPolicies = "rules/policy.json";
const base::Place kSettings{"clinic settings", 0, 0, {}};

bool offers(json::Node policy, const std::string& code) {
  const auto alternatives = policy.find("alternatives");
  for (std::size_t i = 0; alternatives && i < alternatives->size(); ++i)
    if (const auto one = alternatives->at(i).find("code"); one && one->isString() && one->string() == code) return true;
  return false;
}

void writeChosen(json::Writer& writer, json::Node policy, const std::string& code) {
  writer.beginObject();
  for (std::size_t i = 0; i < policy.size(); ++i) {
    writer.key(policy.keyAt(i));
    if (policy.keyAt(i) == "value")
      writer.string(code);
    else
      writer.copy(policy.at(i));
  }
  writer.endObject();
}

}  // namespace

void choosePolicies(std::map<std::string, std::string>& contentFiles, const std::map<std::string, std::string>& choices, base::Issues& issues) {
  const auto file = contentFiles.find(kPolicies);
  if (choices.empty() || file == contentFiles.end()) return;
  base::Issues ofContent;  // told when the content itself is loaded
  const auto document = json::Document::parse(file->second, kPolicies, ofContent);
  const auto policies = document ? document->root().find("policies") : std::nullopt;
  if (!policies) return;
  std::set<std::string> known;
  json::Writer writer;
  writer.beginObject().key("policies").beginArray();
  for (std::size_t i = 0; i < policies->size(); ++i) {
    const json::Node policy = policies->at(i);
    const auto id = policy.find("id");
    const auto choice = id && id->isString() ? choices.find(id->string()) : choices.end();
    if (choice == choices.end()) {
      writer.copy(policy);
      continue;
    }
    known.insert(choice->first);
    if (!offers(policy, choice->second))
      issues.error(kSettings, choice->first, "there is no alternative \"" + choice->second + "\"", "\"stile rulebook\" lists the alternatives of every policy");
    writeChosen(writer, policy, choice->second);
  }
  writer.endArray().endObject();
  for (const auto& [id, code] : choices)
    if (!known.contains(id)) issues.error(kSettings, id, "there is no such policy", "\"stile rulebook\" lists them");
  file->second = writer.text();
}

}  // namespace stile::application
