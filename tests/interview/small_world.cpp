#include "small_world.h"

#include "facts/enablement_closure.h"

namespace stile::test {

using interview::PossibleAnswer;
using interview::QuestionRef;

namespace {

constexpr const char* kVocabulary = R"({"movements": [{"id": "bend", "clinician": "bend", "client": "bend", "sides": true}],
  "bans": [{"id": "kneel", "clinician": "kneel", "client": "kneel", "instead": "sit", "sides": true},
           {"id": "unsupportedBalance", "clinician": "b", "client": "b", "instead": "hold"}],
  "settings": [{"id": "water", "clinician": "w", "client": "w"}], "timing": [],
  "measures": [{"id": "reading", "clinician": "r", "client": "r", "facts": []}],
  "services": [{"id": "physician", "clinician": "p", "client": "p"}]})";

std::string joined(const std::vector<std::string>& list) {
  std::string all;
  for (const std::string& one : list) all += (all.empty() ? "" : ",\n") + one;
  return all;
}

}  // namespace

facts::FactSet SmallWorld::blank() const {
  facts::FactSet facts(dictionary);
  base::Issues ignored;
  facts::settle(facts, forms, kInterviewDay, ignored);
  return facts;
}

std::string WorldMaker::conditionOnEarlier() {
  if (gates_.empty() || !oneIn(3)) return {};
  return R"(, "enableWhen": [)" + pick(gates_) + "]";
}

void WorldMaker::addQuestion(int number) {
  const std::string id = "q" + std::to_string(number);
  const std::string when = conditionOnEarlier();
  const std::string as = pick({"cautious", "cautious", "gate", "lowest"});
  const std::string head = R"({"id": ")" + id + R"(", "label": "l", "unknownAs": ")" + as + R"(", "sources": ["s"], )";
  const std::string itemHead = R"({"linkId": ")" + id + R"(", "text": "t")" + when + ", ";
  switch (upTo(3)) {
    case 0:
    case 1:
      facts_.push_back(head + R"("type": "boolean", "concern": "true"})");
      items_.push_back(itemHead + R"("type": "boolean"})");
      tests_.push_back("%" + id);
      gates_.push_back(R"({"question": ")" + id + R"(", "operator": "=", "answerBoolean": )" + (oneIn(3) ? "false" : "true") + "}");
      return;
    case 2: {
      const bool isMultiple = oneIn(2);
      const std::string codes[] = {"a", "b", "none"};
      std::string options, offered;
      for (const std::string& code : codes) {
        const bool isNone = isMultiple && code == "none";
        options += (options.empty() ? "" : ", ") + (R"({"code": ")" + code + R"(", "display": "d")" + (isNone ? R"(, "none": true)" : "") + "}");
        offered += (offered.empty() ? "" : ", ") + (R"({"valueCoding": {"system": "https://stile.example/option", "code": ")" + code + R"(", "display": "d"})") +
                   (isNone ? R"(, "extension": [{"url": "http://hl7.org/fhir/StructureDefinition/questionnaire-optionExclusive", "valueBoolean": true}]})" : "}");
      }
      facts_.push_back(head + R"("type": "code", "concern": "true", "whenNotApplicable": "none", "options": [)" + options + "]" +
                       (isMultiple ? R"(, "multiple": true})" : "}"));
      items_.push_back(itemHead + R"("type": "choice", )" + (isMultiple ? R"("repeats": true, )" : "") + R"("answerOption": [)" + offered + "]}");
      if (isMultiple) {
        tests_.push_back("%" + id + "A");
        tests_.push_back("%" + id + "B");
      } else {
        tests_.push_back("%" + id + " = 'a'");
        tests_.push_back("%" + id + " in ('a' | 'b')");
      }
      gates_.push_back(R"({"question": ")" + id + R"(", "operator": "=", "answerCoding": {"system": "https://stile.example/option", "code": "a"}})");
      return;
    }
    default:
      facts_.push_back(head + R"("type": "integer", "possible": [0, 9], "concern": "rising"})");
      items_.push_back(itemHead + R"("type": "integer"})");
      tests_.push_back("%" + id + " >= " + std::to_string(1 + upTo(8)));
      tests_.push_back("%" + id + " < " + std::to_string(1 + upTo(8)));
      gates_.push_back(R"({"question": ")" + id + R"(", "operator": ">", "answerInteger": )" + std::to_string(upTo(7)) + "}");
  }
}

std::string WorldMaker::test() { return pick(tests_); }

std::string WorldMaker::condition(int depth) {
  if (depth == 0 || oneIn(3)) return oneIn(5) ? "(" + test() + ").not()" : test();
  return "(" + condition(depth - 1) + (oneIn(2) ? " and " : " or ") + condition(depth - 1) + ")";
}

std::string WorldMaker::limits() {
  switch (upTo(9)) {
    case 0: return R"("action": ")" + pick({"routine", "withinDays", "sameDay"}) + "\"";
    case 1: return R"("clearance": {"both": ")" + pick({"beforeVigorous", "beforeModerate", "beforeAny"}) + R"("})";
    case 2: return R"("clearance": {"aerobic": ")" + pick({"beforeVigorous", "beforeModerate"}) + R"("})";
    case 3:
    case 4: return R"("ceiling": {")" + pick({"both", "aerobic", "strength"}) + R"(": ")" + pick({"moderate", "light", "none"}) + R"("})";
    case 5: return R"("bans": [{"ban": "kneel", "side": ")" + pick({"left", "right", "both"}) + R"("}])";
    case 6: return R"("caps": [{"movement": "bend", "side": ")" + pick({"left", "both"}) + R"(", "degrees": )" + pick({"60", "90"}) + "}]";
    case 7: return R"("doseCaps": {"aerobicMinutesPerSession": )" + pick({"10", "20"}) + "}";
    case 8: return R"("supervision": ")" + pick({"telephoneCheck", "inPerson"}) + "\"";
    default: return R"("referrals": [{"to": "physician", "within": ")" + pick({"routine", "days"}) + R"(", "why": "w", "ask": "a"}])";
  }
}

std::string WorldMaker::rule(int number) {
  const std::string id = "r" + std::to_string(number);
  std::string then = limits();
  if (oneIn(3)) {
    const std::string more = limits();
    if (more.substr(0, 6) != then.substr(0, 6)) then += ", " + more;
  }
  return R"({"id": ")" + id + R"(", "title": "t", "when": ")" + condition(2) + R"(", "then": {)" + then + "}" +
         (oneIn(3) ? R"(, "whenUnsure": ")" + pick({"routine", "sameDay"}) + "\"" : std::string()) +
         R"(, "until": {"key": ")" + pick({"clearance", "report"}) + R"(", "say": "u"}, "say": {"clinician": "c", "client": "c"},
  "sayOpen": {"clinician": "c", "client": "c"}, "sources": ["common practice, no source"],
  "reviewed": {"date": "2026-11-25", "by": "b", "licensed": false}})";
}

std::unique_ptr<SmallWorld> WorldMaker::make() {
  const int questions = 3 + upTo(2);
  for (int i = 0; i < questions; ++i) addQuestion(i);
  if (oneIn(2)) {
    facts_.push_back(R"({"id": "made", "label": "l", "type": "boolean", "concern": "true", "unknownAs": "cautious", "sources": ["s"],
      "derived": {"expression": ")" + condition(1) + R"("}})");
    tests_.push_back("%made");
  }
  std::vector<std::string> ruleTexts;
  const int ruleCount = 2 + upTo(4);
  for (int i = 0; i < ruleCount; ++i) ruleTexts.push_back(rule(i));
  const std::map<std::string, std::string> files{
      {"rules/facts/all.json", R"({"topic": "all", "groups": [], "facts": [)" + joined(facts_) + "]}"},
      {"rules/policy.json", R"({"policies": []})"},
      {"rules/medicines/classes.json", R"({"classes": []})"},
      {"rules/vocabulary.json", kVocabulary},
      {"rules/screening/all.json", R"({"topic": "all", "checks": [], "rules": [)" + joined(ruleTexts) + "]}"}};
  const std::string form = R"({"resourceType": "Questionnaire", "url": "https://stile.example/questionnaire/form", "version": "1",
    "name": "Form", "title": "Form", "status": "draft", "item": [)" + joined(items_) + "]}";
  base::Issues issues;
  auto world = std::make_unique<SmallWorld>();
  world->forms = questionnaire::FormSet::load({{"form.json", form}}, issues);
  world->dictionary = facts::Dictionary::load(files, issues);
  world->dictionary.checkForms(world->forms, issues);
  world->rules = rules::RuleSet::load(files, world->dictionary, issues);
  std::string all;
  for (const auto& issue : issues.all()) all += toText(issue) + "\n";
  INFO(all << form);
  REQUIRE_FALSE(issues.hasErrors());
  world->ground = std::make_unique<interview::Ground>(world->dictionary, world->rules, world->form(), world->blank().plan(), kInterviewDay);
  return world;
}

SlowOutcome slowOutcome(const rules::RuleSet& ruleSet, const facts::FactSet& facts) {
  using screening::EndKind;
  const auto findings = rules::evaluateRules(ruleSet, facts, kInterviewDay);
  SlowOutcome outcome;
  outcome.floor = screening::mergeEnd(findings, EndKind::Floor, {}, {}, facts, screening::Merged::All);
  outcome.reach = screening::mergeEnd(findings, EndKind::Reach, {}, {}, facts, screening::Merged::All);
  outcome.granted = interview::Decision::of(screening::mergeIfGranted(findings, screening::wantedIntensity(facts), {}, {}, facts, screening::Merged::Decision).limits);
  return outcome;
}

facts::FactSet slowAnswer(const SmallWorld& world, facts::FactSet facts, const QuestionRef& ref, const PossibleAnswer& answer) {
  const facts::Definition& fact = *world.ground->questions().at(ref).fact;
  base::Issues ignored;
  const auto settle = [&] { facts::settle(facts, world.forms, kInterviewDay, ignored); };
  for (const auto& option : fact.options) {
    if (option.slot < 0) continue;
    const bool isChosen = std::find(answer.codes.begin(), answer.codes.end(), option.code) != answer.codes.end();
    if (answer.isKnown())
      facts.give(option.slot, -1, expression::Value::boolean(isChosen), kInterviewDay);
    else
      facts.forget(option.slot, -1, answer.why);
  }
  std::string codes;
  for (const std::string& code : answer.codes) codes += (codes.empty() ? "" : ", ") + code;
  if (!answer.isKnown())
    facts.forget(fact.slot, -1, answer.why);
  else
    facts.give(fact.slot, -1, fact.isMultiple ? expression::Value::code(codes) : answer.value, kInterviewDay);
  settle();
  // What no longer applies is in no fact.
  for (std::size_t round = 0; round < facts.plan()->entries().size(); ++round) {
    bool any = false;
    for (const auto& entry : facts.plan()->entries()) {
      if (facts.at(entry.slot).givenReason == facts::UnknownReason::NotAsked) continue;
      if (facts::enablementOf(facts, entry, -1) == expression::Truth::True) continue;
      for (const int slot : entry.slots) facts.forget(slot, -1, facts::UnknownReason::NotAsked);
      any = true;
    }
    if (!any) break;
    settle();
  }
  return facts;
}

}  // namespace stile::test
