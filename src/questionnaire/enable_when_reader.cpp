#include "questionnaire/enable_when_reader.h"

#include <array>
#include <utility>

#include "questionnaire/extension.h"
#include "questionnaire/quantity_reader.h"

namespace stile::questionnaire {
namespace {

constexpr std::array<std::pair<const char*, EnableOperator>, 7> kOperators{{
    {"exists", EnableOperator::Exists},
    {"=", EnableOperator::Equal},
    {"!=", EnableOperator::NotEqual},
    {">", EnableOperator::Greater},
    {"<", EnableOperator::Less},
    {">=", EnableOperator::GreaterOrEqual},
    {"<=", EnableOperator::LessOrEqual},
}};

constexpr std::array<const char*, 10> kAnswerTypes{"Boolean", "Decimal", "Integer", "Date",     "DateTime",
                                                   "Time",    "String",  "Coding",  "Quantity", "Reference"};

void readOperator(json::ObjectReader& reader, EnableWhen& condition) {
  const auto node = reader.require("operator");
  if (!node) return;
  const std::string word = reader.string("operator");
  for (const auto& [name, op] : kOperators) {
    if (word == name) {
      condition.op = op;
      return;
    }
  }
  reader.issue(*node, "\"" + word + "\" is no operator of enableWhen", "use exists, =, !=, >, <, >= or <=");
}

void readAnswer(json::ObjectReader& reader, const std::string& type, json::Node node, EnableWhen& condition,
                base::Issues& issues) {
  const std::string member = "answer" + type;
  condition.answerType = type;
  condition.answer = node;
  if (type == "Boolean") {
    condition.boolean = reader.boolean(member);
  } else if (type == "Integer") {
    if (const auto whole = reader.integer(member)) condition.number = base::Rational(*whole);
  } else if (type == "Decimal") {
    condition.number = reader.number(member);
  } else if (type == "Quantity") {
    if (const auto quantity = readOpenQuantity(node, reader.subject(), issues)) {
      condition.number = quantity->value;
      condition.unit = quantity->unit;
    }
  } else if (type == "Coding") {
    const CodingParts coding = readCoding(node, reader.subject(), issues);
    condition.text = coding.code;
    condition.system = coding.system;
  } else if (type == "Reference") {
    const auto reference = node.find("reference");
    if (reference && reference->isString()) {
      condition.text = reference->string();
    } else {
      reader.issue(node, "the reference to compare with names nothing", "write the member \"reference\"");
    }
  } else {
    condition.text = reader.string(member);
  }
}

EnableWhen readCondition(json::Node node, const std::string& subject, base::Issues& issues) {
  EnableWhen condition;
  condition.place = node.place();
  json::ObjectReader reader(node, subject, issues);
  if (!reader.isObject()) return condition;
  Extensions extensions(reader);
  condition.question = requireWords(reader, "question");
  readOperator(reader, condition);
  int given = 0;
  for (const char* type : kAnswerTypes) {
    const std::string member = std::string("answer") + type;
    const auto answer = reader.find(member);
    if (!answer) continue;
    if (++given == 1) readAnswer(reader, type, *answer, condition, issues);
  }
  if (given != 1) {
    reader.issue(node,
                 given == 0 ? "enableWhen has no answer to compare with"
                            : "enableWhen has more than one answer to compare with",
                 "give exactly one member such as answerBoolean or answerCoding");
  }
  acceptUnused(reader, {"question", "operator"});
  reader.finish();
  return condition;
}

}  // namespace

void readEnableWhen(json::ObjectReader& reader, Item& item, base::Issues& issues) {
  for (const json::Node& node : reader.array("enableWhen")) {
    item.enableWhen.push_back(readCondition(node, item.linkId, issues));
  }
  const auto behavior = reader.find("enableBehavior");
  reader.find("_enableBehavior");
  if (behavior) {
    const std::string word = reader.string("enableBehavior");
    item.enableAny = word == "any";
    if (word != "any" && word != "all") {
      reader.issue(*behavior, "enableBehavior must be all or any", "write \"all\" or \"any\"");
    }
  } else if (item.enableWhen.size() > 1) {
    base::Place place = item.enableWhen[1].place;
    issues.error(std::move(place), item.linkId, "two or more enableWhen need an enableBehavior",
                 "add \"enableBehavior\": \"all\" or \"any\"");
  }
}

}  // namespace stile::questionnaire
