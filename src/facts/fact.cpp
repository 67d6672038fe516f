#include "facts/fact.h"

#include <array>

namespace stile::facts {
namespace {

struct ReasonWords {
  UnknownReason reason;
  const char* id;
  const char* text;
  bool mayBeStated;
};

// Gravest first: what the person said outweighs what a program found, and that outweighs a blank.
constexpr std::array<ReasonWords, 10> kReasons{{
    {UnknownReason::NotSure, "notSure", "not sure", true},
    {UnknownReason::Declined, "declined", "declined", true},
    {UnknownReason::Contradictory, "contradictory", "contradictory", false},
    {UnknownReason::Unresolved, "unresolved", "to be resolved", false},
    {UnknownReason::NotConfirmed, "notConfirmed", "not confirmed", true},
    {UnknownReason::OutOfDate, "outOfDate", "out of date", false},
    {UnknownReason::NotAnswered, "notAnswered", "not answered", true},
    {UnknownReason::NotAsked, "notAsked", "not asked", true},
    {UnknownReason::NotApplicable, "notApplicable", "does not apply", false},
    {UnknownReason::None, "none", "known", false},
}};

std::size_t rankOf(UnknownReason reason) {
  std::size_t rank = 0;
  while (kReasons[rank].reason != reason) ++rank;
  return rank;
}

}  // namespace

const char* toText(UnknownReason reason) {
  return kReasons[rankOf(reason)].text;
}

const char* idOf(UnknownReason reason) {
  return kReasons[rankOf(reason)].id;
}

std::optional<UnknownReason> statedReason(std::string_view id) {
  for (const ReasonWords& words : kReasons) {
    if (words.mayBeStated && id == words.id) return words.reason;
  }
  return std::nullopt;
}

UnknownReason graver(UnknownReason a, UnknownReason b) {
  return rankOf(a) <= rankOf(b) ? a : b;
}

}  // namespace stile::facts
