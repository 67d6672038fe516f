#include "desktop/page.h"

#include "documents/decision_words.h"

namespace stile::desktop {

Page::Page(wxWindow* parent, Workplace& place) : wxPanel(parent), place_(place) {
  SetBackgroundColour(place.theme().colour(drawing::Colour::Sheet));
}

std::string Page::whyNothing() const {
  const std::string& why = desk().whyNoScreening();
  return why.empty() ? "The interview comes first." : documents::asSentence(documents::capitalized(why));
}

}  // namespace stile::desktop
