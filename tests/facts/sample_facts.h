// Small dictionaries, forms and fact files written inline.
#pragma once

#include <catch2/catch.hpp>

#include <map>
#include <string>

#include "../answers/sample_response.h"
#include "facts/fact_display.h"
#include "facts/fact_set.h"

namespace stile::sample {

using facts::UnknownReason;

inline const base::Date kToday = *base::Date::of(2026, 11, 25);

/// A fact with a label of its own id; `more` may replace nothing, only add.
inline std::string fact(const std::string& id, const std::string& type, const std::string& more = {}) {
  const bool isTruth = type == "boolean" || type == "code";
  const auto has = [&](const char* key) {
    return more.find(std::string("\"") + key + "\"") != std::string::npos;
  };
  return R"({"id": ")" + id + R"(", "label": ")" + id + R"(", "type": ")" + type + "\"" +
         (has("concern") ? "" : std::string(R"(, "concern": ")") + (isTruth ? "true" : "none") + "\"") +
         (has("unknownAs") ? "" : R"(, "unknownAs": "cautious")") +
         (has("sources") ? "" : R"(, "sources": ["s"])") + (more.empty() ? "" : ", " + more) + "}";
}

inline std::string derived(const std::string& how) {
  return "\"derived\": {" + how + "}";
}

inline std::string formula(const std::string& text) {
  return derived("\"expression\": \"" + text + "\"");
}

inline std::string member(const std::string& group) {
  return R"("group": ")" + group + "\"";
}

inline std::string mmHg() {
  return R"("unit": "mm[Hg]")";
}

inline std::string choices(const std::string& codes) {
  std::string options;
  std::size_t start = 0;
  while (start < codes.size()) {
    const std::size_t end = std::min(codes.find(' ', start), codes.size());
    const std::string code = codes.substr(start, end - start);
    options += (options.empty() ? "" : ", ") + std::string(R"({"code": ")") + code +
               R"(", "display": "Words for )" + code + "\"" + (code == "none" ? ", \"none\": true" : "") +
               "}";
    start = end + 1;
  }
  return "\"options\": [" + options + "]";
}

inline std::string factFile(const std::string& facts, const std::string& groups = {}) {
  std::string list;
  std::size_t start = 0;
  while (start < groups.size()) {
    const std::size_t end = std::min(groups.find(' ', start), groups.size());
    list += (list.empty() ? "" : ", ") + std::string(R"({"id": ")") + groups.substr(start, end - start) +
            R"(", "title": "Group"})";
    start = end + 1;
  }
  return R"({"topic": "t", "groups": [)" + list + R"(], "facts": [)" + facts + "]}";
}

inline std::string textOf(const base::Issues& issues) {
  std::string text;
  for (const auto& issue : issues.all()) text += base::toText(issue) + "\n";
  return text;
}

/// A dictionary that must load without an issue.
inline facts::Dictionary dictionaryOf(const Files& files) {
  base::Issues issues;
  facts::Dictionary dictionary = facts::Dictionary::load(files, issues);
  INFO(textOf(issues));
  REQUIRE(issues.empty());
  return dictionary;
}

/// What loading says of a dictionary that is not in order.
inline std::string dictionaryIssues(const Files& files) {
  base::Issues issues;
  facts::Dictionary::load(files, issues);
  return textOf(issues);
}

/// A dictionary, the forms that ask it, and fact sets of it.
class Sample {
 public:
  Sample(const std::string& facts, const std::string& groups = {}, const std::string& items = {},
         Files more = {})
      : dictionary(dictionaryOf(withFacts(std::move(more), facts, groups))),
        forms(items.empty() ? questionnaire::FormSet() : loaded(items)) {}

  /// From plain facts that must be taken without an error; what is asked back is kept in `asked`.
  facts::FactSet plain(const std::string& json, base::Date today = kToday) {
    base::Issues issues;
    facts::FactSet set = read(json, issues, today);
    INFO(json + "\n" + textOf(issues));
    REQUIRE_FALSE(issues.hasErrors());
    asked = textOf(issues);
    return set;
  }

  /// The issues of plain facts.
  std::string refusedPlain(const std::string& json, base::Date today = kToday) {
    base::Issues issues;
    read(json, issues, today);
    CHECK(issues.hasErrors());
    return textOf(issues);
  }

  facts::FactSet respond(const std::vector<std::string>& texts, base::Date today = kToday) {
    std::vector<answers::Response> responses;
    for (const std::string& text : texts) responses.push_back(accepted(text, forms));
    base::Issues issues;
    facts::FactSet set = facts::factsFromResponses(dictionary, forms, responses, today, issues);
    INFO(textOf(issues));
    REQUIRE_FALSE(issues.hasErrors());
    asked = textOf(issues);
    return set;
  }

  int slot(const std::string& id) const {
    const facts::Definition* definition = dictionary.find(id);
    INFO(id);
    REQUIRE(definition);
    return definition->slot;
  }

  const facts::Fact& in(const facts::FactSet& set, const std::string& id, int repetition = -1) const {
    return set.at(slot(id), repetition);
  }

  /// The fact in words; "unknown: reason" when nothing is known.
  std::string say(const facts::FactSet& set, const std::string& id, int repetition = -1) const {
    const facts::Fact& found = in(set, id, repetition);
    const std::string words = facts::display(dictionary.at(slot(id)), found);
    return found.value.isUnknown() ? "unknown: " + words : words;
  }

  facts::Dictionary dictionary;
  questionnaire::FormSet forms;
  std::string asked;

 private:
  static Files withFacts(Files files, const std::string& facts, const std::string& groups) {
    files["rules/facts/t.json"] = factFile(facts, groups);
    return files;
  }

  facts::FactSet read(const std::string& json, base::Issues& issues, base::Date today) {
    const auto document = json::Document::parse(json, "facts.json", issues);
    INFO(textOf(issues));
    REQUIRE(document);
    return facts::factsFromPlain(dictionary, forms, document->root(), today, issues);
  }
};

/// A response head with its date.
inline std::string dated(const std::string& date) {
  return R"("status": "completed", "authored": ")" + date + "\"";
}

}  // namespace stile::sample
