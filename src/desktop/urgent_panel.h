// A slab over the page: what to do now, before anything else.
#pragma once

#include <wx/panel.h>

#include <string>

#include "desktop/fitted.h"
#include "screening/screening.h"

namespace stile::desktop {

class UrgentPanel : public wxPanel, public Fitted {
 public:
  UrgentPanel(wxWindow* parent, const Theme& theme, const screening::Screening& screening, const std::string& emergencyNumber);
  void fit(int width) override;

 private:
  int inset_;
};

}  // namespace stile::desktop
