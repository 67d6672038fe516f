// The fact dictionary: every thing the rules may ask about, read from rules/facts/*.json.
//
// The format is described in DEVELOPERS.md. Ids are never reused; a changed meaning, unit or
// type is a new id.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/date.h"
#include "base/issue.h"
#include "base/rational.h"
#include "base/text_map.h"
#include "base/unit.h"
#include "expression/program.h"
#include "facts/medicine_class.h"
#include "facts/norm_table.h"
#include "questionnaire/form.h"

namespace stile::facts {

enum class FactType { Boolean, Integer, Decimal, Quantity, Code, Date, Text };
enum class Concern { True, False, Rising, Falling, OutsideRange, None };
/// How unknown counts; see "If unknown" in DEVELOPERS.md.
enum class UnknownAs { Cautious, Gate, Lowest, Optional };

enum class DerivedKind {
  None,
  Expression,
  Elapsed,
  Summary,
  Norm,
  Mean,
  Worst,
  Last,
  Score,
  Option,
  ClassMember
};
enum class SummaryOf { Any, Every, Smallest, Largest, Count };

const char* toText(FactType type);
const char* toText(Concern concern);
const char* toText(UnknownAs unknownAs);
const char* toText(DerivedKind kind);

struct OptionDefinition {
  std::string code;
  std::string display;
  bool isNone = false;  ///< choosing it means none of the others
  int slot = -1;        ///< of its option fact; -1 unless the choice is multiple
};

/// How a derived fact comes about; which members are used depends on `kind`.
struct Derivation {
  DerivedKind kind = DerivedKind::None;
  std::optional<expression::Program> program;  ///< Expression; Summary: what is summarised (not Count)
  std::optional<expression::Program> where;    ///< Summary
  int of = -1;  ///< slot: date for Elapsed, group member for Mean/Worst/Last/ClassMember, choice for Option
  base::CalendarUnit unit = base::CalendarUnit::Day;  ///< Elapsed
  SummaryOf summary = SummaryOf::Any;
  std::string group;               ///< Summary, Mean, Worst, Last, ClassMember
  int groupIndex = -1;             ///< of `group`
  int newest = 0;                  ///< Mean: how many of the newest readings count; 0 = all
  bool takeLargest = true;         ///< Worst
  std::vector<std::string> codes;  ///< Option: the option code; ClassMember: the medicine classes
  std::vector<int> classIndices;   ///< ClassMember: of any of these
  int lookedUp = -1;               ///< ClassMember: slot of the clinician's word on an unmatched name, or -1
  std::string table;               ///< Norm: id of the table
  std::vector<int> inputs;         ///< Norm: measured, sex, age; Score: the boolean facts added up
};

struct Definition {
  std::string id;
  int slot = -1;
  FactType type = FactType::Boolean;
  expression::Type valueType;
  std::string label;     ///< for the clinician's papers: "Resting systolic pressure"
  std::string topic;     ///< of the file it stands in; "policy" for policies
  std::string group;     ///< id of the repeating group it belongs to, or ""
  int groupIndex = -1;   ///< of `group`
  int memberIndex = -1;  ///< position among the members of `group`
  std::vector<OptionDefinition> options;
  bool isMultiple = false;  ///< a choice with several answers: used through its option facts
  std::optional<base::Rational> possibleLow, possibleHigh, plausibleLow, plausibleHigh;
  /// How far two results must lie apart before the difference is real, in the fact's unit.
  std::optional<base::Rational> smallestChange;
  std::vector<std::string> smallestChangeSources;
  Concern concern = Concern::None;
  std::optional<base::Period> freshFor;
  UnknownAs unknownAs = UnknownAs::Cautious;
  std::optional<expression::Program> optionalWhen;  ///< Optional only in this circumstance
  std::string optionalBecause;
  std::optional<expression::Value> whenNotApplicable;
  std::optional<expression::Value> policy;  ///< a policy's value, which is always known
  Derivation derived;
  std::vector<std::string> sources;
  std::string retiredFor;  ///< replacedBy; not empty = no form may ask it any more
  std::string code;        ///< "system|code" of a standard terminology, or ""
  base::Place place;

  bool isPolicy() const { return policy.has_value(); }
  bool isOption() const { return derived.kind == DerivedKind::Option; }
  /// Worked out from other facts. Option facts are not: they are given with their choice.
  bool isDerived() const { return derived.kind != DerivedKind::None && !isOption(); }
  /// The value when the question certainly does not apply: false for a boolean without one of its own.
  expression::Value valueWhenNotApplicable() const;
  const OptionDefinition* option(std::string_view optionCode) const;
};

class Dictionary : public expression::SymbolTable {
 public:
  /// Loads rules/facts/*.json, rules/policy.json, rules/norms/*.json and the medicine classes.
  /// `files` maps the path under the content folder to its text. Forms are checked against it by
  /// checkForms(). Derived facts are ordered so that each comes after what it reads; a cycle is
  /// an issue.
  static Dictionary load(const std::map<std::string, std::string>& files, base::Issues& issues);
  /// Types, units, options and groups of every form item agree with the dictionary. A form that
  /// asks no fact at all is not checked.
  void checkForms(const questionnaire::FormSet& forms, base::Issues& issues) const;

  std::optional<expression::Symbol> lookup(std::string_view name) const override;
  std::vector<std::string> similar(std::string_view name) const override;
  /// The same table, with the members of `group` usable (they are refused elsewhere).
  class GroupView;

  const Definition* find(std::string_view id) const;
  const Definition& at(int slot) const { return definitions_[static_cast<std::size_t>(slot)]; }
  int size() const { return static_cast<int>(definitions_.size()); }
  const std::vector<int>& derivedInOrder() const { return derivedInOrder_; }
  const std::vector<std::string>& groups() const { return groups_; }
  int groupIndex(std::string_view group) const;  ///< -1 when there is no such group
  const std::vector<int>& groupMembers(int groupIndex) const {
    return groupMembers_[static_cast<std::size_t>(groupIndex)];
  }
  /// A mean, worst or last reads it: a series of dated readings, to which every response adds.
  bool isSeries(int groupIndex) const { return isSeries_[static_cast<std::size_t>(groupIndex)]; }
  const NormTable* norm(std::string_view id) const;
  const std::map<std::string, std::string>& groupTitles() const { return groupTitles_; }
  const MedicineClasses& medicines() const { return medicines_; }

 private:
  friend class DictionaryLoader;
  /// `within`: the group whose members may be used, or "".
  std::optional<expression::Symbol> symbol(std::string_view name, std::string_view within) const;

  std::vector<Definition> definitions_;
  base::TextMap<int> bySlot_;
  std::vector<int> derivedInOrder_;
  std::vector<std::string> groups_;
  std::vector<std::vector<int>> groupMembers_;
  std::vector<bool> isSeries_;
  std::map<std::string, std::string> groupTitles_;
  std::vector<NormTable> norms_;
  MedicineClasses medicines_;
};

/// Symbols as seen from inside one repetition of a group.
class Dictionary::GroupView : public expression::SymbolTable {
 public:
  GroupView(const Dictionary& dictionary, std::string group)
      : dictionary_(dictionary), group_(std::move(group)) {}
  std::optional<expression::Symbol> lookup(std::string_view name) const override;
  std::vector<std::string> similar(std::string_view name) const override { return dictionary_.similar(name); }

 private:
  const Dictionary& dictionary_;
  std::string group_;
};

}  // namespace stile::facts
