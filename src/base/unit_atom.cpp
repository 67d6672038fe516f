#include "base/unit_atom.h"

#include <array>
#include <cstddef>

namespace stile::base {
namespace {

struct Prefix {
  std::string_view text;
  int exponent;
};

// UCUM 2.1, table 1, as far as health measurements use them.
constexpr std::array<Prefix, 17> kPrefixes{{{"da", 1},
                                            {"T", 12},
                                            {"G", 9},
                                            {"M", 6},
                                            {"k", 3},
                                            {"h", 2},
                                            {"d", -1},
                                            {"c", -2},
                                            {"m", -3},
                                            {"u", -6},
                                            {"n", -9},
                                            {"p", -12},
                                            {"f", -15},
                                            {"a", -18},
                                            {"P", 15},
                                            {"E", 18},
                                            {"z", -21}}};

struct Atom {
  std::string_view text;
  bool isMetric;            ///< takes prefixes
  std::string_view number;  ///< exact; the factor is number / divisor
  int divisor;
  Dimension dimension;  ///< m, s, g, K, mol, deg, [iU], [pH]
  std::string_view offset = "0";
};

constexpr Dimension kNone{};
constexpr Dimension kLength{1};
constexpr Dimension kTime{0, 1};
constexpr Dimension kMass{0, 0, 1};
constexpr Dimension kTemperature{0, 0, 0, 1};
constexpr Dimension kAmount{0, 0, 0, 0, 1};
constexpr Dimension kAngle{0, 0, 0, 0, 0, 1};
constexpr Dimension kVolume{3};
constexpr Dimension kPressure{-1, -2, 1};
constexpr Dimension kForce{1, -2, 1};
constexpr Dimension kEnergy{2, -2, 1};
constexpr Dimension kPower{2, -3, 1};
constexpr Dimension kFrequency{0, -1};
constexpr Dimension kCatalysis{0, -1, 0, 0, 1};

// Values of UCUM 2.1 in metre, second, gram (so a newton is 1000 g.m/s2).
constexpr auto kAtoms = std::to_array<Atom>({
    {"m", true, "1", 1, kLength},
    {"s", true, "1", 1, kTime},
    {"g", true, "1", 1, kMass},
    {"K", true, "1", 1, kTemperature},
    {"mol", true, "1", 1, kAmount},
    {"eq", true, "1", 1, kAmount},
    {"L", true, "0.001", 1, kVolume},
    {"l", true, "0.001", 1, kVolume},
    {"min", false, "60", 1, kTime},
    {"h", false, "3600", 1, kTime},
    {"d", false, "86400", 1, kTime},
    {"wk", false, "604800", 1, kTime},
    {"mo", false, "2629800", 1, kTime},
    {"a", false, "31557600", 1, kTime},
    {"Pa", true, "1000", 1, kPressure},
    {"bar", true, "1e8", 1, kPressure},
    {"m[Hg]", true, "133322000", 1, kPressure},
    {"m[H2O]", true, "9806650", 1, kPressure},
    {"N", true, "1000", 1, kForce},
    {"gf", true, "9.80665", 1, kForce},
    {"[lbf_av]", false, "4448.2216152605", 1, kForce},
    {"J", true, "1000", 1, kEnergy},
    {"cal", true, "4184", 1, kEnergy},
    {"W", true, "1000", 1, kPower},
    {"Hz", true, "1", 1, kFrequency},
    {"kat", true, "1", 1, kCatalysis},
    {"U", true, "1e-6", 60, kCatalysis},
    {"Cel", false, "1", 1, kTemperature, "273.15"},
    {"[degF]", false, "5", 9, kTemperature, "459.67"},
    {"[in_i]", false, "0.0254", 1, kLength},
    {"[ft_i]", false, "0.3048", 1, kLength},
    {"[yd_i]", false, "0.9144", 1, kLength},
    {"[mi_i]", false, "1609.344", 1, kLength},
    {"[lb_av]", false, "453.59237", 1, kMass},
    {"[oz_av]", false, "453.59237", 16, kMass},
    {"[st_av]", false, "6350.29318", 1, kMass},
    // 3.5 mL/min/kg
    {"[MET]", false, "3.5e-9", 60, {3, -1, -1}},
    {"deg", false, "1", 1, kAngle},
    {"%", false, "0.01", 1, kNone},
    {"10*", false, "10", 1, kNone},
    {"10^", false, "10", 1, kNone},
    {"[iU]", true, "1", 1, {0, 0, 0, 0, 0, 0, 1}},
    {"[IU]", true, "1", 1, {0, 0, 0, 0, 0, 0, 1}},
    {"[pH]", false, "1", 1, {0, 0, 0, 0, 0, 0, 0, 1}},
});

std::optional<Unit> unitOf(const Atom& atom) {
  const auto number = Rational::parse(atom.number);
  const auto offset = Rational::parse(atom.offset);
  if (!number || !offset) return std::nullopt;
  const auto factor = Rational::divide(*number, atom.divisor);
  if (!factor) return std::nullopt;
  return Unit{std::string(atom.text), *factor, *offset, atom.dimension};
}

const Atom* find(std::string_view text) {
  for (const Atom& atom : kAtoms) {
    if (atom.text == text) return &atom;
  }
  return nullptr;
}

}  // namespace

std::optional<Unit> unitAtom(std::string_view text) {
  // The whole text first: `min`, `cal`, `Pa` and `mo` would otherwise be milli-, centi-, peta-.
  if (const Atom* atom = find(text)) return unitOf(*atom);
  for (const Prefix& prefix : kPrefixes) {
    if (!text.starts_with(prefix.text)) continue;
    const Atom* atom = find(text.substr(prefix.text.size()));
    if (!atom || !atom->isMetric) continue;
    auto unit = unitOf(*atom);
    const auto scale = power(Unit{"10*", 10}, prefix.exponent);
    const auto factor = unit && scale ? Rational::multiply(unit->factor, scale->factor) : std::nullopt;
    if (!factor) return std::nullopt;
    unit->factor = *factor;
    unit->text = std::string(text);
    return unit;
  }
  return std::nullopt;
}

std::string_view unitCodeForCalendarWord(std::string_view text) {
  struct Word {
    std::string_view one, many, code;
  };
  static constexpr std::array<Word, 8> kWords{{{"year", "years", "a"},
                                               {"month", "months", "mo"},
                                               {"week", "weeks", "wk"},
                                               {"day", "days", "d"},
                                               {"hour", "hours", "h"},
                                               {"minute", "minutes", "min"},
                                               {"second", "seconds", "s"},
                                               {"millisecond", "milliseconds", "ms"}}};
  for (const Word& word : kWords) {
    if (text == word.one || text == word.many) return word.code;
  }
  return text;
}

}  // namespace stile::base
