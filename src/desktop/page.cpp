#include "desktop/page.h"

namespace stile::desktop {

Page::Page(wxWindow* parent, Workplace& place) : wxPanel(parent), place_(place) {
  SetBackgroundColour(place.theme().colour(drawing::Colour::Sheet));
}

}  // namespace stile::desktop
