// Our conversions against GNU Units (https://www.gnu.org/software/units/), Debian package
// `units`, whose definitions come from NIST SP 811 and others, not from UCUM.
#include <array>
#include <catch2/catch.hpp>
#include <cstdio>
#include <cstdlib>
#include <string>

#include "base/unit.h"

using namespace stile::base;

namespace {

struct Pair {
  const char* from;  ///< UCUM
  const char* to;
  const char* programFrom;  ///< the same for `units`
  const char* programTo;
  double tolerance = 1e-9;
};

// `units` has the conventional millimetre of mercury from its density, UCUM 133.3220 Pa.
constexpr double kMercury = 1e-5;

constexpr Pair kPairs[] = {
    {"[in_i]", "cm", "inch", "cm"},
    {"[ft_i]", "m", "foot", "m"},
    {"[yd_i]", "m", "yard", "m"},
    {"[mi_i]", "km", "mile", "km"},
    {"[mi_i]/h", "m/s", "mile/hour", "m/s"},
    {"[lb_av]", "kg", "lb", "kg"},
    {"[oz_av]", "g", "oz", "g"},
    {"[stone_av]", "kg", "stone", "kg"},
    {"[lbf_av]", "N", "lbf", "N"},
    {"kgf", "N", "kgf", "N"},
    {"mm[Hg]", "kPa", "mmHg", "kPa", kMercury},
    {"mm[Hg]", "bar", "mmHg", "bar", kMercury},
    {"cm[H2O]", "Pa", "cm H2O", "Pa"},
    {"kcal", "kJ", "kcal_th", "kJ"},
    {"kcal/h", "W", "kcal_th/hour", "W"},
    {"W.h", "kJ", "W hour", "kJ"},
    {"N.m", "J", "N m", "J"},
    {"L", "cm3", "liter", "cm^3"},
    {"mL/kg/min", "L/kg/s", "mL/kg/min", "L/kg/s"},
    {"kg/m2", "g/cm2", "kg/m^2", "g/cm^2"},
    {"[lb_av]/[in_i]2", "kg/m2", "lb/inch^2", "kg/m^2"},
    {"d", "min", "day", "min"},
    {"wk", "h", "week", "hour"},
    {"a", "d", "julianyear", "day"},
    {"mo", "d", "julianyear/12", "day"},
    {"umol/L", "mmol/m3", "umol/L", "mmol/m^3"},
    {"U", "nkat", "umol/min", "nmol/s"},
    {"ng/dL", "ug/m3", "ng/dL", "ug/m^3"},
    {"Hz", "/min", "Hz", "1/min"},
    {"%", "1", "percent", "1"},
};

/// What `units -t <from> <to>` prints; empty when the program is missing or refuses.
std::string askProgram(const std::string& from, const std::string& to) {
  const std::string command = "units -t -o '%.15g' '" + from + "' '" + to + "' 2>/dev/null";
  std::FILE* pipe = popen(command.c_str(), "r");
  if (!pipe) return {};
  std::string output;
  std::array<char, 256> buffer{};
  while (std::fgets(buffer.data(), static_cast<int>(buffer.size()), pipe)) output += buffer.data();
  const int status = pclose(pipe);
  return status == 0 ? output : std::string();
}

void requireProgram() {
  if (askProgram("1", "1").empty()) FAIL("the program `units` is missing: install the Debian package units");
}

double ours(double value, const char* from, const char* to) {
  const auto source = parseUnit(from);
  const auto target = parseUnit(to);
  REQUIRE(source);
  REQUIRE(target);
  const auto number = Rational::parse(std::to_string(value));
  REQUIRE(number);
  const auto result = convert(*number, *source, *target);
  REQUIRE(result);
  return result->toDouble();
}

double theirs(const std::string& from, const std::string& to) {
  const std::string answer = askProgram(from, to);
  CAPTURE(answer);
  REQUIRE_FALSE(answer.empty());
  return std::strtod(answer.c_str(), nullptr);
}

}  // namespace

TEST_CASE("factors agree with the units program") {
  requireProgram();
  for (const Pair& pair : kPairs) {
    CAPTURE(pair.from, pair.to);
    const double expected = theirs(pair.programFrom, pair.programTo);
    CHECK(ours(1, pair.from, pair.to) == Approx(expected).epsilon(pair.tolerance).margin(0));
  }
}

TEST_CASE("temperatures agree with the units program") {
  requireProgram();
  for (const char* degrees : {"-40", "0", "36.6", "38", "42.25"}) {
    CAPTURE(degrees);
    const double value = std::strtod(degrees, nullptr);
    const std::string text = degrees;
    CHECK(ours(value, "Cel", "[degF]") ==
          Approx(theirs("tempC(" + text + ")", "tempF")).epsilon(1e-9).margin(1e-9));
    CHECK(ours(value, "[degF]", "Cel") ==
          Approx(theirs("tempF(" + text + ")", "tempC")).epsilon(1e-9).margin(1e-9));
    CHECK(ours(value, "Cel", "K") == Approx(theirs("tempC(" + text + ")", "K")).epsilon(1e-9));
  }
}
