// write_units COUNT FILE: conversions of every unit that is accepted, with Stile's results, for the
// reference library: each atom, each metric atom with each prefix, COUNT generated compounds, and from
// every unit a form offers to the unit its fact is kept in.
#include <cstdlib>
#include <iostream>

#include "../support/content.h"
#include "base/unit_table.h"
#include "random_source.h"

namespace {

using namespace stile;
using base::Analyte;
using base::Unit;

constexpr unsigned kSeed = 20261125;
const std::vector<std::string> kValues{"1", "0.37", "98.6", "12500"};

/// The coherent unit of a dimension in words of UCUM.
std::string coherentUnit(const base::Dimension& dimension) {
  const char* const atoms[] = {"m", "s", "g", "K", "mol", "deg", "[iU]", "[pH]"};
  std::string text;
  for (std::size_t i = 0; i < dimension.size(); ++i)
    if (dimension[i] != 0)
      text += (text.empty() ? "" : ".") + std::string(atoms[i]) +
              (dimension[i] == 1 ? "" : std::to_string(dimension[i]));
  return text.empty() ? "1" : text;
}

class UnitCases {
 public:
  explicit UnitCases(json::Writer& writer) : writer_(writer) {}

  void add(const std::string& from, const std::string& to, Analyte analyte = Analyte::None) {
    const auto unit = base::parseUnit(from);
    const auto target = base::parseUnit(to);
    if (!unit || !target) throw std::runtime_error(from + " or " + to + " is not accepted");
    bool fits = false;
    for (const std::string& value : kValues) {
      const auto result = base::convert(*base::Rational::parse(value), *unit, *target, analyte);
      if (!result) continue;  // beyond 127 bits: unknown, never wrong
      fits = true;
      writer_.beginObject().member("from", from).member("to", to).member("value", value);
      writer_.member("numerator", digits(result->numerator()))
          .member("denominator", digits(result->denominator()));
      writer_.member("analyte", analyteWord(analyte)).endObject();
      ++conversions;
    }
    ++(fits ? units : beyond);
  }

  int units = 0, beyond = 0, conversions = 0;

 private:
  static std::string digits(base::Int128 number) {
    std::string text;
    const bool isNegative = number < 0;
    do {
      const int digit = static_cast<int>(number % 10);
      text.insert(text.begin(), static_cast<char>('0' + (digit < 0 ? -digit : digit)));
      number /= 10;
    } while (number != 0);
    return isNegative ? "-" + text : text;
  }

  static const char* analyteWord(Analyte analyte) {
    switch (analyte) {
      case Analyte::None:
        return "";
      case Analyte::Glucose:
        return "glucose";
      case Analyte::HbA1c:
        return "hba1c";
      case Analyte::Cholesterol:
        return "cholesterol";
      case Analyte::Triglycerides:
        return "triglycerides";
    }
    return "";
  }

  json::Writer& writer_;
};

std::vector<std::string> everyAtom() {
  std::vector<std::string> all;
  for (const base::UnitAtom& atom : base::kUnitAtoms) {
    all.emplace_back(atom.text);
    for (const base::UnitPrefix& prefix : base::kUnitPrefixes)
      if (atom.isMetric) all.push_back(std::string(prefix.text) + std::string(atom.text));
  }
  return all;
}

/// Two to four atoms with exponents, quotients, parentheses and annotations.
std::string compound(const std::vector<std::string>& atoms, differential::Random& random) {
  std::string text = random.oneIn(8) ? "/" : "";
  const int parts = random.between(text.empty() ? 2 : 1, 4);
  for (int i = 0; i < parts; ++i) {
    if (i > 0) text += random.oneIn(2) ? "/" : ".";
    std::string part = random.oneIn(12) ? std::to_string(random.between(2, 60)) : random.oneOf(atoms);
    const bool isDigit =
        part.back() == '*' || part.back() == '^' || (part.front() >= '0' && part.front() <= '9');
    if (part == "10*" || part == "10^")
      part += std::to_string(random.between(1, 9));
    else if (!isDigit && random.oneIn(4))
      part += std::to_string(random.oneIn(2) ? random.between(2, 3) : -random.between(1, 2));
    if (random.oneIn(10))
      part =
          "(" + part + (random.oneIn(2) ? "/" : ".") + random.oneOf({"s", "m", "kg", "L", "d", "mmol"}) + ")";
    else if (random.oneIn(10))
      part += "{words}";
    text += part;
  }
  return text;
}

void addContent(UnitCases& cases) {
  const auto& content = test::content();
  for (const auto& form : content.forms.forms())
    for (const auto* item : form->inOrder()) {
      const auto* fact = content.dictionary.find(item->linkId);
      if (!fact || item->units.empty()) continue;
      for (const std::string& unit : item->units) {
        cases.add(unit, fact->valueType.unit.text, fact->valueType.analyte);
        cases.add(fact->valueType.unit.text, unit, fact->valueType.analyte);
      }
    }
}

}  // namespace

int main(int argumentCount, char** arguments) {
  const int count = argumentCount == 3 ? std::atoi(arguments[1]) : 0;
  if (count <= 0) {
    std::cerr << "write_units COUNT FILE\n";
    return 2;
  }
  json::Writer writer(0);
  writer.beginArray();
  UnitCases cases(writer);
  const auto atoms = everyAtom();
  for (const std::string& atom : atoms) {
    // The two of a reading of 10 to a power stand for nothing without it.
    if (atom == "10*" || atom == "10^") continue;
    const std::string to = coherentUnit(base::parseUnit(atom)->dimension);
    cases.add(atom, to);
    cases.add(to, atom);
  }
  differential::Random random(kSeed);
  for (int made = 0; made < count;) {
    const std::string text = compound(atoms, random);
    const auto unit = base::parseUnit(text);
    if (!unit) continue;  // temperatures with an offset, and what does not fit
    cases.add(text, coherentUnit(unit->dimension));
    ++made;
  }
  addContent(cases);
  writer.endArray();
  std::ofstream out(arguments[2], std::ios::binary);
  out << writer.text();
  out.close();
  if (!out) {
    std::cerr << arguments[2] << " could not be written\n";
    return 4;
  }
  std::cout << cases.conversions << " conversions of " << cases.units << " units; " << cases.beyond
            << " more do not fit 127 bits and are unknown\n";
  return 0;
}
