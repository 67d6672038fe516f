#include "documents/decision_words.h"

#include <algorithm>
#include <cctype>

namespace stile::documents {

using limits::Action;
using limits::Bay;
using limits::Clearance;
using limits::Rung;
using limits::Within;
using rules::KeyKind;
using screening::RungState;
using screening::RungView;
using screening::Screening;

const char* wordsOf(Action action) {
  switch (action) {
    case Action::None:
      return "none";
    case Action::Routine:
      return "routine";
    case Action::WithinDays:
      return "within days";
    case Action::SameDay:
      return "same day";
    case Action::Emergency:
      return "emergency";
  }
  return "";
}

const char* wordsOf(Bay bay) {
  return bay == Bay::Aerobic ? "aerobic" : "strength";
}

const char* wordsOf(Rung rung) {
  switch (rung) {
    case Rung::None:
      return "rest";
    case Rung::Light:
      return "light";
    case Rung::Moderate:
      return "moderate";
    case Rung::Vigorous:
      return "vigorous";
  }
  return "";
}

const char* wordsOf(Clearance clearance) {
  switch (clearance) {
    case Clearance::None:
      return "not needed";
    case Clearance::BeforeVigorous:
      return "before vigorous work";
    case Clearance::BeforeModerate:
      return "before moderate work";
    case Clearance::BeforeAny:
      return "before any exercise";
  }
  return "";
}

const char* wordsOf(Within within) {
  switch (within) {
    case Within::Routine:
      return "routine";
    case Within::Days:
      return "within days";
    case Within::SameDay:
      return "same day";
    case Within::Now:
      return "now";
  }
  return "";
}

const char* noticeOf(KeyKind key) {
  switch (key) {
    case KeyKind::None:
      return "for now";
    case KeyKind::Clearance:
      return "after clearance";
    case KeyKind::Report:
      return "after a report";
    case KeyKind::Date:
      return "at a later date";
    case KeyKind::Measurement:
      return "after a reading";
    case KeyKind::Assessment:
      return "after assessment";
    case KeyKind::Answer:
      return "after an answer";
  }
  return "";
}

namespace {

bool isAllKnown(const Screening& screening) {
  return std::none_of(screening.rungs.begin(), screening.rungs.end(),
                      [](const RungView& view) { return view.state == RungState::NotYetKnown; });
}

std::string upTo(Rung rung) {
  return rung == Rung::None ? "rest only" : std::string("up to ") + wordsOf(rung);
}

/// One end in words: "up to moderate", or the bays apart: "aerobic up to moderate, strength up to light".
std::string endWords(const limits::PerBay<Rung>& usable) {
  if (usable.aerobic == usable.strength) return upTo(usable.aerobic);
  return "aerobic " + upTo(usable.aerobic) + ", strength " + upTo(usable.strength);
}

bool hasOpenFinding(const Screening& screening) {
  return std::any_of(screening.findings.begin(), screening.findings.end(),
                     [](const auto& finding) { return finding.standing == rules::Standing::Open; });
}

}  // namespace

bool isEmergency(const Screening& screening) {
  return screening.reach.limits.action == Action::Emergency;
}

std::optional<screening::RungReason> heldBy(const Screening& screening) {
  if (screening.rungs.empty()) return std::nullopt;
  const auto shuts = [](const RungView& view, std::size_t finding) {
    return view.state == RungState::Shut &&
           std::any_of(view.reasons.begin(), view.reasons.end(),
                       [&](const auto& other) { return other.finding == finding; });
  };
  const screening::RungReason* gravest = nullptr;
  for (const auto& reason : screening.rungs.front().reasons) {
    const bool isEverywhere = std::all_of(screening.rungs.begin(), screening.rungs.end(),
                                          [&](const RungView& view) { return shuts(view, reason.finding); });
    if (!isEverywhere) continue;
    if (gravest == nullptr ||
        screening.findings[reason.finding].full.action > screening.findings[gravest->finding].full.action)
      gravest = &reason;
  }
  if (gravest == nullptr) return std::nullopt;
  return *gravest;
}

const RungView* rungAt(const Screening& screening, Bay bay, Rung rung) {
  for (const RungView& view : screening.rungs)
    if (view.bay == bay && view.rung == rung) return &view;
  return nullptr;
}

std::string decisionSentence(const Screening& screening) {
  const auto usable = screening.floor.usable;
  if (isEmergency(screening)) return "Emergency. No exercise.";
  if (screening.reach.limits.action == Action::SameDay)
    return "No exercise today: someone must see the client.";
  if (usable.aerobic == Rung::None && usable.strength == Rung::None) {
    if (!isAllKnown(screening)) return "Nothing can start yet: answers are missing.";
    if (screening.planState == screening::PlanState::Held) return "Shut until clearance.";
    return "Shut for now.";
  }
  const std::string strength = wordsOf(usable.strength);
  const bool isHigherPossible = !isAllKnown(screening);
  if (usable.aerobic == usable.strength) {
    const std::string level = wordsOf(usable.aerobic);
    return "Open to " + level + (isHigherPossible ? " so far." : ".");
  }
  if (usable.aerobic == Rung::None) return "Strength: open to " + strength + ". Aerobic: not for now.";
  std::string sentence = std::string("Open to ") + wordsOf(usable.aerobic) + ". Strength: ";
  return sentence + (usable.strength == Rung::None ? "not for now." : strength + " for now.");
}

std::string intervalSentence(const Screening& screening) {
  if (isEmergency(screening)) return "The rest of the questions can wait.";
  if (isAllKnown(screening)) {
    if (!hasOpenFinding(screening)) return "Settled. No unanswered question can change it.";
    if (screening.isSettled) return "Settled: what is still unanswered can change no rung.";
    return "No rung is in doubt. Unanswered questions can still change the action, the clearance or other "
           "limits.";
  }
  return "Sure so far: " + endWords(screening.floor.usable) +
         ". Still possible: " + endWords(screening.reach.usable) + ".";
}

std::string actionSentence(const Screening& screening) {
  const Action now = screening.reach.limits.action;
  std::string sentence =
      std::string("Action today: ") + wordsOf(now) + (screening.couldBecome > now ? " so far." : ".");
  if (screening.couldBecome > now)
    sentence += std::string(" Could still become: ") + wordsOf(screening.couldBecome) + ".";
  return sentence;
}

std::string capitalized(std::string text) {
  if (!text.empty()) text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
  return text;
}

std::string uncapitalized(std::string text) {
  const auto isUpper = [](char c) { return c >= 'A' && c <= 'Z'; };
  if (text.size() > 1 && isUpper(text[0]) && !isUpper(text[1]))
    text[0] = static_cast<char>(text[0] - 'A' + 'a');
  return text;
}

std::string listed(const std::vector<std::string>& items) {
  std::string text;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) text += i + 1 == items.size() ? " and " : ", ";
    text += items[i];
  }
  return text;
}

std::string asSentence(const std::string& text) {
  if (text.empty() || text.back() == '.' || text.back() == '!' || text.back() == '?' || text.back() == ':')
    return text;
  return text + ".";
}

std::string counted(std::size_t count, const std::string& singular) {
  return std::to_string(count) + " " + singular + (count == 1 ? "" : "s");
}

}  // namespace stile::documents
