#include "plan/obstacle.h"

#include <map>

#include "plan/holders.h"

namespace stile::plan {
namespace {

std::string wordsOf(const Obstacle& obstacle) {
  return obstacle.words + inBrackets(obstacle.ruleIds);
}

}  // namespace

Excess excessOf(const std::vector<Obstacle>& obstacles) {
  std::map<std::string, base::Rational> things;
  for (const Obstacle& each : obstacles) things.emplace(wordsOf(each), each.beyond);
  Excess excess;
  excess.things = things.size();
  for (const auto& [words, beyond] : things) {
    if (beyond == base::Rational(0)) ++excess.absolute;
    excess.degrees = base::Rational::add(excess.degrees, beyond).value_or(excess.degrees);
  }
  return excess;
}

std::string join(const std::vector<Obstacle>& obstacles) {
  std::vector<std::string> distinct;
  for (const Obstacle& each : obstacles) addEach(distinct, {wordsOf(each)});
  std::string text;
  for (const std::string& words : distinct) text += (text.empty() ? "" : "; ") + words;
  return text;
}

std::vector<std::string> heldBy(const std::vector<Obstacle>& obstacles) {
  std::vector<std::string> rules;
  for (const Obstacle& each : obstacles) addEach(rules, each.ruleIds);
  return rules;
}

}  // namespace stile::plan
