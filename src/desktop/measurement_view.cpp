#include "desktop/measurement_view.h"

#include <algorithm>

#include "desktop/question_view.h"
#include "documents/decision_words.h"
#include "documents/summary_record.h"
#include "facts/fact_display.h"
#include "facts/measured_change.h"

namespace stile::desktop {

using base::Rational;
using interview::QuestionRef;

namespace {

/// Numbers of a difference are for reading: no more places than results have.
constexpr int kChangePlaces = 2;

std::optional<Rational> inOwnUnit(const facts::Definition& definition, const answers::Answered& answered) {
  if (answered.answers.size() != 1 || !answered.answers.front().number) return std::nullopt;
  const auto& answer = answered.answers.front();
  if (answer.unit.empty()) return answer.number;
  const auto unit = base::parseUnit(answer.unit);
  return unit ? base::convert(*answer.number, *unit, definition.valueType.unit, definition.valueType.analyte) : std::nullopt;
}

std::string sectionWords(const questionnaire::Item& item) {
  for (const auto* at = item.parent; at != nullptr; at = at->parent)
    if (!at->text.empty()) return at->text;
  return {};
}

/// The first repetition in which nothing was said to it.
int nextRepetition(const interview::Session& session, int place) {
  int repetition = 0;
  while (session.said({place, repetition}) != nullptr) ++repetition;
  return repetition;
}

void addSaid(MeasureRow& row, const interview::Session& session, const application::LastTime& last) {
  const auto& question = session.question(row.question);
  const auto& definition = *question.fact;
  if (row.question.repetition > 0) {
    for (int i = 0; i < row.question.repetition; ++i)
      row.said += (i == 0 ? "" : "; ") + answerInWords(question, *session.said({row.question.place, i}));
  } else if (const auto* said = session.said(row.question)) {
    row.said = answerInWords(question, *said);
  }
  const auto* before = last.of(definition.id, row.question.repetition < 0 ? -1 : 0);
  if (before == nullptr || !last.day()) return;
  row.before = answerInWords(question, *before) + " on " + last.day()->toLongText();
  const auto* now = session.said({row.question.place, row.question.repetition < 0 ? -1 : 0});
  if (now != nullptr) row.change = changeInWords(definition, *before, *now);
}

void addLeftOut(MeasureRow& row, const screening::Screening& screening) {
  for (const auto& finding : screening.findings) {
    const auto& rules = row.how->leftOutBy;
    if (std::find(rules.begin(), rules.end(), finding.rule->id) != rules.end()) row.leftOut.push_back(finding.say.clinician);
  }
}

}  // namespace

std::string changeInWords(const facts::Definition& definition, const answers::Answered& before, const answers::Answered& now) {
  const auto was = inOwnUnit(definition, before), is = inOwnUnit(definition, now);
  const auto change = was && is ? facts::changeOf(definition, *was, *is) : std::nullopt;
  if (!change) return {};
  const Rational none(0);
  if (change->by == none) return "the same as last time";
  const auto size = change->by > none ? change->by : *Rational::subtract(none, change->by);
  const std::string unit = facts::unitWords(definition.valueType.unit.text);
  std::string words = size.toText(kChangePlaces) + (unit.empty() ? "" : " " + unit) + (change->by > none ? " more" : " less") + " than last time";
  if (!change->isReal) return words;
  if (!*change->isReal) return words + ", within the spread of the test";
  const char* const turns[] = {"", " for the better", " for the worse"};
  return words + ", a real change" + turns[static_cast<int>(change->turn)];
}

std::vector<MeasureRow> measureRowsOf(application::ClientInterview& interview, const screening::Screening& screening,
                                      const screening::Content& content) {
  std::vector<MeasureRow> rows;
  auto& session = interview.session();
  const auto norms = documents::testRows(screening);
  for (const auto& how : content.measuring) {
    const int place = session.ground().questions().placeOf(how.slot);
    const auto& definition = content.dictionary.at(how.slot);
    if (place < 0) continue;
    if (definition.group.empty() && session.position().facts().at(how.slot).reason == facts::UnknownReason::NotApplicable) continue;
    MeasureRow row;
    row.how = &how;
    row.question = {place, definition.group.empty() ? -1 : nextRepetition(session, place)};
    row.section = sectionWords(*session.question(row.question).item);
    row.title = definition.label;
    addSaid(row, session, interview.lastTime());
    addLeftOut(row, screening);
    for (const auto& norm : norms) {
      if (norm.term != definition.label || row.said.empty()) continue;
      row.plot = norm.plot;
      if (!norm.text.empty()) row.level = norm.text.front().substr(norm.text.front().rfind(": ") + 2);
    }
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace stile::desktop
