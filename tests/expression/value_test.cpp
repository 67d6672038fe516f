#include "expression/value.h"

#include "sample_facts.h"
#include "truths.h"

using namespace stile::expression;
using namespace stile::expression::sample;
using stile::base::PartialDate;
using stile::base::Rational;

TEST_CASE("the truth tables are those of strong Kleene logic") {
  struct Row {
    Truth a, b, both, either, one, implied;
  };
  const Row rows[] = {
      {F, F, F, F, F, T}, {F, T, F, T, T, T}, {F, U, F, U, U, T}, {T, F, F, T, T, F}, {T, T, T, T, F, T},
      {T, U, U, T, U, U}, {U, F, F, U, U, U}, {U, T, U, T, U, T}, {U, U, U, U, U, U},
  };
  for (const Row& row : rows) {
    CAPTURE(row.a, row.b);
    CHECK(truthAnd(row.a, row.b) == row.both);
    CHECK(truthOr(row.a, row.b) == row.either);
    CHECK(truthXor(row.a, row.b) == row.one);
    CHECK(truthImplies(row.a, row.b) == row.implied);
  }
  CHECK(truthNot(F) == T);
  CHECK(truthNot(T) == F);
  CHECK(truthNot(U) == U);
}

TEST_CASE("the operators of expressions follow the same tables") {
  using namespace sample;
  for (const Truth a : {F, T, U}) {
    for (const Truth b : {F, T, U}) {
      Values values;
      values.set("angina", Value::boolean(a)).set("dizzy", Value::boolean(b));
      CAPTURE(a, b);
      CHECK(truth("%angina and %dizzy", values) == truthAnd(a, b));
      CHECK(truth("%angina or %dizzy", values) == truthOr(a, b));
      CHECK(truth("%angina xor %dizzy", values) == truthXor(a, b));
      CHECK(truth("%angina implies %dizzy", values) == truthImplies(a, b));
      CHECK(truth("%angina.not()", values) == truthNot(a));
      CHECK(truth("%angina != %dizzy", values) == truthXor(a, b));
      CHECK(truth("%angina = %dizzy", values) == truthNot(truthXor(a, b)));
    }
  }
}

TEST_CASE("a value is unknown when it holds nothing and settled when it holds one thing") {
  CHECK(Value::unknown(ValueKind::Number).isUnknown());
  CHECK(Value::boolean(U).isUnknown());
  CHECK_FALSE(Value::boolean(F).isUnknown());
  CHECK(Value::boolean(F).isSettled());
  CHECK(Value::number(3).isSettled());
  CHECK(Value::ofNotApplicable(ValueKind::Number).isSettled());
  CHECK_FALSE(Value::ofNotApplicable(ValueKind::Number).isUnknown());
  CHECK_FALSE(Value::between(3, 4).isSettled());
  CHECK_FALSE(Value::between(3, std::nullopt).isSettled());
  CHECK_FALSE(Value::between(3, std::nullopt).isUnknown());
  CHECK(Value::code("hip").isSettled());
  CHECK(Value::ofDate(*PartialDate::parse("2026-01-05")).isSettled());
  CHECK_FALSE(Value::ofDate(*PartialDate::parse("2026-01")).isSettled());
  CHECK_FALSE(Value::ofDate(*PartialDate::parse("2026-01")).isUnknown());
}
