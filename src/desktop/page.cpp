#include "desktop/page.h"

#include <wx/utils.h>

#include "desktop/words_dialog.h"
#include "documents/decision_words.h"

namespace stile::desktop {

Page::Page(wxWindow* parent, Workplace& place) : wxPanel(parent), place_(place) {
  SetBackgroundColour(place.theme().colour(drawing::Colour::Sheet));
}

bool Page::isConfirmed(const std::string& title, const std::string& words, const std::string& button) {
  std::string asking = words;
  while (const auto passphrase = askWords(*this, theme(), {title, asking, "Passphrase", button, true})) {
    const wxBusyCursor waiting;
    const auto checked = desk().checkPassphrase(*passphrase);
    if (checked) return true;
    asking = checked.failure().kind == base::FailureKind::Secret ? "That is not the passphrase. Try it again." : checked.failure().message;
  }
  // Called off after a wrong one: the file stays locked until somebody signs in.
  if (desk().clinic()->isLocked()) place().lock();
  return false;
}

std::string Page::whyNothing() const {
  const std::string& why = desk().whyNoScreening();
  return why.empty() ? "The interview comes first." : documents::asSentence(documents::capitalized(why));
}

}  // namespace stile::desktop
