// The nearest other decision: the fewest given answers that would have to be otherwise for the
// decision to be milder, or stricter.
//
// Exact up to three answers; beyond that it says "more than three". Meant to run while nobody waits,
// and to be stopped when somebody answers.
#pragma once

#include <stop_token>
#include <vector>

#include "interview/position.h"

namespace stile::interview {

inline constexpr int kMostChanges = 3;

enum class Direction { Milder, Stricter };

struct AnswerChange {
  QuestionRef question;
  PossibleAnswer answer;  ///< what it would be instead
};

struct NearestChange {
  enum class Kind {
    Found,          ///< `changes` holds the fewest, one example of them
    MoreThanThree,  ///< no one, two or three answers would do
    Stopped,        ///< the search was stopped
  };
  Kind kind = Kind::MoreThanThree;
  std::vector<AnswerChange> changes;
};

/// What is compared: the certain action, and clearance and ceilings of the cautious end.
Decision decisionOf(const Position& position);

/// `given`: questions with a known answer, identity left out. Milder: no part graver and some part
/// milder; stricter: the reverse. `position` is as before afterwards. A question whose answers cannot
/// all be listed is tried with those that rules and forms tell apart.
NearestChange nearestChange(Position& position, const std::vector<QuestionRef>& given, Direction direction,
                            std::stop_token stop = {});

}  // namespace stile::interview
