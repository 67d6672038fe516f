#include "cli/interview_talk.h"

#include <algorithm>

#include "cli/interview_words.h"
#include "interview/number_words.h"
#include "interview/typed_answer.h"
#include "questionnaire/item_type.h"

namespace stile::cli {

using interview::Closing;
using interview::Prompt;
using interview::QuestionRef;
using questionnaire::ItemType;

namespace {

bool isFreeText(const interview::FormQuestion& question) {
  return question.item->type == ItemType::String || question.item->type == ItemType::Text;
}

std::string titleOf(const interview::Session& session, const Prompt& prompt) {
  const auto* item = session.question(prompt.questions.front()).item;
  for (const auto* at = item->parent; at; at = at->parent)
    if (!at->text.empty()) return at->text;
  return {};
}

}  // namespace

base::Result<InterviewTalk::End> InterviewTalk::run() {
  introduce();
  while (const Prompt* next = session_.prompt()) {
    const Prompt prompt = *next;
    terminal_.say("");
    show(prompt);
    const Typed typed = read(prompt);
    if (typed.kind == Typed::Kind::Stop || typed.kind == Typed::Kind::EndOfInput) return End::Stopped;
    if (take(prompt, typed)) {
      if (auto failure = save_()) {
        tellIfUrgent();  // what must be done now does not wait for the disk
        return *failure;
      }
    }
    if (isEnded_) return End::Stopped;
    if (!interruptIfUrgent()) return End::Stopped;
    tellIfSettled();
  }
  return End::Finished;
}

void InterviewTalk::introduce() {
  terminal_.say(session_.ground().form().title() + ".");
  terminal_.say("At any question: ? why we ask, b back, c change an earlier answer, u not sure, s skip, q stop. "
                "Where you type words, put a stroke before these, such as /b. Every answer is written down at once.");
  const auto progress = session_.progress();
  if (progress.answered + progress.skipped > 0)
    terminal_.say("Going on where it was left: " + std::to_string(progress.answered) + " answers, " +
                  std::to_string(progress.skipped) + " without an answer.");
}

void InterviewTalk::show(const Prompt& prompt) {
  if (prompt.anotherOf >= 0) {
    const auto& dictionary = session_.ground().dictionary();
    const std::string& group = dictionary.groups()[static_cast<std::size_t>(prompt.anotherOf)];
    const auto title = dictionary.groupTitles().find(group);
    terminal_.say((title == dictionary.groupTitles().end() ? group : title->second) + ": is there another one?");
    terminal_.ask("y yes, n no: ");
  } else if (prompt.isList()) {
    showList(prompt);
  } else {
    showQuestion(prompt.questions.front());
  }
}

void InterviewTalk::showList(const Prompt& prompt) {
  const std::string title = titleOf(session_, prompt);
  terminal_.say((title.empty() ? "" : title + ". ") + "Does any of these apply?");
  for (std::size_t i = 0; i < prompt.questions.size(); ++i) {
    const std::string number = std::to_string(i + 1);
    const auto& question = session_.question(prompt.questions[i]);
    const auto* earlier = before(prompt.questions[i]);
    terminal_.say("  " + number + " " + questionnaire::lineOf(*question.item) + (earlier == nullptr ? "" : " Last time: " + inWords(question, *earlier) + "."), 5);
  }
  terminal_.ask("n no to all of these, or the numbers that apply (2 5; 3? for not sure): ");
}

void InterviewTalk::showQuestion(const QuestionRef& ref) {
  const auto& question = session_.question(ref);
  terminal_.say(question.item->text);
  if (const auto* before = session_.said(ref)) terminal_.say("Said before: " + inWords(question, *before) + ".");
  if (const auto* earlier = before(ref)) terminal_.say("Last time: " + inWords(question, *earlier) + ". = the same today.");
  if (questionnaire::isChoice(question.item->type)) {
    const auto& options = question.item->options;
    for (std::size_t i = 0; i < options.size(); ++i) {
      const std::string number = std::to_string(i + 1);
      const bool isNone = options[i].isExclusive;
      terminal_.say("  " + number + " " + (options[i].display.empty() ? options[i].code : options[i].display) +
                    (isNone ? " (or n)" : ""), 5);
    }
    terminal_.ask(question.item->repeats ? "The numbers that apply: " : "The number of one answer: ");
    return;
  }
  switch (question.item->type) {
    case ItemType::Boolean: terminal_.ask("y yes, n no, u not sure: "); return;
    case ItemType::Quantity:
    case ItemType::Integer:
    case ItemType::Decimal:
      // How to count, and what the numbers stand for: nobody can answer without it.
      if (!question.item->help.empty()) terminal_.say(question.item->help);
      terminal_.ask(interview::numberWantedInWords(question) + ": ");
      return;
    case ItemType::Date: terminal_.ask("A date (2025-03-14, March 2025 or 2025): "); return;
    default: terminal_.ask("In words: "); return;
  }
}

InterviewTalk::Typed InterviewTalk::read(const Prompt& prompt) {
  using Kind = Typed::Kind;
  const bool isOne = !prompt.isList() && prompt.anotherOf < 0;
  const auto* question = isOne ? &session_.question(prompt.questions.front()) : nullptr;
  const bool isDigit = question && interview::isOneDigit(*question);
  const bool isKey = !isOne || isDigit || question->item->type == ItemType::Boolean;
  const bool isText = isOne && isFreeText(*question);
  const auto line = isKey ? terminal_.readKey(isDigit) : terminal_.readLine();
  if (!line) return {Kind::EndOfInput, {}};
  std::string text = *line;
  const auto first = text.find_first_not_of(" \t");
  text = first == std::string::npos ? "" : text.substr(first, text.find_last_not_of(" \t") - first + 1);
  const bool hasStroke = text.size() == 2 && text[0] == '/';
  const std::string word = hasStroke ? text.substr(1) : text;
  if (text == "=" && isOne && before(prompt.questions.front()) != nullptr) return {Kind::Same, {}};
  if (isText && !hasStroke) return {Kind::Answer, text};
  if (word == "?") return {Kind::Why, {}};
  if (word == "b") return {Kind::Back, {}};
  if (word == "s") return {Kind::Skip, {}};
  if (word == "u") return {Kind::NotSure, {}};
  if (word == "c") return {Kind::Change, {}};
  if (word == "q") return {Kind::Stop, {}};
  return {Kind::Answer, text};
}

bool InterviewTalk::take(const Prompt& prompt, const Typed& typed) {
  switch (typed.kind) {
    case Typed::Kind::Why: explain(prompt); return false;
    case Typed::Kind::Back:
      if (!session_.back()) terminal_.say("This is the first question.");
      return true;
    case Typed::Kind::Change: chooseChange(); return false;
    case Typed::Kind::Same: return takeSame(prompt);
    case Typed::Kind::Skip:
      if (prompt.anotherOf < 0) return takeSkip();
      terminal_.say("Answer y or n, or q to stop: the list stays open then.");
      return false;
    case Typed::Kind::NotSure:
      if (prompt.anotherOf >= 0) {
        terminal_.say("Answer y or n, or q to stop: the list stays open then.");
        return false;
      }
      session_.skip(answers::Absence::NotSure);
      return true;
    default: break;
  }
  if (prompt.anotherOf >= 0) return takeAnother(typed.text);
  if (prompt.isList()) return takeList(prompt, typed.text);
  return takeAnswer(prompt.questions.front(), typed.text);
}

bool InterviewTalk::takeAnother(const std::string& text) {
  if (text != "y" && text != "n") {
    terminal_.say("Type y for yes or n for no.");
    return false;
  }
  session_.another(text == "y");
  return true;
}

bool InterviewTalk::takeList(const Prompt& prompt, const std::string& text) {
  const auto list = interview::readTypedList(prompt.questions.size(), text);
  if (!list.trouble.empty()) {
    terminal_.say("Not understood: " + list.trouble + ".");
    return false;
  }
  std::set<QuestionRef> yes, notSure;
  for (const std::size_t i : list.yes) yes.insert(prompt.questions[i]);
  for (const std::size_t i : list.notSure) notSure.insert(prompt.questions[i]);
  session_.answerList(yes, notSure);
  return true;
}

bool InterviewTalk::takeAnswer(const QuestionRef& ref, const std::string& text) {
  const auto typed = interview::readTyped(session_.question(ref), text);
  if (!typed.ok()) {
    terminal_.say("Not understood: " + typed.trouble + ".");
    return false;
  }
  return takeAnswers(ref, typed.answers);
}

bool InterviewTalk::takeSame(const Prompt& prompt) { return takeAnswers(prompt.questions.front(), before(prompt.questions.front())->answers); }

bool InterviewTalk::takeAnswers(const QuestionRef& ref, const std::vector<answers::Answer>& answers) {
  base::Issues issues;
  if (session_.answer(ref, answers, issues)) return true;
  for (const auto& issue : issues.all()) {
    const bool isError = issue.severity == base::Severity::Error;
    terminal_.say((isError ? "That cannot be: " : "Is that right? ") + issue.message + "; " + issue.remedy + ".");
  }
  if (issues.hasErrors() || !confirms("y keep it, n type it again: ")) return false;
  return session_.answer(ref, answers, issues, true);
}

bool InterviewTalk::takeSkip() {
  terminal_.ask("Why? 1 not sure, 2 would rather not say, 3 leave it for now: ");
  const auto line = terminal_.readKey(true);
  if (!line) {
    isEnded_ = true;
    return false;
  }
  const char why = line->empty() ? ' ' : line->front();
  if (why != '1' && why != '2' && why != '3') {
    terminal_.say("Nothing was skipped.");
    return false;
  }
  session_.skip(why == '1' ? answers::Absence::NotSure : why == '2' ? answers::Absence::Declined : answers::Absence::NotAnswered);
  return true;
}

void InterviewTalk::chooseChange() {
  std::vector<QuestionRef> refs;
  const auto& questions = session_.ground().questions();
  for (const auto& answered : session_.response().answered) {
    const auto* fact = session_.ground().dictionary().find(answered.linkId);
    const QuestionRef ref{fact ? questions.placeOf(fact->slot) : -1, answered.repetition};
    if (ref.place < 0) continue;
    refs.push_back(ref);
    terminal_.say("  " + std::to_string(refs.size()) + "  " + session_.question(ref).item->text + " " +
                  inWords(session_.question(ref), answered) + ".", 5);
  }
  if (refs.empty()) return terminal_.say("Nothing was answered yet.");
  terminal_.ask("The number of the answer to change (or nothing): ");
  const auto line = terminal_.readLine();
  const auto number = line ? base::Rational::parse(*line) : std::nullopt;
  if (!number || !number->isWhole() || *number < base::Rational(1) || *number > base::Rational(static_cast<std::int64_t>(refs.size())))
    return terminal_.say("Nothing is changed.");
  session_.change(refs[static_cast<std::size_t>(number->floor() - 1)]);
}

void InterviewTalk::explain(const Prompt& prompt) {
  bool any = false;
  for (const QuestionRef& ref : prompt.questions) {
    const auto& question = session_.question(ref);
    const auto* stake = session_.stakes().of(ref);
    if (prompt.isList() && !question.item->help.empty()) terminal_.say(question.item->text);
    if (!question.item->help.empty()) terminal_.say((prompt.isList() ? "  " : "") + question.item->help, 2);
    any = any || !question.item->help.empty();
    if (prompt.isList() || !stake) continue;
    std::string topics;
    for (const int rule : stake->rules) {
      const std::string& title = session_.ground().rules().rules[static_cast<std::size_t>(rule)].title;
      if (topics.size() < 400) topics += (topics.empty() ? "" : "; ") + title;
    }
    if (!topics.empty()) terminal_.say("It decides about: " + topics + ".");
    any = any || !topics.empty();
  }
  if (!any) terminal_.say("The record, the letter or the plan needs it.");
}

bool InterviewTalk::tellIfUrgent() {
  const bool isUrgent = session_.stakes().totals().reach.action >= limits::Action::SameDay;
  if (!isUrgent) hasInterrupted_ = false;
  if (!isUrgent || hasInterrupted_) return false;
  hasInterrupted_ = true;
  const bool isEmergency = session_.closing() == Closing::Emergency;
  terminal_.say("");
  terminal_.say(isEmergency ? "STOP. THIS IS AN EMERGENCY." : "STOP. THE CLIENT MUST BE SEEN TODAY.");
  for (const std::string& line : urgentWords(session_, limits::Action::SameDay)) terminal_.say("- " + line, 2);
  return true;
}

bool InterviewTalk::interruptIfUrgent() {
  return !tellIfUrgent() || confirms("The rest can be asked later. y go on now, n stop here: ");
}

void InterviewTalk::tellIfSettled() {
  const bool isSettled = session_.closing() == Closing::Settled;
  if (isSettled && !hasToldSettled_) {
    terminal_.say("");
    terminal_.say("The decision is settled. " + decisionInWords(session_));
    if (session_.prompt()) terminal_.say("What is left is for the limits, the letter and the plan.");
  }
  hasToldSettled_ = isSettled;
}

bool InterviewTalk::confirms(const std::string& question) {
  while (true) {
    terminal_.ask(question);
    const auto line = terminal_.readKey();
    if (!line) {
      isEnded_ = true;
      return false;
    }
    if (*line == "y" || *line == "n") return *line == "y";
    terminal_.say("Type y or n.");
  }
}

}  // namespace stile::cli
