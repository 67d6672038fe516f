// Nothing left unanswered makes a conclusion out of another: replacing a given answer by unknown
// never turns a derived boolean from true to false or from false to true.
#include <random>

#include "sample_facts.h"

using namespace stile;
using namespace stile::sample;
using expression::Truth;

namespace {

std::string summary(const std::string& rest) {
  return derived("\"summary\": {\"group\": \"joint\", " + rest + "}");
}

/// Every kind of derivation, enablement through chains and groups, ages and norms.
Sample wideSample() {
  const std::string norm = R"({"id": "n", "title": "N", "unit": "1", "sources": ["s"], "rows": [
    {"sex": "male", "ages": [0, 49], "below": 10, "above": 20}, {"sex": "male", "ages": [50, 90], "below": 8, "above": 15},
    {"sex": "female", "ages": [0, 49], "below": 9, "above": 18}, {"sex": "female", "ages": [50, 80], "below": 7, "above": 14}]})";
  const std::string classes =
      R"({"classes": [{"id": "x", "title": "X", "names": ["axol", "bxol"], "sources": ["s"]},
    {"id": "y", "title": "Y", "names": ["cxol", "axol"], "sources": ["s"]}]})";
  const std::string facts =
      fact("a", "boolean") + "," + fact("b", "boolean") + "," +
      fact("c", "boolean", R"("whenNotApplicable": true)") + "," + fact("n", "integer") + "," +
      fact("sex", "code", choices("male female")) + "," + fact("birth", "date") + "," +
      fact("kind", "code", choices("p q r") + R"(, "whenNotApplicable": "p")") + "," +
      fact("many", "code", R"("multiple": true, )" + choices("u v none")) + "," +
      fact("fresh", "boolean", R"("freshFor": {"value": 1, "unit": "wk"})") + "," +
      fact("weight", "quantity", R"("unit": "kg")") + "," + fact("isHip", "boolean", member("joint")) + "," +
      fact("since", "date", member("joint")) + "," + fact("sore", "boolean", member("joint")) + "," +
      fact("ageMonths", "integer",
           member("joint") + ", " + derived(R"("elapsed": {"since": "since", "in": "mo"})")) +
      "," + fact("early", "boolean", member("joint") + ", " + formula("%ageMonths < 3 or %sore")) + "," +
      fact("medicineName", "text", member("medicine")) + "," +
      fact("systolic", "quantity", mmHg() + ", " + member("reading")) + "," +
      fact("mean", "quantity",
           mmHg() + R"(, "freshFor": {"value": 1, "unit": "mo"}, )" +
               derived(R"("mean": {"of": "systolic", "last": 2})")) +
      "," +
      fact("worst", "quantity",
           mmHg() + ", " + derived(R"("worst": {"of": "systolic", "take": "largest"})")) +
      "," +
      fact("last", "quantity",
           mmHg() + R"(, "freshFor": {"value": 1, "unit": "mo"}, )" +
               derived(R"("last": {"of": "systolic"})")) +
      "," + fact("age", "integer", derived(R"("elapsed": {"since": "birth", "in": "a"})")) + "," +
      fact("norm", "code", derived(R"("norm": {"table": "n", "of": "n", "sex": "sex", "age": "age"})")) +
      "," + fact("score", "integer", derived(R"("score": ["a", "b", "c", "manyU", "fresh"])")) + "," +
      fact("least", "integer", summary(R"("smallest": "%ageMonths", "where": "%isHip")")) + "," +
      fact("most", "integer", summary(R"("largest": "%ageMonths")")) + "," +
      fact("hips", "integer", summary(R"("count": true, "where": "%isHip and %ageMonths < 12")")) + "," +
      fact("takesX", "boolean", derived(R"("class": "x")")) + "," +
      fact("takesY", "boolean", derived(R"("class": "y")")) + "," +
      fact("d1", "boolean", formula("%a and (%b or %c).not()")) + "," +
      fact("d2", "boolean", formula("%n > 3 implies %kind = 'q'")) + "," +
      fact("d3", "boolean", formula("%kind in ('p' | 'r') xor %manyV")) + "," +
      fact("d4", "boolean", formula("%age >= 50 and %norm = 'below'")) + "," +
      fact("d5", "boolean", formula("%norm != 'above' or %score >= 3")) + "," +
      fact("d6", "boolean", formula("%least < 6")) + "," + fact("d7", "boolean", formula("%least > 2")) +
      "," + fact("d8", "boolean", formula("%most >= 12 or %hips > 1")) + "," +
      fact("d9", "boolean", summary(R"("any": "%early")")) + "," +
      fact("d10", "boolean", summary(R"("every": "%early", "where": "%isHip")")) + "," +
      fact("d11", "boolean", formula("%mean >= 140 'mm[Hg]'")) + "," +
      fact("d12", "boolean", formula("%worst < 160 'mm[Hg]' and %last > 120 'mm[Hg]'")) + "," +
      fact("d13", "boolean", formula("%takesX and %takesY.not()")) + "," +
      fact("d14", "boolean", formula("%weight / 2 > 40 'kg' and %fresh")) + "," +
      fact("d15", "boolean", formula("(%n <= 3).not() or %hips = 0")) + "," +
      fact("d16", "boolean", formula("%birth < @1976-01-01 and %manyNone")) + "," +
      fact("d17", "boolean", formula("%d1 or %d9 or %d11")) + "," +
      fact("d18", "boolean", formula("%weight + %weight < 150 'kg'"));
  const std::string items =
      item("a", "boolean") + "," + item("b", "boolean", ifYes("a")) + "," + item("n", "integer", ifYes("b")) +
      "," +
      item("kind", "choice",
           "\"answerOption\": [" + option("p") + "," + option("q") + "," + option("r") + "], " +
               enableWhen(when("n", ">", R"("answerInteger": 2)"))) +
      "," +
      item("c", "boolean",
           enableWhen(when(
               "kind", "!=", R"("answerCoding": {"system": "https://stile.example/option", "code": "q"})"))) +
      "," +
      item("many", "choice",
           R"("repeats": true, "answerOption": [)" + option("u") + "," + option("v") + "," +
               option("none", true) + "], " + ifYes("c")) +
      "," + item("fresh", "boolean") + "," + item("weight", "quantity", units("kg") + ", " + ifYes("fresh")) +
      "," +
      item("joint", "group",
           R"("repeats": true, )" + ifYes("a") + ", \"item\": [" + item("isHip", "boolean") + "," +
               item("since", "date", ifYes("isHip")) + "," +
               item("sore", "boolean", enableWhen(when("since", "exists", R"("answerBoolean": true)"))) +
               "]") +
      "," +
      item("medicine", "group",
           R"("repeats": true, )" + ifYes("b") + ", \"item\": [" + item("medicineName", "string") + "]");
  return Sample(facts, "joint medicine reading", items,
                {{"rules/norms/n.json", norm}, {"rules/medicines/classes.json", classes}});
}

/// A person as lists of members: key and JSON value; groups as lists of those.
struct Person {
  std::vector<std::pair<std::string, std::string>> answers;
  std::map<std::string, std::vector<std::vector<std::pair<std::string, std::string>>>> groups;
};

std::string objectOf(const std::vector<std::pair<std::string, std::string>>& members) {
  std::string text;
  for (const auto& [key, value] : members) text += (text.empty() ? "" : ", ") + ("\"" + key + "\": " + value);
  return text;
}

std::string jsonOf(const Person& person) {
  std::string text = objectOf(person.answers);
  for (const auto& [group, repetitions] : person.groups) {
    std::string list;
    for (const auto& repetition : repetitions)
      list += (list.empty() ? "{" : ", {") + objectOf(repetition) + "}";
    text += (text.empty() ? "" : ", ") + ("\"" + group + "\": [" + list + "]");
  }
  return "{" + text + "}";
}

class RandomFacts {
 public:
  explicit RandomFacts(unsigned seed) : engine_(seed) {}
  int below(int count) { return static_cast<int>(engine_() % static_cast<unsigned>(count)); }
  bool mostly() { return below(10) < 7; }
  std::string truth() { return below(2) == 0 ? "true" : "false"; }
  std::string pick(const std::vector<std::string>& list) {
    return list[static_cast<std::size_t>(below(static_cast<int>(list.size())))];
  }
  std::string dated(const std::string& value) {
    const std::string date =
        pick({"", "", "2026-11-25", "2026-11-20", "2026-11", "2026-10-30", "2026", "2025-03-01"});
    return date.empty() ? value : R"({"value": )" + value + R"(, "date": ")" + date + "\"}";
  }

 private:
  std::mt19937 engine_;
};

std::string quoted(const std::string& text) {
  return "\"" + text + "\"";
}

Person randomPerson(RandomFacts& random) {
  Person person;
  const auto maybe = [&](const std::string& key, const std::string& value) {
    if (random.mostly()) person.answers.emplace_back(key, value);
  };
  const std::vector<std::string> dates{"2026-11-01", "2026-09",    "2026",      "2025-12-31",
                                       "2020",       "2026-08-25", "2026-08-26"};
  for (const char* id : {"a", "b", "c"}) maybe(id, random.truth());
  maybe("n", std::to_string(random.below(24)));
  maybe("sex", quoted(random.pick({"male", "female"})));
  maybe("birth", quoted(random.pick({"1976-11-25", "1976", "1990-01-01", "1940", "1936-05", "2000"})));
  maybe("kind", quoted(random.pick({"p", "q", "r"})));
  maybe("many", random.pick({R"(["u"])", R"(["v"])", R"(["u", "v"])", R"(["none"])"}));
  if (random.below(5) == 0) person.answers.emplace_back("manyU", random.truth());
  maybe("fresh", random.dated(random.truth()));
  maybe("weight", quoted(random.pick({"60 kg", "75 kg", "80 kg", "200 [lb_av]"})));
  if (random.below(6) == 0) person.answers.emplace_back("age", std::to_string(30 + random.below(60)));
  if (random.below(6) == 0) person.answers.emplace_back("d1", random.truth());
  if (random.mostly()) {
    auto& joints = person.groups["joint"];
    joints.resize(static_cast<std::size_t>(random.below(4)));
    for (auto& joint : joints) {
      if (random.mostly()) joint.emplace_back("isHip", random.truth());
      if (random.mostly()) joint.emplace_back("since", quoted(random.pick(dates)));
      if (random.mostly()) joint.emplace_back("sore", random.truth());
    }
  }
  if (random.mostly()) {
    auto& medicines = person.groups["medicine"];
    medicines.resize(static_cast<std::size_t>(random.below(3)));
    for (auto& medicine : medicines)
      medicine.emplace_back("medicineName",
                            quoted(random.pick({"axol", "bxol 5 mg", "cxol", "what", "axol/cxol"})));
  }
  if (random.mostly()) {
    auto& readings = person.groups["reading"];
    readings.resize(static_cast<std::size_t>(1 + random.below(3)));
    for (auto& reading : readings) {
      reading.emplace_back("systolic",
                           random.dated(quoted(random.pick(
                               {"110 mm[Hg]", "139 mm[Hg]", "140 mm[Hg]", "150 mm[Hg]", "180 mm[Hg]"}))));
    }
  }
  return person;
}

}  // namespace

TEST_CASE("Replacing an answer by unknown never turns a derived boolean round") {
  auto sample = wideSample();
  RandomFacts random(20261125);
  std::vector<int> booleans;
  for (const int slot : sample.dictionary.derivedInOrder()) {
    const auto& definition = sample.dictionary.at(slot);
    if (definition.type == facts::FactType::Boolean && definition.groupIndex < 0) booleans.push_back(slot);
  }
  int turned = 0;
  int opened = 0;
  const std::vector<std::string> unknowns{"null", R"({"unknown": "notSure"})", R"({"unknown": "notAsked"})"};
  const auto compare = [&](const facts::FactSet& before, const Person& less, const std::string& full) {
    const std::string fewer = jsonOf(less);
    const auto after = sample.plain(fewer);
    for (const int slot : booleans) {
      const Truth was = before.at(slot).value.truth;
      const Truth is = after.at(slot).value.truth;
      if (was != Truth::Unknown && is == Truth::Unknown) ++opened;
      if (was == Truth::Unknown || is == Truth::Unknown || was == is) continue;
      ++turned;
      UNSCOPED_INFO(sample.dictionary.at(slot).id + " turned\n" + full + "\n" + fewer);
    }
  };
  for (int i = 0; i < 1500 && turned == 0; ++i) {
    const Person person = randomPerson(random);
    const std::string full = jsonOf(person);
    const auto before = sample.plain(full);
    for (std::size_t j = 0; j < person.answers.size(); ++j) {
      Person less = person;
      less.answers[j].second = random.pick(unknowns);
      compare(before, less, full);
    }
    for (const auto& [group, repetitions] : person.groups) {
      for (std::size_t r = 0; r < repetitions.size(); ++r) {
        for (std::size_t m = 0; m < repetitions[r].size(); ++m) {
          Person less = person;
          less.groups[group][r][m].second = random.pick(unknowns);
          compare(before, less, full);
        }
      }
      Person less = person;
      less.groups.erase(group);
      compare(before, less, full);
    }
  }
  CHECK(turned == 0);
  CHECK(opened > 1000);  // the sample is wide enough to be worth trying
}
