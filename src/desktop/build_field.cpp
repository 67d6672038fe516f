#include "desktop/build_field.h"

#include <wx/choice.h>

namespace stile::desktop {
namespace {

std::string figureWordsOf(movement::Build build) {
  return build == movement::Build::Slight ? "slighter" : "sturdier";
}

}  // namespace

BuildField::BuildField(wxWindow* parent, const Theme& theme, const Desk& desk,
                       const std::function<void(std::optional<movement::Build>)>& chosen)
    : ChoiceField(parent, theme, "Figure in the drawings",
                  {{movement::idOf(movement::Build::Slight), figureWordsOf(movement::Build::Slight)},
                   {movement::idOf(movement::Build::Sturdy), figureWordsOf(movement::Build::Sturdy)}},
                  "as the clinic draws it (" + figureWordsOf(desk.settings().drawnBuild) + ")") {
  if (const auto build = desk.chosenBuild()) choose(movement::idOf(*build));
  control().Bind(wxEVT_CHOICE, [this, chosen](wxCommandEvent&) { chosen(movement::buildOf(code())); });
}

bool keepBuild(Workplace& place, std::optional<movement::Build> build) {
  if (const auto kept = place.desk().chooseBuild(build); !kept) return place.tell(kept.failure()), false;
  place.say("Drawings show the " + figureWordsOf(build.value_or(place.desk().settings().drawnBuild)) + " figure. Saved");
  return true;
}

}  // namespace stile::desktop
