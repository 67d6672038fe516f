#include "rules/limits_reader.h"

#include "expression/json_origin.h"
#include "json/reader.h"

namespace stile::rules {
namespace {

using json::Node;
using json::ObjectReader;
using limits::Bay;
using Terms = std::map<std::string, Term, std::less<>>;

/// Reads an id of one of the ordered scales.
template <class T>
void readScale(ObjectReader& reader, const char* key, std::optional<T> (*parse)(std::string_view), T& into) {
  const auto node = reader.find(key);
  if (!node) return;
  const auto value = node->isString() ? parse(node->string()) : std::nullopt;
  if (value)
    into = *value;
  else
    reader.issue(*node, std::string(key) + " has no such step", "see the table of limits in DEVELOPERS.md");
}

template <class T>
void readPerBay(ObjectReader& parent, const char* key, const LimitsContext& context, base::Issues& issues,
                std::optional<T> (*parse)(std::string_view), limits::PerBay<T>& into) {
  const auto node = parent.find(key);
  if (!node) return;
  ObjectReader reader(*node, context.subject, issues);
  if (!reader.isObject()) return;
  if (reader.find("both")) {
    T value{};
    readScale<T>(reader, "both", parse, value);
    into = {value, value};
  } else {
    readScale<T>(reader, "aerobic", parse, into.aerobic);
    readScale<T>(reader, "strength", parse, into.strength);
  }
  reader.finish();
}

void checkTerm(const Terms& terms, const std::string& id, Node at, const char* what, const LimitsContext& context,
               base::Issues& issues) {
  if (terms.find(id) != terms.end()) return;
  issues.error(at.place(), context.subject, "there is no " + std::string(what) + " \"" + id + "\"",
               "use a word of rules/vocabulary.json or add it there");
}

std::set<std::string> readTermSet(ObjectReader& reader, const char* key, const Terms& terms, const char* what,
                                  const LimitsContext& context, base::Issues& issues) {
  std::set<std::string> ids;
  for (const Node& node : reader.array(key)) {
    if (!node.isString()) {
      reader.issue(node, std::string(key) + " holds words only");
      continue;
    }
    checkTerm(terms, node.string(), node, what, context, issues);
    ids.insert(node.string());
  }
  return ids;
}

/// A side is a word or `%fact`; an unknown fact means both sides.
void readSide(ObjectReader& reader, const LimitsContext& context, base::Issues& issues, limits::Side& side,
              int& sideSlot) {
  const auto node = reader.find("side");
  if (!node) return;
  const std::string text = node->isString() ? node->string() : std::string();
  if (!text.empty() && text[0] == '%') {
    const auto symbol = context.symbols.lookup(std::string_view(text).substr(1));
    if (!symbol || symbol->type.kind != expression::ValueKind::Code || !symbol->usable.empty())
      issues.error(node->place(), context.subject, "the side must be a code fact that can be used here",
                   "name a fact with the options left and right");
    else
      sideSlot = symbol->slot;
  } else if (const auto known = limits::sideOf(text)) {
    side = *known;
  } else {
    reader.issue(*node, "a side is left, right, both or a fact such as %replacementSide");
  }
}

LimitsTemplate::Cap readCap(Node node, const LimitsContext& context, base::Issues& issues) {
  LimitsTemplate::Cap cap;
  ObjectReader reader(node, context.subject, issues);
  cap.movement = reader.requireString("movement");
  checkTerm(context.vocabulary.movements, cap.movement, node, "movement", context, issues);
  readSide(reader, context, issues, cap.side, cap.sideSlot);
  readScale(reader, "qualifier", limits::qualifierOf, cap.qualifier);
  if (const auto degrees = reader.require("degrees")) cap.degrees = readAmount(*degrees, context, issues);
  reader.finish();
  return cap;
}

LimitsTemplate::Ban readBan(Node node, const LimitsContext& context, base::Issues& issues) {
  LimitsTemplate::Ban ban;
  if (node.isString()) {
    ban.ban = node.string();
  } else {
    ObjectReader reader(node, context.subject, issues);
    ban.ban = reader.requireString("ban");
    readSide(reader, context, issues, ban.side, ban.sideSlot);
    reader.finish();
  }
  checkTerm(context.vocabulary.bans, ban.ban, node, "ban", context, issues);
  return ban;
}

void readDoses(ObjectReader& parent, const char* key, bool isFloor, const LimitsContext& context, base::Issues& issues,
               LimitsTemplate& into) {
  const auto node = parent.find(key);
  if (!node) return;
  const auto& names = isFloor ? doseFloorNames() : doseCapNames();
  for (std::size_t i = 0; node->isObject() && i < node->size(); ++i) {
    const std::string& name = node->keyAt(i);
    if (names.count(name) == 0)
      issues.error(node->keyPlaceAt(i), context.subject, "there is no dose \"" + name + "\"",
                   "see the table of limits in DEVELOPERS.md");
    into.doses.push_back({name, readAmount(node->at(i), context, issues), isFloor});
  }
}

void readReferrals(ObjectReader& parent, const LimitsContext& context, base::Issues& issues, limits::Limits& into) {
  for (const Node& node : parent.array("referrals")) {
    ObjectReader reader(node, context.subject, issues);
    const std::string service = reader.requireString("to");
    checkTerm(context.vocabulary.services, service, node, "service", context, issues);
    limits::Limits one;
    limits::Referral& referral = one.referrals[service];
    if (!reader.find("within")) reader.issue(node, "a referral says within what time", "add \"within\"");
    readScale(reader, "within", limits::withinOf, referral.within);
    const auto keep = [](std::set<std::string>& set, std::string text) {
      if (!text.empty()) set.insert(std::move(text));
    };
    keep(referral.why, reader.requireString("why"));
    keep(referral.ask, reader.string("ask"));
    keep(referral.meanwhile, reader.string("meanwhile"));
    one.action = limits::actionFor(referral.within);
    reader.finish();
    into = join(into, one);
  }
}

void readStops(ObjectReader& parent, const LimitsContext& context, base::Issues& issues, LimitsTemplate& into) {
  for (const Node& node : parent.array("stopValues")) {
    ObjectReader reader(node, context.subject, issues);
    LimitsTemplate::Stop stop;
    stop.key.measure = reader.requireString("measure");
    stop.key.unit = reader.requireString("unit");
    const auto below = reader.find("below");
    const auto above = reader.find("above");
    if (static_cast<bool>(below) == static_cast<bool>(above)) {
      reader.issue(node, "a stop value has either \"below\" or \"above\"");
    } else {
      stop.key.below = below.has_value();
      stop.amount = readAmount(below ? *below : *above, context, issues);
      into.stops.push_back(stop);
    }
    reader.finish();
  }
}

std::optional<Amount> readOptionalAmount(ObjectReader& reader, const char* key, const LimitsContext& context,
                                         base::Issues& issues) {
  const auto node = reader.find(key);
  if (!node) return std::nullopt;
  return readAmount(*node, context, issues);
}

}  // namespace

const std::set<std::string, std::less<>>& doseCapNames() {
  static const std::set<std::string, std::less<>> names{
      "aerobicMinutesPerSession", "aerobicDaysPerWeek",  "aerobicEffort",      "strengthSets",   "strengthRepetitions",
      "strengthDaysPerWeek",      "strengthEffort",      "stretchHoldSeconds", "balanceMinutes", "sessionMinutes"};
  return names;
}

const std::set<std::string, std::less<>>& doseFloorNames() {
  static const std::set<std::string, std::less<>> names{"warmUpMinutes", "coolDownMinutes", "restSeconds",
                                                        "hoursBetweenStrength", "repetitionsInReserve"};
  return names;
}

Amount readAmount(Node node, const LimitsContext& context, base::Issues& issues) {
  Amount amount;
  if (node.isNumber()) {
    amount.fixed = node.number();
    return amount;
  }
  ObjectReader reader(node, context.subject, issues);
  if (!reader.isObject()) return amount;
  const std::string text = reader.requireString("value");
  if (const auto value = reader.find("value"); value && value->isString()) {
    expression::Type number;
    number.kind = expression::ValueKind::Number;
    const expression::JsonOrigin origin(*value);
    // The number keeps the unit of its facts; the member's name says what is meant.
    amount.computed = expression::Program::compile(text, context.symbols, std::nullopt, origin, context.subject, issues);
    if (amount.computed && amount.computed->type().kind != expression::ValueKind::Number)
      issues.error(value->place(), context.subject, "this must be a number", "use a number fact or arithmetic");
  }
  const auto strictest = reader.number("ifUnknown");
  if (!strictest) reader.issue(node, "a computed number says which value holds when it is unknown", "add \"ifUnknown\", the strictest value");
  amount.ifUnknown = strictest.value_or(base::Rational(0));
  reader.finish();
  return amount;
}

LimitsTemplate readLimits(Node node, const LimitsContext& context, base::Issues& issues) {
  LimitsTemplate result;
  ObjectReader reader(node, context.subject, issues);
  if (!reader.isObject()) return result;
  limits::Limits& fixed = result.fixed;
  readScale(reader, "action", limits::actionOf, fixed.action);
  readPerBay<limits::Clearance>(reader, "clearance", context, issues, limits::clearanceOf, fixed.clearance);
  readPerBay<limits::Rung>(reader, "ceiling", context, issues, limits::rungOf, fixed.ceiling);
  for (const Node& cap : reader.array("caps")) result.caps.push_back(readCap(cap, context, issues));
  for (const Node& ban : reader.array("bans")) result.bans.push_back(readBan(ban, context, issues));
  if (const auto load = reader.find("load")) {
    ObjectReader loads(*load, context.subject, issues);
    result.loadKilograms = readOptionalAmount(loads, "kilograms", context, issues);
    result.loadPercentOfMaximum = readOptionalAmount(loads, "percentOfMaximum", context, issues);
    loads.finish();
  }
  if (const auto rate = reader.find("heartRateCeiling")) {
    ObjectReader rates(*rate, context.subject, issues);
    result.heartRatePerMinute = readOptionalAmount(rates, "perMinute", context, issues);
    rates.finish();
  }
  readStops(reader, context, issues, result);
  readDoses(reader, "doseCaps", false, context, issues, result);
  readDoses(reader, "doseFloors", true, context, issues, result);
  fixed.settings = readTermSet(reader, "settings", context.vocabulary.settings, "setting", context, issues);
  fixed.timing = readTermSet(reader, "timing", context.vocabulary.timing, "timing", context, issues);
  readScale(reader, "effortGuide", limits::effortGuideOf, fixed.effortGuide);
  readScale(reader, "progression", limits::progressionOf, fixed.progression);
  readScale(reader, "supervision", limits::supervisionOf, fixed.supervision);
  for (const std::string& check : reader.strings("checks")) fixed.checks.insert(check);
  for (const std::string& question : reader.strings("questions")) fixed.questions.insert(question);
  readReferrals(reader, context, issues, fixed);
  reader.finish();
  return result;
}

}  // namespace stile::rules
