#include "records/possible_entries.h"

namespace stile::records {
namespace {

void addOpen(const ClientRecord& record, std::vector<PossibleEntry>& all) {
  for (const auto& action : record.actions)
    if (!action.isComplete) all.push_back({"actionStep", "What was done on " + action.opened.toLongText(), {{"action", action.id}}});
  for (const auto& letter : record.letters)
    if (!letter.isSettled) all.push_back({"eventLetterSettled", "The letter about the event was sent, or is not wanted", {{"letter", letter.id}}});
  for (const auto& referral : record.referrals) {
    if (referral.outcome.empty()) all.push_back({"referralOutcome", "Accept, decline or redirect the referral from " + referral.from, {{"referral", referral.id}}});
    if (!referral.isReconciled && !referral.medicines.empty())
      all.push_back({"referralReconciled", "Settle the medicines of the referral from " + referral.from, {{"referral", referral.id}}});
  }
}

void addClearances(const ClientRecord& record, base::Date today, std::vector<PossibleEntry>& all) {
  for (const auto& one : record.clearances) {
    const auto state = one.stateOn(today);
    if (state == ClearanceState::Requested) all.push_back({"clearanceSent", "The letter to " + one.to + " went out", {{"request", one.id}}});
    if (state == ClearanceState::Sent) all.push_back({"clearanceChase", one.to + " was reminded", {{"request", one.id}}});
    if (state == ClearanceState::Requested || state == ClearanceState::Sent) {
      all.push_back({"clearanceReply", "The reply of " + one.to, {{"request", one.id}}});
      all.push_back({"clearanceClosed", one.to + " is no longer asked", {{"request", one.id}}});
    }
  }
}

}  // namespace

std::vector<PossibleEntry> possibleEntries(const ClientRecord& record, base::Date today) {
  std::vector<PossibleEntry> all;
  if (!record.mergedInto.empty()) return all;
  addOpen(record, all);
  addClearances(record, today, all);
  if (const auto* last = record.lastScreening()) {
    if (record.startedWith != last->id) all.push_back({"started", "The client began the plan", {{"screening", last->id}}});
    all.push_back({"amendment", "Something to add to the last screening", {{"screening", last->id}}});
  }
  all.push_back({"checkIn", "Check-in: how it goes", {}});
  all.push_back({"event", "Something happened", {}});
  all.push_back({"contact", "An attempt to reach the client", {}});
  all.push_back({"consent", "A consent, given or withdrawn", {}});
  all.push_back({"referralIn", "A referral was received", {}});
  all.push_back({"state", "Active, unreached, discharged or deceased", {}});
  return all;
}

}  // namespace stile::records
