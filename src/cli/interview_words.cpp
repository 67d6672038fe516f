#include "cli/interview_words.h"

#include "facts/fact_display.h"

namespace stile::cli {

using interview::Session;
using limits::Action;
using limits::Bay;
using limits::Rung;

namespace {

std::string optionInWords(const interview::FormQuestion& question, const std::string& code) {
  for (const auto& option : question.item->options)
    if (option.code == code) return option.display.empty() ? code : option.display;
  return code;
}

const char* inWords(answers::Absence absence) {
  switch (absence) {
    case answers::Absence::NotAsked: return "not asked";
    case answers::Absence::NotAnswered: return "left for now";
    case answers::Absence::NotSure: return "not sure";
    case answers::Absence::Declined: return "would rather not say";
  }
  return "";
}

const char* inWords(Action action) {
  switch (action) {
    case Action::None: return "nothing to do today";
    case Action::Routine: return "a routine word to somebody";
    case Action::WithinDays: return "to be seen within days";
    case Action::SameDay: return "to be seen today";
    case Action::Emergency: return "emergency";
  }
  return "";
}

const char* inWords(Rung rung) {
  switch (rung) {
    case Rung::None: return "closed";
    case Rung::Light: return "light";
    case Rung::Moderate: return "up to moderate";
    case Rung::Vigorous: return "up to vigorous";
  }
  return "";
}

std::string bayInWords(const interview::Totals& totals, Bay bay) {
  const Rung sure = totals.floor.usable(bay);
  const Rung possible = totals.reach.usable(bay);
  if (sure == possible) return inWords(sure);
  return std::string(inWords(sure)) + " so far, " + inWords(possible) + " still possible";
}

}  // namespace

std::string inWords(const interview::FormQuestion& question, const answers::Answered& answered) {
  if (answered.answers.empty()) return answered.absence ? inWords(*answered.absence) : "";
  std::string words;
  for (const auto& answer : answered.answers) {
    words += words.empty() ? "" : "; ";
    if (answer.boolean)
      words += *answer.boolean ? "yes" : "no";
    else if (answer.code)
      words += optionInWords(question, *answer.code);
    else if (answer.number)
      words += answer.numberText + (answer.unit.empty() ? "" : " " + facts::unitWords(answer.unit));
    else if (answer.date)
      words += answer.date->toText();
    else
      words += answer.text.value_or("");
  }
  return words;
}

std::vector<std::string> urgentWords(Session& session, Action from) {
  std::vector<std::string> lines;
  const auto& rules = session.ground().rules().rules;
  for (std::size_t i = 0; i < rules.size(); ++i) {
    if (session.ground().shape(i).fullAction < from) continue;
    for (const auto& finding : rules::evaluateRule(rules[i], session.position().facts(), session.ground().today())) {
      if (finding.standing != rules::Standing::Certain) continue;
      lines.push_back(finding.say.clinician);
      for (const auto& [service, referral] : finding.reach.referrals) {
        for (const std::string& ask : referral.ask) lines.push_back("Ask for: " + ask);
        for (const std::string& meanwhile : referral.meanwhile) lines.push_back("Meanwhile: " + meanwhile);
      }
    }
  }
  for (const auto& [id, label] : {std::pair("currentAddress", "Send help to: "), std::pair("callbackNumber", "Number to call back: ")})
    for (const auto& answered : session.response().answered)
      if (answered.linkId == id && !answered.answers.empty()) lines.push_back(label + answered.answers.front().text.value_or(""));
  return lines;
}

std::string decisionInWords(const Session& session) {
  const interview::Totals& totals = session.stakes().totals();
  std::string words = "Action: " + std::string(inWords(totals.reach.action));
  if (totals.couldBecome > totals.reach.action && !totals.isSettled()) words += std::string(" (not ruled out: ") + inWords(totals.couldBecome) + ")";
  words += ". Aerobic work: " + bayInWords(totals, Bay::Aerobic);
  words += ". Strength work: " + bayInWords(totals, Bay::Strength) + ".";
  return words;
}

const char* inWords(interview::Closing closing) {
  switch (closing) {
    case interview::Closing::Open: return "Questions are open that could change the decision.";
    case interview::Closing::Settled: return "The decision is settled.";
    case interview::Closing::AsFarAsItGoes: return "This is as far as it goes: answers that are missing hold the decision.";
    case interview::Closing::Emergency: return "Emergency: help comes before anything else.";
  }
  return "";
}

}  // namespace stile::cli
