// A rule: a condition over facts, and what follows from it. Plain data, read from rules/*/*.json.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/date.h"
#include "base/issue.h"
#include "expression/program.h"
#include "limits/limits.h"

namespace stile::rules {

/// How an open rule counts; see design: a rule's mode applies only if every unknown fact that
/// keeps it open is of that class, otherwise it counts as Cautious.
enum class IfUnknown { Cautious, Gate, Lowest, Pass };
const char* idOf(IfUnknown mode);

/// The one key that opens what a rule shuts.
enum class KeyKind { None, Clearance, Report, Date, Measurement, Assessment, Answer };
const char* idOf(KeyKind key);

/// A sentence with slots, for the clinician and for the client.
struct Sentence {
  std::string clinician;
  std::string client;
};

/// A number in `then`: fixed, or computed from facts with the strictest value when unknown.
struct Amount {
  std::optional<base::Rational> fixed;
  std::optional<expression::Program> computed;
  base::Rational ifUnknown = 0;
};

/// Limits as a rule states them: sides may be a fact, amounts may be computed.
struct LimitsTemplate {
  struct Cap { std::string movement; limits::Side side = limits::Side::Both; int sideSlot = -1;
               limits::Qualifier qualifier = limits::Qualifier::Any; Amount degrees; };
  struct Ban { std::string ban; limits::Side side = limits::Side::Both; int sideSlot = -1; };
  struct Dose { std::string name; Amount amount; bool isFloor = false; };
  struct Stop { limits::StopKey key; Amount amount; };

  limits::Limits fixed;  ///< everything that needs no fact
  std::vector<Cap> caps;
  std::vector<Ban> bans;
  std::vector<Dose> doses;
  std::vector<Stop> stops;
  std::optional<Amount> loadKilograms, loadPercentOfMaximum, heartRatePerMinute;
};

struct Until {
  KeyKind key = KeyKind::None;
  std::string say;                                 ///< in words, for the notice on the ladder
  std::optional<expression::Program> unchanged;    ///< must be certainly true today for a clearance to count
};

struct Rule {
  std::string id;
  std::string title;
  std::string topic;                               ///< of its file
  std::string file;
  expression::Program when;
  std::string forEach;                             ///< group id or ""
  IfUnknown ifUnknown = IfUnknown::Cautious;
  std::string passReason, passPolicy;
  std::optional<limits::Action> whenUnsure;
  LimitsTemplate then;
  std::optional<LimitsTemplate> meanwhile;
  std::vector<std::string> prefer, discourage;
  Until until;
  std::optional<limits::Gate> gate;
  std::map<int, base::Period> maxAge;              ///< by slot
  bool acute = false, absolute = false, surgical = false;
  std::optional<expression::Program> assessable;
  Sentence say;
  std::optional<Sentence> sayOpen;
  std::vector<std::string> sources;
  std::string reviewedDate, reviewedBy;
  bool isLicensed = false;
  base::Place place;
};

/// What is measured or watched at every session.
struct Check {
  std::string id;
  std::string measure;   ///< of the vocabulary, or ""
  Sentence say;
  std::vector<std::string> sources;
  base::Place place;
};

}  // namespace stile::rules
