// No question is asked for nothing: every question and every option leads to a rule, a dose, an
// exercise, a paper or another question, or a reason stands in explained.json or in the dictionary.
#include <catch2/catch.hpp>
#include <set>
#include <string>

#include "use_of_facts.h"

using namespace stile;

namespace {

const test::UseOfFacts& use() {
  static const test::UseOfFacts found;
  return found;
}

std::shared_ptr<const json::Document> explanations() {
  return test::parsed(test::textOf(std::filesystem::path(STILE_SOURCE_DIR) / "tests/content/explained.json"),
                      "explained.json");
}

/// Facts that some form asks, screening forms only.
std::set<std::string> asked() {
  std::set<std::string> ids;
  for (const auto& form : test::content().forms.forms())
    for (const auto* item : form->inOrder())
      if (test::content().dictionary.find(item->linkId)) ids.insert(item->linkId);
  return ids;
}

bool isExplained(const facts::Definition& fact, const json::Node& explained) {
  return fact.optionalBecause.find("no rule reads it") != std::string::npos ||
         explained.find("questions")->find(fact.id).has_value();
}

}  // namespace

TEST_CASE("Every question is read by a rule, a dose, an exercise or a paper, or says why it is asked") {
  const auto document = explanations();
  for (const std::string& id : asked()) {
    INFO(id);
    CHECK((use().isRead(id) || isExplained(*test::content().dictionary.find(id), document->root())));
  }
}

TEST_CASE("Every option of every question is used or explained") {
  const auto document = explanations();
  const json::Node options = *document->root().find("options");
  for (const std::string& id : asked()) {
    const facts::Definition& fact = *test::content().dictionary.find(id);
    if (isExplained(fact, document->root())) continue;
    const auto reasons = options.find(id);
    for (const auto& option : fact.options) {
      if (option.isNone) continue;  // it says that the others are not so
      INFO(id << ": " << option.code);
      CHECK((use().isOptionUsed(id, option.code) ||
             (reasons && (reasons->find(option.code) || reasons->find("*")))));
    }
  }
}

TEST_CASE("Every option of a question is offered by the form that asks it") {
  for (const auto& form : test::content().forms.forms()) {
    for (const auto* item : form->inOrder()) {
      const facts::Definition* fact = test::content().dictionary.find(item->linkId);
      if (!fact || fact->options.empty()) continue;
      std::set<std::string> offered;
      for (const auto& option : item->options) offered.insert(option.code);
      for (const auto& option : fact->options) {
        INFO(form->name() << ", " << item->linkId << ": " << option.code);
        CHECK(offered.contains(option.code));
      }
    }
  }
}

TEST_CASE("Explanations name questions and options that exist; those that are used by now are named") {
  const auto document = explanations();
  const auto& dictionary = test::content().dictionary;
  std::string stale;
  const json::Node questions = *document->root().find("questions");
  for (std::size_t i = 0; i < questions.size(); ++i) {
    INFO(questions.keyAt(i));
    CHECK(dictionary.find(questions.keyAt(i)));
    if (use().isRead(questions.keyAt(i))) stale += " " + questions.keyAt(i);
  }
  const json::Node options = *document->root().find("options");
  for (std::size_t i = 0; i < options.size(); ++i) {
    const facts::Definition* fact = dictionary.find(options.keyAt(i));
    INFO(options.keyAt(i));
    REQUIRE(fact);
    for (std::size_t j = 0; j < options.at(i).size(); ++j) {
      const std::string& code = options.at(i).keyAt(j);
      if (code == "*") continue;
      INFO(code);
      CHECK(fact->option(code));
      if (use().isOptionUsed(fact->id, code)) stale += " " + fact->id + "=" + code;
    }
  }
  if (!stale.empty()) WARN("explained, but used by now:" << stale);
}
