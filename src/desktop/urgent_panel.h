// A slab over the page: what to do now, before anything else.
#pragma once

#include <wx/panel.h>

#include <string>

#include "desktop/fitted.h"
#include "screening/screening.h"

namespace stile::desktop {

/// Milliseconds from there to filing it: the panel is painted first.
inline constexpr int kFilingAfter = 20;
/// What to say below it, once the action record is filed or could not be.
inline constexpr const char* kActionRecordIsOpen = "An action record is open: it stays on the list until somebody says what was done.";
inline constexpr const char* kNoActionRecord = "No action record could be filed. Do what stands above first; the next answer tries it again.";

class UrgentPanel : public wxPanel, public Fitted {
 public:
  UrgentPanel(wxWindow* parent, const Theme& theme, const screening::Screening& screening, const std::string& emergencyNumber);
  void fit(int width) override;

 private:
  int inset_;
};

}  // namespace stile::desktop
