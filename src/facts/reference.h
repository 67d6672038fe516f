// Published formulas and classes as data (rules/reference.json): heart rates, metabolic equations,
// intensity bands, classes of blood pressure and body mass. A formula is an expression over its own
// inputs; a class is the first row whose condition holds.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/issue.h"
#include "facts/fact_set.h"

namespace stile::facts {

class Reference {
 public:
  /// Numbers by input name, each in the unit the formula states for that input.
  using Inputs = std::map<std::string, base::Rational, std::less<>>;

  struct Row {
    std::string code;
    std::string display;
    expression::Program when;
  };
  /// `of` names, for each input, the fact that is classed or put in; empty when the formula serves
  /// other formulas only.
  struct Entry {
    std::string id, title;
    std::vector<std::string> inputNames;
    std::vector<expression::Type> inputTypes;
    std::map<std::string, std::string> of;
    std::optional<expression::Program> value;  ///< a formula
    std::vector<Row> rows;                     ///< or a class
    std::string unitText;                      ///< of a formula's result
    std::vector<std::string> sources;
  };

  static Reference load(const std::string& text, const std::string& file, const Dictionary& dictionary, base::Issues& issues);

  const std::vector<Entry>& entries() const { return entries_; }
  const Entry* find(std::string_view id) const;

  /// nullopt when there is no such formula, an input is missing, or the result is not a number.
  std::optional<base::Rational> evaluate(std::string_view id, const Inputs& inputs) const;
  /// The class on these inputs; nullopt when no row certainly holds.
  const Row* classOf(std::string_view id, const Inputs& inputs) const;
  /// The inputs of an entry taken from the facts it names; nullopt while one is not known exactly.
  static std::optional<Inputs> inputsFrom(const Entry& entry, const FactSet& facts);

 private:
  std::vector<Entry> entries_;
};

}  // namespace stile::facts
