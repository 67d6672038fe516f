#include "plan/doses_reader.h"

#include <algorithm>

#include "expression/json_origin.h"
#include "json/reader.h"

namespace stile::plan {
namespace {

using base::Rational;
using json::Node;
using json::ObjectReader;

class Reading {
 public:
  Reading(const facts::Dictionary& dictionary, std::vector<std::pair<std::string, base::Place>>& sources,
          base::Issues& issues)
      : dictionary_(dictionary), sources_(sources), issues_(issues) {}

  void scale(ObjectReader& root, Library::Doses& doses);
  void efforts(ObjectReader& root, Library::Doses& doses);
  void levels(ObjectReader& root, Library::Doses& doses);
  void current(ObjectReader& root, Library::Doses& doses);
  void heartRate(ObjectReader& root, Library::Doses& doses);
  void loadBands(ObjectReader& root, Library::Doses& doses);
  void growth(ObjectReader& root, Library::Doses& doses);
  void care(ObjectReader& root, Library::Doses& doses);
  void sentences(ObjectReader& root, Library::Doses& doses);
  void ranges(ObjectReader& root, Library::Doses& doses);
  std::vector<Purpose> purposes(ObjectReader& root);

 private:
  std::vector<std::string> sourcesOf(ObjectReader& reader);
  Rational requireNumber(ObjectReader& reader, std::string_view key);
  int requireInteger(ObjectReader& reader, std::string_view key);
  std::optional<limits::Rung> rung(ObjectReader& reader, std::string_view key);
  std::optional<Section> section(ObjectReader& reader, std::string_view key);
  std::optional<expression::Program> program(ObjectReader& reader, std::string_view key, const expression::Type& type);
  int slotOf(ObjectReader& reader, std::string_view key);

  const facts::Dictionary& dictionary_;
  std::vector<std::pair<std::string, base::Place>>& sources_;
  base::Issues& issues_;
};

std::vector<std::string> Reading::sourcesOf(ObjectReader& reader) {
  auto list = reader.strings("sources");
  if (list.empty()) reader.issue(reader.node(), "no source", "name one, or \"common practice, no source\"");
  for (const auto& id : list) sources_.emplace_back(id, reader.node().place());
  return list;
}

Rational Reading::requireNumber(ObjectReader& reader, std::string_view key) {
  if (!reader.require(key)) return 0;
  return reader.number(key).value_or(Rational(0));
}

int Reading::requireInteger(ObjectReader& reader, std::string_view key) {
  if (!reader.require(key)) return 0;
  const auto value = reader.integer(key).value_or(0);
  if (value >= 0 && value <= 100000) return static_cast<int>(value);
  reader.issue(reader.node(), "\"" + std::string(key) + "\" is out of bounds", "use a whole number up to 100000");
  return 0;
}

std::optional<limits::Rung> Reading::rung(ObjectReader& reader, std::string_view key) {
  const std::string id = reader.requireString(key);
  const auto value = limits::rungOf(id);
  if (!value && !id.empty()) reader.issue(reader.node(), "\"" + id + "\" is no rung");
  return value;
}

std::optional<Section> Reading::section(ObjectReader& reader, std::string_view key) {
  const std::string id = reader.requireString(key);
  const auto value = sectionOf(id);
  if (!value && !id.empty()) reader.issue(reader.node(), "\"" + id + "\" is no section");
  return value;
}

std::optional<expression::Program> Reading::program(ObjectReader& reader, std::string_view key,
                                                    const expression::Type& type) {
  const auto node = reader.find(key);
  if (!node) return std::nullopt;
  if (!node->isString()) {
    reader.issue(*node, "\"" + std::string(key) + "\" must be an expression in quotes");
    return std::nullopt;
  }
  const expression::JsonOrigin origin(*node);
  return expression::Program::compile(node->string(), dictionary_, type, origin, reader.subject(), issues_);
}

int Reading::slotOf(ObjectReader& reader, std::string_view key) {
  const std::string id = reader.requireString(key);
  const auto* definition = dictionary_.find(id);
  if (definition == nullptr && !id.empty()) reader.issue(reader.node(), "there is no fact \"" + id + "\"");
  return definition == nullptr ? -1 : definition->slot;
}

void Reading::scale(ObjectReader& root, Library::Doses& doses) {
  const auto node = root.require("effortScale");
  if (!node) return;
  ObjectReader reader(*node, "effortScale", issues_);
  sourcesOf(reader);
  for (const Node& each : reader.array("anchors")) {
    ObjectReader anchor(each, "effortScale", issues_);
    EffortAnchor read;
    read.from = requireNumber(anchor, "from");
    read.to = requireNumber(anchor, "to");
    read.name = anchor.requireString("name");
    read.client = anchor.requireString("client");
    if (anchor.find("rung")) read.rung = rung(anchor, "rung");
    anchor.finish();
    doses.anchors.push_back(std::move(read));
  }
  reader.finish();
}

void Reading::efforts(ObjectReader& root, Library::Doses& doses) {
  for (const Node& node : root.array("efforts")) {
    ObjectReader reader(node, "efforts", issues_);
    EffortRow row;
    row.place = node.place();
    const auto where = section(reader, "section");
    const auto at = rung(reader, "rung");
    row.low = requireNumber(reader, "low");
    row.high = requireNumber(reader, "high");
    row.words = reader.requireString("words");
    row.client = reader.requireString("client");
    row.repetitionsInReserve = reader.number("repetitionsInReserve");
    sourcesOf(reader);
    reader.finish();
    if (!where || !at) continue;
    row.section = *where;
    row.rung = *at;
    doses.efforts.push_back(std::move(row));
  }
}

void Reading::levels(ObjectReader& root, Library::Doses& doses) {
  for (const Node& node : root.array("levels")) {
    ObjectReader reader(node, "levels", issues_);
    Level level;
    level.dose.level = reader.requireString("id");
    reader.setSubject("level " + level.dose.level);
    level.title = reader.requireString("title");
    level.because = reader.requireString("because");
    level.when = program(reader, "when", expression::Type{});
    level.keepsModerate = reader.boolean("keepsModerate").value_or(false);
    if (const auto rungs = reader.require("rung")) {
      ObjectReader both(*rungs, reader.subject(), issues_);
      level.rung.aerobic = rung(both, "aerobic").value_or(limits::Rung::Light);
      level.rung.strength = rung(both, "strength").value_or(limits::Rung::Light);
      both.finish();
    }
    if (const auto lines = reader.require("lines")) {
      ObjectReader each(*lines, reader.subject(), issues_);
      for (Section where : kSections) level.lines[where] = requireInteger(each, idOf(where));
      each.finish();
    }
    if (const auto amounts = reader.require("amounts")) {
      ObjectReader each(*amounts, reader.subject(), issues_);
      for (std::string_view name : kAmounts) level.dose.amounts[std::string(name)] = requireNumber(each, name);
      each.finish();
    }
    sourcesOf(reader);
    reader.finish();
    doses.levels.push_back(std::move(level));
  }
}

void Reading::current(ObjectReader& root, Library::Doses& doses) {
  const auto node = root.require("current");
  if (!node) return;
  ObjectReader reader(*node, "current", issues_);
  doses.currentMinutesSlot = slotOf(reader, "minutes");
  doses.currentDaysSlot = slotOf(reader, "days");
  doses.currentModerateSlot = slotOf(reader, "isModerate");
  sourcesOf(reader);
  reader.finish();
}

void Reading::heartRate(ObjectReader& root, Library::Doses& doses) {
  const auto perMinute = base::parseUnit("/min");
  for (const Node& node : root.array("heartRate")) {
    ObjectReader reader(node, "heartRate", issues_);
    expression::Type type;
    type.kind = expression::ValueKind::Number;
    if (perMinute) type.unit = *perMinute;
    const auto at = rung(reader, "rung");
    auto low = program(reader, "low", type);
    auto high = program(reader, "high", type);
    sourcesOf(reader);
    reader.finish();
    if (at && low && high) doses.heartRate.emplace(*at, HeartRateBand{std::move(*low), std::move(*high)});
  }
}

void Reading::loadBands(ObjectReader& root, Library::Doses& doses) {
  for (const Node& node : root.array("loadBands")) {
    ObjectReader reader(node, "loadBands", issues_);
    const auto at = rung(reader, "rung");
    const Rational percent = requireNumber(reader, "percentOfMaximum");
    sourcesOf(reader);
    reader.finish();
    if (at) doses.loadPercentOfMaximum[*at] = percent;
  }
}

void Reading::growth(ObjectReader& root, Library::Doses& doses) {
  const auto node = root.require("growth");
  if (!node) return;
  ObjectReader reader(*node, "growth", issues_);
  Growth& growth = doses.growth;
  growth.weeks = requireInteger(reader, "weeks");
  growth.minutesStep = requireNumber(reader, "minutesStep");
  growth.minutesGoal = requireNumber(reader, "minutesGoal");
  growth.daysGoal = requireNumber(reader, "daysGoal");
  growth.weeklyGoal = requireNumber(reader, "weeklyGoal");
  growth.repetitionsStep = requireNumber(reader, "repetitionsStep");
  growth.holdEvery = requireInteger(reader, "holdEvery");
  growth.slowFactor = requireInteger(reader, "slowFactor");
  sourcesOf(reader);
  reader.finish();
  if (growth.weeks < 8 || growth.weeks > 12) reader.issue(*node, "a plan has 8 to 12 weeks");
  if (growth.holdEvery < 2 || growth.slowFactor < 2)
    reader.issue(*node, "\"holdEvery\" and \"slowFactor\" must be at least 2");
}

void Reading::care(ObjectReader& root, Library::Doses& doses) {
  const auto node = root.require("care");
  if (!node) return;
  ObjectReader reader(*node, "care", issues_);
  doses.surgicalMargin = requireNumber(reader, "surgicalMarginDegrees");
  doses.secondsPerRepetition = requireNumber(reader, "secondsPerRepetition");
  doses.hoursBetweenStrength = requireNumber(reader, "hoursBetweenStrength");
  doses.leastWarmUpMinutes = requireNumber(reader, "leastWarmUpMinutes");
  doses.leastCoolDownMinutes = requireNumber(reader, "leastCoolDownMinutes");
  doses.leastAerobicMinutes = requireNumber(reader, "leastAerobicMinutes");
  sourcesOf(reader);
  reader.finish();
}

void Reading::sentences(ObjectReader& root, Library::Doses& doses) {
  if (const auto node = root.require("sentences")) {
    ObjectReader reader(*node, "sentences", issues_);
    for (std::string_view key : kSentences) {
      auto list = reader.strings(key);
      if (list.empty()) reader.issue(*node, "no sentences \"" + std::string(key) + "\"");
      doses.sentences[std::string(key)] = std::move(list);
    }
    reader.finish();
  }
  if (const auto node = root.require("phrases")) {
    ObjectReader reader(*node, "phrases", issues_);
    for (std::string_view key : kPhrases) doses.phrases[std::string(key)] = reader.requireString(key);
    reader.finish();
  }
}

void Reading::ranges(ObjectReader& root, Library::Doses& doses) {
  for (const Node& node : root.array("ranges")) {
    ObjectReader reader(node, "ranges", issues_);
    const std::string movement = reader.requireString("movement");
    const Rational from = requireNumber(reader, "from");
    const Rational to = requireNumber(reader, "to");
    sourcesOf(reader);
    reader.finish();
    if (!doses.ranges.emplace(movement, std::pair{from, to}).second)
      reader.issue(node, "the range of \"" + movement + "\" stands twice");
  }
}

std::vector<Purpose> Reading::purposes(ObjectReader& root) {
  std::vector<Purpose> list;
  for (const Node& node : root.array("purposes")) {
    ObjectReader reader(node, "purposes", issues_);
    Purpose purpose;
    purpose.id = reader.requireString("id");
    reader.setSubject(purpose.id);
    purpose.title = reader.requireString("title");
    purpose.priority = requireInteger(reader, "priority");
    const auto where = section(reader, "section");
    purpose.perPlan = static_cast<int>(reader.integer("perPlan").value_or(1));
    purpose.turnTo = reader.requireString("turnTo");
    purpose.sources = sourcesOf(reader);
    reader.finish();
    if (purpose.perPlan < 1 || purpose.perPlan > 5) reader.issue(node, "\"perPlan\" must be 1 to 5");
    if (!where) continue;
    purpose.section = *where;
    const bool isKnown = std::any_of(list.begin(), list.end(), [&](const Purpose& p) { return p.id == purpose.id; });
    if (isKnown) reader.issue(node, "this purpose stands twice", "remove one of the two");
    list.push_back(std::move(purpose));
  }
  std::stable_sort(list.begin(), list.end(), [](const Purpose& a, const Purpose& b) {
    return a.priority != b.priority ? a.priority > b.priority : a.id < b.id;
  });
  return list;
}

}  // namespace

std::shared_ptr<Library::Doses> readDoses(const std::string& text, const std::string& file,
                                          const facts::Dictionary& dictionary, std::vector<Purpose>& purposes,
                                          std::vector<std::pair<std::string, base::Place>>& sources,
                                          base::Issues& issues) {
  const auto document = json::Document::parse(text, file, issues);
  if (!document) return nullptr;
  auto doses = std::make_shared<Library::Doses>();
  ObjectReader root(document->root(), file, issues);
  Reading reading(dictionary, sources, issues);
  reading.scale(root, *doses);
  reading.efforts(root, *doses);
  reading.levels(root, *doses);
  reading.current(root, *doses);
  reading.heartRate(root, *doses);
  reading.loadBands(root, *doses);
  reading.growth(root, *doses);
  reading.care(root, *doses);
  reading.sentences(root, *doses);
  reading.ranges(root, *doses);
  purposes = reading.purposes(root);
  root.finish();
  return doses;
}

}  // namespace stile::plan
