// A clinician's edits put onto the offers of a plan, before it is chosen.
#pragma once

#include <vector>

#include "plan/offer.h"

namespace stile::plan {

struct OfferEditing {
  const Library& library;
  const Fitting& fitting;
  const Edits& edits;
  const StarterPlan& unedited;
};

struct EditedOffers {
  std::vector<RefusedEdit> refused;
  /// The session cap, widened where an override asked for it; nullopt = no cap.
  std::optional<int> sessionMinutes;
};

/// Moves what is fixed or dropped out of the candidates and refusals of `offers`.
EditedOffers edit(std::vector<Offer>& offers, const OfferEditing& editing);

}  // namespace stile::plan
