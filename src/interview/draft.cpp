#include "interview/draft.h"

#include <algorithm>

namespace stile::interview {

using answers::Answered;

Draft::Draft(const questionnaire::Form& form, base::Date today) {
  response_.form = &form;
  response_.formVersion = form.version();
  response_.authored = today;
}

Draft::Draft(const answers::Response& response, const Questions& questions) : response_(response) {
  // Nothing was asked of these: they are no entries, only places.
  std::erase_if(response_.answered, [](const Answered& answered) {
    return answered.answers.empty() && answered.absence == answers::Absence::NotAsked;
  });
  for (const auto& [group, count] : response.repetitions) {
    int begun = 0;
    for (const Answered& answered : response_.answered)
      for (const FormQuestion& question : questions.all())
        if (question.item->linkId == answered.linkId && question.fact->group == group)
          begun = std::max(begun, answered.repetition + 1);
    // One that was begun and of which nothing is said yet counts too, or "another one?" would be asked again.
    if (begun > 0) groups_[group] = {std::max(begun, count - 1), begun == count};
  }
  for (const auto& [group, state] : std::map(groups_)) restate(group);
}

const Answered* Draft::find(const Questions& questions, const QuestionRef& ref) const {
  const std::string& linkId = questions.at(ref).item->linkId;
  for (const Answered& answered : response_.answered)
    if (answered.repetition == ref.repetition && answered.linkId == linkId) return &answered;
  return nullptr;
}

void Draft::put(const Questions& questions, const QuestionRef& ref, std::vector<answers::Answer> answers,
                std::optional<answers::Absence> absence) {
  const FormQuestion& question = questions.at(ref);
  Answered entry;
  entry.linkId = question.item->linkId;
  entry.repetition = ref.repetition;
  entry.answers = std::move(answers);
  entry.absence = absence;
  const auto at = std::find_if(response_.answered.begin(), response_.answered.end(), [&](const Answered& answered) {
    return answered.repetition == entry.repetition && answered.linkId == entry.linkId;
  });
  if (at != response_.answered.end())
    *at = std::move(entry);
  else
    response_.answered.push_back(std::move(entry));
  if (question.group < 0) return;
  auto& [begun, isFinished] = groups_[question.fact->group];
  begun = std::max(begun, ref.repetition + 1);
  restate(question.fact->group);
}

int Draft::begun(const std::string& group) const {
  const auto at = groups_.find(group);
  return at == groups_.end() ? 0 : at->second.first;
}

bool Draft::isFinished(const std::string& group) const {
  const auto at = groups_.find(group);
  return at != groups_.end() && at->second.second;
}

void Draft::addRepetition(const std::string& group) {
  ++groups_[group].first;
  restate(group);
}

void Draft::finish(const std::string& group) {
  groups_[group].second = true;
  restate(group);
}

bool Draft::isLastWithoutAnswers(const Questions& questions, const std::string& group) const {
  const int last = begun(group) - 1;
  for (const Answered& answered : response_.answered) {
    if (answered.repetition != last || answered.answers.empty()) continue;
    for (const FormQuestion& question : questions.all())
      if (question.item->linkId == answered.linkId && question.fact->group == group) return false;
  }
  return true;
}

void Draft::restate(const std::string& group) {
  const auto& [begun, isFinished] = groups_[group];
  response_.repetitions[group] = begun + (isFinished ? 0 : 1);
}

}  // namespace stile::interview
