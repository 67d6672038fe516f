// When a clinic calls, writes again and screens again: rules/follow-up.json.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "base/date.h"
#include "base/issue.h"
#include "records/progression.h"

namespace stile::records {

/// One step of a chase, counted from the day the letter went out.
struct ChaseStep {
  int afterDays = 0;
  std::string next;  ///< what to do, a sentence for the clinician
};

/// What follows from one kind of event, besides that the plan waits.
struct EventPolicy {
  std::vector<std::string> endsClearanceOf;  ///< rules, as matchesAny() takes them: replies given before count no longer
  std::string letter;                        ///< to the physician; slots {client} {born} {date} {doing} {done} {outcome}
};

struct FollowUpPolicy {
  std::vector<ChaseStep> chase;      ///< earliest first, at least one
  base::Period checkInAfter;         ///< after any start
  base::Period screenAgainAfter;     ///< after a screening
  base::Period screenAgainSooner;    ///< after one with a clearance, or with a rule of `soonerRules`
  std::vector<std::string> soonerRules;  ///< as matchesAny() takes them
  std::vector<ProgressionRule> progression;
  std::map<std::string, EventPolicy> events;  ///< one for every word of an event's `what`
  int painNextMorningFrom = 0;       ///< pain 0-10 on the next morning from which on the plan waits
  std::vector<std::string> unreached;    ///< what to do after the first, second, … attempt that failed
  std::map<std::string, std::string> next;  ///< task -> what is next, a sentence

  static FollowUpPolicy load(const std::string& text, const std::string& file, base::Issues& issues);
};

/// `patterns`: rule ids, or beginnings of them ending in *.
bool matchesAny(const std::string& rule, const std::vector<std::string>& patterns);

/// The tasks that `next` must have a sentence for.
const std::vector<std::string>& taskIds();

}  // namespace stile::records
