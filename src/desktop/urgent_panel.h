// A slab over the page: what to do now, before anything else.
#pragma once

#include <wx/panel.h>

#include <string>

#include "desktop/fitted.h"
#include "screening/screening.h"

namespace stile::desktop {

class Prose;
class Workplace;

/// Milliseconds from there to filing it: the panel is painted first.
inline constexpr int kFilingAfter = 20;
/// Files what the interview calls for today, if that is not done yet, and says in `said`, which may be gone, what became of it.
void fileUrgent(Workplace& place, Column& column, Prose* said);

class UrgentPanel : public wxPanel, public Fitted {
 public:
  UrgentPanel(wxWindow* parent, const Theme& theme, const screening::Screening& screening, const std::string& emergencyNumber);
  void fit(int width) override;

 private:
  int inset_;
};

}  // namespace stile::desktop
