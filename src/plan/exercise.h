// An exercise of the library: what it is for, what it asks of the body, how it is told.
// Read from rules/exercises/*.json.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "base/issue.h"
#include "base/rational.h"
#include "limits/limits.h"

namespace stile::plan {

enum class Section { WarmUp, Aerobic, Strength, Balance, Stretching, CoolDown, Breathing };
enum class DoseKind { Minutes, Repetitions, Holds, BalanceHolds };
/// What the muscles work against.
enum class Load { None, Body, Band, Weight };
/// Which limb a demand falls on, in an exercise that is done left and right apart.
enum class Limb { Working, Other, Both };

inline constexpr std::array<Section, 7> kSections{Section::WarmUp,     Section::Aerobic,  Section::Strength, Section::Balance,
                                                  Section::Stretching, Section::CoolDown, Section::Breathing};
const char* idOf(Section value);
std::optional<Section> sectionOf(std::string_view id);
std::optional<DoseKind> doseKindOf(std::string_view id);
std::optional<Load> loadOf(std::string_view id);
/// Aerobic modes, warm-up and cool-down belong to the aerobic bay, all else to the strength bay.
limits::Bay bayOf(Section section);
/// True for the sections whose effort depends on the level; all others stay light.
inline bool isGraded(Section section) { return section == Section::Aerobic || section == Section::Strength; }

/// The largest angle an exercise asks of a movement, and in which way.
struct Demand {
  std::string movement;              ///< id of the vocabulary
  base::Rational degrees = 0;
  std::set<limits::Qualifier> done;  ///< loaded, endRange, fast; Any is always meant
  Limb limb = Limb::Working;         ///< read only where the exercise is one-sided
};

/// One place to do it: a firm bed, or else a mat on the floor. The first that is open is used.
struct Setup {
  std::vector<std::string> equipment;  ///< facts that must be certainly true
  std::vector<std::string> needs;      ///< the same for what is no piece of equipment
  std::set<std::string> involves;      ///< bans this place runs into
  std::string words;                   ///< for the handout
};

/// A milder way to do the same exercise, offered before another one is sought.
struct Easing {
  std::map<std::string, base::Rational> degrees;  ///< movement -> what it then asks
  std::set<std::string> without;                  ///< bans it no longer runs into
  std::vector<std::string> equipment;             ///< facts that must be certainly true besides
  std::vector<Demand> asked;                      ///< all demands of this form, drawn and declared; see computed_demands.h
  std::string sayClinician, sayClient;            ///< the sentence that says what changed
};

/// What one form of an exercise asks when it is done smaller. Row n stands for the share of
/// `leastPercent + n * kScaleStep`; its numbers belong to the demands of the form, in their order.
/// No number falls from one row to the next.
using Scale = std::vector<std::vector<base::Rational>>;

/// Percent of the full movement from one row of a scale to the next.
inline constexpr int kScaleStep = 2;

/// How an exercise whose movement is a range may be done smaller, to keep within a cap.
struct Scaling {
  std::set<std::string> eases;     ///< movements that get smaller with it
  int leastPercent = 50;           ///< of the full movement; with less it is not this exercise any more
  std::vector<std::string> equipment;  ///< facts that must be certainly true besides: a higher seat
  std::vector<std::string> words;  ///< landmarks of easing.json, by what is capped; the first otherwise
  std::vector<Scale> scales;       ///< of the form as written, then of each easing (may be empty); computed, see scale.h

  int percentAt(std::size_t row) const { return leastPercent + static_cast<int>(row) * kScaleStep; }
};

struct Exercise {
  std::string id;
  std::string title;                  ///< for the client: "Stand up, sit down"
  std::string purpose;                ///< id of a purpose in doses.json, e.g. "leg-strength"
  Section section = Section::Strength;
  limits::Bay bay = limits::Bay::Strength;
  limits::Rung intensity = limits::Rung::Light;
  std::string position;               ///< standing, sitting, lying, side-lying, all-fours, prone …
  std::vector<std::string> equipment; ///< facts that must be certainly true, e.g. homeHasBand
  std::vector<std::string> needs;     ///< the same for what is no piece of equipment: canLieOnBack
  std::string equipmentWords;         ///< for the handout: "A high, firm chair."
  std::vector<Demand> demands;
  std::vector<Setup> setups;          ///< places to choose from; empty = nothing to choose
  std::set<std::string> involves;     ///< bans of the vocabulary it would run into
  std::set<std::string> involvesOther;///< one-sided: bans it runs into on the other side (the standing leg)
  std::set<std::string> settings;     ///< settings it takes place in: water, alone …
  bool oneSided = false;              ///< done left and right apart
  bool upperBody = false;
  Load load = Load::None;
  std::vector<Easing> easings;        ///< from mildest change to greatest
  std::optional<Scaling> scaling;     ///< absent: not done smaller by degrees

  /// All demands of a form: 0 as written, n = its n-th easing.
  const std::vector<Demand>& demandsOfForm(std::size_t form) const {
    return form == 0 ? demands : easings[form - 1].asked;
  }
  std::string easier, harder;         ///< exercise ids or ""
  std::vector<std::string> steps;     ///< plain words, one idea each
  std::string feel;
  std::vector<std::string> mistakes;
  DoseKind dose = DoseKind::Repetitions;
  std::optional<base::Rational> holdSeconds;  ///< a shorter hold than the section's, where it has one of its own
  std::vector<std::string> levels;    ///< starting levels it suits, the nearer the better; empty = all
  bool isFallback = false;            ///< kept for those who can do nothing better, except at its levels
  std::vector<std::string> tags;      ///< words rules may prefer or discourage
  std::vector<std::string> sources;
  base::Place place;
};

/// Facts of every piece of equipment that it, one of its places, or an easier way to do it may need.
std::set<std::string> piecesOf(const Exercise& exercise);

}  // namespace stile::plan
