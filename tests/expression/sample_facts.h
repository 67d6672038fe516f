// A small table of invented facts for the tests of this room, and values for them.
#pragma once

#include <catch2/catch.hpp>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "base/issue.h"
#include "expression/program.h"

namespace stile::expression::sample {

struct Fact {
  std::string name;
  ValueKind kind = ValueKind::Boolean;
  std::string unit = {};  ///< UCUM; empty = none
  std::vector<std::string> options = {};
  base::Analyte analyte = base::Analyte::None;
  std::string usable = {};
};

inline const std::vector<Fact>& facts() {
  using K = ValueKind;
  static const std::vector<Fact> kFacts{
      {"angina", K::Boolean},
      {"dizzy", K::Boolean},
      {"breathless", K::Boolean},
      {"systolic", K::Number, "mm[Hg]"},
      {"diastolic", K::Number, "mm[Hg]"},
      {"falls", K::Number},
      {"weight", K::Number, "kg"},
      {"height", K::Number, "cm"},
      {"temperature", K::Number, "Cel"},
      {"glucose", K::Number, "mmol/L", {}, base::Analyte::Glucose},
      {"cholesterol", K::Number, "mmol/L", {}, base::Analyte::Cholesterol},
      {"hba1c", K::Number, "mmol/mol", {}, base::Analyte::HbA1c},
      {"saturation", K::Number, "%"},
      {"monthsSinceSurgery", K::Number, "mo"},
      {"joint", K::Code, "", {"hip", "knee", "ankle"}},
      {"worseJoint", K::Code, "", {"knee", "shoulder"}},
      {"pregnancy", K::Code, "", {"no", "yes"}},
      {"surgeryDate", K::Date},
      {"lastFall", K::Date},
      {"note", K::Text},
      {"medicineName", K::Text, "", {}, base::Analyte::None, "it belongs to the group medicine"},
  };
  return kFacts;
}

inline int slotOf(std::string_view name) {
  for (std::size_t i = 0; i < facts().size(); ++i) {
    if (facts()[i].name == name) return static_cast<int>(i);
  }
  FAIL("no sample fact " << name);
  return -1;
}

class Table : public SymbolTable {
 public:
  std::optional<Symbol> lookup(std::string_view name) const override {
    for (std::size_t i = 0; i < facts().size(); ++i) {
      const Fact& fact = facts()[i];
      if (fact.name != name) continue;
      Type type{fact.kind, {}, fact.analyte, fact.kind == ValueKind::Number && fact.unit.empty()};
      if (!fact.unit.empty()) type.unit = *base::parseUnit(fact.unit);
      return Symbol{static_cast<int>(i), type, fact.options, fact.usable};
    }
    return std::nullopt;
  }
  std::vector<std::string> similar(std::string_view name) const override {
    if (name.starts_with("syst")) return {"systolic"};
    if (name.starts_with("join")) return {"joint", "worseJoint"};
    return {};
  }
};

/// Everything is unknown until set.
class Values : public Slots {
 public:
  Values() {
    for (const Fact& fact : facts()) values_.push_back(Value::unknown(fact.kind));
  }
  const Value& valueOf(int slot) const override { return values_[static_cast<std::size_t>(slot)]; }

  Values& set(int slot, Value value) {
    values_[static_cast<std::size_t>(slot)] = std::move(value);
    return *this;
  }
  Values& set(std::string_view name, Value value) { return set(slotOf(name), std::move(value)); }
  Values& set(std::string_view name, bool truth) { return set(name, Value::boolean(truth)); }
  Values& number(std::string_view name, std::string_view digits) {
    return set(name, Value::number(*base::Rational::parse(digits)));
  }
  /// "-" is no bound.
  Values& between(std::string_view name, std::string_view low, std::string_view high) {
    return set(name, Value::between(base::Rational::parse(low), base::Rational::parse(high)));
  }
  Values& code(std::string_view name, std::string code) { return set(name, Value::code(std::move(code))); }
  Values& date(std::string_view name, std::string_view text) {
    return set(name, Value::ofDate(*base::PartialDate::parse(text)));
  }
  Values& notApplicable(std::string_view name) {
    const int slot = slotOf(name);
    return set(slot, Value::ofNotApplicable(facts()[static_cast<std::size_t>(slot)].kind));
  }

 private:
  std::vector<Value> values_;
};

/// Compiles or fails the test.
inline Program program(const std::string& text, std::optional<Type> expected = std::nullopt) {
  base::Issues issues;
  const auto compiled = Program::compile(text, Table(), expected, TextOrigin("test", text), "rule", issues);
  for (const base::Issue& issue : issues.all()) UNSCOPED_INFO(base::toText(issue));
  INFO(text);
  REQUIRE(compiled);
  REQUIRE(issues.empty());
  return *compiled;
}

/// The issues of an expression that must be refused, one text each.
inline std::vector<std::string> refusals(const std::string& text,
                                         std::optional<Type> expected = std::nullopt) {
  base::Issues issues;
  const auto compiled = Program::compile(text, Table(), expected, TextOrigin("f.json", text), "r", issues);
  INFO(text);
  CHECK_FALSE(compiled);
  std::vector<std::string> texts;
  for (const base::Issue& issue : issues.all()) texts.push_back(base::toText(issue));
  return texts;
}

inline std::string refusal(const std::string& text, std::optional<Type> expected = std::nullopt) {
  const std::vector<std::string> all = refusals(text, expected);
  INFO(text);
  CHECK(all.size() == 1);
  return all.empty() ? std::string() : all.front();
}

inline Truth truth(const std::string& text, const Values& values) {
  return program(text).evaluate(values).truth;
}

inline std::vector<std::string> names(const std::vector<int>& slots) {
  std::vector<std::string> result;
  for (const int slot : slots) result.push_back(facts()[static_cast<std::size_t>(slot)].name);
  return result;
}

}  // namespace stile::expression::sample

namespace Catch {
template <>
struct StringMaker<stile::expression::Truth> {
  static std::string convert(stile::expression::Truth truth) {
    return truth == stile::expression::Truth::True    ? "True"
           : truth == stile::expression::Truth::False ? "False"
                                                      : "Unknown";
  }
};
}  // namespace Catch
