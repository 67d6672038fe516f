#include "base/rational.h"

#include <catch2/catch.hpp>
#include <limits>
#include <random>
#include <string>

using stile::base::Int128;
using stile::base::Rational;

namespace {

Rational number(std::string_view text) {
  const auto value = Rational::parse(text);
  REQUIRE(value);
  return *value;
}

Rational fraction(Int128 top, Int128 bottom) {
  const auto value = Rational::fraction(top, bottom);
  REQUIRE(value);
  return *value;
}

const Int128 kLargest = static_cast<Int128>(~static_cast<unsigned long long>(0) >> 1) << 64 |
                        static_cast<Int128>(~static_cast<unsigned long long>(0));

}  // namespace

TEST_CASE("a decimal is read exactly") {
  CHECK(number("0.1") == fraction(1, 10));
  CHECK(number("-12.50") == fraction(-25, 2));
  CHECK(number("1e3") == Rational(1000));
  CHECK(number("1E+3") == Rational(1000));
  CHECK(number("2.5e-1") == fraction(1, 4));
  CHECK(number("-0") == Rational());
  CHECK(number("007") == Rational(7));
  CHECK(number("120.00") == Rational(120));
  CHECK(number("0.0000000000000000000000000001") == number("1e-28"));
}

TEST_CASE("what is not a number is refused") {
  for (const char* text : {"", "-", ".", ".5", "5.", "+1", "1e", "1e+", "1 ", " 1", "1,5", "0x1", "NaN",
                           "inf", "1.2.3", "--1", "1e1.5", "١"}) {
    CAPTURE(text);
    CHECK_FALSE(Rational::parse(text));
  }
}

TEST_CASE("a number that does not fit is refused") {
  CHECK(Rational::parse("1234567890123456789012345678901234"));
  CHECK_FALSE(Rational::parse("12345678901234567890123456789012345"));
  CHECK_FALSE(Rational::parse("1234567890123456789012345678901234e30"));
  CHECK(Rational::parse("1e30"));
  CHECK_FALSE(Rational::parse("1e31"));
  CHECK(Rational::parse("1e-30"));
  CHECK_FALSE(Rational::parse("1e-31"));
  CHECK_FALSE(Rational::parse("1e99999999999999999999"));
  CHECK_FALSE(Rational::parse(std::string(1000, '0')));
}

TEST_CASE("a fraction is in lowest terms with a positive denominator") {
  CHECK(fraction(6, -4).numerator() == -3);
  CHECK(fraction(6, -4).denominator() == 2);
  CHECK(fraction(0, -7) == Rational());
  CHECK_FALSE(Rational::fraction(1, 0));
  CHECK_FALSE(Rational::fraction(-kLargest - 1, 1));
  CHECK(fraction(-kLargest - 1, 2).isWhole());
}

TEST_CASE("arithmetic is exact and overflow is told") {
  CHECK(Rational::add(number("0.1"), number("0.2")) == number("0.3"));
  CHECK(Rational::subtract(number("0.3"), number("0.1")) == number("0.2"));
  CHECK(Rational::multiply(fraction(2, 3), fraction(3, 2)) == Rational(1));
  CHECK(Rational::divide(Rational(1), Rational(3)) == fraction(1, 3));
  CHECK_FALSE(Rational::divide(Rational(1), Rational()));
  CHECK_FALSE(Rational::add(fraction(kLargest, 1), Rational(1)));
  CHECK_FALSE(Rational::subtract(fraction(-kLargest, 1), Rational(1)));
  CHECK_FALSE(Rational::multiply(fraction(kLargest, 1), Rational(2)));
  CHECK_FALSE(Rational::divide(fraction(1, kLargest), Rational(2)));
  // Results that fit are found even where plain cross products would not.
  CHECK(Rational::multiply(fraction(kLargest, 3), fraction(3, kLargest)) == Rational(1));
  CHECK(Rational::divide(fraction(kLargest, 1), fraction(kLargest, 1)) == Rational(1));
}

TEST_CASE("comparison is exact where products overflow") {
  const Rational large = fraction(kLargest, kLargest - 1);
  const Rational slightlySmaller = fraction(kLargest - 1, kLargest - 2);
  CHECK(large < slightlySmaller);
  CHECK(slightlySmaller > large);
  CHECK(large.negated() > slightlySmaller.negated());
  CHECK(((large <=> large) == 0));
  CHECK(fraction(1, kLargest) > Rational());
  CHECK(fraction(1, kLargest) < fraction(1, kLargest - 1));
  CHECK(fraction(-1, kLargest) < fraction(1, kLargest));
  CHECK(fraction(kLargest, 1) > fraction(kLargest, 2));
  CHECK(fraction(kLargest, 2) < fraction(kLargest - 1, 1));
}

TEST_CASE("comparison agrees with the sign of the difference") {
  std::mt19937_64 random(20261125);
  const auto next = [&](int bits) { return static_cast<Int128>(random() >> (64 - bits)); };
  for (int i = 0; i < 20000; ++i) {
    const Rational a = fraction(next(40) - (1LL << 39), next(20) + 1);
    const Rational b = fraction(next(40) - (1LL << 39), next(20) + 1);
    const auto difference = Rational::subtract(a, b);
    REQUIRE(difference);
    REQUIRE((a < b) == (difference->numerator() < 0));
    REQUIRE((a == b) == (difference->numerator() == 0));
  }
}

TEST_CASE("large random fractions are ordered without contradiction") {
  std::mt19937_64 random(7);
  const auto next = [&] {
    return (static_cast<Int128>(random() >> 1) << 64 | static_cast<Int128>(random())) >> (random() % 40);
  };
  for (int i = 0; i < 5000; ++i) {
    const Int128 bottom = next() + 1;
    const Int128 top = next();
    if (bottom < 2 || top == 0) continue;
    const Rational a = fraction(top, bottom);
    const Rational sooner = fraction(top, bottom - 1);
    REQUIRE(a < sooner);
    REQUIRE(sooner > a);
    REQUIRE(a.negated() > sooner.negated());
    REQUIRE(((a <=> a) == 0));
  }
}

TEST_CASE("floor goes towards the smaller number") {
  CHECK(number("2.9").floor() == 2);
  CHECK(number("-2.1").floor() == -3);
  CHECK(Rational(-2).floor() == -2);
  CHECK(number("1e30").floor() == std::numeric_limits<std::int64_t>::max());
  CHECK(number("-1e30").floor() == std::numeric_limits<std::int64_t>::min());
}

TEST_CASE("a number is written as the shortest decimal") {
  CHECK(Rational().toText() == "0");
  CHECK(number("12.50").toText() == "12.5");
  CHECK(number("-0.05").toText() == "-0.05");
  CHECK(Rational(1000).toText() == "1000");
  CHECK(fraction(1, 3).toText() == "0.333333");
  CHECK(fraction(2, 3).toText() == "0.666667");
  CHECK(number("0.9999999").toText() == "1");
  CHECK(number("9.9999999").toText() == "10");
  CHECK(number("99.95").toText(1) == "100");
  CHECK(number("0.05").toText(1) == "0.1");
  CHECK(number("0.04").toText(1) == "0");
  CHECK(number("-0.04").toText(1) == "0");
  CHECK(number("2.5").toText(0) == "3");
  CHECK(number("-2.5").toText(0) == "-3");
  CHECK(number("2.5").toText(-4) == "3");
  CHECK(number("1e-30").toText(30) == "0.000000000000000000000000000001");
  CHECK(fraction(kLargest, 1).toText() == "170141183460469231731687303715884105727");
  CHECK(fraction(1, kLargest).toText(40) == "0.0000000000000000000000000000000000000059");
  CHECK(fraction(kLargest - 1, kLargest).toText(60).substr(0, 40) ==
        "0.99999999999999999999999999999999999999");
}

TEST_CASE("a written decimal reads back as the same number") {
  std::mt19937_64 random(11);
  for (int i = 0; i < 5000; ++i) {
    const Int128 power[] = {1, 10, 100, 1000, 10000, 100000, 1000000};
    const Rational value = fraction(static_cast<Int128>(random() >> 10) - (1LL << 53), power[random() % 7]);
    REQUIRE(Rational::parse(value.toText()) == value);
  }
}

TEST_CASE("a double is close enough to be shown") {
  CHECK(number("37.5").toDouble() == Approx(37.5));
  CHECK(number("1e30").toDouble() == Approx(1e30));
}
