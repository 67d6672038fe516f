// Screening: facts and clearances in, a decision with its reasons out. One pure function.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/date.h"
#include "facts/fact_set.h"
#include "limits/limits.h"
#include "plan/starter_plan.h"
#include "questionnaire/form.h"
#include "rules/finding.h"
#include "rules/rule_set.h"
#include "screening/clearance.h"

namespace stile::screening {

/// The decision at one end of the interval.
struct End {
  limits::Limits limits;                          ///< merged, clearances already applied; after decide() in part
  limits::PerBay<limits::Rung> usable{limits::Rung::None, limits::Rung::None};
};

enum class RungState { Open, Shut, NotYetKnown };

/// Why a rung is not open, and the one key that opens it.
struct RungReason {
  std::size_t finding = 0;  ///< index into Screening::findings
  std::string_view key;     ///< in words: "a physician's reply"; they are the rule's
  rules::KeyKind keyKind = rules::KeyKind::None;
};

struct RungView {
  limits::Bay bay = limits::Bay::Aerobic;
  limits::Rung rung = limits::Rung::Light;
  RungState state = RungState::NotYetKnown;
  std::vector<RungReason> reasons;  ///< gravest first
};

/// A fact whose answer could still change something.
struct OpenQuestion {
  int slot = -1;
  std::string factId;
  std::string label;                     ///< the question, in the form's words if a form asks it
  facts::UnknownReason why = facts::UnknownReason::NotAsked;
  limits::Action couldBecome = limits::Action::None;
  bool shutsRungs = false;               ///< it keeps a rung not yet known
  std::vector<std::string> ruleIds;      ///< the rules it keeps open
};

/// A policy that decided something: another choice would give another decision.
struct PolicyNote {
  std::string id, title, value, display, decides;
};

/// Whether a plan may be made.
enum class PlanState {
  Made,     ///< some bay is usable at the floor
  Held,     ///< only uncovered clearance shuts the bays: shown to the clinician, never to the client
  Nothing,  ///< same-day action, a hold of the day, or unanswered questions
};

struct Screening {
  base::Date date;
  facts::FactSet facts;
  std::vector<rules::Finding> findings;
  std::vector<Coverage> coverage;        ///< of clearances given
  End floor;                             ///< certain and open findings: "sure so far"
  End reach;                             ///< certain findings alone: "still possible"
  std::vector<RungView> rungs;           ///< aerobic light..vigorous, then strength light..vigorous
  std::vector<OpenQuestion> openQuestions;  ///< red flags first, then what shuts most, then form order
  limits::Action couldBecome = limits::Action::None;  ///< gravest call an unanswered question could bring; rules that let the unknown pass bring none
  std::vector<PolicyNote> policies;
  PlanState planState = PlanState::Nothing;
  std::string planBecause;               ///< one sentence: why there is no plan, or why it is held
  std::optional<plan::StarterPlan> plan;      ///< when the state is Made
  std::optional<plan::StarterPlan> heldPlan;  ///< when the state is Held
  /// Limits and usable rungs as if every requested clearance were granted up to the wanted intensity.
  End ifGranted;
  bool isSettled = false;                ///< no cautious question can still change action, clearance or ceilings
};

struct Content;  // content.h

/// The whole decision. `today` is the clinic's civil date; nothing else of the world goes in.
Screening screen(const Content& content, facts::FactSet facts, const std::vector<ClearanceReply>& replies,
                 base::Date today);

/// The same without plan, policies and open questions, and of the limits only action, clearances and ceilings: what a
/// page that follows every answer shows, in a fraction of the time. complete() puts the rest in.
Screening decide(const Content& content, facts::FactSet facts, const std::vector<ClearanceReply>& replies,
                 base::Date today);
/// Of a decision of decide(), with the same content and replies.
void complete(const Content& content, Screening& decision, const std::vector<ClearanceReply>& replies);

/// Chooses the plan of `screening`, made or held, anew round a clinician's edits; nothing else changes. Gives the edits
/// that were not followed: all of them when there is no plan.
std::vector<plan::RefusedEdit> editPlan(const Content& content, Screening& screening, const plan::Edits& edits);

}  // namespace stile::screening
