// What clinicians added to one screening after it was computed: overrides, sign-offs, amendments.
//
// Nothing here changes what the rules found. Papers show it beside the computed lines.
#pragma once

#include <string>
#include <vector>

#include "base/date.h"
#include "records/entry.h"

namespace stile::records {

/// A clinician decides otherwise than one rule.
struct OverrideNote {
  std::string rule;     ///< id of the rule
  std::string instead;  ///< what holds in its place
  std::string reason;
  std::string by;
  base::Date date;
  bool needsSecond = false;
  std::string secondBy;  ///< "" until a second clinician signed
  std::string entry;     ///< id of the override's entry
};

struct SignOffNote {
  std::string by;
  base::Date date;
};

struct AmendmentNote {
  std::string text, by;
  base::Date date;
};

struct DecisionNotes {
  std::vector<OverrideNote> overrides;
  std::vector<SignOffNote> signOffs;
  std::vector<AmendmentNote> amendments;
};

/// What `entries` add to the screening whose entry has the id `screening`, in the order of filing.
/// `by` and `secondBy` are sign-in names. Second signatures by the same clinician count for nothing.
DecisionNotes decisionNotesOf(const std::vector<Entry>& entries, const std::string& screening);

}  // namespace stile::records
