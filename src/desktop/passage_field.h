// One passage of a letter in a field of several lines: its name, its words, and the way back to the words
// that were computed.
#pragma once

#include <wx/panel.h>

#include <functional>
#include <string>

#include "desktop/fitted.h"

class wxTextCtrl;

namespace stile::desktop {

class KeyButton;
class Prose;

class PassageField : public wxPanel, public Fitted {
 public:
  /// `computed` is what the program wrote, `words` what stands now. `changed` is called after each change.
  PassageField(wxWindow* parent, const Theme& theme, const std::string& name, std::string computed, const std::string& words, std::function<void()> changed);
  std::string words() const;
  bool isChanged() const { return words() != computed_; }
  /// Back to the computed words.
  void reset();
  /// "" takes the sentence away.
  void complain(const std::string& trouble);
  void enter();
  void fit(int width) override;

 private:
  void wordsChanged();
  /// As tall as its words, within bounds.
  void grow();

  const Theme& theme_;
  std::string name_, computed_;
  std::function<void()> changed_;
  Prose *title_, *trouble_;
  KeyButton* back_;
  wxTextCtrl* control_;
  int width_ = 0;
};

}  // namespace stile::desktop
