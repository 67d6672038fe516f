#include "base/unit_atom.h"

#include <array>

#include "base/unit_table.h"

namespace stile::base {
namespace {

std::optional<Unit> unitOf(const UnitAtom& atom) {
  const auto number = Rational::parse(atom.number);
  const auto offset = Rational::parse(atom.offset);
  if (!number || !offset) return std::nullopt;
  const auto factor = Rational::divide(*number, atom.divisor);
  if (!factor) return std::nullopt;
  return Unit{std::string(atom.text), *factor, *offset, atom.dimension};
}

const UnitAtom* find(std::string_view text) {
  for (const UnitAtom& atom : kUnitAtoms) {
    if (atom.text == text) return &atom;
  }
  return nullptr;
}

}  // namespace

std::optional<Unit> unitAtom(std::string_view text) {
  // The whole text first: `min`, `cal`, `Pa` and `mo` would otherwise be milli-, centi-, peta-.
  if (const UnitAtom* atom = find(text)) return unitOf(*atom);
  for (const UnitPrefix& prefix : kUnitPrefixes) {
    if (!text.starts_with(prefix.text)) continue;
    const UnitAtom* atom = find(text.substr(prefix.text.size()));
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
