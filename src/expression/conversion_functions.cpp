// Conversion (FHIRPath 2.0.0, 5.5): toX() and convertsToX().
#include <algorithm>
#include <array>

#include "expression/function_table.h"

namespace stile::expression {
namespace {

using Converted = std::optional<Item>;

bool isDigits(std::string_view text) {
  for (const char c : text) {
    if (c < '0' || c > '9') return false;
  }
  return !text.empty();
}

/// `(\+|-)?\d+`, with `(\.\d+)?` where a point is allowed.
bool isNumberText(std::string_view text, bool mayHavePoint) {
  if (text.starts_with('+') || text.starts_with('-')) text.remove_prefix(1);
  const std::size_t point = mayHavePoint ? text.find('.') : std::string_view::npos;
  if (point == std::string_view::npos) return isDigits(text);
  return isDigits(text.substr(0, point)) && isDigits(text.substr(point + 1));
}

std::string lowered(std::string_view text) {
  std::string result(text);
  for (char& c : result) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  return result;
}

Converted toBoolean(const Item& item) {
  if (item.isBoolean()) return Item::boolean(item.boolean());
  if (const auto number = item.number()) {
    if (number->value == base::Rational(1)) return Item::boolean(true);
    if (number->value == base::Rational(0)) return Item::boolean(false);
    return std::nullopt;
  }
  if (!item.isText() || item.text().size() > 5) return std::nullopt;
  const std::string text = lowered(item.text());
  for (const char* yes : {"true", "t", "yes", "y", "1", "1.0"}) {
    if (text == yes) return Item::boolean(true);
  }
  for (const char* no : {"false", "f", "no", "n", "0", "0.0"}) {
    if (text == no) return Item::boolean(false);
  }
  return std::nullopt;
}

Converted toInteger(const Item& item) {
  if (item.isInteger()) return Item::integer(item.integer());
  if (item.isBoolean()) return Item::integer(item.boolean() ? 1 : 0);
  if (!item.isText() || !isNumberText(item.text(), false)) return std::nullopt;
  const auto number = Decimal::parse(item.text());
  const auto whole = number ? number->truncated() : std::nullopt;
  return whole ? Converted(Item::integer(*whole)) : std::nullopt;
}

Converted toDecimal(const Item& item) {
  if (item.isBoolean()) return Item::decimal({item.boolean() ? 1 : 0, 1});
  if (const auto number = item.number()) return Item::decimal(*number);
  if (!item.isText() || !isNumberText(item.text(), true)) return std::nullopt;
  const auto number = Decimal::parse(item.text());
  return number ? Converted(Item::decimal(*number)) : std::nullopt;
}

Converted toText(const Item& item) {
  auto text = item.toText();
  return text ? Converted(Item::text(std::move(*text))) : std::nullopt;
}

Converted temporalOr(std::optional<Temporal> value) {
  return value ? Converted(Item::temporal(*value)) : std::nullopt;
}

Converted toDate(const Item& item) {
  std::optional<Temporal> value;
  if (item.isText()) {
    value = Temporal::parseDate(item.text());
  } else if (item.isTemporal() && item.temporal().kind != TemporalKind::Time) {
    value = item.temporal();
  }
  if (!value) return std::nullopt;
  Temporal date;
  date.precision = std::min(value->precision, Precision::Day);
  date.year = value->year;
  date.month = value->month;
  date.day = value->day;
  return Item::temporal(date);
}

Converted toDateTime(const Item& item) {
  if (item.isText()) return temporalOr(Temporal::parseDateTime(item.text()));
  if (!item.isTemporal() || item.temporal().kind == TemporalKind::Time) return std::nullopt;
  return Item::temporal(item.temporal().asDateTime());
}

Converted toTime(const Item& item) {
  if (item.isTemporal() && item.temporal().kind == TemporalKind::Time) return Item::temporal(item.temporal());
  if (!item.isText()) return std::nullopt;
  std::string_view text = item.text();
  if (text.starts_with('T')) text.remove_prefix(1);
  return temporalOr(Temporal::parseTime(text));
}

Converted toQuantity(const Item& item) {
  if (item.isBoolean()) return Item::quantity({{item.boolean() ? 1 : 0, 1}});
  if (const auto number = item.number()) return Item::quantity({*number});
  if (const auto quantity = item.quantity()) return Item::quantity(*quantity);
  if (!item.isText()) return std::nullopt;
  const auto quantity = Quantity::parse(item.text());
  return quantity ? Converted(Item::quantity(*quantity)) : std::nullopt;
}

using Convert = Converted (*)(const Item&);

template <Convert convert>
Collection to(Call& call) {
  const Item* item = call.single();
  if (!item) return {};
  if (item->isText()) call.machine.budget().scan(item->text().size());
  auto result = convert(*item);
  if (!result) return {};
  if (result->isText()) call.machine.budget().text(result->text().size());
  return {std::move(*result)};
}

template <Convert convert>
Collection convertsTo(Call& call) {
  const Item* item = call.single();
  if (!item) return {};
  if (item->isText()) call.machine.budget().scan(item->text().size());
  return {Item::boolean(convert(*item).has_value())};
}

/// toQuantity(unit): in that unit, where it can be.
std::optional<Quantity> inUnit(Call& call) {
  const Item* item = call.single();
  const auto result = item ? toQuantity(*item) : std::nullopt;
  if (!result) return std::nullopt;
  auto quantity = result->quantity();
  if (call.count() == 0) return quantity;
  const auto unit = call.textArgument(0);
  return unit ? expression::convert(*quantity, *unit) : std::nullopt;
}

Collection quantityOf(Call& call) {
  const auto quantity = inUnit(call);
  return quantity ? Collection{Item::quantity(*quantity)} : Collection{};
}

Collection convertsToQuantity(Call& call) {
  if (!call.single()) return {};
  return {Item::boolean(inUnit(call).has_value())};
}

Collection comparable(Call& call) {
  const Collection other = call.argument(0);
  const Item* left = call.single();
  const Item* right = call.machine.single(other, call.at(0));
  if (!left || !right) return {};
  const auto a = left->number() ? Quantity{*left->number()} : left->quantity();
  const auto b = right->number() ? Quantity{*right->number()} : right->quantity();
  return {Item::boolean(a && b && areComparable(*a, *b))};
}

constexpr std::array<FunctionEntry, 17> kConversionFunctions{{{"toBoolean", 0, 0, to<toBoolean>},
                                                    {"toInteger", 0, 0, to<toInteger>},
                                                    {"toDecimal", 0, 0, to<toDecimal>},
                                                    {"toString", 0, 0, to<toText>},
                                                    {"toDate", 0, 0, to<toDate>},
                                                    {"toDateTime", 0, 0, to<toDateTime>},
                                                    {"toTime", 0, 0, to<toTime>},
                                                    {"toQuantity", 0, 1, quantityOf},
                                                    {"convertsToBoolean", 0, 0, convertsTo<toBoolean>},
                                                    {"convertsToInteger", 0, 0, convertsTo<toInteger>},
                                                    {"convertsToDecimal", 0, 0, convertsTo<toDecimal>},
                                                    {"convertsToString", 0, 0, convertsTo<toText>},
                                                    {"convertsToDate", 0, 0, convertsTo<toDate>},
                                                    {"convertsToDateTime", 0, 0, convertsTo<toDateTime>},
                                                    {"convertsToTime", 0, 0, convertsTo<toTime>},
                                                    {"convertsToQuantity", 0, 1, convertsToQuantity},
                                                    {"comparable", 1, 1, comparable}}};

}  // namespace

std::span<const FunctionEntry> conversionFunctions() {
  return kConversionFunctions;
}

}  // namespace stile::expression
