#include <algorithm>
#include <cctype>

#include "documents/handout.h"
#include "documents/limit_words.h"
#include "documents/text_writer.h"

namespace stile::documents {
namespace {

std::string lowered(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

}  // namespace

base::Issues checkHandout(const screening::Screening& screening, const Document& handout,
                          const rules::RuleSet& rules) {
  base::Issues issues;
  const std::string words = lowered(wordsOf(handout));
  const auto require = [&](const std::string& id, const std::string& what, const std::string& said) {
    if (words.find(lowered(said)) == std::string::npos)
      issues.error({}, id, "the handout does not carry the " + what, "print: " + said);
  };
  for (const auto& [measure, gate] : screening.floor.limits.gates) {
    require(measure, "measurement wanted before the first session",
            termWords(rules.vocabulary.measures, measure, true));
    for (const std::string& condition : gate.client)
      require(measure, "condition of a first measurement", condition);
  }
  for (const std::string& id : screening.floor.limits.checks) {
    const auto check = rules.checks.find(id);
    require(id, "check", check == rules.checks.end() ? id : check->second.say.client);
  }
  for (const limits::BanKey& ban : screening.floor.limits.bans)
    require(ban.ban, "ban", termWords(rules.vocabulary.bans, ban.ban, true));
  return issues;
}

}  // namespace stile::documents
