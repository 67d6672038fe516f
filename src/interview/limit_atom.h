// Limits taken apart into single demands, so that many records can be compared quickly.
//
// The decision (action, clearance, ceilings) is left out: see decision.h.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "base/rational.h"
#include "limits/limits.h"

namespace stile::interview {

/// One demand: a key of the limits and how strict. Of one key the strictest counts.
struct LimitAtom {
  int key = -1;
  base::Rational strictness;  ///< the larger, the stricter
};

/// The keys met so far, numbered. Numbers are given in the order of meeting.
class LimitKeys {
 public:
  /// Every demand of `limits` but the decision.
  std::vector<LimitAtom> atomsOf(const limits::Limits& limits);

  int size() const { return static_cast<int>(keys_.size()); }
  limits::Part partOf(int key) const { return keys_[static_cast<std::size_t>(key)].part; }
  /// The key of both sides that makes a one-sided demand superfluous; -1 when there is none.
  int coveredBy(int key) const { return keys_[static_cast<std::size_t>(key)].coveredBy; }

 private:
  friend class AtomCutter;
  struct Key {
    limits::Part part;
    int coveredBy = -1;
  };
  int keyOf(limits::Part part, const std::string& name, int coveredBy = -1);

  std::vector<Key> keys_;
  std::map<std::string, int> byName_;
};

/// The strictest of each key met, by key.
class Strictest {
 public:
  void clear() { marks_.clear(); strictness_.clear(); }
  void add(const std::vector<LimitAtom>& atoms);
  /// Whether what was added is at least as strict as `atom`.
  bool covers(const LimitAtom& atom, const LimitKeys& keys) const;

 private:
  bool covers(int key, const base::Rational& strictness) const;
  std::vector<char> marks_;
  std::vector<base::Rational> strictness_;
};

}  // namespace stile::interview
