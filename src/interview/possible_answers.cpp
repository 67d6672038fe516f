#include "interview/possible_answers.h"

#include <algorithm>

#include "facts/derivation_order.h"
#include "interview/threshold.h"

namespace stile::interview {
namespace {

using base::Rational;
using expression::Value;
using facts::DerivedKind;
using facts::FactType;

/// Finds the programs and conditions that read a fact.
class AnswerFinder {
 public:
  AnswerFinder(const facts::Dictionary& dictionary, const rules::RuleSet& rules, const questionnaire::Form& form,
               base::Date today)
      : dictionary_(dictionary), form_(form), today_(today), readers_(static_cast<std::size_t>(dictionary.size())),
        derivedFrom_(static_cast<std::size_t>(dictionary.size())) {
    for (const rules::Rule& rule : rules.rules) {
      add(&rule.when);
      add(rule.assessable);
      add(rule.until.unchanged);
      addTemplate(rule.then);
      if (rule.meanwhile) addTemplate(*rule.meanwhile);
    }
    for (int slot = 0; slot < dictionary.size(); ++slot) {
      const facts::Definition& fact = dictionary.at(slot);
      add(fact.optionalWhen);
      add(fact.derived.where);
      if (fact.isDerived())
        for (const int read : facts::slotsReadBy(fact)) derivedFrom_[static_cast<std::size_t>(read)].push_back(slot);
    }
  }

  void fill(FormQuestion& question) const {
    const facts::Definition& fact = *question.fact;
    if (fact.isMultiple) return fillChoices(question);
    switch (fact.type) {
      case FactType::Boolean:
        question.answers = {known(Value::boolean(false)), known(Value::boolean(true))};
        question.isComplete = true;
        return;
      case FactType::Code:
        for (const auto& option : question.item->options)
          if (fact.option(option.code)) question.answers.push_back(known(Value::code(option.code)));
        question.isComplete = question.item->type == questionnaire::ItemType::Choice;
        return;
      case FactType::Integer:
      case FactType::Decimal:
      case FactType::Quantity: return fillNumbers(question);
      case FactType::Date: return fillDates(question);
      case FactType::Text: return;
    }
  }

 private:
  static PossibleAnswer known(Value value) { return {facts::UnknownReason::None, std::move(value), {}}; }

  void add(const expression::Program* program) {
    for (const int slot : program->slotsRead()) readers_[static_cast<std::size_t>(slot)].push_back(program);
  }
  void add(const std::optional<expression::Program>& program) {
    if (program) add(&*program);
  }
  void addAmount(const rules::Amount& amount) { add(amount.computed); }
  void addTemplate(const rules::LimitsTemplate& part) {
    for (const auto& cap : part.caps) addAmount(cap.degrees);
    for (const auto& dose : part.doses) addAmount(dose.amount);
    for (const auto& stop : part.stops) addAmount(stop.amount);
    for (const auto* amount : {&part.loadKilograms, &part.loadPercentOfMaximum, &part.heartRatePerMinute})
      if (*amount) addAmount(**amount);
  }

  void fillChoices(FormQuestion& question) const {
    std::vector<std::string> codes;
    for (const auto& option : question.item->options) {
      const auto* known = question.fact->option(option.code);
      if (known == nullptr) continue;
      if (known->isNone || option.isExclusive)
        question.answers.push_back({facts::UnknownReason::None, {}, {option.code}});
      else
        codes.push_back(option.code);
    }
    question.isComplete = codes.size() <= kMostOptionsCombined && question.item->type == questionnaire::ItemType::Choice;
    if (!question.isComplete) {
      for (const std::string& code : codes) question.answers.push_back({facts::UnknownReason::None, {}, {code}});
      question.answers.push_back({facts::UnknownReason::None, {}, codes});
      return;
    }
    for (unsigned chosen = 1; chosen < (1u << codes.size()); ++chosen) {
      PossibleAnswer answer;
      for (std::size_t i = 0; i < codes.size(); ++i)
        if ((chosen >> i & 1u) != 0) answer.codes.push_back(codes[i]);
      question.answers.push_back(std::move(answer));
    }
  }

  /// Adds the numbers that `slot`, or what is made of it, is compared with.
  void collect(int slot, Thresholds& thresholds) const {
    const facts::Definition& fact = dictionary_.at(slot);
    for (const auto* program : readers_[static_cast<std::size_t>(slot)]) addThresholds(*program, fact, thresholds);
    for (const int derived : derivedFrom_[static_cast<std::size_t>(slot)]) {
      const facts::Definition& made = dictionary_.at(derived);
      const bool isNumber = made.valueType.kind == expression::ValueKind::Number;
      const bool isAlias = made.derived.kind == DerivedKind::Expression && made.derived.program->text() == "%" + fact.id;
      const bool isOfReadings = made.derived.kind == DerivedKind::Mean || made.derived.kind == DerivedKind::Worst ||
                                made.derived.kind == DerivedKind::Last;
      if (isNumber && (isAlias || isOfReadings)) {
        collect(derived, thresholds);
        thresholds.isComplete = thresholds.isComplete && isAlias;
      } else if (made.derived.kind == DerivedKind::Expression || made.derived.kind == DerivedKind::Summary) {
        if (made.derived.program) addThresholds(*made.derived.program, fact, thresholds);
      } else {
        thresholds.isComplete = false;
      }
    }
  }

  void collectFromForm(const FormQuestion& question, Thresholds& thresholds) const {
    for (const questionnaire::Item* item : form_.inOrder())
      for (const auto& condition : item->enableWhen) {
        if (condition.question != question.item->linkId || !condition.number) continue;
        const auto unit = condition.unit.empty() ? std::optional(question.fact->valueType.unit) : base::parseUnit(condition.unit);
        const auto number = unit ? base::convert(*condition.number, *unit, question.fact->valueType.unit) : std::nullopt;
        if (number)
          thresholds.numbers.push_back(*number);
        else
          thresholds.isComplete = false;
      }
  }

  void fillNumbers(FormQuestion& question) const {
    const facts::Definition& fact = *question.fact;
    Thresholds thresholds;
    collect(fact.slot, thresholds);
    collectFromForm(question, thresholds);
    std::vector<Rational> points = thresholds.numbers;
    if (fact.possibleLow) points.push_back(*fact.possibleLow);
    if (fact.possibleHigh) points.push_back(*fact.possibleHigh);
    std::sort(points.begin(), points.end());
    points.erase(std::unique(points.begin(), points.end()), points.end());
    std::vector<Rational> numbers;
    for (std::size_t i = 0; i < points.size(); ++i) {
      const bool isWhole = fact.type == FactType::Integer;
      if (!isWhole || points[i].isWhole()) numbers.push_back(points[i]);
      if (i + 1 == points.size()) continue;
      // One between each two neighbours; of whole numbers the first above.
      const Rational between = isWhole ? Rational(points[i].floor() + 1)
                                       : Rational::divide(Rational::add(points[i], points[i + 1]).value_or(points[i]), 2).value_or(points[i]);
      if (points[i] < between && between < points[i + 1]) numbers.push_back(between);
    }
    for (const Rational& number : numbers) {
      if (fact.possibleLow && (number < *fact.possibleLow || number > *fact.possibleHigh)) continue;
      question.answers.push_back(known(Value::number(number)));
    }
    question.isComplete = thresholds.isComplete && fact.possibleLow && fact.possibleHigh;
  }

  void fillDates(FormQuestion& question) const {
    std::vector<base::Date> days{today_, base::plus(today_, {-100, base::CalendarUnit::Year})};
    for (const int derived : derivedFrom_[static_cast<std::size_t>(question.fact->slot)]) {
      const facts::Definition& made = dictionary_.at(derived);
      if (made.derived.kind != DerivedKind::Elapsed) continue;
      Thresholds thresholds;
      collect(derived, thresholds);
      for (const Rational& number : thresholds.numbers)
        for (const int more : {0, 1}) {
          const auto count = static_cast<int>(number.floor()) + more;
          const base::Date day = base::plus(today_, {-count, made.derived.unit});
          days.push_back(day);
          days.push_back(std::min(today_, base::Date::fromDayNumber(day.dayNumber() + 1)));
        }
    }
    std::sort(days.begin(), days.end());
    days.erase(std::unique(days.begin(), days.end()), days.end());
    for (const base::Date& day : days) question.answers.push_back(known(Value::ofDate(day)));
  }

  const facts::Dictionary& dictionary_;
  const questionnaire::Form& form_;
  base::Date today_;
  std::vector<std::vector<const expression::Program*>> readers_;  ///< by slot
  std::vector<std::vector<int>> derivedFrom_;
};

}  // namespace

void fillInPossibleAnswers(Questions& questions, const facts::Dictionary& dictionary, const rules::RuleSet& rules,
                           const questionnaire::Form& form, base::Date today) {
  const AnswerFinder finder(dictionary, rules, form, today);
  for (FormQuestion& question : questions.change()) finder.fill(question);
}

}  // namespace stile::interview
