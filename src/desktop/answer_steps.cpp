#include "desktop/answer_steps.h"

#include <wx/datetime.h>

#include "desktop/text.h"
#include "interview/typed_answer.h"

namespace stile::desktop {

using application::ClientInterview;
using interview::QuestionRef;

namespace {

std::string issueWords(const base::Issues& issues) {
  std::string words;
  for (const auto& issue : issues.all()) {
    const bool isError = issue.severity == base::Severity::Error;
    words += (words.empty() ? "" : " ") + std::string(isError ? "That cannot be: " : "Is that right? ") + issue.message + (issue.remedy.empty() ? "." : "; " + issue.remedy + ".");
  }
  return words;
}

AnswerStep stepOf(const base::Result<bool>& taken, const base::Issues& issues) {
  if (taken && !taken.value()) return {false, true, issueWords(issues), !issues.hasErrors()};
  return {true, taken, {}, false};
}

AnswerStep give(ClientInterview& interview, const QuestionRef& question, std::vector<answers::Answer> answers, bool isConfirmed) {
  base::Issues issues;
  return stepOf(interview.answer(question, std::move(answers), issues, isConfirmed), issues);
}

AnswerStep leave(ClientInterview& interview, const QuestionRef& question, answers::Absence why) {
  // Only what is asked can be left.
  const auto* prompt = interview.session().prompt();
  if (prompt == nullptr || prompt->questions != std::vector{question}) interview.session().change(question);
  return stepOf(interview.skip(why), {});
}

/// The question after this one, when they are two numbers of one reading: in one group, and in the same unit of pressure.
std::optional<QuestionRef> otherOfPair(ClientInterview& interview, const QuestionRef& question) {
  constexpr const char* kPressure = "mm[Hg]";
  const auto& all = interview.session().ground().questions().all();
  const std::size_t next = static_cast<std::size_t>(question.place) + 1;
  if (next >= all.size()) return std::nullopt;
  const auto &first = *all[next - 1].item, &second = *all[next].item;
  const bool arePressures = first.units == std::vector<std::string>{kPressure} && second.units == first.units;
  if (!arePressures || first.parent != second.parent) return std::nullopt;
  return QuestionRef{question.place + 1, question.repetition};
}

}  // namespace

AnswerStep takeRow(ClientInterview& interview, const QuestionRef& question, const AnswerRow& row) {
  using Kind = AnswerRow::Kind;
  switch (row.kind) {
    case Kind::NotSure: return leave(interview, question, answers::Absence::NotSure);
    case Kind::Declined: return leave(interview, question, answers::Absence::Declined);
    case Kind::Later: return leave(interview, question, answers::Absence::NotAnswered);
    case Kind::Option: return takeOptions(interview, question, {row.option});
    case Kind::Yes:
    case Kind::No: break;
  }
  answers::Answer answer;
  answer.boolean = row.kind == Kind::Yes;
  return give(interview, question, {answer}, false);
}

AnswerStep takeOptions(ClientInterview& interview, const QuestionRef& question, const std::set<std::size_t>& chosen) {
  const auto& options = interview.session().question(question).item->options;
  std::vector<answers::Answer> given;
  for (const std::size_t index : chosen) {
    answers::Answer answer;
    answer.code = options[index].code;
    given.push_back(std::move(answer));
  }
  return give(interview, question, std::move(given), false);
}

AnswerStep takeTyped(ClientInterview& interview, const QuestionRef& question, const std::string& text, bool isConfirmed) {
  if (const auto pair = interview::readPair(text))
    if (const auto second = otherOfPair(interview, question)) {
      auto step = takeTyped(interview, question, pair->first, isConfirmed);
      if (!step.isTaken) return step;
      // What is wrong with the second number is told where it is asked by itself.
      const auto both = takeTyped(interview, *second, pair->second, false);
      return both.isTaken ? both : step;
    }
  auto typed = interview::readTyped(interview.session().question(question), text);
  if (!typed.ok()) return {false, true, "Not understood: " + typed.trouble + ".", false};
  return give(interview, question, std::move(typed.answers), isConfirmed);
}

std::string savedWords(const base::Result<bool>& saved) {
  return saved ? "Saved " + plain(wxDateTime::Now().Format("%H:%M:%S")) : "Not saved: " + saved.failure().message;
}

}  // namespace stile::desktop
