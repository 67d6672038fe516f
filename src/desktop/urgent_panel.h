// A slab over the page: what to do now, before anything else.
#pragma once

#include <wx/panel.h>

#include <string>
#include <vector>

#include "desktop/fitted.h"
#include "screening/screening.h"

class wxSizer;

namespace stile::desktop {

class Prose;
class Workplace;

/// Milliseconds from there to filing it: the panel is painted first.
inline constexpr int kFilingAfter = 20;
/// Files what the interview calls for today, if that is not done yet, and says in `said`, which may be gone, what became of it.
void fileUrgent(Workplace& place, Column& column, Prose* said);

class UrgentPanel : public wxPanel, public Fitted {
 public:
  UrgentPanel(wxWindow* parent, const Theme& theme);
  UrgentPanel(wxWindow* parent, const Theme& theme, const screening::Screening& screening, const std::string& emergencyNumber);
  void show(const screening::Screening& screening, const std::string& emergencyNumber);
  void fit(int width) override;

 private:
  Prose* makeLine(wxSizer& below, Step step, const std::string& words);
  void say(Kept<Prose>& lines, wxSizer& below, Step step, const std::vector<std::string>& all);

  const Theme& theme_;
  int inset_;
  Prose* call_;
  wxSizer *whatSizer_, *meanwhileSizer_;
  Kept<Prose> what_, meanwhile_;
};

}  // namespace stile::desktop
