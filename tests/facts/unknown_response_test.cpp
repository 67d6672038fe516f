// The same promise for responses of two days: an answer that is taken back, in the older or the
// newer one, never turns a derived boolean from true to false or from false to true.
#include <random>

#include "sample_facts.h"

using namespace stile;
using namespace stile::sample;
using expression::Truth;

namespace {

struct Given {
  std::string linkId;
  std::string answers;  ///< JSON of the answers
  std::string group;    ///< repeating group, or ""
  int repetition = 0;
};

struct Told {
  std::string date;
  std::vector<Given> items;
};

Sample twoDaySample() {
  return Sample(
      fact("a", "boolean") + "," + fact("b", "boolean") + "," + fact("n", "integer") + "," +
          fact("old", "boolean", R"("freshFor": {"value": 1, "unit": "wk"})") + "," +
          fact("many", "code", R"("multiple": true, )" + choices("u v none")) + "," +
          fact("isHip", "boolean", member("joint")) + "," + fact("since", "date", member("joint")) + "," +
          fact("wk", "integer",
               member("joint") + ", " + derived(R"("elapsed": {"since": "since", "in": "wk"})")) +
          "," + fact("systolic", "quantity", mmHg() + ", " + member("reading")) + "," +
          fact("mean", "quantity", mmHg() + ", " + derived(R"("mean": {"of": "systolic", "last": 2})")) +
          "," + fact("d1", "boolean", formula("%a and %b.not()")) + "," +
          fact("d2", "boolean", formula("%n > 3")) + "," +
          fact("d3", "boolean", formula("(%n > 3).not() or %manyU")) + "," +
          fact("d4", "boolean", formula("%manyNone xor %old")) + "," +
          fact("d5", "boolean", derived(R"("summary": {"group": "joint", "any": "%isHip and %wk < 40"})")) +
          "," +
          fact("d6", "boolean",
               derived(R"("summary": {"group": "joint", "every": "%wk > 10", "where": "%isHip"})")) +
          "," + fact("d7", "boolean", formula("%mean >= 140 'mm[Hg]'")) + "," +
          fact("d8", "boolean", formula("%manyV and %manyU.not()")),
      "joint reading",
      item("a", "boolean") + "," + item("b", "boolean", ifYes("a")) + "," + item("n", "integer", ifYes("b")) +
          "," + item("old", "boolean") + "," +
          item("many", "open-choice",
               R"("repeats": true, "answerOption": [)" + option("u") + "," + option("v") + "," +
                   option("none", true) + "], " + ifYes("a")) +
          "," +
          item("joint", "group",
               R"("repeats": true, )" + ifYes("b") + ", \"item\": [" + item("isHip", "boolean") + "," +
                   item("since", "date", ifYes("isHip")) + "]") +
          "," +
          item("reading", "group",
               R"("repeats": true, "item": [)" + item("systolic", "quantity", units("mm[Hg]")) + "]"));
}

std::string textOfTold(const Told& told) {
  std::string items;
  const auto append = [&](const std::string& text) { items += (items.empty() ? "" : ",") + text; };
  const auto itemOf = [](const Given& given) {
    return answer(given.linkId, given.answers.starts_with("{") ? given.answers : "",
                  given.answers.starts_with("{") ? "" : absent(given.answers));
  };
  std::map<std::pair<std::string, int>, std::string> groups;
  for (const Given& given : told.items) {
    if (given.group.empty()) {
      append(itemOf(given));
    } else {
      auto& members = groups[{given.group, given.repetition}];
      members += (members.empty() ? "" : ",") + itemOf(given);
    }
  }
  for (const auto& [key, members] : groups) append(group(key.first, members));
  return responseText(items, dated(told.date));
}

class RandomDays {
 public:
  explicit RandomDays(unsigned seed) : engine_(seed) {}
  int below(int count) { return static_cast<int>(engine_() % static_cast<unsigned>(count)); }
  bool mostly() { return below(10) < 7; }
  std::string truth() { return below(2) == 0 ? R"({"valueBoolean": true})" : R"({"valueBoolean": false})"; }
  std::string pick(const std::vector<std::string>& list) {
    return list[static_cast<std::size_t>(below(static_cast<int>(list.size())))];
  }

 private:
  std::mt19937 engine_;
};

Told randomTold(RandomDays& random, const std::string& date) {
  Told told{date, {}};
  const auto maybe = [&](const std::string& linkId, const std::string& answers, const std::string& in = {},
                         int repetition = 0) {
    if (random.mostly()) told.items.push_back({linkId, answers, in, repetition});
  };
  for (const char* id : {"a", "b", "old"}) maybe(id, random.truth());
  maybe("n", "{\"valueInteger\": " + std::to_string(random.below(7)) + "}");
  maybe("many", random.pick({coding("u"), coding("v"), coding("u") + "," + coding("v"), coding("none"),
                             coding("u") + R"(,{"valueString": "words"})"}));
  for (int i = random.below(3); i > 0; --i) {
    told.items.push_back({"isHip", random.truth(), "joint", i});
    maybe("since",
          "{\"valueDate\": \"" + random.pick({"2026", "2026-02", "2026-10-01", "2020-01-01"}) + "\"}",
          "joint", i);
  }
  for (int i = random.below(3); i > 0; --i) {
    const std::string value = random.pick({"120", "139", "140", "160"});
    told.items.push_back(
        {"systolic", "{\"valueQuantity\": " + quantity(value, "mm[Hg]") + "}", "reading", i});
  }
  return told;
}

}  // namespace

TEST_CASE("Taking an answer of a response back never turns a derived boolean round") {
  auto sample = twoDaySample();
  RandomDays random(7);
  std::vector<int> booleans;
  for (const int slot : sample.dictionary.derivedInOrder()) {
    const auto& definition = sample.dictionary.at(slot);
    if (definition.type == facts::FactType::Boolean && definition.groupIndex < 0) booleans.push_back(slot);
  }
  int turned = 0;
  int opened = 0;
  for (int i = 0; i < 700 && turned == 0; ++i) {
    const std::string second = random.pick({"2026-11-25", "2026-11-20", "2026-11-01"});
    const std::vector<Told> told{randomTold(random, "2026-11-01"), randomTold(random, second)};
    const auto before = sample.respond({textOfTold(told[0]), textOfTold(told[1])});
    for (std::size_t r = 0; r < told.size(); ++r) {
      for (std::size_t j = 0; j < told[r].items.size(); ++j) {
        auto less = told;
        less[r].items[j].answers = random.pick({"unknown", "asked-unknown", "asked-declined"});
        const auto after = sample.respond({textOfTold(less[0]), textOfTold(less[1])});
        for (const int slot : booleans) {
          const Truth was = before.at(slot).value.truth;
          const Truth is = after.at(slot).value.truth;
          if (was != Truth::Unknown && is == Truth::Unknown) ++opened;
          if (was == Truth::Unknown || is == Truth::Unknown || was == is) continue;
          ++turned;
          UNSCOPED_INFO(sample.dictionary.at(slot).id + " turned without " + told[r].items[j].linkId + "\n" +
                        textOfTold(told[0]) + "\n" + textOfTold(told[1]));
        }
      }
    }
  }
  CHECK(turned == 0);
  CHECK(opened > 500);
}
