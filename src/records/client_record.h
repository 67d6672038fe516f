// What stands of a client today, folded from the entries of the record.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records/client.h"
#include "records/entry.h"
#include "records/progression.h"

namespace stile::records {

enum class ClearanceState { Requested, Sent, Answered, Expired, Closed };
const char* idOf(ClearanceState state);

/// One letter to a physician and what came of it.
struct ClearanceCase {
  std::string id;         ///< of the request's entry
  std::string screening;  ///< of the entry whose findings it asks about
  std::vector<std::string> rules;
  std::string to;
  base::Date requested;
  std::optional<base::Date> sent, answered, until;
  std::vector<base::Date> chases;
  bool isClosed = false;

  ClearanceState stateOn(base::Date today) const;
};

struct ActionRecord {
  std::string id, action;
  base::Date opened;
  bool isComplete = false;
};

/// A screening with what was added to it since.
struct ScreeningLine {
  std::string id;
  base::Date date;
  std::string content;               ///< content version
  std::vector<std::string> rules;    ///< rules that fired, certain or open
  bool isSignedOff = false;
  std::vector<std::string> signers;  ///< of the sign-offs
  PlanOutline plan;
};

struct OverrideLine {
  std::string id, screening, rule, signer;
  base::Date date;
  bool needsSecond = false;
  std::string secondSigner;  ///< "" until a second clinician signed
};

struct ReferralLine {
  std::string id, from;
  base::Date received;
  std::vector<std::string> medicines;  ///< as the referral names them
  std::string outcome;                 ///< accepted, declined, redirected; "" while it waits
  bool isReconciled = false;           ///< what it says was compared with what the client said
};

struct EventLine {
  std::string id, what;
  base::Date date;
};

/// A letter drafted after an event.
struct DraftedLetter {
  std::string id, event, to;
  base::Date drafted;
  bool isSettled = false;  ///< sent, or not wanted
};

struct ConsentLine {
  base::Date date;
  std::string what, to, how;
  bool isGiven = false;
};

struct ClientRecord {
  Client client;
  std::string state = "active";  ///< active, unreached, discharged, deceased
  std::string mergedInto;        ///< id of the record that goes on, or ""
  std::vector<std::string> mergedFrom;
  std::vector<ScreeningLine> screenings;
  std::vector<OverrideLine> overrides;
  std::vector<ClearanceCase> clearances;
  std::vector<ActionRecord> actions;
  std::vector<ConsentLine> consents;  ///< the latest of each kind and person, in order of first mention
  std::optional<base::Date> draft;    ///< day of the last change of a draft
  std::string draftId;
  std::vector<ReferralLine> referrals;
  std::vector<EventLine> events;
  std::vector<DraftedLetter> letters;
  std::vector<CheckIn> checkIns;
  std::optional<base::Date> started;
  std::string startedWith;  ///< screening of the plan that was begun
  std::optional<base::Date> lastCheckIn, lastEvent, lastSymptoms;
  std::vector<base::Date> failedContacts;  ///< since the client was last reached
  std::optional<base::Date> lastContact;

  const ScreeningLine* lastScreening() const { return screenings.empty() ? nullptr : &screenings.back(); }
  const ScreeningLine* screening(const std::string& id) const;
  /// Whether this consent stands; without an entry it does not.
  bool hasConsent(const std::string& what) const;
};

/// `painFrom`: pain on the next morning from which on a check-in counts as symptoms. Entries that
/// cannot be read are passed over; what they are is checked when they are filed.
ClientRecord fold(const std::vector<Entry>& entries, int painFrom);

}  // namespace stile::records
