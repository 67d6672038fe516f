#include "answers/answer_checker.h"

#include <algorithm>
#include <utility>

#include "answers/option_checker.h"
#include "answers/regex_match.h"
#include "answers/resource_answer.h"
#include "base/unit.h"
#include "base/utf8.h"
#include "json/reader.h"
#include "questionnaire/extension.h"
#include "questionnaire/item_type.h"
#include "questionnaire/moment.h"
#include "questionnaire/quantity_reader.h"

namespace stile::answers {
namespace {

using expression::Truth;
using questionnaire::EnableOperator;
using questionnaire::Item;
using questionnaire::ItemType;
using questionnaire::Limit;

constexpr long long kLargestInteger = 2147483647;  // FHIR R4, integer: 32 bits
constexpr long long kSmallestInteger = -2147483648LL;

/// Checks one answer; each method takes one kind of value.
class AnswerChecker {
 public:
  AnswerChecker(const Occurrence& answer, const Item& question, base::Issues& issues)
      : answer_(answer), value_(*answer.value), question_(question), issues_(issues) {}

  void check() {
    const auto allowed = questionnaire::answerTypes(question_);
    const std::string& type = answer_.valueType;
    if (std::find(allowed.begin(), allowed.end(), type) == allowed.end()) {
      issue(value_,
            questionnaire::memberName("value", type) + " does not fit a question of the type " +
                questionnaire::fhirName(question_.type),
            "answer with value" + (allowed.empty() ? std::string() : allowed.front()));
      return;
    }
    if (!isWellFormed(type)) return;
    checkLength(type);
    checkRegex();
    checkOffered(answer_, question_, issues_);
  }

 private:
  void issue(json::Node at, std::string message, std::string remedy) {
    issues_.error(at.place(), question_.linkId, std::move(message), std::move(remedy));
  }

  bool isWellFormed(const std::string& type) {
    if (type == "Boolean")
      return check(value_.isBoolean(), "true or false is needed here", "write it without quotes");
    if (type == "Integer" || type == "Decimal") return checkNumber(type);
    if (type == "Quantity") return checkQuantity();
    if (type == "Date" || type == "DateTime" || type == "Time") return checkMoment(type);
    if (type == "String" || type == "Uri") return checkText(type);
    if (type == "Coding") {
      const std::size_t before = issues_.all().size();
      questionnaire::readOpenCoding(value_, question_.linkId, issues_);
      return issues_.all().size() == before;
    }
    if (type == "Attachment") return checkAttachment(value_, question_, issues_);
    return checkReference(value_, question_, issues_);
  }

  bool check(bool isGood, std::string message, std::string remedy) {
    if (!isGood) issue(value_, std::move(message), std::move(remedy));
    return isGood;
  }

  bool checkNumber(const std::string& type) {
    if (!check(value_.isNumber(), "a number is needed here", "write it as digits without quotes"))
      return false;
    const auto number = value_.number();
    if (!check(number.has_value(), "the number " + value_.numberText() + " is too long or too large",
               "write it with fewer digits")) {
      return false;
    }
    if (type == "Integer") {
      const auto whole = value_.integer();
      if (!check(whole && *whole >= kSmallestInteger && *whole <= kLargestInteger,
                 value_.numberText() + " is not a whole number of 32 bits", "give a whole number")) {
        return false;
      }
    }
    checkDecimals(value_);
    checkNumberLimit(*number, question_.least, true);
    checkNumberLimit(*number, question_.most, false);
    return true;
  }

  void checkNumberLimit(const base::Rational& number, const std::optional<Limit>& limit, bool isLeast) {
    if (!limit || !limit->number || limit->type == "Quantity") return;
    if (isLeast ? number < *limit->number : number > *limit->number) outside(*limit, isLeast);
  }

  void outside(const Limit& limit, bool isLeast) {
    issue(value_, std::string("the value is ") + (isLeast ? "below " : "above ") + limit.text,
          "check the value");
  }

  void checkDecimals(json::Node number) {
    if (!question_.maxDecimalPlaces) return;
    const std::string& digits = number.numberText();
    const std::size_t dot = digits.find('.');
    if (dot == std::string::npos) return;
    const std::size_t end = std::min(digits.find_first_of("eE"), digits.size());
    if (static_cast<long long>(end - dot - 1) <= *question_.maxDecimalPlaces) return;
    issue(number,
          digits + " has more than " + std::to_string(*question_.maxDecimalPlaces) + " decimal places",
          "round it");
  }

  bool checkQuantity() {
    const auto quantity = questionnaire::readOpenQuantity(value_, question_.linkId, issues_);
    if (!quantity) return false;
    if (const auto number = value_.find("value")) checkDecimals(*number);
    checkUnit(*quantity);
    checkQuantityLimit(*quantity, question_.least, true);
    checkQuantityLimit(*quantity, question_.most, false);
    return true;
  }

  void checkUnit(const questionnaire::Quantity& quantity) {
    if (question_.unitsAreOpen || question_.unitOptions.empty()) return;
    const auto code = value_.find("code");
    const std::string written = code && code->isString() ? code->string() : std::string();
    std::string list;
    for (const auto& offered : question_.unitOptions) {
      const std::string& name = offered.code.empty() ? offered.display : offered.code;
      // A unit without a system is accepted by its words, as it is offered.
      if (!written.empty() ? written == offered.code && quantity.system == offered.system
                           : !quantity.unitWords.empty() && quantity.unitWords == offered.display) {
        return;
      }
      list += (list.empty() ? "" : " or ") + name;
    }
    issue(code ? *code : value_,
          "the unit " + (quantity.unitWords.empty() ? std::string("(none)") : quantity.unitWords) +
              " is not offered by this question",
          "give the value in " + list);
  }

  void checkQuantityLimit(const questionnaire::Quantity& quantity, const std::optional<Limit>& limit,
                          bool isLeast) {
    if (!limit || !limit->number || limit->type != "Quantity") return;
    const auto from = base::parseUnit(quantity.unit);
    const auto to = base::parseUnit(limit->unit);
    const auto converted = from && to ? base::convert(quantity.value, *from, *to) : std::nullopt;
    if (!converted) {
      issue(value_, "the value cannot be compared with the limit " + limit->text,
            "give value and limit in UCUM units of one kind");
    } else if (isLeast ? *converted < *limit->number : *converted > *limit->number) {
      outside(*limit, isLeast);
    }
  }

  bool checkMoment(const std::string& type) {
    const std::string written = value_.isString() ? value_.string() : std::string();
    const bool isTime = type == "Time";
    const auto moment = isTime ? questionnaire::timeOfDay(written) : questionnaire::momentOf(written);
    const bool isDay = type != "Date" || written.find('T') == std::string::npos;
    if (!moment || !isDay) {
      return check(
          false, isTime ? "this is no time of day" : "\"" + written + "\" is not a date of the calendar",
          isTime ? "write hh:mm:ss" : "write YYYY-MM-DD, or YYYY-MM or YYYY when the day is not known");
    }
    if (!check(questionnaire::hasZoneOrNoHours(written) || isTime,
               "\"" + written + "\" has a time of day without a zone",
               "write it like 2026-11-25T09:30:00+01:00")) {
      return false;
    }
    checkMomentLimit(*moment, question_.least, true);
    checkMomentLimit(*moment, question_.most, false);
    return true;
  }

  void checkMomentLimit(const questionnaire::Moment& moment, const std::optional<Limit>& limit,
                        bool isLeast) {
    if (!limit || limit->number) return;
    const auto bound =
        limit->type == "Time" ? questionnaire::timeOfDay(limit->text) : questionnaire::momentOf(limit->text);
    const auto op = isLeast ? EnableOperator::Less : EnableOperator::Greater;
    if (bound && questionnaire::compareMoments(moment, *bound, op) == Truth::True) outside(*limit, isLeast);
  }

  bool checkText(const std::string& type) {
    const bool isBlank =
        !value_.isString() || value_.string().find_first_not_of(" \t\r\n") == std::string::npos;
    if (!check(!isBlank, "the text is empty or no string", "write the words, or leave the answer out"))
      return false;
    const bool isUri = type != "Uri" || value_.string().find_first_of(" \t\r\n") == std::string::npos;
    return check(isUri, "a web address holds no spaces", "write it without");
  }

  void checkLength(const std::string& type) {
    const bool isCounted = type == "String" || type == "Uri" || type == "Integer" || type == "Decimal";
    if (!isCounted) return;
    const auto length = static_cast<long long>(
        base::countCodePoints(value_.isString() ? value_.string() : value_.numberText()));
    if (question_.maxLength && length > *question_.maxLength) {
      issue(value_, "the text is longer than " + std::to_string(*question_.maxLength) + " characters",
            "shorten it");
    }
    if (question_.minLength && length < *question_.minLength) {
      issue(value_, "the text is shorter than " + std::to_string(*question_.minLength) + " characters",
            "write it in full");
    }
  }

  void checkRegex() {
    if (question_.regex.empty() || !(value_.isString() || value_.isNumber())) return;
    const std::string& text = value_.isString() ? value_.string() : value_.numberText();
    switch (matchesWhole(question_.regex, text)) {
      case Truth::True:
        return;
      case Truth::False:
        issue(value_,
              "\"" + text + "\" has not the form " +
                  (question_.entryFormat.empty() ? question_.regex : question_.entryFormat),
              "write it in that form");
        return;
      case Truth::Unknown:
        issues_.add({base::Severity::Note, value_.place(), question_.linkId,
                     "the form of the text cannot be checked with " + question_.regex, "check it by eye"});
    }
  }

  const Occurrence& answer_;
  json::Node value_;
  const Item& question_;
  base::Issues& issues_;
};

}  // namespace

void checkAnswer(const Occurrence& answer, const Item& question, base::Issues& issues) {
  if (answer.value) AnswerChecker(answer, question, issues).check();
}

}  // namespace stile::answers
