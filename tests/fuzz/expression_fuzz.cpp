// Any bytes as an expression: parsing, compiling, running and explaining must neither crash nor
// disagree with each other.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "expression/program.h"

using namespace stile;
using namespace stile::expression;

namespace {

/// One fact of each kind, with one-letter names so that the fuzzer finds them.
class Table : public SymbolTable {
 public:
  std::optional<Symbol> lookup(std::string_view name) const override {
    if (name == "b") return Symbol{0, Type{}, {}, {}};
    if (name == "n") return Symbol{1, Type{ValueKind::Number, {}, base::Analyte::None, true}, {}, {}};
    if (name == "q") return quantity(2, "mm[Hg]", base::Analyte::None);
    if (name == "g") return quantity(3, "mmol/L", base::Analyte::Glucose);
    if (name == "t") return quantity(4, "Cel", base::Analyte::None);
    if (name == "c") return Symbol{5, Type{ValueKind::Code, {}, base::Analyte::None, false}, {"x", "y"}, {}};
    if (name == "d") return Symbol{6, Type{ValueKind::Date, {}, base::Analyte::None, false}, {}, {}};
    if (name == "s") return Symbol{7, Type{ValueKind::Text, {}, base::Analyte::None, false}, {}, {}};
    if (name == "u") return Symbol{8, Type{}, {}, "not here"};
    return std::nullopt;
  }
  std::vector<std::string> similar(std::string_view) const override { return {"b", "n"}; }

 private:
  static Symbol quantity(int slot, std::string_view unit, base::Analyte analyte) {
    return {slot, Type{ValueKind::Number, *base::parseUnit(unit), analyte, false}, {}, {}};
  }
};

class Values : public Slots {
 public:
  explicit Values(bool isKnown) {
    const ValueKind kinds[] = {ValueKind::Boolean, ValueKind::Number, ValueKind::Number,
                               ValueKind::Number,  ValueKind::Number, ValueKind::Code,
                               ValueKind::Date,    ValueKind::Text,   ValueKind::Boolean};
    for (const ValueKind kind : kinds) values_.push_back(Value::unknown(kind));
    if (!isKnown) return;
    values_[0] = Value::boolean(true);
    values_[1] = Value::number(3);
    values_[2] = Value::between(120, 140);
    values_[3] = Value::between(4, std::nullopt);
    values_[4] = Value::number(37);
    values_[5] = Value::code("x");
    values_[6] = Value::ofDate(*base::PartialDate::parse("2026-03"));
    values_[7] = Value::ofText("a");
  }
  const Value& valueOf(int slot) const override { return values_[static_cast<std::size_t>(slot)]; }

 private:
  std::vector<Value> values_;
};

void require(bool isTrue) {
  if (!isTrue) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text(reinterpret_cast<const char*>(data), size);
  const TextOrigin origin("fuzz", text);
  base::Issues syntaxIssues;
  const auto tree = parse(text, origin, "fuzz", syntaxIssues);
  require((tree != nullptr) == syntaxIssues.empty());

  static const Table kTable;
  base::Issues issues;
  const auto program = Program::compile(text, kTable, std::nullopt, origin, "fuzz", issues);
  require(program.has_value() == issues.empty());
  for (const base::Issue& issue : issues.all()) require(!base::toText(issue).empty());
  if (!program) return 0;

  static const Values kKnown(true);
  static const Values kUnknown(false);
  const Truth withFacts = program->evaluate(kKnown).truth;
  const Truth without = program->evaluate(kUnknown).truth;
  require(without == Truth::Unknown || without == withFacts);
  program->decidedBy(kKnown);
  program->decidedBy(kUnknown);
  program->knownWhen(true);
  program->knownWhen(false);
  return 0;
}
