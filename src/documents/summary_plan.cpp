#include "documents/summary_plan.h"

#include <algorithm>

#include "documents/decision_words.h"
#include "documents/limit_words.h"
#include "documents/week_grid.h"

namespace stile::documents {
namespace {

std::string titleOfExercise(const plan::Library& library, const std::string& id) {
  const plan::Exercise* exercise = library.find(id);
  return exercise == nullptr ? id : exercise->title;
}

std::string titleOfPurpose(const plan::Library& library, const std::string& id) {
  for (const plan::Purpose& purpose : library.purposes)
    if (purpose.id == id) return purpose.title;
  return id;
}

/// The dose in figures: "2 x 8, effort 3 to 4 of 10, 2 days a week".
std::string inFigures(const plan::Dose& dose) {
  std::vector<std::string> parts;
  const auto add = [&](const std::optional<base::Rational>& value, const char* unit) {
    if (value) parts.push_back(value->toText(1) + unit);
  };
  add(dose.minutes, " min");
  if (dose.sets && dose.repetitions)
    parts.push_back(dose.sets->toText(1) + " × " + dose.repetitions->toText(1));
  else if (dose.repetitions)
    parts.push_back(dose.repetitions->toText(1) + " times");
  add(dose.holdSeconds, " s hold");
  add(dose.restSeconds, " s rest");
  if (dose.effortLow && dose.effortHigh)
    parts.push_back("effort " + dose.effortLow->toText(1) +
                    (*dose.effortLow == *dose.effortHigh ? "" : " to " + dose.effortHigh->toText(1)) +
                    " of 10");
  add(dose.repetitionsInReserve, " in reserve");
  if (dose.heartRateLow && dose.heartRateHigh)
    parts.push_back(dose.heartRateLow->toText(0) + " to " + dose.heartRateHigh->toText(0) + " per minute");
  if (dose.daysPerWeek)
    parts.push_back(dose.daysPerWeek->toText(1) +
                    (*dose.daysPerWeek == base::Rational(1) ? " day a week" : " days a week"));
  else
    parts.push_back("every session");
  std::string text;
  for (const std::string& part : parts) text += (text.empty() ? "" : " · ") + part;
  return text;
}

std::string overrideWords(const plan::LineOverride& override) {
  std::string text = "Override: " + asSentence(override.beyond) + " Reason: " + asSentence(override.reason);
  if (override.needsSecond) text += " A second licensed signature is needed.";
  return text;
}

std::vector<Row> lineRows(const plan::StarterPlan& plan, const rules::RuleSet& rules, const FindingNumbers& numbers) {
  std::vector<Row> rows;
  for (const plan::Line& line : plan.lines) {
    std::string term = line.exercise->title + (line.side.empty() ? "" : ", " + line.side);
    Row row{std::move(term), {asSentence(inFigures(line.dose))}, {}};
    if (!line.pinnedBy.empty()) row.text.push_back(line.pinnedBy);
    if (!line.changedBecause.empty()) row.text.push_back("Changed: " + asSentence(numbers.inWords(line.changedBecause, rules)));
    if (line.override) row.text.push_back(overrideWords(*line.override));
    if (const std::string cited = numbers.citeRules(line.becauseRules); !cited.empty())
      row.text.back() += " " + cited;
    rows.push_back(std::move(row));
  }
  return rows;
}

/// Purposes without a line: those with a service to turn to apart from those left for later.
std::string uncovered(const plan::StarterPlan& plan, const plan::Library& library, const rules::RuleSet& rules) {
  std::string text;
  for (const plan::LeftOut& out : plan.leftOut) {
    if (!out.exerciseId.empty()) continue;
    text += (text.empty() ? "" : "; ") + titleOfPurpose(library, out.purpose);
    if (!out.turnTo.empty()) text += " (turn to " + termWords(rules.vocabulary.services, out.turnTo, false) + ")";
  }
  return text;
}

std::string weekText(const plan::StarterPlan& plan, std::size_t index) {
  const plan::Week& week = plan.weeks[index];
  std::string text = "Week " + std::to_string(week.number) + ": " + weekWords(plan)[index];
  if (!week.heldBy.empty()) text += " Held by: " + week.heldBy + ".";
  return text;
}

}  // namespace

std::vector<Block> planBlocks(const plan::StarterPlan& plan, const plan::Library& library,
                              const rules::RuleSet& rules, const FindingNumbers& numbers) {
  std::vector<Block> blocks;
  std::string start = plan.level.empty() ? "" : asSentence(numbers.inWords(plan.levelBecause, rules));
  if (!plan.weeks.empty()) start += (start.empty() ? "" : " ") + weekText(plan, 0);
  if (plan.weeks.size() > 1) start += " " + weekText(plan, plan.weeks.size() - 1);
  if (!start.empty()) blocks.push_back({Paragraph{start, "Starting level:", Tone::Small}});
  if (plan.isEmpty()) blocks.push_back({Paragraph{"No line of the library is open under these limits.", "", Tone::Small}});
  if (!plan.lines.empty()) blocks.push_back({Rows{lineRows(plan, rules, numbers), true}});
  if (const std::string words = uncovered(plan, library, rules); !words.empty())
    blocks.push_back({Paragraph{asSentence(capitalized(words)), "Not covered:", Tone::Small}});
  return blocks;
}

std::vector<Row> briefPlanRows(const plan::StarterPlan& plan, const plan::Library& library, const FindingNumbers& numbers,
                               std::size_t adaptedByName) {
  std::vector<Row> rows;
  if (plan.isEmpty()) rows.push_back({"", {"No line of the library is open under these limits."}, {}});
  for (const plan::Section section : plan::kSections) {
    // Lines of one dose stand behind it together.
    std::vector<std::pair<std::string, std::string>> doses;
    for (const plan::Line& line : plan.lines) {
      if (line.exercise->section != section) continue;
      const std::string figures = inFigures(line.dose);
      auto same = std::find_if(doses.begin(), doses.end(), [&](const auto& one) { return one.first == figures; });
      if (same == doses.end()) same = doses.insert(doses.end(), {figures, {}});
      same->second += (same->second.empty() ? "" : "; ") + line.exercise->title + (line.side.empty() ? "" : ", " + line.side);
    }
    if (doses.empty()) continue;
    Row row{capitalized(plan::idOf(section)), {}, {}};
    for (const auto& [figures, titles] : doses) row.text.push_back(asSentence(titles + ": " + figures));
    rows.push_back(std::move(row));
  }
  std::string adapted;
  std::size_t changed = 0;
  for (const plan::Line& line : plan.lines)
    if (!line.changedBecause.empty() && changed++ < adaptedByName) {
      // The limit that asks for it is named by its finding's number; the annex says it in full.
      std::string change = line.changedBecause;
      if (const auto end = change.find("). "); end != std::string::npos) change.erase(0, end + 3);
      while (change.ends_with('.')) change.pop_back();
      const std::string cited = numbers.citeRules(line.becauseRules);
      adapted += (adapted.empty() ? "" : "; ") + line.exercise->title + ": " + uncapitalized(change) + (cited.empty() ? "" : " " + cited);
    }
  if (changed > adaptedByName) adapted += "; and " + std::to_string(changed - adaptedByName) + " more";
  if (!adapted.empty()) rows.push_back({"Adapted", {asSentence(adapted)}, {}});
  std::string open;
  for (const plan::LeftOut& out : plan.leftOut)
    if (out.exerciseId.empty()) open += (open.empty() ? "" : "; ") + titleOfPurpose(library, out.purpose);
  if (!open.empty()) rows.push_back({"Not covered", {asSentence(capitalized(open))}, {}});
  if (plan.weeks.size() > 1) rows.push_back({"Grows to", {weekText(plan, plan.weeks.size() - 1)}, {}});
  return rows;
}

std::vector<Row> leftOutRows(const plan::StarterPlan& plan, const plan::Library& library, const rules::RuleSet& rules, const FindingNumbers& numbers) {
  // What is left out for one same reason shares a row. After the first reason come those of its easier
  // forms, which the row of that form gives.
  const auto firstReason = [](const std::string& because) { return because.substr(0, because.find(';')); };
  std::vector<std::pair<std::string, std::vector<std::string>>> reasons;
  for (const plan::LeftOut& out : plan.leftOut) {
    std::string title = out.exerciseId.empty() ? titleOfPurpose(library, out.purpose)
                                               : titleOfExercise(library, out.exerciseId);
    if (!out.instead.empty()) title += " (instead: " + titleOfExercise(library, out.instead) + ")";
    const std::string because = out.exerciseId.empty() ? out.because : firstReason(out.because);
    auto same = std::find_if(reasons.begin(), reasons.end(), [&](const auto& one) { return one.first == because; });
    if (same == reasons.end()) same = reasons.insert(reasons.end(), {because, {}});
    same->second.push_back(std::move(title));
  }
  std::vector<Row> rows;
  for (const auto& [because, titles] : reasons) {
    std::string text;
    for (const std::string& title : titles) text += (text.empty() ? "" : "; ") + title;
    rows.push_back({"", {asSentence(capitalized(numbers.inWords(because, rules)) + ": " + text)}, {}});
  }
  return rows;
}

}  // namespace stile::documents
