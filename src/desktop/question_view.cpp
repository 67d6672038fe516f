#include "desktop/question_view.h"

#include <algorithm>
#include <bit>

#include "documents/decision_words.h"
#include "facts/fact_display.h"
#include "interview/typed_answer.h"
#include "questionnaire/item_type.h"

namespace stile::desktop {

using interview::FormQuestion;
using interview::Prompt;
using interview::QuestionRef;
using interview::Session;
using questionnaire::ItemType;

namespace {

constexpr std::size_t kAboutShown = 4;

std::string sectionOf(const FormQuestion& question) {
  for (const auto* at = question.item->parent; at != nullptr; at = at->parent)
    if (!at->text.empty()) return at->text;
  return {};
}

std::string wordsOf(const questionnaire::Option& option) { return option.display.empty() ? option.code : option.display; }

void addWaysOut(QuestionView& view) {
  using Kind = AnswerRow::Kind;
  std::size_t next = view.answers.size() + 1;
  const auto key = [&next](const char* letter) { return next <= 9 ? std::to_string(next++) : std::string(letter); };
  view.answers.push_back({Kind::NotSure, key("U"), "Not sure", 0, false});
  view.answers.push_back({Kind::Declined, key("R"), "Rather not say", 0, false});
  view.answers.push_back({Kind::Later, key("S"), "Leave it for now", 0, false});
}

QuestionKind kindOf(const questionnaire::Item& item) {
  if (item.type == ItemType::Boolean) return QuestionKind::YesNo;
  if (questionnaire::isChoice(item.type)) return item.repeats ? QuestionKind::SeveralOf : QuestionKind::OneOf;
  return QuestionKind::Typed;
}

std::string exampleOf(const FormQuestion& question) {
  switch (question.item->type) {
    case ItemType::Quantity: return "A number, and its unit";
    case ItemType::Integer: return "A whole number";
    case ItemType::Decimal: return "A number";
    case ItemType::Date: return "Such as 14 March 2025, March 2025 or 2025";
    default: return question.item->entryFormat.empty() ? "In words" : question.item->entryFormat;
  }
}

std::string rangeOf(const facts::Definition* fact) {
  if (fact == nullptr || !fact->possibleLow || !fact->possibleHigh) return {};
  const std::string unit = fact->valueType.unit.text == "1" ? std::string() : facts::unitWords(fact->valueType.unit.text);
  return "Taken from " + fact->possibleLow->toText() + " to " + fact->possibleHigh->toText() + (unit.empty() ? "" : " " + unit) + ".";
}

/// Which way the ladder and the action would go, in words.
std::string consequence(const interview::Totals& after) {
  const auto rungs = [](const interview::Decision& decision) {
    const auto aerobic = decision.usable(limits::Bay::Aerobic), strength = decision.usable(limits::Bay::Strength);
    if (aerobic == strength) return std::string(documents::wordsOf(aerobic));
    return std::string(documents::wordsOf(aerobic)) + ", strength " + documents::wordsOf(strength);
  };
  std::string words;
  if (after.reach.action >= limits::Action::WithinDays) words = std::string(documents::wordsOf(after.reach.action)) + "; ";
  const std::string sure = rungs(after.floor), possible = rungs(after.reach);
  if (sure == possible) return words + "settles at " + sure;
  return words + "sure: " + sure + "; possible: " + possible;
}

std::optional<interview::PossibleAnswer> possible(const FormQuestion& question, const AnswerRow& row) {
  interview::PossibleAnswer answer;
  using Kind = AnswerRow::Kind;
  switch (row.kind) {
    case Kind::Yes: answer.value = expression::Value::boolean(true); return answer;
    case Kind::No: answer.value = expression::Value::boolean(false); return answer;
    case Kind::NotSure: answer.why = facts::UnknownReason::NotSure; return answer;
    case Kind::Declined: answer.why = facts::UnknownReason::Declined; return answer;
    case Kind::Later: answer.why = facts::UnknownReason::NotAnswered; return answer;
    case Kind::Option: break;
  }
  const std::string& code = question.item->options[row.option].code;
  for (const auto& one : question.answers)
    if (one.isKnown() && (one.codes == std::vector{code} || (one.codes.empty() && one.value.text == code))) return one;
  return std::nullopt;
}

}  // namespace

std::string answerInWords(const FormQuestion& question, const answers::Answered& answered) {
  if (answered.answers.empty()) {
    if (!answered.absence) return {};
    switch (*answered.absence) {
      case answers::Absence::NotAsked: return "not asked";
      case answers::Absence::NotAnswered: return "left for now";
      case answers::Absence::NotSure: return "not sure";
      case answers::Absence::Declined: return "rather not say";
    }
  }
  std::string words;
  for (const auto& answer : answered.answers) {
    words += words.empty() ? "" : "; ";
    if (answer.boolean) {
      words += *answer.boolean ? "yes" : "no";
    } else if (answer.code) {
      const auto& options = question.item->options;
      const auto at = std::find_if(options.begin(), options.end(), [&](const auto& option) { return option.code == *answer.code; });
      words += at == options.end() ? *answer.code : wordsOf(*at);
    } else if (answer.number) {
      words += answer.numberText + (answer.unit.empty() ? "" : " " + facts::unitWords(answer.unit));
    } else if (answer.date) {
      words += answer.date->isExact() ? answer.date->first().toLongText() : answer.date->toText();
    } else {
      words += answer.text.value_or("");
    }
  }
  return words;
}

QuestionView questionViewOf(Session& session) {
  QuestionView view;
  const Prompt* prompt = session.prompt();
  if (prompt == nullptr) return view;
  using Kind = AnswerRow::Kind;
  if (prompt->anotherOf >= 0) {
    const auto& dictionary = session.ground().dictionary();
    const std::string& group = dictionary.groups()[static_cast<std::size_t>(prompt->anotherOf)];
    const auto title = dictionary.groupTitles().find(group);
    view.kind = QuestionKind::Another;
    view.section = title == dictionary.groupTitles().end() ? group : title->second;
    view.question = view.section + ": is there another one?";
    view.answers = {{Kind::Yes, "1", "Yes, another one", 0, false}, {Kind::No, "2", "No, that is all", 0, false}};
    return view;
  }
  const FormQuestion& question = session.question(prompt->questions.front());
  view.section = sectionOf(question);
  if (prompt->isList()) {
    view.kind = QuestionKind::List;
    view.question = "Does any of these apply?";
    if (const auto* group = question.item->parent; group != nullptr) view.help = group->help;
    for (const QuestionRef& ref : prompt->questions) {
      const questionnaire::Item& item = *session.question(ref).item;
      view.items.push_back({questionnaire::lineOf(item), item.text});
    }
    return view;
  }
  return questionViewOf(session, prompt->questions.front());
}

QuestionView questionViewOf(Session& session, const QuestionRef& ref) {
  QuestionView view;
  const FormQuestion& question = session.question(ref);
  view.section = sectionOf(question);
  view.kind = kindOf(*question.item);
  view.question = question.item->text;
  view.help = question.item->help;
  if (const auto* before = session.said(ref)) view.before = answerInWords(question, *before);
  if (const auto* stake = session.stakes().of(ref))
    for (std::size_t i = 0; i < stake->rules.size() && i < kAboutShown; ++i)
      view.about.push_back(session.ground().rules().rules[static_cast<std::size_t>(stake->rules[i])].title);
  using Kind = AnswerRow::Kind;
  if (view.kind == QuestionKind::YesNo) {
    view.answers = {{Kind::Yes, "1", "Yes", 0, false}, {Kind::No, "2", "No", 0, false}};
  } else if (view.kind != QuestionKind::Typed) {
    const auto& options = question.item->options;
    for (std::size_t i = 0; i < options.size(); ++i) {
      const bool isNone = options[i].isExclusive;
      view.answers.push_back({Kind::Option, i < 9 ? std::to_string(i + 1) : isNone ? "N" : "", wordsOf(options[i]), i, isNone});
    }
  } else {
    view.example = exampleOf(question);
    view.range = rangeOf(question.fact);
    view.units = question.item->units;
    for (const std::string& unit : view.units) view.unitWords.push_back(facts::unitWords(unit));
  }
  addWaysOut(view);
  return view;
}

std::string standingWords(const Session& session) {
  const auto& answered = session.response().answered;
  const auto open = std::count_if(answered.begin(), answered.end(), [](const auto& one) { return one.answers.empty(); });
  const std::string words = std::to_string(answered.size() - static_cast<std::size_t>(open)) + " answered";
  return open == 0 ? words : words + ", " + std::to_string(open) + " left open";
}

void putBack(QuestionView& view, Session& session, const std::vector<answers::Answered>& takenBack) {
  const auto* prompt = session.prompt();
  if (prompt == nullptr) return;
  const auto saidOf = [&](const QuestionRef& ref) -> const answers::Answered* {
    const std::string& linkId = session.question(ref).item->linkId;
    const auto at = std::find_if(takenBack.begin(), takenBack.end(), [&](const auto& one) { return one.linkId == linkId && one.repetition == ref.repetition; });
    return at == takenBack.end() ? nullptr : &*at;
  };
  if (view.kind == QuestionKind::List) {
    for (const QuestionRef& ref : prompt->questions) {
      const auto* said = saidOf(ref);
      const bool isYes = said != nullptr && !said->answers.empty() && said->answers.front().boolean.value_or(false);
      const bool isNotSure = said != nullptr && said->absence == answers::Absence::NotSure;
      view.marks.push_back(isYes ? 1 : isNotSure ? 2 : 0);
    }
    return;
  }
  const auto* said = prompt->questions.empty() ? nullptr : saidOf(prompt->questions.front());
  if (said == nullptr) return;
  const FormQuestion& question = session.question(prompt->questions.front());
  view.before = answerInWords(question, *said);
  if (view.kind != QuestionKind::SeveralOf) return;
  for (const AnswerRow& row : view.answers) {
    const bool isOption = row.kind == AnswerRow::Kind::Option && !row.isNone;
    const bool isChosen = isOption && std::any_of(said->answers.begin(), said->answers.end(), [&](const auto& answer) { return answer.code == question.item->options[row.option].code; });
    view.marks.push_back(isChosen ? 1 : 0);
  }
}

std::vector<SaidRow> saidLately(const Session& session, std::size_t most) {
  std::vector<SaidRow> rows;
  const auto& questions = session.ground().questions();
  const auto& answered = session.response().answered;
  for (auto at = answered.rbegin(); at != answered.rend() && rows.size() < most; ++at) {
    const auto* fact = session.ground().dictionary().find(at->linkId);
    const QuestionRef ref{fact != nullptr ? questions.placeOf(fact->slot) : -1, at->repetition};
    if (ref.place < 0 || at->givenBy == "record") continue;
    rows.push_back({ref, questionnaire::lineOf(*session.question(ref).item), answerInWords(session.question(ref), *at)});
  }
  std::reverse(rows.begin(), rows.end());
  return rows;
}

std::vector<OpenRow> stillOpen(const Session& session, std::size_t most) {
  std::vector<std::pair<QuestionRef, const interview::Stake*>> open;
  for (const auto& [ref, stake] : session.stakes().all())
    if (stake.decides && session.said(ref) == nullptr) open.push_back({ref, &stake});
  const auto weight = [](const interview::Stake& stake) {
    int rungs = 0;
    for (const auto bay : limits::kBays)
      rungs += std::popcount(stake.rungs[bay]);
    return std::pair(static_cast<int>(stake.couldBecome), rungs);
  };
  std::stable_sort(open.begin(), open.end(), [&](const auto& a, const auto& b) { return weight(*a.second) > weight(*b.second); });
  std::vector<OpenRow> rows;
  for (std::size_t i = 0; i < open.size() && i < most; ++i) rows.push_back({open[i].first, session.question(open[i].first).item->text});
  return rows;
}

std::vector<std::string> consequencesOf(Session& session, const QuestionView& view) {
  std::vector<std::string> words;
  const Prompt* prompt = session.prompt();
  if (prompt == nullptr || prompt->questions.size() != 1 || view.kind == QuestionKind::Typed) return words;
  const QuestionRef ref = prompt->questions.front();
  for (const AnswerRow& row : view.answers) {
    const auto answer = possible(session.question(ref), row);
    if (!answer) {
      words.emplace_back();
      continue;
    }
    const interview::Trial trial(session.position(), ref, *answer);
    words.push_back(consequence(session.position().totals()));
  }
  return words;
}

}  // namespace stile::desktop
