#include "documents/summary_plan.h"

#include <algorithm>

#include "documents/decision_words.h"
#include "documents/limit_words.h"
#include "documents/summary_findings.h"

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

std::vector<Row> lineRows(const plan::StarterPlan& plan, const rules::RuleSet& rules) {
  std::vector<Row> rows;
  for (const plan::Line& line : plan.lines) {
    std::string term = line.exercise->title + (line.side.empty() ? "" : ", " + line.side);
    Row row{std::move(term), {inFigures(line.dose)}, {}};
    if (!line.changedBecause.empty()) row.text.push_back("Changed: " + asSentence(line.changedBecause));
    if (!line.chosenBecause.empty()) row.note.push_back(line.chosenBecause);
    std::vector<std::string> titles;
    for (const std::string& id : line.becauseRules) {
      const rules::Rule* rule = rules.find(id);
      titles.push_back(rule == nullptr ? id : rule->title);
    }
    if (titles.size() > 3) {
      const std::size_t more = titles.size() - 3;
      titles.resize(3);
      titles.push_back(std::to_string(more) + " more");
    }
    if (!titles.empty()) row.note.push_back("Shaped by: " + listed(titles) + ".");
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<Row> purposeRows(const plan::StarterPlan& plan, const plan::Library& library,
                             const rules::RuleSet& rules) {
  std::vector<Row> rows;
  for (const plan::LeftOut& out : plan.leftOut) {
    if (!out.exerciseId.empty()) continue;
    Row row{capitalized(titleOfPurpose(library, out.purpose)), {asSentence(capitalized(out.because))}, {}};
    if (!out.turnTo.empty())
      row.text.push_back("No option is left: turn to " +
                         termWords(rules.vocabulary.services, out.turnTo, false) + ".");
    rows.push_back(std::move(row));
  }
  return rows;
}

std::string weekText(const plan::Week& week) {
  std::string text = "Week " + std::to_string(week.number) + ": " + week.words;
  if (!week.heldBy.empty()) text += " Held by: " + week.heldBy + ".";
  return text;
}

}  // namespace

std::vector<Block> planBlocks(const plan::StarterPlan& plan, const plan::Library& library,
                              const rules::RuleSet& rules) {
  std::vector<Block> blocks;
  if (!plan.level.empty()) blocks.push_back({Paragraph{asSentence(plan.levelBecause), "Starting level:"}});
  if (plan.isEmpty()) blocks.push_back({Paragraph{"No line of the library is open under these limits.", ""}});
  if (!plan.lines.empty()) blocks.push_back({Rows{lineRows(plan, rules)}});
  if (!plan.weeks.empty()) {
    std::vector<std::string> weeks{weekText(plan.weeks.front())};
    if (plan.weeks.size() > 1) weeks.push_back(weekText(plan.weeks.back()));
    blocks.push_back({List{std::move(weeks), false}});
  }
  if (std::vector<Row> purposes = purposeRows(plan, library, rules); !purposes.empty()) {
    blocks.push_back({Paragraph{"", "Not covered, and why"}});
    blocks.push_back({Rows{std::move(purposes)}});
  }
  return blocks;
}

std::vector<Row> leftOutRows(const plan::StarterPlan& plan, const plan::Library& library) {
  // Exercises left out for one same reason share a row.
  std::vector<std::pair<std::string, std::vector<std::string>>> reasons;
  for (const plan::LeftOut& out : plan.leftOut) {
    if (out.exerciseId.empty()) continue;
    std::string title = titleOfExercise(library, out.exerciseId);
    if (!out.instead.empty()) title += " (instead: " + titleOfExercise(library, out.instead) + ")";
    auto same = std::find_if(reasons.begin(), reasons.end(), [&](const auto& one) { return one.first == out.because; });
    if (same == reasons.end()) same = reasons.insert(reasons.end(), {out.because, {}});
    same->second.push_back(std::move(title));
  }
  std::vector<Row> rows;
  for (const auto& [because, titles] : reasons) {
    std::string text;
    for (const std::string& title : titles) text += (text.empty() ? "" : "; ") + title;
    rows.push_back({capitalized(because), {asSentence(text)}, {}});
  }
  return rows;
}

}  // namespace stile::documents
