#include "records/worklist.h"

#include <algorithm>
#include <charconv>

namespace stile::records {
namespace {

constexpr char kField = '\x1f', kTask = '\x1e', kPart = '\x1d';

bool isUrgent(const Task& task) { return task.what == "actionRecord"; }

class TaskList {
 public:
  TaskList(const ClientRecord& record, const FollowUpPolicy& policy) : record_(record), policy_(policy) {}

  std::vector<Task> make() {
    if (record_.state == "deceased" || !record_.mergedInto.empty()) return {};
    for (const ActionRecord& action : record_.actions)
      if (!action.isComplete) add("actionRecord", "us", action.opened, action.opened);
    for (const OverrideLine& line : record_.overrides)
      if (line.needsSecond && line.secondSigner.empty()) add("secondSignature", "a second clinician", line.date, line.date);
    // Who signs a screening signs in the place of those before it, which an interview files on its way.
    if (const ScreeningLine* last = record_.lastScreening(); last != nullptr && !last->isSignedOff) add("signOff", "us", last->date, last->date);
    if (record_.state != "discharged") addOngoing();
    std::stable_sort(tasks_.begin(), tasks_.end(), [](const Task& a, const Task& b) {
      return isUrgent(a) != isUrgent(b) ? isUrgent(a) : a.due < b.due;
    });
    return tasks_;
  }

 private:
  void add(const char* what, const std::string& waitingFor, base::Date since, base::Date due, int step = 0) {
    tasks_.push_back({what, step, waitingFor, since, due});
  }

  void addOngoing() {
    for (const ReferralLine& one : record_.referrals) {
      if (one.outcome.empty()) add("referralIn", "us", one.received, one.received);
      // It is compared once the client was asked.
      const bool isComparable = one.outcome == "accepted" && !one.medicines.empty() && !record_.screenings.empty();
      if (isComparable && !one.isReconciled) add("reconcile", "us", one.received, record_.screenings.back().date);
    }
    if (record_.draft) add("draft", "the client", *record_.draft, *record_.draft);
    const ScreeningLine* last = record_.lastScreening();
    const auto isAfterLast = [last](const std::optional<base::Date>& day) { return day && (last == nullptr || *day > last->date); };
    // On the day of the screening itself the later of the two cannot be told: it waits.
    const auto isNotBefore = [last](const std::optional<base::Date>& day) { return day && (last == nullptr || *day >= last->date); };
    if (isNotBefore(record_.lastEvent)) add("event", "us", *record_.lastEvent, *record_.lastEvent);
    if (isNotBefore(record_.lastSymptoms)) add("symptoms", "us", *record_.lastSymptoms, *record_.lastSymptoms);
    for (const DraftedLetter& one : record_.letters)
      if (!one.isSettled) add("eventLetter", "us", one.drafted, one.drafted);
    for (const ClearanceCase& one : record_.clearances) addClearance(one, isAfterLast);
    if (!record_.failedContacts.empty()) {
      const int step = static_cast<int>(std::min(record_.failedContacts.size(), policy_.unreached.size())) - 1;
      add("contact", "the client", record_.failedContacts.front(), record_.failedContacts.back(), step);
    }
    if (record_.started && !(record_.lastCheckIn && *record_.lastCheckIn > *record_.started))
      add("checkIn", "the client", *record_.started, base::plus(*record_.started, policy_.checkInAfter));
    if (last != nullptr) {
      const bool isSooner = !record_.clearances.empty() ||
                            std::any_of(last->rules.begin(), last->rules.end(), [this](const std::string& rule) { return matchesAny(rule, policy_.soonerRules); });
      add("screenAgain", "us", last->date, base::plus(last->date, isSooner ? policy_.screenAgainSooner : policy_.screenAgainAfter));
    }
  }

  template <class AfterLast>
  void addClearance(const ClearanceCase& one, AfterLast isAfterLast) {
    if (one.isClosed) return;
    if (one.answered) {
      if (isAfterLast(one.answered) || *one.answered == record_.screenings.back().date) {
        if (!wasScreenedWithReply(one)) add("screenReply", "us", *one.answered, *one.answered);
      }
      if (one.until) add("clearanceEnds", "us", *one.answered, base::plus(*one.until, {1, base::CalendarUnit::Day}));
      return;
    }
    if (!one.sent) return add("sendLetter", "us", one.requested, one.requested);
    // Silence is never clearance: after the last step it stands there until somebody decides.
    const std::size_t step = std::min(one.chases.size(), policy_.chase.size() - 1);
    add("chase", one.to, *one.sent, base::plus(*one.sent, {policy_.chase[step].afterDays, base::CalendarUnit::Day}), static_cast<int>(step));
  }

  /// A screening that follows the one the letter was about, on the day of the reply or later.
  bool wasScreenedWithReply(const ClearanceCase& one) const {
    const auto asked = std::find_if(record_.screenings.begin(), record_.screenings.end(), [&one](const ScreeningLine& line) { return line.id == one.screening; });
    return asked != record_.screenings.end() &&
           std::any_of(asked + 1, record_.screenings.end(), [&one](const ScreeningLine& line) { return line.date >= *one.answered; });
  }

  const ClientRecord& record_;
  const FollowUpPolicy& policy_;
  std::vector<Task> tasks_;
};

std::vector<std::string_view> split(std::string_view text, char by) {
  std::vector<std::string_view> parts;
  std::size_t from = 0;
  for (std::size_t at = 0; at <= text.size(); ++at) {
    if (at < text.size() && text[at] != by) continue;
    parts.push_back(text.substr(from, at - from));
    from = at + 1;
  }
  return parts;
}

/// Signs that separate fields never stand in one.
std::string plain(std::string text) {
  std::erase_if(text, [](char c) { return c == kField || c == kTask || c == kPart; });
  return text;
}

std::optional<Task> taskFrom(std::string_view text) {
  const auto parts = split(text, kPart);
  if (parts.size() != 5) return std::nullopt;
  int step = 0, since = 0, due = 0;
  const auto number = [](std::string_view digits, int& value) {
    return std::from_chars(digits.data(), digits.data() + digits.size(), value).ec == std::errc{};
  };
  if (!number(parts[1], step) || !number(parts[3], since) || !number(parts[4], due)) return std::nullopt;
  return Task{std::string(parts[0]), step, std::string(parts[2]), base::Date::fromDayNumber(since), base::Date::fromDayNumber(due)};
}

}  // namespace

std::string nextOf(const Task& task, const FollowUpPolicy& policy) {
  const auto step = static_cast<std::size_t>(task.step);
  if (task.what == "chase" && step < policy.chase.size()) return policy.chase[step].next;
  if (task.what == "contact" && step < policy.unreached.size()) return policy.unreached[step];
  const auto at = policy.next.find(task.what);
  return at == policy.next.end() ? task.what : at->second;
}

std::vector<Task> tasksOf(const ClientRecord& record, const FollowUpPolicy& policy) { return TaskList(record, policy).make(); }

Card cardOf(const ClientRecord& record, const FollowUpPolicy& policy) {
  const Client& client = record.client;
  return {client.given,     client.family, client.born ? client.born->toText() : "", client.record, client.telephone, record.state,
          record.mergedInto, tasksOf(record, policy)};
}

std::string toText(const Card& card) {
  std::string text;
  for (const std::string* field : {&card.given, &card.family, &card.born, &card.record, &card.telephone, &card.state, &card.mergedInto})
    text += plain(*field) + kField;
  for (const Task& task : card.tasks) {
    if (text.back() != kField) text += kTask;
    text += plain(task.what) + kPart + std::to_string(task.step) + kPart + plain(task.waitingFor) + kPart + std::to_string(task.since.dayNumber()) +
            kPart + std::to_string(task.due.dayNumber());
  }
  return text;
}

std::optional<Card> cardFrom(std::string_view text) {
  const auto fields = split(text, kField);
  if (fields.size() != 8) return std::nullopt;
  Card card;
  std::string* const into[] = {&card.given, &card.family, &card.born, &card.record, &card.telephone, &card.state, &card.mergedInto};
  for (std::size_t i = 0; i < 7; ++i) *into[i] = fields[i];
  if (fields[7].empty()) return card;
  for (const std::string_view one : split(fields[7], kTask)) {
    auto task = taskFrom(one);
    if (!task) return std::nullopt;
    card.tasks.push_back(std::move(*task));
  }
  return card;
}

std::optional<PlanStand> planStand(const ClientRecord& record, const FollowUpPolicy& policy, base::Date today) {
  const ScreeningLine* last = record.lastScreening();
  if (!record.started || last == nullptr || last->id != record.startedWith || last->plan.weeks.empty()) return std::nullopt;
  return standIn(last->plan, *record.started, record.checkIns, policy.progression, today);
}

std::string planWaitsBecause(const ClientRecord& record, base::Date today) {
  const ScreeningLine* last = record.lastScreening();
  const auto isOpen = [last](const std::optional<base::Date>& day) { return day && (last == nullptr || *day >= last->date); };
  if (record.state == "deceased") return "the client has died";
  if (record.state == "discharged") return "the client was discharged";
  for (const ActionRecord& action : record.actions)
    if (!action.isComplete) return "the action record of " + action.opened.toLongText() + " is not complete";
  if (isOpen(record.lastEvent)) return "of the event of " + record.lastEvent->toLongText() + ", and no screening followed";
  if (isOpen(record.lastSymptoms)) return "of the symptoms told on " + record.lastSymptoms->toLongText() + ", and no screening followed";
  for (const ClearanceCase& one : record.clearances)
    if (one.stateOn(today) == ClearanceState::Expired) return "the reply of " + one.to + " ended on " + one.until->toLongText();
  return {};
}

}  // namespace stile::records
