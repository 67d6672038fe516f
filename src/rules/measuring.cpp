#include "rules/measuring.h"

#include <set>

#include "json/reader.h"

namespace stile::rules {
namespace {

using facts::FactType;

constexpr std::pair<const char*, Gives> kTools[] = {{"entry", Gives::Entry}, {"wait", Gives::Wait},   {"count", Gives::Count}, {"perMinute", Gives::PerMinute},
                                                    {"laps", Gives::Laps},   {"time", Gives::Time},   {"speed", Gives::Speed}};

bool isCountdown(Gives gives) { return gives == Gives::Wait || gives == Gives::Count || gives == Gives::PerMinute || gives == Gives::Laps; }
bool hasCourse(Gives gives) { return gives == Gives::Laps || gives == Gives::Speed; }

/// The unit a tool gives its value in; nullptr for counts and what is typed.
const char* toolUnit(Gives gives) {
  switch (gives) {
    case Gives::PerMinute: return "/min";
    case Gives::Laps: return "m";
    case Gives::Time: return "s";
    case Gives::Speed: return "m/s";
    default: return nullptr;
  }
}

class MeasuringReader {
 public:
  MeasuringReader(json::Node node, const facts::Dictionary& dictionary, const RuleSet& rules, base::Issues& issues)
      : reader_(node, "measuring", issues), dictionary_(dictionary), rules_(rules) {}

  Measuring read() {
    const std::string fact = reader_.requireString("fact");
    reader_.setSubject(fact);
    readTool();
    readFact(fact);
    made_.leftOutBy = reader_.strings("leftOutBy");
    for (const std::string& rule : made_.leftOutBy)
      if (rules_.find(rule) == nullptr) complain("there is no rule \"" + rule + "\"", "name a rule of rules/");
    made_.sources = reader_.strings("sources");
    if (made_.sources.empty()) complain("it names no source", "add \"sources\", or \"common practice, no source\"");
    for (const std::string& source : made_.sources)
      if (source != kNoSource && rules_.sources.find(source) == rules_.sources.end()) complain("there is no source \"" + source + "\"", "add it under rules/sources/");
    reader_.finish();
    return std::move(made_);
  }

 private:
  void complain(const std::string& message, const std::string& remedy = {}) { reader_.issue(reader_.node(), message, remedy); }

  void readTool() {
    const std::string named = reader_.requireString("gives");
    bool isKnown = false;
    for (const auto& [word, gives] : kTools)
      if (word == named) made_.gives = gives, isKnown = true;
    if (!isKnown) complain("\"gives\" is no tool", "entry, wait, count, perMinute, laps, time or speed");
    made_.seconds = static_cast<int>(reader_.integer("seconds").value_or(0));
    if (isCountdown(made_.gives) != (made_.seconds > 0)) complain("\"seconds\" is for a countdown, and a countdown needs it");
    if (const auto upTo = reader_.integer("upTo")) made_.upTo = static_cast<int>(*upTo);
    if (made_.upTo && (made_.gives != Gives::Time || *made_.upTo <= 0)) complain("\"upTo\" ends a time, after some seconds");
    made_.metres = reader_.number("metres");
    if (hasCourse(made_.gives) != (made_.metres && *made_.metres > base::Rational(0))) complain("\"metres\" is for laps and speeds, and they need it");
  }

  void readFact(const std::string& id) {
    const auto* definition = dictionary_.find(id);
    if (definition == nullptr || definition->isDerived() || definition->isOption() || definition->isPolicy())
      return complain("\"fact\" is no fact that is asked", "name one of rules/facts/");
    made_.slot = definition->slot;
    const char* unit = toolUnit(made_.gives);
    const bool isCounted = made_.gives == Gives::Count;
    if (isCounted && definition->type != FactType::Integer) complain("a count is for whole numbers");
    if (unit == nullptr) return;
    const auto parsed = base::parseUnit(unit);
    if (definition->type != FactType::Quantity || !parsed || !base::comparable(*parsed, definition->valueType.unit))
      complain(std::string("the tool gives ") + unit + ", which is no unit of this fact");
  }

  json::ObjectReader reader_;
  const facts::Dictionary& dictionary_;
  const RuleSet& rules_;
  Measuring made_;
};

}  // namespace

std::vector<Measuring> readMeasuring(const std::string& text, const std::string& file, const facts::Dictionary& dictionary,
                                     const RuleSet& rules, base::Issues& issues) {
  std::vector<Measuring> all;
  const auto document = json::Document::parse(text, file, issues);
  if (!document) return all;
  json::ObjectReader reader(document->root(), file, issues);
  std::set<int> named;
  for (const json::Node& node : reader.array("measures")) {
    Measuring one = MeasuringReader(node, dictionary, rules, issues).read();
    if (one.slot < 0) continue;
    if (!named.insert(one.slot).second) reader.issue(node, "this fact stands here twice");
    all.push_back(std::move(one));
  }
  reader.finish();
  return all;
}

}  // namespace stile::rules
