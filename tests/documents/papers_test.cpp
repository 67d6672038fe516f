// Invented people through the real content, onto paper.
#include <algorithm>
#include <catch2/catch.hpp>

#include "documents/client_sheets.h"
#include "documents/exercise_blocks.h"
#include "documents/handout.h"
#include "documents/html_writer.h"
#include "documents/summary.h"
#include "documents/text_writer.h"
#include "documents/waiting_sheet.h"
#include "pdf_words.h"
#include "sample_screenings.h"

using namespace stile;
using namespace stile::documents;
using screening::PlanState;

namespace {

std::string summaryWords(const screening::Screening& screening) {
  return wordsOf(summaryOf(screening, content(), clinicSettings(), kMaren, {}));
}

std::optional<Document> handout(const screening::Screening& screening) {
  return handoutOf({screening, content(), clinicSettings(), kMaren, handoutTexts()});
}

std::optional<Document> waiting(const screening::Screening& screening) {
  return waitingSheetOf({screening, content(), clinicSettings(), kMaren, handoutTexts()});
}

/// Words that no paper may say of a client or an exercise.
void checkVoice(const std::string& words) {
  for (const char* word : {" cleared", " safe ", " safe.", " safely", " is fit", " are fit", "{"}) {
    INFO(word);
    CHECK_FALSE(has(words, word));
  }
}

}  // namespace

TEST_CASE("every paper carries clinic, client, date, content version and caution") {
  for (const char* name : {"maren", "waiting"}) {
    const auto screening = screened(name);
    std::vector<Document> papers{summaryOf(screening, content(), clinicSettings(), kMaren, {})};
    if (auto paper = handout(screening)) papers.push_back(*paper);
    if (auto paper = waiting(screening)) papers.push_back(*paper);
    CHECK(papers.size() == 2);
    for (const Document& paper : papers) {
      const std::string words = wordsOf(paper);
      for (const std::string& part : {std::string("Tarnside Movement Clinic"), std::string("Maren Oakshott"),
                                      std::string("25 November 2026"), content().version,
                                      paper.reader == Reader::Client ? handoutTexts().phrase("caution")
                                                                     : content().intendedUse.caution,
                                      paper.reader == Reader::Client ? handoutTexts().phrase("notReviewed")
                                                                     : content().intendedUse.notReviewed}) {
        INFO(paper.title << ": " << part);
        CHECK(has(words, part));
        CHECK(has(toHtml(paper), part));
      }
    }
  }
}

TEST_CASE("the summary names every certain finding with its reasons, and every source how it was seen") {
  const auto screening = screened("maren");
  const std::string words = summaryWords(screening);
  for (const auto& finding : screening.findings) {
    if (finding.standing != rules::Standing::Certain) continue;
    INFO(finding.rule->id);
    CHECK(has(words, finding.rule->title));
    CHECK(has(words, afterTitle(finding.rule->title, finding.say.clinician)));
    for (const auto& source : finding.rule->sources) CHECK(has(words, content().rules.cite(source)));
  }
  CHECK(has(words, "Metoprolol"));
  CHECK(has(words, "Starter plan"));
  CHECK_FALSE(has(words, "Held plan"));
}

TEST_CASE("the summary names every limit of the cautious end") {
  const auto screening = screened("maren");
  const std::string words = summaryWords(screening);
  const auto& vocabulary = content().rules.vocabulary;
  for (const auto& ban : screening.floor.limits.bans) {
    std::string term = vocabulary.bans.find(ban.ban)->second.clinician;
    CHECK(has(words, term.substr(1)));
  }
  for (const auto& [key, degrees] : screening.floor.limits.caps)
    CHECK(has(words, vocabulary.movements.find(key.movement)->second.clinician.substr(1)));
  for (const auto& id : screening.floor.limits.checks)
    CHECK(has(words, content().rules.checks.find(id)->second.say.clinician));
}

TEST_CASE("an answer asked back stands on the summary") {
  base::Issues asked;
  asked.add({base::Severity::AskBack,
             {},
             "restingHeartRate",
             "a pulse of 30 is unusual",
             "count again for a minute"});
  const std::string words = wordsOf(summaryOf(screened("healthy"), content(), {}, {}, asked));
  CHECK(has(words, "A pulse of 30 is unusual."));
  CHECK(has(words, "Count again for a minute."));
}

TEST_CASE("nothing known: the summary groups and counts the questions, names the first of each, and the annex has all") {
  const auto screening = screened("nothing");
  const Document paper = summaryOf(screening, content(), clinicSettings(), kMaren, {});
  Document first = paper;
  first.sections.pop_back();
  const std::string front = wordsOf(first), all = wordsOf(paper);
  CHECK(has(front, "Nothing can start yet: answers are missing."));
  CHECK(has(front, std::to_string(screening.openQuestions.size()) + " questions can still change something."));
  std::size_t named = 0, counted = 0;
  for (const auto& question : screening.openQuestions) {
    named += has(front, question.label) ? 1u : 0u;
    CHECK(has(all, question.label));
  }
  for (std::size_t at = front.find(" questions."); at != std::string::npos; at = front.find(" questions.", at + 1)) {
    std::size_t from = at;
    while (from > 0 && std::isdigit(static_cast<unsigned char>(front[from - 1])) != 0) --from;
    if (from < at) counted += std::stoul(front.substr(from, at - from));
  }
  CHECK(counted == screening.openQuestions.size());
  CHECK(named < 40);
  CHECK(has(toHtml(paper), "<summary>Every open question, not asked where nothing else is said</summary>"));
  CHECK_FALSE(handout(screening).has_value());
}

TEST_CASE("crisis line and e-mail address stand on every sheet for the client that has the stop boxes or the contact") {
  auto settings = clinicSettings();
  settings.crisisLine = "01632 960 999";
  settings.email = "desk@tarnside.example";
  for (const char* name : {"maren", "waiting"}) {
    const auto screening = screened(name);
    const ClientRequest request{screening, content(), settings, kMaren, handoutTexts()};
    for (const auto& paper : {handoutOf(request), waitingSheetOf(request), carerSheetOf(request)}) {
      if (!paper) continue;
      INFO(paper->title);
      CHECK(has(wordsOf(*paper), "call 01632 960 999"));
      CHECK(has(wordsOf(*paper), "desk@tarnside.example"));
    }
  }
}

TEST_CASE("the handout goes out only with a plan, the waiting sheet only without") {
  for (const char* name : {"healthy", "maren", "waiting", "emergency", "pressure", "nothing", "half"}) {
    const auto screening = screened(name);
    INFO(name);
    CHECK(handout(screening).has_value() == (screening.planState == PlanState::Made));
    CHECK(waiting(screening).has_value() != handout(screening).has_value());
  }
}

TEST_CASE("the handout carries every check, gate and ban of the limits") {
  for (const char* name : {"healthy", "maren"}) {
    const auto screening = screened(name);
    const auto paper = handout(screening);
    REQUIRE(paper);
    const auto issues = checkHandout(screening, *paper, content().rules);
    for (const auto& issue : issues.all())
      FAIL_CHECK(issue.subject + ": " + issue.message + "; " + issue.remedy);
  }
}

TEST_CASE("a handout that lost a check, a gate or a ban fails the check of its content") {
  auto screening = screened("healthy");
  const auto paper = handout(screening);
  REQUIRE(paper);
  screening.floor.limits.bans.insert({"prone", limits::Side::Both});
  screening.floor.limits.checks.insert(content().rules.checks.begin()->first);
  screening.floor.limits.gates["bloodKetones"].client.insert("Do not start with ketones of 9 or more.");
  const auto issues = checkHandout(screening, *paper, content().rules);
  CHECK(issues.all().size() >= 4);
}

TEST_CASE("the handout tells what to do, how much, and when to stop, in the client's words") {
  const auto screening = screened("maren");
  const auto paper = handout(screening);
  REQUIRE(paper);
  const std::string words = wordsOf(*paper);
  for (const auto& line : screening.plan->lines) {
    CHECK(has(words, line.exercise->title));
    const DoseWords dose = doseWordsOf(line, content().library);
    CHECK(has(words, dose.amount));
    CHECK(has(words, dose.manner));
    CHECK(has(line.dose.words, dose.amount));
    CHECK(line.dose.words.size() <= dose.amount.size() + dose.manner.size() + 1);
  }
  CHECK(has(words, "Call 112 now if"));
  CHECK(has(words, "Stop today and call us if"));
  CHECK(has(words, "the night line, 01632 960 400"));
  CHECK(has(words, "Use it until 17 February 2027."));
  CHECK(has(words, "Not for now"));
  checkVoice(words);
}

TEST_CASE("the box on the first page holds five lines at most, the rest stands on the last page") {
  const auto paper = handout(screened("maren"));
  REQUIRE(paper);
  std::vector<std::size_t> sizes;
  for (const Section& section : paper->sections)
    for (const Block& block : section.blocks)
      if (const auto* box = std::get_if<Box>(&block.form); box != nullptr && box->kind == BoxKind::NotForNow)
        sizes.push_back(std::get<Rows>(box->blocks.front().form).rows.size());
  REQUIRE_FALSE(sizes.empty());
  CHECK(sizes.front() <= 5);
  if (sizes.size() > 1) CHECK(sizes.front() == 5);
}

TEST_CASE("the waiting sheet holds nothing of a held plan") {
  const auto screening = screened("waiting");
  REQUIRE(screening.planState == PlanState::Held);
  const auto paper = waiting(screening);
  REQUIRE(paper);
  const std::string words = wordsOf(*paper);
  for (const auto& line : screening.heldPlan->lines) CHECK_FALSE(has(words, line.exercise->title));
  CHECK(has(words, "Do not start to exercise yet."));
  CHECK(has(words, "We wait for an answer from your doctor."));
  CHECK(has(words, "Call 112 now if"));
  CHECK(has(words, "01632 960 417"));
  checkVoice(words);
  CHECK(has(summaryWords(screening), "Held: for the clinician only"));
}

TEST_CASE("safety: a knock to the head goes to emergency on an anticoagulant, also without symptoms") {
  const auto& sentences = handoutTexts().emergency;
  const auto strict = std::find_if(sentences.begin(), sentences.end(),
                                   [](const ClientSentence& one) { return one.insteadOf == "head"; });
  REQUIRE(strict != sentences.end());
  HandMade made;
  const auto at = made.finding("Anticoagulant", rules::KeyKind::None, "");
  const_cast<rules::Rule*>(made.at(at).rule)->id = "anticoagulant-care";
  made.at(at).standing = rules::Standing::Open;
  const auto said = HandoutTexts::chosen(sentences, made.make(), Choice::AllFindings);
  CHECK(std::find(said.begin(), said.end(), strict->say) != said.end());
  CHECK(has(strict->say, "even if you feel well"));
}

TEST_CASE("safety: a waiting sheet gives reasons, and the precautions after an operation, not how to exercise") {
  const auto screening = screened("sternotomy");
  const auto paper = waiting(screening);
  REQUIRE(paper);
  const std::string words = wordsOf(*paper);
  CHECK_FALSE(has(words, "Start with easy"));
  CHECK_FALSE(has(words, "Go on as you do"));
  CHECK(has(words, "Lift no more than 2.2 kg"));
  CHECK(has(words, "Leave out: reaching behind your back"));
  CHECK(has(words, "breastbone clicks"));
  CHECK_FALSE(has(wordsOf(*waiting(screened("nothing"))), "what you told us"));
}

TEST_CASE("safety: every sheet has a number for despair, the clinic's own or the emergency number") {
  auto settings = clinicSettings();
  settings.crisisLine.clear();
  const auto screening = screened("waiting");
  const auto paper = waitingSheetOf({screening, content(), settings, kMaren, handoutTexts()});
  REQUIRE(paper);
  CHECK(has(wordsOf(*paper), "too hard to bear, call " + settings.emergencyNumber));
}

TEST_CASE("safety: what a check says to the clinician, its client is told too") {
  const auto client = [](const char* id) { return content().rules.checks.at(id).say.client; };
  for (const char* limit : {"180", "160", "220", "105"}) CHECK(has(client("pressure-at-session"), limit));
  for (const char* part : {"13.9", "before sleep", "5.0"}) CHECK(has(client("glucose-around"), part));
  CHECK(has(client("replaced-hip"), "calf swells, call the emergency number"));
  CHECK(has(client("replaced-knee"), "calf swells, call the emergency number"));
  CHECK(has(client("pregnancy-stop-signs"), "chest pain, no breath at rest or a sore calf, call the emergency number"));
  CHECK(has(client("pregnancy-stop-signs"), "midwife or maternity ward"));
}

TEST_CASE("an emergency: the summary opens with the call, the waiting sheet says what to do now") {
  const auto screening = screened("emergency");
  const std::string text = toText(summaryOf(screening, content(), clinicSettings(), kMaren, {}));
  CHECK(text.find("*** Call 112 ***") < 400);
  CHECK(has(text, "Emergency. No exercise."));
  const auto paper = waiting(screening);
  REQUIRE(paper);
  const std::string words = wordsOf(*paper);
  CHECK(has(words, "You need help now. Call 112."));
  CHECK_FALSE(has(words, "What you can go on with"));
}

TEST_CASE("without settings and names the papers leave lines to write on, and no number is made up") {
  const auto screening = screened("maren");
  const auto paper = handoutOf({screening, content(), {}, {}, handoutTexts()});
  REQUIRE(paper);
  CHECK(has(wordsOf(*paper), "Call the emergency number now if"));
  CHECK(has(toHtml(*paper), "name <span class=\"blank\"></span>"));
}
