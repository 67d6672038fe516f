#include "documents/ladder_words.h"

#include <algorithm>
#include <set>

#include "documents/decision_drawing.h"
#include "documents/decision_words.h"
#include "documents/limit_words.h"

namespace stile::documents {
namespace {

using limits::Rung;
using screening::RungReason;
using screening::RungState;
using screening::RungView;
using screening::Screening;

/// Reasons that another key opens than the first one does.
std::size_t otherKeys(const std::vector<RungReason>& reasons) {
  std::set<std::pair<rules::KeyKind, std::string_view>> keys;
  for (const RungReason& reason : reasons) keys.insert({reason.keyKind, reason.key});
  return keys.empty() ? 0 : keys.size() - 1;
}

std::string stateWords(const RungView& view) {
  switch (view.state) {
    case RungState::Open:
      return "open";
    case RungState::Shut:
      return "shut";
    case RungState::NotYetKnown:
      return "not yet known";
  }
  return "";
}

std::string padded(std::string text, std::size_t width) {
  if (text.size() < width) text.append(width - text.size(), ' ');
  return text;
}

}  // namespace

std::vector<std::string> noticeLines(const Screening&, const RungView& view) {
  if (view.reasons.empty()) return {};
  std::vector<std::string> lines{noticeOf(view.reasons.front().keyKind)};
  if (const std::size_t more = otherKeys(view.reasons); more > 0)
    lines.push_back("and " + std::to_string(more) + " more");
  return lines;
}

std::vector<std::string> heldLines(const Screening& screening) {
  const auto reason = heldBy(screening);
  if (!reason) return {};
  std::vector<std::string> lines{reason->key.empty() ? "for now" : "until: " + std::string(reason->key)};
  std::vector<RungReason> all;
  for (const RungView& view : screening.rungs)
    all.insert(all.end(), view.reasons.begin(), view.reasons.end());
  if (const std::size_t more = otherKeys(all); more > 0)
    lines.push_back("and " + std::to_string(more) + " more");
  return lines;
}

EmergencyWords emergencyWords(const Screening& screening, const std::string& emergencyNumber) {
  EmergencyWords words;
  std::set<std::string> meanwhile;
  std::size_t found = 0;
  for (const rules::Finding& finding : screening.findings) {
    if (finding.reach.action != limits::Action::Emergency) continue;
    if (++found <= 2) words.what.push_back(finding.rule->title);
    const auto referral = finding.reach.referrals.find("emergency");
    if (referral != finding.reach.referrals.end())
      meanwhile.insert(referral->second.meanwhile.begin(), referral->second.meanwhile.end());
  }
  if (found > 2) words.what.push_back("and " + std::to_string(found - 2) + " more");
  words.call = emergencyNumber.empty() ? "Call the emergency number" : "Call " + emergencyNumber;
  words.meanwhile.assign(meanwhile.begin(), meanwhile.end());
  return words;
}

std::string keyWords(const Screening& screening, const RungReason& reason) {
  const rules::Finding& finding = screening.findings[reason.finding];
  std::string words = titleOf(finding);
  if (!reason.key.empty()) words += "; until: " + std::string(reason.key);
  return asSentence(words);
}

std::string ladderDescription(const Screening& screening, const std::string& emergencyNumber) {
  if (isEmergency(screening)) {
    const EmergencyWords words = emergencyWords(screening, emergencyNumber);
    std::string text = "The ladder is taken down. " + asSentence(words.call);
    for (const std::string& what : words.what) text += " " + asSentence(what);
    for (const std::string& doing : words.meanwhile) text += " " + asSentence(doing);
    return text;
  }
  std::string text;
  for (const RungView& view : screening.rungs) {
    text += capitalized(wordsOf(view.rung)) + ", " + wordsOf(view.bay) + ": " + stateWords(view);
    if (view.state == RungState::Shut && !view.reasons.empty()) {
      const RungReason& first = view.reasons.front();
      text += first.key.empty() ? std::string(" for now") : " until: " + std::string(first.key);
      text += ". Reason: " + screening.findings[first.finding].rule->title;
    }
    text += ". ";
  }
  return text + "Rest: open, usual daily activity.";
}

std::vector<std::string> ladderInText(const Screening& screening, const std::string& emergencyNumber) {
  if (isEmergency(screening)) {
    const EmergencyWords words = emergencyWords(screening, emergencyNumber);
    std::vector<std::string> lines{"*** " + words.call + " ***"};
    for (const std::string& what : words.what) lines.push_back("    " + what);
    for (const std::string& doing : words.meanwhile) lines.push_back("    " + doing);
    return lines;
  }
  constexpr std::size_t kName = 11, kBay = 24;
  std::vector<std::string> lines{padded("", kName) + "  " + padded("Aerobic", kBay) + "  Strength"};
  for (const Rung rung : {Rung::Vigorous, Rung::Moderate, Rung::Light}) {
    std::string line = padded(capitalized(wordsOf(rung)), kName);
    for (const limits::Bay bay : limits::kBays) {
      const RungView* view = rungAt(screening, bay, rung);
      std::string words = view == nullptr ? "" : stateWords(*view);
      if (view != nullptr && view->state == RungState::Shut && !view->reasons.empty())
        words += std::string(" ") + noticeOf(view->reasons.front().keyKind);
      if (view != nullptr && view->state == RungState::Open) words = "=== open ===";
      if (view != nullptr && view->state == RungState::NotYetKnown) words = "??? not yet known";
      line += "| " + (bay == limits::Bay::Aerobic ? padded(words, kBay) : words);
    }
    lines.push_back(line);
  }
  lines.push_back(padded("Rest", kName) + "| === open: usual daily activity ===");
  return lines;
}

}  // namespace stile::documents
