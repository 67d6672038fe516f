#include "rules/rule_reader.h"

#include <array>

#include "expression/json_origin.h"
#include "json/reader.h"
#include "rules/limits_reader.h"

namespace stile::rules {
namespace {

using json::Node;
using json::ObjectReader;

constexpr std::array kModes{"cautious", "gate", "lowest", "pass"};
constexpr std::array kKeys{"none", "clearance", "report", "date", "measurement", "assessment", "answer"};

template <class Enum, std::size_t N>
std::optional<Enum> named(const std::array<const char*, N>& names, const std::string& id) {
  for (std::size_t i = 0; i < N; ++i)
    if (id == names[i]) return static_cast<Enum>(i);
  return std::nullopt;
}

/// Compiles a condition that stands in a member of the rule.
std::optional<expression::Program> readCondition(ObjectReader& reader, const char* key,
                                                 const expression::SymbolTable& symbols, base::Issues& issues) {
  const auto node = reader.find(key);
  if (!node) return std::nullopt;
  if (!node->isString()) {
    reader.issue(*node, std::string(key) + " must be a condition in quotes");
    return std::nullopt;
  }
  const expression::JsonOrigin origin(*node);
  return expression::Program::compile(node->string(), symbols, expression::Type{}, origin, reader.subject(), issues);
}

std::optional<Sentence> readSentence(ObjectReader& reader, const char* key, base::Issues& issues) {
  const auto node = reader.find(key);
  if (!node) return std::nullopt;
  ObjectReader both(*node, reader.subject(), issues);
  Sentence sentence{both.requireString("clinician"), both.requireString("client")};
  both.finish();
  return sentence;
}

std::optional<base::Period> readPeriod(Node node, const std::string& subject, base::Issues& issues) {
  ObjectReader reader(node, subject, issues);
  const auto value = reader.integer("value");
  const auto unit = base::calendarUnit(reader.requireString("unit"));
  reader.finish();
  if (value && unit && *value >= 0 && *value < 100000) return base::Period{static_cast<int>(*value), *unit};
  reader.issue(node, "this is no period", R"(write {"value": 3, "unit": "mo"}; units are d, wk, mo, a)");
  return std::nullopt;
}

void readMaxAge(ObjectReader& reader, const expression::SymbolTable& symbols, base::Issues& issues, Rule& rule) {
  const auto node = reader.find("maxAge");
  if (!node) return;
  for (std::size_t i = 0; node->isObject() && i < node->size(); ++i) {
    const auto symbol = symbols.lookup(node->keyAt(i));
    if (!symbol) {
      issues.error(node->keyPlaceAt(i), rule.id, "there is no fact \"" + node->keyAt(i) + "\"", "name a fact of the dictionary");
      continue;
    }
    if (const auto period = readPeriod(node->at(i), rule.id, issues)) rule.maxAge[symbol->slot] = *period;
  }
}

void readUntil(ObjectReader& reader, const expression::SymbolTable& symbols, base::Issues& issues, Rule& rule) {
  const auto node = reader.find("until");
  if (!node) return;
  ObjectReader until(*node, rule.id, issues);
  if (const auto key = named<KeyKind>(kKeys, until.requireString("key")))
    rule.until.key = *key;
  else
    until.issue(*node, "no such key", "use clearance, report, date, measurement, assessment or answer");
  rule.until.say = until.requireString("say");
  rule.until.unchanged = readCondition(until, "unchanged", symbols, issues);
  until.finish();
}

void readGate(ObjectReader& reader, const Vocabulary& vocabulary, base::Issues& issues, Rule& rule) {
  const auto node = reader.find("gate");
  if (!node) return;
  ObjectReader gate(*node, rule.id, issues);
  limits::Gate result;
  result.measure = gate.requireString("measure");
  if (vocabulary.measures.find(result.measure) == vocabulary.measures.end())
    gate.issue(*node, "there is no measure \"" + result.measure + "\"", "use a measure of rules/vocabulary.json");
  result.clinician.insert(gate.requireString("clinician"));
  result.client.insert(gate.requireString("client"));
  gate.finish();
  rule.gate = result;
}

void readReviewed(ObjectReader& reader, base::Issues& issues, Rule& rule) {
  const auto node = reader.require("reviewed");
  if (!node) return;
  ObjectReader reviewed(*node, rule.id, issues);
  rule.reviewedDate = reviewed.requireString("date");
  rule.reviewedBy = reviewed.requireString("by");
  rule.isLicensed = reviewed.boolean("licensed").value_or(false);
  reviewed.finish();
}

void readModes(ObjectReader& reader, Node node, Rule& rule) {
  const std::string mode = reader.string("ifUnknown", "cautious");
  if (const auto known = named<IfUnknown>(kModes, mode))
    rule.ifUnknown = *known;
  else
    reader.issue(node, "ifUnknown has no mode \"" + mode + "\"", "use cautious, gate, lowest or pass");
  rule.passReason = reader.string("passReason");
  rule.passPolicy = reader.string("passPolicy");
  if (const auto unsure = reader.find("whenUnsure")) {
    rule.whenUnsure = unsure->isString() ? limits::actionOf(unsure->string()) : std::nullopt;
    if (!rule.whenUnsure) reader.issue(*unsure, "whenUnsure must be an action", "use routine, withinDays, sameDay or emergency");
  }
}

}  // namespace

const char* idOf(IfUnknown mode) { return kModes[static_cast<std::size_t>(mode)]; }
const char* idOf(KeyKind key) { return kKeys[static_cast<std::size_t>(key)]; }

std::optional<Rule> readRule(Node node, const std::string& topic, const std::string& file,
                             const facts::Dictionary& dictionary, const Vocabulary& vocabulary, base::Issues& issues) {
  ObjectReader reader(node, "rule", issues);
  if (!reader.isObject()) return std::nullopt;
  const std::string id = reader.requireString("id");
  reader.setSubject(id);
  const std::string group = reader.string("forEach");
  const facts::Dictionary::GroupView symbols(dictionary, group);

  auto when = readCondition(reader, "when", symbols, issues);
  if (!reader.find("when")) reader.issue(node, "a rule needs a condition", "add \"when\"");
  Rule rule{.id = id, .title = reader.requireString("title"), .topic = topic, .file = file,
            .when = when ? *when : *expression::Program::compile("true", symbols, expression::Type{},
                                                                 expression::TextOrigin("", "true"), id, issues),
            .forEach = group, .passReason = {}, .passPolicy = {}, .whenUnsure = {}, .then = {}, .meanwhile = {},
            .prefer = {}, .discourage = {}, .until = {}, .gate = {}, .maxAge = {}, .assessable = {}, .say = {},
            .sayOpen = {}, .sources = {}, .reviewedDate = {}, .reviewedBy = {}, .place = node.place()};
  readModes(reader, node, rule);
  const LimitsContext context{symbols, vocabulary, id};
  if (const auto then = reader.find("then")) rule.then = readLimits(*then, context, issues);
  if (const auto meanwhile = reader.find("meanwhile")) rule.meanwhile = readLimits(*meanwhile, context, issues);
  rule.prefer = reader.strings("prefer");
  rule.discourage = reader.strings("discourage");
  readUntil(reader, symbols, issues, rule);
  readGate(reader, vocabulary, issues, rule);
  readMaxAge(reader, symbols, issues, rule);
  rule.acute = reader.boolean("acute").value_or(false);
  rule.absolute = reader.boolean("absolute").value_or(false);
  rule.surgical = reader.boolean("surgical").value_or(false);
  rule.assessable = readCondition(reader, "assessable", symbols, issues);
  if (const auto say = readSentence(reader, "say", issues))
    rule.say = *say;
  else
    reader.issue(node, "a rule needs a sentence for the clinician and one for the client", "add \"say\"");
  rule.sayOpen = readSentence(reader, "sayOpen", issues);
  rule.sources = reader.strings("sources");
  readReviewed(reader, issues, rule);
  reader.finish();
  if (!when) return std::nullopt;
  return rule;
}

Check readCheck(Node node, const Vocabulary& vocabulary, base::Issues& issues) {
  ObjectReader reader(node, "check", issues);
  Check check;
  check.id = reader.requireString("id");
  reader.setSubject(check.id);
  check.place = node.place();
  check.measure = reader.string("measure");
  if (!check.measure.empty() && vocabulary.measures.find(check.measure) == vocabulary.measures.end())
    reader.issue(node, "there is no measure \"" + check.measure + "\"", "use a measure of rules/vocabulary.json");
  check.say = {reader.requireString("clinician"), reader.requireString("client")};
  check.sources = reader.strings("sources");
  reader.finish();
  return check;
}

Source readSource(Node node, base::Issues& issues) {
  ObjectReader reader(node, "source", issues);
  Source source;
  source.id = reader.requireString("id");
  reader.setSubject(source.id);
  source.citation = reader.requireString("citation");
  source.seen = reader.requireString("seen");
  source.confidence = reader.string("confidence");
  source.note = reader.string("note");
  if (source.seen != "read" && source.seen != "second-hand" && source.seen != "from memory" && source.seen != "policy")
    reader.issue(node, "a source says how it was seen", "use read, second-hand, from memory or policy");
  reader.finish();
  return source;
}

Policy readPolicy(Node node, base::Issues& issues) {
  ObjectReader reader(node, "policy", issues);
  Policy policy;
  policy.id = reader.requireString("id");
  reader.setSubject(policy.id);
  policy.title = reader.requireString("title");
  policy.question = reader.requireString("question");
  policy.value = reader.requireString("value");
  policy.decides = reader.requireString("decides");
  policy.sources = reader.strings("sources");
  for (const Node& entry : reader.array("alternatives")) {
    ObjectReader alternative(entry, policy.id, issues);
    policy.alternatives.emplace_back(alternative.requireString("code"), alternative.requireString("display"));
    alternative.strings("sources");
    alternative.finish();
  }
  reader.finish();
  return policy;
}

}  // namespace stile::rules
