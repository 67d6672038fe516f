#include "plan/offer.h"

#include "plan/line_dose.h"

namespace stile::plan {

std::vector<Offer> offersOf(const Library& library, const Fitting& fitting) {
  std::vector<Offer> offers;
  for (Section section : kSections) {
    for (const Purpose& purpose : library.purposes) {
      if (purpose.section != section) continue;
      Offer offer;
      offer.purpose = &purpose;
      offer.toChoose = purpose.perPlan;
      for (const Exercise& exercise : library.exercises) {
        if (exercise.purpose != purpose.id) continue;
        auto fitted = fit(exercise, fitting);
        if (auto* candidate = std::get_if<Candidate>(&fitted)) {
          offer.doses.push_back(doseOf(*candidate, fitting));
          offer.candidates.push_back(std::move(*candidate));
        } else {
          offer.refusals.push_back(std::get<Refusal>(std::move(fitted)));
        }
      }
      offers.push_back(std::move(offer));
    }
  }
  return offers;
}

}  // namespace stile::plan
