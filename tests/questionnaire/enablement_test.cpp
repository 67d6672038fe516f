#include "questionnaire/enablement.h"

#include <catch2/catch.hpp>

#include "sample_form.h"

using namespace stile;
using namespace stile::sample;
using expression::Truth;
using expression::Value;
using questionnaire::AnswerLookup;
using questionnaire::FormSet;
using questionnaire::KnownAnswers;

namespace {

class Table : public AnswerLookup {
 public:
  std::map<std::string, KnownAnswers> rows;
  KnownAnswers answersOf(const questionnaire::Item& question) const override {
    const auto row = rows.find(question.linkId);
    return row == rows.end() ? KnownAnswers{} : row->second;
  }
};

KnownAnswers complete(std::vector<Value> values) {
  return {true, true, std::move(values), {}};
}
KnownAnswers partial(std::vector<Value> values) {
  return {true, false, std::move(values), {}};
}
KnownAnswers notApplicable() {
  return {false, false, {}, {}};
}

/// Is an item with this condition on `q` enabled, given what is known of `q`?
Truth enabled(const std::string& questionItem, const std::string& condition, const KnownAnswers& known) {
  const FormSet forms = loaded(questionItem + "," + item("x", "boolean", enableWhen(condition)));
  Table table;
  table.rows["q"] = known;
  const auto& form = *forms.byName("t");
  return isEnabled(*form.find("x"), table);
}

const std::string kBoolean = item("q", "boolean");
const std::string kChoice = item(
    "q", "choice", "\"repeats\": true, \"answerOption\": [" + option("hip") + "," + option("knee") + "]");
const std::string kHip = R"("answerCoding": {"code": "hip"})";

}  // namespace

TEST_CASE("An item without conditions is enabled") {
  const FormSet forms = loaded(kBoolean);
  CHECK(isEnabled(*forms.byName("t")->find("q"), Table{}) == Truth::True);
}

TEST_CASE("exists compares presence") {
  const auto yes = when("q", "exists", "\"answerBoolean\": true");
  const auto no = when("q", "exists", "\"answerBoolean\": false");
  CHECK(enabled(kBoolean, yes, complete({Value::boolean(false)})) == Truth::True);
  CHECK(enabled(kBoolean, no, complete({Value::boolean(false)})) == Truth::False);
  CHECK(enabled(kBoolean, yes, partial({})) == Truth::Unknown);
  CHECK(enabled(kBoolean, no, partial({})) == Truth::Unknown);
  CHECK(enabled(kChoice, yes, partial({Value::code("hip")})) == Truth::True);
  CHECK(enabled(kChoice, yes, complete({})) == Truth::False);
  CHECK(enabled(kBoolean, yes, notApplicable()) == Truth::False);
  CHECK(enabled(kBoolean, no, notApplicable()) == Truth::True);
}

TEST_CASE("Equal is true if one known answer equals, false only if all are known") {
  const auto isHip = when("q", "=", kHip);
  CHECK(enabled(kChoice, isHip, complete({Value::code("knee"), Value::code("hip")})) == Truth::True);
  CHECK(enabled(kChoice, isHip, partial({Value::code("hip")})) == Truth::True);
  CHECK(enabled(kChoice, isHip, partial({Value::code("knee")})) == Truth::Unknown);
  CHECK(enabled(kChoice, isHip, complete({Value::code("knee")})) == Truth::False);
  CHECK(enabled(kChoice, isHip, complete({})) == Truth::False);
  CHECK(enabled(kChoice, isHip, notApplicable()) == Truth::False);
  CHECK(enabled(kChoice, isHip, complete({Value::ofText("my hip")})) == Truth::Unknown);
}

TEST_CASE("Unequal is true only if no answer equals, also for a question that does not apply") {
  const auto notHip = when("q", "!=", kHip);
  CHECK(enabled(kChoice, notHip, complete({Value::code("knee"), Value::code("hip")})) == Truth::False);
  CHECK(enabled(kChoice, notHip, partial({Value::code("hip")})) == Truth::False);
  CHECK(enabled(kChoice, notHip, partial({Value::code("knee")})) == Truth::Unknown);
  CHECK(enabled(kChoice, notHip, partial({})) == Truth::Unknown);
  CHECK(enabled(kChoice, notHip, complete({Value::code("knee")})) == Truth::True);
  CHECK(enabled(kChoice, notHip, notApplicable()) == Truth::True);
}

TEST_CASE("A boolean that is not known decides nothing") {
  const auto isTrue = when("q", "=", "\"answerBoolean\": true");
  CHECK(enabled(kBoolean, isTrue, complete({Value::boolean(true)})) == Truth::True);
  CHECK(enabled(kBoolean, isTrue, complete({Value::boolean(false)})) == Truth::False);
  CHECK(enabled(kBoolean, isTrue, complete({Value::unknown(expression::ValueKind::Boolean)})) ==
        Truth::Unknown);
  CHECK(enabled(kBoolean, isTrue, partial({})) == Truth::Unknown);
}

TEST_CASE("Numbers compare just below, at and just above, and by their bounds") {
  const std::string number = item("q", "integer");
  const auto of = [&](const std::string& op, Value value) {
    return enabled(number, when("q", op, "\"answerInteger\": 3"), complete({std::move(value)}));
  };
  CHECK(of(">=", Value::number(2)) == Truth::False);
  CHECK(of(">=", Value::number(3)) == Truth::True);
  CHECK(of(">", Value::number(3)) == Truth::False);
  CHECK(of(">", Value::number(4)) == Truth::True);
  CHECK(of("<", Value::number(3)) == Truth::False);
  CHECK(of("<", Value::number(2)) == Truth::True);
  CHECK(of("<=", Value::number(3)) == Truth::True);
  CHECK(of("<=", Value::number(4)) == Truth::False);
  CHECK(of("=", Value::number(3)) == Truth::True);
  CHECK(of("!=", Value::number(3)) == Truth::False);
  CHECK(of(">=", Value::between(base::Rational(3), std::nullopt)) == Truth::True);
  CHECK(of(">", Value::between(base::Rational(3), std::nullopt)) == Truth::Unknown);
  CHECK(of("<", Value::between(base::Rational(3), std::nullopt)) == Truth::False);
  CHECK(of("=", Value::between(base::Rational(2), base::Rational(4))) == Truth::Unknown);
  CHECK(of("=", Value::between(base::Rational(4), base::Rational(5))) == Truth::False);
}

TEST_CASE("Quantities compare across units, and not at all when they cannot") {
  const std::string pressure = item("q", "quantity", units("mm[Hg]", "kPa"));
  const auto of = [&](base::Rational value, const std::string& unit) {
    KnownAnswers known = complete({Value::number(value)});
    known.units.push_back(*base::parseUnit(unit));
    return enabled(pressure, when("q", ">=", "\"answerQuantity\": " + quantity("20", "kPa")), known);
  };
  CHECK(of(20, "kPa") == Truth::True);
  CHECK(of(150, "mm[Hg]") == Truth::False);  // 19.998 kPa
  CHECK(of(151, "mm[Hg]") == Truth::True);   // 20.13 kPa
  CHECK(of(200, "kg") == Truth::Unknown);
  CHECK(enabled(pressure, when("q", ">=", "\"answerQuantity\": " + quantity("20", "kPa")),
                complete({Value::number(30)})) == Truth::Unknown);
}

TEST_CASE("Dates known in part compare by their possible days") {
  const std::string date = item("q", "date");
  const auto of = [&](const std::string& op, const std::string& given) {
    return enabled(date, when("q", op, "\"answerDate\": \"2026-03-15\""),
                   complete({Value::ofDate(*base::PartialDate::parse(given))}));
  };
  CHECK(of(">", "2026-03-16") == Truth::True);
  CHECK(of(">", "2026-03-15") == Truth::False);
  CHECK(of(">=", "2026-03-15") == Truth::True);
  CHECK(of("=", "2026-03-15") == Truth::True);
  CHECK(of("=", "2026-03") == Truth::Unknown);
  CHECK(of("=", "2026-04") == Truth::False);
  CHECK(of("!=", "2026-04") == Truth::True);
  CHECK(of(">", "2026") == Truth::Unknown);
  CHECK(of(">", "2027") == Truth::True);
  CHECK(of("<", "2025") == Truth::True);
}

TEST_CASE("all and any follow three-valued logic") {
  const std::string questions = item("a", "boolean") + "," + item("b", "boolean");
  const std::string two =
      enableWhen(when("a", "=", "\"answerBoolean\": true") + "," + when("b", "=", "\"answerBoolean\": true"));
  const auto of = [&](const std::string& behavior, std::optional<bool> a, std::optional<bool> b) {
    const FormSet forms =
        loaded(questions + "," + item("x", "boolean", two + ", \"enableBehavior\": \"" + behavior + "\""));
    Table table;
    if (a) table.rows["a"] = complete({Value::boolean(*a)});
    if (b) table.rows["b"] = complete({Value::boolean(*b)});
    const auto& form = *forms.byName("t");
    return isEnabled(*form.find("x"), table);
  };
  CHECK(of("all", true, true) == Truth::True);
  CHECK(of("all", true, std::nullopt) == Truth::Unknown);
  CHECK(of("all", std::nullopt, false) == Truth::False);
  CHECK(of("any", true, std::nullopt) == Truth::True);
  CHECK(of("any", false, std::nullopt) == Truth::Unknown);
  CHECK(of("any", false, false) == Truth::False);
}

TEST_CASE("An item in a disabled group is disabled") {
  const FormSet forms = loaded(
      kBoolean + "," +
      item("g", "group",
           enableWhen(when("q", "=", "\"answerBoolean\": true")) + ", \"item\": [" + item("x", "boolean") +
               "," + item("y", "boolean", enableWhen(when("x", "=", "\"answerBoolean\": true"))) + "]"));
  const auto& form = *forms.byName("t");
  Table table;
  CHECK(isEnabled(*form.find("x"), table) == Truth::Unknown);
  table.rows["q"] = complete({Value::boolean(false)});
  CHECK(isEnabled(*form.find("x"), table) == Truth::False);
  CHECK(isEnabled(*form.find("y"), table) == Truth::False);
  table.rows["q"] = complete({Value::boolean(true)});
  CHECK(isEnabled(*form.find("x"), table) == Truth::True);
  CHECK(isEnabled(*form.find("y"), table) == Truth::Unknown);
}
