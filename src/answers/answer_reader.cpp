#include "answers/answer_reader.h"

#include <algorithm>
#include <utility>

#include "base/near_names.h"
#include "base/utf8.h"
#include "json/reader.h"
#include "questionnaire/extension.h"
#include "questionnaire/item_type.h"
#include "questionnaire/quantity_reader.h"

namespace stile::answers {
namespace {

using questionnaire::Item;
using questionnaire::ItemType;
using questionnaire::Option;

/// Reads the value of one answer; each method takes one kind of value.
class AnswerReader {
 public:
  AnswerReader(json::Node node, const Item& question, base::Issues& issues)
      : reader_(node, question.linkId, issues), question_(question), issues_(issues) {}

  ReadAnswer read() {
    ReadAnswer result;
    if (!reader_.isObject()) return result;
    questionnaire::Extensions extensions(reader_);
    result.children = reader_.array("item");
    std::vector<std::string> given;
    for (const std::string& type : questionnaire::allAnswerTypes()) {
      const std::string member = questionnaire::memberName("value", type);
      if (reader_.find(member)) given.push_back(type);
      reader_.find("_" + member);
    }
    reader_.finish();
    if (given.size() == 1) {
      readValue(given.front());
    } else if (given.empty()) {
      issue(reader_.node(), "the answer has no value",
            "give a value, or leave the answer out and state a data-absent-reason on the item");
    } else {
      issue(reader_.node(), "the answer has more than one value", "give each value an answer of its own");
    }
    if (isGood_) {
      answer_.place = reader_.node().place();
      result.answer = std::move(answer_);
    }
    return result;
  }

 private:
  void issue(json::Node at, std::string message, std::string remedy) {
    isGood_ = false;
    reader_.issue(at, std::move(message), std::move(remedy));
  }

  void readValue(const std::string& type) {
    const auto allowed = questionnaire::answerTypes(question_);
    const std::string member = questionnaire::memberName("value", type);
    const json::Node node = *reader_.find(member);
    if (std::find(allowed.begin(), allowed.end(), type) == allowed.end()) {
      issue(node, member + " does not fit a question of the type " + questionnaire::fhirName(question_.type),
            "answer with value" + (allowed.empty() ? std::string() : allowed.front()));
      return;
    }
    if (questionnaire::isChoice(question_.type)) {
      readChoice(type, node);
    } else if (type == "Boolean") {
      answer_.boolean = reader_.boolean(member);
      isGood_ = isGood_ && answer_.boolean.has_value();
    } else if (type == "Integer" || type == "Decimal") {
      readNumber(type, node);
    } else if (type == "Quantity") {
      readQuantity(node);
    } else if (type == "Date") {
      answer_.date = readDate(node, question_.linkId, issues_);
      isGood_ = answer_.date.has_value();
    } else if (type == "DateTime") {
      answer_.date = readDateTime(node, question_.linkId, issues_);
      isGood_ = answer_.date.has_value();
    } else if (type == "Time" && !(node.isString() && isTimeOfDay(node.string()))) {
      issue(node, "this is no time of day", "write hh:mm:ss");
    } else if (type == "Time" || type == "String" || type == "Uri") {
      readText(node);
    } else {
      issue(node, "answers of the type " + type + " cannot be kept", "leave the answer out");
    }
  }

  void readText(json::Node node) {
    if (!node.isString() || node.string().find_first_not_of(" \t\r\n") == std::string::npos) {
      issue(node, "the text is empty or no string", "write the words, or leave the answer out");
      return;
    }
    if (question_.maxLength &&
        static_cast<long long>(base::codePoints(node.string()).size()) > *question_.maxLength) {
      issue(node, "the text is longer than " + std::to_string(*question_.maxLength) + " characters",
            "shorten it");
      return;
    }
    answer_.text = node.string();
  }

  void readNumber(const std::string& type, json::Node node) {
    if (!node.isNumber()) {
      issue(node, "a number is needed here", "write it as digits without quotes");
      return;
    }
    const auto number = node.number();
    if (!number) {
      issue(node, "the number " + node.numberText() + " is too long or too large",
            "write it with fewer digits");
      return;
    }
    if (type == "Integer" && !node.integer()) {
      issue(node, node.numberText() + " is not a whole number", "give a whole number");
      return;
    }
    answer_.number = *number;
    answer_.numberText = node.numberText();
    checkLimits(node, *number, {});
  }

  void readQuantity(json::Node node) {
    const auto quantity = questionnaire::readQuantity(node, question_.linkId, issues_);
    if (!quantity) {
      isGood_ = false;
      return;
    }
    const auto& units = question_.units;
    if (std::find(units.begin(), units.end(), quantity->unit) == units.end()) {
      refuseUnit(node, quantity->unit);
      return;
    }
    answer_.number = quantity->value;
    answer_.numberText = quantity->valueText;
    answer_.unit = quantity->unit;
    const auto from = base::parseUnit(quantity->unit);
    const auto to = base::parseUnit(units.front());
    const auto converted = from && to ? base::convert(quantity->value, *from, *to) : std::nullopt;
    if (converted) checkLimits(node, *converted, " " + units.front());
  }

  void refuseUnit(json::Node node, const std::string& unit) {
    const auto given = base::parseUnit(unit);
    std::string list;
    bool isComparable = false;
    for (const std::string& offered : question_.units) {
      list += (list.empty() ? "" : " or ") + offered;
      const auto other = base::parseUnit(offered);
      isComparable = isComparable || (given && other && base::comparable(*given, *other));
    }
    const auto code = node.find("code");
    issue(code ? *code : node,
          isComparable ? "the unit " + unit + " is not offered by this question"
                       : "the unit " + unit + " cannot be compared with the units of this question",
          list.empty() ? "leave the answer out" : "give the value in " + list);
  }

  void checkLimits(json::Node node, const base::Rational& value, const std::string& unit) {
    if (question_.minValue && value < *question_.minValue) {
      issue(node, "the value is below " + question_.minValue->toText() + unit, "check the value");
    } else if (question_.maxValue && value > *question_.maxValue) {
      issue(node, "the value is above " + question_.maxValue->toText() + unit, "check the value");
    }
  }

  void readChoice(const std::string& type, json::Node node) {
    std::string code;
    std::string system;
    if (type == "Coding") {
      if (readUncoded(node)) return;
      const auto coding = questionnaire::readCoding(node, question_.linkId, issues_);
      code = coding.code;
      system = coding.system;
    } else {
      code = node.isString() ? node.string() : node.isNumber() ? node.numberText() : std::string();
    }
    if (code.empty()) {
      isGood_ = false;
      if (type != "Coding")
        reader_.issue(node, "the answer is empty", "name an option, or leave the answer out");
      return;
    }
    const Option* option = optionOf(code);
    if (option && (system.empty() || system == option->system)) {
      answer_.code = code;
    } else if (question_.type == ItemType::OpenChoice && type == "String") {
      readText(node);
    } else if (option) {
      issue(node, "the option \"" + code + "\" is not of the system " + system,
            "its system is " + (option->system.empty() ? "left out" : option->system));
    } else {
      issue(node, "the option \"" + code + "\" is not offered by this question", remedyForOption(code));
    }
  }

  /// An open choice may come as a Coding that has only words.
  bool readUncoded(json::Node node) {
    const auto display = node.find("display");
    if (question_.type != ItemType::OpenChoice || node.find("code") || !display || !display->isString())
      return false;
    readText(*display);
    return true;
  }

  const Option* optionOf(const std::string& code) const {
    for (const Option& option : question_.options) {
      if (option.code == code) return &option;
    }
    return nullptr;
  }

  std::string remedyForOption(const std::string& code) const {
    std::vector<std::string> codes;
    std::string list;
    for (const Option& option : question_.options) {
      codes.push_back(option.code);
      list += (list.empty() ? "" : ", ") + option.code;
    }
    return base::didYouMean(code, codes, "the options are " + list);
  }

  json::ObjectReader reader_;
  const Item& question_;
  base::Issues& issues_;
  Answer answer_;
  bool isGood_ = true;
};

bool isSame(const Answer& a, const Answer& b) {
  return a.code == b.code && a.text == b.text;
}

}  // namespace

ReadAnswer readAnswer(json::Node node, const Item& question, base::Issues& issues) {
  return AnswerReader(node, question, issues).read();
}

void checkTogether(const std::vector<Answer>& answers, const Item& question, base::Issues& issues) {
  for (std::size_t i = 0; i < answers.size(); ++i) {
    // The same number or word may well come twice; the same option may not.
    for (std::size_t j = 0; j < i && questionnaire::isChoice(question.type); ++j) {
      if (!isSame(answers[i], answers[j])) continue;
      issues.error(answers[i].place, question.linkId, "the same answer stands twice", "keep one of them");
      break;
    }
  }
  if (answers.size() < 2) return;
  for (const Answer& answer : answers) {
    for (const Option& option : question.options) {
      if (!option.isExclusive || answer.code != option.code) continue;
      issues.error(answer.place, question.linkId, "\"" + option.code + "\" excludes the other answers given",
                   "keep either this answer or the others");
    }
  }
}

}  // namespace stile::answers
