// The nearest other decision, looked for in a thread of its own while nobody waits.
#pragma once

#include <functional>
#include <string>
#include <thread>

#include "interview/nearest_change.h"
#include "interview/session.h"

namespace stile::desktop {

/// Sentences; "" when the search was stopped.
struct NearestWords {
  std::string milder, stricter;
};

/// "Milder if this were otherwise: Do you have …? no." `change` is of the questions of `ground`.
std::string nearestSentence(const interview::Ground& ground, const interview::NearestChange& change, interview::Direction direction);

class NearestSearch {
 public:
  /// Takes what it needs out of the session at once; the session's ground must outlive the search. `done` is called in
  /// the search's own thread, and not when the search was stopped before.
  NearestSearch(interview::Session& session, std::function<void(NearestWords)> done);

 private:
  std::jthread thread_;  ///< stops and ends before the search does
};

}  // namespace stile::desktop
