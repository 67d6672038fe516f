#include "interview/session.h"

#include <algorithm>

#include "facts/enablement_closure.h"
#include "interview/answer_check.h"
#include "interview/plan_slots.h"

namespace stile::interview {

using answers::Answer;
using limits::Action;

Session::Session(const screening::Content& content, const questionnaire::Form& form, base::Date today,
                 std::vector<answers::Response> earlier, std::vector<screening::ClearanceReply> replies,
                 const answers::Response* draft)
    : content_(content), today_(today), earlier_(std::move(earlier)), draft_(form, today) {
  facts::FactSet facts = factsOf(draft_);
  ground_ = std::make_unique<Ground>(content.dictionary, content.rules, form, facts.plan(), today, std::move(replies),
                                     slotsReadBy(content.library, content.dictionary));
  if (draft) draft_ = Draft(*draft, questions());
  proceed();
}

Session::~Session() = default;

const FormQuestion& Session::question(const QuestionRef& ref) const { return questions().at(ref); }

facts::FactSet Session::factsOf(const Draft& draft) const {
  std::vector<answers::Response> responses = earlier_;
  responses.push_back(draft.response());
  base::Issues ignored;
  const auto read = [&] {
    return facts::factsFromResponses(content_.dictionary, content_.forms, responses, today_, ignored,
                                     ground_ ? ground_->dependents().sharedPlan() : nullptr);
  };
  facts::FactSet facts = read();
  if (!ground_) return facts;
  // Answers to questions that no longer apply stay in the draft and are in no fact. Taking one away
  // may disable another, at most as often as there are answers.
  const auto& entries = ground_->dependents().plan().entries();
  const auto isStale = [&](const answers::Answered& answered) {
    const facts::Definition* fact = content_.dictionary.find(answered.linkId);
    if (!fact) return false;
    const auto isOff = [&](int entry, int repetition) {
      return entry >= 0 && facts::enablementOf(facts, entries[static_cast<std::size_t>(entry)], repetition) != expression::Truth::True;
    };
    const bool isGroupOff = fact->groupIndex >= 0 && isOff(ground_->dependents().entryOfGroup(fact->groupIndex), -1);
    return isGroupOff || isOff(ground_->dependents().entryOf(fact->slot), answered.repetition);
  };
  while (true) {
    answers::Response& own = responses.back();
    const std::size_t before = own.answered.size();
    std::erase_if(own.answered, isStale);
    if (own.answered.size() == before) return facts;
    for (auto group = own.repetitions.begin(); group != own.repetitions.end();) {
      const int index = content_.dictionary.groupIndex(group->first);
      const int entry = index < 0 ? -1 : ground_->dependents().entryOfGroup(index);
      const bool isOff = entry >= 0 && facts::enablementOf(facts, entries[static_cast<std::size_t>(entry)], -1) != expression::Truth::True;
      group = isOff ? own.repetitions.erase(group) : std::next(group);
    }
    facts = read();
  }
}

void Session::remember() { steps_.push_back({draft_, prompt_, counted_}); }

void Session::count() {
  if (!prompt_) return;
  if (prompt_->anotherOf >= 0) {
    if (!content_.dictionary.isSeries(prompt_->anotherOf)) {
      const std::string& group = content_.dictionary.groups()[static_cast<std::size_t>(prompt_->anotherOf)];
      counted_.insert("another " + group + std::to_string(draft_.begun(group)));
    }
    return;
  }
  const QuestionRef& first = prompt_->questions.front();
  const FormQuestion& asked = question(first);
  const bool isSeries = asked.group >= 0 && content_.dictionary.isSeries(asked.group);
  counted_.insert(isSeries ? asked.fact->group : asked.item->linkId + " " + std::to_string(first.repetition));
}

bool Session::answer(const QuestionRef& ref, std::vector<Answer> answers, base::Issues& issues, bool isConfirmed) {
  base::Issues found;
  checkAnswer(question(ref), answers, today_, found);
  issues.append(found);
  if (found.hasErrors() || (!found.empty() && !isConfirmed)) return false;
  remember();
  count();
  draft_.put(questions(), ref, std::move(answers), std::nullopt);
  askedAgain_.reset();
  proceed();
  return true;
}

void Session::answerList(const std::set<QuestionRef>& yes, const std::set<QuestionRef>& notSure) {
  if (!prompt_) return;
  remember();
  count();
  for (const QuestionRef& ref : prompt_->questions) {
    if (notSure.count(ref) != 0) {
      draft_.put(questions(), ref, {}, answers::Absence::NotSure);
      continue;
    }
    Answer answer;
    answer.boolean = yes.count(ref) != 0;
    draft_.put(questions(), ref, {answer}, std::nullopt);
  }
  askedAgain_.reset();
  proceed();
}

void Session::another(bool isThere) {
  if (!prompt_ || prompt_->anotherOf < 0) return;
  const std::string group = content_.dictionary.groups()[static_cast<std::size_t>(prompt_->anotherOf)];
  remember();
  count();
  if (isThere)
    draft_.addRepetition(group);
  else
    draft_.finish(group);
  proceed();
}

void Session::skip(answers::Absence why) {
  if (!prompt_ || prompt_->questions.empty()) return;
  remember();
  count();
  for (const QuestionRef& ref : prompt_->questions) draft_.put(questions(), ref, {}, why);
  askedAgain_.reset();
  proceed();
}

void Session::change(const QuestionRef& ref) {
  askedAgain_ = ref;
  proceed();
}

bool Session::back() {
  if (askedAgain_) {
    askedAgain_.reset();
    proceed();
    return true;
  }
  if (steps_.empty()) return false;
  Step step = std::move(steps_.back());
  steps_.pop_back();
  draft_ = std::move(step.draft);
  counted_ = std::move(step.counted);
  askedAgain_.reset();
  proceed();
  prompt_ = std::move(step.prompt);
  return true;
}

bool Session::isUnanswered(const QuestionRef& ref) const {
  const facts::Fact& fact = position_->facts().at(question(ref).fact->slot, ref.repetition);
  return fact.reason != facts::UnknownReason::None && !said(ref);
}

std::vector<Candidate> Session::candidates() const {
  std::vector<Candidate> all;
  for (int place = 0; place < static_cast<int>(questions().all().size()); ++place) {
    const FormQuestion& asked = questions().at(place);
    Candidate candidate{{place, -1}, false};
    if (asked.group >= 0) {
      const std::string& group = asked.fact->group;
      const int begun = draft_.begun(group);
      if (draft_.isFinished(group) || draft_.isLeft(group) || (begun == 0 && !position_->facts().isOpenEnded(asked.group))) continue;
      candidate.question.repetition = std::max(begun - 1, 0);
      candidate.isGroupBegun = begun > 0;
    }
    if (isUnanswered(candidate.question) && position_->isEnabled(candidate.question)) all.push_back(candidate);
  }
  return all;
}

int Session::groupBegun() const {
  const auto& groups = content_.dictionary.groups();
  for (std::size_t i = 0; i < groups.size(); ++i) {
    const int entry = ground_->dependents().entryOfGroup(static_cast<int>(i));
    if (draft_.begun(groups[i]) == 0 || draft_.isFinished(groups[i]) || draft_.isLeft(groups[i])) continue;
    const auto& entries = ground_->dependents().plan().entries();
    if (entry < 0 || facts::enablementOf(position_->facts(), entries[static_cast<std::size_t>(entry)], -1) == expression::Truth::True)
      return static_cast<int>(i);
  }
  return -1;
}

void Session::proceed() {
  if (position_)
    position_->restart(factsOf(draft_));
  else
    position_ = std::make_unique<Position>(*ground_, factsOf(draft_));
  stakes_ = std::make_unique<Stakes>(*position_);
  prompt_.reset();
  open_ = candidates();
  if (askedAgain_) {
    prompt_ = Prompt{{*askedAgain_}, -1, Reason::Matters};
    return;
  }
  const auto choice = bestQuestion(*position_, *stakes_, open_, true);
  const int begun = groupBegun();
  const bool comesFirst = choice && (choice->reason == Reason::Opening || choice->reason == Reason::GroupBegun);
  if (begun >= 0 && !comesFirst) {
    const std::string group = content_.dictionary.groups()[static_cast<std::size_t>(begun)];
    if (draft_.isLastWithoutAnswers(questions(), group)) {
      draft_.leave(group);  // nobody could say anything of it: there is no use in asking for more
      return proceed();
    }
    prompt_ = Prompt{{}, begun, Reason::GroupBegun};
  } else if (choice) {
    prompt_ = promptFor(*choice);
  }
}

Prompt Session::promptFor(const Choice& choice) const {
  Prompt prompt{{choice.question}, -1, choice.reason};
  const FormQuestion& chosen = question(choice.question);
  if (chosen.group >= 0) {
    // A repetition is asked in the order of the form.
    for (const Candidate& candidate : open_) {
      if (question(candidate.question).group != chosen.group || !reasonToAsk(*position_, *stakes_, candidate, true)) continue;
      prompt.questions = {candidate.question};
      break;
    }
    return prompt;
  }
  if (!chosen.isListable) return prompt;
  prompt.questions.clear();
  for (const Candidate& candidate : open_) {
    const FormQuestion& other = question(candidate.question);
    if (other.isListable && other.item->parent == chosen.item->parent && chosen.item->parent &&
        reasonToAsk(*position_, *stakes_, candidate, true))
      prompt.questions.push_back(candidate.question);
  }
  if (prompt.questions.empty()) prompt.questions = {choice.question};
  return prompt;
}

Closing Session::closing() const {
  const Totals& totals = stakes_->totals();
  if (totals.reach.action == Action::Emergency) return Closing::Emergency;
  if (totals.isSettled()) return Closing::Settled;
  for (const Candidate& candidate : open_) {
    const Stake* stake = stakes_->of(candidate.question);
    if (stake && stake->decides) return Closing::Open;
  }
  return prompt_ && prompt_->anotherOf >= 0 ? Closing::Open : Closing::AsFarAsItGoes;
}

Progress Session::progress() const {
  Progress progress;
  progress.shown = static_cast<int>(counted_.size());
  for (const answers::Answered& answered : draft_.response().answered)
    ++(answered.answers.empty() ? progress.skipped : progress.answered);
  for (const Candidate& candidate : open_)
    if (reasonToAsk(*position_, *stakes_, candidate, true)) ++progress.leftAtMost;
  return progress;
}

std::vector<QuestionRef> Session::given() const {
  std::vector<QuestionRef> given;
  for (const answers::Answered& answered : draft_.response().answered) {
    const facts::Definition* fact = content_.dictionary.find(answered.linkId);
    const int place = fact ? questions().placeOf(fact->slot) : -1;
    // The topic "person" says who somebody is.
    if (place >= 0 && !answered.answers.empty() && fact->topic != "person") given.push_back({place, answered.repetition});
  }
  return given;
}

std::vector<QuestionRef> Session::heldBy() const {
  std::vector<QuestionRef> held;
  for (const auto& [ref, stake] : stakes_->all()) {
    const answers::Answered* entry = said(ref);
    if (stake.decides && entry && entry->answers.empty()) held.push_back(ref);
  }
  return held;
}

}  // namespace stile::interview
