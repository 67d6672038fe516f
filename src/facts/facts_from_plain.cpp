// Facts from a plain JSON object: fact ids and values.
#include <algorithm>
#include <string>
#include <utility>

#include "facts/fact_name.h"
#include "base/near_names.h"
#include "facts/fact_set.h"
#include "facts/given.h"
#include "facts/plain_value.h"
#include "json/reader.h"

namespace stile::facts {
namespace {

constexpr std::string_view kDate = "date";  // of the whole object

/// Reads one object into one set.
class PlainReader {
 public:
  PlainReader(FactSet& facts, base::Date today, PolicyChoice policies, base::Issues& issues)
      : facts_(facts),
        dictionary_(facts.dictionary()),
        today_(today),
        date_(today),
        policies_(policies),
        issues_(issues) {}

  void read(json::Node object) {
    if (!object.isObject()) {
      issues_.error(object.place(), "facts", "plain facts must be an object", "write {\"factId\": value}");
      return;
    }
    if (const auto date = object.find(kDate)) {
      if (const auto read = readPlainDate(*date, today_, std::string(kDate), issues_)) date_ = *read;
    }
    for (std::size_t i = 0; i < object.size(); ++i) {
      const std::string& key = object.keyAt(i);
      if (key == kDate) continue;
      if (dictionary_.groupIndex(key) >= 0) {
        readGroup(key, object.at(i));
      } else if (const Definition* definition = factFor(key, object.keyPlaceAt(i), {})) {
        readFact(*definition, -1, object.at(i));
      }
    }
  }

 private:
  /// The fact a key names, if it may be given here; else an issue.
  const Definition* factFor(const std::string& key, const base::Place& place, const std::string& group) {
    const Definition* definition = dictionary_.find(key);
    if (!definition) {
      std::vector<std::string> near = dictionary_.similar(key);
      const std::vector<std::string_view> groups(dictionary_.groups().begin(), dictionary_.groups().end());
      if (near.empty()) near = base::nearNames(key, groups);
      issues_.error(place, key, "there is no fact \"" + key + "\"",
                    base::didYouMean(near, "see stile facts for all of them"));
      return nullptr;
    }
    if (!definition->retiredFor.empty()) {
      issues_.error(place, key, "the fact \"" + key + "\" is retired",
                    "give \"" + definition->retiredFor + "\"");
      return nullptr;
    }
    if (definition->isPolicy() && policies_ == PolicyChoice::Refused) {
      issues_.error(place, key, "\"" + key + "\" is a policy of the clinic, not a fact about a client",
                    "choose its value in rules/policy.json");
      return nullptr;
    }
    if (definition->group != group) {
      issues_.error(place, key,
                    definition->group.empty() ? "\"" + key + "\" is no member of the group " + group
                                              : "\"" + key + "\" belongs to the group " + definition->group,
                    definition->group.empty()
                        ? "give it outside the group"
                        : "write \"" + definition->group + "\": [{\"" + key + "\": …}]");
      return nullptr;
    }
    return definition;
  }

  void readGroup(const std::string& group, json::Node node) {
    UnknownReason reason = UnknownReason::NotAnswered;
    const auto stated = node.isObject() ? node.find("unknown") : std::nullopt;
    if (stated && node.size() == 1) {
      if (const auto read = readStatedReason(*stated, group, issues_)) reason = *read;
    }
    if (node.isNull() || stated) {
      const int index = dictionary_.groupIndex(group);
      for (const int slot : dictionary_.groupMembers(index)) facts_.change(slot, 0).givenReason = reason;
      return;
    }
    if (!node.isArray()) {
      issues_.error(node.place(), group, "the group \"" + group + "\" must be an array of objects",
                    "write one object for each, [] for none");
      return;
    }
    facts_.setRepetitions(group, static_cast<int>(node.size()));
    facts_.setOpenEnded(group, false);
    for (std::size_t i = 0; i < node.size(); ++i) readRepetition(group, static_cast<int>(i), node.at(i));
  }

  void readRepetition(const std::string& group, int repetition, json::Node node) {
    if (node.isNull()) return;  // there is one, and nothing is known of it
    if (!node.isObject()) {
      issues_.error(node.place(), group, "each of the group \"" + group + "\" must be an object",
                    "write {\"factId\": value}");
      return;
    }
    for (std::size_t i = 0; i < node.size(); ++i) {
      const Definition* definition = factFor(node.keyAt(i), node.keyPlaceAt(i), group);
      if (definition) readFact(*definition, repetition, node.at(i));
    }
  }

  void readFact(const Definition& definition, int repetition, json::Node node) {
    auto read = readPlainValue(definition, nameOf(definition, repetition), node, today_, issues_);
    if (!read) return;
    read->given.source = "facts file";
    read->given.place = std::make_shared<const base::Place>(node.place());
    if (read->given.reason == UnknownReason::None || !read->chosen.codes.empty()) {
      if (!read->given.date) read->given.date = date_;
    }
    if (definition.isPolicy()) {
      if (read->given.reason == UnknownReason::None)
        facts_.give(definition.slot, -1, read->given.value, date_);
    } else if (definition.isMultiple) {
      takeChoice(facts_, definition, repetition, read->chosen, read->given, issues_);
    } else {
      take(facts_, definition.slot, repetition, read->given, issues_);
    }
  }

  FactSet& facts_;
  const Dictionary& dictionary_;
  base::Date today_;
  base::PartialDate date_;
  PolicyChoice policies_;
  base::Issues& issues_;
};

}  // namespace

FactSet factsFromPlain(const Dictionary& dictionary, const questionnaire::FormSet& forms, json::Node object,
                       base::Date today, base::Issues& issues, PolicyChoice policies) {
  FactSet facts(dictionary);
  PlainReader(facts, today, policies, issues).read(object);
  settle(facts, forms, today, issues);
  return facts;
}

}  // namespace stile::facts
