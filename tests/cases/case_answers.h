// Answers to an interview, taken from the facts of an invented person as they are asked for.
#pragma once

#include <algorithm>

#include "case_file.h"
#include "interview/session.h"

namespace stile::test {

class CaseAnswers {
 public:
  /// `facts`: what is true of the person, or known not to be known.
  explicit CaseAnswers(facts::FactSet facts) : facts_(std::move(facts)) {}

  /// What the person says to a question; nullopt when there is no answer, and then `why`.
  std::optional<std::vector<answers::Answer>> to(const interview::FormQuestion& question, int repetition,
                                                 answers::Absence& why) const {
    const facts::Definition& fact = *question.fact;
    why = answers::Absence::NotAnswered;
    if (question.group >= 0 && (facts_.isOpenEnded(question.group) || repetition >= facts_.repetitions(question.group))) return std::nullopt;
    const facts::Fact& known = facts_.at(fact.slot, repetition);
    if (known.givenReason == facts::UnknownReason::NotSure) why = answers::Absence::NotSure;
    if (known.givenReason == facts::UnknownReason::Declined) why = answers::Absence::Declined;
    if (fact.isMultiple) return codesOf(question, repetition);
    if (!known.isGiven()) return std::nullopt;
    answers::Answer answer;
    switch (known.asGiven.kind) {
      case expression::ValueKind::Boolean: answer.boolean = known.asGiven.truth == expression::Truth::True; break;
      case expression::ValueKind::Code: answer.code = *known.asGiven.text; break;
      case expression::ValueKind::Text: answer.text = *known.asGiven.text; break;
      case expression::ValueKind::Date: answer.date = *known.asGiven.date; break;
      case expression::ValueKind::Number: readNumber(question, known, answer); break;
    }
    return std::vector{answer};
  }

  int repetitions(int group) const { return facts_.isOpenEnded(group) ? 0 : facts_.repetitions(group); }

  /// Answers every prompt until nothing is left, calling `after` after each.
  template <class After>
  void drive(interview::Session& session, After after) const {
    while (const interview::Prompt* prompt = session.prompt()) {
      answerOne(session, interview::Prompt(*prompt));
      if (!after()) return;
    }
  }

 private:
  static void readNumber(const interview::FormQuestion& question, const facts::Fact& known, answers::Answer& answer) {
    answer.number = *known.asGiven.low;
    answer.numberText = answer.number->toText();
    if (question.item->units.empty()) return;
    const auto& units = question.item->units;
    answer.unit = question.fact->valueType.unit.text;
    if (std::find(units.begin(), units.end(), answer.unit) != units.end()) return;
    answer.unit = units.front();
    answer.number = base::convert(*answer.number, question.fact->valueType.unit, *base::parseUnit(answer.unit), question.fact->valueType.analyte);
    answer.numberText = answer.number->toText(12);
  }

  std::optional<std::vector<answers::Answer>> codesOf(const interview::FormQuestion& question, int repetition) const {
    std::vector<answers::Answer> chosen;
    for (const auto& option : question.item->options) {
      const auto* known = question.fact->option(option.code);
      if (!known || known->slot < 0) continue;
      const facts::Fact& fact = facts_.at(known->slot, repetition);
      if (!fact.isGiven() || fact.asGiven.truth != expression::Truth::True) continue;
      answers::Answer answer;
      answer.code = option.code;
      chosen.push_back(answer);
    }
    return chosen.empty() ? std::nullopt : std::optional(chosen);
  }

  void answerOne(interview::Session& session, const interview::Prompt& prompt) const {
    if (prompt.anotherOf >= 0) {
      const std::string& group = session.ground().dictionary().groups()[static_cast<std::size_t>(prompt.anotherOf)];
      int begun = 0;
      for (const auto& answered : session.response().answered)
        if (const auto* fact = session.ground().dictionary().find(answered.linkId))
          if (fact->group == group) begun = std::max(begun, answered.repetition + 1);
      return session.another(begun < repetitions(prompt.anotherOf));
    }
    answers::Absence why = answers::Absence::NotAnswered;
    if (prompt.isList() && answerList(session, prompt)) return;
    const interview::QuestionRef ref = prompt.questions.front();
    const auto said = to(session.question(ref), ref.repetition, why);
    base::Issues issues;
    const bool isTaken = said && session.answer(ref, *said, issues, true);
    std::string told;
    for (const auto& issue : issues.all()) told += toText(issue);
    INFO(told);
    CHECK(isTaken == said.has_value());
    if (isTaken) return;
    session.change(ref);  // of a list, only the one without an answer is passed over
    session.skip(why);
  }

  /// A list can be answered at once when everything on it is known or "not sure".
  bool answerList(interview::Session& session, const interview::Prompt& prompt) const {
    std::set<interview::QuestionRef> yes, notSure;
    for (const auto& ref : prompt.questions) {
      answers::Absence why = answers::Absence::NotAnswered;
      const auto said = to(session.question(ref), ref.repetition, why);
      if (!said && why != answers::Absence::NotSure) return false;
      if (!said) notSure.insert(ref);
      if (said && *said->front().boolean) yes.insert(ref);
    }
    session.answerList(yes, notSure);
    return true;
  }

  facts::FactSet facts_;
};

}  // namespace stile::test
