// Screening somebody again: last time's answers as a draft that is not confirmed, and what changed.
#pragma once

#include <string>
#include <vector>

#include "application/client_records.h"
#include "facts/dictionary.h"

namespace stile::application {

/// A new draft out of the last screening. Of plain facts: every value "not confirmed" until it is asked
/// again, lists (medicines, joints) with one repetition more, since there may be others by now. Of a
/// form's response: the interview offers last time's answers itself (client_interview.h), so this says so.
base::Result<bool> prefill(Clinic& clinic, const std::string& id, const facts::Dictionary& dictionary, base::Date today);

/// One line of a comparison; `before` or `now` is "" where there was nothing.
struct Changed {
  std::string what;  ///< a fact's id, a list's words, "decision", or a rule's title
  std::string before, now;
};
struct Comparison {
  base::Date from, to;
  std::vector<Changed> decision;  ///< action, clearance and intensities
  std::vector<Changed> findings;  ///< rules that hold now and did not, and the other way round
  std::vector<Changed> facts;     ///< repetitions of a list are compared whole, whatever their order
};
/// A screening with the one before it; the last one for "".
base::Result<Comparison> compareScreenings(const std::vector<records::Entry>& entries, const std::string& screening);
/// The last two screenings.
base::Result<Comparison> compareScreenings(Clinic& clinic, const std::string& id);
/// The same as text, a line each.
base::Result<std::string> whatChanged(Clinic& clinic, const std::string& id);

/// What a referral names and the client did not, and the other way round: medicines by their first word.
struct MedicineDifferences {
  std::vector<std::string> onlyReferred, onlyTold;
};
/// Of the last screening with what the referral `referral` says. The record's worklist waits for
/// somebody to settle them (entries of the kind "referralReconciled").
base::Result<MedicineDifferences> compareMedicines(Clinic& clinic, const std::string& id, const std::string& referral);

}  // namespace stile::application
