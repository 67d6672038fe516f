#include "sample_facts.h"

using namespace stile;
using namespace stile::sample;

namespace {

const std::string kDay = R"("freshFor": {"value": 1, "unit": "d"}, )";

Sample readingSample(const std::string& age = {}) {
  return Sample(
      fact("systolic", "quantity", mmHg() + ", " + member("reading")) + "," +
          fact("mean", "quantity",
               age + mmHg() + ", " + derived(R"("mean": {"of": "systolic", "last": 2})")) +
          "," + fact("meanAll", "quantity", age + mmHg() + ", " + derived(R"("mean": {"of": "systolic"})")) +
          "," +
          fact("worst", "quantity",
               age + mmHg() + ", " + derived(R"("worst": {"of": "systolic", "take": "largest"})")) +
          "," +
          fact("best", "quantity",
               age + mmHg() + ", " + derived(R"("worst": {"of": "systolic", "take": "smallest"})")) +
          "," + fact("last", "quantity", age + mmHg() + ", " + derived(R"("last": {"of": "systolic"})")),
      "reading");
}

std::string reading(const std::string& value, const std::string& date = {}) {
  if (date.empty()) return R"({"systolic": ")" + value + R"( mm[Hg]"})";
  return R"({"systolic": {"value": ")" + value + R"( mm[Hg]", "date": ")" + date + R"("}})";
}

std::string readings(const std::vector<std::string>& list) {
  std::string text;
  for (const auto& one : list) text += (text.empty() ? "" : ", ") + one;
  return "{\"reading\": [" + text + "]}";
}

}  // namespace

TEST_CASE("The mean of the last two leaves earlier readings out") {
  auto sample = readingSample();
  auto set = sample.plain(readings({reading("190"), reading("150"), reading("141")}));
  CHECK(sample.say(set, "mean") == "145.5 mmHg");
  CHECK(sample.say(set, "last") == "141 mmHg");
  CHECK(sample.say(set, "worst") == "190 mmHg");
  CHECK(sample.say(set, "best") == "141 mmHg");
  // By date, not by the order of writing.
  set = sample.plain(
      readings({reading("150", "2026-11-24"), reading("190", "2026-11-01"), reading("140", "2026-11-23")}));
  CHECK(sample.say(set, "mean") == "145 mmHg");
  CHECK(sample.say(set, "last") == "150 mmHg");
  CHECK(sample.in(set, "mean").date->toText() == "2026-11-24");
}

TEST_CASE("One reading alone is its own mean") {
  auto sample = readingSample();
  CHECK(sample.say(sample.plain(readings({reading("150")})), "mean") == "150 mmHg");
}

TEST_CASE("An unknown reading leaves the mean open and bounds the worst from one side") {
  auto sample = readingSample();
  const auto set =
      sample.plain(readings({reading("150"), R"({"systolic": {"unknown": "declined"}})", reading("140")}));
  CHECK(sample.say(set, "meanAll") == "unknown: declined");
  CHECK(sample.say(set, "worst") == "at least 150 mmHg");
  CHECK(sample.say(set, "best") == "at most 140 mmHg");
  CHECK(sample.say(set, "last") == "unknown: declined");
}

TEST_CASE("No reading is never the same as does not apply") {
  auto sample = readingSample();
  CHECK(sample.say(sample.plain(R"({"reading": []})"), "mean") == "unknown: not asked");
  CHECK(sample.say(sample.plain("{}"), "worst") == "unknown: not asked");
}

TEST_CASE("Readings that are too old do not count and do not soften a fresh one") {
  auto sample = readingSample(kDay);
  auto set = sample.plain(readings({reading("110", "2026-10-01"), reading("186")}));
  CHECK(sample.say(set, "mean") == "186 mmHg");
  set = sample.plain(readings({reading("186", "2026-11-23")}));
  CHECK(sample.say(set, "mean") == "unknown: out of date");
  CHECK(sample.say(set, "worst") == "unknown: out of date");
  CHECK(sample.say(sample.plain(readings({reading("186", "2026-11-24")})), "mean") == "186 mmHg");
}

TEST_CASE("A reading that may be too old or newer than another widens the result") {
  auto sample = readingSample(kDay);
  auto set = sample.plain(readings({reading("200", "2026-11"), reading("150")}));
  CHECK(sample.say(set, "worst") == "between 150 and 200 mmHg");
  CHECK(sample.say(set, "mean") == "between 150 and 200 mmHg");
  CHECK(sample.say(set, "last") == "between 150 and 200 mmHg");
  set = sample.plain(readings({reading("200", "2026-11")}));
  CHECK(sample.say(set, "mean") == "unknown: out of date");

  auto ageless = readingSample();
  set = ageless.plain(
      readings({reading("200", "2026-11"), reading("150", "2026-11-20"), reading("120", "2025")}));
  CHECK(ageless.say(set, "last") == "between 150 and 200 mmHg");
  CHECK(ageless.say(set, "mean") == "175 mmHg");
}
