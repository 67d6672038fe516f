// The lines of a plan and why each is so, why others are left out, and what is said besides.
#include <algorithm>

#include "plan/planner.h"
#include "plan/week_plan.h"

namespace stile::plan {
namespace {

/// The first wish in which the one that was chosen is better; what is equal in all that can be told of one
/// exercise alone depends on the whole session.
std::string whyAnother(const Option& chosen, const Option& other) {
  if (other.preference < chosen.preference)
    return other.preference < 0 ? "findings discourage it" : "findings prefer another";
  if (other.wish < chosen.wish) return "another is nearer to what the client wants or likes";
  if (other.unsuited > chosen.unsuited) return "another suits the starting level better";
  if (other.isAdapted && !chosen.isAdapted) return "it would have to be changed, another does not";
  return "another takes fewer changes of position, fewer things or less time, or comes first in the list";
}

/// The line that serves the wish best: one it prefers, else one of its first purpose, and so on.
std::vector<Line>::const_iterator bestFor(const Wish& wish, const std::vector<Line>& lines) {
  const auto at = std::find_if(lines.begin(), lines.end(), [&](const Line& line) { return isNamedIn(wish.prefer, *line.exercise); });
  if (at != lines.end()) return at;
  for (const std::string& purpose : wish.purposes) {
    const auto of = std::find_if(lines.begin(), lines.end(), [&](const Line& line) { return line.exercise->purpose == purpose; });
    if (of != lines.end()) return of;
  }
  return lines.end();
}

}  // namespace

std::string Planner::saidBy(const char* what, std::size_t edit) const {
  const Edit& one = edits_.list[edit];
  std::string text = std::string(what) + " by " + editorInWords();
  if (one.kind == EditKind::Swap)
    text += ", " + library_.find(one.exercise)->title + " for " + library_.find(one.with)->title;
  return text + ".";
}

Line Planner::lineOf(const Offer& offer, const Candidate& candidate, const Dose& dose) const {
  Line line;
  line.exercise = candidate.exercise;
  if (candidate.setup != nullptr) line.place = candidate.setup->words;
  line.side = candidate.side;
  line.form = candidate.form();
  line.percent = candidate.percent;
  line.dose = dose;
  if (candidate.easing != nullptr) line.changed = candidate.easing->sayClient;
  line.saidSmaller = candidate.saidSmaller;
  if (!candidate.saidSmaller.empty()) line.changed += (line.changed.empty() ? "" : " ") + candidate.saidSmaller;
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
  line.chosenBecause = "For " + offer.purpose->title + ": " +
                       std::to_string(offer.inLibrary() - offer.refusals.size() - offer.dropped.size()) +
                       " of " + std::to_string(offer.inLibrary()) + " exercises are open";
  if (!candidate.preferredBy.empty()) line.chosenBecause += "; preferred" + inBrackets(candidate.preferredBy);
  if (!candidate.discouragedBy.empty())
    line.chosenBecause += "; discouraged, but nothing better is open" + inBrackets(candidate.discouragedBy);
  sayWishes(line);
  line.chosenBecause += ".";
  return line;
}

void Planner::sayWishes(Line& line) const {
  for (const Wish* wish : wishes_) {
    if (isNamedIn(wish->discourage, *line.exercise))
      line.chosenBecause += "; the client " + wish->clinician + ", but nothing else serves better";
    if (!serves(*line.exercise, *wish)) continue;
    line.chosenBecause += "; the client " + wish->clinician;
    if (line.saidBecause.empty()) line.saidBecause = library_.wishes.phrase("because", {{"said", wish->said}});
  }
}

void Planner::writeNext(StarterPlan& plan) const {
  if (fitting_.limits.progression == limits::Progression::None || fitting_.prescription.level->staysSame) return;
  for (Line& line : plan.lines) {
    const Exercise& exercise = *line.exercise;
    const bool isAsWritten = line.form == 0 && line.percent == 100 && line.side.empty() && !line.override;
    if (exercise.section != Section::Strength || exercise.dose != DoseKind::Repetitions) continue;
    if (exercise.harder.empty() || !isAsWritten) continue;
    const auto isIt = [&](const Exercise* other) { return other->id == exercise.harder; };
    if (std::any_of(plan.lines.begin(), plan.lines.end(),
                    [&](const Line& other) { return isIt(other.exercise); }))
      continue;
    for (const Offer& offer : offers_)
      for (const Candidate& candidate : offer.candidates)
        if (isIt(candidate.exercise) && !candidate.isAdapted() && candidate.discouragedBy.empty())
          line.next = candidate.exercise;
  }
}

Line Planner::lineOf(const Offer& offer, const FixedLine& fixed) const {
  Line line = lineOf(offer, fixed.candidate, fixed.dose);
  switch (edits_.list[fixed.edit].kind) {
    case EditKind::Swap:
      line.pinnedBy = saidBy("Swapped", fixed.edit);
      break;
    case EditKind::Add:
      line.pinnedBy = saidBy("Added", fixed.edit);
      break;
    default:
      line.pinnedBy = saidBy("Pinned", fixed.edit);
  }
  line.chosenBecause = line.pinnedBy;
  if (!fixed.candidate.discouragedBy.empty())
    line.chosenBecause += " Discouraged" + inBrackets(fixed.candidate.discouragedBy) + ".";
  line.override = fixed.beyond;
  if (fixed.beyond) {
    addEach(line.becauseRules, fixed.beyond->rules);
    // What stays in the way is told by the override; the sentence on easing would repeat it.
    line.changedBecause = fixed.candidate.easing != nullptr ? fixed.candidate.easing->sayClinician : "";
  }
  return line;
}

void Planner::writeLines(StarterPlan& plan) const {
  for (const Offer& offer : offers_) {
    for (const FixedLine& fixed : offer.fixed) plan.lines.push_back(lineOf(offer, fixed));
    for (int index : offer.chosen) {
      const auto i = static_cast<std::size_t>(index);
      plan.lines.push_back(lineOf(offer, offer.candidates[i], offer.doses[i]));
    }
  }
}

void Planner::writeDropped(const Offer& offer, const std::string& instead, StarterPlan& plan) const {
  for (const DroppedExercise& dropped : offer.dropped) {
    const char* what = edits_.list[dropped.edit].kind == EditKind::Swap ? "Swapped" : "Dropped";
    plan.leftOut.push_back(
        {dropped.exercise->id, offer.purpose->id, saidBy(what, dropped.edit), instead, ""});
  }
}

LeftOut Planner::uncovered(const Offer& offer) const {
  LeftOut none{"", offer.purpose->id, "", "", ""};
  const SectionDose& section = fitting_.prescription.sections.at(offer.purpose->section);
  if (!section.isOpen) {
    none.because = section.shutBecause;
  } else if (!offer.candidates.empty() && offer.toChoose > 0) {
    none.because = "left for later: the session has room for what comes first";
  } else if (!offer.dropped.empty()) {
    none.because = saidBy("Dropped", offer.dropped.front().edit);
  } else {
    bool isHeldByLimits = false;
    for (const Refusal& refusal : offer.refusals) {
      none.because +=
          (none.because.empty() ? "no option: " : "; ") + refusal.exercise->title + ": " + refusal.because;
      isHeldByLimits = isHeldByLimits || refusal.ground == Ground::Limits;
    }
    if (isHeldByLimits) none.turnTo = offer.purpose->turnTo;
  }
  return none;
}

void Planner::writeLeftOut(StarterPlan& plan) const {
  for (const Offer& offer : offers_) {
    std::string instead;
    if (!offer.fixed.empty())
      instead = offer.fixed.front().candidate.exercise->id;
    else if (!offer.chosen.empty())
      instead = offer.candidates[static_cast<std::size_t>(offer.chosen.front())].exercise->id;
    if (fitting_.prescription.sections.at(offer.purpose->section).isOpen) {
      for (const Refusal& refusal : offer.refusals) {
        if (refusal.ground == Ground::Limits)
          plan.leftOut.push_back({refusal.exercise->id, offer.purpose->id, refusal.because, instead, ""});
      }
    }
    writeDropped(offer, instead, plan);
    if (instead.empty()) plan.leftOut.push_back(uncovered(offer));
  }
}

void Planner::writeAlsoOpen(StarterPlan& plan) {
  for (const Offer& offer : offers_) {
    for (std::size_t i = 0; i < offer.candidates.size(); ++i) {
      if (std::find(offer.chosen.begin(), offer.chosen.end(), static_cast<int>(i)) != offer.chosen.end())
        continue;
      const Candidate& other = offer.candidates[i];
      std::string because = "the session has room for what comes first";
      if (!offer.fixed.empty()) because = offer.fixed.front().candidate.exercise->title + " was asked for";
      if (!offer.chosen.empty()) {
        const auto chosen = static_cast<std::size_t>(offer.chosen.back());
        because = whyAnother(optionOf(offer.candidates[chosen], offer.doses[chosen]),
                             optionOf(other, offer.doses[i]));
      }
      plan.alsoOpen.push_back({other.exercise, std::move(because)});
    }
  }
}

// Each goal with the line that serves it best; a goal that no line serves is not passed over.
void Planner::writeFirstSteps(StarterPlan& plan) const {
  for (const Wish* wish : wishes_) {
    if (wish->firstStep.empty()) continue;
    const auto at = bestFor(*wish, plan.lines);
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

}  // namespace stile::plan
