// The rule book as a whole: nothing stands in it that nothing uses, and what clients read is plain.
// (That every rule can fire, has a key where it shuts a rung, and a source, is tested elsewhere.)
#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "../support/content.h"
#include "../support/reading_grade.h"

using namespace stile;

namespace {

/// The rule files, parsed: path under rules/ and document.
std::vector<std::pair<std::string, std::shared_ptr<const json::Document>>> ruleFiles() {
  std::vector<std::pair<std::string, std::shared_ptr<const json::Document>>> files;
  const auto root = std::filesystem::path(STILE_SOURCE_DIR) / "rules";
  for (const auto& entry : std::filesystem::recursive_directory_iterator(root))
    if (entry.path().extension() == ".json")
      files.emplace_back(entry.path().lexically_relative(root).string(),
                         test::parsed(test::textOf(entry.path()), entry.path().filename().string()));
  std::sort(files.begin(), files.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  return files;
}

/// Every text anywhere in `node`, keys left out.
void collectTexts(json::Node node, std::multiset<std::string>& into) {
  if (node.isString()) into.insert(node.string());
  if (node.isArray())
    for (std::size_t i = 0; i < node.size(); ++i) collectTexts(node.at(i), into);
  if (node.isObject())
    for (std::size_t i = 0; i < node.size(); ++i) collectTexts(node.at(i), into);
}

/// What stands under the member `key` anywhere in `node`.
void collectUnder(json::Node node, const std::string& key, std::multiset<std::string>& into) {
  if (node.isArray())
    for (std::size_t i = 0; i < node.size(); ++i) collectUnder(node.at(i), key, into);
  if (node.isObject())
    for (std::size_t i = 0; i < node.size(); ++i) {
      if (node.keyAt(i) == key) collectTexts(node.at(i), into);
      collectUnder(node.at(i), key, into);
    }
}

std::multiset<std::string> under(const std::string& key, const std::string& folder = {}) {
  std::multiset<std::string> all;
  for (const auto& [path, document] : ruleFiles())
    if (path.rfind(folder, 0) == 0 && path.rfind("sources/", 0) != 0)
      collectUnder(document->root(), key, all);
  return all;
}

struct ClientText {
  std::string where, text;
};

std::vector<ClientText> clientTexts() {
  std::vector<ClientText> all;
  const auto& rules = test::content().rules;
  for (const auto& rule : rules.rules) {
    all.push_back({rule.id, rule.say.client});
    if (rule.sayOpen) all.push_back({rule.id + " (open)", rule.sayOpen->client});
  }
  for (const auto& [id, check] : rules.checks) all.push_back({"check " + id, check.say.client});
  return all;
}

}  // namespace

TEST_CASE("Every source is cited by something") {
  const auto cited = under("sources");
  for (const auto& [id, source] : test::content().rules.sources) {
    INFO(id);
    CHECK(cited.count(id) > 0);
  }
}

TEST_CASE("Every word of the vocabulary and every check is used by a rule, an exercise or a dose") {
  std::multiset<std::string> texts;
  for (const auto& [path, document] : ruleFiles())
    if (path != "vocabulary.json" && path.rfind("sources/", 0) != 0) collectTexts(document->root(), texts);
  const auto vocabulary = test::parsed(
      test::textOf(std::filesystem::path(STILE_SOURCE_DIR) / "rules/vocabulary.json"), "vocabulary.json");
  for (std::size_t i = 0; i < vocabulary->root().size(); ++i) {
    const json::Node list = vocabulary->root().at(i);
    for (std::size_t j = 0; list.isArray() && j < list.size(); ++j) {
      INFO(vocabulary->root().keyAt(i) << ": " << list.at(j).find("id")->string());
      CHECK(texts.count(list.at(j).find("id")->string()) > 0);
    }
  }
  std::multiset<std::string> asked;
  for (const char* folder : {"screening/", "conditions/", "medicines/", "measurements/", "function/"})
    for (const std::string& text : under("then", folder)) asked.insert(text);
  for (const auto& [id, check] : test::content().rules.checks) {
    INFO("check " << id);
    CHECK(asked.count(id) > 0);
  }
}

TEST_CASE("Every policy is read by a rule or a fact, under each of its alternatives") {
  std::string conditions;
  for (const std::string& text : under("when")) conditions += text + "\n";
  for (const std::string& text : under("expression")) conditions += text + "\n";
  std::multiset<std::string> passed = under("passPolicy");
  for (const auto& policy : test::content().rules.policies) {
    INFO(policy.id);
    CHECK((conditions.find("%" + policy.id) != std::string::npos || passed.count(policy.id) > 0));
    CHECK(policy.alternatives.size() >= 2);
  }
}

TEST_CASE("A paper's sentences that hang on a rule name rules that exist") {
  for (const char* key : {"ifRules", "unlessRules"})
    for (const std::string& id : under(key)) {
      INFO(key << ": " << id);
      CHECK(test::content().rules.find(id) != nullptr);
    }
}

TEST_CASE("What clients read in the rule book is at grade 8 at most and about 6 in the middle") {
  std::vector<double> grades;
  for (const auto& [where, text] : clientTexts()) {
    const double grade = test::readingGrade(text);
    grades.push_back(grade);
    INFO(where << ": " << text);
    CHECK(grade <= 8.0);
    for (const char* word : {" cleared", " safe", " fit ", " fit."})
      CHECK(text.find(word) == std::string::npos);
  }
  std::sort(grades.begin(), grades.end());
  WARN(grades.size() << " sentences for clients: grade " << grades[grades.size() / 2] << " in the middle, "
                     << grades.back() << " at most");
  CHECK(grades[grades.size() / 2] <= 6.0);
}

TEST_CASE("The rule book covers what it must, and each of its rules can be traced") {
  const auto& rules = test::content().rules;
  std::set<std::string> conditions, classes;
  for (const std::string& id : under("class", "facts/")) classes.insert(id);
  for (const auto& rule : rules.rules)
    if (rule.file.find("conditions/") != std::string::npos) conditions.insert(rule.id);
  WARN(rules.rules.size() << " rules, " << conditions.size() << " of them about conditions; "
                          << classes.size() << " medicine classes; " << rules.policies.size() << " policies; "
                          << rules.sources.size() << " sources");
  CHECK(rules.rules.size() >= 300);
  CHECK(classes.size() >= 30);
}
