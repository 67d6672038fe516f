#include "plan/starter_plan.h"

#include <algorithm>
#include <cassert>
#include <cstdlib>

#include "plan/candidate.h"
#include "plan/choice.h"
#include "plan/line_dose.h"
#include "plan/week_plan.h"

namespace stile::plan {
namespace {

/// What one purpose has to choose from.
struct Offer {
  const Purpose* purpose = nullptr;
  std::vector<Candidate> candidates;  ///< by exercise id
  std::vector<Dose> doses;            ///< of each candidate
  std::vector<Refusal> refusals;
  std::vector<int> chosen;            ///< indices into candidates
};

class Planner {
 public:
  Planner(const Library& library, const Fitting& fitting)
      : library_(library), fitting_(fitting), wishes_(library.wishes.of(fitting.request.facts)) {}

  StarterPlan run();

 private:
  void gatherOffers();
  ChoiceProblem problem();
  int distanceFromLevel(const Exercise& exercise) const;
  Option optionOf(const Candidate& candidate, const Dose& dose);
  void takeChoice(const Selection& selection);
  void writeLines(StarterPlan& plan) const;
  Line lineOf(const Offer& offer, const Candidate& candidate, const Dose& dose) const;
  void writeLeftOut(StarterPlan& plan) const;
  void writeSentences(StarterPlan& plan) const;
  void writeFirstSteps(StarterPlan& plan) const;
  void writeWeeks(StarterPlan& plan, const PlanParts& parts) const;
  int weightOf(const Purpose& purpose) const;
  void sayWishes(Line& line) const;

  const Library& library_;
  const Fitting& fitting_;
  std::vector<const Wish*> wishes_;  ///< of this client
  std::vector<Offer> offers_;  ///< in session order: section, then priority
  std::vector<std::string> positions_, equipment_;
  int allMinutes_ = 0;  ///< of all lines together
};

template <class T>
int numberOf(std::vector<T>& list, const T& value) {
  const auto at = std::find(list.begin(), list.end(), value);
  if (at != list.end()) return static_cast<int>(at - list.begin());
  list.push_back(value);
  return static_cast<int>(list.size()) - 1;
}

void Planner::gatherOffers() {
  for (Section section : kSections) {
    for (const Purpose& purpose : library_.purposes) {
      if (purpose.section != section) continue;
      Offer offer;
      offer.purpose = &purpose;
      for (const Exercise& exercise : library_.exercises) {
        if (exercise.purpose != purpose.id) continue;
        auto fitted = fit(exercise, fitting_);
        if (auto* candidate = std::get_if<Candidate>(&fitted)) {
          offer.doses.push_back(doseOf(*candidate, fitting_));
          offer.candidates.push_back(std::move(*candidate));
        } else {
          offer.refusals.push_back(std::get<Refusal>(std::move(fitted)));
        }
      }
      offers_.push_back(std::move(offer));
    }
  }
}

// Steps between the client's level and the nearest the exercise suits; a fallback is furthest.
int Planner::distanceFromLevel(const Exercise& exercise) const {
  const auto& levels = fitting_.doses.levels;
  const int furthest = static_cast<int>(levels.size());
  if (exercise.isFallback) return furthest;
  if (exercise.levels.empty()) return 0;
  const auto rankOf = [&](const std::string& id) {
    const auto at = std::find_if(levels.begin(), levels.end(), [&](const Level& level) { return level.dose.level == id; });
    return static_cast<int>(at - levels.begin());
  };
  int nearest = furthest;
  for (const std::string& id : exercise.levels)
    nearest = std::min(nearest, std::abs(rankOf(id) - rankOf(fitting_.prescription.level->dose.level)));
  return nearest;
}

Option Planner::optionOf(const Candidate& candidate, const Dose& dose) {
  const Exercise& exercise = *candidate.exercise;
  Option option;
  option.preference = (candidate.preferredBy.empty() ? 0 : 1) - (candidate.discouragedBy.empty() ? 0 : 1);
  option.wish = wishFor(exercise, wishes_);
  option.unsuited = distanceFromLevel(exercise);
  option.isAdapted = candidate.isAdapted();
  option.position = numberOf(positions_, exercise.position);
  for (const std::string& piece : equipmentOf(candidate)) {
    const int bit = numberOf(equipment_, piece);
    assert(bit < kMostPieces);
    option.equipment |= 1u << bit;
  }
  option.minutes = minutesOf(candidate, dose, fitting_.doses);
  // The aerobic part has its own day where the session is short, and was fitted beforehand.
  option.budgetMinutes = exercise.section == Section::Aerobic ? 0 : option.minutes;
  return option;
}

// A goal brings its purposes forward among those the session has room for.
int Planner::weightOf(const Purpose& purpose) const {
  const bool isWished = std::any_of(wishes_.begin(), wishes_.end(), [&](const Wish* wish) {
    return std::find(wish->purposes.begin(), wish->purposes.end(), purpose.id) != wish->purposes.end();
  });
  return purpose.priority + (isWished ? library_.wishes.priorityRaise : 0);
}

ChoiceProblem Planner::problem() {
  ChoiceProblem problem;
  for (Section section : kSections)
    problem.linesAtMost.push_back(fitting_.prescription.sections.at(section).linesAtMost);
  problem.minutesAtMost = fitting_.prescription.sessionMinutes;
  for (const Offer& offer : offers_) {
    Slot slot;
    slot.weight = weightOf(*offer.purpose);
    slot.section = static_cast<int>(offer.purpose->section);
    for (std::size_t i = 0; i < offer.candidates.size(); ++i)
      slot.options.push_back(optionOf(offer.candidates[i], offer.doses[i]));
    for (slot.copy = 0; slot.copy < offer.purpose->perPlan; ++slot.copy) problem.slots.push_back(slot);
  }
  return problem;
}

void Planner::takeChoice(const Selection& selection) {
  std::size_t slot = 0;
  for (Offer& offer : offers_) {
    for (int copy = 0; copy < offer.purpose->perPlan; ++copy, ++slot) {
      if (selection[slot] != kSkipped) offer.chosen.push_back(selection[slot]);
    }
  }
}

Line Planner::lineOf(const Offer& offer, const Candidate& candidate, const Dose& dose) const {
  Line line;
  line.exercise = candidate.exercise;
  if (candidate.setup != nullptr) line.place = candidate.setup->words;
  line.side = candidate.side;
  if (candidate.easing != nullptr) line.form = static_cast<std::size_t>(candidate.easing - candidate.exercise->easings.data()) + 1;
  line.dose = dose;
  if (candidate.easing != nullptr) line.changed = candidate.easing->sayClient;
  if (!candidate.side.empty()) {
    if (!line.changed.empty()) line.changed += " ";
    line.changed += fitting_.doses.phrase(candidate.side == "left only" ? "leftOnly" : "rightOnly");
  }
  addEach(line.becauseRules, candidate.changedBy);
  addEach(line.becauseRules, fitting_.prescription.sections.at(candidate.exercise->section).shapedBy);
  addEach(line.becauseRules, candidate.preferredBy);
  if (candidate.exercise->section == Section::Aerobic && !dose.heartRateHigh)
    addEach(line.becauseRules, fitting_.holders.ofHeartRate());
  if (candidate.exercise->load == Load::Weight || candidate.exercise->load == Load::Band)
    addEach(line.becauseRules, fitting_.holders.ofLoad());
  line.changedBecause = candidate.changedBecause;
  line.chosenBecause = "For " + offer.purpose->title + ": " + std::to_string(offer.candidates.size()) + " of " +
                       std::to_string(offer.candidates.size() + offer.refusals.size()) + " exercises are open";
  if (!candidate.preferredBy.empty()) line.chosenBecause += "; preferred" + inBrackets(candidate.preferredBy);
  if (!candidate.discouragedBy.empty())
    line.chosenBecause += "; discouraged, but nothing better is open" + inBrackets(candidate.discouragedBy);
  sayWishes(line);
  line.chosenBecause += ".";
  return line;
}

void Planner::sayWishes(Line& line) const {
  std::string said;
  for (const Wish* wish : wishes_) {
    if (isNamedIn(wish->discourage, *line.exercise))
      line.chosenBecause += "; the client " + wish->clinician + ", but nothing else serves better";
    if (!serves(*line.exercise, *wish)) continue;
    line.chosenBecause += "; the client " + wish->clinician;
    if (said.empty()) said = library_.wishes.phrase("because", {{"said", wish->said}});
  }
  line.saidBecause = said;
}

void Planner::writeLines(StarterPlan& plan) const {
  for (const Offer& offer : offers_) {
    for (int index : offer.chosen) {
      const auto i = static_cast<std::size_t>(index);
      plan.lines.push_back(lineOf(offer, offer.candidates[i], offer.doses[i]));
    }
  }
}

void Planner::writeLeftOut(StarterPlan& plan) const {
  for (const Offer& offer : offers_) {
    const std::string instead =
        offer.chosen.empty() ? "" : offer.candidates[static_cast<std::size_t>(offer.chosen.front())].exercise->id;
    const SectionDose& section = fitting_.prescription.sections.at(offer.purpose->section);
    if (section.isOpen) {
      for (const Refusal& refusal : offer.refusals) {
        if (refusal.ground == Ground::Limits)
          plan.leftOut.push_back({refusal.exercise->id, offer.purpose->id, refusal.because, instead, ""});
      }
    }
    if (!offer.chosen.empty()) continue;
    LeftOut none{"", offer.purpose->id, "", "", ""};
    if (!section.isOpen) {
      none.because = section.shutBecause;
    } else if (!offer.candidates.empty()) {
      none.because = "left for later: the session has room for what comes first";
    } else {
      bool isHeldByLimits = false;
      for (const Refusal& refusal : offer.refusals) {
        none.because += (none.because.empty() ? "no option: " : "; ") + refusal.exercise->id + ": " + refusal.because;
        isHeldByLimits = isHeldByLimits || refusal.ground == Ground::Limits;
      }
      if (isHeldByLimits) none.turnTo = offer.purpose->turnTo;
    }
    plan.leftOut.push_back(std::move(none));
  }
}

// Each goal with the first line that serves it; a goal that no line serves is not passed over.
void Planner::writeFirstSteps(StarterPlan& plan) const {
  for (const Wish* wish : wishes_) {
    if (wish->firstStep.empty()) continue;
    const auto at = std::find_if(plan.lines.begin(), plan.lines.end(),
                                 [&](const Line& line) { return serves(*line.exercise, *wish); });
    std::map<std::string, std::string> slots{{"said", wish->said}, {"step", wish->firstStep}};
    if (at != plan.lines.end()) slots["title"] = at->exercise->title;
    plan.firstSteps.push_back(library_.wishes.phrase(at != plan.lines.end() ? "firstStep" : "later", slots));
  }
}

void Planner::writeSentences(StarterPlan& plan) const {
  const auto& doses = fitting_.doses;
  const auto& prescription = fitting_.prescription;
  const auto said = [&](const char* key) { return doses.sentencesOf(key, fitting_.request.findings); };
  for (const EffortAnchor& anchor : doses.anchors) plan.effortWords.push_back(anchor.client);
  plan.badDay = said("badDay");
  plan.missedWeek = said("missedWeek");
  plan.afterIllness = said("afterIllness");
  plan.notes = said("notes");
  const auto progression = fitting_.limits.progression;
  if (progression != limits::Progression::None) plan.goingOn = said("goingOn");
  if (progression == limits::Progression::None) addEach(plan.notes, said("pacing"));
  if (progression == limits::Progression::Slow) addEach(plan.notes, said("slow"));
  const auto has = [&](Section section) {
    return std::any_of(plan.lines.begin(), plan.lines.end(),
                       [&](const Line& line) { return line.exercise->section == section; });
  };
  const bool hasAerobic = has(Section::Aerobic), hasStrength = has(Section::Strength);
  if (prescription.sessionMinutes) {
    const std::map<std::string, std::string> slots{{"minutes", std::to_string(*prescription.sessionMinutes)}};
    if (prescription.mainPartShrank) plan.notes.push_back(doses.phrase("mainPartShrinks", slots));
    if (prescription.floorsDoNotFit) plan.notes.push_back(doses.phrase("floorsOnly", slots));
    if (hasAerobic && hasStrength && allMinutes_ > *prescription.sessionMinutes)
      plan.notes.push_back(doses.phrase("separateDays", slots));
  }
  writeWeeks(plan, {hasAerobic, hasStrength, has(Section::Balance), has(Section::Stretching)});
}

// The facts behind the way to grow are named where another way would give other weeks.
void Planner::writeWeeks(StarterPlan& plan, const PlanParts& parts) const {
  const AerobicGrowth* way = fitting_.doses.aerobicGrowthFor(fitting_.request.facts);
  plan.weeks = weeksOf(fitting_, parts, way);
  if (!parts.hasAerobic || way == nullptr) return;
  const auto isSame = [](const Week& a, const Week& b) { return a.words == b.words; };
  for (const AerobicGrowth& other : fitting_.doses.aerobicGrowth) {
    const auto weeks = weeksOf(fitting_, parts, &other);
    if (std::equal(plan.weeks.begin(), plan.weeks.end(), weeks.begin(), weeks.end(), isSame)) continue;
    for (const auto* when : {&way->when, &other.when})
      for (int slot : *when ? (*when)->slotsRead() : std::vector<int>{})
        addEach(plan.growthReads, {fitting_.request.facts.dictionary().at(slot).id});
  }
  if (!plan.growthReads.empty()) plan.levelBecause += " " + way->because;
}

StarterPlan Planner::run() {
  StarterPlan plan;
  plan.level = fitting_.prescription.level->dose.level;
  plan.levelBecause = fitting_.prescription.levelBecause;
  gatherOffers();
  const ChoiceProblem toSolve = problem();
  const Selection selection = choose(toSolve);
  takeChoice(selection);
  allMinutes_ = -worthOf(toSolve, selection).value_or(Worth{}).back();
  writeLines(plan);
  writeLeftOut(plan);
  writeFirstSteps(plan);
  writeSentences(plan);
  return plan;
}

}  // namespace

StarterPlan makeStarterPlan(const Library& library, const Request& request) {
  const auto rest = limits::Rung::None;
  if (library.doses == nullptr || (request.usable.aerobic == rest && request.usable.strength == rest)) return {};
  const Holders holders(request.findings, library.doses->surgicalMargin);
  const limits::Limits limits = holders.withMargin(request.limits);
  const Prescription prescription = prescribe(*library.doses, request, holders);
  if (prescription.level == nullptr) return {};
  return Planner(library, Fitting{*library.doses, request, limits, holders, prescription}).run();
}

}  // namespace stile::plan
