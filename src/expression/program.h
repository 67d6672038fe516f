// The scalar profile: conditions over named facts, checked once, compiled once, run many times.
//
// Allowed: %facts, literals, and or xor implies not(), = != < <= > >=, + - * /, unary minus, `in`
// over a literal list such as ('a' | 'b'), parentheses. Refused with a reason, because they turn
// "unknown" into a firm answer: exists() empty() count() where() all() iif() and the like, and
// adding a duration to a date (FHIRPath truncates it). Everything else of FHIRPath is refused as
// not part of the profile.
#pragma once

#include <memory>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "expression/syntax.h"
#include "expression/value.h"

namespace stile::expression {

/// A named fact as the checker sees it.
struct Symbol {
  int slot = -1;
  Type type;
  std::vector<std::string> options;  ///< the codes a Code may have
  std::string usable;                ///< not empty: why it cannot be used here (e.g. another group)
};

class SymbolTable {
 public:
  virtual ~SymbolTable() = default;
  /// nullopt when there is no such fact. `name` comes without the percent sign.
  virtual std::optional<Symbol> lookup(std::string_view name) const = 0;
  /// Names near to a misspelt one, for the remedy; may be empty.
  virtual std::vector<std::string> similar(std::string_view name) const = 0;
};

/// Values by slot, at evaluation.
class Slots {
 public:
  virtual ~Slots() = default;
  virtual const Value& valueOf(int slot) const = 0;
};

/// A checked, compiled expression. Cheap to copy.
class Program {
 public:
  /// Compiles. nullopt and located issues when the text is not acceptable. `expected` is what
  /// the caller needs (a condition needs Boolean; a number may ask for a unit, into which the
  /// result is converted).
  static std::optional<Program> compile(std::string_view text, const SymbolTable& symbols,
                                        std::optional<Type> expected, const Origin& origin,
                                        const std::string& subject, base::Issues& issues);

  Value evaluate(const Slots& slots) const;
  const Type& type() const;
  const std::string& text() const;

  /// The slots the condition reads, in reading order, each once.
  const std::vector<int>& slotsRead() const;
  /// The slots that decided the outcome on these values, in reading order: for true or false a
  /// sufficient set of known ones; for unknown exactly the slots that are not settled and whose
  /// value could still turn the result (branches already decided by known values are left out).
  /// Where every slot is settled and nothing follows all the same (division by zero, overflow, a
  /// date literal without a day), the settled slots of what is undecided.
  std::vector<int> decidedBy(const Slots& slots) const;
  /// Slots that are certainly known whenever the condition is true (or false): for the check that
  /// a sentence names only what is known in every state it serves. Numbers and dates between
  /// bounds count as known, and so does a fact that does not apply; such a fact makes a comparison
  /// false, so of a false comparison of several facts none is known for certain.
  std::set<int> knownWhen(bool outcome) const;

 private:
  struct Code;
  std::shared_ptr<const Code> code_;
};

}  // namespace stile::expression
