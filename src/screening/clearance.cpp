#include "screening/clearance.h"

#include <map>

#include "rules/basis.h"

namespace stile::screening {
namespace {

using limits::Bay;
using limits::Rung;

constexpr base::Period kValidWithoutEnd{12, base::CalendarUnit::Month};

/// One repetition of the reply's findings, by linkId.
using Row = std::map<std::string, const answers::Answer*>;

std::optional<base::Date> dayIn(const Row& row, const char* linkId) {
  const auto at = row.find(linkId);
  if (at == row.end() || !at->second->date) return std::nullopt;
  // A reply dated in part is in force from its last possible day and until its first.
  return std::string_view(linkId) == "replyUntil" ? at->second->date->first() : at->second->date->last();
}

std::string wordIn(const Row& row, const char* linkId) {
  const auto at = row.find(linkId);
  if (at == row.end()) return {};
  if (at->second->code) return *at->second->code;
  return at->second->text.value_or("");
}

std::optional<base::Rational> numberIn(const Row& row, const char* linkId) {
  const auto at = row.find(linkId);
  return at == row.end() ? std::nullopt : at->second->number;
}

/// Judges one reply against one finding.
class Judgement {
 public:
  Judgement(const ClearanceReply& reply, const rules::Finding& finding, const facts::FactSet& facts, base::Date today)
      : reply_(reply), finding_(finding), facts_(facts), today_(today) {}

  Coverage decide() const {
    Coverage coverage;
    coverage.ruleId = reply_.ruleId;
    coverage.repetition = finding_.repetition;
    coverage.by = reply_.by;
    const base::Date from = *reply_.from;
    const base::Date until = reply_.until.value_or(base::plus(from, kValidWithoutEnd));
    coverage.until = until;
    coverage.because = whyNot(from, until);
    coverage.covers = coverage.because.empty();
    if (!coverage.covers) return coverage;
    coverage.because = "answered by " + reply_.by + ", in force until " + until.toLongText();
    for (const Bay bay : limits::kBays)
      if (!reply_.bay || *reply_.bay == bay) coverage.upTo[bay] = *reply_.intensity;
    return coverage;
  }

 private:
  std::string whyNot(base::Date from, base::Date until) const {
    if (reply_.answer != "noKnownReason" && reply_.answer != "withLimits")
      return "the reply does not say that there is no known reason against";
    if (!reply_.intensity) return "the reply does not say up to which intensity";
    if (today_ < from) return "the reply is not in force before " + from.toLongText();
    if (until < today_) return "the reply ended on " + until.toLongText();
    if (finding_.standing != rules::Standing::Certain) return "a fact that the finding rests on is not known";
    if (!rules::stillHolds(reply_.basis, finding_.basis)) return "the facts are not those the reply was given on";
    const auto& unchanged = finding_.rule->until.unchanged;
    if (unchanged && unchanged->evaluate(facts::FactSlots(facts_, finding_.rule->forEach, finding_.repetition)).truth !=
                         expression::Truth::True)
      return "it was not confirmed today that nothing has changed";
    return {};
  }

  const ClearanceReply& reply_;
  const rules::Finding& finding_;
  const facts::FactSet& facts_;
  base::Date today_;
};

}  // namespace

std::vector<ClearanceReply> repliesIn(const answers::Response& response, base::Issues& issues) {
  Row head;
  std::map<int, Row> rows;
  for (const auto& answered : response.answered) {
    if (answered.answers.empty()) continue;
    (answered.repetition < 0 ? head : rows[answered.repetition])[answered.linkId] = &answered.answers.front();
  }
  std::vector<ClearanceReply> replies;
  for (const auto& [repetition, row] : rows) {
    ClearanceReply reply;
    reply.ruleId = wordIn(row, "replyRule");
    reply.basis = wordIn(row, "replyBasis");
    reply.answer = wordIn(row, "replyAnswer");
    const std::string bay = wordIn(row, "replyBay");
    if (bay == "aerobic") reply.bay = Bay::Aerobic;
    if (bay == "strength") reply.bay = Bay::Strength;
    // A bay left out is not "both": without it nothing is covered.
    if (!bay.empty()) reply.intensity = limits::rungOf(wordIn(row, "replyIntensity"));
    reply.from = dayIn(row, "replyFrom");
    if (!reply.from) reply.from = dayIn(head, "replyDate");
    if (!reply.from) reply.from = response.authored;
    reply.until = dayIn(row, "replyUntil");
    reply.heartRatePerMinute = numberIn(row, "replyHeartRateLimit");
    reply.systolic = numberIn(row, "replySystolicLimit");
    reply.loadKilograms = numberIn(row, "replyLoadLimit");
    reply.note = wordIn(row, "replyNote");
    reply.by = wordIn(head, "replyBy");
    if (reply.ruleId.empty() || reply.by.empty() || !reply.from) {
      issues.error({response.form->name() + ".json", 0, 0, {}}, "clearance-reply",
                   "a reply must name the finding it answers, who answered and when",
                   "fill in replyRule, replyBy and replyDate");
      continue;
    }
    replies.push_back(reply);
  }
  return replies;
}

std::vector<Coverage> coverageOf(const std::vector<ClearanceReply>& replies, const std::vector<rules::Finding>& findings,
                                 const facts::FactSet& facts, base::Date today) {
  std::vector<Coverage> all;
  for (const ClearanceReply& reply : replies) {
    bool met = false;
    for (const rules::Finding& finding : findings) {
      if (finding.rule->id != reply.ruleId) continue;
      met = true;
      all.push_back(Judgement(reply, finding, facts, today).decide());
    }
    if (met) continue;
    Coverage none;
    none.ruleId = reply.ruleId;
    none.by = reply.by;
    none.because = "no such finding today";
    all.push_back(none);
  }
  return all;
}

}  // namespace stile::screening
