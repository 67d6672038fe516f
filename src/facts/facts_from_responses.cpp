// Facts from responses to forms.
#include <algorithm>
#include <map>
#include <string>
#include <utility>

#include "facts/fact_name.h"
#include "base/near_names.h"
#include "facts/fact_set.h"
#include "facts/given.h"

namespace stile::facts {
namespace {

using answers::Absence;
using answers::Answer;
using answers::Answered;
using answers::Response;
using base::Severity;
using expression::Value;
using expression::ValueKind;

UnknownReason reasonOf(Absence absence) {
  switch (absence) {
    case Absence::NotAsked:
      return UnknownReason::NotAsked;
    case Absence::NotAnswered:
      return UnknownReason::NotAnswered;
    case Absence::NotSure:
      return UnknownReason::NotSure;
    case Absence::Declined:
      return UnknownReason::Declined;
  }
  return UnknownReason::NotAnswered;
}

/// Something was said, be it that it is not known; a repetition of which nothing was asked is none.
bool isStatement(const Answered& answered) {
  return !answered.answers.empty() || answered.absence != Absence::NotAsked;
}

/// Reads all responses of one client into one set, oldest first.
class ResponsesReader {
 public:
  ResponsesReader(FactSet& facts, std::vector<const Response*> responses, base::Date today,
                  base::Issues& issues)
      : facts_(facts),
        dictionary_(facts.dictionary()),
        responses_(std::move(responses)),
        today_(today),
        issues_(issues) {}

  void read() {
    // A response without a date cannot be shown to be recent, so it is the oldest.
    std::stable_sort(responses_.begin(), responses_.end(),
                     [](const Response* a, const Response* b) { return a->authored < b->authored; });
    for (std::size_t i = 0; i < responses_.size(); ++i) {
      const bool isSameDay = i > 0 && responses_[i - 1]->authored == responses_[i]->authored;
      occasions_.push_back(i == 0 ? 0 : occasions_.back() + (isSameDay ? 0 : 1));
    }
    for (std::size_t group = 0; group < dictionary_.groups().size(); ++group)
      placeRepetitions(static_cast<int>(group));
    for (std::size_t i = 0; i < responses_.size(); ++i) readResponse(i);
  }

 private:
  /// Where the repetitions of one response begin in the set; -1 when an earlier list was replaced.
  using Starts = std::map<std::pair<int, std::size_t>, int>;

  bool saysSomethingOf(const Response& response, int group) const {
    const auto found = response.repetitions.find(dictionary_.groups()[static_cast<std::size_t>(group)]);
    if (found == response.repetitions.end() || found->second == 0) return false;
    if (found->second > 1) return true;
    return std::any_of(response.answered.begin(), response.answered.end(), [&](const Answered& answered) {
      const Definition* definition = dictionary_.find(answered.linkId);
      return definition && definition->groupIndex == group && isStatement(answered);
    });
  }

  /// A series takes in every response; any other group is a list, of which the newest counts.
  void placeRepetitions(int group) {
    const std::string& id = dictionary_.groups()[static_cast<std::size_t>(group)];
    int count = 0;
    int occasion = 0;
    const Response* last = nullptr;
    for (std::size_t i = 0; i < responses_.size(); ++i) {
      const Response& response = *responses_[i];
      if (!saysSomethingOf(response, group)) continue;
      const bool isNewer = last && last->authored < response.authored;
      if (!dictionary_.isSeries(group)) {
        if (isNewer) {
          for (auto& [key, start] : starts_) {
            if (key.first == group) start = -1;
          }
          count = 0;
        } else if (last) {
          issues_.add({Severity::AskBack,
                       {},
                       id,
                       "\"" + dictionary_.groupTitles().at(id) + "\" was answered twice for the same day",
                       "keep one list; until then both count"});
        }
      }
      starts_[{group, i}] = count;
      count += response.repetitions.at(id);
      occasion = occasions_[i];
      last = &response;
    }
    if (!last) return;
    facts_.setRepetitions(id, count);
    facts_.setOpenEnded(id, false);
    facts_.setOccasion(id, occasion);
  }

  void readResponse(std::size_t index) {
    const Response& response = *responses_[index];
    if (response.authored && *response.authored > today_) {
      issues_.error({}, response.form ? response.form->name() : "response",
                    "the response is dated " + response.authored->toText() + ", after the screening date " +
                        today_.toText(),
                    "correct the date");
    }
    for (const Answered& answered : response.answered) readAnswered(index, answered);
  }

  void readAnswered(std::size_t index, const Answered& answered) {
    const Definition* definition = dictionary_.find(answered.linkId);
    if (!definition || definition->isPolicy() || definition->isOption()) {
      issues_.error(
          answered.place, answered.linkId, "\"" + answered.linkId + "\" is no fact that a form may ask",
          base::didYouMean(dictionary_.similar(answered.linkId), "check the form against the dictionary"));
      return;
    }
    int repetition = -1;
    if (definition->groupIndex >= 0) {
      const auto start = starts_.find({definition->groupIndex, index});
      if (start == starts_.end() || start->second < 0 || answered.repetition < 0) return;
      repetition = start->second + answered.repetition;
    }
    const Response& response = *responses_[index];
    Given given;
    given.occasion = occasions_[index];
    given.givenBy = answered.givenBy.empty() ? response.givenBy : answered.givenBy;
    given.source = (response.form ? response.form->name() : "response") + ": " + answered.linkId;
    given.place = std::make_shared<const base::Place>(answered.place);
    given.date = answered.date;
    if (given.date && given.date->first() > today_) {
      issues_.error(answered.place, nameOf(*definition, repetition),
                    "the date " + given.date->toText() + " lies after the screening date " + today_.toText(),
                    "correct the date");
    }
    // A missing answer has no date of its own unless one was stated; its occasion orders it.
    if (!given.date && response.authored && !answered.answers.empty()) given.date = *response.authored;
    if (definition->isMultiple) {
      readChoice(response, *definition, repetition, answered, std::move(given));
    } else {
      readSingle(*definition, repetition, answered, given);
    }
  }

  void readSingle(const Definition& definition, int repetition, const Answered& answered, Given& given) {
    const std::string subject = nameOf(definition, repetition);
    given.value = Value::unknown(definition.valueType.kind);
    if (answered.absence || answered.answers.empty()) {
      given.reason = answered.absence ? reasonOf(*answered.absence) : UnknownReason::NotAnswered;
    } else if (!readAnswer(definition, answered.answers.front(), subject, given)) {
      return;
    }
    take(facts_, definition.slot, repetition, given, issues_);
  }

  bool readAnswer(const Definition& definition, const Answer& answer, const std::string& subject,
                  Given& given) {
    switch (definition.type) {
      case FactType::Boolean:
        if (!answer.boolean) break;
        given.value = Value::boolean(*answer.boolean);
        given.written = *answer.boolean ? "true" : "false";
        return true;
      case FactType::Integer:
      case FactType::Decimal:
      case FactType::Quantity: {
        if (!answer.number) break;
        given.written = answer.unit.empty() ? answer.numberText : answer.numberText + " " + answer.unit;
        const auto value = checkedNumber(definition, *answer.number, answer.unit, given.written, answer.place,
                                         subject, issues_);
        if (!value) return false;
        given.value = Value::number(*value);
        return true;
      }
      case FactType::Code:
        if (answer.text && !answer.code) {
          given.reason = UnknownReason::Unresolved;
          given.written = *answer.text;
          askToResolve(definition, answer, subject);
          return true;
        }
        if (!answer.code || !definition.option(*answer.code)) break;
        given.value = Value::code(*answer.code);
        given.written = *answer.code;
        return true;
      case FactType::Date:
        if (!answer.date) break;
        given.value = Value::ofDate(*answer.date);
        given.written = answer.date->toText();
        return true;
      case FactType::Text:
        if (!answer.text || answer.text->empty()) break;
        given.value = Value::ofText(*answer.text);
        given.written = *answer.text;
        return true;
    }
    issues_.error(answer.place, subject, "this answer is no value of the fact \"" + definition.id + "\"",
                  "check the form against the dictionary");
    return false;
  }

  void readChoice(const Response& response, const Definition& choice, int repetition,
                  const Answered& answered, Given given) {
    const std::string subject = nameOf(choice, repetition);
    ChosenOptions chosen;
    for (const Answer& answer : answered.answers) {
      if (answer.code && choice.option(*answer.code)) {
        chosen.codes.push_back(*answer.code);
      } else if (answer.text && !answer.code) {
        chosen.othersUnknown = graver(chosen.othersUnknown, UnknownReason::Unresolved);
        given.written += (given.written.empty() ? "" : ", ") + *answer.text;
        askToResolve(choice, answer, subject);
      } else {
        issues_.error(answer.place, subject, "this answer is no option of the fact \"" + choice.id + "\"",
                      "check the form against the dictionary");
        return;
      }
    }
    if (answered.absence) {
      chosen.othersUnknown = graver(chosen.othersUnknown, reasonOf(*answered.absence));
    } else if (answered.answers.empty()) {
      chosen.othersUnknown = UnknownReason::NotAnswered;
    }
    // Which options an older version offered is not recorded here: what was not chosen then waits
    // to be confirmed.
    if (response.form) {
      const bool isSameVersion =
          response.formVersion.empty() || response.formVersion == response.form->version();
      if (!isSameVersion && !chosen.codes.empty()) {
        chosen.othersUnknown = graver(chosen.othersUnknown, UnknownReason::NotConfirmed);
      }
      if (const questionnaire::Item* item = response.form->find(choice.id)) {
        for (const questionnaire::Option& option : item->options) chosen.offered.push_back(option.code);
      }
    }
    takeChoice(facts_, choice, repetition, chosen, std::move(given), issues_);
  }

  void askToResolve(const Definition& definition, const Answer& answer, const std::string& subject) {
    issues_.add({Severity::AskBack, answer.place, subject,
                 "\"" + definition.label + "\" was answered in words: " + *answer.text,
                 "a clinician chooses the option it means; until then it counts as unknown"});
  }

  FactSet& facts_;
  const Dictionary& dictionary_;
  std::vector<const Response*> responses_;
  std::vector<int> occasions_;  ///< of each response: how many earlier days there are
  base::Date today_;
  base::Issues& issues_;
  Starts starts_;
};

}  // namespace

FactSet factsFromResponses(const Dictionary& dictionary, const questionnaire::FormSet& forms,
                           const std::vector<Response>& responses, base::Date today, base::Issues& issues,
                           std::shared_ptr<const EnablementPlan> plan) {
  FactSet facts(dictionary);
  facts.setPlan(std::move(plan));
  std::vector<const Response*> list;
  std::vector<std::string> answered;
  for (const Response& response : responses) {
    list.push_back(&response);
    if (response.form) answered.push_back(response.form->name());
  }
  ResponsesReader(facts, std::move(list), today, issues).read();
  facts.setFormsAnswered(std::move(answered));
  settle(facts, forms, today, issues);
  return facts;
}

}  // namespace stile::facts
