// The atoms and metric prefixes of UCUM that are accepted, as data. For src/base, and for the test that
// holds each of them against a reference library.
#pragma once

#include <array>
#include <string_view>

#include "base/unit.h"

namespace stile::base {

struct UnitPrefix {
  std::string_view text;
  int exponent;
};

// UCUM 2.1, table 1, as far as health measurements use them.
inline constexpr std::array<UnitPrefix, 17> kUnitPrefixes{{{"da", 1},
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

struct UnitAtom {
  std::string_view text;
  bool isMetric;            ///< takes prefixes
  std::string_view number;  ///< exact; the factor is number / divisor
  int divisor;
  Dimension dimension;  ///< m, s, g, K, mol, deg, [iU], [pH]
  std::string_view offset = "0";
};

namespace dimension {
inline constexpr Dimension kNone{};
inline constexpr Dimension kLength{1};
inline constexpr Dimension kTime{0, 1};
inline constexpr Dimension kMass{0, 0, 1};
inline constexpr Dimension kTemperature{0, 0, 0, 1};
inline constexpr Dimension kAmount{0, 0, 0, 0, 1};
inline constexpr Dimension kAngle{0, 0, 0, 0, 0, 1};
inline constexpr Dimension kVolume{3};
inline constexpr Dimension kPressure{-1, -2, 1};
inline constexpr Dimension kForce{1, -2, 1};
inline constexpr Dimension kEnergy{2, -2, 1};
inline constexpr Dimension kPower{2, -3, 1};
inline constexpr Dimension kFrequency{0, -1};
inline constexpr Dimension kCatalysis{0, -1, 0, 0, 1};
}  // namespace dimension

// Values of UCUM 2.1 in metre, second, gram (so a newton is 1000 g.m/s2).
inline constexpr auto kUnitAtoms = std::to_array<UnitAtom>({
    {"m", true, "1", 1, dimension::kLength},
    {"s", true, "1", 1, dimension::kTime},
    {"g", true, "1", 1, dimension::kMass},
    {"K", true, "1", 1, dimension::kTemperature},
    {"mol", true, "1", 1, dimension::kAmount},
    {"eq", true, "1", 1, dimension::kAmount},
    {"L", true, "0.001", 1, dimension::kVolume},
    {"l", true, "0.001", 1, dimension::kVolume},
    {"min", false, "60", 1, dimension::kTime},
    {"h", false, "3600", 1, dimension::kTime},
    {"d", false, "86400", 1, dimension::kTime},
    {"wk", false, "604800", 1, dimension::kTime},
    {"mo", false, "2629800", 1, dimension::kTime},
    {"a", false, "31557600", 1, dimension::kTime},
    {"Pa", true, "1000", 1, dimension::kPressure},
    {"bar", true, "1e8", 1, dimension::kPressure},
    {"m[Hg]", true, "133322000", 1, dimension::kPressure},
    {"m[H2O]", true, "9806650", 1, dimension::kPressure},
    {"N", true, "1000", 1, dimension::kForce},
    {"gf", true, "9.80665", 1, dimension::kForce},
    {"[lbf_av]", false, "4448.2216152605", 1, dimension::kForce},
    {"J", true, "1000", 1, dimension::kEnergy},
    {"cal", true, "4184", 1, dimension::kEnergy},
    {"W", true, "1000", 1, dimension::kPower},
    {"Hz", true, "1", 1, dimension::kFrequency},
    {"kat", true, "1", 1, dimension::kCatalysis},
    {"U", true, "1e-6", 60, dimension::kCatalysis},
    {"Cel", false, "1", 1, dimension::kTemperature, "273.15"},
    {"[degF]", false, "5", 9, dimension::kTemperature, "459.67"},
    {"[in_i]", false, "0.0254", 1, dimension::kLength},
    {"[ft_i]", false, "0.3048", 1, dimension::kLength},
    {"[yd_i]", false, "0.9144", 1, dimension::kLength},
    {"[mi_i]", false, "1609.344", 1, dimension::kLength},
    {"[lb_av]", false, "453.59237", 1, dimension::kMass},
    {"[oz_av]", false, "453.59237", 16, dimension::kMass},
    {"[stone_av]", false, "6350.29318", 1, dimension::kMass},
    // 3.5 mL/min/kg
    {"[MET]", false, "3.5e-9", 60, {3, -1, -1}},
    {"deg", false, "1", 1, dimension::kAngle},
    {"%", false, "0.01", 1, dimension::kNone},
    {"10*", false, "10", 1, dimension::kNone},
    {"10^", false, "10", 1, dimension::kNone},
    {"[iU]", true, "1", 1, {0, 0, 0, 0, 0, 0, 1}},
    {"[IU]", true, "1", 1, {0, 0, 0, 0, 0, 0, 1}},
    {"[pH]", false, "1", 1, {0, 0, 0, 0, 0, 0, 0, 1}},
});

}  // namespace stile::base
