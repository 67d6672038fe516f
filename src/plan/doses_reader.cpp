#include "plan/doses_reader.h"

#include "json/reader.h"
#include "plan/content_reading.h"
#include "plan/level_reader.h"
#include "plan/purpose_reader.h"

namespace stile::plan {
namespace {

using base::Rational;
using json::Node;
using json::ObjectReader;

class Reading : private ContentReading {
 public:
  using ContentReading::ContentReading;

  void scale(ObjectReader& root, Library::Doses& doses);
  void efforts(ObjectReader& root, Library::Doses& doses);
  void current(ObjectReader& root, Library::Doses& doses);
  void heartRate(ObjectReader& root, Library::Doses& doses);
  void loadBands(ObjectReader& root, Library::Doses& doses);
  void growth(ObjectReader& root, Library::Doses& doses);
  void aerobicGrowth(ObjectReader& root, Library::Doses& doses);
  void care(ObjectReader& root, Library::Doses& doses);
  void sentences(ObjectReader& root, Library::Doses& doses);
  PlanSentence sentence(const Node& node);
  void ranges(ObjectReader& root, Library::Doses& doses);
};

void Reading::scale(ObjectReader& root, Library::Doses& doses) {
  const auto node = root.require("effortScale");
  if (!node) return;
  ObjectReader reader(*node, "effortScale", issues());
  doses.sources["effortScale"] = sourcesOf(reader);
  for (const Node& each : reader.array("anchors")) {
    ObjectReader anchor(each, "effortScale", issues());
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
    ObjectReader reader(node, "efforts", issues());
    EffortRow row;
    row.place = node.place();
    const auto where = section(reader, "section");
    const auto at = rung(reader, "rung");
    row.low = requireNumber(reader, "low");
    row.high = requireNumber(reader, "high");
    row.words = reader.requireString("words");
    row.client = reader.requireString("client");
    row.repetitionsInReserve = reader.number("repetitionsInReserve");
    row.sources = sourcesOf(reader);
    reader.finish();
    if (!where || !at) continue;
    row.section = *where;
    row.rung = *at;
    doses.efforts.push_back(std::move(row));
  }
}

void Reading::current(ObjectReader& root, Library::Doses& doses) {
  const auto node = root.require("current");
  if (!node) return;
  ObjectReader reader(*node, "current", issues());
  doses.currentMinutesSlot = slotOf(reader, "minutes");
  doses.currentDaysSlot = slotOf(reader, "days");
  doses.currentModerateSlot = slotOf(reader, "isModerate");
  doses.sources["current"] = sourcesOf(reader);
  reader.finish();
}

void Reading::heartRate(ObjectReader& root, Library::Doses& doses) {
  const auto perMinute = base::parseUnit("/min");
  for (const Node& node : root.array("heartRate")) {
    ObjectReader reader(node, "heartRate", issues());
    expression::Type type;
    type.kind = expression::ValueKind::Number;
    if (perMinute) type.unit = *perMinute;
    const auto at = rung(reader, "rung");
    auto low = program(reader, "low", type);
    auto high = program(reader, "high", type);
    auto sources = sourcesOf(reader);
    reader.finish();
    if (at && low && high)
      doses.heartRate.emplace(*at, HeartRateBand{std::move(*low), std::move(*high), std::move(sources)});
  }
}

void Reading::loadBands(ObjectReader& root, Library::Doses& doses) {
  for (const Node& node : root.array("loadBands")) {
    ObjectReader reader(node, "loadBands", issues());
    const auto at = rung(reader, "rung");
    const Rational percent = requireNumber(reader, "percentOfMaximum");
    doses.sources["loadBands"] = sourcesOf(reader);
    reader.finish();
    if (at) doses.loadPercentOfMaximum[*at] = percent;
  }
}

void Reading::growth(ObjectReader& root, Library::Doses& doses) {
  const auto node = root.require("growth");
  if (!node) return;
  ObjectReader reader(*node, "growth", issues());
  Growth& growth = doses.growth;
  growth.weeks = requireInteger(reader, "weeks");
  growth.minutesGoal = requireNumber(reader, "minutesGoal");
  growth.daysGoal = requireNumber(reader, "daysGoal");
  growth.weeklyGoal = requireNumber(reader, "weeklyGoal");
  growth.repetitionsStep = requireNumber(reader, "repetitionsStep");
  growth.balanceMinutesStep = requireNumber(reader, "balanceMinutesStep");
  growth.holdEvery = requireInteger(reader, "holdEvery");
  growth.slowFactor = requireInteger(reader, "slowFactor");
  doses.sources["growth"] = sourcesOf(reader);
  reader.finish();
  if (growth.weeks < 8 || growth.weeks > 12) reader.issue(*node, "a plan has 8 to 12 weeks");
  if (growth.holdEvery < 2 || growth.slowFactor < 2)
    reader.issue(*node, "\"holdEvery\" and \"slowFactor\" must be at least 2");
}

void Reading::aerobicGrowth(ObjectReader& root, Library::Doses& doses) {
  for (const Node& node : root.array("aerobicGrowth")) {
    ObjectReader reader(node, "aerobicGrowth", issues());
    AerobicGrowth way;
    way.id = reader.requireString("id");
    reader.setSubject(way.id);
    way.because = reader.requireString("because");
    way.when = program(reader, "when", expression::Type{});
    way.minutesStep = reader.number("minutesStep").value_or(Rational(0));
    way.percentStep = reader.number("percentStep").value_or(Rational(0));
    way.everyWeeks = static_cast<int>(reader.integer("everyWeeks").value_or(0));
    way.sources = sourcesOf(reader);
    reader.finish();
    doses.aerobicGrowth.push_back(std::move(way));
  }
}

void Reading::care(ObjectReader& root, Library::Doses& doses) {
  const auto node = root.require("care");
  if (!node) return;
  ObjectReader reader(*node, "care", issues());
  doses.surgicalMargin = requireNumber(reader, "surgicalMarginDegrees");
  doses.secondsPerRepetition = requireNumber(reader, "secondsPerRepetition");
  doses.hoursBetweenStrength = requireNumber(reader, "hoursBetweenStrength");
  doses.leastWarmUpMinutes = requireNumber(reader, "leastWarmUpMinutes");
  doses.leastCoolDownMinutes = requireNumber(reader, "leastCoolDownMinutes");
  doses.leastAerobicMinutes = requireNumber(reader, "leastAerobicMinutes");
  doses.sources["care"] = sourcesOf(reader);
  reader.finish();
}

PlanSentence Reading::sentence(const Node& node) {
  ObjectReader reader(node, "sentences", issues());
  PlanSentence read;
  read.place = node.place();
  read.id = reader.requireString("id");
  reader.setSubject(read.id);
  read.say = reader.requireString("say");
  read.ifRules = reader.strings("ifRules");
  read.unlessRules = reader.strings("unlessRules");
  read.sources = sourcesOf(reader);
  reader.finish();
  return read;
}

void Reading::sentences(ObjectReader& root, Library::Doses& doses) {
  if (const auto node = root.require("sentences")) {
    ObjectReader reader(*node, "sentences", issues());
    for (std::string_view key : kSentences) {
      auto& list = doses.sentences[std::string(key)];
      for (const Node& each : reader.array(key)) list.push_back(sentence(each));
      if (list.empty()) reader.issue(*node, "no sentences \"" + std::string(key) + "\"");
    }
    reader.finish();
  }
  if (const auto node = root.require("phrases")) {
    ObjectReader reader(*node, "phrases", issues());
    for (std::string_view key : kPhrases) doses.phrases[std::string(key)] = reader.requireString(key);
    reader.finish();
  }
}

void Reading::ranges(ObjectReader& root, Library::Doses& doses) {
  for (const Node& node : root.array("ranges")) {
    ObjectReader reader(node, "ranges", issues());
    const std::string movement = reader.requireString("movement");
    const Rational from = requireNumber(reader, "from");
    const Rational to = requireNumber(reader, "to");
    sourcesOf(reader);
    reader.finish();
    if (!doses.ranges.emplace(movement, std::pair{from, to}).second)
      reader.issue(node, "the range of \"" + movement + "\" stands twice");
  }
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
  ContentReading content(dictionary, sources, issues);
  Reading reading(dictionary, sources, issues);
  reading.scale(root, *doses);
  reading.efforts(root, *doses);
  doses->levels = readLevels(root, content);
  reading.current(root, *doses);
  reading.heartRate(root, *doses);
  reading.loadBands(root, *doses);
  reading.growth(root, *doses);
  reading.aerobicGrowth(root, *doses);
  reading.care(root, *doses);
  reading.sentences(root, *doses);
  reading.ranges(root, *doses);
  purposes = readPurposes(root, content);
  root.finish();
  return doses;
}

}  // namespace stile::plan
