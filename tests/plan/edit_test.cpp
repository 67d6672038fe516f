// A clinician swaps, pins, drops and adds; the rest of the plan is chosen anew.
#include <algorithm>
#include <catch2/catch.hpp>
#include <random>
#include <set>

#include "planning.h"

using namespace stile;
using namespace stile::plan;
using limits::Rung;
using limits::Side;

namespace {

Client active() {
  return Client().hasEverything().startsAt('D');
}

Edit pin(const char* exercise, const char* reason = "") {
  return {EditKind::Pin, exercise, "", reason};
}
Edit add(const char* exercise, const char* reason = "") {
  return {EditKind::Add, exercise, "", reason};
}
Edit drop(const char* exercise) {
  return {EditKind::Drop, exercise, "", ""};
}
Edit swap(const char* exercise, const char* with, const char* reason = "") {
  return {EditKind::Swap, exercise, with, reason};
}

std::vector<std::string> idsOf(const StarterPlan& plan) {
  std::vector<std::string> ids;
  for (const Line& line : plan.lines) ids.push_back(line.exercise->id);
  return ids;
}

int count(const StarterPlan& plan, const char* purpose) {
  return static_cast<int>(std::count_if(plan.lines.begin(), plan.lines.end(),
                                        [&](const Line& line) { return line.exercise->purpose == purpose; }));
}

bool contains(const std::string& text, const char* part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("Without edits the plan is the same") {
  const auto edited = active().edited({});
  CHECK(edited.refused.empty());
  CHECK(idsOf(edited.plan) == idsOf(active().plan()));
}

TEST_CASE("A swap puts the one in the other's place and says who swapped what") {
  REQUIRE(lineOf(active().plan(), "counter-push-up") != nullptr);
  const auto edited = active().edited({"I. Calloway", {swap("counter-push-up", "wall-push-up")}});
  CHECK(edited.refused.empty());
  CHECK(lineOf(edited.plan, "counter-push-up") == nullptr);
  CHECK(count(edited.plan, "push-strength") == 1);
  const Line* line = lineOf(edited.plan, "wall-push-up");
  REQUIRE(line != nullptr);
  CHECK(contains(line->pinnedBy, "Swapped by I. Calloway"));
  CHECK_FALSE(line->override);
  CHECK_FALSE(line->dose.words.empty());
  const LeftOut* out = leftOutOf(edited.plan, "counter-push-up");
  REQUIRE(out != nullptr);
  CHECK(contains(out->because, "Swapped by I. Calloway"));
  CHECK(out->instead == "wall-push-up");
  REQUIRE(edited.plan.edits.list.size() == 1);
  CHECK(edited.plan.edits.list.front().with == "wall-push-up");
}

TEST_CASE("A swap keeps to one purpose") {
  const auto edited = active().edited({"", {swap("counter-push-up", "band-row-seated")}});
  REQUIRE(edited.refused.size() == 1);
  CHECK(contains(edited.refused.front().because, "for push-strength"));
  CHECK(idsOf(edited.plan) == idsOf(active().plan()));
  CHECK(edited.plan.edits.list.empty());
}

TEST_CASE("A pinned exercise takes the place of the one chosen for its purpose") {
  const auto edited = active().edited({"", {pin("step-up")}});
  CHECK(edited.refused.empty());
  REQUIRE(lineOf(edited.plan, "step-up") != nullptr);
  CHECK(lineOf(edited.plan, "step-up")->pinnedBy == "Pinned by the clinician.");
  CHECK(count(edited.plan, "leg-strength") == count(active().plan(), "leg-strength"));
}

TEST_CASE("An added exercise stands besides the others and takes nobody's place") {
  const auto before = active().plan();
  const auto edited = active().edited({"", {add("step-up")}});
  CHECK(edited.refused.empty());
  CHECK(edited.plan.lines.size() == before.lines.size() + 1);
  for (const Line& line : before.lines) CHECK(lineOf(edited.plan, line.exercise->id) != nullptr);
  CHECK(std::is_sorted(edited.plan.lines.begin(), edited.plan.lines.end(), [](const Line& a, const Line& b) {
    return a.exercise->section < b.exercise->section;
  }));
  const auto again = active().edited({"", {add("sit-to-stand")}});
  REQUIRE(again.refused.size() == 1);
  CHECK(contains(again.refused.front().because, "in the plan already"));
}

TEST_CASE("What is dropped is replaced by the next best, which says that it is new") {
  const auto edited = active().edited({"", {drop("sit-to-stand")}});
  CHECK(edited.refused.empty());
  CHECK(lineOf(edited.plan, "sit-to-stand") == nullptr);
  const Line* legs = lineFor(edited.plan, "leg-strength");
  REQUIRE(legs != nullptr);
  CHECK(contains(legs->chosenBecause, "New in the plan"));
  CHECK(contains(leftOutOf(edited.plan, "sit-to-stand")->because, "Dropped by the clinician"));
}

TEST_CASE("A purpose can be dropped whole, and makes room for the next") {
  const auto beginner = Client().hasEverything().startsAt('B');
  REQUIRE(lineFor(beginner.plan(), "leg-strength") != nullptr);
  const auto edited = beginner.edited({"", {drop("leg-strength")}});
  CHECK(count(edited.plan, "leg-strength") == 0);
  CHECK(contains(leftOutOf(edited.plan, "", "leg-strength")->because, "Dropped by the clinician"));
  const auto strength = [](const StarterPlan& plan) {
    return std::count_if(plan.lines.begin(), plan.lines.end(),
                         [](const Line& line) { return line.exercise->section == Section::Strength; });
  };
  CHECK(strength(edited.plan) == strength(beginner.plan()));
}

TEST_CASE("A later edit about the same exercise takes the place of an earlier one") {
  const auto edited = active().edited({"", {drop("wall-push-up"), pin("wall-push-up")}});
  CHECK(lineOf(edited.plan, "wall-push-up") != nullptr);
  const auto chain =
      active().edited({"", {swap("counter-push-up", "wall-push-up"), swap("wall-push-up", "band-press")}});
  CHECK(chain.refused.empty());
  CHECK(lineFor(chain.plan, "push-strength")->exercise->id == "band-press");
}

TEST_CASE("Beyond the limits nothing is added without a reason, and the reason stays with the line") {
  const auto sore = active().under("sore-wrists", banned("weightOnHands"));
  const auto refused = sore.edited({"", {add("wall-push-up")}});
  REQUIRE(refused.refused.size() == 1);
  CHECK(refused.refused.front().needsOverride);
  CHECK(contains(refused.refused.front().because, "sore-wrists"));
  CHECK(idsOf(refused.plan) == idsOf(sore.plan()));

  const auto edited =
      sore.edited({"I. Calloway", {add("wall-push-up", "wrists tested today, no pain with a flat hand")}});
  CHECK(edited.refused.empty());
  const Line* line = lineOf(edited.plan, "wall-push-up");
  REQUIRE(line != nullptr);
  REQUIRE(line->override);
  CHECK(contains(line->override->beyond, "sore-wrists"));
  CHECK(contains(line->override->reason, "no pain with a flat hand"));
  CHECK(line->override->rules == std::vector<std::string>{"sore-wrists"});
  CHECK_FALSE(line->override->needsSecond);
  CHECK(leftOutOf(edited.plan, "wall-push-up") == nullptr);
}

TEST_CASE("A reason where nothing stands in the way makes no override") {
  const auto edited = active().edited({"", {pin("step-up", "she likes stairs")}});
  REQUIRE(lineOf(edited.plan, "step-up") != nullptr);
  CHECK_FALSE(lineOf(edited.plan, "step-up")->override);
}

TEST_CASE("An override takes the form that goes least beyond") {
  // As written the neck turns 60 degrees, eased 30.
  const auto edited = active()
                          .under("neck", capped("neckRotation", 20))
                          .edited({"", {add("neck-turn", "agreed with the surgeon")}});
  const Line* line = lineOf(edited.plan, "neck-turn");
  REQUIRE(line != nullptr);
  REQUIRE(line->override);
  CHECK_FALSE(line->override->beyond.empty());
}

TEST_CASE("An override does less of the movement where that goes less beyond, and no less than needed") {
  // Nothing of it keeps within 10 degrees: the least share goes least beyond, and the reason names what it
  // asks.
  const auto& turn = *realContent().library.find("neck-turn");
  const auto far = active()
                       .under("neck", capped("neckRotation", 10))
                       .edited({"", {add("neck-turn", "agreed with the surgeon")}});
  const Line* line = lineOf(far.plan, "neck-turn");
  REQUIRE(line != nullptr);
  CHECK(line->percent == turn.scaling->leastPercent);
  const auto& least = turn.scaling->scales.front().front();
  const auto at = std::find_if(turn.demands.begin(), turn.demands.end(),
                               [](const Demand& each) { return each.movement == "neckRotation"; });
  CHECK(contains(
      line->override->beyond,
      (least[static_cast<std::size_t>(at - turn.demands.begin())].toText() + " degrees, limit 10").c_str()));
  CHECK_FALSE(line->saidSmaller.empty());
  // Beside a ban the cap is met, as far as it allows.
  const auto limited =
      active().under("shoulder", capped("shoulderElevation", 100)).under("arms", banned("upperBodyLoad"));
  const auto taken = limited.edited({"", {add("overhead-press", "examined today")}});
  const Line* press = lineOf(taken.plan, "overhead-press");
  REQUIRE(press != nullptr);
  CHECK_FALSE(contains(press->override->beyond, "limit 100"));
  CHECK(contains(press->override->beyond, "arms"));
  CHECK((press->percent < 100 || press->form > 0));
}

TEST_CASE("No form of an exercise goes less beyond a cap than the one an override takes") {
  int tried = 0;
  for (const Exercise& exercise : realContent().library.exercises) {
    if (!exercise.scaling) continue;
    for (const std::string& movement : exercise.scaling->eases) {
      const auto edited =
          active().under("rule", capped(movement, 1)).edited({"", {add(exercise.id.c_str(), "agreed")}});
      const Line* line = lineOf(edited.plan, exercise.id);
      if (line == nullptr || !line->override) continue;
      // Degrees past the cap of 1, both limbs together; the same words are said once.
      const auto asks = [&](std::size_t form, const std::vector<base::Rational>* row) {
        std::set<base::Rational> each;
        const auto& asked = exercise.demandsOfForm(form);
        for (std::size_t i = 0; i < asked.size(); ++i)
          if (asked[i].movement == movement) each.insert(row == nullptr ? asked[i].degrees : (*row)[i]);
        base::Rational all = 0;
        for (const base::Rational& degrees : each)
          if (degrees > base::Rational(1))
            all = *base::Rational::add(all, *base::Rational::subtract(degrees, base::Rational(1)));
        return all;
      };
      const auto& scale = exercise.scaling->scales.at(line->form);
      const base::Rational taken =
          line->percent == 100
              ? asks(line->form, nullptr)
              : asks(line->form, &scale[static_cast<std::size_t>(
                                     (line->percent - exercise.scaling->leastPercent) / kScaleStep)]);
      INFO(exercise.id << " " << movement << " form " << line->form << " at " << line->percent << " %");
      for (std::size_t form = 0; form <= exercise.easings.size(); ++form) {
        CHECK(taken <= asks(form, nullptr));
        for (const auto& row : exercise.scaling->scales[form]) CHECK(taken <= asks(form, &row));
      }
      ++tried;
    }
  }
  CHECK(tried > 30);
}

TEST_CASE("What an absolute rule holds cannot be overridden; an acute one wants a second signature") {
  const auto held = active()
                        .under("absolute-rule", banned("kneeling"), false, {}, {}, false, true)
                        .edited({"", {add("floor-push-up-knees", "he asks for it")}});
  REQUIRE(held.refused.size() == 1);
  CHECK_FALSE(held.refused.front().needsOverride);
  CHECK(contains(held.refused.front().because, "absolute-rule"));
  const auto acute = active()
                         .under("acute-rule", banned("kneeling"), false, {}, {}, true)
                         .edited({"", {add("floor-push-up-knees", "knee examined")}});
  REQUIRE(lineOf(acute.plan, "floor-push-up-knees") != nullptr);
  CHECK(lineOf(acute.plan, "floor-push-up-knees")->override->needsSecond);
}

TEST_CASE("A shut rung and a shut bay want a clearance, not an override") {
  const auto light = active().usable(Rung::Light, Rung::Light).edited({"", {add("stairs", "he is strong")}});
  REQUIRE(light.refused.size() == 1);
  CHECK_FALSE(light.refused.front().needsOverride);
  CHECK(contains(light.refused.front().because, "clearance"));
  const auto shut =
      active().usable(Rung::Light, Rung::None).edited({"", {add("wall-push-up", "he is strong")}});
  REQUIRE(shut.refused.size() == 1);
  CHECK_FALSE(shut.refused.front().needsOverride);
  const auto nothing =
      active().usable(Rung::None, Rung::None).edited({"", {add("wall-push-up", "he is strong")}});
  CHECK(nothing.refused.size() == 1);
  CHECK(nothing.plan.isEmpty());
}

TEST_CASE("A missing thing, and what comes later than the starting level, want a reason too") {
  const auto plain = Client().is("homeHasBand", false).edited({"", {add("band-press")}});
  REQUIRE(plain.refused.size() == 1);
  CHECK(plain.refused.front().needsOverride);
  CHECK(contains(plain.refused.front().because, "band"));
  const auto lent = Client().edited({"", {add("band-press", "the clinic lends her a band")}});
  CHECK(lent.refused.empty());
  REQUIRE(lineOf(lent.plan, "band-press") != nullptr);
  CHECK(lineOf(lent.plan, "band-press")->override->rules.empty());
  const auto early =
      Client().hasEverything().startsAt('A').edited({"", {add("step-up", "climbs stairs daily")}});
  const Line* step = lineOf(early.plan, "step-up");
  REQUIRE(step != nullptr);
  CHECK(contains(step->override->beyond, "the start is light"));
  CHECK(*step->dose.effortHigh <= base::Rational(4));  // the dose stays that of the level
}

TEST_CASE("What does not fit into the session wants a reason; warm-up and cool-down stay") {
  const auto sure = [](const StarterPlan& plan) {
    return lineFor(plan, "warm-up") != nullptr && lineFor(plan, "cool-down") != nullptr;
  };
  const auto brief = active().under("tires-soon", dosed("sessionMinutes", 20));
  REQUIRE(sure(brief.plan()));
  Edits many{"", {}};
  for (const char* exercise : {"step-up", "mini-squat", "bridge", "clam", "towel-row", "toe-raise"})
    many.list.push_back(pin(exercise));
  const auto refused = brief.edited(many);
  CHECK_FALSE(refused.refused.empty());
  CHECK(refused.refused.front().needsOverride);
  CHECK(sure(refused.plan));
  for (Edit& edit : many.list) edit.overrideReason = "two sessions, agreed with her";
  const auto taken = brief.edited(many);
  CHECK(taken.refused.empty());
  CHECK(sure(taken.plan));
  for (const Edit& edit : many.list) CHECK(lineOf(taken.plan, edit.exercise) != nullptr);
}

TEST_CASE("A misspelt exercise is refused with a near name") {
  const auto edited = active().edited({"", {pin("wall-pushup")}});
  REQUIRE(edited.refused.size() == 1);
  CHECK(contains(edited.refused.front().because, "wall-push-up"));
}

TEST_CASE("What is open and was not chosen is listed with why another came first") {
  const auto plan = active().plan();
  const auto at = std::find_if(plan.alsoOpen.begin(), plan.alsoOpen.end(),
                               [](const AlsoOpen& other) { return other.exercise->id == "step-up"; });
  REQUIRE(at != plan.alsoOpen.end());
  CHECK(contains(at->because, "starting level"));
  for (const AlsoOpen& other : plan.alsoOpen) {
    INFO(other.exercise->id);
    CHECK(lineOf(plan, other.exercise->id) == nullptr);
    const auto swapped = active().edited({"", {pin(other.exercise->id.c_str())}});
    CHECK(swapped.refused.empty());
    CHECK_FALSE(lineOf(swapped.plan, other.exercise->id)->override);
  }
}

// Whatever is asked for in whatever order, the plan holds what was fixed and nothing that was dropped, and
// goes beyond the limits only in lines that say so.
TEST_CASE("Generated edits are followed or refused, never half") {
  std::mt19937 random(20261128);
  const auto& exercises = realContent().library.exercises;
  const auto any = [&] { return exercises[random() % exercises.size()].id.c_str(); };
  int followed = 0, overridden = 0;
  for (int round = 0; round < 80; ++round) {
    Client client = Client().hasEverything().startsAt("ABCD"[random() % 4]);
    if (random() % 2 == 0) client.under("limits", capped("hipFlexion", 60 + static_cast<int>(random() % 60)));
    if (random() % 2 == 0) client.under("bans", banned("weightOnHands"));
    if (random() % 3 == 0)
      client.under("short", dosed("sessionMinutes", 20 + static_cast<int>(random() % 30)));
    Edits edits{"", {}};
    for (int i = 0; i < 5; ++i) {
      const char* reason = random() % 2 == 0 ? "agreed" : "";
      switch (random() % 4) {
        case 0:
          edits.list.push_back(pin(any(), reason));
          break;
        case 1:
          edits.list.push_back(add(any(), reason));
          break;
        case 2:
          edits.list.push_back(drop(any()));
          break;
        default:
          edits.list.push_back(swap(any(), any(), reason));
      }
    }
    INFO("round " << round);
    const auto edited = client.edited(edits);
    REQUIRE(edited.plan.edits.list.size() + edited.refused.size() == edits.list.size());
    std::map<std::string, bool> wanted;
    for (const Edit& edit : edited.plan.edits.list) {
      wanted[edit.exercise] = edit.kind == EditKind::Pin || edit.kind == EditKind::Add;
      if (edit.kind == EditKind::Swap) wanted[edit.with] = true;
      ++followed;
    }
    for (const auto& [exercise, isThere] : wanted) {
      INFO(exercise);
      CHECK((lineOf(edited.plan, exercise) != nullptr) == isThere);
    }
    for (const Line& line : edited.plan.lines) {
      if (line.override) {
        CHECK_FALSE(line.override->reason.empty());
        ++overridden;
      } else {
        // What is no override would be offered by the program itself.
        CHECK(client.edited({"", {pin(line.exercise->id.c_str())}}).refused.empty());
      }
    }
  }
  CHECK(followed > 60);
  CHECK(overridden > 10);
}
