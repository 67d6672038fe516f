#include "questionnaire/limit_reader.h"

#include <algorithm>
#include <utility>

#include "base/unit.h"
#include "questionnaire/item_type.h"
#include "questionnaire/moment.h"
#include "questionnaire/quantity_reader.h"

namespace stile::questionnaire {
namespace {

/// Reads the limits of one item.
class LimitReader {
 public:
  LimitReader(json::ObjectReader& reader, Extensions& extensions, Item& item, base::Issues& issues)
      : reader_(reader), extensions_(extensions), item_(item), issues_(issues) {}

  void read() {
    item_.least = plainLimit(extension_url::kMinValue);
    item_.most = plainLimit(extension_url::kMaxValue);
    if (const auto least = quantityLimit(extension_url::kMinQuantity)) item_.least = least;
    if (const auto most = quantityLimit(extension_url::kMaxQuantity)) item_.most = most;
    item_.minValue = inFirstUnit(item_.least);
    item_.maxValue = inFirstUnit(item_.most);
    item_.maxLength = notNegative(reader_.find("maxLength"), "maxLength");
    if (item_.maxLength && !hasLength()) {
      reader_.issue(*reader_.find("maxLength"),
                    std::string("maxLength does not fit the type ") + fhirName(item_.type), "remove it");
    }
    item_.minLength = count(extension_url::kMinLength);
    item_.maxDecimalPlaces = count(extension_url::kMaxDecimalPlaces);
    item_.minOccurs = count(extension_url::kMinOccurs);
    item_.maxOccurs = count(extension_url::kMaxOccurs);
    if (const auto regex = extensions_.only(extension_url::kRegex, "valueString", json::Kind::String)) {
      item_.regex = regex->string();
    }
    if (const auto format =
            extensions_.only(extension_url::kEntryFormat, "valueString", json::Kind::String)) {
      item_.entryFormat = format->string();
    }
    if (const auto size = extensions_.only(extension_url::kMaxSize, "valueDecimal", json::Kind::Number)) {
      item_.maxSizeBytes = size->number();
    }
    for (const json::Node& type :
         extensions_.each(extension_url::kMimeType, "valueCode", json::Kind::String)) {
      item_.mimeTypes.push_back(type.string());
    }
    for (const json::Node& type :
         extensions_.each(extension_url::kReferenceResource, "valueCode", json::Kind::String)) {
      item_.referenceTypes.push_back(type.string());
    }
  }

 private:
  /// The standard's rule que-10.
  bool hasLength() const {
    switch (item_.type) {
      case ItemType::Boolean:
      case ItemType::Decimal:
      case ItemType::Integer:
      case ItemType::String:
      case ItemType::Text:
      case ItemType::Url:
      case ItemType::OpenChoice:
        return true;
      default:
        return false;
    }
  }

  std::optional<long long> notNegative(const std::optional<json::Node>& node, const std::string& name) {
    if (!node) return std::nullopt;
    const auto value = node->isNumber() ? node->integer() : std::nullopt;
    if (!value || *value < 0) {
      reader_.issue(*node, name + " must be a whole number of 0 or more", "write such a number");
      return std::nullopt;
    }
    return value;
  }

  std::optional<long long> count(std::string_view url) {
    const std::string name(url.substr(url.rfind('/') + 1));
    return notNegative(extensions_.only(url, "valueInteger", json::Kind::Number), name);
  }

  std::optional<Limit> plainLimit(std::string_view url) {
    const auto found = extensions_.all(url);
    if (found.empty()) return std::nullopt;
    for (const char* type : {"Integer", "Decimal", "Date", "DateTime", "Time", "Quantity"}) {
      const auto value = found.front().find(memberName("value", type));
      if (!value) continue;
      if (fits(type)) return std::string(type) == "Quantity" ? quantityOf(*value) : limitOf(type, *value);
      break;
    }
    reader_.issue(found.front(), "this limit is not understood",
                  std::string("give it in the type of the question, ") + fhirName(item_.type));
    return std::nullopt;
  }

  bool fits(const std::string& type) const {
    if (type == "Integer" || type == "Decimal") {
      return item_.type == ItemType::Integer || item_.type == ItemType::Decimal;
    }
    if (type == "Time") return item_.type == ItemType::Time;
    if (type == "Quantity") return item_.type == ItemType::Quantity;
    return item_.type == ItemType::Date || item_.type == ItemType::DateTime;
  }

  std::optional<Limit> limitOf(const std::string& type, json::Node value) {
    Limit limit;
    limit.type = type;
    if (type == "Integer" || type == "Decimal") {
      limit.number = value.isNumber() ? value.number() : std::nullopt;
      if (limit.number) limit.text = value.numberText();
    } else if (value.isString()) {
      const auto moment = type == "Time" ? timeOfDay(value.string()) : momentOf(value.string());
      if (moment) limit.text = value.string();
    }
    if (!limit.text.empty()) return limit;
    reader_.issue(value, "this limit is not understood", "write it as the type " + type + " asks");
    return std::nullopt;
  }

  std::optional<Limit> quantityLimit(std::string_view url) {
    const auto node = extensions_.only(url, "valueQuantity", json::Kind::Object);
    return node ? quantityOf(*node) : std::nullopt;
  }

  std::optional<Limit> quantityOf(json::Node node) {
    const auto quantity = readOpenQuantity(node, item_.linkId, issues_);
    if (!quantity) return std::nullopt;
    Limit limit;
    limit.type = "Quantity";
    limit.number = quantity->value;
    limit.unit = quantity->unit;
    limit.text = quantity->valueText + (quantity->unitWords.empty() ? "" : " " + quantity->unitWords);
    const bool hasUnits = !item_.units.empty() && !quantity->unit.empty();
    if (hasUnits && !inFirstUnit(limit)) {
      reader_.issue(node, "the limit's unit " + quantity->unit + " does not fit the units of the question",
                    "give the limit in the question's first unit");
    }
    return limit;
  }

  std::optional<base::Rational> inFirstUnit(const std::optional<Limit>& limit) const {
    if (!limit || limit->type != "Quantity") return limit ? limit->number : std::nullopt;
    const auto unit = base::parseUnit(limit->unit);
    const auto first = item_.units.empty() ? std::nullopt : base::parseUnit(item_.units.front());
    return unit && first ? base::convert(*limit->number, *unit, *first) : std::nullopt;
  }

  json::ObjectReader& reader_;
  Extensions& extensions_;
  Item& item_;
  base::Issues& issues_;
};

}  // namespace

void readLimits(json::ObjectReader& reader, Extensions& extensions, Item& item, base::Issues& issues) {
  LimitReader(reader, extensions, item, issues).read();
}

void readInitial(json::ObjectReader& reader, Item& item, base::Issues& issues) {
  const auto nodes = reader.array("initial");
  if (nodes.empty()) return;
  if (!isQuestion(item.type)) {
    if (item.type == ItemType::Display) return;  // said already
    reader.issue(nodes.front(), "a group cannot have an initial value", "give it to a question");
    return;
  }
  if (nodes.size() > 1 && !item.repeats) {
    reader.issue(nodes[1], "only a question that repeats may have several initial values",
                 "keep one of them");
  }
  const auto allowed = answerTypes(item);
  for (const json::Node& node : nodes) {
    json::ObjectReader initial(node, item.linkId, issues);
    if (!initial.isObject()) continue;
    Extensions extensions(initial);
    std::vector<Initial> given;
    for (const std::string& type : allAnswerTypes()) {
      const auto value = initial.find(memberName("value", type));
      initial.find(memberName("_value", type));
      if (value) given.push_back({type, *value});
    }
    initial.finish();
    if (given.size() != 1) {
      initial.issue(node, given.empty() ? "the initial value is missing" : "an initial value has one type",
                    "give one member such as valueString");
    } else if (std::find(allowed.begin(), allowed.end(), given.front().type) == allowed.end()) {
      initial.issue(given.front().value,
                    memberName("value", given.front().type) + " does not fit a question of the type " +
                        fhirName(item.type),
                    "start with value" + allowed.front());
    } else {
      item.initial.push_back(given.front());
    }
  }
}

}  // namespace stile::questionnaire
