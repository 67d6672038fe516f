#include "screening/content.h"

#include <cstdint>
#include <cstdio>

#include "expression/json_origin.h"
#include "json/reader.h"

namespace stile::screening {
namespace {

constexpr const char* kIntendedUse = "rules/intended-use.json";
constexpr const char* kReference = "rules/reference.json";
constexpr const char* kMeasuring = "rules/measuring.json";

/// FNV-1a over sorted paths and bytes: names a state of the content, guards against nothing.
std::string hashOf(const std::map<std::string, std::string>& files) {
  std::uint64_t hash = 14695981039346656037ull;
  const auto feed = [&](const std::string& text) {
    for (const char c : text) hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211ull;
    hash = (hash ^ 0xffu) * 1099511628211ull;
  };
  for (const auto& [path, text] : files) {
    feed(path);
    feed(text);
  }
  char digits[17];
  std::snprintf(digits, sizeof digits, "%016llx", static_cast<unsigned long long>(hash));
  return std::string(digits).substr(0, 8);
}

std::string withoutFolder(const std::string& path) { return path.substr(path.find('/') + 1); }

}  // namespace

IntendedUse IntendedUse::load(const std::string& text, const std::string& file, const facts::Dictionary& dictionary,
                              base::Issues& issues) {
  IntendedUse use;
  const auto document = json::Document::parse(text, file, issues);
  if (!document) return use;
  json::ObjectReader reader(document->root(), file, issues);
  use.label = reader.requireString("label");
  use.caution = reader.requireString("caution");
  use.notReviewed = reader.requireString("notReviewed");
  for (const json::Node& node : reader.array("refuse")) {
    json::ObjectReader entry(node, "refuse", issues);
    Refusal refusal;
    refusal.message = entry.requireString("message");
    refusal.remedy = entry.requireString("remedy");
    if (const auto when = entry.require("when"); when && when->isString()) {
      const expression::JsonOrigin origin(*when);
      refusal.when = expression::Program::compile(when->string(), dictionary, expression::Type{}, origin, "refuse", issues);
    }
    entry.finish();
    use.refusals.push_back(std::move(refusal));
  }
  reader.finish();
  return use;
}

const Refusal* IntendedUse::refusalOf(const facts::FactSet& facts) const {
  for (const Refusal& refusal : refusals)
    if (refusal.when && refusal.when->evaluate(facts::FactSlots(facts)).truth == expression::Truth::True) return &refusal;
  return nullptr;
}

Content Content::load(const std::map<std::string, std::string>& files, base::Issues& issues) {
  Content content;
  std::map<std::string, std::string> forms;
  for (const auto& [path, text] : files)
    if (path.rfind("questionnaires/", 0) == 0) forms[withoutFolder(path)] = text;
  content.forms = questionnaire::FormSet::load(forms, issues);
  content.dictionary = facts::Dictionary::load(files, issues);
  content.dictionary.checkForms(content.forms, issues);
  content.rules = rules::RuleSet::load(files, content.dictionary, issues);
  content.library = plan::Library::load(files, content.dictionary, content.rules, issues);
  if (const auto at = files.find(kIntendedUse); at != files.end())
    content.intendedUse = IntendedUse::load(at->second, at->first, content.dictionary, issues);
  else
    issues.error({kIntendedUse, 0, 0, {}}, "", "the file is missing", "restore it from the program's own content");
  if (const auto at = files.find(kReference); at != files.end())
    content.reference = facts::Reference::load(at->second, at->first, content.dictionary, issues);
  else
    issues.error({kReference, 0, 0, {}}, "", "the file is missing", "restore it from the program's own content");
  for (const auto& entry : content.reference.entries())
    for (const std::string& source : entry.sources)
      if (source != rules::kNoSource && content.rules.sources.find(source) == content.rules.sources.end())
        issues.error({kReference, 0, 0, {}}, entry.id, "there is no source \"" + source + "\"", "add it under rules/sources/");
  if (const auto at = files.find(kMeasuring); at != files.end())
    content.measuring = rules::readMeasuring(at->second, at->first, content.dictionary, content.rules, issues);
  else
    issues.error({kMeasuring, 0, 0, {}}, "", "the file is missing", "restore it from the program's own content");
  content.version = content.intendedUse.label + "-" + hashOf(files);
  return content;
}

}  // namespace stile::screening
