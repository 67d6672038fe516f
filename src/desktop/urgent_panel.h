// A slab over the page: what to do now, before anything else.
#pragma once

#include <wx/panel.h>

#include <functional>
#include <string>
#include <vector>

#include "desktop/fitted.h"
#include "screening/screening.h"

class wxSizer;

namespace stile::desktop {

class KeyButton;
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

/// The panel in the place of a question, with what became of its action record and the two ways on.
class UrgentStep : public Stack {
 public:
  UrgentStep(wxWindow* parent, const Theme& theme, std::function<void()> goOn, std::function<void()> stop);
  void show(const screening::Screening& screening, const std::string& emergencyNumber);
  /// Where it is said what became of the record.
  Prose* filed() { return filed_; }
  /// The focus to what comes first: in an emergency the rest of the questions waits.
  void enter();

 private:
  KeyButton* addWay(const Theme& theme, const std::string& cap, const std::string& words, std::function<void()> act);

  UrgentPanel* panel_;
  Prose* filed_;
  KeyButton *on_, *stop_;
  bool isEmergency_ = false;
};

}  // namespace stile::desktop
