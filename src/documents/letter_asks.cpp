#include "documents/letter_asks.h"

#include <algorithm>
#include <set>

#include "documents/decision_words.h"

namespace stile::documents {
namespace {

using Words = std::set<std::string>;

/// Reasons in order, and what they lead to.
struct Asked {
  std::vector<std::string> why;
  Words ask;
};

/// As sentences; one that another begins with is said by that one.
std::string sentencesFrom(const std::vector<std::string>& list) {
  std::string text;
  for (const std::string& one : list) {
    const std::string start = one.ends_with('.') ? one.substr(0, one.size() - 1) : one;
    const bool isSaid = std::any_of(list.begin(), list.end(), [&](const std::string& other) {
      return other.size() > one.size() && other.starts_with(start);
    });
    if (!isSaid) text += (text.empty() ? "" : " ") + asSentence(capitalized(one));
  }
  return text;
}

/// Reasons that lead to the same questions share them.
void add(std::vector<Asked>& all, const std::vector<std::string>& why, const Words& ask) {
  auto same = std::find_if(all.begin(), all.end(), [&](const Asked& one) { return one.ask == ask; });
  if (same == all.end()) same = all.insert(all.end(), {{}, ask});
  for (const std::string& one : why)
    if (std::find(same->why.begin(), same->why.end(), one) == same->why.end()) same->why.push_back(one);
}

Words both(const Words& a, const Words& b) {
  Words shared;
  std::set_intersection(a.begin(), a.end(), b.begin(), b.end(), std::inserter(shared, shared.begin()));
  return shared;
}

}  // namespace

std::vector<std::string> asksOf(const screening::Screening& screening, const LetterTexts& texts,
                                const std::string& service, const std::vector<std::size_t>& toClear) {
  const auto referred = screening.reach.limits.referrals.find(service);
  const limits::Referral merged =
      referred == screening.reach.limits.referrals.end() ? limits::Referral{} : referred->second;
  std::vector<Asked> all;
  Words said;
  const auto take = [&](const rules::Finding& finding, bool isToClear) {
    const bool isCertain = finding.standing == rules::Standing::Certain;
    const auto own = finding.full.referrals.find(service);
    const bool refers = isCertain && own != finding.full.referrals.end();
    Words ask = refers ? both(own->second.ask, merged.ask) : Words{};
    Words why = refers ? both(own->second.why, merged.why) : Words{};
    // Questions about an operation go to whoever is asked for clearance, in the same letter.
    const bool asksBack =
        !toClear.empty() && isCertain && finding.rule->surgical && !finding.full.questions.empty();
    if (asksBack) ask.insert(finding.full.questions.begin(), finding.full.questions.end());
    said.insert(ask.begin(), ask.end());
    said.insert(why.begin(), why.end());
    if (isToClear)
      add(all, {finding.say.clinician}, ask);
    else if (!why.empty())
      add(all, {why.begin(), why.end()}, ask);
    else if (!ask.empty())
      add(all, {finding.rule->title}, ask);
  };
  for (const std::size_t index : toClear) take(screening.findings[index], true);
  for (std::size_t i = 0; i < screening.findings.size(); ++i)
    if (std::find(toClear.begin(), toClear.end(), i) == toClear.end()) take(screening.findings[i], false);
  Words why, ask;
  std::set_difference(merged.why.begin(), merged.why.end(), said.begin(), said.end(),
                      std::inserter(why, why.begin()));
  std::set_difference(merged.ask.begin(), merged.ask.end(), said.begin(), said.end(),
                      std::inserter(ask, ask.begin()));
  if (!why.empty() || !ask.empty()) add(all, {why.begin(), why.end()}, ask);

  // What waits for the one question of the letter stands before what is asked besides.
  std::stable_partition(all.begin(), all.end(), [](const Asked& one) { return one.ask.empty(); });
  std::vector<std::string> paragraphs;
  for (const Asked& one : all) {
    const std::string reasons = sentencesFrom(one.why),
                      questions = sentencesFrom({one.ask.begin(), one.ask.end()});
    paragraphs.push_back(
        questions.empty() ? reasons : texts.phrases.say("asks", {{"why", reasons}, {"ask", questions}}));
  }
  return paragraphs;
}

}  // namespace stile::documents
