#include "plan/library_checker.h"

#include <algorithm>
#include <set>

#include "plan/choice.h"
#include "plan/holders.h"

namespace stile::plan {
namespace {

/// Checks one exercise; every complaint carries its place.
class ExerciseCheck {
 public:
  ExerciseCheck(const Library& library, const facts::Dictionary& dictionary, const rules::RuleSet& rules,
                base::Issues& issues)
      : library_(library), dictionary_(dictionary), rules_(rules), issues_(issues) {}

  void run(const Exercise& exercise);

 private:
  void complain(const std::string& message, const std::string& remedy = {}) {
    issues_.error(exercise_->place, exercise_->id, message, remedy);
  }
  void purpose();
  void demands();
  void facts(const std::vector<std::string>& ids);
  void bans(const std::set<std::string>& ids);
  void easing(const Easing& easing);
  void scaling(const Scaling& scaling);
  void names();

  const Library& library_;
  const facts::Dictionary& dictionary_;
  const rules::RuleSet& rules_;
  base::Issues& issues_;
  const Exercise* exercise_ = nullptr;
};

void ExerciseCheck::run(const Exercise& exercise) {
  exercise_ = &exercise;
  purpose();
  demands();
  facts(exercise.equipment);
  facts(exercise.needs);
  bans(exercise.involves);
  bans(exercise.involvesOther);
  for (const Setup& setup : exercise.setups) {
    facts(setup.equipment);
    facts(setup.needs);
    bans(setup.involves);
  }
  for (const Easing& each : exercise.easings) easing(each);
  if (exercise.scaling) scaling(*exercise.scaling);
  names();
}

void ExerciseCheck::purpose() {
  const auto at = std::find_if(library_.purposes.begin(), library_.purposes.end(),
                               [&](const Purpose& p) { return p.id == exercise_->purpose; });
  if (at == library_.purposes.end()) {
    complain("there is no purpose \"" + exercise_->purpose + "\" in doses.json");
  } else if (at->section != exercise_->section) {
    complain("the purpose \"" + at->id + "\" belongs to the section " + idOf(at->section));
  }
}

void ExerciseCheck::demands() {
  std::set<std::pair<std::string, Limb>> seen;
  for (const Demand& demand : exercise_->demands) {
    if (rules_.vocabulary.movements.count(demand.movement) == 0) {
      complain("unknown movement \"" + demand.movement + "\"", "use one of rules/vocabulary.json");
      continue;
    }
    if (!seen.emplace(demand.movement, demand.limb).second)
      complain("the demand on \"" + demand.movement + "\" stands twice");
    const auto range = library_.doses->ranges.find(demand.movement);
    if (range == library_.doses->ranges.end()) continue;
    if (demand.degrees < range->second.first || demand.degrees > range->second.second)
      complain("the demand of " + demand.degrees.toText() + " degrees on \"" + demand.movement +
                   "\" is out of the joint's range",
               "the range is " + range->second.first.toText() + " to " + range->second.second.toText());
  }
}

void ExerciseCheck::facts(const std::vector<std::string>& ids) {
  for (const std::string& id : ids) {
    const auto* definition = dictionary_.find(id);
    if (definition == nullptr) {
      complain("there is no fact \"" + id + "\"", "equipment is named by facts of rules/facts/home.json");
    } else if (definition->type != facts::FactType::Boolean || !definition->group.empty()) {
      complain("the fact \"" + id + "\" is not a boolean fact that stands alone");
    }
  }
}

void ExerciseCheck::bans(const std::set<std::string>& ids) {
  for (const std::string& id : ids) {
    if (rules_.vocabulary.bans.count(id) == 0) complain("unknown ban \"" + id + "\"", "use one of rules/vocabulary.json");
  }
}

void ExerciseCheck::easing(const Easing& easing) {
  for (const auto& [movement, degrees] : easing.degrees) {
    const Demand* eased = nullptr;
    for (const Demand& demand : exercise_->demands) {
      if (demand.movement == movement && (eased == nullptr || demand.degrees > eased->degrees)) eased = &demand;
    }
    if (eased == nullptr) {
      complain("an easing names \"" + movement + "\", which the exercise does not ask for");
    } else if (degrees >= eased->degrees || degrees < base::Rational(0)) {
      complain("an easing of \"" + movement + "\" does not ask for less");
    }
  }
  bans(easing.without);
  for (const std::string& ban : easing.without) {
    if (exercise_->involves.count(ban) == 0 && exercise_->involvesOther.count(ban) == 0)
      complain("an easing avoids \"" + ban + "\", which the exercise does not involve");
  }
  facts(easing.equipment);
}

void ExerciseCheck::scaling(const Scaling& scaling) {
  facts(scaling.equipment);
  for (const std::string& id : scaling.words) {
    const Landmarks* landmarks = library_.doses->easingWords.find(id);
    if (landmarks == nullptr) {
      complain("there are no landmarks \"" + id + "\"", "name some of rules/easing.json");
    } else if (!landmarks->movement.empty() && scaling.eases.count(landmarks->movement) == 0) {
      complain("the landmarks \"" + id + "\" go by " + landmarks->movement + ", which is not eased");
    }
  }
}

void ExerciseCheck::names() {
  for (const std::string& id : exercise_->settings) {
    if (rules_.vocabulary.settings.count(id) == 0) complain("unknown setting \"" + id + "\"");
  }
  for (const std::string& id : {exercise_->easier, exercise_->harder}) {
    if (!id.empty() && (library_.find(id) == nullptr || id == exercise_->id))
      complain("there is no other exercise \"" + id + "\"", "name an exercise id or leave it out");
  }
  for (const std::string& id : exercise_->levels) {
    const auto& levels = library_.doses->levels;
    if (std::none_of(levels.begin(), levels.end(), [&](const Level& level) { return level.dose.level == id; }))
      complain("there is no starting level \"" + id + "\"");
  }
  if (exercise_->sources.empty()) complain("no source", "name one, or \"common practice, no source\"");
  for (const std::string& id : exercise_->sources) {
    if (id != rules::kNoSource && rules_.sources.count(id) == 0) complain("unknown source \"" + id + "\"");
  }
}

/// The highest number the rung allows on the effort scale.
base::Rational topOf(const Library::Doses& doses, limits::Rung rung) {
  base::Rational top = 0;
  for (const EffortAnchor& anchor : doses.anchors) {
    if (anchor.rung && *anchor.rung <= rung && anchor.to > top) top = anchor.to;
  }
  return top;
}

void checkEfforts(const Library::Doses& doses, base::Issues& issues) {
  std::set<std::pair<Section, limits::Rung>> seen;
  for (const EffortRow& row : doses.efforts) {
    const std::string subject = std::string(idOf(row.section)) + " " + limits::idOf(row.rung);
    if (!seen.emplace(row.section, row.rung).second) issues.error(row.place, subject, "this effort stands twice");
    if (row.low > row.high) issues.error(row.place, subject, "the effort range is upside down");
    if (row.high > topOf(doses, row.rung))
      issues.error(row.place, subject, "the effort of " + row.high.toText() + " is above what the ceiling " +
                                           limits::idOf(row.rung) + " allows");
    if (row.words != wordsFor(doses, row.low, row.high))
      issues.error(row.place, subject, "the words \"" + row.words + "\" do not agree with the effort scale",
                   "the scale says \"" + wordsFor(doses, row.low, row.high) + "\"");
    if (row.section == Section::Strength && !row.repetitionsInReserve)
      issues.error(row.place, subject, "strength work needs \"repetitionsInReserve\"");
  }
}

void checkLevels(const Library::Doses& doses, const base::Place& place, base::Issues& issues) {
  if (doses.levels.empty()) {
    issues.error(place, "levels", "there is no starting level");
    return;
  }
  for (const Level& level : doses.levels) {
    const std::string subject = "level " + level.dose.level;
    const bool isLast = &level == &doses.levels.back();
    if (isLast == level.when.has_value())
      issues.error(place, subject, "only the last level, the gentlest, has no condition");
    for (Section section : kSections) {
      if (doses.effort(section, limits::Rung::Light) == nullptr ||
          (isGraded(section) && doses.effort(section, level.rung[bayOf(section)]) == nullptr))
        issues.error(place, subject, std::string("no effort for ") + idOf(section) + " at the level's intensity");
    }
  }
}

void checkGrowth(const Library::Doses& doses, const base::Place& place, base::Issues& issues) {
  if (doses.aerobicGrowth.empty() || doses.aerobicGrowth.back().when.has_value())
    issues.error(place, "aerobicGrowth", "the last way to grow has no condition", "add one without \"when\"");
  for (const AerobicGrowth& way : doses.aerobicGrowth) {
    if (!way.when && &way != &doses.aerobicGrowth.back())
      issues.error(place, way.id, "only the last way to grow has no condition");
    if ((way.minutesStep > base::Rational(0)) == (way.percentStep > base::Rational(0)))
      issues.error(place, way.id, "a way to grow takes either \"minutesStep\" or \"percentStep\"");
  }
}

// Without any rule there is nothing to compare with; the loader of rules complains of that.
void checkSentences(const Library::Doses& doses, const rules::RuleSet& rules, base::Issues& issues) {
  if (rules.rules.empty()) return;
  for (const auto& [key, list] : doses.sentences)
    for (const PlanSentence& sentence : list)
      for (const auto* ids : {&sentence.ifRules, &sentence.unlessRules})
        for (const std::string& id : *ids)
          if (rules.find(id) == nullptr)
            issues.error(sentence.place, sentence.id, "there is no rule " + id, "name a rule that exists");
}

// The choice keeps one bit per piece; see choice.h.
void checkEquipment(const Library& library, base::Issues& issues) {
  std::set<std::string> pieces;
  for (const Exercise& exercise : library.exercises) {
    pieces.merge(piecesOf(exercise));
    if (pieces.size() <= kMostPieces) continue;
    issues.error(exercise.place, exercise.id, "the library uses more than 32 different pieces of equipment");
    return;
  }
}

// Every wish names what exists; a word that names no exercise would be a wish without effect.
void checkWishes(const Library& library, base::Issues& issues) {
  for (const Wish& wish : library.wishes.all) {
    for (const std::string& id : wish.purposes) {
      const auto isIt = [&](const Purpose& purpose) { return purpose.id == id; };
      if (std::none_of(library.purposes.begin(), library.purposes.end(), isIt))
        issues.error(wish.place, wish.id, "there is no purpose \"" + id + "\"");
    }
    for (const auto* words : {&wish.prefer, &wish.discourage})
      for (const std::string& word : *words) {
        const auto isMeant = [&](const Exercise& exercise) { return isNamedIn({word}, exercise); };
        if (std::none_of(library.exercises.begin(), library.exercises.end(), isMeant))
          issues.error(wish.place, wish.id, "\"" + word + "\" names no exercise", "use an id, a purpose, a section or a tag");
      }
  }
}

// Landmarks go by a movement there is, and some exercise uses them.
void checkEasingWords(const Library& library, const rules::RuleSet& rules, base::Issues& issues) {
  for (const Landmarks& landmarks : library.doses->easingWords.landmarks) {
    if (!landmarks.movement.empty() && rules.vocabulary.movements.count(landmarks.movement) == 0)
      issues.error(landmarks.place, landmarks.id, "unknown movement \"" + landmarks.movement + "\"");
    const auto uses = [&](const Exercise& exercise) {
      return exercise.scaling && std::find(exercise.scaling->words.begin(), exercise.scaling->words.end(), landmarks.id) !=
                                     exercise.scaling->words.end();
    };
    if (std::none_of(library.exercises.begin(), library.exercises.end(), uses))
      issues.error(landmarks.place, landmarks.id, "no exercise is told by these landmarks");
  }
}

// Warm-up and cool-down are the last to be left out when a session is short, whatever is wished.
void checkPriorities(const Library& library, const base::Place& place, base::Issues& issues) {
  const auto isFrame = [](Section section) { return section == Section::WarmUp || section == Section::CoolDown; };
  std::set<std::string> raised;
  for (const Wish& wish : library.wishes.all) raised.insert(wish.purposes.begin(), wish.purposes.end());
  int mainPart = 0;
  for (const Purpose& purpose : library.purposes) {
    const int raise = raised.count(purpose.id) != 0 ? library.wishes.priorityRaise : 0;
    if (!isFrame(purpose.section)) mainPart += (purpose.priority + raise) * purpose.perPlan;
  }
  for (const Purpose& purpose : library.purposes) {
    if (isFrame(purpose.section) && purpose.priority <= mainPart)
      issues.error(place, purpose.id, "the priority must be above that of the whole main part",
                   "more than " + std::to_string(mainPart));
  }
}

}  // namespace

void checkExercises(const Library& library, const facts::Dictionary& dictionary, const rules::RuleSet& rules,
                    base::Issues& issues) {
  ExerciseCheck check(library, dictionary, rules, issues);
  for (const Exercise& exercise : library.exercises) check.run(exercise);
  checkEquipment(library, issues);
}

void checkDoses(const Library& library, const rules::RuleSet& rules,
                const std::vector<std::pair<std::string, base::Place>>& sources, const base::Place& place,
                base::Issues& issues) {
  const Library::Doses& doses = *library.doses;
  for (const auto& [id, where] : sources) {
    if (id != rules::kNoSource && rules.sources.count(id) == 0) issues.error(where, "doses", "unknown source \"" + id + "\"");
  }
  checkEfforts(doses, issues);
  checkLevels(doses, place, issues);
  checkGrowth(doses, place, issues);
  checkSentences(doses, rules, issues);
  checkEasingWords(library, rules, issues);
  checkWishes(library, issues);
  checkPriorities(library, place, issues);
  for (const auto& [movement, term] : rules.vocabulary.movements) {
    if (doses.ranges.count(movement) == 0) issues.error(place, "ranges", "no joint range for \"" + movement + "\"");
  }
  for (const auto& [movement, range] : doses.ranges) {
    if (rules.vocabulary.movements.count(movement) == 0)
      issues.error(place, "ranges", "unknown movement \"" + movement + "\"");
  }
  for (const Purpose& purpose : library.purposes) {
    if (rules.vocabulary.services.count(purpose.turnTo) == 0)
      issues.error(place, purpose.id, "unknown service \"" + purpose.turnTo + "\"");
    const auto serves = [&](const Exercise& exercise) { return exercise.purpose == purpose.id; };
    if (std::none_of(library.exercises.begin(), library.exercises.end(), serves))
      issues.error(place, purpose.id, "no exercise serves this purpose");
  }
}

}  // namespace stile::plan
