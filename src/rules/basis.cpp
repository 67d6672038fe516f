#include "rules/basis.h"

#include <map>
#include <set>
#include <sstream>

namespace stile::rules {
namespace {

using expression::ValueKind;

std::string inWords(const expression::Value& value) {
  switch (value.kind) {
    case ValueKind::Boolean: return value.truth == expression::Truth::True ? "true" : "false";
    case ValueKind::Number:
      if (value.low && value.high && *value.low == *value.high) return value.low->toText(12);
      return (value.low ? value.low->toText(12) : "") + ".." + (value.high ? value.high->toText(12) : "");
    case ValueKind::Text:
    case ValueKind::Code: return value.text.value_or("");
    case ValueKind::Date: return value.date ? value.date->toText() : "";
  }
  return {};
}

class BasisWriter {
 public:
  BasisWriter(const facts::FactSet& facts, const std::string& group, int repetition)
      : facts_(facts), group_(group), repetition_(repetition) {}

  void add(int slot, int depth = 0) {
    const facts::Definition& definition = facts_.dictionary().at(slot);
    const facts::Derivation& derived = definition.derived;
    if (derived.kind == facts::DerivedKind::Elapsed && derived.of >= 0) return add(derived.of, depth + 1);
    const bool isConcern = definition.concern == facts::Concern::True;
    if (isConcern && derived.kind == facts::DerivedKind::Expression && derived.program && depth < 16) {
      for (const int input : derived.program->slotsRead()) add(input, depth + 1);
      return;
    }
    const bool inGroup = !definition.group.empty();
    if (inGroup && definition.group != group_) return;
    const facts::Fact& fact = inGroup ? facts_.at(slot, repetition_) : facts_.at(slot);
    if (fact.value.isUnknown() || fact.value.notApplicable || definition.isPolicy()) return;
    // "=" and ";" part the entries, so they must not stand inside a value.
    std::string value = inWords(fact.value);
    for (char& c : value)
      if (c == ';' || c == '=') c = ',';
    entries_[definition.id] = value;
  }

  std::string text() const {
    std::string all;
    for (const auto& [id, value] : entries_) all += (all.empty() ? "" : "; ") + id + "=" + value;
    return all;
  }

 private:
  const facts::FactSet& facts_;
  const std::string& group_;
  int repetition_;
  std::map<std::string, std::string> entries_;
};

std::map<std::string, std::string> entriesIn(const std::string& basis) {
  std::map<std::string, std::string> entries;
  std::istringstream in(basis);
  for (std::string part; std::getline(in, part, ';');) {
    const auto from = part.find_first_not_of(' ');
    const auto equals = part.find('=');
    if (from == std::string::npos || equals == std::string::npos) continue;
    entries[part.substr(from, equals - from)] = part.substr(equals + 1);
  }
  return entries;
}

}  // namespace

std::string basisOf(const Rule& rule, const facts::FactSet& facts, int repetition) {
  BasisWriter writer(facts, rule.forEach, repetition);
  for (const int slot : rule.when.slotsRead()) writer.add(slot);
  return writer.text();
}

bool stillHolds(const std::string& then, const std::string& now) {
  const auto before = entriesIn(then);
  const auto after = entriesIn(now);
  if (before.empty()) return false;
  for (const auto& [id, value] : before) {
    const auto at = after.find(id);
    if (at == after.end() || at->second != value) return false;
  }
  for (const auto& [id, value] : after)
    if (before.find(id) == before.end() && value != "false") return false;
  return true;
}

}  // namespace stile::rules
