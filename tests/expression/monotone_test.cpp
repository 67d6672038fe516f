// Properties that must hold for every condition: less knowledge never turns true into false or
// false into true, and explanations say what they promise. Random, with fixed seeds.
#include <algorithm>
#include <random>

#include "sample_facts.h"

using namespace stile;
using namespace stile::expression;
using namespace stile::expression::sample;

namespace {

constexpr int kExpressions = 4000;
constexpr int kValueSets = 6;

class Maker {
 public:
  explicit Maker(unsigned seed) : random_(seed) {}

  int below(int count) { return static_cast<int>(random_() % static_cast<unsigned>(count)); }
  bool oneIn(int count) { return below(count) == 0; }
  std::string oneOf(const std::vector<std::string>& words) {
    return words[static_cast<std::size_t>(below(static_cast<int>(words.size())))];
  }

  std::string condition(int depth) {
    if (depth <= 0 || oneIn(5)) return leaf();
    switch (below(6)) {
      case 0:
        return "(" + condition(depth - 1) + ").not()";
      case 1:
        return "(" + condition(depth - 1) + ") " + oneOf({"xor", "implies", "=", "!="}) + " (" +
               condition(depth - 1) + ")";
      default:
        return "(" + condition(depth - 1) + ") " + oneOf({"and", "or"}) + " (" + condition(depth - 1) + ")";
    }
  }

  /// A value of the fact's kind: settled, known in part or unknown.
  Value value(const Fact& fact) {
    if (oneIn(4)) return Value::unknown(fact.kind);
    if (fact.kind != ValueKind::Boolean && oneIn(8)) return Value::ofNotApplicable(fact.kind);
    return known(fact);
  }

  Value known(const Fact& fact) {
    switch (fact.kind) {
      case ValueKind::Boolean:
        return Value::boolean(oneIn(2));
      case ValueKind::Number: {
        const int low = below(9) - 2;
        const int width = oneIn(3) ? below(5) : 0;
        return Value::between(low, low + width);
      }
      case ValueKind::Code:
        return Value::code(oneOf(fact.options));
      case ValueKind::Text:
        return Value::ofText(oneOf({"a", "b"}));
      case ValueKind::Date:
        return Value::ofDate(*base::PartialDate::parse(
            oneOf({"2025", "2026", "2026-01", "2026-02", "2026-01-05", "2026-02-10", "2026-01-31"})));
    }
    return Value::unknown(fact.kind);
  }

  /// The value or something that says less; never something else.
  Value wider(const Value& value) {
    if (oneIn(3)) return Value::unknown(value.kind);
    Value result = value;
    if (value.kind == ValueKind::Number) {
      if (result.low) result.low = oneIn(4) ? std::nullopt : base::Rational::subtract(*result.low, below(4));
      if (result.high) result.high = oneIn(4) ? std::nullopt : base::Rational::add(*result.high, below(4));
    } else if (value.kind == ValueKind::Date && value.date) {
      const std::string text = value.date->toText();
      result.date =
          base::PartialDate::parse(text.substr(0, oneIn(2) ? 4 : std::min<std::size_t>(text.size(), 7)));
    } else if (oneIn(2)) {
      return Value::unknown(value.kind);
    }
    return result;
  }

  /// The value, or where it is open something that says more.
  Value narrower(const Fact& fact, const Value& value) {
    if (value.isUnknown()) return known(fact);
    if (value.kind == ValueKind::Number && value.low && value.high) {
      return Value::number(oneIn(2) ? *value.low : *value.high);
    }
    if (value.kind == ValueKind::Date && value.date)
      return Value::ofDate(oneIn(2) ? value.date->first() : value.date->last());
    return value;
  }

 private:
  std::string leaf() {
    switch (below(9)) {
      case 0:
      case 1:
      case 2:
        return oneOf({"%angina", "%dizzy", "%breathless"});
      case 3:
        return sum() + " " + oneOf({"<", "<=", ">", ">=", "=", "!="}) + " " + sum();
      case 4:
        return "%falls " + oneOf({"<", "<=", ">", ">=", "=", "!="}) + " " + std::to_string(below(6));
      case 5:
        return "%joint " + oneOf({"= 'hip'", "!= 'knee'", "in ('hip' | 'ankle')", "= %worseJoint"});
      case 6:
        return oneOf({"%surgeryDate", "%lastFall"}) + " " + oneOf({"<", "<=", ">", ">=", "=", "!="}) + " " +
               oneOf({"@2026", "@2026-01", "@2026-01-05", "@2026-02-01", "%lastFall"});
      case 7:
        return "%note = 'a'";
      default:
        return oneOf({"true", "false", "%falls in (0 | 2)", "%systolic > 3 'mm[Hg]'"});
    }
  }

  std::string sum() {
    const std::string left =
        oneOf({"%systolic", "%diastolic", "2 'mm[Hg]'", "-%systolic", "%weight / 1 'kg' * 1 'mm[Hg]'"});
    switch (below(5)) {
      case 0:
        return left + " " + oneOf({"+", "-"}) + " " + oneOf({"%diastolic", "1 'mm[Hg]'"});
      case 1:
        return left + " * " + oneOf({"%falls", "2", "0", "(%falls - 2)"});
      case 2:
        return left + " / " + oneOf({"%falls", "2", "(%falls + 1)"});
      default:
        return left;
    }
  }

  std::mt19937 random_;
};

}  // namespace

TEST_CASE("knowing less never turns true into false, and explanations keep what they promise") {
  Maker maker(20261125);
  int decided = 0;
  int open = 0;
  for (int e = 0; e < kExpressions; ++e) {
    const std::string text = maker.condition(4);
    base::Issues issues;
    const auto compiled = Program::compile(text, Table(), Type{}, TextOrigin("", text), "", issues);
    INFO(text);
    REQUIRE(compiled);
    const std::vector<int>& read = compiled->slotsRead();
    for (int v = 0; v < kValueSets; ++v) {
      Values values;
      for (const int slot : read) values.set(slot, maker.value(facts()[static_cast<std::size_t>(slot)]));
      const Truth truth = compiled->evaluate(values).truth;
      const std::vector<int> deciding = compiled->decidedBy(values);
      const auto isDeciding = [&](int slot) {
        return std::find(deciding.begin(), deciding.end(), slot) != deciding.end();
      };

      Values wider = values;
      for (const int slot : read) {
        if (maker.oneIn(2)) wider.set(slot, maker.wider(values.valueOf(slot)));
      }
      const Truth lessKnown = compiled->evaluate(wider).truth;
      if (lessKnown != Truth::Unknown && lessKnown != truth) FAIL("less knowledge changed the outcome");

      if (truth != Truth::Unknown) {
        ++decided;
        Values only = values;
        for (const int slot : read) {
          if (!isDeciding(slot)) only.set(slot, Value::unknown(facts()[static_cast<std::size_t>(slot)].kind));
        }
        if (compiled->evaluate(only).truth != truth) FAIL("the deciding facts do not suffice");
        for (const int slot : deciding) {
          if (values.valueOf(slot).isUnknown()) FAIL("an unknown fact is said to have decided");
        }
        for (const int slot : compiled->knownWhen(truth == Truth::True)) {
          if (values.valueOf(slot).isUnknown()) FAIL("a fact said to be known is not");
        }
      } else {
        ++open;
        for (int attempt = 0; attempt < 3; ++attempt) {
          Values others = values;
          for (const int slot : read) {
            const Fact& fact = facts()[static_cast<std::size_t>(slot)];
            if (!isDeciding(slot)) others.set(slot, maker.narrower(fact, values.valueOf(slot)));
          }
          if (compiled->evaluate(others).truth != Truth::Unknown)
            FAIL("a fact outside the open ones decided");
        }
      }
    }
  }
  CHECK(decided > 5000);
  CHECK(open > 3000);
}

TEST_CASE("every fact said to keep a condition open can turn it") {
  // Conditions that read each fact once: then each open fact must matter for some values of the others.
  const std::vector<std::string> flags{"%angina", "%dizzy", "%breathless", "%joint = 'hip'", "%falls > 2"};
  Maker maker(7);
  for (int e = 0; e < 1500; ++e) {
    std::vector<std::string> parts = flags;
    while (parts.size() > 1) {
      const auto at = static_cast<std::size_t>(maker.below(static_cast<int>(parts.size()) - 1));
      parts[at] =
          "(" + parts[at] + ") " + maker.oneOf({"and", "or", "implies", "xor"}) + " (" + parts[at + 1] + ")";
      if (maker.oneIn(4)) parts[at] = "(" + parts[at] + ").not()";
      parts.erase(parts.begin() + static_cast<std::ptrdiff_t>(at) + 1);
    }
    const Program compiled = program(parts[0]);
    Values values;
    for (const int slot : compiled.slotsRead())
      values.set(slot, maker.value(facts()[static_cast<std::size_t>(slot)]));
    if (compiled.evaluate(values).truth != Truth::Unknown) continue;
    for (const int slot : compiled.decidedBy(values)) {
      const Fact& fact = facts()[static_cast<std::size_t>(slot)];
      INFO(parts[0] << " by " << fact.name);
      CHECK_FALSE(values.valueOf(slot).isSettled());
      std::set<Truth> outcomes;
      for (int attempt = 0; attempt < 400 && outcomes.size() < 2; ++attempt) {
        Values others = values;
        for (const int other : compiled.slotsRead()) {
          if (other != slot)
            others.set(other,
                       maker.narrower(facts()[static_cast<std::size_t>(other)], values.valueOf(other)));
        }
        outcomes.clear();
        const bool isNumber = fact.kind == ValueKind::Number;
        for (const Value& value : isNumber ? std::vector<Value>{Value::number(-9), Value::number(9)}
                                  : fact.kind == ValueKind::Code
                                      ? std::vector<Value>{Value::code("hip"), Value::code("knee")}
                                      : std::vector<Value>{Value::boolean(true), Value::boolean(false)}) {
          outcomes.insert(compiled.evaluate(others.set(slot, value)).truth);
        }
      }
      CHECK(outcomes.size() == 2);
    }
  }
}
