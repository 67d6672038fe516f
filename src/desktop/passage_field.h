// One passage of a letter in a field of several lines: its name, its words, and the way back to the words
// that were computed.
#pragma once

#include <wx/panel.h>

#include <functional>
#include <string>

#include "desktop/fitted.h"

class wxKeyEvent;
class wxTextCtrl;

namespace stile::desktop {

class KeyButton;
class Prose;

class PassageField : public wxPanel, public Fitted {
 public:
  struct Told {
    std::function<void()> changed;                ///< after each change
    std::function<void(bool isForward)> leaving;  ///< by the tabulator key
  };
  /// `computed` is what the program wrote, `words` what stands now.
  PassageField(wxWindow* parent, const Theme& theme, const std::string& name, std::string computed,
               const std::string& words, Told told);
  std::string words() const;
  bool isChanged() const { return words() != computed_; }
  /// Back to the computed words.
  void reset();
  /// "" takes the sentence away.
  void complain(const std::string& trouble);
  void enter();
  /// From the field before or behind: the way back to the computed words comes first.
  void enterBy(bool isForward);
  void fit(int width) override;

 private:
  void wordsChanged();
  void onTab(wxKeyEvent& event, bool isInWords);
  /// As tall as its words, within bounds.
  void grow();

  const Theme& theme_;
  std::string name_, computed_;
  Told told_;
  Prose *title_, *trouble_;
  KeyButton* back_;
  wxTextCtrl* control_;
  int width_ = 0;
};

}  // namespace stile::desktop
