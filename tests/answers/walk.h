// Fills in any form to its end: every question that applies gets an answer, every group that repeats a
// second repetition.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "answers/draft.h"
#include "answers/draft_item.h"
#include "base/issue.h"
#include "questionnaire/item_type.h"

namespace stile::sample {

/// Which way the answers go, so that both sides of most conditions are seen.
enum class Way { First, Last };

struct Walked {
  std::optional<std::string> response;  ///< completed; nullopt with `trouble`
  std::size_t questions = 0;            ///< answered, or left open with a reason
  std::string trouble;
};

using answers::CalculatedAnswer;
using answers::Draft;
using answers::DraftItem;
using questionnaire::Item;
using questionnaire::ItemType;
using questionnaire::Option;

inline std::string quoted(const std::string& text) {
  json::Writer out(0);
  out.string(text);
  std::string line = out.text();
  while (!line.empty() && line.back() == '\n') line.pop_back();
  return line;
}

inline CalculatedAnswer chosen(const Option& option) {
  std::string value;
  if (option.type == "Coding") {
    value = "{" + (option.system.empty() ? std::string() : "\"system\": " + quoted(option.system) + ", ") +
            "\"code\": " + quoted(option.code) + "}";
  } else if (option.type == "Integer") {
    value = option.code;
  } else if (option.type == "Reference") {
    value = "{\"reference\": " + quoted(option.code) + "}";
  } else {
    value = quoted(option.code);
  }
  return {option.type, value, option.code};
}

inline std::string number(const Item& item, Way way) {
  const auto& limit = way == Way::First ? item.least : item.most;
  if (limit && limit->number) return limit->number->toText();
  const auto& other = way == Way::First ? item.most : item.least;
  if (other && other->number) return other->number->toText();
  return way == Way::First ? "1" : "7";
}

/// nullopt: nobody but a terminology server or a person could answer this.
inline std::optional<CalculatedAnswer> answerTo(const Item& item, Way way) {
  if (!item.options.empty()) {
    return chosen(way == Way::First ? item.options.front() : item.options.back());
  }
  switch (item.type) {
    case ItemType::Boolean:
      return CalculatedAnswer{"Boolean", way == Way::First ? "true" : "false", {}};
    case ItemType::Integer:
      return CalculatedAnswer{"Integer", number(item, way), {}};
    case ItemType::Decimal:
      return CalculatedAnswer{"Decimal", number(item, way), {}};
    case ItemType::Date:
      return CalculatedAnswer{"Date", item.least ? quoted(item.least->text) : "\"2001-02-03\"", {}};
    case ItemType::DateTime:
      return CalculatedAnswer{"DateTime", "\"2001-02-03T04:05:06Z\"", {}};
    case ItemType::Time:
      return CalculatedAnswer{"Time", "\"11:11:12\"", {}};
    case ItemType::String:
    case ItemType::Text:
      if (!item.regex.empty() && item.entryFormat.empty()) return std::nullopt;
      return CalculatedAnswer{"String", item.regex.empty() ? "\"some words\"" : quoted(item.entryFormat), {}};
    case ItemType::Url:
      return CalculatedAnswer{"Uri", "\"https://stile.example/\"", {}};
    case ItemType::Quantity: {
      const std::string unit = item.units.empty() ? "kg" : item.units.front();
      return CalculatedAnswer{"Quantity",
                              "{\"value\": " + number(item, way) +
                                  ", \"system\": \"http://unitsofmeasure.org\", \"code\": " + quoted(unit) +
                                  "}",
                              {}};
    }
    case ItemType::Attachment:
      return CalculatedAnswer{"Attachment", R"({"contentType": "text/plain", "data": "eA=="})", {}};
    case ItemType::Reference:
      return CalculatedAnswer{"Reference", R"({"display": "someone"})", {}};
    case ItemType::OpenChoice:
      return CalculatedAnswer{"String", "\"something else\"", {}};
    default:
      return std::nullopt;
  }
}

inline bool isOpen(const DraftItem& question) {
  return question.answers.empty() && question.absentReason.empty() && !question.item->calculatedExpression;
}

/// Answers the first question that is still open; false when there is none.
inline bool answerNext(Draft& draft, Way way) {
  for (const DraftItem* question : draft.questions()) {
    if (!isOpen(*question)) continue;
    if (const auto answer = answerTo(*question->item, way)) {
      draft.answer(*question, {*answer});
    } else {
      draft.setAbsent(*question, "asked-unknown");
    }
    return true;
  }
  return false;
}

/// Repeats each repeating group once; false when all were.
inline bool repeatNext(Draft& draft, std::set<const Item*>& done) {
  for (const DraftItem* group : draft.repeatingGroups()) {
    if (!done.insert(group->item).second) continue;
    if (draft.repeat(*group)) return true;
  }
  return false;
}

inline Walked walk(const questionnaire::Form& form, Way way) {
  Walked walked;
  Draft draft(form, "2026-11-25T10:00:00+00:00");
  std::set<const Item*> repeated;
  constexpr std::size_t kMost = 20'000;
  while (walked.questions < kMost && (answerNext(draft, way) || repeatNext(draft, repeated)))
    ++walked.questions;
  for (const DraftItem* question : draft.questions()) {
    if (isOpen(*question)) walked.trouble += question->item->linkId + " is still open; ";
  }
  base::Issues issues;
  walked.response = draft.complete(issues);
  for (const auto& issue : issues.all()) {
    if (issue.severity == base::Severity::Error) walked.trouble += base::toText(issue) + "\n";
  }
  return walked;
}

}  // namespace stile::sample
