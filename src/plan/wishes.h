// What the client said about goals and likings, as advice to the choice: rules/wishes.json. A wish
// orders what is open; it opens nothing and outweighs no finding.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "base/issue.h"
#include "facts/dictionary.h"
#include "facts/fact_set.h"
#include "plan/exercise.h"

namespace stile::plan {

/// One goal or liking, and what follows from it.
struct Wish {
  std::string id;
  int slot = -1;                                ///< of the boolean fact that says so
  std::string said;                             ///< after "you": "want to walk further"
  std::string clinician;                        ///< after "the client": "wants to walk further"
  std::string firstStep;                        ///< for the client; "" for a mere liking
  std::vector<std::string> purposes;            ///< covered sooner than their priority says
  std::vector<std::string> prefer, discourage;  ///< exercise ids, purposes, sections or tags
  base::Place place;
};

struct Wishes {
  int priorityRaise = 0;  ///< what a named purpose gains over its priority
  std::vector<Wish> all;
  std::map<std::string, std::string, std::less<>> phrases;  ///< with {slots}

  /// The wishes that are certainly the client's, in order.
  std::vector<const Wish*> of(const facts::FactSet& facts) const;
  /// The phrase with its slots filled in.
  std::string phrase(std::string_view key, const std::map<std::string, std::string>& slots) const;
};

/// Phrases wishes.json must give: why a line was chosen, the first step toward a goal, and what to
/// say of a goal that no line serves.
inline constexpr const char* kWishPhrases[] = {"because", "firstStep", "later"};

/// Reads the file; sources are gathered to be checked with those of the doses.
Wishes readWishes(const std::string& text, const std::string& file, const facts::Dictionary& dictionary,
                  std::vector<std::pair<std::string, base::Place>>& sources, base::Issues& issues);

/// True if the wish names the exercise or its purpose.
bool serves(const Exercise& exercise, const Wish& wish);
/// 1 liked, -1 rather not, 0 neither or both.
int wishFor(const Exercise& exercise, const std::vector<const Wish*>& wishes);

}  // namespace stile::plan
