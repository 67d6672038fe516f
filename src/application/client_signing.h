// What is signed about a screening: sign-off, overrides, second signatures, amendments.
//
// Overrides are for judgement; evidence is entered as a dated fact and the rules run again. Nothing
// here changes what the rules found: it stands beside it (records/decision_notes.h).
#pragma once

#include <string>
#include <vector>

#include "application/client_records.h"
#include "records/decision_notes.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::application {

struct SignedOff {
  std::string entry;
  std::vector<std::string> warnings;  ///< what is left open all the same, a sentence each
};
base::Result<SignedOff> signOff(Clinic& clinic, const std::string& id, const std::string& screening, base::Date today);
/// What whoever signs off, or closes the program for the day, is told of this client.
std::vector<std::string> openMatters(const records::ClientRecord& record);

/// A finding that a clinician may decide against.
struct Overridable {
  std::string rule, title;
  std::string says;          ///< the finding's sentence for clinicians
  bool needsSecond = false;  ///< an acute rule: the override waits for a second signature
  bool isCertain = true;     ///< false: answers are missing that would settle it
};
/// Certain ones first, then in the order of the findings, each rule once. Absolute rules are left out, and in an emergency all are.
std::vector<Overridable> overridable(const screening::Screening& screening);

struct NewOverride {
  std::string screening;  ///< entry
  std::string rule, instead, reason;
};
/// Gives the entry's id. Emergencies and absolute rules are refused; an acute rule's override waits for
/// a second signature.
base::Result<std::string> overrideRule(Clinic& clinic, const std::string& id, const screening::Content& content, const NewOverride& wanted, base::Date today);
/// The clinic's lead or a physician, and not whoever decided.
base::Result<std::string> signSecond(Clinic& clinic, const std::string& id, const std::string& override, base::Date today);
base::Result<std::string> amend(Clinic& clinic, const std::string& id, const std::string& screening, const std::string& text, base::Date today);

/// What was signed about one screening, with full names and professions in the place of sign-in names.
records::DecisionNotes decisionNotes(const Clinic& clinic, const std::vector<records::Entry>& entries, const std::string& screening);

OverrideRules overrideRulesOf(const screening::Content& content);

/// A rule that clinicians set aside in more than a fifth of the screenings in which it fired: for the lead.
struct OftenOverridden {
  std::string rule;
  int fired = 0, overridden = 0;
};
/// Over all records, without whose they are.
base::Result<std::vector<OftenOverridden>> oftenOverridden(Clinic& clinic);

}  // namespace stile::application
