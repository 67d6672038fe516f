// What an edited copy of the content folder would change for one client: the same answers, screened with both.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "application/screen_again.h"
#include "screening/content.h"

namespace stile::application {

struct ContentComparison {
  std::string before, after;         ///< content versions
  base::Date day;                    ///< on which the client is screened
  std::vector<Changed> decision;     ///< action, clearance and intensities
  std::vector<Changed> findings;     ///< by title; what they say stands beside their standing
  std::vector<Changed> exercises;    ///< of the plan, made or held; "in the plan"
  bool isSame() const { return decision.empty() && findings.empty() && exercises.empty(); }
};

/// With the answers of the draft, or of the last screening when there is none, and every reply on record. Nothing is filed.
/// Refused when the answers cannot be read with one of the two.
base::Result<ContentComparison> compareContent(Clinic& clinic, const std::string& id, const screening::Content& before, const screening::Content& after,
                                               base::Date today);
/// The same as text, a line each.
std::string toText(const ContentComparison& comparison);

}  // namespace stile::application
