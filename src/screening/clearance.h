// A physician's reply, as given, and what it covers on these facts.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "answers/response.h"
#include "base/date.h"
#include "limits/limits.h"
#include "rules/finding.h"

namespace stile::screening {

/// One answered finding of a reply to the clearance-reply form.
struct ClearanceReply {
  std::string ruleId;
  std::string basis;                    ///< the finding's basis when the letter was written
  std::string answer;                   ///< code: noKnownReason, withLimits, mustSeeFirst, refer, cannotComment
  std::optional<limits::Bay> bay;       ///< nullopt = both
  std::optional<limits::Rung> intensity;
  std::optional<base::Date> from, until;
  std::optional<base::Rational> heartRatePerMinute, systolic, loadKilograms;
  std::string by;
  std::string note;
};

/// Reads replies out of responses to the form `clearance-reply`.
std::vector<ClearanceReply> repliesIn(const answers::Response& response, base::Issues& issues);

/// What one reply does to one finding, and why.
struct Coverage {
  std::string ruleId;
  int repetition = -1;
  std::string by;
  bool covers = false;
  std::string because;                  ///< in words, also when it does not cover
  limits::PerBay<limits::Rung> upTo{limits::Rung::None, limits::Rung::None};
  std::optional<base::Date> until;
};

/// Decides which findings the replies cover today: the same rule, certain, on the same basis, in
/// force, answered without or with limits, "unchanged" confirmed where the rule asks for it.
std::vector<Coverage> coverageOf(const std::vector<ClearanceReply>& replies, const std::vector<rules::Finding>& findings,
                                 const facts::FactSet& facts, base::Date today);

}  // namespace stile::screening
