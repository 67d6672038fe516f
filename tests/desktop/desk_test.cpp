// What is open at the desk, without a window: a changed plan outlives the program, and what a clinician
// decides against a finding is on record with the screening.
#include "desktop/desk.h"

#include <catch2/catch.hpp>

#include <algorithm>

#include "../application/tarnside.h"
#include "application/scripted_interview.h"
#include "desktop/decision_view.h"

using namespace stile;
using namespace stile::test;
using desktop::Desk;

namespace {

/// The answers of a person of the demonstration who has a plan.
std::shared_ptr<const json::Document> answersOfIdris() {
  const auto text = take(application::readFile(std::string(STILE_SOURCE_DIR) + "/rules/demonstration.json"));
  base::Issues issues;
  const auto all = json::Document::parse(text, "demonstration", issues);
  const auto clients = all->root().find("clients");
  for (std::size_t i = 0; i < clients->size(); ++i) {
    if (clients->at(i).find("client")->find("given")->string() != "Idris") continue;
    json::Writer writer(0);
    writer.copy(*clients->at(i).find("says"));
    return json::Document::parse(writer.text(), "says", issues);
  }
  return nullptr;
}

/// A desk at which Tarnside's client is open.
struct OpenDesk {
  explicit OpenDesk(Tarnside& tarnside, const std::string& handle = "ines", const std::string& passphrase = kInes) : desk(STILE_SOURCE_DIR, kTarnsideDay) {
    tarnside.clinic.reset();
    desk.loadContent([] {});
    desk.takeContent();
    take(desk.openClinic({tarnside.file, handle, passphrase, false}));
    desk.openClient(tarnside.id);
  }
  void answerEverything() {
    take(desk.beginInterview(""));
    take(application::answerAll(*desk.interview(), answersOfIdris()->root(), 0));
    desk.answersChanged();
  }
  const plan::StarterPlan& plan() { return *desk.screening()->plan; }
  bool has(const std::string& exercise) {
    const auto& lines = plan().lines;
    return std::any_of(lines.begin(), lines.end(), [&](const plan::Line& line) { return line.exercise->id == exercise; });
  }
  Desk desk;
};

/// Something the plan offers in the place of one of its lines, and that needs a piece of equipment.
plan::Edit swapIn(const plan::StarterPlan& plan) {
  for (const auto& other : plan.alsoOpen)
    for (const auto& line : plan.lines)
      if (line.exercise->purpose == other.exercise->purpose && !other.exercise->equipment.empty()) return {plan::EditKind::Swap, line.exercise->id, other.exercise->id, {}};
  FAIL("nothing can be swapped");
  return {};
}

}  // namespace

TEST_CASE("A changed plan stands in the draft: the next sitting finds it, undoes it or files it") {
  Tarnside tarnside;
  plan::Edit swap;
  {
    OpenDesk open(tarnside);
    open.answerEverything();
    swap = swapIn(open.plan());
    REQUIRE_FALSE(open.has(swap.with));
    REQUIRE_FALSE(open.desk.editPlan(swap));
    CHECK(open.desk.isPlanSaved());
  }
  {
    OpenDesk open(tarnside);
    CHECK(open.has(swap.with));
    CHECK_FALSE(open.has(swap.exercise));
    REQUIRE(open.desk.undoEdit());
    CHECK_FALSE(open.has(swap.with));
    REQUIRE_FALSE(open.desk.editPlan(swap));
  }
  {
    OpenDesk open(tarnside);
    CHECK(open.has(swap.with));
    base::Issues issues;
    take(open.desk.completeInterview(issues));
    CHECK(open.has(swap.with));
  }
  OpenDesk open(tarnside);
  CHECK(open.has(swap.with));
  CHECK_FALSE(open.desk.canEditPlan());
}

TEST_CASE("A change of the plan that another answer closes falls away, and the desk says so") {
  Tarnside tarnside;
  OpenDesk open(tarnside);
  open.answerEverything();
  const plan::Edit swap = swapIn(open.plan());
  REQUIRE_FALSE(open.desk.editPlan(swap));
  CHECK(open.desk.droppedEdits().empty());
  auto& interview = *open.desk.interview();
  answers::Answer none;
  none.code = "none";
  base::Issues issues;
  const int place = interview.session().ground().questions().placeOf(open.desk.content()->dictionary.find("homeHas")->slot);
  REQUIRE(take(interview.answer({place, -1}, {none}, issues)));
  open.desk.answersChanged();
  CHECK_FALSE(open.has(swap.with));
  REQUIRE(open.desk.droppedEdits().size() == 1);
  CHECK(contains(open.desk.droppedEdits().front(), open.desk.content()->library.find(swap.with)->title));
  take(open.desk.completeInterview(issues));
  CHECK_FALSE(open.has(swap.with));
}

TEST_CASE("The figure that a client wants to see is kept in the record; answers and plan stay as they are") {
  using movement::Build;
  Tarnside tarnside;
  plan::Edit swap;
  {
    OpenDesk open(tarnside);
    open.answerEverything();
    swap = swapIn(open.plan());
    REQUIRE_FALSE(open.desk.editPlan(swap));
    CHECK_FALSE(open.desk.chosenBuild());
    CHECK(open.desk.drawnBuild() == Build::Sturdy);
    take(open.desk.chooseBuild(Build::Slight));
    CHECK(open.has(swap.with));
    CHECK(open.desk.drawnBuild() == Build::Slight);
    CHECK(take(open.desk.orderPapers()).options.build == Build::Slight);
  }
  OpenDesk open(tarnside);
  CHECK(open.has(swap.with));
  CHECK(open.desk.chosenBuild() == Build::Slight);
  base::Issues issues;
  take(open.desk.completeInterview(issues));
  CHECK(open.desk.drawnBuild() == Build::Slight);
  take(open.desk.chooseBuild(std::nullopt));
  CHECK(open.has(swap.with));
  CHECK(open.desk.drawnBuild() == Build::Sturdy);
}

TEST_CASE("An override files the screening it is about and stands beside the finding; an acute one waits for a second signature") {
  Tarnside tarnside;
  take(tarnside.clinic->file().addClinician({"rolf", "Rolf Anning", "physician", records::Role::Lead, false, false, {}}, kRolf));
  std::string waiting;
  {
    OpenDesk open(tarnside);
    open.answerEverything();
    const auto findings = application::overridable(*open.desk.screening());
    REQUIRE_FALSE(findings.empty());
    CHECK(findings.front().isCertain);  // what is not settled stands behind what is
    CHECK(std::is_partitioned(findings.begin(), findings.end(), [](const auto& one) { return one.isCertain; }));
    CHECK(open.desk.notes().overrides.empty());
    take(open.desk.overrideFinding(findings.front().rule, "light for two weeks", "seen and examined"));
    CHECK_FALSE(open.desk.filedEntry().empty());
    std::string acute;
    for (const auto& rule : open.desk.content()->rules.rules)
      if (rule.acute && !rule.absolute) acute = rule.id;
    take(open.desk.overrideFinding(acute, "goes on", "known and settled"));
    const auto& notes = open.desk.notes();
    REQUIRE(notes.overrides.size() == 2);
    CHECK(notes.overrides[0].by == "Ines Calloway, physiotherapist");
    CHECK_FALSE(notes.overrides[0].needsSecond);
    CHECK(notes.overrides[1].needsSecond);
    waiting = notes.overrides[1].entry;
    CHECK_FALSE(open.desk.signSecond(waiting).ok());
    const auto left = take(open.desk.signOff());
    CHECK(left.size() == 1);
    CHECK(contains(desktop::noteOf(*open.desk.screening(), *open.desk.content(), open.desk.notes()), "light for two weeks"));
  }
  OpenDesk open(tarnside, "rolf", kRolf);
  REQUIRE(open.desk.screening() != nullptr);
  CHECK(open.desk.isSignedOff());
  take(open.desk.signSecond(waiting));
  CHECK(open.desk.notes().overrides[1].secondBy == "Rolf Anning, physician");
}
