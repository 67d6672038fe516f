#include "desktop/plan_view.h"

#include <algorithm>
#include <set>

#include "documents/decision_words.h"
#include "documents/limit_words.h"
#include "facts/fact_set.h"
#include "plan/line_dose.h"

namespace stile::desktop {
namespace {

using base::Rational;
using drawing::Align;
using drawing::Colour;
using drawing::Shape;
using drawing::TextRun;

constexpr double kNamesWidth = 112, kBarHeight = 84, kTop = 22, kRow = 22, kWeek = 40, kBar = 22, kText = 14;

Shape text(double x, double y, std::string words, bool isBold = false, Align align = Align::Middle, Colour colour = Colour::Ink) {
  return {TextRun{{x, y}, std::move(words), kText, isBold, align, colour}};
}

double number(const Rational& value) { return value.toDouble(); }
std::string whole(const Rational& value) { return std::to_string(value.floor()); }

/// Facts that stand for pieces some exercise, place or easing needs.
std::set<std::string> piecesOf(const plan::Library& library) {
  std::set<std::string> pieces;
  for (const auto& exercise : library.exercises) pieces.merge(piecesOf(exercise));
  return pieces;
}

std::string optionWords(const facts::Dictionary& dictionary, const facts::Definition& fact) {
  const auto* option = fact.isOption() ? dictionary.at(fact.derived.of).option(fact.derived.codes.front()) : nullptr;
  return documents::uncapitalized(option == nullptr ? fact.label : option->display);
}

/// The titles of the findings whose rules the ids "a, b" name; empty when one of them names none.
std::vector<std::string> titlesOf(const std::string& ids, const std::vector<rules::Finding>& findings) {
  std::vector<std::string> titles;
  for (std::size_t from = 0; from < ids.size();) {
    const std::size_t to = std::min(ids.find(", ", from), ids.size());
    const std::string id = ids.substr(from, to - from);
    const auto at = std::find_if(findings.begin(), findings.end(), [&](const auto& finding) { return finding.rule->id == id; });
    if (at == findings.end()) return {};
    titles.push_back(documents::titleOf(*at));
    from = to + 2;
  }
  return titles;
}

}  // namespace

PlainReason plainReasonOf(const std::string& because, const std::vector<rules::Finding>& findings) {
  PlainReason reason;
  std::vector<std::string> said;
  for (std::size_t at = 0; at < because.size();) {
    const std::size_t open = because.find(" (", at), close = open == std::string::npos ? open : because.find(')', open);
    const auto titles = close == std::string::npos ? std::vector<std::string>{} : titlesOf(because.substr(open + 2, close - open - 2), findings);
    const std::size_t end = close == std::string::npos ? because.size() : close + 1;
    reason.sentence += because.substr(at, titles.empty() ? end - at : open - at);
    for (const std::string& title : titles)
      if (std::find(said.begin(), said.end(), title) == said.end()) said.push_back(title);
    at = end;
  }
  for (const std::string& title : said) reason.findings += (reason.findings.empty() ? "" : " · ") + title;
  return reason;
}

std::string timeWords(const plan::StarterPlan& plan, const screening::Screening& screening, const screening::Content& content) {
  int minutes = 0;
  for (const auto& line : plan.lines) minutes += plan::minutesOf(line, *content.library.doses);
  std::string words = "Everything in one session takes about " + std::to_string(minutes) + " minutes.";
  const auto& caps = screening.floor.limits.doseCaps;
  if (const auto cap = caps.find("sessionMinutes"); cap != caps.end()) words += " A session has at most " + whole(cap->second) + ".";
  return words;
}

std::string atHandWords(const screening::Screening& screening, const screening::Content& content) {
  const auto& dictionary = content.dictionary;
  std::vector<std::string> there;
  bool isAsked = true;
  for (const std::string& id : piecesOf(content.library)) {
    const auto* fact = dictionary.find(id);
    if (fact == nullptr || (fact->isDerived() && !fact->isOption())) continue;
    const auto& value = screening.facts.at(fact->slot).value;
    if (value.isUnknown())
      isAsked = false;
    else if (value.truth == expression::Truth::True)
      there.push_back(optionWords(dictionary, *fact));
  }
  if (there.empty()) return isAsked ? "Nothing that an exercise could use is at hand." : "Nobody has said yet which equipment is at hand: it counts as not there.";
  return documents::capitalized(documents::listed(there)) + "." + (isAsked ? "" : " What was not said counts as not there.");
}

drawing::Drawing weekCurveOf(const plan::StarterPlan& plan) {
  drawing::Drawing curve;
  curve.title = "Week by week";
  if (plan.weeks.empty()) return curve;
  double most = 1;
  for (const auto& week : plan.weeks) most = std::max(most, number(week.aerobicMinutesPerWeek));
  const double ground = kTop + kBarHeight;
  curve.width = kNamesWidth + kWeek * static_cast<double>(plan.weeks.size());
  curve.height = ground + 3 * kRow + 8;
  const double names = kNamesWidth - 14;
  curve.shapes.push_back(text(names, ground - 4, "Minutes a week", false, Align::End, Colour::Ink2));
  curve.shapes.push_back(text(names, ground + kRow - 4, "Week", true, Align::End));
  curve.shapes.push_back(text(names, ground + 2 * kRow - 4, "Aerobic days", false, Align::End, Colour::Ink2));
  curve.shapes.push_back(text(names, ground + 3 * kRow - 4, "Strength days", false, Align::End, Colour::Ink2));
  curve.shapes.push_back({drawing::Line{{kNamesWidth - 6, ground}, {curve.width, ground}, {.stroke = Colour::Post, .strokeWidth = 2}}});
  double x = kNamesWidth + kWeek / 2;
  for (const auto& week : plan.weeks) {
    const double height = kBarHeight * number(week.aerobicMinutesPerWeek) / most;
    if (height > 0) curve.shapes.push_back({drawing::Rectangle{x - kBar / 2, ground - height, kBar, height, {.fill = Colour::Open}}});
    curve.shapes.push_back(text(x, ground - height - 5, whole(week.aerobicMinutesPerWeek)));
    curve.shapes.push_back(text(x, ground + kRow - 4, std::to_string(week.number), true));
    curve.shapes.push_back(text(x, ground + 2 * kRow - 4, whole(week.aerobicDays)));
    curve.shapes.push_back(text(x, ground + 3 * kRow - 4, whole(week.strengthDays)));
    curve.description += (curve.description.empty() ? "" : " ") + std::string("Week ") + std::to_string(week.number) + ": " + whole(week.aerobicMinutesPerWeek) +
                         " minutes on " + whole(week.aerobicDays) + " days, strength on " + whole(week.strengthDays) + ".";
    x += kWeek;
  }
  return curve;
}

}  // namespace stile::desktop
