#include "plan/exercise_reader.h"

#include "json/reader.h"

namespace stile::plan {
namespace {

using json::Node;
using json::ObjectReader;

std::set<std::string> asSet(const std::vector<std::string>& list) { return {list.begin(), list.end()}; }

Demand readDemand(Node node, const std::string& subject, base::Issues& issues) {
  ObjectReader reader(node, subject, issues);
  Demand demand;
  demand.movement = reader.requireString("movement");
  if (const auto degrees = reader.number("degrees")) {
    demand.degrees = *degrees;
  } else {
    reader.issue(node, "the demand names no degrees", "give the largest angle the exercise asks for");
  }
  for (const std::string& id : reader.strings("qualifiers")) {
    const auto qualifier = limits::qualifierOf(id);
    if (qualifier && *qualifier != limits::Qualifier::Any) {
      demand.done.insert(*qualifier);
    } else {
      reader.issue(node, "\"" + id + "\" is no way to do a movement", "use loaded, endRange or fast");
    }
  }
  const std::string limb = reader.string("limb", "working");
  if (limb == "other") {
    demand.limb = Limb::Other;
  } else if (limb == "both") {
    demand.limb = Limb::Both;
  } else if (limb != "working") {
    reader.issue(node, "\"" + limb + "\" is no limb", "use working, other or both");
  }
  reader.finish();
  return demand;
}

Easing readEasing(Node node, const std::string& subject, base::Issues& issues) {
  ObjectReader reader(node, subject, issues);
  Easing easing;
  if (const auto degrees = reader.find("degrees")) {
    for (std::size_t i = 0; degrees->isObject() && i < degrees->size(); ++i) {
      const auto value = degrees->at(i).number();
      if (value) {
        easing.degrees.emplace(degrees->keyAt(i), *value);
      } else {
        reader.issue(degrees->at(i), "degrees of an easing must be numbers");
      }
    }
  }
  easing.without = asSet(reader.strings("without"));
  easing.equipment = reader.strings("equipment");
  easing.sayClinician = reader.requireString("clinician");
  easing.sayClient = reader.requireString("client");
  reader.finish();
  if (easing.degrees.empty() && easing.without.empty())
    reader.issue(node, "this easing eases nothing", "give degrees or bans it avoids");
  return easing;
}

Scaling readScaling(Node node, const std::string& subject, base::Issues& issues) {
  ObjectReader reader(node, subject, issues);
  Scaling scaling;
  scaling.eases = asSet(reader.strings("eases"));
  scaling.equipment = reader.strings("equipment");
  scaling.words = reader.strings("words");
  scaling.leastPercent = static_cast<int>(reader.integer("leastPercent").value_or(0));
  reader.finish();
  if (scaling.eases.empty() || scaling.words.empty())
    reader.issue(node, "a scaling names the movements it eases and the words that say so");
  if (scaling.leastPercent < 1 || scaling.leastPercent >= 100) {
    reader.issue(node, "\"leastPercent\" is a whole number from 1 to 99");
    scaling.leastPercent = 99;
  }
  return scaling;
}

Setup readSetup(Node node, const std::string& subject, base::Issues& issues) {
  ObjectReader reader(node, subject, issues);
  Setup setup;
  setup.equipment = reader.strings("equipment");
  setup.needs = reader.strings("needs");
  setup.involves = asSet(reader.strings("involves"));
  setup.words = reader.requireString("words");
  reader.finish();
  return setup;
}

template <class T>
T named(ObjectReader& reader, const char* key, std::optional<T> (*ofId)(std::string_view), T otherwise) {
  const auto node = reader.require(key);
  if (!node) return otherwise;
  if (node->isString()) {
    if (const auto value = ofId(node->string())) return *value;
  }
  reader.issue(*node, std::string("\"") + key + "\" has no such value");
  return otherwise;
}

Exercise readExercise(Node node, Section section, base::Issues& issues) {
  ObjectReader reader(node, "exercise", issues);
  Exercise exercise;
  exercise.place = node.place();
  exercise.section = section;
  exercise.bay = bayOf(section);
  exercise.id = reader.requireString("id");
  if (!exercise.id.empty()) reader.setSubject(exercise.id);
  exercise.title = reader.requireString("title");
  exercise.purpose = reader.requireString("purpose");
  exercise.intensity = named<limits::Rung>(reader, "intensity", limits::rungOf, limits::Rung::Vigorous);
  exercise.position = reader.requireString("position");
  exercise.equipment = reader.strings("equipment");
  exercise.needs = reader.strings("needs");
  exercise.equipmentWords = reader.requireString("equipmentWords");
  for (const Node& each : reader.array("setups")) exercise.setups.push_back(readSetup(each, exercise.id, issues));
  for (const Node& each : reader.array("demands")) exercise.demands.push_back(readDemand(each, exercise.id, issues));
  exercise.involves = asSet(reader.strings("involves"));
  exercise.involvesOther = asSet(reader.strings("involvesOther"));
  exercise.settings = asSet(reader.strings("settings"));
  exercise.oneSided = reader.boolean("oneSided").value_or(false);
  exercise.upperBody = reader.boolean("upperBody").value_or(false);
  if (reader.find("load")) exercise.load = named<Load>(reader, "load", loadOf, Load::Weight);
  for (const Node& each : reader.array("easings")) exercise.easings.push_back(readEasing(each, exercise.id, issues));
  if (const auto scaling = reader.find("scaling")) exercise.scaling = readScaling(*scaling, exercise.id, issues);
  exercise.easier = reader.string("easier");
  exercise.harder = reader.string("harder");
  exercise.steps = reader.strings("steps");
  exercise.feel = reader.requireString("feel");
  exercise.mistakes = reader.strings("mistakes");
  exercise.dose = named<DoseKind>(reader, "dose", doseKindOf, DoseKind::Repetitions);
  exercise.holdSeconds = reader.number("holdSeconds");
  exercise.levels = reader.strings("levels");
  exercise.isFallback = reader.boolean("fallback").value_or(false);
  exercise.tags = reader.strings("tags");
  exercise.sources = reader.strings("sources");
  reader.finish();
  if (exercise.intensity == limits::Rung::None)
    reader.issue(node, "an exercise cannot have the intensity none", "use light, moderate or vigorous");
  if (exercise.steps.size() < 2) reader.issue(node, "an exercise needs at least two steps");
  if (exercise.mistakes.empty()) reader.issue(node, "an exercise names at least one common mistake");
  if (exercise.holdSeconds && (exercise.dose != DoseKind::Holds || *exercise.holdSeconds < base::Rational(1)))
    reader.issue(node, "\"holdSeconds\" is for holds of a second or more");
  if (!exercise.oneSided && !exercise.involvesOther.empty())
    reader.issue(node, "\"involvesOther\" is for one-sided exercises", "move it to \"involves\"");
  return exercise;
}

}  // namespace

void readExercises(const std::string& text, const std::string& file, std::vector<Exercise>& exercises,
                   base::Issues& issues) {
  const auto document = json::Document::parse(text, file, issues);
  if (!document) return;
  ObjectReader reader(document->root(), file, issues);
  const auto section = named<Section>(reader, "section", sectionOf, Section::Strength);
  for (const Node& node : reader.array("exercises")) exercises.push_back(readExercise(node, section, issues));
  reader.finish();
}

}  // namespace stile::plan
